/** A signal ends the dialogue of lines at once, also while it computes: nothing listens that would have to be heard first. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { makePlace, type Place, runBuilt } from './program.ts';

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

it('the dialogue of lines listens for no signal', () => {
  const hook = join(place.home, 'hook.cjs');
  writeFileSync(
    hook,
    `for (const name of ['on', 'once', 'addListener', 'prependListener']) {
       const own = process[name];
       process[name] = function (event, listener) {
         if (String(event).startsWith('SIG')) console.error('listens for', event);
         return own.call(this, event, listener);
       };
     }`,
  );
  const env = { ...place.env, NODE_OPTIONS: `--require ${hook}` };
  const run = ['run', 'hall-no-signal', '--bench', 'healthy', '--plain'];
  const { code, out, err } = runBuilt({ ...place, env }, run, 'yes\n');
  expect(out).toContain('Saved:');
  expect([code, err]).toEqual([130, '']);
});
