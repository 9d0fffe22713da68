/** Following the proposals on a table, every fault in every sample, against the cheapest strategy there is. */
import type { Look, Shown } from '../../src/circuit/test.ts';
import { EXACT_MODEL } from '../../src/suspects/error-model.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { type Proposals, proposeTests } from '../../src/suspects/next-test.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import { findOutcomes, outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, type PredictionTable } from '../../src/suspects/prediction-table.ts';
import { priorFor } from '../../src/suspects/prior.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import {
  ALL_MEANS,
  COSTS,
  type CostModel,
  type Situation,
  situationAfter,
  testCost,
} from '../../src/suspects/test-cost.ts';

/** Looks with six names, enough for any test's outcomes. */
const NAMES: readonly Look[] = ['full', 'weak', 'uneven', 'flat-high', 'flat-middle', 'flat-low'];

/** The same table seen through its outcomes: every test shows a look, so that readings are exact. */
export function asOutcomes(table: PredictionTable): PredictionTable {
  const outcomes = table.tests.map((_, test) => findOutcomes(table, test));
  const rows = new Map(table.candidates.map(({ id }, index) => [id, index]));
  const columns = new Map(table.tests.map(({ id }, index) => [id, index]));
  return buildTable(
    table.candidates,
    table.tests,
    (id, test, sample): Shown => {
      const at = rows.get(id)! * table.samples + sample;
      const outcome = outcomes[columns.get(test.id)!]!.ofSample[at]!;
      return { kind: 'look', look: NAMES[Math.min(outcome, NAMES.length - 1)]! };
    },
    table.samples,
  );
}

/** Expected minutes of doing always the first proposal until none tells anything more about the repair. */
export function guidedMinutes(table: PredictionTable, costs: CostModel = COSTS): number {
  const outcomes = outcomesOf(table);
  const prior = priorFor(table.candidates);
  const decided = new Map<string, Proposals>();
  let expected = 0;
  table.candidates.forEach((_, truth) => {
    for (let sample = 0; sample < table.samples; sample += 1)
      expected += (prior[truth]! / table.samples) * minutesFor(truth, sample);
  });
  return expected;

  function minutesFor(truth: number, sample: number): number {
    const readings: Reading[] = [];
    let now: Situation = AT_THE_START;
    let minutes = 0;
    for (;;) {
      const { best } = decide(readings, now);
      const [first] = best;
      if (!first) return minutes;
      const test = table.tests[first.test]!;
      minutes += testCost(test, now, costs, false).minutes;
      now = situationAfter(test, now);
      readings.push({ test: first.test, shown: table.shown(first.test, truth)[sample]! });
    }
  }

  function decide(readings: readonly Reading[], now: Situation): Proposals {
    const key = JSON.stringify(readings);
    const known = decided.get(key);
    if (known) return known;
    const ranking = rankSuspects(table, readings, prior, { errorModel: EXACT_MODEL });
    const without = readings.map(({ test }) => test);
    const made = proposeTests(table, ranking, { now, means: ALL_MEANS, outcomes, costs, without });
    decided.set(key, made);
    return made;
  }
}
