/** The answers that the vehicle of a drill has given: they are numbered, those taken back too. */
import { expect, it } from 'vitest';
import { readingsGiven } from '../../src/drill/drill-act.ts';
import type { Session } from '../../src/session/session.ts';
import { SHORT } from './short-procedure.ts';

const { feed } = SHORT.steps;
const step = { ...feed, probe: null };
const session = (...events: object[]) =>
  ({
    events,
    opened: { procedure: { ...SHORT, steps: { ...SHORT.steps, typed: step } } },
  }) as unknown as Session;

it.each([
  ['a test', { type: 'test-recorded' }, 1],
  [
    'a reading of a step that is made with an instrument',
    { type: 'reading-recorded', step: 'feed' },
    1,
  ],
  ['a look at one', { type: 'look-recorded', step: 'feed' }, 1],
  ['a number that the circuit knows nothing of', { type: 'reading-recorded', step: 'typed' }, 0],
  ['a reading of a step that is not there', { type: 'reading-recorded', step: 'gone' }, 0],
  ['a note', { type: 'note-added', step: 'feed' }, 0],
])('%s', (_, event, count) => {
  expect(readingsGiven(session(event))).toBe(count);
  expect(readingsGiven(session({ type: 'test-recorded' }, event))).toBe(count + 1);
});
