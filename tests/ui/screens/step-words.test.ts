/** What is said of a step beside its prompt. */
import { expect, test } from 'vitest';
import type { LookStep } from '../../../src/procedure/procedure.ts';
import type { SessionOpened } from '../../../src/session/events.ts';
import { evolve } from '../../../src/session/evolve.ts';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import {
  answerWords,
  nextLine,
  soFarWords,
  stepParagraphs,
} from '../../../src/ui/screens/step-words.ts';
import { sessionAfter, TREE, when } from '../../session/sample-tree.ts';

test.each([
  ['Feed at the sensor', 'Next: Feed at the sensor. Vehicle: key off.'],
  ['Do the two wires touch?', 'Next: Do the two wires touch? Vehicle: key off.'],
  ['Stop!', 'Next: Stop! Vehicle: key off.'],
])('what comes next is a sentence of its own: %s', (title, line) => {
  expect(nextLine(title, { state: 'key-off' })).toBe(line);
});

const READ = [
  { type: 'mark-done' },
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '5', value: 5 },
] as const;

test('minutes so far are those of the clock, and said to be estimated where none has measured them', () => {
  const at = (minutes: number, more: Partial<SessionOpened> = {}) => {
    const session = sessionAfter(READ, TREE, more);
    return evolve(session, {
      ...{ type: 'note-added', step: null, text: 'so' },
      ...{ at: when(9).at, elapsed: minutes * 60_000 },
    });
  };
  expect(soFarWords(sessionAfter([]), 20)).toBe('');
  expect(soFarWords(at(12.3), 20)).toBe(' (12 min by the clock, about 20 left)');
  expect(soFarWords(at(0.5), null)).toBe(' (<1 min by the clock)');
  // by hand: two steps of a minute each
  expect(soFarWords(at(12, { by: 'answers-file' }), 20)).toBe(
    ' (2 min estimated so far, about 20 left)',
  );
});

test('what does not fit leaves scope and leads above the fold, right below the cautions', () => {
  const services = {
    ...{ bind: (text: string) => text, drill: null, goodCaptures: { offered: () => null } },
    scopeLine: () => 'Scope: DC, 1 V and 5 ms a division.',
  } as unknown as OpenedSession;
  const session = sessionAfter([], { ...TREE, start: 'pattern' }, { from: 'pattern' });
  const told = (tight: boolean) =>
    stepParagraphs(services, session, TREE.steps['pattern']!, null, { tight }).map((one) =>
      typeof one === 'string' ? one : one.text,
    );
  expect(told(true).slice(0, 4)).toEqual([
    'Step 1: Pattern',
    'Vehicle: engine cranking. WARNING: The engine turns. CAUTION: The circuits are live.',
    'Scope: DC, 1 V and 5 ms a division.',
    'Look at the scope.',
  ]);
  expect([...told(true)].sort()).toEqual([...told(false)].filter((text) => text !== '').sort());
});

test.each([
  ['shifted', 'shifted', 'shifted from the known-good one'],
  ['in-step', 'in step', 'in step with the known-good one'],
  ['in-step', 'the wheel stands right', 'in step with the known-good one: the wheel stands right'],
] as const)('a look of %s beside the outcome "%s" is said once', (look, words, said) => {
  const step = {
    ...(TREE.steps['pattern'] as LookStep),
    outcomes: [{ name: 'seen', words, looks: [look], go: 'fine' }],
  };
  const session = sessionAfter(
    [{ type: 'acknowledge-cautions' }, { type: 'choose-outcome', outcome: 'seen', look }],
    { ...TREE, start: 'pattern', steps: { ...TREE.steps, pattern: step } },
  );
  expect(answerWords(session.answers[0]!.event, session)).toBe(said);
});
