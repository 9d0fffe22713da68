/**
 * Faults, their sizes and the unknown values of the car, all together, after some readings: a cloud of cars for each
 * suspect (`cloud.ts`), the suspects' chances from how likely the readings are over all its cars, and a table of what
 * every test would show on the cars that are left. Each state follows from the one before it by its last reading, so
 * that the same readings in the same order always give the same result.
 */
import type { Shown } from '../circuit/test.ts';
import {
  advance,
  type Cloud,
  type CloudModel,
  effectiveCount,
  redrawFew,
  startCloud,
  thinned,
} from './cloud.ts';
import type { ErrorModel } from './error-model.ts';
import {
  areApart,
  type Fact,
  factsOf,
  logLikelihood,
  misreadChance,
  topLogLikelihood,
  type Way,
} from './fact.ts';
import type { Reading } from './likelihood.ts';
import {
  buildTable,
  type Candidate,
  HEALTHY,
  type PredictionTable,
  type TableTest,
} from './prediction-table.ts';
import { normalised } from './prior.ts';
import { randomOf } from './random.ts';
import { joinedReach, type Reach, reachOf } from './shown-reach.ts';

/** The cars on which a hypothesis would be the complaint. */
export interface CarsOf {
  /** The first `count` cars before any reading, one point of the unit cube after the other. */
  readonly start: (count: number) => Float64Array;
  readonly isPossible: (point: Float64Array) => boolean;
  /** What a test shows on such a car, with how often where it is a matter of chance. */
  readonly ways: (test: number, point: Float64Array) => readonly Way[];
  /** The same of which one value is not as described; null where nothing could be. */
  readonly outside: {
    readonly start: (count: number) => Float64Array;
    /** Draws anew, at times with another value that is not as described. */
    readonly redraw: CloudModel['redraw'];
  } | null;
}

export interface CarSampler {
  /** Number of unknown values. */
  readonly dims: number;
  readonly cars: (candidate: string) => CarsOf;
  /** Two candidates at once; null where the two cannot be. */
  readonly pair: ((first: string, second: string) => CarsOf | null) | null;
}

/** Cars a suspect. Our choice. */
const CARS = 128;
/** Of each suspect so many cars stand for it when tests are planned. Our choice. */
const PLANNED_CARS = 32;
/** Of those of which one value is not as described. */
const OUTSIDE_CARS = 192;
/** So many are looked through where a reading fits none of these: a value far out is met by few. Our choice. */
const OUTSIDE_SEARCHED = 1536;
/** One car in so many is not as its circuit file describes it. Our assumption. */
export const OUTSIDE_CHANCE = 0.03;
/** So many leading suspects, and the sound circuit, are held against such cars. Our choice. */
const OUTSIDE_LEADERS = 3;
/** A suspect with less chance than this is only weighed: its cars are not moved. Our choice. */
const LIVE_CHANCE = 1e-4;
/** Its weights then rest on so few cars that it starts anew once it matters again. */
const WORN_CARS = 12;
/** So many stand for the sound circuit where it is asked what is good for this car. Our choice. */
const SOUND_CARS = 64;
/** Of two faults at once fewer will do. Our choice. */
const PAIR_CARS = 64;
/** What suspects with more chance show on the cars that are left is added to what any car shows. Our choice. */
const REACHED_CHANCE = 0.01;
/** States kept: more than the readings of a session. */
const STATES_KEPT = 24;

/** Clouds of all suspects after some readings. */
export interface Posterior {
  readonly facts: readonly Fact[];
  /** By candidate. */
  readonly clouds: readonly Cloud[];
  /** Of cars that are not as described, by candidate; null where they were not looked at. */
  readonly outside: readonly (Cloud | null)[];
  /** By candidate, summing to 1. */
  readonly chances: Float64Array;
  /** Chance that one value of the car is not as described. */
  readonly misfit: number;
}

/** What a family of cars is asked about. */
export interface PosteriorAsk {
  readonly candidates: readonly Candidate[];
  /** May grow. */
  readonly tests: readonly TableTest[];
  readonly sampler: CarSampler;
  readonly prior: Float64Array;
  readonly errorModel: ErrorModel;
}

/** The posteriors of one list of suspects and tests; the last ones are kept. */
export class Posteriors {
  /** What the tests show before any reading. */
  readonly table: PredictionTable;
  readonly ask: PosteriorAsk;
  private readonly models: readonly CloudModel[];
  private readonly cars: readonly CarsOf[];
  private readonly states = new Map<string, Posterior>();
  private readonly dims: number;
  /** By test, before any reading. */
  private readonly reaches = new Map<number, Reach>();

  constructor(ask: PosteriorAsk) {
    this.ask = ask;
    this.dims = ask.sampler.dims;
    this.cars = ask.candidates.map(({ id }) => ask.sampler.cars(id));
    this.models = this.cars.map((cars) => this.modelOf(cars));
    this.table = this.tableAfter(this.after([]));
  }

  after(readings: readonly Reading[]): Posterior {
    const key = keyOf(readings);
    const known = this.states.get(key);
    if (known) {
      this.states.delete(key);
      this.states.set(key, known);
      return known;
    }
    const made =
      readings.length === 0 ? this.start() : this.step(this.after(readings.slice(0, -1)), readings);
    this.states.set(key, made);
    const [oldest] = this.states.keys();
    if (this.states.size > STATES_KEPT && oldest !== undefined) this.states.delete(oldest);
    return made;
  }

  /** A cloud of cars with two faults at once after the facts, from fewer cars; null where the two cannot be. */
  pairCloud(first: string, second: string, facts: readonly Fact[]): Cloud | null {
    const cars = this.ask.sampler.pair?.(first, second);
    if (!cars) return null;
    const start = startCloud(cars.start(PAIR_CARS), this.dims);
    return advance(start, facts, this.modelOf(cars), randomOf(facts.length));
  }

  /** What a test shows with two faults at once on the cars of the first, as many as a table has of each. */
  pairShows({ clouds }: Posterior, first: string, second: string, test: number): readonly Shown[] {
    const { candidates, sampler } = this.ask;
    const at = candidates.findIndex(({ id }) => id === first);
    const cars = sampler.pair?.(first, second) ?? this.cars[at]!;
    return this.chosen(clouds[at]!).map(
      (point, sample) => pick(cars.ways(test, point), evenShare(sample)).shown,
    );
  }

  /** What a test would show on the sound circuit of the cars that are left, whichever suspect is right. */
  soundShows({ clouds, chances }: Posterior, test: number): readonly Shown[] {
    const sound = this.ask.candidates.findIndex(({ id }) => id === HEALTHY);
    const picked = clouds.map((cloud) => this.chosen(cloud));
    let row = 0;
    let sum = chances[0]!;
    return Array.from({ length: SOUND_CARS }, (_, place) => {
      const wanted = (place + 0.5) / SOUND_CARS;
      while (sum < wanted && row < clouds.length - 1) {
        row += 1;
        sum += chances[row]!;
      }
      const point = picked[row]![Math.floor(evenShare(place) * PLANNED_CARS)]!;
      return pick(this.cars[sound]!.ways(test, point), evenShare(place)).shown;
    });
  }

  /** What a test can show, on any car before any reading and on those that are left after some. */
  reach(posterior: Posterior, test: number): Reach {
    const waysIn = ({ clouds, chances }: Posterior, least: number) =>
      clouds.flatMap((cloud, at) =>
        chances[at]! > least
          ? [this.chosen(cloud).map((point) => this.cars[at]!.ways(test, point))]
          : [],
      );
    const before = this.reaches.get(test) ?? reachOf(waysIn(this.after([]), 0));
    this.reaches.set(test, before);
    return posterior.facts.length === 0
      ? before
      : joinedReach(before, reachOf(waysIn(posterior, REACHED_CHANCE)));
  }

  private modelOf(cars: CarsOf): CloudModel {
    const { errorModel } = this.ask;
    return {
      dims: this.dims,
      isPossible: cars.isPossible,
      redraw: redrawFew,
      differs: (fact, one, other) =>
        areApart(fact, cars.ways(fact.test, one), cars.ways(fact.test, other), errorModel),
      predict: (fact, point) => cars.ways(fact.test, point),
      logLikelihood: (fact, ways, degree) => logLikelihood(fact, ways, errorModel, degree),
      topLogLikelihood: (fact, degree) => topLogLikelihood(fact, errorModel, degree),
    };
  }

  private start(): Posterior {
    const clouds = this.cars.map((cars) => startCloud(cars.start(CARS), this.dims));
    return {
      ...{ facts: [], clouds, chances: this.ask.prior },
      outside: clouds.map(() => null),
      misfit: OUTSIDE_CHANCE,
    };
  }

  private step(before: Posterior, readings: readonly Reading[]): Posterior {
    const facts = keptFacts(before.facts, factsOf(this.table, readings, this.ask.errorModel));
    const number = readings.length;
    const roughly = before.clouds.map((cloud, at) =>
      this.ask.prior[at]! > 0 ? advance(cloud, facts, this.models[at]!, null) : cloud,
    );
    const rough = chancesOf(this.ask.prior, roughly);
    const clouds = roughly.map((cloud, at) => {
      if (!(rough[at]! >= LIVE_CHANCE)) return cloud;
      if (effectiveCount(cloud) >= CARS / 2) return cloud;
      const from = before.clouds[at]!;
      const isWorn = effectiveCount(from) < WORN_CARS || isTakenBack(from, facts);
      // The same numbers for every suspect: what a reading says of none of them then costs none of them anything.
      const random = randomOf(number);
      return advance(
        isWorn ? startCloud(this.cars[at]!.start(CARS), this.dims) : from,
        facts,
        this.models[at]!,
        random,
      );
    });
    const inside = chancesOf(this.ask.prior, clouds);
    const outside = this.outsideAfter(before, facts, inside, number - 1);
    return { facts, clouds, outside, ...withOutside(this.ask.prior, clouds, outside) };
  }

  /** Clouds of cars that are not as described: of the leaders, and of the sound circuit. */
  private outsideAfter(
    before: Posterior,
    facts: readonly Fact[],
    chances: Float64Array,
    last: number,
  ): (Cloud | null)[] {
    const leaders = [...chances.keys()]
      .sort((a, b) => chances[b]! - chances[a]!)
      .slice(0, OUTSIDE_LEADERS);
    return this.cars.map(({ outside }, at) => {
      const isAsked = leaders.includes(at) || this.ask.candidates[at]!.id === HEALTHY;
      if (!outside || !isAsked || !(this.ask.prior[at]! > 0)) return null;
      const known = before.outside[at];
      const model = { ...this.models[at]!, redraw: outside.redraw };
      const random = randomOf(facts.length);
      const start = (count: number) => startCloud(outside.start(count), this.dims);
      const from = known && !isTakenBack(known, facts) ? known : start(OUTSIDE_CARS);
      const moved = advance(from, facts, model, random);
      const newest = facts.findIndex(({ readings }) => readings.includes(last));
      if (!this.isMisread(moved, newest)) return moved;
      const all = advance(start(OUTSIDE_SEARCHED), facts, model, null);
      return all.logEvidence > moved.logEvidence
        ? thinned(all, OUTSIDE_CARS, model, random)
        : moved;
    });
  }

  /** Whether a fact is likelier than not a misreading on these cars. */
  private isMisread({ facts, logs, weights }: Cloud, at: number): boolean {
    const chance = weights.reduce(
      (sum, weight, car) =>
        sum + weight * misreadChance(facts[at]!, logs[at]![car]!, this.ask.errorModel),
      0,
    );
    return chance > 0.5;
  }

  /** What the tests would show on the cars that are left. */
  tableAfter({ clouds, chances, facts }: Posterior): PredictionTable {
    const { candidates, tests } = this.ask;
    // Nobody plans for what is all but out: its cars stay those of the beginning, and are not asked again.
    const isOut = (at: number) => facts.length > 0 && chances[at]! < LIVE_CHANCE;
    const chosen = clouds.map((cloud, at) => (isOut(at) ? [] : this.chosen(cloud)));
    const places = new Map(candidates.map(({ id }, at) => [id, at]));
    let first: readonly Shown[] = [];
    let last: { readonly test: TableTest; readonly place: number } | null = null;
    return buildTable(
      candidates,
      tests,
      (id, test, sample) => {
        // A column is filled at once, and the list may have grown since.
        if (last?.test !== test) last = { test, place: tests.indexOf(test) };
        const at = places.get(id)!;
        if (isOut(at)) {
          if (sample === 0) first = this.table.shown(last.place, at);
          return first[sample]!;
        }
        const ways = this.cars[at]!.ways(last.place, chosen[at]![sample]!);
        return pick(ways, evenShare(sample)).shown;
      },
      PLANNED_CARS,
    );
  }

  /** Cars of a cloud by weight, systematically. */
  private chosen({ count, points, weights }: Cloud): Float64Array[] {
    const { dims } = this;
    const chosen: Float64Array[] = [];
    let car = 0;
    let sum = weights[0]!;
    for (let place = 0; place < PLANNED_CARS; place += 1) {
      const wanted = (place + 0.5) / PLANNED_CARS;
      while (sum < wanted && car < count - 1) {
        car += 1;
        sum += weights[car]!;
      }
      chosen.push(points.subarray(car * dims, (car + 1) * dims));
    }
    return chosen;
  }
}

/** Chances from how likely the facts are with each. */
function chancesOf(prior: Float64Array, clouds: readonly Cloud[]): Float64Array {
  const logs = clouds.map(({ logEvidence }, at) => logEvidence + Math.log(prior[at]!));
  const most = Math.max(...logs);
  return normalised(Float64Array.from(logs, (log) => Math.exp(log - most)));
}

/** The same with cars that are not as described; where they were not looked at they are taken to fit as well as others. */
function withOutside(
  prior: Float64Array,
  clouds: readonly Cloud[],
  outside: readonly (Cloud | null)[],
): Pick<Posterior, 'chances' | 'misfit'> {
  const logs = clouds.map(({ logEvidence }) => logEvidence);
  const others = outside.map((cloud, at) => cloud?.logEvidence ?? logs[at]!);
  const most = Math.max(
    ...logs.filter((_, at) => prior[at]! > 0),
    ...others.filter((_, at) => prior[at]! > 0),
  );
  const inside = logs.map((log, at) => (1 - OUTSIDE_CHANCE) * prior[at]! * Math.exp(log - most));
  const beyond = others.map((log, at) => OUTSIDE_CHANCE * prior[at]! * Math.exp(log - most));
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
  return {
    chances: normalised(Float64Array.from(inside, (one, at) => one + beyond[at]!)),
    misfit: sum(beyond) / (sum(inside) + sum(beyond)),
  };
}

/**
 * Whether a test was read again and now shows something else: the cars that went after what it showed first may not find
 * back, so that others start from the beginning.
 */
function isTakenBack(cloud: Cloud, facts: readonly Fact[]): boolean {
  return cloud.facts.some((known) => {
    const now = facts.find(({ test }) => test === known.test);
    if (!now || now === known) return false;
    if (now.shown.kind === 'look' || known.shown.kind === 'look')
      return JSON.stringify(now.shown) !== JSON.stringify(known.shown);
    if (now.shown.value === known.shown.value) return false;
    return !(Math.abs(now.shown.value - known.shown.value) < TAKEN_BACK * now.uncertainty);
  });
}
/** Readings this many standard uncertainties apart are not one. Our choice. */
const TAKEN_BACK = 4;

/** The facts by which nothing has changed stay the same objects, so that nothing is worked out again for them. */
function keptFacts(before: readonly Fact[], after: readonly Fact[]): Fact[] {
  return after.map((fact) => before.find((one) => isSame(one, fact)) ?? fact);
}

function isSame(one: Fact, other: Fact): boolean {
  return one.test === other.test && one.readings.length === other.readings.length;
}

function keyOf(readings: readonly Reading[]): string {
  return JSON.stringify(
    readings.map(({ test, shown, standardUncertainty }) => [
      test,
      shown.kind === 'look' ? shown.look : String(shown.value),
      standardUncertainty ?? null,
    ]),
  );
}

/** Even over 0 to 1, whatever the order of the samples means (golden ratio; Richtmyer, 1951). */
function evenShare(sample: number): number {
  return ((sample + 1) * 0.6180339887498949) % 1;
}

function pick(ways: readonly Way[], at: number): Way {
  let left = at;
  for (const way of ways) {
    left -= way.share;
    if (left < 0) return way;
  }
  return ways.at(-1)!;
}
