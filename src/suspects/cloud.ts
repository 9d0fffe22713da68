/**
 * The cars that may stand here under one suspect: points of the unit cube of all unknown values, with weights, and what
 * the readings say on each of them.
 */
import type { Fact, Way } from './fact.ts';
import type { Random } from './random.ts';

/** What the cars of one suspect are asked. */
export interface CloudModel {
  /**
   * Length of a point; each of its values is within 0 to 1, all alike likely before any reading. A value outside, by up
   * to one either way, stays on its side unless it is redrawn.
   */
  readonly dims: number;
  /** What the test of a fact shows at a point. */
  readonly predict: (fact: Fact, point: Float64Array) => readonly Way[];
  /** The same for each of `count` points, one after the other in `points`. */
  readonly predictAll: (
    fact: Fact,
    points: Float64Array,
    count: number,
  ) => readonly (readonly Way[])[];
  /**
   * Logarithm of how likely a fact is where its test shows this, read as sharply as it was at degree 1, and less so the
   * nearer the degree comes to 0.
   */
  readonly logLikelihood: (fact: Fact, ways: readonly Way[], degree: number) => number;
  /** The greatest that can be, for a fact. */
  readonly topLogLikelihood: (fact: Fact, degree: number) => number;
  /** Places of values that a fact's test depends on, wherever a car of the beginning stands. */
  readonly feltAtFirst: (fact: Fact) => readonly number[];
  /** Whether a fact's test shows something else than `ways` at a point, to a reader of its instrument. */
  readonly differs: (fact: Fact, ways: readonly Way[], point: Float64Array) => boolean;
  /** Whether a car of this point would come to the shop with this suspect. */
  readonly isPossible: (point: Float64Array) => boolean;
  /** Draws something of a point anew, as likely from one point to another as back; `felt` are the places that count. */
  readonly redraw: (point: Float64Array, felt: readonly number[], random: Random) => void;
}

/** Cars with their weights. */
export interface Cloud {
  readonly count: number;
  /** `points[car * dims + quantity]` */
  readonly points: Float64Array;
  /** By car, summing to 1. */
  readonly weights: Float64Array;
  readonly facts: readonly Fact[];
  /** Logarithm of how likely a fact is on a car, `logs[fact][car]`. */
  readonly logs: readonly Float64Array[];
  /** Logarithm of how likely all facts are together, whichever car it is. */
  readonly logEvidence: number;
  /** Places of the values that some of the `probed` facts depend on. */
  readonly felt: readonly number[];
  /** Facts of which it was looked at what they depend on: all but those that were only weighed. */
  readonly probed: readonly Fact[];
}

/** Cars before any reading. */
export function startCloud(points: Float64Array, dims: number): Cloud {
  const count = points.length / dims;
  const weights = new Float64Array(count).fill(1 / count);
  return {
    count,
    points,
    weights,
    facts: [],
    logs: [],
    logEvidence: 0,
    felt: [],
    probed: [],
  };
}

/** Fewer cars for the same facts, drawn by weight and left where they are. */
export function fewer(cloud: Cloud, count: number): Cloud {
  if (cloud.count <= count) return cloud;
  const chosen = drawn(cloud.weights, count, 0.5);
  const dims = cloud.points.length / cloud.count;
  return {
    ...cloud,
    count,
    points: copied(cloud.points, dims, chosen),
    weights: new Float64Array(count).fill(1 / count),
    logs: cloud.logs.map((logs) => Float64Array.from(chosen, (from) => logs[from]!)),
  };
}

/**
 * The cars of one suspect for another one, whose `own` values are in `points` and whose test may show something else:
 * weighed by how much likelier the facts are with it (importance sampling; Kong, Liu and Wong, 1994).
 */
export function borrowed(
  cloud: Cloud,
  points: Float64Array,
  { logLikelihood }: CloudModel,
  waysOf: (fact: Fact, car: number) => readonly Way[],
): Cloud {
  const { count, facts } = cloud;
  const logs = facts.map((fact) =>
    Float64Array.from({ length: count }, (_, car) => logLikelihood(fact, waysOf(fact, car), 1)),
  );
  const gains = cloud.weights.map((weight, car) =>
    facts.reduce((sum, _, at) => sum + logs[at]![car]! - cloud.logs[at]![car]!, Math.log(weight)),
  );
  const most = Math.max(...gains);
  const parts = gains.map((gain) => Math.exp(gain - most));
  const sum = parts.reduce((a, b) => a + b, 0);
  return {
    ...{ count, points, facts, logs },
    weights: parts.map((part) => part / sum),
    logEvidence: cloud.logEvidence + most + Math.log(sum),
    felt: [],
    probed: [],
  };
}

/**
 * Of two clouds for the same facts the one that explains them better, with the mean of what both say of how likely they
 * are: each is right on average (Del Moral, 2004).
 */
export function averaged(one: Cloud, other: Cloud): Cloud {
  const better = one.logEvidence >= other.logEvidence ? one : other;
  const less = Math.min(one.logEvidence, other.logEvidence) - better.logEvidence;
  return { ...better, logEvidence: better.logEvidence + Math.log((1 + Math.exp(less)) / 2) };
}

/** Whether its cars are no longer those of the beginning. */
export function isMoved({ felt }: Cloud): boolean {
  return felt.length > 0;
}

/** Effective number of cars: 1 / sum of squared weights (Kong, Liu and Wong, 1994). */
export function effectiveCount({ weights }: Cloud): number {
  return effectiveOf(weights);
}

/** The same of weights that sum to 1. */
export function effectiveOf(weights: Float64Array): number {
  let sum = 0;
  for (let car = 0; car < weights.length; car += 1) sum += weights[car]! * weights[car]!;
  return 1 / sum;
}

/** Which cars are drawn by weight, systematically: at `offset` of each part of the whole, 0 to 1. */
export function drawn(weights: Float64Array, count: number, offset: number): Int32Array {
  const chosen = new Int32Array(count);
  let car = 0;
  let sum = weights[0]!;
  for (let place = 0; place < count; place += 1) {
    const wanted = (place + offset) / count;
    while (sum < wanted && car < weights.length - 1) {
      car += 1;
      sum += weights[car]!;
    }
    chosen[place] = car;
  }
  return chosen;
}

/** The points of the `chosen` cars. */
export function copied(points: Float64Array, dims: number, chosen: Int32Array): Float64Array {
  const copy = new Float64Array(chosen.length * dims);
  chosen.forEach((from, place) => {
    copy.set(points.subarray(from * dims, (from + 1) * dims), place * dims);
  });
  return copy;
}
