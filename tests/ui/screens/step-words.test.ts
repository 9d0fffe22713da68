/** What is said of a step beside its prompt. */
import { expect, test } from 'vitest';
import { nextLine, watchedLines } from '../../../src/ui/screens/step-words.ts';
import { sessionAfter } from '../../session/sample-tree.ts';
import { WAKING, WIGGLE } from '../../session/waking-tree.ts';

test.each([
  ['Feed at the sensor', 'Next: Feed at the sensor. Vehicle: key off.'],
  ['Do the two wires touch?', 'Next: Do the two wires touch? Vehicle: key off.'],
  ['Stop!', 'Next: Stop! Vehicle: key off.'],
])('what comes next is a sentence of its own: %s', (title, line) => {
  expect(nextLine(title, { state: 'key-off' })).toBe(line);
});

test('rounds of moving that a test after the repair does not make are said to be of before it', () => {
  const round = {
    ...({ type: 'watch-waking', place: null, typed: '2 drops', unit: null } as const),
    ...{ least: null, most: null, drops: 2, minutes: null },
  };
  const session = sessionAfter([round], { ...WAKING, start: 'wiggle' });
  expect(watchedLines(session, WIGGLE)).toEqual(['One round: 2 drops']);
  expect(watchedLines(session, WIGGLE, true)).toEqual(['Before the repair, one round: 2 drops']);
});
