/**
 * What a tree costs beside the cheapest strategy there is and beside following the proposals of the next test: three
 * expected times over the same faults, the same chances and the same costs of getting from one test to the next.
 */
import type { Model } from '../circuit/model.ts';
import { LOOKS, type Look } from '../circuit/test.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { EXACT_MODEL } from '../suspects/error-model.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { type Proposals, proposeTests } from '../suspects/next-test.ts';
import { AT_THE_START, findOptimum } from '../suspects/optimum.ts';
import { outcomesOf } from '../suspects/outcomes.ts';
import { buildTable, type PredictionTable } from '../suspects/prediction-table.ts';
import { priorFor, withHealthy } from '../suspects/prior.ts';
import { rankSuspects } from '../suspects/rank-suspects.ts';
import {
  ALL_MEANS,
  COSTS,
  type Situation,
  situationAfter,
  testCost,
} from '../suspects/test-cost.ts';
import { type TestEntry, testEntries } from '../suspects/test-entries.ts';
import type { TreeWay } from './walk-faults.ts';
import { minutesOfWays } from './way-minutes.ts';

/** Minutes of the tree beside two other ways to work, all over the same faults. */
export interface CostComparison {
  /** Expected minutes of the tree; those of its authors, less what the way from test to test saves. */
  readonly tree: number;
  /** Expected minutes of the cheapest strategy found; where the search was stopped early that can be `guided`. */
  readonly optimum: number;
  /** No strategy takes less; equal to `optimum` when the search ended by itself. */
  readonly bound: number;
  /** Expected minutes of always doing the first proposal until none tells anything more. */
  readonly guided: number;
}

/** Samples of the tolerances that the plans are made over. */
const SAMPLES = 8;
/** Looks as mere marks of outcomes, each once; there are more of them than a test has outcomes. */
const MARKS: readonly Look[] = [...new Set(Object.values(LOOKS).flat())];
/** States the search for the optimum looks at before it stops. */
const EXPANSIONS = 2000;

/** Parts of the time that the table and the optimum take. About so with the shipped trees. */
const TABLE_SHARE = 0.2;
const OPTIMUM_SHARE = 0.3;

/**
 * Compares the ways through a tree with what could be done without it. Takes seconds; `onShare` is called now and then with
 * the part that is done, 0 to 1.
 */
export function compareCost(
  procedure: Procedure,
  model: Model,
  ways: readonly TreeWay[],
  onShare: (share: number) => void = () => {},
): CostComparison {
  const tests = testEntries(model.circuit, procedure, model.meter);
  const candidates = withHealthy(model.circuit.faults);
  const samples = Math.min(SAMPLES, model.samples);
  const cells = candidates.length * tests.length * samples;
  let cell = 0;
  const shows = (id: string, { test }: TestEntry, sample: number) => {
    onShare((TABLE_SHARE * cell) / cells);
    cell += 1;
    return model.shows(id, test, sample);
  };
  const table = buildTable(candidates, tests, shows, samples);
  const chances = priorFor(candidates);
  const { minutes, bound } = findOptimum(table, { chances, expansionsMax: EXPANSIONS });
  const chanceOf = new Map(candidates.map(({ id }, index) => [id, chances[index]!]));
  const minutesOf = minutesOfWays(procedure, tests);
  const tree = ways.reduce(
    (sum, way) => sum + chanceOf.get(way.fault)! * way.share * minutesOf(way),
    0,
  );
  const guided = guidedMinutes(table, chances, (share) => {
    const before = TABLE_SHARE + OPTIMUM_SHARE;
    onShare(before + (1 - before) * share);
  });
  return { tree, optimum: Math.min(minutes, guided), bound, guided };
}

/** Minutes of following the proposals with readings that are the outcomes themselves. */
function guidedMinutes(
  measured: PredictionTable,
  chances: Float64Array,
  onShare: (share: number) => void,
): number {
  const table = outcomesAsLooks(measured);
  const outcomes = outcomesOf(table);
  const decided = new Map<string, Proposals>();
  const decide = (readings: readonly Reading[], now: Situation): Proposals => {
    const key = JSON.stringify(readings);
    const known = decided.get(key);
    if (known) return known;
    const ranking = rankSuspects(table, readings, chances, { errorModel: EXACT_MODEL });
    const without = readings.map(({ test }) => test);
    const made = proposeTests(table, ranking, { now, means: ALL_MEANS, outcomes, without });
    decided.set(key, made);
    return made;
  };
  let expected = 0;
  table.candidates.forEach((_, truth) => {
    for (let sample = 0; sample < table.samples; sample += 1) {
      onShare((truth + sample / table.samples) / table.candidates.length);
      const readings: Reading[] = [];
      let now: Situation = AT_THE_START;
      let first = decide(readings, now).best[0];
      while (first) {
        const test = table.tests[first.test]!;
        expected +=
          (chances[truth]! / table.samples) * testCost(test, now, COSTS, ALL_MEANS.helper).minutes;
        now = situationAfter(test, now);
        readings.push({ test: first.test, shown: table.shown(first.test, truth)[sample]! });
        first = decide(readings, now).best[0];
      }
    }
  });
  return expected;
}

/** The same table with each outcome as a look of its own, so that two readings of one outcome are the same reading. */
function outcomesAsLooks(table: PredictionTable): PredictionTable {
  const outcomes = outcomesOf(table);
  const rows = new Map(table.candidates.map(({ id }, index) => [id, index]));
  const columns = new Map(table.tests.map(({ id }, index) => [id, index]));
  return buildTable(
    table.candidates,
    table.tests,
    (id, test, sample) => {
      const { ofSample } = outcomes(columns.get(test.id)!);
      const look = MARKS[ofSample[rows.get(id)! * table.samples + sample]!];
      if (!look) throw new Error(`compare-cost: ${test.id} has more outcomes than there are marks`);
      return { kind: 'look', look };
    },
    table.samples,
  );
}
