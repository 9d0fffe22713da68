/** What the prompt of a step expects to be typed: the unit, where readings usually lie, what cannot be. */
import type { MeasureStep } from '../procedure/procedure.ts';
import { expectedEnds } from '../procedure/procedure.ts';
import type { ExpectedReading } from '../quantity/parse-reading.ts';

/** For `parseReading`; `limit` is what cannot be read in this vehicle. */
export function expectedReading(
  { unit, expected }: MeasureStep,
  limit: NonNullable<ExpectedReading['limit']> | null,
): ExpectedReading {
  return {
    unit,
    ...(expected ? { usual: { ...expectedEnds(expected), low: expected.low ?? 0 } } : {}),
    ...(limit ? { limit } : {}),
  };
}
