/** What a judgement means for the person at the vehicle. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import type { Judgement } from './judge.ts';
import { functionOf, isMeterUnit } from './meter-units.ts';
import type { Meter } from './test.ts';

/** What was judged, in SI units: the meter's OL is `Infinity`, or null as events keep it. */
export interface JudgedReading {
  readonly value: number | null;
  /** Of a meter; nothing else is judged. */
  readonly unit: Unit;
}

/** One sentence without a full stop. `meter` is the one that showed the reading. */
export function judgementWords(
  { verdict }: Judgement,
  { value, unit }: JudgedReading,
  meter: Meter,
): string {
  const shown = value ?? Number.POSITIVE_INFINITY;
  switch (verdict) {
    case 'good':
      return 'within the expected range';
    case 'low':
      return 'below the expected range';
    case 'high':
      return 'above the expected range';
    case 'borderline':
      return borderlineWords(shown, unit, meter);
    case 'impossible':
      return `${formatQuantity({ value: shown, unit })} is not possible in this circuit: check where the leads are, the range and the unit`;
  }
}

/** A narrower range helps when the reading would fit into one with smaller steps; else only a repeat does. */
function borderlineWords(value: number, unit: Unit, meter: Meter): string {
  const { ranges, counts } = isMeterUnit(unit) ? functionOf(meter, unit) : NO_RANGES;
  const best = ranges.find((full) => Math.abs(value) <= full);
  if (best === undefined) return 'too close to the limit for this meter; repeat it';
  const range = formatQuantity({ value: best, unit });
  const step = formatQuantity({ value: best / counts, unit });
  return `too close to the limit for this meter; make sure it is on its ${range} range (steps of ${step}), or repeat it`;
}

const NO_RANGES = { ranges: [], counts: 1 } as const;
