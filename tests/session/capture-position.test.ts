/** Where a camshaft stands in the turn of the crankshaft, by one capture of both: stated, and beside a known-good one. */

import { expect, test } from 'vitest';
import type { LookStep } from '../../src/procedure/procedure.ts';
import { answersStep } from '../../src/session/accept-capture.ts';
import { againstWords } from '../../src/session/capture-position.ts';
import { captureAnswer, takesCapture } from '../../src/session/capture-step.ts';
import { insteadOfSheet, statedBefore, statedOnSheet } from '../../src/session/instead-of-sheet.ts';
import type { AgainstGiven, CaptureGiven } from '../../src/session/measure-capture.ts';
import { generateWheels } from '../../src/waveform/generate.ts';
import { joinCaptures } from '../../src/waveform/join-captures.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { looksStated, readStatedEdges, statedShift } from '../../src/waveform/stated-edges.ts';
import { fileOf, known, PICTURE, PULSES } from './drawn-capture.ts';

const LOOKS = ['in-step', 'shifted', 'no-signal'] as const;
const STEP: LookStep = {
  ...PICTURE,
  probe: { kind: 'timing', plus: 'module.signal', minus: 'battery.negative' },
  expected: ['in-step'],
  outcomes: LOOKS.map((look) => ({ name: look, words: look, looks: [look], go: 'fine' })),
};
const OF_CRANK = known({ measure: { wheel: { teeth: 36, missing: 1 } } });

/** Six cranks of a 36-1 wheel and a camshaft `late` crankshaft degrees behind, which begins at `at` of its own. */
function crank(late: number, at = 20, name = 'a.csv'): CaptureGiven {
  const levels = { sensor: 'hall', low: 0, high: 5 } as const;
  const capture = generateWheels(
    [
      { ...levels, name: 'crank', teeth: 36, missing: 1 },
      { ...levels, name: 'cam', teeth: 4, missing: 1, ratio: 0.5, atDegrees: at - late / 2 },
    ],
    { rateHz: 10_000, seconds: 1.8, rpm: 200, random: seededRandom(1) },
  );
  return { name, sha256: '0'.repeat(64), from: 'file', capture };
}

const beside = (given: CaptureGiven): AgainstGiven => ({ kind: 'good', given });
const answer = (given: CaptureGiven, against: AgainstGiven | null = null) =>
  captureAnswer({ kind: 'step', step: STEP }, given, OF_CRANK, 0, against);
const lookOf = (found: ReturnType<typeof answer>) =>
  found.ok && found.command.type === 'choose-outcome' ? found.command.look : found;

test('a step that asks for the position takes a capture', () => {
  expect(takesCapture(STEP)).toBe(true);
});

// The generator turns the camshaft back by the degrees that are then measured.
test.each([
  [0, 'in-step'],
  [4, 'in-step'],
  [24, 'shifted'],
  [-24, 'shifted'],
])('%s degrees late against a known-good capture is %s', (late, look) => {
  const found = answer(crank(late), beside(crank(0, 200, 'good.csv')));
  expect(lookOf(found)).toBe(look);
  expect(found.ok && found.capture.shiftDegrees).toBeCloseTo(late, 0);
  expect(found.ok && found.lines.join('\n')).toContain(
    late === 0
      ? 'cam stands'
      : `${Math.abs(late)}.0 degrees ${late > 0 ? 'late' : 'early'} in the turn of crank`,
  );
});

test('what the maker states is a limit of its own', () => {
  const sound = answer(crank(0), beside(crank(0)));
  const [edge] = (sound.ok && sound.capture.phases) || [];
  const falls =
    edge && 'edges' in edge ? edge.edges.filter((one) => one.direction === 'falling') : [];
  const said = falls.map(({ degrees }) => `falls at ${degrees.toFixed(1)} deg`).join(', ');
  const stated = (text: string): AgainstGiven => ({ kind: 'stated', typed: text });
  expect(lookOf(answer(crank(4), stated(said)))).toBe('in-step');
  expect(lookOf(answer(crank(4), stated(`${said}; within 3 deg`)))).toBe('shifted');
  expect(answer(crank(4), stated('falls at 12, rises at 13'))).toMatchObject({ ok: false });
});

test('what cannot be told is refused, with what was measured', () => {
  expect(answer(crank(0))).toMatchObject({
    ok: false,
    words: 'nothing says where its edges should be',
    lines: expect.arrayContaining([expect.stringContaining('cam in 720° of crank')]),
  });
  const one = crank(0);
  const alone = { ...one, capture: { ...one.capture, channels: one.capture.channels.slice(0, 1) } };
  expect(answer(alone, beside(crank(0)))).toMatchObject({
    ok: false,
    words: expect.stringContaining('needs both signals of the same crank'),
  });
  const still = {
    ...one,
    capture: {
      ...one.capture,
      channels: [
        one.capture.channels[0]!,
        { ...one.capture.channels[1]!, samples: new Float32Array(18_000) },
      ],
    },
  };
  expect(answer(still, beside(crank(0)))).toMatchObject({
    ok: false,
    words: 'no full turn of one signal can be found in the other',
  });
});

test('a signal that does not move has no position', () => {
  const one = crank(0);
  const flat = { ...one.capture.channels[0]!, samples: new Float32Array(18_000) };
  const given = { ...one, capture: { ...one.capture, channels: [flat, one.capture.channels[1]!] } };
  expect(lookOf(answer(given))).toBe('no-signal');
});

test('two files of one crank are one capture, and of two cranks none', () => {
  const { capture } = crank(24);
  const [first, second] = capture.channels.map((one) => ({ ...capture, channels: [one] }));
  const both = joinCaptures(first!, second!);
  expect('channels' in both && both.channels.map(({ name }) => name)).toEqual(['crank', 'cam']);
  expect(joinCaptures(first!, fileOf([PULSES]).capture)).toMatchObject({
    problem: expect.stringContaining('not of the same crank'),
  });
});

test('an event whose position does not follow from what it keeps is not believed', () => {
  const found = answer(crank(24), beside(crank(0)));
  if (!found.ok) throw new Error('the capture answers');
  const { capture } = found;
  expect(answersStep(STEP, capture, null, 'shifted')).toBe(true);
  expect(answersStep(STEP, capture, null, 'in-step')).toBe(false);
  expect(answersStep(STEP, { ...capture, shiftDegrees: 1 }, null, 'in-step')).toBe(false);
  const { against: _none, ...bare } = capture;
  expect(answersStep(STEP, bare, null, 'shifted')).toBe(false);
});

test('stated edges are read as they are written in papers, or not at all', () => {
  expect(readStatedEdges('Falls at 114 deg, rises 294°; within 4')).toEqual({
    edges: [
      { direction: 'falling', degrees: 114 },
      { direction: 'rising', degrees: 294 },
    ],
    withinDegrees: 4,
  });
  for (const text of [
    'falls',
    'falls at 720',
    'falls at 1; within 0',
    'falls at 1; 2; 3',
    'falls at 1,',
  ])
    expect(readStatedEdges(text), text).toBeNull();
  expect([looksStated('rises at 3'), looksStated('rise.csv')]).toEqual([true, false]);
  // by hand: one edge at 114 of 720, found at 480: 6 later and a whole turn of the crankshaft on
  const edges = [{ direction: 'falling', degrees: 480, plusMinus: 0, seen: 3 }] as const;
  expect(statedShift({ cycleDegrees: 720, edges }, readStatedEdges('falls at 114')!)).toBeCloseTo(
    6,
  );
});

test('another choice than the edges on the sheet is said, on each channel', () => {
  const ask = { kind: 'step', step: STEP } as const;
  const stated = statedOnSheet(ask, { stands: 'falls at 12 deg' });
  const found = answer(crank(0), beside(crank(0)));
  const said = insteadOfSheet(found, stated, 'good.csv');
  const line =
    'Not held against the edges on the job sheet (falls at 12 deg), but against what was chosen here.';
  expect(said.lines?.at(-1)).toBe(line);
  expect(said.channels?.judge(1).lines?.at(-1)).toBe(line);
  expect(insteadOfSheet(found, stated, 'falls at 12 deg')).toBe(found);
  expect(insteadOfSheet(found, stated, undefined)).toBe(found);
  expect(insteadOfSheet(found, null, 'good.csv')).toBe(found);
});

test('only a position is held against the edges of the sheet', () => {
  const picture = { ...STEP, probe: { kind: 'pattern', plus: 'a.b', minus: 'c.d' } } as const;
  expect(statedOnSheet({ kind: 'step', step: picture }, { stands: 'falls at 12 deg' })).toBeNull();
  expect(statedOnSheet({ kind: 'step', step: STEP }, {})).toBeNull();
});

test('what a capture was held against names what is stated, and no file', () => {
  expect(againstWords({ kind: 'stated', typed: '45 after the gap' })).toBe(
    'what is stated: 45 after the gap',
  );
  const file = { kind: 'known-good', name: 'mine.csv' } as never;
  expect(againstWords(file)).toBe('a known-good capture');
});

test('edges that were typed for a position of this session hold for its next one', () => {
  const ask = { kind: 'step', step: STEP } as const;
  const held = (against: unknown) => ({ type: 'look-recorded', capture: { against } }) as never;
  const stated = held({ kind: 'stated', typed: 'falls at 12 deg' });
  expect(statedBefore(ask, { events: [] })).toBeNull();
  expect(statedBefore(ask, { events: [stated, held(undefined)] })).toBe('falls at 12 deg');
  expect(statedBefore(ask, { events: [stated, held({ kind: 'good' })] })).toBeNull();
  const picture = { ...STEP, probe: { kind: 'pattern', plus: 'a.b', minus: 'c.d' } } as const;
  expect(statedBefore({ kind: 'step', step: picture }, { events: [stated] })).toBeNull();
});
