/** Whether a capture that comes with an answer belongs to it. A record must not say that a number was measured which was not. */
import type { Look, Test } from '../circuit/test.ts';
import type { Step } from '../procedure/procedure.ts';
import { positionLook, positionShift } from './capture-position.ts';
import { capturedLevel, capturedValue, takesCapture, testTakesCapture } from './capture-step.ts';
import type { StepCapture, TestRecorded, WakingWatched } from './events.ts';
import type { Session } from './session.ts';

/**
 * Whether a capture belongs to an answer of this step: a number must be the one that was measured of it; OL (null) is
 * none. A position must be the one that follows from what it was held against.
 */
export function answersStep(
  step: Step,
  capture: StepCapture,
  value: number | null,
  look: Look | null = null,
): boolean {
  if (!takesCapture(step)) return false;
  if (step.kind === 'look' && step.probe.kind === 'timing') return isPosition(capture, look);
  return step.kind === 'look' || isMeasured(capturedValue(step, capture.measures), value);
}

/** Whether a capture belongs to an answer of a test that no step asks for. */
export function answersTest(
  test: Test,
  shown: TestRecorded['shown'],
  capture: StepCapture,
): boolean {
  if (!testTakesCapture(test)) return false;
  if (test.probe.kind === 'pattern') return shown.kind === 'look';
  if (test.probe.kind === 'timing')
    return isPosition(capture, shown.kind === 'look' ? shown.look : null);
  const { measures } = capture;
  return (
    shown.kind === 'number' &&
    measures.unit === shown.unit &&
    isMeasured(capturedLevel('mean', measures), shown.value)
  );
}

/** Whether a long capture belongs to what is said of a round of moving: levels and drops are those measured of it. */
export function answersWaking(
  { measures, drops }: StepCapture,
  said: Pick<WakingWatched, 'unit' | 'least' | 'most' | 'drops'>,
): boolean {
  return (
    drops?.count === said.drops &&
    (measures.unit === '1' ? null : measures.unit) === said.unit &&
    (said.unit === null ? null : drops.least) === said.least &&
    (said.unit === null ? null : drops.most) === said.most
  );
}

/** A line that does not move has no position; of any other the shift is found again. */
function isPosition(capture: StepCapture, look: Look | null): boolean {
  const { against, shiftDegrees } = capture;
  if (look === 'no-signal') return shiftDegrees === undefined;
  if (!against || shiftDegrees === undefined) return false;
  const found = positionShift(capture, against);
  return (
    typeof found === 'number' && found === shiftDegrees && positionLook(found, against) === look
  );
}

/** Nothing measured is not the same as OL, though both are null. */
function isMeasured(measured: number | null, value: number | null): boolean {
  return measured !== null && measured === value;
}

/**
 * Whether a capture was already measured before the conclusion. A simulated vehicle that was not repaired gives the same
 * one again; a file of the same bytes is the same capture.
 */
export function isFromBefore(
  { events, concluded }: Session,
  { from, sha256 }: StepCapture,
): boolean {
  const before = concluded ? events.slice(0, events.lastIndexOf(concluded)) : events;
  return (
    from === 'file' &&
    before.some((event) => 'capture' in event && event.capture?.sha256 === sha256)
  );
}
