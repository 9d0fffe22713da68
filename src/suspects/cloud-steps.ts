/**
 * How the clouds of all suspects go on by a reading: each is weighed, and the cars of a suspect that may be right are moved
 * among those that the readings leave. What comes and goes borrows the cars of the sound circuit as long as they will do.
 */
import { advanceCloud, type WeighedCloud, weighed } from './advance-cloud.ts';
import type { BorrowedCars } from './borrowed-cars.ts';
import { averaged, type Cloud, type CloudModel, effectiveCount, fewer, isMoved } from './cloud.ts';
import { EVIDENCE_RATIO } from './evidence-ratio.ts';
import { type Fact, isTakenBack } from './fact.ts';
import { OUTSIDE_CHANCE, type OutsideSearch, withOutside } from './outside-search.ts';
import { normalised } from './prior.ts';
import { randomOf } from './random.ts';
import type { Slices } from './slices.ts';
import type { CarsOf, SuspectCars } from './suspect-cars.ts';
import { carsOfTwin, type MovedCars } from './twin-cars.ts';

/** Cars of a suspect that may be right, ... */
const CARS = 96;
/** ... of one that hardly is, whose chance need not be known so well, ... */
const FEW_CARS = 32;
/** ... and of one that was out when its cars had been moved. Our choice. */
const OUT_CARS = 16;
/** Of the sound circuit's cars so many stand for a suspect that shares them. Our choice. */
const LENT_CARS = 32;
/**
 * Where the sound circuit's cars favour a suspect by so much less than before they were moved, they were bent to explain
 * what the suspect explains as it is. A car that fits a reading may be among those lent or not, which is log(3) already.
 */
const BENT_NATS = 2;
/** From this chance on a suspect may be right, ... */
export const LIKELY_CHANCE = 0.02;
/** ... and one of those that come and go, of which many are alike. */
const LIKELY_OF_MANY = 0.1;
/**
 * One of them that was, or is, as likely as others and whose chance a reading turns by so much is looked at once more from
 * the beginning: cars that were right for most of many readings may be copies of few. Our choice.
 */
const TURNED = 10;
/** ... and with less than this it is out: it is weighed, but its cars are not moved. Our choice. */
const LIVE_CHANCE = 3e-4;
/** Weights that rest on fewer cars than this are of no use to go on with: others start from the beginning. */
const WORN_CARS = 12;

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

/** The cloud before the last of so many readings, and the facts after it. */
interface MovedFrom {
  readonly from: Cloud;
  /** The suspect's chance then. */
  readonly was: number;
  /** What is new among the facts is a slip by all cars of all suspects. */
  readonly isSlip: boolean;
  readonly facts: readonly Fact[];
  /** Of readings. */
  readonly number: number;
}

/** What is known of the suspects; all by candidate. */
export interface CloudStepsAsk {
  readonly prior: Float64Array;
  readonly families: readonly CarsOf[];
  readonly cars: readonly SuspectCars[];
  /** Place of the sound circuit, where others share its cars. */
  readonly lender: number | null;
  readonly borrowed: BorrowedCars;
  readonly outside: OutsideSearch;
}

/** Begins with the clouds of all suspects, and goes on with them. */
export class CloudSteps {
  private readonly ask: CloudStepsAsk;

  constructor(ask: CloudStepsAsk) {
    this.ask = ask;
  }

  /** All suspects on their first cars. */
  start(): Posterior {
    const own = this.ask.cars.map((cars) => cars.start(CARS));
    const lent = this.lentOf(own);
    const clouds = own.map((cloud, at) => {
      const { borrows } = this.ask.families[at]!;
      return lent && borrows ? this.ask.borrowed.cloud(this.ask.cars[at]!, lent, borrows) : cloud;
    });
    return {
      ...{ facts: [], clouds, chances: this.ask.prior },
      outside: clouds.map(() => null),
      misfit: OUTSIDE_CHANCE,
    };
  }

  /**
   * After `number` readings with these facts, which follow from those `before`. A suspect without a prior stays as it is;
   * without `searches` no other cars that are not as described are looked for.
   */
  *after(
    before: Posterior,
    facts: readonly Fact[],
    number: number,
    { prior, searches } = { prior: this.ask.prior, searches: true },
  ): Slices<Posterior> {
    const roughly: WeighedCloud[] = [];
    for (const [at, cloud] of before.clouds.entries()) {
      roughly.push(
        prior[at]! > 0
          ? weighed(cloud, facts, this.modelOf(at, cloud))
          : { cloud, roughly: cloud.logEvidence, isPlain: true },
      );
      yield;
    }
    const rough = chancesFrom(
      prior,
      roughly.map((one) => one.roughly),
    );
    const isSlip = this.isSlipForAll(prior, before, facts, roughly);
    const clouds = roughly.map(({ cloud }) => cloud);
    const isLent = (at: number) => this.ask.families[at]!.borrows && !isMoved(before.clouds[at]!);
    const movedFrom = (at: number): MovedFrom => ({
      ...{ from: before.clouds[at]!, was: before.chances[at]! },
      ...{ facts, number, isSlip },
    });
    for (const [at, one] of roughly.entries())
      if (!isLent(at) && prior[at]! > 0)
        clouds[at] = yield* this.movedOn(at, one, rough[at]!, movedFrom(at));
    const lent = this.lentOf(clouds);
    const lenderLost = lent ? roughly[this.ask.lender!]!.cloud.logEvidence - lent.logEvidence : 0;
    for (const [at, one] of roughly.entries())
      if (lent && isLent(at) && prior[at]! > 0)
        clouds[at] = yield* this.lentOn(at, one, rough[at]!, {
          ...movedFrom(at),
          ...{ lent, lenderLost },
        });
    yield* this.shareAmongTwins(clouds, facts, rough);
    const inside = chancesOf(prior, clouds);
    const found = { facts, clouds, chances: inside };
    const unknown = facts.filter((fact) => !before.facts.includes(fact));
    const outside = yield* this.ask.outside.after(before.outside, found, unknown, searches);
    return { facts, clouds, outside, ...withOutside(prior, clouds, outside) };
  }

  /** Those that come and go and that the facts leave alike get the cars of the likeliest of them, as soon as it has its own. */
  private *shareAmongTwins(
    clouds: Cloud[],
    facts: readonly Fact[],
    rough: Float64Array,
  ): Slices<void> {
    const { families, cars } = this.ask;
    const fleeting = [...clouds.keys()]
      .filter((at) => families[at]!.borrows && rough[at]! > 0)
      .sort((a, b) => rough[b]! - rough[a]! || a - b);
    const moved: MovedCars[] = [];
    for (const at of fleeting) {
      const twin = carsOfTwin(cars[at]!, moved, facts);
      if (twin) clouds[at] = twin;
      else if (isMoved(clouds[at]!) && rough[at]! >= LIVE_CHANCE)
        moved.push({ cars: cars[at]!, cloud: clouds[at]! });
      yield;
    }
  }

  /** Whether new facts are explained by nothing but a slip: then cars that explain them may have been lost. */
  private isSlipForAll(
    prior: Float64Array,
    { clouds, facts: known }: Posterior,
    facts: readonly Fact[],
    roughly: readonly WeighedCloud[],
  ): boolean {
    const added = facts.filter((fact) => !known.includes(fact));
    const slip = added.reduce((sum, one) => sum + Math.log(one.slip * one.blind), 0);
    const gain =
      evidenceOf(
        prior,
        roughly.map(({ cloud }) => cloud),
      ) - evidenceOf(prior, clouds);
    return added.length > 0 && gain < slip + Math.log(EVIDENCE_RATIO);
  }

  /** The cars of a suspect moved among those that the facts leave, as far as its chance is worth it. */
  private *movedOn(
    at: number,
    { cloud, isPlain }: WeighedCloud,
    chance: number,
    { from, facts, number, was, isSlip }: MovedFrom,
  ): Slices<Cloud> {
    const isTurned =
      this.ask.families[at]!.borrows !== undefined &&
      Math.max(was, chance) >= LIKELY_CHANCE &&
      (isSlip || chance < was / TURNED || was < chance / TURNED);
    if (!(chance >= LIVE_CHANCE || at === this.ask.lender || isTurned))
      return isMoved(cloud) ? fewer(cloud, OUT_CARS) : cloud;
    const least = this.ask.families[at]!.borrows ? LIKELY_OF_MANY : LIKELY_CHANCE;
    const wanted = chance < least && at !== this.ask.lender ? FEW_CARS : CARS;
    if (isPlain && !isTurned && cloud.count >= wanted && effectiveCount(cloud) >= wanted / 2)
      return cloud;
    const isAnew =
      from.count < wanted || effectiveCount(from) < WORN_CARS || isTakenBack(from.facts, facts);
    // From the beginning few cars miss what all readings leave of it more often than not, and the suspect is out for good.
    const cars = isAnew ? this.ask.cars[at]!.start(CARS) : from;
    // The same numbers for every suspect: what a reading says of none of them then costs none of them anything.
    const random = randomOf(number);
    const moved = yield* advanceCloud(cars, facts, this.modelOf(at, cars), random);
    if (isAnew || !isTurned) return moved;
    const { model } = this.ask.cars[at]!;
    return averaged(
      moved,
      yield* advanceCloud(this.ask.cars[at]!.start(CARS), facts, model, randomOf(-number)),
    );
  }

  /** Of the sound circuit's cars, those that it lends; null where it lends none. */
  private lentOf(clouds: readonly Cloud[]): Cloud | null {
    return this.ask.lender === null ? null : fewer(clouds[this.ask.lender]!, LENT_CARS);
  }

  private modelOf(at: number, cloud: Cloud): CloudModel {
    const { borrows } = this.ask.families[at]!;
    const cars = this.ask.cars[at]!;
    return borrows ? this.ask.borrowed.model(cars, borrows, cloud) : cars.model;
  }

  /**
   * The cars of a suspect that borrows them: those that it has, where they do; those that the sound circuit has now, where
   * they explain the readings no worse. Else that circuit's cars were bent by what the suspect explains as it is, and it
   * goes on with its own.
   */
  private *lentOn(
    at: number,
    one: WeighedCloud,
    chance: number,
    {
      lent,
      lenderLost,
      ...state
    }: MovedFrom & { readonly lent: Cloud; readonly lenderLost: number },
  ): Slices<Cloud> {
    if (one.isPlain && !state.isSlip) return one.cloud;
    const again = this.ask.borrowed.cloud(
      this.ask.cars[at]!,
      lent,
      this.ask.families[at]!.borrows!,
    );
    const isWorn = effectiveCount(again) < WORN_CARS;
    const lost = one.cloud.logEvidence - again.logEvidence - lenderLost;
    if (!isWorn && lost < BENT_NATS) return again;
    return yield* this.movedOn(at, one, chance, state);
  }
}

/** Chances from how likely the facts are with each. */
function chancesOf(prior: Float64Array, clouds: readonly Cloud[]): Float64Array {
  return chancesFrom(
    prior,
    clouds.map(({ logEvidence }) => logEvidence),
  );
}

/** Logarithm of how likely the facts are, whichever suspect is right. */
function evidenceOf(prior: Float64Array, clouds: readonly Cloud[]): number {
  const logs = clouds.map(({ logEvidence }, at) => logEvidence + Math.log(prior[at]!));
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}

function chancesFrom(prior: Float64Array, evidence: readonly number[]): Float64Array {
  const logs = evidence.map((log, at) => log + Math.log(prior[at]!));
  const most = Math.max(...logs);
  return normalised(Float64Array.from(logs, (log) => Math.exp(log - most)));
}
