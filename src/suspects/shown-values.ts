/** What the readings have shown of the unknown values, whichever suspect is right. */
import type { Posterior } from './cloud-steps.ts';

/** One unknown value: where in 0..1 of what it was before any reading it now lies. */
export interface ShownValue {
  /** Place in a point. */
  readonly at: number;
  /** Nine cars in ten lie between low and high, and half of them below the middle. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** What is known of the car's values, in places and shares of a point. */
export interface CarKnowledge {
  readonly values: readonly ShownValue[];
  /** The likeliest value that is not as described, if one is. */
  readonly outside: OutsideValue | null;
}

/** All that is known of the car after some readings; a point has `dims` values. */
export function carKnown(posterior: Posterior, dims: number): CarKnowledge {
  const before = known.get(posterior);
  if (before) return before;
  const made = {
    values: shownValues(posterior, dims),
    outside: likeliestOutside(posterior, dims),
  };
  known.set(posterior, made);
  return made;
}
/** A session asks again at each reading what was known before it. */
const known = new WeakMap<Posterior, CarKnowledge>();

/** Suspects with less chance have no say in it. */
const HEARD_CHANCE = 1e-3;
const TAIL = 0.05;

/** All values, in the order of a point. */
export function shownValues({ clouds, chances }: Posterior, dims: number): ShownValue[] {
  const bins = new Float64Array(dims * BINS);
  clouds.forEach(({ count, points, weights }, row) => {
    if (chances[row]! < HEARD_CHANCE) return;
    for (let car = 0; car < count; car += 1)
      for (let at = 0; at < dims; at += 1) {
        const bin = Math.min(BINS - 1, Math.floor(points[car * dims + at]! * BINS));
        bins[at * BINS + bin]! += chances[row]! * weights[car]!;
      }
  });
  return Array.from({ length: dims }, (_, at) => {
    const own = bins.subarray(at * BINS, (at + 1) * BINS);
    const total = own.reduce((a, b) => a + b, 0);
    const quantile = (share: number): number => {
      let left = share * total;
      for (let bin = 0; bin < BINS; bin += 1) {
        if (left <= own[bin]!) return (bin + (own[bin]! > 0 ? left / own[bin]! : 0)) / BINS;
        left -= own[bin]!;
      }
      return 1;
    };
    return { at, low: quantile(TAIL), middle: quantile(0.5), high: quantile(1 - TAIL) };
  });
}
/** Places told apart in 0..1. */
const BINS = 256;

/** A value that is not as described. */
export interface OutsideValue {
  readonly at: number;
  /** Mean of where it lies: below 0 or above 1. */
  readonly middle: number;
  /** Chance that it is this one, if any is. */
  readonly chance: number;
}

/** The likeliest value that is not as described; null where no such cars were looked at. */
export function likeliestOutside(
  { outside, chances }: Posterior,
  dims: number,
): OutsideValue | null {
  const mass = new Float64Array(dims);
  const mean = new Float64Array(dims);
  outside.forEach((cloud, row) => {
    if (!cloud) return;
    for (let car = 0; car < cloud.count; car += 1) {
      const point = cloud.points.subarray(car * dims, (car + 1) * dims);
      const at = point.findIndex((value) => value < 0 || value > 1);
      if (at < 0) continue;
      const weight = chances[row]! * cloud.weights[car]!;
      mass[at]! += weight;
      mean[at]! += weight * point[at]!;
    }
  });
  const total = mass.reduce((a, b) => a + b, 0);
  if (!(total > 0)) return null;
  const at = mass.indexOf(Math.max(...mass));
  return { at, middle: mean[at]! / mass[at]!, chance: mass[at]! / total };
}
