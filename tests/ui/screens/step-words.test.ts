/** What is said of a step beside its prompt. */
import { expect, test } from 'vitest';
import type { LookStep } from '../../../src/procedure/procedure.ts';
import type { SessionOpened } from '../../../src/session/events.ts';
import { evolve } from '../../../src/session/evolve.ts';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import { answeredWords, answerWords } from '../../../src/ui/screens/answer-words.ts';
import { notTickedWords } from '../../../src/ui/screens/not-ticked-words.ts';
import {
  nextLine,
  type StepRoom,
  soFarWords,
  stepText,
} from '../../../src/ui/screens/step-words.ts';
import { shipped } from '../../circuit/shipped.ts';
import { sessionAfter, TREE, when } from '../../session/sample-tree.ts';
import { DONE } from '../../session/shorthand.ts';

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
  expect(soFarWords(sessionAfter([]), null)).toBe('');
  expect(soFarWords(sessionAfter([]), 20)).toBe(' (about 20 min left)');
  expect(soFarWords(at(12.3), 20)).toBe(' (12 min by the clock, about 20 left)');
  expect(soFarWords(at(0.5), null)).toBe(' (<1 min by the clock)');
  // by hand: two steps of a minute each
  expect(soFarWords(at(12, { by: 'answers-file' }), 20)).toBe(' (about 2 min so far, 20 left)');
});

test('after the repair the capture on file is the one for a test made again', () => {
  const asked: string[] = [];
  const services = {
    ...{ bind: (text: string) => text, drill: null, scopeLine: () => null },
    goodCaptures: {
      offered: ({ kind }: { kind: string }) => {
        asked.push(kind);
        return null;
      },
    },
  } as unknown as OpenedSession;
  const session = sessionAfter([], { ...TREE, start: 'pattern' }, { from: 'pattern' });
  for (const again of [null, { before: 'no signal' }])
    stepText(services, session, TREE.steps['pattern']!, again, { room: 'whole' });
  expect(asked).toEqual(['step', 'retest']);
});

test('what does not fit leaves scope and leads above the fold, right below the cautions', () => {
  const services = {
    ...{ bind: (text: string) => text, drill: null, goodCaptures: { offered: () => null } },
    scopeLine: () => 'Scope: DC, 1 V and 5 ms a division.',
  } as unknown as OpenedSession;
  const session = sessionAfter([], { ...TREE, start: 'pattern' }, { from: 'pattern' });
  const told = (room: StepRoom) => {
    const { head, rest } = stepText(services, session, TREE.steps['pattern']!, null, { room });
    return [...head, ...rest].map(({ text }) => text);
  };
  expect(told('tight').slice(0, 4)).toEqual([
    'Step 1: Pattern',
    'Vehicle: engine cranking. WARNING: The engine turns. CAUTION: The circuits are live.',
    'Scope: DC, 1 V and 5 ms a division.',
    'Look at the scope.',
  ]);
  const whole = told('whole').filter((text) => text !== '');
  expect(told('tight').sort()).toEqual(whole.sort());
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
  expect(answeredWords(opened, session)).toBe(`Skipped (F2 or back to do it): Feed (${reason}).`);
});

test.each([
  ['33m', 0.033, '33 mV: '],
  ['5', 5, '5 V: '],
  ['4,97', 4.97, '4.97 V: '],
  ['OL', Number.POSITIVE_INFINITY, 'OL: '],
] as const)('a reading typed %s is told with its unit', (typed, value, said) => {
  const read = [...READ.slice(0, 2), { type: 'record-reading', typed, value }] as const;
  const session = sessionAfter(read);
  const answer = session.answers.find(({ event }) => event.type === 'reading-recorded')!;
  expect(answerWords(answer.event, session).slice(0, said.length)).toBe(said);
});

test.each<[string, readonly string[], string | null]>([
  ['pattern', ['meter'], 'oscilloscope'],
  ['pattern', ['meter', 'scope'], null],
  ['feed', ['scope'], 'multimeter'],
])('the step "%s" with %j at hand says what is not ticked', (id, instruments, missing) => {
  const keys = { instruments: 'F9', cannot: 'F3' };
  const step = { ...TREE.steps[id]!, cannot: 'other' } as LookStep;
  const words = (way: LookStep) => notTickedWords({ ...sessionAfter([]), instruments }, way, keys);
  const said = missing && `Not ticked as at hand (F9): ${missing}.`;
  expect(words(step)).toBe(said && `${said} No such thing here: F3.`);
  expect(words({ ...step, cannot: null })).toBe(said);
});
