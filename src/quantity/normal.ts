/**
 * The normal distribution and what a meter's specification says about a reading.
 *
 * Sources: JCGM 106:2012 (chance to conform), JCGM 100:2008 4.3.7 (bounds alone are a rectangular distribution);
 * J. F. Hart et al., Computer Approximations, 1968, in the arrangement of G. West, Better approximations to
 * cumulative normal functions, 2009: absolute error under 1e-14.
 */

const SQRT_3 = Math.sqrt(3);
/** From here on Hart's quotient gives way to the continued fraction of the tail. */
const TAIL_FROM = 7.071;

/** Chance that a standard normal value lies below `z`. */
export function normalCdf(z: number): number {
  return z > 0 ? 1 - lowerTail(z) : lowerTail(-z);
}

/** Chance beyond `distance` (not negative) on one side. Written out: it is asked millions of times. */
function lowerTail(distance: number): number {
  const bell = Math.exp(-0.5 * distance * distance);
  if (distance < TAIL_FROM) {
    let upper = 0.0352624965998911 * distance + 0.700383064443688;
    upper = upper * distance + 6.37396220353165;
    upper = upper * distance + 33.912866078383;
    upper = upper * distance + 112.079291497871;
    upper = upper * distance + 221.213596169931;
    upper = upper * distance + 220.206867912376;
    let lower = 0.0883883476483184 * distance + 1.75566716318264;
    lower = lower * distance + 16.064177579207;
    lower = lower * distance + 86.7807322029461;
    lower = lower * distance + 296.564248779674;
    lower = lower * distance + 637.333633378831;
    lower = lower * distance + 793.826512519948;
    lower = lower * distance + 440.413735824752;
    return (bell * upper) / lower;
  }
  let fraction = distance + 0.65;
  for (let k = 8; k >= 1; k -= 1) fraction = distance + k / fraction;
  return bell / fraction / Math.sqrt(2 * Math.PI);
}

/**
 * Chance that the true value lies in `low` to `high`, given a reading `mean` with `standardUncertainty` (JCGM 106,
 * normal). Without uncertainty it is 1 or 0: `low` belongs to the range, `high` does not unless infinite. An
 * over-limit (`Infinity`) belongs to ranges without an upper end.
 */
export function chanceWithin(
  mean: number,
  standardUncertainty: number,
  low: number,
  high: number,
): number {
  if (!Number.isFinite(mean)) return mean > 0 ? Number(high === mean) : Number(low === mean);
  if (standardUncertainty <= 0) return Number(mean >= low && mean < high);
  const a = (low - mean) / standardUncertainty;
  const b = (high - mean) / standardUncertainty;
  if (!(b > a)) return 0;
  // On the upper side the two tails are subtracted, so that small chances keep their digits.
  return a > 0 ? lowerTail(a) - lowerTail(b) : normalCdf(b) - normalCdf(a);
}

/** Standard uncertainty when only the bounds -a to +a are known: a / sqrt(3), JCGM 100 4.3.7. */
export function rectangularStandard(halfWidth: number): number {
  return halfWidth / SQRT_3;
}

/** A meter function's stated accuracy, in the shape that the circuit's instruments have. */
export interface StatedAccuracy {
  /** Full scale of each range, rising. */
  readonly ranges: readonly number[];
  /** Counts of the display at full scale. */
  readonly counts: number;
  /** Fraction of the reading. */
  readonly ofReading: number;
  /** Counts of the last digit. */
  readonly digits: number;
}

/** What a meter's specification leaves open of one reading, in the reading's unit. */
export interface MeterUncertainty {
  /** Half width of the stated limits: fraction of reading plus counts. */
  readonly limit: number;
  /** Standard uncertainty: the limit as a rectangular distribution, never less than the display's own step. */
  readonly standard: number;
  /** One count in the range that the meter would choose. */
  readonly resolution: number;
}

/**
 * What the specification says about `reading`, in the lowest range that holds it (the highest for anything above).
 * An over-limit has infinite limits.
 */
export function meterUncertainty(accuracy: StatedAccuracy, reading: number): MeterUncertainty {
  const size = Math.abs(reading);
  const range = accuracy.ranges.find((full) => full >= size) ?? accuracy.ranges.at(-1) ?? size;
  const resolution = range / accuracy.counts;
  const limit = accuracy.ofReading * size + accuracy.digits * resolution;
  const standard = Math.max(rectangularStandard(limit), rectangularStandard(resolution / 2));
  return { limit, standard, resolution };
}
