/**
 * Expected minutes of a tree's tests beside the cheapest strategy found, both with the planner's costs.
 *
 * The samples must be many: with a handful, the size of a resistive fault gives it away to a planner that knows each
 * sample by heart, and the optimum is better than anyone could be.
 */

import { createModel, type Model } from '../../src/circuit/model.ts';
import { testKey } from '../../src/circuit/test-key.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { type Way, walkFaults } from '../../src/proof/walk-faults.ts';
import { AT_THE_START, findOptimum } from '../../src/suspects/optimum.ts';
import { buildTable } from '../../src/suspects/prediction-table.ts';
import { withHealthy } from '../../src/suspects/prior.ts';
import type { Strategy } from '../../src/suspects/strategy.ts';
import { COSTS, situationAfter, testCost } from '../../src/suspects/test-cost.ts';
import { type TestEntry, testEntries } from '../../src/suspects/test-entries.ts';

export interface Minutes {
  /** Expected minutes of the tree's tests; questions and preparations are not counted. */
  readonly tree: number;
  readonly optimum: number;
  /** No strategy takes less. */
  readonly bound: number;
  /** By fault: the most repairs that the tree, and the cheapest strategy found, leave together at an end of it. */
  readonly repairsLeft: ReadonlyMap<string, { readonly tree: number; readonly optimum: number }>;
}

/** Both numbers over the faults of the tree's circuit, by their weights. Takes seconds. */
export function compareMinutes(
  procedure: Procedure,
  model: Model,
  { samples = 32, expansionsMax = 3000 }: { samples?: number; expansionsMax?: number } = {},
): Minutes {
  const { circuit } = model;
  const entries = testEntries(circuit, procedure, model.meter);
  const tests = new Map(entries.map((entry) => [entry.key, entry]));
  const candidates = withHealthy(circuit.faults);
  const few = createModel(circuit, { samples, seed: 1, meter: model.meter });
  const shows = (id: string, { test }: TestEntry, sample: number) => few.shows(id, test, sample);
  const table = buildTable(candidates, entries, shows, samples);
  const { minutes, bound, strategy } = findOptimum(table, { expansionsMax });
  const total = candidates.reduce((sum, { weight }) => sum + weight, 0);
  const chance = new Map(candidates.map(({ id, weight }) => [id, weight / total]));
  let tree = 0;
  const ways = walkFaults(procedure, model);
  for (const { fault, share, visits } of ways) {
    let now = AT_THE_START;
    for (const { step } of visits) {
      const test = testOf(procedure.steps[step]!);
      if (!test) continue;
      const planned = tests.get(testKey(test))!;
      tree += chance.get(fault)! * share * testCost(planned, now, COSTS, false).minutes;
      now = situationAfter(planned, now);
    }
  }
  const repairOf = new Map(candidates.map(({ id, repair }) => [id, repair]));
  const inTree = mostRepairs(endsOfTree(ways), repairOf);
  const inOptimum = mostRepairs(endsOfStrategy(strategy, candidates), repairOf);
  const repairsLeft = new Map(
    candidates.map(({ id }) => [
      id,
      { tree: inTree.get(id) ?? 0, optimum: inOptimum.get(id) ?? 0 },
    ]),
  );
  return { tree, optimum: minutes, bound, repairsLeft };
}

/** Faults that nothing on their way parted. */
function endsOfTree(ways: readonly Way[]): string[][] {
  const ends = new Map<string, string[]>();
  for (const { fault, visits } of ways) {
    const way = JSON.stringify(visits);
    ends.set(way, [...(ends.get(way) ?? []), fault]);
  }
  return [...ends.values()];
}

function endsOfStrategy(
  strategy: Strategy,
  candidates: readonly { readonly id: string }[],
): string[][] {
  return strategy.kind === 'conclude'
    ? [strategy.candidates.map((number) => candidates[number]!.id)]
    : strategy.branches.flatMap(({ next }) => endsOfStrategy(next, candidates));
}

function mostRepairs(
  ends: readonly (readonly string[])[],
  repairOf: ReadonlyMap<string, string>,
): Map<string, number> {
  const most = new Map<string, number>();
  for (const faults of ends) {
    const repairs = new Set(faults.map((fault) => repairOf.get(fault))).size;
    for (const fault of faults) most.set(fault, Math.max(most.get(fault) ?? 0, repairs));
  }
  return most;
}
