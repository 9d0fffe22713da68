/**
 * Which value of a car breaks a tree: the one that best tells the cars of a fault that end wrongly from those that end
 * rightly. Of each quantity the area under the ROC curve, which is the statistic of Mann and Whitney (1947) over the number
 * of pairs: the chance that a car that ends wrongly has the greater value. Where no quantity lies to one side, one whose
 * wrong cars lie close together in the middle. What mere luck would often find among so many quantities is not told.
 */
import type { CarValues } from './car-values.ts';

/** A quantity and where the cars that end wrongly have it. */
export interface BreakingValue {
  readonly key: string;
  readonly words: string;
  readonly unit: CarValues['unit'];
  /** In SI units; null where no car that ends rightly lies further out on this side. */
  readonly low: number | null;
  readonly high: number | null;
  /** Of a quantity that is one of several ways, those that end wrongly. */
  readonly ways: readonly string[] | null;
  /** Not all of the wrong ones, but nine in ten of them on each side. */
  readonly isMostly: boolean;
  /** Area under the ROC curve, 0 to 1; one half tells nothing. */
  readonly area: number;
}

/** An area this far from one half says that three of four pairs come in the same order. Our choice. */
const AREA_AWAY_MIN = 0.25;
/** Of the right cars at most so many may lie among the wrong ones for a place in the middle to tell. Our choice. */
const AMONG_MAX = 0.25;
/** Chance that luck alone finds a quantity as telling among all that were looked at. The usual 5 %. */
const LUCK_MAX = 0.05;
/** With so few on one side the normal approximation of the statistic is not used. */
const FEW = 8;
/** Where the range of the wrong cars holds more than this share of the right ones, the outermost tenths are left out. Our choice. */
const OVERLAP_MAX = 0.5;
const OUTER = 0.1;

/** The value that tells the samples `wrong` from the samples `right`, or null when no single one does. */
export function breakingValue(
  quantities: readonly CarValues[],
  wrong: readonly number[],
  right: readonly number[],
): BreakingValue | null {
  if (wrong.length === 0 || right.length === 0) return null;
  const luck = LUCK_MAX / quantities.length;
  let best: { readonly quantity: CarValues; readonly area: number } | null = null;
  let middle: { readonly quantity: CarValues; readonly area: number; among: number } | null = null;
  for (const quantity of quantities) {
    const bad = picked(quantity, wrong);
    const good = picked(quantity, right);
    const area = areaOf(bad, good);
    const away = Math.abs(area - 0.5);
    if (
      away >= AREA_AWAY_MIN &&
      away > Math.abs((best?.area ?? 0.5) - 0.5) &&
      luckOfArea(0.5 - away, bad.length, good.length) <= luck
    )
      best = { quantity, area };
    const among = countWithin(good, bad[0]!, bad.at(-1)!) / good.length;
    if (
      among <= AMONG_MAX &&
      among < (middle?.among ?? 1) &&
      luckOfWidth(among, bad.length, good.length) <= luck
    )
      middle = { quantity, area, among };
  }
  const found = best ?? middle;
  return found && told(found.quantity, found.area, wrong, right);
}

function told(
  quantity: CarValues,
  area: number,
  wrong: readonly number[],
  right: readonly number[],
): BreakingValue {
  const { key, words, unit, ways } = quantity;
  const bad = picked(quantity, wrong);
  const good = picked(quantity, right);
  const overlap = countWithin(good, bad[0]!, bad.at(-1)!) / good.length;
  const isMostly = ways === null && overlap > OVERLAP_MAX;
  const cut = isMostly ? Math.floor(OUTER * bad.length) : 0;
  const low = bad[cut]!;
  const high = bad[bad.length - 1 - cut]!;
  const isAll = good[0]! >= low && good.at(-1)! <= high;
  return {
    key,
    words,
    unit,
    low: isAll || good[0]! < low ? low : null,
    high: isAll || good.at(-1)! > high ? high : null,
    ways: ways && [...new Set(bad)].map((way) => ways[way] ?? String(way)),
    isMostly,
    area,
  };
}

/** In rising order. */
function picked({ values }: CarValues, samples: readonly number[]): Float64Array {
  return Float64Array.from(samples, (sample) => values[sample]!).sort();
}

/** Chance that a wrong car has the greater value than a right one, half of it where both have the same. */
function areaOf(bad: Float64Array, good: Float64Array): number {
  let pairs = 0;
  let below = 0;
  let upTo = 0;
  for (const value of bad) {
    while (below < good.length && good[below]! < value) below += 1;
    upTo = Math.max(upTo, below);
    while (upTo < good.length && good[upTo]! <= value) upTo += 1;
    pairs += (below + upTo) / 2;
  }
  return pairs / (bad.length * good.length);
}

function countWithin(sorted: Float64Array, low: number, high: number): number {
  let count = 0;
  for (const value of sorted) if (value >= low && value <= high) count += 1;
  return count;
}

/**
 * Chance, at most, of an area so far out on either side where the quantity has nothing to do with it: with many cars on
 * both sides by the normal approximation, with few on one by the sum of as many even numbers in 0..1 (Irwin 1927, Hall
 * 1927), whose chance to stay below s is at most s^n / n!.
 */
function luckOfArea(area: number, wrong: number, right: number): number {
  const few = Math.min(wrong, right);
  const many = Math.max(wrong, right);
  if (few > FEW) {
    const deviations = (0.5 - area) / Math.sqrt((few + many + 1) / (12 * few * many));
    // Mills' ratio bounds the tail of the normal distribution.
    return (2 * Math.exp(-(deviations ** 2) / 2)) / (deviations * Math.sqrt(2 * Math.PI));
  }
  // As many places lie between and beyond the others as there are others and one more.
  const sum = (few * (area * many + 1)) / (many + 1);
  let chance = 2;
  for (let k = 1; k <= few; k += 1) chance *= sum / k;
  return chance;
}

/** Chance that all of `wrong` even numbers in 0..1 lie within so narrow a part, wherever it is: their range is Beta(n - 1, 2). */
function luckOfWidth(among: number, wrong: number, right: number): number {
  const width = (among * right + 1) / (right + 1);
  return wrong * width ** (wrong - 1) - (wrong - 1) * width ** wrong;
}
