/**
 * Faults, their sizes and the unknown values of the car, all together, after some readings: a cloud of cars for each
 * suspect (`cloud.ts`), the suspects' chances from how likely the readings are over all its cars, and a table of what
 * every test would show on the cars that are left. Each state follows from the one before it by its last reading, so
 * that the same readings in the same order always give the same result.
 */
import type { Shown } from '../circuit/test.ts';
import {
  advance,
  borrowed,
  type Cloud,
  drawn,
  effectiveCount,
  fewer,
  isMoved,
  redrawFew,
} from './cloud.ts';
import type { ErrorModel } from './error-model.ts';
import { type Fact, factsOf, misreadChance, type Way } from './fact.ts';
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
import { type CarFamily, SuspectCars } from './suspect-cars.ts';

/** The cars on which a suspect would be the complaint, ... */
export interface CarsOf extends Omit<CarFamily, 'redraw'> {
  /** ... and those of which one value is not as described; null where nothing could be. */
  readonly outside: OutsideCars | null;
  /**
   * Of a suspect that mostly shows what the sound circuit shows: its cars are that circuit's but for a few values.
   * Absent where its cars are found by themselves.
   */
  readonly borrows?: Borrowing;
}

export interface Borrowing {
  /** Places of the values that are the suspect's own. */
  readonly own: readonly number[];
  /** What a test shows on a car on which the sound circuit shows `sound`. */
  readonly ways: (test: number, point: Float64Array, sound: readonly Way[]) => readonly Way[];
}

/** Cars of which one value is not as described. */
export interface OutsideCars {
  /** Places of the values that may not be, each as likely as the next. */
  readonly values: readonly number[];
  /** The first `count` cars of which it is one of these `values`, each in turn and on both sides. */
  readonly start: (count: number, values: readonly number[]) => Float64Array;
  /** Draws anew, at times with another value that is not as described. */
  readonly redraw: CarFamily['redraw'];
}

export interface CarSampler {
  /** Number of unknown values. */
  readonly dims: number;
  readonly cars: (candidate: string) => CarsOf;
  /** Two candidates at once; null where the two cannot be. */
  readonly pair: ((first: string, second: string) => CarsOf | null) | null;
}

/** Cars of a suspect that may be right, ... */
const CARS = 96;
/** ... of one that hardly is, whose chance need not be known so well, ... */
const FEW_CARS = 32;
/** ... and of one that was out when its cars had been moved. Our choice. */
const OUT_CARS = 16;
/** Of the sound circuit's cars so many stand for a suspect that shares them. Our choice. */
const LENT_CARS = 32;
/** From this chance on a suspect may be right, ... */
const LIKELY_CHANCE = 0.02;
/** ... and with less than this it is out: it is weighed, but its cars are not moved. Our choice. */
const LIVE_CHANCE = 3e-4;
/** Weights that rest on fewer cars than this are of no use to go on with: others start from the beginning. */
const WORN_CARS = 12;
/** Of each suspect so many cars stand for it when tests are planned. Our choice. */
const PLANNED_CARS = 32;
/** Each of so many counts several times where the suspect hardly is right. Divides the above. */
const FEW_PLANNED = 8;
/** As many where it is not planned for. */
const OUT_PLANNED = 2;
/** Suspects with less chance than this, or than this share of the leader's, are not planned for. Our choice. */
const PLANNED_CHANCE = 0.003;
const PLANNED_SHARE = 0.02;
/** Of those of which one value is not as described. Our choice. */
const OUTSIDE_CARS = 96;
/** From this chance on that it is a misreading, a reading is doubted. Our choice. */
const DOUBTED = 0.2;
/** One car in so many is not as its circuit file describes it. Our assumption. */
export const OUTSIDE_CHANCE = 0.03;
/** So many leading suspects, and the sound circuit, are held against such cars. Our choice. */
const OUTSIDE_LEADERS = 3;
/** So many stand for the sound circuit where it is asked what is good for this car. Our choice. */
const SOUND_CARS = 64;
/** Of two faults at once fewer will do. Our choice. */
const PAIR_CARS = 64;
/** What suspects with more chance show on the cars that are left is added to what any car shows. Our choice. */
const REACHED_CHANCE = 0.01;
/** States kept: more than the readings of a session. */
const STATES_KEPT = 40;

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
  /** By candidate. */
  private readonly families: readonly CarsOf[];
  private readonly cars: readonly SuspectCars[];
  /** Place of the sound circuit, where others share its cars. */
  private readonly lender: number | null;
  /** Cars of which one value is not as described, by candidate and by the values that it may be. */
  private readonly strange = new Map<string, SuspectCars>();
  private readonly states = new Map<string, Posterior>();
  private readonly dims: number;
  /** By test, before any reading. */
  private readonly reaches = new Map<number, Reach>();

  constructor(ask: PosteriorAsk) {
    this.ask = ask;
    this.dims = ask.sampler.dims;
    this.families = ask.candidates.map(({ id }) => ask.sampler.cars(id));
    const lends = this.families.some(({ borrows }) => borrows);
    this.lender = lends ? ask.candidates.findIndex(({ id }) => id === HEALTHY) : null;
    this.cars = this.families.map((family) => this.carsOf({ ...family, redraw: redrawFew }));
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

  /** What a test shows on the cars of a candidate. */
  shown(candidate: number, { clouds }: Posterior, test: number): readonly (readonly Way[])[] {
    const { points, count } = clouds[candidate]!;
    return this.cars[candidate]!.show(test, points, count);
  }

  /** A cloud of cars with two faults at once after the facts, from fewer cars; null where the two cannot be. */
  pairCloud(first: string, second: string, facts: readonly Fact[]): Cloud | null {
    const family = this.ask.sampler.pair?.(first, second);
    if (!family) return null;
    const cars = this.carsOf({ ...family, redraw: redrawFew });
    return advance(cars.start(PAIR_CARS), facts, cars.model, randomOf(facts.length));
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

  private carsOf(family: CarFamily): SuspectCars {
    return new SuspectCars(family, this.dims, this.ask.errorModel);
  }

  private start(): Posterior {
    const clouds = this.cars.map((cars) => cars.start(CARS));
    return {
      ...{ facts: [], clouds, chances: this.ask.prior },
      outside: clouds.map(() => null),
      misfit: OUTSIDE_CHANCE,
    };
  }

  private step(before: Posterior, readings: readonly Reading[]): Posterior {
    const { prior } = this.ask;
    const facts = keptFacts(before.facts, factsOf(this.table, readings, this.ask.errorModel));
    const number = readings.length;
    const roughly = before.clouds.map((cloud, at) =>
      prior[at]! > 0 && !this.families[at]!.borrows
        ? advance(cloud, facts, this.cars[at]!.model, null)
        : cloud,
    );
    const rough = chancesOf(prior, roughly);
    const own = roughly.map((cloud, at) => {
      if (this.families[at]!.borrows) return cloud;
      const from = before.clouds[at]!;
      const { model } = this.cars[at]!;
      if (!(rough[at]! >= LIVE_CHANCE || at === this.lender))
        return isMoved(cloud) ? fewer(cloud, OUT_CARS) : cloud;
      const wanted = rough[at]! < LIKELY_CHANCE && at !== this.lender ? FEW_CARS : CARS;
      if (cloud.count >= wanted && effectiveCount(cloud) >= wanted / 2) return cloud;
      const isAnew =
        from.count < wanted || effectiveCount(from) < WORN_CARS || isTakenBack(from, facts);
      // The same numbers for every suspect: what a reading says of none of them then costs none of them anything.
      const random = randomOf(number);
      return advance(isAnew ? this.cars[at]!.start(wanted) : from, facts, model, random);
    });
    const lent = this.lender === null ? null : fewer(own[this.lender]!, LENT_CARS);
    const clouds = own.map((cloud, at) => {
      const { borrows } = this.families[at]!;
      return lent && borrows && prior[at]! > 0 ? this.lentTo(at, lent, borrows) : cloud;
    });
    const inside = chancesOf(prior, clouds);
    const outside = this.outsideAfter(before, { facts, clouds, chances: inside }, number - 1);
    return { facts, clouds, outside, ...withOutside(prior, clouds, outside) };
  }

  /** The cars of the sound circuit for a suspect that borrows them. */
  private lentTo(at: number, lent: Cloud, { own, ways }: Borrowing): Cloud {
    const { dims } = this;
    const cars = this.cars[at]!;
    const first = cars.start(LENT_CARS).points;
    const points = lent.points.slice();
    for (let car = 0; car < lent.count; car += 1)
      for (const place of own) points[car * dims + place] = first[car * dims + place]!;
    return borrowed(lent, points, cars.model, ({ test }, point, sound) => ways(test, point, sound));
  }

  /**
   * Clouds of cars that are not as described, of the leaders and of the sound circuit, once the suspects as they are
   * take a reading for a misreading: none before, as such cars then fit no better than others.
   */
  private outsideAfter(
    before: Posterior,
    { facts, clouds, chances }: Pick<Posterior, 'facts' | 'clouds' | 'chances'>,
    last: number,
  ): (Cloud | null)[] {
    const doubts = facts.map((_, fact) =>
      clouds.reduce(
        (sum, cloud, at) =>
          sum + (chances[at]! < LIVE_CHANCE ? 0 : chances[at]! * this.misread(cloud, fact)),
        0,
      ),
    );
    const newest = facts.findIndex(({ readings }) => readings.includes(last));
    const leaders = [...chances.keys()]
      .sort((a, b) => chances[b]! - chances[a]!)
      .slice(0, OUTSIDE_LEADERS);
    const doubted = facts.filter((_, at) => doubts[at]! >= DOUBTED);
    return this.families.map(({ outside }, at) => {
      const isAsked = leaders.includes(at) || this.ask.candidates[at]!.id === HEALTHY;
      const known = before.outside[at];
      if (!outside || !(doubted.length > 0 || known) || !isAsked || !(this.ask.prior[at]! > 0))
        return null;
      const moved =
        known && !isTakenBack(known, facts)
          ? advance(known, facts, this.strangeCars(at, []).model, randomOf(facts.length))
          : null;
      if (moved && (doubts[newest]! < DOUBTED || this.misread(moved, newest) < DOUBTED))
        return moved;
      const found = this.searched(at, facts, doubted);
      return moved && moved.logEvidence >= found.logEvidence ? moved : found;
    });
  }

  /** Cars of which a value that some of the `doubted` facts depend on is not as described, for all `facts`. */
  private searched(at: number, facts: readonly Fact[], doubted: readonly Fact[]): Cloud {
    const { values } = this.families[at]!.outside!;
    const felt = new Set(doubted.flatMap((fact) => this.cars[at]!.model.feltAtFirst(fact)));
    const among = values.filter((value) => felt.has(value));
    const cars = this.strangeCars(at, among.length === 0 ? values : among);
    const all = advance(cars.start(OUTSIDE_CARS), facts, cars.model, randomOf(facts.length));
    // The others, which could not explain them, are there as well: as many more cars without any weight.
    const share = Math.max(1, among.length) / values.length;
    return { ...all, logEvidence: all.logEvidence + Math.log(share) };
  }

  private strangeCars(at: number, values: readonly number[]): SuspectCars {
    const key = `${at}|${values.join()}`;
    const { outside, ...family } = this.families[at]!;
    const made =
      this.strange.get(key) ??
      this.carsOf({
        ...family,
        start: (count) => outside!.start(count, values),
        redraw: outside!.redraw,
      });
    this.strange.set(key, made);
    return made;
  }

  /** Chance that a fact is a misreading on these cars. */
  private misread({ facts, logs, weights }: Cloud, at: number): number {
    return weights.reduce(
      (sum, weight, car) =>
        sum + weight * misreadChance(facts[at]!, logs[at]![car]!, this.ask.errorModel),
      0,
    );
  }

  /** What the tests would show on the cars that are left. */
  tableAfter({ clouds, chances, facts }: Posterior): PredictionTable {
    const { candidates, tests } = this.ask;
    const least = Math.max(PLANNED_CHANCE, PLANNED_SHARE * Math.max(...chances));
    const isOut = (at: number) => facts.length > 0 && chances[at]! < least;
    const chosen = clouds.map((cloud, at) => {
      const isLikely = chances[at]! >= LIKELY_CHANCE;
      return this.chosen(cloud, isOut(at) ? OUT_PLANNED : isLikely ? PLANNED_CARS : FEW_PLANNED);
    });
    const places = new Map(candidates.map(({ id }, at) => [id, at]));
    let ways: readonly Way[] = [];
    let last: { readonly test: TableTest; readonly place: number } | null = null;
    const made = buildTable(
      candidates,
      tests,
      (id, test, sample) => {
        // A column is filled at once, and the list may have grown since.
        if (last?.test !== test) last = { test, place: tests.indexOf(test) };
        const at = places.get(id)!;
        const each = PLANNED_CARS / chosen[at]!.length;
        if (sample % each === 0)
          ways = this.cars[at]!.ways(last.place, chosen[at]![sample / each]!);
        return pick(ways, evenShare(sample)).shown;
      },
      PLANNED_CARS,
    );
    // Nobody plans for what is all but out.
    return { ...made, planned: [...chosen.keys()].filter((at) => !isOut(at)) };
  }

  /** Cars of a cloud by weight. */
  private chosen({ points, weights }: Cloud, count = PLANNED_CARS): Float64Array[] {
    const { dims } = this;
    return Array.from(drawn(weights, count, 0.5), (car) =>
      points.subarray(car * dims, (car + 1) * dims),
    );
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
