/** What a value means at a step. */
import { type Judgement, judgeReading } from '../circuit/judge.ts';
import { isMeterUnit, METER_UNITS } from '../circuit/meter-units.ts';
import type { KeptShown } from '../circuit/shown-of.ts';
import type { Meter } from '../circuit/test.ts';
import { expectedEnds, type MeasureStep } from '../procedure/procedure.ts';
import type { ExpectedShown } from './events.ts';

/** The judgement of a value at a step, also for the live line under the prompt; null where nothing is expected. */
export function judgeStep(step: MeasureStep, value: number, meter: Meter): Judgement | null {
  if (!step.expected || !isMeterUnit(step.unit)) return null;
  if (step.probe === null && !METER_UNITS[step.unit].isMeterAlone) return null;
  return judgeReading(value, step.unit, expectedEnds(step.expected), meter);
}

/** The same of a test that no step asks for; null for looks. */
export function judgeTest(
  shown: KeptShown,
  expected: ExpectedShown,
  meter: Meter,
): Judgement | null {
  if (shown.kind !== 'number' || expected.kind !== 'number') return null;
  return judgeReading(
    shown.value ?? Number.POSITIVE_INFINITY,
    shown.unit,
    expectedEnds(expected),
    meter,
  );
}
