/** The suspects of a session, the tests that could be done, and how the chances stand after some of them. */
import type { Model } from '../circuit/model.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { type Outcomes, outcomesOf } from '../suspects/outcomes.ts';
import { buildTable, type Candidate, type PredictionTable } from '../suspects/prediction-table.ts';
import type { PairShows } from '../suspects/rank-pairs.ts';
import { type Ranking, rankSuspects } from '../suspects/rank-suspects.ts';
import type { WakingTest } from './intermittent.ts';
import { type AdvisorTest, needsOf, tableTest } from './test-table.ts';

/** What the space is made of. */
export interface SpaceAsk {
  readonly model: Model;
  readonly candidates: readonly Candidate[];
  readonly tests: readonly (AdvisorTest | WakingTest)[];
  /** What a test shows under a candidate in one sample of the tolerances. */
  readonly shows: (candidate: string, test: AdvisorTest | WakingTest, sample: number) => Shown;
  readonly samples: number;
  /** Chance of each candidate before any reading. */
  readonly prior: Float64Array;
  /** Without it two faults at once are not thought of. */
  readonly showsPair?: (ids: readonly [string, string], test: Test, sample: number) => Shown;
}

/** Grows by the tests a person thinks of; the table computes a column when it is first asked for. */
export class SuspectSpace {
  readonly table: PredictionTable;
  readonly outcomes: (test: number) => Outcomes;
  readonly prior: Float64Array;
  private readonly model: Model;
  private readonly tests: (AdvisorTest | WakingTest)[];
  private readonly byKey: Map<string, number>;
  /** What tests show with two faults at once; absent where pairs are not thought of. */
  readonly showsPair: PairShows | undefined;
  private readonly rankings = new Map<string, Ranking>();

  constructor({ model, candidates, tests, shows, samples, prior, showsPair }: SpaceAsk) {
    this.model = model;
    this.tests = [...tests];
    this.byKey = new Map(tests.map((one, index) => [keyOf(one), index]));
    this.table = buildTable(candidates, this.tests, shows, samples);
    this.outcomes = outcomesOf(this.table);
    this.prior = prior;
    this.showsPair =
      showsPair &&
      ((first, second, index) => {
        const { test } = this.tests[index]!;
        if (test === null) throw new Error('suspects: two faults at once are never woken');
        return Array.from({ length: samples }, (_, sample) =>
          showsPair([first, second], test, sample),
        );
      });
  }

  testAt(index: number): AdvisorTest | WakingTest {
    return this.tests[index]!;
  }

  /** Place of a test in the table; one that is new to it is taken in. Null when the model cannot answer it. */
  placeOf(test: Test, words: string): number | null {
    return this.byKey.get(testKey(test)) ?? this.remember(test, words);
  }

  /** Place of a waking step's test, by its id. */
  placeOfWaking(id: string): number | null {
    return this.byKey.get(id) ?? null;
  }

  /** The chances after `readings`; computed once for the same readings. */
  rank(readings: readonly Reading[]): Ranking {
    const key = JSON.stringify(
      readings.map(({ test, shown }) => [
        test,
        shown.kind === 'look' ? shown.look : String(shown.value),
      ]),
    );
    const known = this.rankings.get(key);
    if (known) return known;
    const { showsPair } = this;
    const ranking = rankSuspects(this.table, readings, this.prior, showsPair ? { showsPair } : {});
    this.rankings.set(key, ranking);
    return ranking;
  }

  private remember(test: Test, words: string): number | null {
    if (this.model.refusal(test) !== null) return null;
    const rest = { id: `own-${this.tests.length}`, words, family: test.probe.kind, minutes: 1 };
    const index =
      this.tests.push(tableTest(this.model, test, { ...rest, needs: needsOf(test) })) - 1;
    this.byKey.set(testKey(test), index);
    return index;
  }
}

function keyOf({ test, id }: AdvisorTest | WakingTest): string {
  return test === null ? id : testKey(test);
}
