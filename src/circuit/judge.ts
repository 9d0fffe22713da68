/**
 * Whether a reading is good, within what the meter can tell: the reading is a normal with the meter's standard
 * uncertainty, and the chance that the true value lies in the range decides (JCGM 106:2012, clause 7).
 */
import { chanceWithin, meterUncertainty } from '../quantity/normal.ts';
import { functionOf } from './meter-units.ts';
import type { Meter, MeterUnit } from './test.ts';

/** What a reading is beside its good range; `borderline` where the meter cannot tell. */
export type Verdict = 'good' | 'low' | 'high' | 'borderline' | 'impossible';

/** A verdict and how sure it is. */
export interface Judgement {
  readonly verdict: Verdict;
  /** Chance that the true value lies within the expected range. */
  readonly chance: number;
}

/** Inside this band of chances nothing is decided. */
const BORDERLINE_ABOVE = 0.05;
const BORDERLINE_BELOW = 0.95;
/** Half of the narrowest range that is judged, in limits of the meter's specification (3.5 standard uncertainties). */
const LEAST_LIMITS = 2;

/**
 * Judges `value` (SI) against `expected`. `limits` are what the circuit can show at all, under any fault; a reading
 * surely outside them is impossible: a lead in the wrong place, a wrong range, a slip of the hand.
 */
export function judgeReading(
  value: number,
  unit: MeterUnit,
  expected: { readonly low: number; readonly high: number },
  meter: Meter,
  limits?: { readonly low: number; readonly high: number },
): Judgement {
  const { standard, limit } = meterUncertainty(functionOf(meter, unit), value);
  const { low, high } = judgeable(expected, limit);
  const chance = chanceWithin(value, standard, low, high);
  if (limits) {
    const possible = judgeable(limits, limit);
    if (chanceWithin(value, standard, possible.low, possible.high) < BORDERLINE_ABOVE)
      return { verdict: 'impossible', chance };
  }
  if (chance >= BORDERLINE_BELOW) return { verdict: 'good', chance };
  if (chance <= BORDERLINE_ABOVE)
    return { verdict: value < (low + high) / 2 ? 'low' : 'high', chance };
  return { verdict: 'borderline', chance };
}

/** A range narrower than the meter can tell is widened about its middle until a reading there is surely good. */
function judgeable(
  range: { readonly low: number; readonly high: number },
  limit: number,
): { low: number; high: number } {
  const missing = 2 * LEAST_LIMITS * limit - (range.high - range.low);
  if (!(missing > 0) || !Number.isFinite(missing)) return range;
  return { low: range.low - missing / 2, high: range.high + missing / 2 };
}
