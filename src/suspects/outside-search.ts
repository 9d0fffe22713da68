/**
 * Cars of which one value is not as described: looked for where the suspects, on cars as they are described, take a
 * reading for a misreading.
 */
import { advanceCloud } from './advance-cloud.ts';
import type { Cloud } from './cloud.ts';
import type { ErrorModel } from './error-model.ts';
import { type Fact, isTakenBack, misreadChance } from './fact.ts';
import { type Candidate, HEALTHY } from './prediction-table.ts';
import { normalised } from './prior.ts';
import { randomOf } from './random.ts';
import type { Slices } from './slices.ts';
import { type CarsOf, SuspectCars } from './suspect-cars.ts';

/** Of those of which one value is not as described. Our choice. */
const OUTSIDE_CARS = 96;
/** From this chance on that it is a misreading, a reading is doubted. Our choice. */
const DOUBTED = 0.2;
/** One car in so many is not as its circuit file describes it. Our assumption. */
export const OUTSIDE_CHANCE = 0.03;
/** So many leading suspects, and the sound circuit, are held against such cars. Our choice. */
const OUTSIDE_LEADERS = 3;
/** Suspects with less chance have no say in what is doubted. Our choice. */
const HEARD_CHANCE = 3e-4;

/** What it is looked for in; all by candidate. */
export interface OutsideAsk {
  readonly candidates: readonly Candidate[];
  readonly families: readonly CarsOf[];
  readonly cars: readonly SuspectCars[];
  readonly prior: Float64Array;
  /** Number of unknown values. */
  readonly dims: number;
  readonly errorModel: ErrorModel;
}

/** What is known on cars as they are described; clouds and chances by candidate. */
export interface Inside {
  readonly facts: readonly Fact[];
  readonly clouds: readonly Cloud[];
  readonly chances: Float64Array;
}

/** What is doubted of the facts. */
interface Doubts {
  readonly facts: readonly Fact[];
  readonly doubted: readonly Fact[];
  /** Places of those that were not known before. */
  readonly newest: readonly number[];
  readonly searches: boolean;
}

/** Looks for such cars, and keeps what it has asked of them. */
export class OutsideSearch {
  private readonly ask: OutsideAsk;
  /** By candidate and by the values that may not be as described. */
  private readonly strange = new Map<string, SuspectCars>();

  constructor(ask: OutsideAsk) {
    this.ask = ask;
  }

  /**
   * Clouds of cars that are not as described, of the leaders and of the sound circuit, once the suspects as they are
   * take a reading for a misreading: none before, as such cars then fit no better than others. `unknown` are the facts
   * that those `before` have not taken in; without `searches` these are only carried on.
   */
  *after(
    before: readonly (Cloud | null)[],
    { facts, clouds, chances }: Inside,
    unknown: readonly Fact[],
    searches = true,
  ): Slices<(Cloud | null)[]> {
    const doubts = facts.map((_, fact) =>
      clouds.reduce(
        (sum, cloud, at) =>
          sum + (chances[at]! < HEARD_CHANCE ? 0 : chances[at]! * this.misread(cloud, fact)),
        0,
      ),
    );
    const leaders = [...chances.keys()]
      .sort((a, b) => chances[b]! - chances[a]!)
      .slice(0, OUTSIDE_LEADERS);
    const doubted = facts.filter((_, at) => doubts[at]! >= DOUBTED);
    const newest = facts.flatMap((fact, at) =>
      unknown.includes(fact) && doubts[at]! >= DOUBTED ? [at] : [],
    );
    const found: (Cloud | null)[] = [];
    for (const [at, { outside }] of this.ask.families.entries()) {
      const isAsked = leaders.includes(at) || this.ask.candidates[at]!.id === HEALTHY;
      const known = before[at] ?? null;
      const isOut = !outside || !isAsked || !(this.ask.prior[at]! > 0);
      if (isOut || !(doubted.length > 0 || known)) found.push(null);
      else found.push(yield* this.outsideOf(at, known, { facts, doubted, newest, searches }));
    }
    return found;
  }

  /** Of one candidate: the cars that are `known` carried on, or others, whichever explain the facts better. */
  private *outsideOf(
    at: number,
    known: Cloud | null,
    { facts, doubted, newest, searches }: Doubts,
  ): Slices<Cloud | null> {
    const moved =
      known && !isTakenBack(known.facts, facts)
        ? yield* advanceCloud(known, facts, this.strangeCars(at, []).model, randomOf(facts.length))
        : null;
    if (!searches || (moved && newest.every((fact) => this.misread(moved, fact) < DOUBTED)))
      return moved;
    const found = yield* this.searched(at, facts, doubted);
    return moved && moved.logEvidence >= found.logEvidence ? moved : found;
  }

  /** Cars of which a value that some of the `doubted` facts depend on is not as described, for all `facts`. */
  private *searched(at: number, facts: readonly Fact[], doubted: readonly Fact[]): Slices<Cloud> {
    const { values } = this.ask.families[at]!.outside!;
    const felt = new Set(doubted.flatMap((fact) => this.ask.cars[at]!.model.feltAtFirst(fact)));
    const among = values.filter((value) => felt.has(value));
    const cars = this.strangeCars(at, among.length === 0 ? values : among);
    const all = yield* advanceCloud(
      cars.start(OUTSIDE_CARS),
      facts,
      cars.model,
      randomOf(facts.length),
    );
    // The others, which could not explain them, are there as well: as many more cars without any weight.
    const share = Math.max(1, among.length) / values.length;
    return { ...all, logEvidence: all.logEvidence + Math.log(share) };
  }

  private strangeCars(at: number, values: readonly number[]): SuspectCars {
    const key = `${at}|${values.join()}`;
    const { outside, keptFor: _, ...family } = this.ask.families[at]!;
    const made =
      this.strange.get(key) ??
      new SuspectCars(
        {
          ...family,
          start: (count) => outside!.start(count, values),
          redraw: outside!.redraw,
        },
        this.ask.dims,
        this.ask.errorModel,
      );
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
}

/** The same with cars that are not as described; where they were not looked at they are taken to fit as well as others. */
export function withOutside(
  prior: Float64Array,
  clouds: readonly Cloud[],
  outside: readonly (Cloud | null)[],
): { readonly chances: Float64Array; readonly misfit: number } {
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
