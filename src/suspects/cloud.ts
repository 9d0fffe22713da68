/**
 * The cars that may stand here under one suspect: points of the unit cube of all unknown values, carried from reading to
 * reading by sequential Monte Carlo. A reading is taken in by degrees, blurred at first and then as sharp as it is: as
 * soon as it would leave fewer than half of the points with any weight, they are resampled, and moved about among the
 * cars that the readings so far allow.
 *
 * Chopin (2002); Del Moral, Doucet and Jasra (2006), with their adaptive tempering; resampling is systematic (Kitagawa,
 * 1996); the moves are those of differential evolution (ter Braak, 2006) with crossover (Vrugt et al., 2009).
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
  /** By car and fact, `ways[fact][car]`: what is shown, ... */
  readonly ways: readonly (readonly (readonly Way[])[])[];
  /** ... and the logarithm of how likely the fact is there, `logs[fact][car]`. */
  readonly logs: readonly Float64Array[];
  /** Logarithm of how likely all facts are together, whichever car it is. */
  readonly logEvidence: number;
  /** Places of the values that some of the `probed` facts depend on. */
  readonly felt: readonly number[];
  /** Facts of which it was looked at what they depend on: all but those that were only weighed. */
  readonly probed: readonly Fact[];
}

/** Resampled when the effective number of cars is below this share of all (Del Moral, Doucet and Jasra, 2006). */
const EFFECTIVE_SHARE = 0.5;
/**
 * Moves go on until so many that change what counts have been accepted for each car, or so many were tried. Our choice:
 * with fewer the cars stay copies of each other, and the evidence is off by more than twice as much.
 */
const ACCEPTED_ENOUGH = 1;
const SWEEPS_MAX = 10;
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
/** Cars that fit a fact best, at which each value is changed to see whether the fact depends on it there. Our choice. */
const PROBES = 3;
/** Added to each changed value, so that equal points come apart. Our choice. */
const JITTER = 1e-3;
/** Bisections to the next degree of a reading, in the logarithm. */
const DEGREE_STEPS = 10;
/** A reading that hardly any car explains begins at this degree, and grows at least so many times. Our choice. */
const DEGREE_FIRST = 1e-4;
const DEGREE_GROWS = 1.05;

/** Cars before any reading. */
export function startCloud(points: Float64Array, dims: number): Cloud {
  const count = points.length / dims;
  const weights = new Float64Array(count).fill(1 / count);
  return {
    count,
    points,
    weights,
    facts: [],
    ways: [],
    logs: [],
    logEvidence: 0,
    felt: [],
    probed: [],
  };
}

/** The cloud after `facts` instead of those that it knows. Without `random` nothing is moved, only weighed. */
export function advance(
  cloud: Cloud,
  facts: readonly Fact[],
  model: CloudModel,
  random: Random | null,
): Cloud {
  const made = new Advance(cloud, facts, model);
  return made.run(random);
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
    ways: cloud.ways.map((ways) => Array.from(chosen, (from) => ways[from]!)),
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
  { dims, logLikelihood }: CloudModel,
  waysOf: (fact: Fact, point: Float64Array, lent: readonly Way[]) => readonly Way[],
): Cloud {
  const { count, facts } = cloud;
  const ways = facts.map((fact, at) =>
    cloud.ways[at]!.map((lent, car) =>
      waysOf(fact, points.subarray(car * dims, (car + 1) * dims), lent),
    ),
  );
  const logs = facts.map((fact, at) =>
    Float64Array.from(ways[at]!, (shown) => logLikelihood(fact, shown, 1)),
  );
  const gains = cloud.weights.map((weight, car) =>
    facts.reduce((sum, _, at) => sum + logs[at]![car]! - cloud.logs[at]![car]!, Math.log(weight)),
  );
  const most = Math.max(...gains);
  const parts = gains.map((gain) => Math.exp(gain - most));
  const sum = parts.reduce((a, b) => a + b, 0);
  return {
    ...{ count, points, facts, ways, logs },
    weights: parts.map((part) => part / sum),
    logEvidence: cloud.logEvidence + most + Math.log(sum),
    felt: [],
    probed: [],
  };
}

/** Whether its cars are no longer those of the beginning. */
export function isMoved({ felt }: Cloud): boolean {
  return felt.length > 0;
}

/** Effective number of cars: 1 / sum of squared weights (Kong, Liu and Wong, 1994). */
export function effectiveCount({ weights }: Cloud): number {
  return effectiveOf(weights);
}

function effectiveOf(weights: Float64Array): number {
  return 1 / weights.reduce((sum, weight) => sum + weight * weight, 0);
}

/** How a fact counts on the way from the facts known to those asked for. */
type Part = 'kept' | 'new' | 'dropped';

class Advance {
  private readonly count: number;
  private readonly model: CloudModel;
  private readonly dims: number;
  private readonly asked: readonly Fact[];
  /** Old and new. */
  private readonly facts: readonly Fact[];
  private readonly parts: readonly Part[];
  private points: Float64Array;
  private ways: (readonly Way[])[][];
  /** At the present degree. */
  private logs: Float64Array[];
  private weights: Float64Array;
  private logEvidence: number;
  private readonly felt: Set<number>;
  private probed: readonly Fact[];

  constructor(cloud: Cloud, facts: readonly Fact[], model: CloudModel) {
    this.model = model;
    this.dims = model.dims;
    this.count = cloud.count;
    this.asked = facts;
    const added = facts.filter((fact) => !cloud.facts.includes(fact));
    this.probed = cloud.probed;
    this.felt = new Set(cloud.felt);
    this.facts = [...cloud.facts, ...added];
    this.parts = this.facts.map((fact) =>
      cloud.facts.includes(fact) ? (facts.includes(fact) ? 'kept' : 'dropped') : 'new',
    );
    this.points = cloud.points;
    this.weights = cloud.weights;
    this.logEvidence = cloud.logEvidence;
    this.ways = [
      ...cloud.ways.map((ways) => [...ways]),
      ...added.map((fact) => [...model.predictAll(fact, this.points, this.count)]),
    ];
    this.logs = [...cloud.logs, ...added.map(() => new Float64Array(this.count))];
  }

  run(random: Random | null): Cloud {
    let degree = 0;
    if (random) this.feel(random);
    while (degree < 1) {
      degree = random ? this.nextDegree(degree) : 1;
      this.reweigh(degree);
      if (random && effectiveOf(this.weights) < EFFECTIVE_SHARE * this.count) {
        this.resample(random);
        this.move(degree, random);
      }
    }
    return this.made();
  }

  private made(): Cloud {
    const order = this.asked.map((fact) => this.facts.indexOf(fact));
    return {
      count: this.count,
      points: this.points,
      weights: this.weights,
      facts: this.asked,
      ways: order.map((index) => this.ways[index]!),
      logs: order.map((index) => this.logs[index]!),
      logEvidence: this.logEvidence,
      felt: [...this.felt],
      probed: this.probed,
    };
  }

  /** Logarithm of a fact's likelihood where its test shows `ways`, as far as it counts at this degree. */
  private logAt(index: number, ways: readonly Way[], degree: number): number {
    const part = this.parts[index]!;
    const fact = this.facts[index]!;
    if (part === 'dropped') return (1 - degree) * this.model.logLikelihood(fact, ways, 1);
    return this.model.logLikelihood(fact, ways, part === 'new' ? degree : 1);
  }

  private topAt(index: number, degree: number): number {
    const part = this.parts[index]!;
    const fact = this.facts[index]!;
    if (part === 'dropped') return Math.max(0, (1 - degree) * this.model.topLogLikelihood(fact, 1));
    return this.model.topLogLikelihood(fact, part === 'new' ? degree : 1);
  }

  /** Finds the values that facts depend on which were not looked at before. */
  private feel(random: Random): void {
    const { dims, points, model, felt } = this;
    const unknown = this.asked.filter((fact) => !this.probed.includes(fact));
    this.probed = this.asked;
    if (unknown.length === 0) return;
    for (const fact of unknown) for (const at of model.feltAtFirst(fact)) felt.add(at);
    // Where the new facts lead a value may count that counts nowhere else.
    for (const car of this.bestFor(unknown).slice(0, PROBES)) {
      const from = points.subarray(car * dims, (car + 1) * dims);
      const differs = (other: Float64Array) =>
        unknown.some((fact) =>
          model.differs(fact, this.ways[this.facts.indexOf(fact)]![car]!, other),
        );
      for (const at of feltAt(from, differs, random, felt)) felt.add(at);
    }
  }

  /** Cars that explain these facts best, the best first. */
  private bestFor(facts: readonly Fact[]): number[] {
    const sums = new Float64Array(this.count);
    for (const fact of facts)
      this.ways[this.facts.indexOf(fact)]!.forEach((ways, car) => {
        sums[car]! += this.model.logLikelihood(fact, ways, 1);
      });
    return [...sums.keys()].sort((a, b) => sums[b]! - sums[a]! || a - b);
  }

  /** The greatest degree that leaves enough cars. */
  private nextDegree(from: number): number {
    const enough = EFFECTIVE_SHARE * this.count;
    const leaves = (degree: number) => effectiveOf(this.weighedAt(degree).weights) >= enough;
    if (leaves(1)) return 1;
    let low = Math.max(DEGREE_FIRST, from * DEGREE_GROWS);
    let high = 1;
    for (let step = 0; step < DEGREE_STEPS; step += 1) {
      const middle = Math.sqrt(low * high);
      if (leaves(middle)) low = middle;
      else high = middle;
    }
    // A hair beyond, so that it is resampled here.
    return Math.min(1, high);
  }

  /** Weights and logarithms at another degree, and the evidence that it adds. */
  private weighedAt(degree: number): {
    readonly weights: Float64Array;
    readonly logs: readonly (Float64Array | null)[];
    readonly log: number;
  } {
    const { count } = this;
    const delta = new Float64Array(count);
    const logs = this.parts.map((part, index) => {
      if (part === 'kept') return null;
      const ways = this.ways[index]!;
      const was = this.logs[index]!;
      const now = Float64Array.from(ways, (shown) => this.logAt(index, shown, degree));
      for (let car = 0; car < count; car += 1) delta[car]! += now[car]! - was[car]!;
      return now;
    });
    let most = -Infinity;
    for (let car = 0; car < count; car += 1)
      if (this.weights[car]! > 0) most = Math.max(most, delta[car]!);
    const weights = this.weights.map((weight, car) =>
      weight > 0 ? weight * Math.exp(delta[car]! - most) : 0,
    );
    const sum = weights.reduce((a, b) => a + b, 0);
    return { weights: weights.map((weight) => weight / sum), logs, log: most + Math.log(sum) };
  }

  private reweigh(degree: number): void {
    const { weights, logs, log } = this.weighedAt(degree);
    this.weights = weights;
    this.logEvidence += log;
    this.logs = this.logs.map((was, index) => logs[index] ?? was);
  }

  private resample(random: Random): void {
    const { count } = this;
    const chosen = drawn(this.weights, count, random.unit());
    this.points = copied(this.points, this.dims, chosen);
    this.logs = this.logs.map((logs) => Float64Array.from(chosen, (from) => logs[from]!));
    this.ways = this.ways.map((ways) => Array.from(chosen, (from) => ways[from]!));
    this.weights = new Float64Array(count).fill(1 / count);
  }

  /** Moves each car several times; each sweep takes its differences from where all stood before it. */
  private move(degree: number, random: Random): void {
    // The newest first: it rejects most.
    const order = this.facts.map((_, index) => this.facts.length - 1 - index);
    const tops = this.facts.map((_, index) => this.topAt(index, degree));
    let accepted = 0;
    for (let sweep = 0; sweep < SWEEPS_MAX && accepted < ACCEPTED_ENOUGH * this.count; sweep += 1) {
      const before = this.points.slice();
      for (let car = 0; car < this.count; car += 1)
        if (this.moveOne(car, before, { order, tops, degree }, random)) accepted += 1;
    }
  }

  /** Whether a move was accepted that changes what counts. */
  private moveOne(
    car: number,
    before: Float64Array,
    at: {
      readonly order: readonly number[];
      readonly tops: readonly number[];
      readonly degree: number;
    },
    random: Random,
  ): boolean {
    const { dims, model } = this;
    const { order, tops, degree } = at;
    const point = before.slice(car * dims, (car + 1) * dims);
    const isAside = this.propose(point, car, before, random) === 'aside';
    let now = 0;
    let best = 0;
    for (const index of order) {
      now += this.logs[index]![car]!;
      best += tops[index]!;
    }
    const needed = now + Math.log(random.unit());
    const shown: (readonly Way[])[] = [];
    const logs = new Float64Array(order.length);
    for (const index of order) {
      const ways = model.predict(this.facts[index]!, point);
      shown[index] = ways;
      logs[index] = this.logAt(index, ways, degree);
      best += logs[index]! - tops[index]!;
      if (best < needed) return false;
    }
    if (!model.isPossible(point)) return false;
    this.points.set(point, car * dims);
    for (const index of order) {
      this.logs[index]![car] = logs[index]!;
      this.ways[index]![car] = shown[index]!;
    }
    return !isAside;
  }

  /** What no fact depends on is drawn anew at times; what counts is moved by the difference of two other cars. */
  private propose(
    point: Float64Array,
    car: number,
    before: Float64Array,
    random: Random,
  ): 'aside' | 'anew' | 'step' {
    const { dims, count, felt } = this;
    if (random.unit() < REFRESHED)
      for (let at = 0; at < dims; at += 1) {
        const anew = random.unit();
        if (!felt.has(at)) point[at] = cellOf(point[at]!) + anew;
      }
    const kind = random.unit();
    if (kind < ASIDE_CHANCE) return 'aside';
    const counted = [...felt];
    if (kind < ASIDE_CHANCE + ANEW_CHANCE || counted.length === 0) {
      this.model.redraw(point, counted, random);
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

function copied(points: Float64Array, dims: number, chosen: Int32Array): Float64Array {
  const copy = new Float64Array(chosen.length * dims);
  chosen.forEach((from, place) => {
    copy.set(points.subarray(from * dims, (from + 1) * dims), place * dims);
  });
  return copy;
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
