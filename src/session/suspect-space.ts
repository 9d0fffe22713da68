/** The suspects of a session, the tests that could be done, and how the chances stand after some of them. */
import type { Model } from '../circuit/model.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { canBeAnswered } from '../circuit/test-refusal.ts';
import { type Corroboration, corroborate } from '../suspects/corroborate.ts';
import { ERROR_MODEL } from '../suspects/error-model.ts';
import type { Reading } from '../suspects/likelihood.ts';
import {
  type ProposalAsk,
  type Proposals,
  proposeTests,
  showsFault,
} from '../suspects/next-test.ts';
import { AT_THE_START, findOptimum, type Optimum } from '../suspects/optimum.ts';
import { type Outcomes, outcomesOf } from '../suspects/outcomes.ts';
import { Posteriors } from '../suspects/posterior.ts';
import { rankByClouds } from '../suspects/posterior-ranking.ts';
import {
  buildTable,
  type Candidate,
  HEALTHY,
  type PredictionTable,
} from '../suspects/prediction-table.ts';
import { type Ranking, rankSuspects } from '../suspects/rank-suspects.ts';
import type { Reach } from '../suspects/shown-reach.ts';
import { type CarKnowledge, carKnown } from '../suspects/shown-values.ts';
import { atOnce, type Slices } from '../suspects/slices.ts';
import type { CarSampler } from '../suspects/suspect-cars.ts';
import { canDo, type Means, type Situation } from '../suspects/test-cost.ts';
import type { TestEntry } from '../suspects/test-entries.ts';
import { type ConclusionVerdict, verdictOf } from '../suspects/verdict.ts';
import type { WakingTest } from './intermittent.ts';
import type { Session } from './session.ts';
import { type SessionReading, sessionReadings } from './session-readings.ts';
import type { TestTable } from './test-table.ts';

/** The suspects, their tests and their chances before any reading: what a space is built from. */
export interface SpaceAsk {
  readonly model: Model;
  readonly table: TestTable;
  readonly candidates: readonly Candidate[];
  /** The faults of a candidate by their ids; none for the healthy circuit. */
  readonly faultsOf: (candidate: string) => readonly string[];
  readonly tests: readonly (TestEntry | WakingTest)[];
  /** Chance of each candidate before any reading. */
  readonly prior: Float64Array;
  /** How the candidates answer to a test. */
  readonly answers: Answers;
}

/** Over all cars that the circuit describes, or on a few fixed ones where there are too many candidates for that. */
export type Answers =
  | {
      readonly over: 'cars';
      /** `testAt` gives a test of the space by its place. */
      readonly sampler: (testAt: (place: number) => TestEntry | WakingTest) => CarSampler;
    }
  | {
      readonly over: 'samples';
      readonly samples: number;
      readonly shows: (candidate: string, test: TestEntry | WakingTest, sample: number) => Shown;
    };

/** Readings with their ranking, and what the person can do now. */
export interface Standing {
  readonly readings: readonly Reading[];
  readonly ranking: Ranking;
  readonly now: Situation;
  readonly means: Means;
  /** Places of tests that the person cannot make; none where that is left out. */
  readonly aside?: readonly number[];
}

/** The search for the best plan stops after so many states, over so many cases; what it found is then the yardstick. */
const PLAN_EXPANSIONS = 300;
const PLAN_CASES = 120;
/** Rankings that are kept, the last ones used; each has a table of what every test shows. */
const RANKINGS_KEPT = 32;

/** Grows by the tests a person thinks of; the table computes a column when it is first asked for. */
export class SuspectSpace {
  /** Before any reading. */
  readonly table: PredictionTable;
  readonly prior: Float64Array;
  readonly faultsOf: (candidate: string) => readonly string[];
  private readonly ask: SpaceAsk;
  private readonly tests: (TestEntry | WakingTest)[];
  private readonly byKey: Map<string, number>;
  private readonly posteriors: Posteriors | null;
  private readonly outcomesIn = new WeakMap<PredictionTable, (test: number) => Outcomes>();
  private readonly rankings = new Map<string, Ranking>();
  private readonly weighedIn = new WeakMap<Ranking, Map<string, Corroboration>>();
  private planned: Optimum | undefined;

  constructor(ask: SpaceAsk) {
    const { candidates, tests, answers, prior, faultsOf } = ask;
    this.ask = ask;
    this.tests = [...tests];
    this.byKey = new Map(tests.map((one, index) => [keyOf(one), index]));
    this.prior = prior;
    this.faultsOf = faultsOf;
    if (answers.over === 'samples') {
      this.posteriors = null;
      this.table = buildTable(candidates, this.tests, answers.shows, answers.samples);
    } else {
      const sampler = answers.sampler((place) => this.testAt(place));
      const errorModel = ERROR_MODEL;
      this.posteriors = new Posteriors({
        ...{ candidates, tests: this.tests, sampler, prior, errorModel },
      });
      this.table = this.posteriors.table;
    }
  }

  /** What can be told apart in what the tests show, before any reading or in the table of a ranking. */
  outcomes(table: PredictionTable = this.table): (test: number) => Outcomes {
    const known = this.outcomesIn.get(table) ?? outcomesOf(table);
    this.outcomesIn.set(table, known);
    return known;
  }

  testAt(index: number): TestEntry | WakingTest {
    return this.tests[index]!;
  }

  /** Places of the tests that can be offered: those of the table, not what a person thought of or a step of the tree does. */
  offered(): number[] {
    return this.ask.tests.flatMap(({ test }, index) => (test === null ? [] : [index]));
  }

  /** Place of a test in the table; one that is new to it is taken in. Null when the model cannot answer it. */
  placeOf(test: Test): number | null {
    const entry = this.ask.table.entryOf(test);
    return this.byKey.get(entry.key) ?? this.remember(entry);
  }

  /** Places of all tests that are such, whoever thought of them. */
  placesWhere(isSuch: (test: Test) => boolean): number[] {
    return this.tests.flatMap(({ test }, place) => (test !== null && isSuch(test) ? [place] : []));
  }

  /** Place of a waking step's test, by its id. */
  placeOfWaking(id: string): number | null {
    return this.byKey.get(id) ?? null;
  }

  /** What a session has read, up to its conclusion. */
  readingsOf(session: Session): SessionReading[] {
    return sessionReadings(session, this);
  }

  /** The chances after `readings`; the last ones are kept. */
  rank(readings: readonly Reading[]): Ranking {
    return atOnce(this.ranked(readings));
  }

  /** The same in slices. */
  *ranked(readings: readonly Reading[]): Slices<Ranking> {
    const key = JSON.stringify(
      readings.map(({ test, shown, standardUncertainty }) => [
        test,
        shown.kind === 'look' ? shown.look : String(shown.value),
        standardUncertainty ?? null,
      ]),
    );
    const known = this.rankings.get(key);
    if (known) return known;
    const ranking = this.posteriors
      ? yield* rankByClouds(this.posteriors, readings)
      : rankSuspects(this.table, readings, this.prior);
    this.rankings.set(key, ranking);
    const [oldest] = this.rankings.keys();
    if (this.rankings.size > RANKINGS_KEPT && oldest !== undefined) this.rankings.delete(oldest);
    return ranking;
  }

  /** What is known of the car before the first of the readings, and after each; null where cars are not known. */
  carOnTheWay(readings: readonly Reading[]): CarKnowledge[] | null {
    const { posteriors } = this;
    if (!posteriors) return null;
    const { dims } = posteriors.ask.sampler;
    return Array.from({ length: readings.length + 1 }, (_, many) =>
      carKnown(posteriors.after(readings.slice(0, many)), dims),
    );
  }

  /** Points of the cars that the readings leave, each as often as its chance has it; null where cars are not known. */
  carsLeft(readings: readonly Reading[]): readonly Float64Array[] | null {
    const { posteriors } = this;
    return posteriors ? posteriors.carsLeft(posteriors.after(readings)) : null;
  }

  /** What a test would show on this car if nothing were wrong, as far as the readings tell; null where cars are not known. */
  soundShows(readings: readonly Reading[], test: number): readonly Shown[] | null {
    const { posteriors } = this;
    return posteriors ? posteriors.soundShows(posteriors.after(readings), test) : null;
  }

  /** Between which numbers a test can lie, whatever is wrong; null where cars are not known. */
  reach(readings: readonly Reading[], test: number): Reach | null {
    const { posteriors } = this;
    return posteriors ? posteriors.reach(posteriors.after(readings), test) : null;
  }

  /** The tests to do next. */
  propose(
    { readings, ranking, now, means, aside = [] }: Standing,
    more: Pick<ProposalAsk, 'massKept' | 'most'> = {},
  ): Proposals {
    const outcomes = this.outcomes(ranking.table);
    const without = [...this.doneOrOwn(readings), ...aside];
    return proposeTests(ranking.table, ranking, { now, means, outcomes, without, ...more });
  }

  /**
   * Chance of each test not made yet to show what a sound car does not; of those that only a step of the tree makes as well,
   * whether or not they can be made here.
   */
  showing({ readings, ranking, means, aside = [] }: Standing): {
    readonly test: number;
    readonly chance: number;
  }[] {
    const outcomes = this.outcomes(ranking.table);
    const without = new Set([...this.doneOrOwn(readings), ...aside]);
    const done = new Set(readings.map(({ test }) => test));
    return this.tests.flatMap((one, test) => {
      const canBe =
        one.test === null ? !done.has(test) : !without.has(test) && canDo(one, means).can;
      return canBe ? [{ test, chance: showsFault(ranking.table, ranking, outcomes(test)) }] : [];
    });
  }

  /** Where the readings have led. */
  verdict(standing: Omit<Standing, 'now'>): ConclusionVerdict {
    return atOnce(this.verdictInSlices(standing));
  }

  /** The same in slices. What they have worked out is kept: asked again it comes at once. */
  verdictInSlices({
    readings,
    ranking,
    means,
    aside = [],
  }: Omit<Standing, 'now'>): Slices<ConclusionVerdict> {
    const outcomes = this.outcomes(ranking.table);
    return verdictOf(ranking.table, ranking, {
      means,
      outcomes,
      without: [...this.doneOrOwn(readings), ...aside],
    });
  }

  /** What the readings are worth for a conclusion that these candidates stand for; null when it names none of them. */
  weigh(concluded: readonly string[], standing: Standing): Corroboration | null {
    return atOnce(this.weighInSlices(concluded, standing));
  }

  /** The same in slices; kept with the ranking, so that asked again it comes at once. */
  *weighInSlices(
    concluded: readonly string[],
    { readings, ranking, now, means, aside = [] }: Standing,
  ): Slices<Corroboration | null> {
    if (concluded.length === 0) return null;
    const { prior } = this;
    const outcomes = this.outcomes(ranking.table);
    const weighed = this.weighedIn.get(ranking) ?? new Map<string, Corroboration>();
    this.weighedIn.set(ranking, weighed);
    const key = JSON.stringify([concluded, now, means, aside]);
    const made =
      weighed.get(key) ??
      (yield* corroborate(ranking.table, {
        ...{ concluded, readings, ranking, prior, outcomes, now, means },
        without: [...this.doneOrOwn([]), ...aside],
      }));
    weighed.set(key, made);
    return made;
  }

  /**
   * The candidates that a conclusion with these faults stands for, no faults being the healthy circuit: those whose
   * every fault is named, and where two are there at once and only one of them was, all with that one.
   */
  namedBy(faults: readonly string[]): string[] {
    const ids = this.table.candidates.map(({ id }) => id);
    if (faults.length === 0) return ids.filter((id) => id === HEALTHY);
    const all = ids.filter((id) => {
      const own = this.faultsOf(id);
      return own.length > 0 && own.every((fault) => faults.includes(fault));
    });
    return all.length > 0
      ? all
      : ids.filter((id) => this.faultsOf(id).some((fault) => faults.includes(fault)));
  }

  /** The best plan from the start, worked out once. */
  plan(): Optimum {
    this.planned ??= findOptimum(this.table, {
      chances: this.prior,
      tests: this.offered(),
      outcomes: this.outcomes(),
      start: AT_THE_START,
      expansionsMax: PLAN_EXPANSIONS,
      casesMax: PLAN_CASES,
    });
    return this.planned;
  }

  /** What is not to be proposed. */
  private doneOrOwn(readings: readonly Reading[]): number[] {
    const offered = new Set(this.offered());
    for (const { test } of readings) offered.delete(test);
    return [...this.tests.keys()].filter((test) => !offered.has(test));
  }

  private remember(entry: TestEntry): number | null {
    const refusal = this.ask.model.refusal(entry.test);
    if (refusal !== null && !canBeAnswered(refusal)) return null;
    const index = this.tests.push(entry) - 1;
    this.byKey.set(entry.key, index);
    return index;
  }
}

function keyOf(test: TestEntry | WakingTest): string {
  return test.test === null ? test.id : test.key;
}
