/** Prices on the papers of a concluded session, by the rates that the shop has set. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { makePlace, type Place, runProgram } from './program.ts';

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

const ran = async (...args: string[]) => (await runProgram(place, args)).out;

it('stand there once rates are set, and on no class copy', async () => {
  const answers = join(place.home, 'answers.yaml');
  writeFileSync(answers, 'answers:\n  - { words: The loom is chafed., accept: true }\n');
  const job = join(place.home, 'job.yaml');
  writeFileSync(job, 'complaint: no start\n');
  await runProgram(place, ['run', 'hall-no-signal', '--job', job, '--answers', answers]);
  const paper = () => ran('records', 'export', 'last', '--for', 'customer');
  expect(await paper()).toContain('The loom is chafed.');
  expect(await paper()).not.toContain('What it costs');
  await ran('settings', 'rates', '90 EUR; plug 38');
  const priced = await paper();
  expect(priced).toContain('What it costs');
  expect(priced).toContain('90.00 EUR an hour');
  expect(priced).toContain('plug, if it is needed: 38.00 EUR');
  expect(await ran('records', 'export', 'last', '--for', 'class')).not.toContain('EUR');
});
