/**
 * The cheapest expected strategy from here to the repair: the yardstick for trees and students. Exact when the search
 * ends by itself; stopped early, it is the best strategy found with a bound that no strategy can beat.
 */
import { arrangements } from './arrangements.ts';
import { type CaseOptions, type Cases, splitIntoCases } from './cases.ts';
import { type Outcomes, outcomesOf } from './outcomes.ts';
import type { PredictionTable } from './prediction-table.ts';
import { priorFor } from './prior.ts';
import { expectedMinutes, readStrategy, type Strategy } from './strategy.ts';
import { StrategySearch } from './strategy-search.ts';
import {
  ALL_MEANS,
  COSTS,
  type CostModel,
  canDo,
  type Means,
  type Situation,
} from './test-cost.ts';

/** Where the search begins, from which tests it chooses, and when it stops. */
export interface OptimumOptions extends CaseOptions {
  /** Chance of each candidate; by default the prior by weight. */
  readonly chances?: Float64Array;
  /** Tests to choose from, as numbers of the table; by default all. */
  readonly tests?: readonly number[];
  readonly outcomes?: (test: number) => Outcomes;
  readonly start?: Situation;
  readonly costs?: CostModel;
  readonly means?: Means;
  /** States to look at from all sides before the search stops. */
  readonly expansionsMax?: number;
}

/** The best strategy found, and how far from the best of all it can be. */
export interface Optimum {
  readonly strategy: Strategy;
  readonly minutes: number;
  /** No strategy over these cases takes less on average. Equal to `minutes` when exact. */
  readonly bound: number;
  readonly exact: boolean;
  /** Minutes of always taking the most telling test per minute. */
  readonly greedyMinutes: number;
  readonly cases: Cases;
  readonly expansions: number;
}

/** Engine off, key off, nothing unplugged, nothing reached. */
export const AT_THE_START: Situation = { state: 'key-off', unplugged: [], reached: [] };

/** A few seconds and some hundred megabytes on a small machine for circuits of 60 faults. */
const EXPANSIONS_MAX = 20_000;

/** The cheapest expected strategy for a table. */
export function findOptimum(table: PredictionTable, options: OptimumOptions = {}): Optimum {
  const means = options.means ?? ALL_MEANS;
  const tests = (options.tests ?? [...table.tests.keys()]).filter(
    (test) => canDo(table.tests[test]!, means).can,
  );
  const cases = splitIntoCases(
    table,
    tests,
    options.outcomes ?? outcomesOf(table),
    options.chances ?? priorFor(table.candidates),
    options,
  );
  const moves = arrangements(
    tests.map((test) => table.tests[test]!),
    options.start ?? AT_THE_START,
    options.costs ?? COSTS,
    means.helper,
  );
  const search = new StrategySearch(cases, moves, 0);
  const greedyMinutes = search.greedy() / cases.mass;
  search.polish();
  const exact = search.run(options.expansionsMax ?? EXPANSIONS_MAX);
  const strategy = readStrategy(search.root, cases);
  return {
    strategy,
    minutes: expectedMinutes(strategy),
    bound: search.root.lower / cases.mass,
    exact,
    greedyMinutes,
    cases,
    expansions: search.expansions,
  };
}
