/** How long thinking takes: ranking after a reading, and the next proposal, on 60 faults, 25 tests, 64 samples. */
import type { Shown } from '../../src/circuit/test.ts';
import { proposeTests } from '../../src/suspects/next-test.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import type { PredictionTable } from '../../src/suspects/prediction-table.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { voltsTable } from '../suspects/tables.ts';

export interface SuspectsBench {
  readonly prepareMs: number;
  /** Milliseconds of ranking and proposing, after 0, 1, 2 ... readings: the median of the runs. */
  readonly stepMs: readonly number[];
  readonly worstMs: number;
}

const RUNS = 7;
const READINGS = 6;

/** Prints and returns the times; `now` is the caller's clock in milliseconds. */
export function benchSuspects(
  now: () => number = () => performance.now(),
  print: (line: string) => void = console.log,
): SuspectsBench {
  const table = voltsTable({ seed: 7, faults: 60, tests: 25, samples: 64 });
  const outcomes = outcomesOf(table);
  const before = now();
  for (let test = 0; test < table.tests.length; test += 1) outcomes(test);
  const prepareMs = now() - before;
  print(`suspects: outcomes of ${table.tests.length} tests found in ${prepareMs.toFixed(1)} ms`);
  const readings: { test: number; shown: Shown }[] = [];
  const stepMs: number[] = [];
  let worstMs = 0;
  for (let step = 0; step <= READINGS; step += 1) {
    const times: number[] = [];
    let next: number | undefined;
    for (let run = 0; run < RUNS; run += 1) {
      const start = now();
      const ranking = rankSuspects(table, readings);
      const ask = {
        now: AT_THE_START,
        means: ALL_MEANS,
        outcomes,
        without: readings.map(({ test }) => test),
      };
      next = proposeTests(table, ranking, ask).best[0]?.test;
      times.push(now() - start);
    }
    times.sort((a, b) => a - b);
    const median = times[Math.floor(RUNS / 2)]!;
    stepMs.push(median);
    worstMs = Math.max(worstMs, times[RUNS - 1]!);
    print(`suspects: after ${step} readings, update and proposal ${median.toFixed(1)} ms`);
    if (next === undefined) break;
    readings.push({ test: next, shown: answer(table, next) });
  }
  print(`suspects: slowest single run ${worstMs.toFixed(1)} ms`);
  return { prepareMs, stepMs, worstMs };
}

/** What the vehicle shows: the seventh fault in its eleventh sample. */
function answer(table: PredictionTable, test: number): Shown {
  return table.shown(test, 7)[11]!;
}
