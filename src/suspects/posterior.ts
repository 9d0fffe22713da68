/**
 * Faults, their sizes and the unknown values of the car, all together, after some readings: a cloud of cars for each
 * suspect (`cloud.ts`), the suspects' chances from how likely the readings are over all its cars, and a table of what
 * every test would show on the cars that are left. Each state follows from the one before it by its last reading, so
 * that the same readings in the same order always give the same result.
 */
import type { Shown } from '../circuit/test.ts';
import { BorrowedCars, pointAt } from './borrowed-cars.ts';
import { type Cloud, drawn } from './cloud.ts';
import { CloudSteps, LIKELY_CHANCE, type Posterior } from './cloud-steps.ts';
import type { ErrorModel } from './error-model.ts';
import { factsOf, keptFacts, type Way } from './fact.ts';
import type { Reading } from './likelihood.ts';
import { pickMixed } from './mixed-ways.ts';
import { redrawFew } from './move-car.ts';
import { OutsideSearch } from './outside-search.ts';
import {
  buildTable,
  type Candidate,
  HEALTHY,
  type PredictionTable,
  type TableTest,
} from './prediction-table.ts';
import { joinedReach, type Reach, reachOf } from './shown-reach.ts';
import { atOnce, type Slices } from './slices.ts';
import { evenShare, pick } from './stand-in.ts';
import { type CarFamily, type CarSampler, type CarsOf, SuspectCars } from './suspect-cars.ts';

/** With less chance than this a suspect is out as well where a reading is left out. Our choice. */
const LEFT_LEAST = 3e-5;
/** Of each suspect so many cars stand for it when tests are planned. Our choice. */
const PLANNED_CARS = 32;
/** Each of so many counts several times where the suspect hardly is right. Divides the above. */
const FEW_PLANNED = 8;
/** As many of the first cars where it is not planned for: every session shares what they show. */
const OUT_PLANNED = 2;
/** Suspects with less chance than this, or than this share of the leader's, are not planned for. Our choice. */
const PLANNED_CHANCE = 0.003;
const PLANNED_SHARE = 0.02;
/** So many stand for the sound circuit where it is asked what is good for this car. Our choice. */
const SOUND_CARS = 64;
/** What suspects with more chance show on the cars that are left is added to what any car shows. Our choice. */
const REACHED_CHANCE = 0.01;
/** States kept: more than the readings of a session. */
const STATES_KEPT = 64;

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
  private readonly steps: CloudSteps;
  private readonly states = new Map<string, Posterior>();
  private readonly pairs = new Map<string, SuspectCars | null>();
  private readonly dims: number;
  private readonly borrowed: BorrowedCars;
  /** By test, before any reading. */
  private readonly reaches = new Map<number, Reach>();

  constructor(ask: PosteriorAsk) {
    this.ask = ask;
    this.dims = ask.sampler.dims;
    this.families = ask.candidates.map(({ id }) => ask.sampler.cars(id));
    const lends = this.families.some(({ borrows }) => borrows);
    this.lender = lends ? ask.candidates.findIndex(({ id }) => id === HEALTHY) : null;
    this.cars = this.families.map((family) => this.carsOf({ ...family, redraw: redrawFew }));
    this.borrowed = new BorrowedCars(
      this.lender === null ? null : this.cars[this.lender]!,
      this.dims,
    );
    const { families, cars, dims, lender, borrowed } = this;
    const outside = new OutsideSearch({ ...ask, families, cars, dims });
    this.steps = new CloudSteps({ ...ask, families, cars, lender, borrowed, outside });
    this.table = this.tableAfter(this.after([]));
  }

  /** The posterior after `readings`, as `inSlices` makes it. */
  after(readings: readonly Reading[]): Posterior {
    return atOnce(this.inSlices(readings));
  }

  /** Each reading that is new takes some slices for each suspect that may be right. */
  *inSlices(readings: readonly Reading[]): Slices<Posterior> {
    const key = keyOf(readings);
    const known = this.states.get(key);
    if (known) {
      this.states.delete(key);
      this.states.set(key, known);
      return known;
    }
    const made =
      readings.length === 0
        ? this.steps.start()
        : yield* this.step(yield* this.inSlices(readings.slice(0, -1)), readings);
    this.states.set(key, made);
    const [oldest] = this.states.keys();
    if (this.states.size > STATES_KEPT && oldest !== undefined) this.states.delete(oldest);
    return made;
  }

  /**
   * Chances by candidate if one of the readings had not been made: those after it are taken in at once, of the candidates
   * that are as likely as `LEFT_LEAST` by what the readings say each by itself, `likely`. With fewer facts no more of
   * them are doubted, so no other cars that are not as described are looked for.
   */
  *without(
    readings: readonly Reading[],
    reading: number,
    likely: Float64Array,
  ): Slices<Float64Array> {
    const before = yield* this.inSlices(readings.slice(0, reading));
    const rest = readings.toSpliced(reading, 1);
    if (rest.length === reading) return before.chances;
    const prior = this.ask.prior.map((chance, at) =>
      likely[at]! >= LEFT_LEAST || at === this.lender ? chance : 0,
    );
    const left = yield* this.step(before, rest, { prior, searches: false });
    return left.chances;
  }

  /** What a test shows on the cars of a candidate. */
  shown(candidate: number, { clouds }: Posterior, test: number): readonly (readonly Way[])[] {
    const { points, count } = clouds[candidate]!;
    return this.cars[candidate]!.show(test, points, count);
  }

  /** The cars of two candidates at once; null where the two cannot be. */
  pairCars(first: string, second: string): SuspectCars | null {
    const key = `${first}|${second}`;
    const known = this.pairs.get(key);
    if (known !== undefined) return known;
    const family = this.ask.sampler.pair?.(first, second);
    const made = family ? this.carsOf({ ...family, redraw: redrawFew }) : null;
    this.pairs.set(key, made);
    return made;
  }

  /** What a test shows with two faults at once on the cars of the first, as many as a table has of each. */
  pairShows({ clouds }: Posterior, first: string, second: string, test: number): readonly Shown[] {
    const { candidates } = this.ask;
    const at = candidates.findIndex(({ id }) => id === first);
    const cars = this.pairCars(first, second) ?? this.cars[at]!;
    return this.chosen(clouds[at]!).map(
      (point, sample) => pick(cars.ways(test, point), evenShare(sample)).shown,
    );
  }

  /** Points of the cars that are left, whichever suspect is right: each as often as its chance has it. */
  carsLeft({ clouds, chances }: Posterior): readonly Float64Array[] {
    const picked = clouds.map((cloud) => this.chosen(cloud));
    let row = 0;
    let sum = chances[0]!;
    return Array.from({ length: SOUND_CARS }, (_, place) => {
      const wanted = (place + 0.5) / SOUND_CARS;
      while (sum < wanted && row < clouds.length - 1) {
        row += 1;
        sum += chances[row]!;
      }
      return picked[row]![Math.floor(evenShare(place) * PLANNED_CARS)]!;
    });
  }

  /** What a test would show on the sound circuit of the cars that are left, whichever suspect is right. */
  soundShows(posterior: Posterior, test: number): readonly Shown[] {
    const sound = this.ask.candidates.findIndex(({ id }) => id === HEALTHY);
    return this.carsLeft(posterior).map(
      (point, place) => pick(this.cars[sound]!.ways(test, point), evenShare(place)).shown,
    );
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

  private step(
    before: Posterior,
    readings: readonly Reading[],
    how?: Parameters<CloudSteps['after']>[3],
  ): Slices<Posterior> {
    const facts = keptFacts(before.facts, factsOf(this.table, readings, this.ask.errorModel));
    return this.steps.after(before, facts, readings.length, how);
  }

  /** What the tests would show on the cars that are left. */
  tableAfter({ clouds, chances, facts }: Posterior): PredictionTable {
    const { candidates, tests } = this.ask;
    const least = Math.max(PLANNED_CHANCE, PLANNED_SHARE * Math.max(...chances));
    const isOut = (at: number) => facts.length > 0 && chances[at]! < least;
    const chosen = clouds.map((cloud, at) => {
      if (isOut(at)) return null;
      const isLikely = chances[at]! >= LIKELY_CHANCE;
      return this.chosenCars(cloud, isLikely ? PLANNED_CARS : FEW_PLANNED);
    });
    const places = new Map(candidates.map(({ id }, at) => [id, at]));
    let show: (share: number) => Shown;
    let last: { readonly test: TableTest; readonly place: number } | null = null;
    const made = buildTable(
      candidates,
      tests,
      (id, test, sample) => {
        // A column is filled at once, and the list may have grown since.
        if (last?.test !== test) last = { test, place: tests.indexOf(test) };
        const at = places.get(id)!;
        const cars = chosen[at];
        const each = PLANNED_CARS / (cars?.length ?? OUT_PLANNED);
        if (sample % each === 0)
          show = cars
            ? this.shower(at, clouds[at]!, last.place, cars[sample / each]!)
            : showerOf(this.cars[at]!.firstShow(last.place, sample / each));
        return show(evenShare(sample));
      },
      PLANNED_CARS,
    );
    // Nobody plans for what is all but out.
    return { ...made, planned: [...chosen.keys()].filter((at) => !isOut(at)) };
  }

  /** What a test shows on a car of a cloud, at a share of its ways. */
  private shower(
    at: number,
    { points }: Cloud,
    test: number,
    car: number,
  ): (share: number) => Shown {
    const { borrows } = this.families[at]!;
    if (borrows) {
      const mixed = this.borrowed.mixed(borrows, points, test, car);
      return (share) => pickMixed(mixed, share);
    }
    return showerOf(this.cars[at]!.ways(test, pointAt(points, this.dims, car)));
  }

  /** Points of cars of a cloud, by weight. */
  private chosen(cloud: Cloud): Float64Array[] {
    return this.chosenCars(cloud, PLANNED_CARS).map((car) => pointAt(cloud.points, this.dims, car));
  }

  /** Cars of a cloud, by weight. */
  private chosenCars({ weights }: Cloud, count: number): number[] {
    return [...drawn(weights, count, 0.5)];
  }
}

function showerOf(ways: readonly Way[]): (share: number) => Shown {
  return (share) => pick(ways, share).shown;
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
