/**
 * The cars of one suspect: where a cloud of them begins, and what they show. Of the cars of the beginning, which every
 * session shares, each test is worked out once.
 */
import { type Cloud, type CloudModel, startCloud } from './cloud.ts';
import type { ErrorModel } from './error-model.ts';
import { areApart, type Fact, logLikelihood, topLogLikelihood, type Way } from './fact.ts';
import { KeptWays } from './kept-ways.ts';
import { feltAt } from './move-car.ts';
import { randomOf } from './random.ts';

/** The cars on which a hypothesis would be the complaint. */
export interface CarFamily {
  /** The first `count` cars before any reading, one point of the unit cube after the other. */
  readonly start: (count: number) => Float64Array;
  readonly isPossible: (point: Float64Array) => boolean;
  /** What a test shows on such a car, with how often where it is a matter of chance. */
  readonly ways: (test: number, point: Float64Array) => readonly Way[];
  readonly redraw: CloudModel['redraw'];
  /** Where is kept what a test shows on the first cars; absent or null where nobody else asks for it. */
  readonly keptFor?: (test: number) => KeptWays | null;
}

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

/** How a suspect's cars are had from those of the sound circuit where only a few values are its own. */
export interface Borrowing {
  /** Places of the values that are the suspect's own. */
  readonly own: readonly number[];
  /** What shows on its cars while it is there; suspects of one name differ only in how often they are. */
  readonly name: string;
  readonly there: (test: number, point: Float64Array) => readonly Way[];
  /** How often it is there as a test is made, 0 to 1; else the test shows what the sound circuit shows. */
  readonly chance: (test: number, point: Float64Array) => number;
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

/** Where the cars of each suspect come from. */
export interface CarSampler {
  /** Number of unknown values. */
  readonly dims: number;
  readonly cars: (candidate: string) => CarsOf;
  /** Two candidates at once; null where the two cannot be. */
  readonly pair: ((first: string, second: string) => CarsOf | null) | null;
}

/** By car. */
type CarsShow = readonly (readonly Way[])[];

/** Cars of the beginning at which each value is changed to see whether a test depends on it. Our choice. */
const PROBES = 2;
/** The same for every test: its place in the list hangs on what was asked before. */
const PROBE_SEED = 1;

/** A family of cars with what has been asked of it. */
export class SuspectCars {
  readonly model: CloudModel;
  private readonly family: CarFamily;
  private readonly dims: number;
  private readonly errorModel: ErrorModel;
  private all: Float64Array = new Float64Array(0);
  /** Points of the beginning by their number; each is a part of `all`, or was. */
  private readonly starts = new Map<number, Float64Array>();
  private readonly isStart = new WeakSet<Float64Array>();
  /** Of the cars of the beginning, by test, as far as it was asked for. */
  private readonly first = new Map<number, KeptWays>();
  /** Of cars that were moved, by their points and test, as long as the points are there. */
  private readonly later = new WeakMap<Float64Array, Map<number, KeptWays>>();

  constructor(family: CarFamily, dims: number, errorModel: ErrorModel) {
    this.family = family;
    this.dims = dims;
    this.errorModel = errorModel;
    this.model = {
      ...{ dims, isPossible: family.isPossible, redraw: family.redraw },
      predict: (fact, point) => family.ways(fact.test, point),
      predictAll: (fact, points, count) => this.show(fact.test, points, count),
      feltAtFirst: (fact) => this.feltBy(fact),
      differs: (fact, ways, point) =>
        areApart(fact, ways, family.ways(fact.test, point), errorModel),
      logLikelihood: (fact, ways, degree) => logLikelihood(fact, ways, errorModel, degree),
      topLogLikelihood: (fact, degree) => topLogLikelihood(fact, errorModel, degree),
    };
  }

  /** The first `count` cars before any reading. */
  start(count: number): Cloud {
    const known = this.starts.get(count);
    if (known) return startCloud(known, this.dims);
    if (this.all.length < count * this.dims) this.all = this.family.start(count);
    const points = this.all.subarray(0, count * this.dims);
    this.starts.set(count, points);
    this.isStart.add(points);
    return startCloud(points, this.dims);
  }

  /** What a test shows on a car. */
  ways(test: number, point: Float64Array): readonly Way[] {
    return this.family.ways(test, point);
  }

  /** What a test shows on each of a cloud's cars; worked out once while the cloud is there. */
  show(test: number, points: Float64Array, count: number): CarsShow {
    const kept = this.isStart.has(points) ? this.firstOf(test) : this.laterOf(test, points);
    const waysOf = (car: number) => this.waysAt(test, points, car);
    return Array.from({ length: count }, (_, car) => kept.at(car, waysOf));
  }

  /** What a test shows on one of the first cars before any reading. */
  firstShow(test: number, car: number): readonly Way[] {
    const { points } = this.start(car + 1);
    return this.firstOf(test).at(car, (at) => this.waysAt(test, points, at));
  }

  private laterOf(test: number, points: Float64Array): KeptWays {
    const byTest = this.later.get(points) ?? new Map<number, KeptWays>();
    this.later.set(points, byTest);
    const kept = byTest.get(test) ?? new KeptWays();
    byTest.set(test, kept);
    return kept;
  }

  private firstOf(test: number): KeptWays {
    const known = this.first.get(test) ?? this.family.keptFor?.(test) ?? new KeptWays();
    this.first.set(test, known);
    return known;
  }

  private waysAt(test: number, points: Float64Array, car: number): readonly Way[] {
    return this.family.ways(test, points.subarray(car * this.dims, (car + 1) * this.dims));
  }

  /** Places of the values that a test depends on, by an exact reader. */
  private feltBy(fact: Fact): readonly number[] {
    const { test } = fact;
    const known = this.firstOf(test);
    if (known.felt) return known.felt;
    const { points } = this.start(PROBES);
    const exact = { ...fact, uncertainty: 0 };
    const felt = new Set<number>();
    for (let car = 0; car < PROBES; car += 1) {
      // The same numbers for each value, however many others a point has.
      const random = randomOf(PROBE_SEED + car);
      const point = points.subarray(car * this.dims, (car + 1) * this.dims);
      const here = this.family.ways(test, point);
      const differs = (other: Float64Array) =>
        areApart(exact, here, this.family.ways(test, other), this.errorModel);
      for (const at of feltAt(point, differs, random, felt)) felt.add(at);
    }
    known.felt = [...felt];
    return known.felt;
  }
}
