/**
 * Carries a cloud of cars from reading to reading by sequential Monte Carlo. A reading is taken in by degrees, blurred at
 * first and then as sharp as it is: as soon as it would leave fewer than half of the points with any weight, they are
 * resampled, and moved about among the cars that the readings so far allow.
 *
 * Chopin (2002); Del Moral, Doucet and Jasra (2006), with their adaptive tempering; resampling is systematic (Kitagawa, 1996).
 */
import { type Cloud, type CloudModel, copied, drawn, effectiveOf } from './cloud.ts';
import type { Fact, Way } from './fact.ts';
import { feltAt, propose } from './move-car.ts';
import type { Random } from './random.ts';
import type { Slices } from './slices.ts';

/** Resampled when the effective number of cars is below this share of all (Del Moral, Doucet and Jasra, 2006). */
const EFFECTIVE_SHARE = 0.5;
/**
 * Moves go on until so many that change what counts have been accepted for each car, or so many were tried. Our choice:
 * with fewer the cars stay copies of each other, and the evidence is off by more than twice as much.
 */
const ACCEPTED_ENOUGH = 1;
const SWEEPS_MAX = 10;
/** Cars that fit a fact best, at which each value is changed to see whether the fact depends on it there. Our choice. */
const PROBES = 3;
/** A reading that hardly any car explains begins at this degree, and grows at least so many times. Our choice. */
const DEGREE_FIRST = 1e-4;
const DEGREE_GROWS = 1.05;
/** The next degree is looked for in strides so many times as long, ... */
const DEGREE_STRIDE = 4;
/** ... and then by so many bisections, in the logarithm. */
const DEGREE_STEPS = 5;

/** The cloud after `facts` instead of those that it knows; a slice a sweep over its cars. */
export function advanceCloud(
  cloud: Cloud,
  facts: readonly Fact[],
  model: CloudModel,
  random: Random,
): Slices<Cloud> {
  return new Advance(cloud, facts, model).run(random);
}

/** A cloud that was weighed and not moved. */
export interface WeighedCloud {
  readonly cloud: Cloud;
  /**
   * Logarithm of how likely all facts are together, roughly: where few of its cars meet a reading it is taken as blurred as
   * half of them explain it (a kernel density estimate). The cloud's own evidence says then whether any car met it by luck.
   */
  readonly roughly: number;
  /** Whether half of its cars explain the readings as sharp as they are. */
  readonly isPlain: boolean;
}

/** The cloud after `facts` instead of those that it knows, its cars left where they are. */
export function weighed(cloud: Cloud, facts: readonly Fact[], model: CloudModel): WeighedCloud {
  return new Advance(cloud, facts, model).weigh();
}

/** How a fact counts on the way from the facts known to those asked for. */
type Counting = 'kept' | 'new' | 'dropped';

class Advance {
  private readonly count: number;
  private readonly model: CloudModel;
  private readonly dims: number;
  private readonly asked: readonly Fact[];
  /** Old and new. */
  private readonly facts: readonly Fact[];
  private readonly parts: readonly Counting[];
  private points: Float64Array;
  /** By fact and car, of the new ones, which are taken in by degrees. */
  private ways: ((readonly Way[])[] | null)[];
  /** By fact and car, of those that are dropped by degrees: as sharp as they were. */
  private sharp: (Float64Array | null)[];
  /** At the present degree. */
  private logs: Float64Array[];
  private weights: Float64Array;
  private logEvidence: number;
  private readonly felt: Set<number>;
  private probed: readonly Fact[];
  /** Room for the car that is moved: its point, and by fact what is shown there and how likely the fact is. */
  private readonly point: Float64Array;
  private readonly shown: (readonly Way[])[] = [];
  private readonly sharps: Float64Array;
  private readonly drawn: Float64Array;

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
    this.point = new Float64Array(this.dims);
    this.sharps = new Float64Array(this.facts.length);
    this.drawn = new Float64Array(this.facts.length);
    this.points = cloud.points;
    this.weights = cloud.weights;
    this.logEvidence = cloud.logEvidence;
    this.ways = [
      ...cloud.facts.map(() => null),
      ...added.map((fact) => [...model.predictAll(fact, this.points, this.count)]),
    ];
    this.logs = [...cloud.logs, ...added.map(() => new Float64Array(this.count))];
    this.sharp = this.parts.map((part, index) => (part === 'dropped' ? this.logs[index]! : null));
  }

  *run(random: Random): Slices<Cloud> {
    let degree = 0;
    this.feel(random);
    while (degree < 1) {
      degree = this.nextDegree(degree);
      this.reweigh(degree);
      if (effectiveOf(this.weights) < EFFECTIVE_SHARE * this.count) {
        this.resample(random);
        yield* this.move(degree, random);
      }
    }
    return this.made();
  }

  weigh(): WeighedCloud {
    const degree = this.nextDegree(0);
    const roughly = this.logEvidence + this.weighedAt(degree).log;
    this.reweigh(1);
    return { cloud: this.made(), roughly, isPlain: degree === 1 };
  }

  private made(): Cloud {
    const order = this.asked.map((fact) => this.facts.indexOf(fact));
    return {
      count: this.count,
      points: this.points,
      weights: this.weights,
      facts: this.asked,
      logs: order.map((index) => this.logs[index]!),
      logEvidence: this.logEvidence,
      felt: [...this.felt],
      probed: this.probed,
    };
  }

  /** Logarithm of a fact's likelihood where its test shows `ways`, as sharp as a fact of its part is taken. */
  private sharpAt(index: number, ways: readonly Way[], degree: number): number {
    const sharpness = this.parts[index] === 'new' ? degree : 1;
    return this.model.logLikelihood(this.facts[index]!, ways, sharpness);
  }

  /** How much of such a logarithm counts at a degree. */
  private countedAt(index: number, degree: number): number {
    return this.parts[index] === 'dropped' ? 1 - degree : 1;
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
      const here = unknown.map((fact) => model.predict(fact, from));
      const differs = (other: Float64Array) =>
        unknown.some((fact, index) => model.differs(fact, here[index]!, other));
      for (const at of feltAt(from, differs, random, felt)) felt.add(at);
    }
  }

  /** Cars that explain these facts best, the best first. */
  private bestFor(facts: readonly Fact[]): number[] {
    const sums = new Float64Array(this.count);
    for (const fact of facts) {
      const index = this.facts.indexOf(fact);
      const ways = this.ways[index];
      for (let car = 0; car < this.count; car += 1)
        sums[car]! += ways ? this.sharpAt(index, ways[car]!, 1) : this.logs[index]![car]!;
    }
    return [...sums.keys()].sort((a, b) => sums[b]! - sums[a]! || a - b);
  }

  /**
   * The first degree that leaves too few cars, or 1. Beyond it there may be enough again: where a reading is so sharp that
   * none of them meets it, it is a slip on all alike.
   */
  private nextDegree(from: number): number {
    const enough = EFFECTIVE_SHARE * this.count;
    const leaves = (degree: number) => effectiveOf(this.weighedAt(degree).weights) >= enough;
    let low = Math.min(1, Math.max(DEGREE_FIRST, from * DEGREE_GROWS));
    let high = low;
    while (leaves(high)) {
      if (high === 1) return 1;
      low = high;
      high = Math.min(1, high * DEGREE_STRIDE);
    }
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
      const ways = this.ways[index];
      const sharp = this.sharp[index];
      const was = this.logs[index]!;
      const now = new Float64Array(count);
      const counted = this.countedAt(index, degree);
      for (let car = 0; car < count; car += 1) {
        const log = counted * (sharp ? sharp[car]! : this.sharpAt(index, ways![car]!, degree));
        now[car] = log;
        delta[car]! += log - was[car]!;
      }
      return now;
    });
    let most = -Infinity;
    for (let car = 0; car < count; car += 1)
      if (this.weights[car]! > 0) most = Math.max(most, delta[car]!);
    const weights = new Float64Array(count);
    let sum = 0;
    for (let car = 0; car < count; car += 1) {
      const weight = this.weights[car]!;
      if (!(weight > 0)) continue;
      weights[car] = weight * Math.exp(delta[car]! - most);
      sum += weights[car]!;
    }
    for (let car = 0; car < count; car += 1) weights[car]! /= sum;
    return { weights, logs, log: most + Math.log(sum) };
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
    this.logs = this.logs.map((logs) => chosenOf(logs, chosen, new Float64Array(count)));
    this.ways = this.ways.map(
      (ways) => ways && chosenOf(ways, chosen, new Array<readonly Way[]>(count)),
    );
    this.sharp = this.sharp.map(
      (sharp) => sharp && chosenOf(sharp, chosen, new Float64Array(count)),
    );
    this.weights = new Float64Array(count).fill(1 / count);
  }

  /** Moves each car several times; each sweep takes its differences from where all stood before it. */
  private *move(degree: number, random: Random): Slices<void> {
    // The newest first: it rejects most.
    const order = this.facts.map((_, index) => this.facts.length - 1 - index);
    const tops = Float64Array.from(this.facts, (_, index) => this.topAt(index, degree));
    const counted = [...this.felt];
    let accepted = 0;
    for (let sweep = 0; sweep < SWEEPS_MAX && accepted < ACCEPTED_ENOUGH * this.count; sweep += 1) {
      const before = this.points.slice();
      for (let car = 0; car < this.count; car += 1)
        if (this.moveOne(car, before, { order, tops, degree, counted }, random)) accepted += 1;
      yield;
    }
  }

  /** Whether a move was accepted that changes what counts. */
  private moveOne(
    car: number,
    before: Float64Array,
    at: {
      readonly order: readonly number[];
      readonly tops: Float64Array;
      readonly degree: number;
      /** Places of the values that count. */
      readonly counted: readonly number[];
    },
    random: Random,
  ): boolean {
    const { dims, model, point, shown, sharps, drawn: logs } = this;
    const { order, tops, degree, counted } = at;
    for (let place = 0; place < dims; place += 1) point[place] = before[car * dims + place]!;
    const ask = { car, before, felt: this.felt, counted, redraw: model.redraw };
    const isAside = propose(point, ask, random) === 'aside';
    let now = 0;
    let best = 0;
    for (const index of order) {
      now += this.logs[index]![car]!;
      best += tops[index]!;
    }
    const needed = now + Math.log(random.unit());
    for (const index of order) {
      const ways = model.predict(this.facts[index]!, point);
      shown[index] = ways;
      sharps[index] = this.sharpAt(index, ways, degree);
      const log = this.countedAt(index, degree) * sharps[index]!;
      logs[index] = log;
      best += log - tops[index]!;
      if (best < needed) return false;
    }
    if (!model.isPossible(point)) return false;
    this.points.set(point, car * dims);
    for (const index of order) {
      this.logs[index]![car] = logs[index]!;
      const ways = this.ways[index];
      if (ways) ways[car] = shown[index]!;
      const sharp = this.sharp[index];
      if (sharp) sharp[car] = sharps[index]!;
    }
    return !isAside;
  }
}

function chosenOf<List extends { [at: number]: unknown }>(
  list: List,
  chosen: Int32Array,
  into: List,
): List {
  for (let place = 0; place < chosen.length; place += 1) into[place] = list[chosen[place]!];
  return into;
}
