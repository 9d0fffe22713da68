/** What is said of a step beside its prompt. */
import { expect, test } from 'vitest';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import { answeredWords, nextLine, watchedLines } from '../../../src/ui/screens/step-words.ts';
import { shipped } from '../../circuit/shipped.ts';
import { sessionAfter, TREE } from '../../session/sample-tree.ts';
import { DONE } from '../../session/shorthand.ts';
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

test('steps that were just gone round stand in one line, with the connector and the way back', () => {
  const reason = 'the connector of the sensor could not be reached';
  const session = sessionAfter(
    [
      { type: 'set-connector-aside', part: 'sensor', aside: true, reason },
      DONE,
      { type: 'go-round', by: 2 },
    ],
    TREE,
    { circuit: shipped('hall-module-fed') },
  );
  const opened = { bind: (text: string) => text } as OpenedSession;
  expect(answeredWords(opened, session)).toBe(`Gone round (F2 or back asks it): Feed (${reason}).`);
});
