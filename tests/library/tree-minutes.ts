/**
 * Expected minutes of a tree's tests beside the cheapest order of the same tests, both with the planner's costs.
 *
 * The planner is told of a number only between which limits of the tree it lies. The numbers themselves would give each
 * drawn car away to a planner that knows all of them by heart: in a circuit file with open values it would rest on what
 * nobody at a vehicle knows.
 */

import { createModel, type Model } from '../../src/circuit/model.ts';
import type { Shown } from '../../src/circuit/test.ts';
import { testKey } from '../../src/circuit/test-key.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { type TreeWay, walkFaults } from '../../src/proof/walk-faults.ts';
import { WRONG_SHARE_MAX } from '../../src/proof/way-issues.ts';
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
  /** No order of the tree's tests takes less. */
  readonly bound: number;
  /**
   * By fault: the most repairs that the tree, and the cheapest order found, leave together at an end of it. Of the cars of
   * a fault that go astray in the tree as few are left out as `ohmward check` lets pass.
   */
  readonly repairsLeft: ReadonlyMap<string, { readonly tree: number; readonly optimum: number }>;
}

/** Numbers between two limits of the tree stand this far from the next, in the unit of the test: no meter mixes them up. */
const APART = 100;

/** Both numbers over the faults of the tree's circuit, by their weights. Takes seconds. */
export function compareMinutes(
  procedure: Procedure,
  model: Model,
  { samples = 128, expansionsMax = 3000 }: { samples?: number; expansionsMax?: number } = {},
): Minutes {
  const { circuit } = model;
  const entries = testEntries(circuit, procedure, model.meter).filter(({ step }) => step !== null);
  const limits = limitsOf(procedure);
  const tests = new Map(entries.map((entry) => [entry.key, entry]));
  const candidates = withHealthy(circuit.faults);
  const few = createModel(circuit, { samples, seed: 1, meter: model.meter });
  const shows = (id: string, { test, key }: TestEntry, sample: number): Shown => {
    const shown = few.shows(id, test, sample);
    if (shown.kind === 'look') return shown;
    const passed = [...(limits.get(key) ?? [])].filter((limit) => limit <= shown.value);
    return { ...shown, value: APART * passed.length };
  };
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

/** By test: every limit at which some step of the tree parts its readings. */
function limitsOf({ steps }: Procedure): Map<string, ReadonlySet<number>> {
  const found = new Map<string, Set<number>>();
  for (const step of Object.values(steps)) {
    const test = testOf(step);
    if (step.kind !== 'measure' || !test) continue;
    const own = found.get(testKey(test)) ?? new Set();
    found.set(testKey(test), own);
    for (const { from, to } of step.outcomes)
      for (const limit of [from, to]) if (limit !== null) own.add(limit);
  }
  return found;
}

/** Faults that nothing on their way parted. */
function endsOfTree(ways: readonly TreeWay[]): string[][] {
  const ends = new Map<string, Map<string, number>>();
  for (const { fault, share, visits } of ways) {
    const way = JSON.stringify(visits);
    const shares = ends.get(way) ?? new Map<string, number>();
    ends.set(way, shares.set(fault, (shares.get(fault) ?? 0) + share));
  }
  return [...ends.values()].map((shares) =>
    [...shares].flatMap(([fault, share]) => (share > WRONG_SHARE_MAX ? [fault] : [])),
  );
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
