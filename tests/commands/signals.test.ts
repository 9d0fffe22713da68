/** A signal ends the dialogue of lines at once, also while it computes, and what serves another program after the call it is at. */
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterEach, beforeEach, expect, it } from 'vitest';
import {
  eventsOf,
  makePlace,
  type Place,
  runBuilt,
  sessionFiles,
  startProgram,
} from './program.ts';

/** Up to the first step with a number. */
const OPENING: readonly (readonly [string, object])[] = [
  ...['drive-not-stated', 'ready-moves', 'circuit-energised'].map(
    (caution) => ['acknowledge', { caution, person: 'R. Example' }] as const,
  ),
  ['done', {}],
];

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
  const run = ['run', 'reluctor-no-signal', '--bench', 'healthy', '--plain'];
  const { code, out, err } = runBuilt({ ...place, env }, run, 'yes\n');
  expect(out).toContain('Saved:');
  expect([code, err]).toEqual([130, '']);
});

it.each([
  ['lines', (calls: readonly object[]) => calls.map((call) => JSON.stringify(call)).join('\n')],
  ['one batch', (calls: readonly object[]) => JSON.stringify(calls)],
])(
  'a flood of calls in %s does not keep a signal waiting, and what was answered is saved',
  async (_, written) => {
    const program = startProgram(place, [
      ...['run', 'reluctor-no-signal', '--bench', 'wire.plus.open', '--vehicle', '7', '--rpc'],
    ]);
    const answers: { readonly id: number }[] = [];
    let heard = () => {};
    createInterface({ input: program.stdout }).on('line', (line) => {
      answers.push(...[JSON.parse(line)].flat());
      heard();
    });
    const answered = (many: number) =>
      new Promise<void>((resolve) => {
        heard = () => answers.length >= many && resolve();
        heard();
      });
    let id = 0;
    const call = (method: string, params: object = {}) => {
      id += 1;
      return { jsonrpc: '2.0', id, method, params };
    };
    for (const [method, params] of OPENING) {
      program.stdin.write(`${JSON.stringify(call(method, params))}\n`);
      await answered(id);
    }
    // Each number is new, so each is weighed.
    const flood = Array.from({ length: 45 }, (__, at) => [
      call('reading', { reading: `${12 + at / 100}`, sure: true }),
      call('back'),
    ]).flat();
    const before = eventsOf(sessionFiles(place)[0]!).length;
    program.stdin.write(`${written(flood)}\n`);
    while (eventsOf(sessionFiles(place)[0]!).length === before)
      await new Promise((resolve) => setTimeout(resolve, 5));
    program.kill('SIGTERM');
    const [code] = await once(program, 'close');
    const events = eventsOf(sessionFiles(place)[0]!).slice(before);
    expect(code).toBe(0);
    expect(events.at(-1)?.type).toBe('session-paused');
    expect(events.length).toBeLessThan(flood.length);
  },
);
