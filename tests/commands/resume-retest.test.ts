/** Tests after the repair that were left half way: `resume --plain` goes on with them, and its exit code tells of them. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { begin, FINISHED, fileOf } from '../records/sample-session.ts';
import { TRUE_PROCEDURE } from '../records/true-walk.ts';
import { eventsOf, makePlace, type Place, runProgram } from './program.ts';

/** Up to the conclusion: two tests are to be made again, the feed at the sensor and the feed under load. */
const CONCLUDED = FINISHED.slice(0, FINISHED.findIndex(({ type }) => type === 'conclude') + 1);
const FEED = 'Feed at the sensor';
const LOADED = 'Feed under load';

let place: Place;
let path: string;

beforeEach(async () => {
  place = makePlace();
  mkdirSync(place.sessions, { recursive: true });
  path = join(place.sessions, '20260304T083000Z-halfway-00000001.jsonl');
  writeFileSync(path, fileOf(begin({ procedure: TRUE_PROCEDURE }).do(...CONCLUDED)).text);
  const left = await retest('yes\n4.99\npause\n');
  expect(left).toMatchObject({ code: 130, err: '' });
  expect(made()).toEqual(['feed']);
});
afterEach(() => place.remove());

const retest = (input: string) => runProgram(place, ['retest', path, '--plain'], input);
/** The steps that were made again. */
const made = () =>
  eventsOf(path).flatMap((event) => (event.type === 'retest-recorded' ? [event['step']] : []));
const last = () => eventsOf(path).at(-1);

it('asks for the test that is left, and for that one only, and closes the record', async () => {
  const { code, out, err } = await runProgram(place, ['resume', '--plain'], '1\n');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toContain('After the repair');
  const asked = out.slice(0, out.indexOf('1 to 2:'));
  expect(asked).toContain(`${LOADED}.`);
  expect(asked).not.toContain(`${FEED}.`);
  expect(made()).toEqual(['feed', 'light']);
  expect(last()).toMatchObject({ type: 'session-closed', verdict: 'cured' });
});

it('what the customer said to the estimate goes into the record, and no test is asked for', async () => {
  const said = 'authorised by R. Example, by telephone, up to 240 EUR';
  const { code, err } = await runProgram(place, ['retest', path, '--customer', said]);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(eventsOf(path)).toContainEqual(
    expect.objectContaining({ type: 'work-answered', answer: 'authorised', by: 'R. Example' }),
  );
  expect(made()).toEqual(['feed']);
});

it('says with its exit code that it is not proven fixed', async () => {
  const { code } = await runProgram(place, ['resume', '--plain'], '2\n');
  expect(code).toBe(1);
  expect(last()).toMatchObject({ type: 'session-closed', verdict: 'not-cured' });
});

it.each([
  ['the input ends before anything is answered', ''],
  ['it is paused once more', 'pause\n'],
])('stays unfinished work where %s, and goes on after that', async (_, input) => {
  const { code, out } = await runProgram(place, ['resume', '--plain'], input);
  expect(code).toBe(130);
  expect(out).toContain('Continue with: ohmward resume');
  expect(made()).toEqual(['feed']);
  expect(last()?.type).toBe('session-paused');
  expect((await runProgram(place, ['resume', path, '--plain'], '1\n')).code).toBe(0);
  expect(made()).toEqual(['feed', 'light']);
});
