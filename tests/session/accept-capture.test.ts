/** Which captures belong to which answers: no number is kept as measured that was not. */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import type { Step } from '../../src/procedure/procedure.ts';
import { answersStep, answersTest, isFromBefore } from '../../src/session/accept-capture.ts';
import type { Concluded, StepCapture, TestRecorded } from '../../src/session/events.ts';
import type { Session } from '../../src/session/session.ts';
import { SMALL_CAPTURE } from '../ui/screens/fake-services.ts';
import { measure, PICTURE, PICTURE_TEST, VOLTS_MOVING, VOLTS_STILL } from './drawn-capture.ts';
import { sessionAfter, TREE } from './sample-tree.ts';

function captureWith(measures: Partial<StepCapture['measures']>): StepCapture {
  return { ...SMALL_CAPTURE, measures: { ...SMALL_CAPTURE.measures, ...measures } };
}
const MEAN = captureWith({ mean: 2.5 });

describe('a capture belongs to an answer of a step', () => {
  it.each<[string, boolean, Step, StepCapture, number | null]>([
    ['with the number that was measured', true, measure('Hz'), MEAN, 200],
    ['not with another', false, measure('Hz'), MEAN, 201],
    ['not with OL', false, measure('Hz'), MEAN, null],
    [
      'not with OL where nothing was measured',
      false,
      measure('Hz'),
      captureWith({ hertz: null }),
      null,
    ],
    ['with a look', true, PICTURE, MEAN, null],
    ['with a look beside which a number stands', true, PICTURE, MEAN, 7],
    ['not of a step without a signal', false, TREE.steps['feed']!, MEAN, 2.5],
    ['not of work to do', false, TREE.steps['prepare']!, MEAN, null],
  ])('%s: %s', (_, expected, step, capture, value) => {
    expect(answersStep(step, capture, value)).toBe(expected);
  });
});

describe('a capture belongs to an answer of a test outside the tree', () => {
  const volts = (value: number | null): TestRecorded['shown'] => ({
    kind: 'number',
    value,
    unit: 'V',
  });
  const full = { kind: 'look', look: 'full' } as const;
  const light: Test = { ...VOLTS_MOVING, probe: { kind: 'light', plus: 'a.b', minus: 'c.d' } };
  it.each<[string, boolean, Test, TestRecorded['shown'], StepCapture]>([
    ['with its mean', true, VOLTS_MOVING, volts(2.5), MEAN],
    ['not with another number', false, VOLTS_MOVING, volts(2.6), MEAN],
    [
      'not with its mean in amperes',
      false,
      VOLTS_MOVING,
      volts(2.5),
      captureWith({ mean: 2.5, unit: 'A' }),
    ],
    [
      'not with OL, of an early one that kept no mean',
      false,
      VOLTS_MOVING,
      volts(null),
      SMALL_CAPTURE,
    ],
    ['not where the signal stands still', false, VOLTS_STILL, volts(2.5), MEAN],
    ['with a look at the scope', true, PICTURE_TEST, full, MEAN],
    ['not with volts at the scope', false, PICTURE_TEST, volts(2.5), MEAN],
    ['not with a look at the meter', false, VOLTS_MOVING, full, MEAN],
    ['not with a look at a light', false, light, full, MEAN],
  ])('%s: %s', (_, expected, test, shown, capture) => {
    expect(answersTest(test, shown, capture)).toBe(expected);
  });
});

describe('a capture is from before the repair', () => {
  const LOOK = { type: 'look-recorded', capture: SMALL_CAPTURE };
  const CONCLUDED = { type: 'concluded' } as Concluded;
  const RETEST = { type: 'retest-recorded', capture: SMALL_CAPTURE };
  const begun = sessionAfter([]);
  const { events } = begun;
  const told = (concluded: Concluded | null, ...more: object[]) =>
    ({ ...begun, concluded, events: [...events, ...more] }) as Session;
  const bench = { ...SMALL_CAPTURE, from: 'bench' } as const;
  it.each<[string, boolean, Session, StepCapture]>([
    ['when it answered a step', true, told(CONCLUDED, LOOK, CONCLUDED), SMALL_CAPTURE],
    ['when nothing is concluded yet', true, told(null, LOOK), SMALL_CAPTURE],
    [
      'under another name too',
      true,
      told(CONCLUDED, LOOK, CONCLUDED),
      { ...SMALL_CAPTURE, name: 'other.csv' },
    ],
    [
      'not one of other bytes',
      false,
      told(CONCLUDED, LOOK, CONCLUDED),
      { ...MEAN, sha256: 'f'.repeat(64) },
    ],
    ['not one of a test after it', false, told(CONCLUDED, CONCLUDED, RETEST), SMALL_CAPTURE],
    ['not where no step took one', false, told(CONCLUDED, CONCLUDED), SMALL_CAPTURE],
    [
      'not where a step was answered by eye',
      false,
      told(CONCLUDED, { type: 'look-recorded' }, CONCLUDED),
      SMALL_CAPTURE,
    ],
    ['not one of the simulated vehicle', false, told(CONCLUDED, LOOK, CONCLUDED), bench],
  ])('%s: %s', (_, expected, session, capture) => {
    expect(isFromBefore(session, capture)).toBe(expected);
  });
});
