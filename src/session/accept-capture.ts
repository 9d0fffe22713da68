/** Whether a capture that comes with an answer belongs to it. A record must not say that a number was measured which was not. */
import type { Test } from '../circuit/test.ts';
import type { Step } from '../procedure/procedure.ts';
import { capturedLevel, capturedValue, takesCapture, testTakesCapture } from './capture-step.ts';
import type { StepCapture, TestRecorded } from './events.ts';
import type { Session } from './session.ts';

/** Whether a capture belongs to an answer of this step: a number must be the one that was measured of it; OL (null) is none. */
export function answersStep(step: Step, capture: StepCapture, value: number | null): boolean {
  if (!takesCapture(step)) return false;
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
  const { measures } = capture;
  return (
    shown.kind === 'number' &&
    measures.unit === shown.unit &&
    isMeasured(capturedLevel('mean', measures), shown.value)
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
