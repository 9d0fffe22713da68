/**
 * Where a car is moved to: a proposal as likely from one point to another as back, whatever the readings say. Differential
 * evolution (ter Braak, 2006) with crossover (Vrugt et al., 2009).
 */
import type { Random } from './random.ts';

/** Which car is moved, among which. */
export interface MoveAsk {
  readonly car: number;
  /** Points of all cars before the sweep, `before[car * dims + quantity]`. */
  readonly before: Float64Array;
  /** Places of the values that count. */
  readonly felt: ReadonlySet<number>;
  /** The same as a list. */
  readonly counted: readonly number[];
  /** Draws something of a point anew, as likely from one point to another as back. */
  readonly redraw: (point: Float64Array, felt: readonly number[], random: Random) => void;
}

/** The best step of a random walk is 2.38 / sqrt(2 d) times a difference of two points (ter Braak, 2006), ... */
const DIFFERENCE_FACTOR = 2.38;
/** ... and readings tie down a few values at a time, however many there are. Our choice. */
const TIED_VALUES = 3;
/** Steps are as long as that times 0.3 to 1, evenly, and one in five is a short one. Our choice. */
const REACH_LEAST = 0.3;
const REACH_SHORT = 0.2;
const SHORT_CHANCE = 0.2;
/** Shares of the values that count which a move changes: mostly all, which follows how they hang together. Our choice. */
const CROSSOVERS = [1, 1, 0.5];
/** Chance of a move that draws a few of them anew instead, which leaps from one alternative to another. Our choice. */
const ANEW_CHANCE = 0.1;
const ANEW_MAX = 2;
/** Chance that what no fact depends on is drawn anew beside a move. Our choice. */
const REFRESHED = 0.3;
/** Chance of a move that leaves them all alone. Our choice. */
const ASIDE_CHANCE = 0.05;
/** Added to each changed value, so that equal points come apart. Our choice. */
const JITTER = 1e-3;
/**
 * Moves the point of a car, in place: what no fact depends on is drawn anew at times; what counts is moved by the
 * difference of two other cars, or a few of it are drawn anew. Says which.
 */
export function propose(
  point: Float64Array,
  { car, before, felt, counted, redraw }: MoveAsk,
  random: Random,
): 'aside' | 'anew' | 'step' {
  const dims = point.length;
  const count = before.length / dims;
  if (random.unit() < REFRESHED)
    for (let at = 0; at < dims; at += 1) {
      const anew = random.unit();
      if (!felt.has(at)) point[at] = cellOf(point[at]!) + anew;
    }
  const kind = random.unit();
  if (kind < ASIDE_CHANCE) return 'aside';
  if (kind < ASIDE_CHANCE + ANEW_CHANCE || counted.length === 0) {
    redraw(point, counted, random);
    return 'anew';
  }
  // Two other cars: a difference that had this car in it would not be as likely back as forth.
  const one = otherThan(car, random.below(count - 1));
  const two = otherThan(car, random.below(count - 1));
  const share = CROSSOVERS[random.below(CROSSOVERS.length)]!;
  const always = counted[random.below(counted.length)]!;
  const isShort = random.unit() < SHORT_CHANCE;
  const reach = isShort ? REACH_SHORT : REACH_LEAST + (1 - REACH_LEAST) * random.unit();
  const factor = (DIFFERENCE_FACTOR / Math.sqrt(2 * TIED_VALUES)) * reach;
  for (const at of counted) {
    const isChanged = random.unit() < share;
    const noise = JITTER * (random.unit() - 0.5);
    if (!isChanged && at !== always) continue;
    const difference = before[one * dims + at]! - before[two * dims + at]!;
    const from = point[at]!;
    const cell = cellOf(from);
    point[at] = cell + reflected(from - cell + factor * difference + noise);
  }
  return 'step';
}

/** Places of the values, but for those `known`, whose change `differs` notices at a point. */
export function feltAt(
  point: Float64Array,
  differs: (other: Float64Array) => boolean,
  random: Random,
  known: ReadonlySet<number> = NONE_KNOWN,
): number[] {
  const other = point.slice();
  return [...point.keys()].filter((at) => {
    const anew = random.unit();
    if (known.has(at)) return false;
    other[at] = cellOf(point[at]!) + anew;
    const isFelt = differs(other);
    other[at] = point[at]!;
    return isFelt;
  });
}
const NONE_KNOWN: ReadonlySet<number> = new Set();

/** Below 0, within 0 to 1, or above: where a value stays unless it is redrawn. */
function cellOf(value: number): number {
  return value > 1 ? 1 : value < 0 ? -1 : 0;
}

function otherThan(one: number, other: number): number {
  return other >= one ? other + 1 : other;
}

/** Draws a few of the values that count anew, each within 0 to 1. */
export function redrawFew(point: Float64Array, felt: readonly number[], random: Random): void {
  const many = 1 + random.below(ANEW_MAX);
  for (let i = 0; i < many; i += 1) {
    const at = felt[random.below(Math.max(1, felt.length))] ?? random.below(point.length);
    const anew = random.unit();
    if (cellOf(point[at]!) === 0) point[at] = anew;
  }
}

/** Back into 0 to 1 by mirrors at both ends, which keeps the walk even. */
function reflected(value: number): number {
  const turned = Math.abs(value) % 2;
  return turned > 1 ? 2 - turned : turned;
}
