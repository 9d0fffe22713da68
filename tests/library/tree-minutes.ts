/**
 * Expected minutes of a tree's tests beside the cheapest strategy found, both with the planner's costs.
 *
 * The samples must be many: with a handful, the size of a resistive fault gives it away to a planner that knows each
 * sample by heart, and the optimum is better than anyone could be.
 */

import { partName } from '../../src/circuit/circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { leads } from '../../src/circuit/refuse-test.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Test } from '../../src/circuit/test.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { testOf, type Way, walkFaults } from '../../src/proof/walk-faults.ts';
import { meterUncertainty } from '../../src/quantity/normal.ts';
import { AT_THE_START, findOptimum } from '../../src/suspects/optimum.ts';
import { buildTable, type TableTest } from '../../src/suspects/prediction-table.ts';
import { withHealthy } from '../../src/suspects/prior.ts';
import type { Strategy } from '../../src/suspects/strategy.ts';
import { COSTS, situationAfter, testCost } from '../../src/suspects/test-cost.ts';

export interface Minutes {
  /** Expected minutes of the tree's tests; questions and preparations are not counted. */
  readonly tree: number;
  readonly optimum: number;
  /** No strategy takes less. */
  readonly bound: number;
  /** By fault: the most repairs that the tree, and the cheapest strategy found, leave together at an end of it. */
  readonly repairsLeft: ReadonlyMap<string, { readonly tree: number; readonly optimum: number }>;
}

/** Minutes of the reading for tests of a tree that are no standard tests. Common practice, no source. */
const READING_MINUTES = {
  ...{ volts: 1, ohms: 2, light: 1.5, lamp: 1.5 },
  ...{ pattern: 3, counts: 1, timing: 5, inspect: 4 },
} as const;

interface Planned extends TableTest {
  readonly test: Test;
}

/** Both numbers over the faults of the tree's circuit, by their weights. Takes seconds. */
export function compareMinutes(
  procedure: Procedure,
  model: Model,
  { samples = 32, expansionsMax = 3000 }: { samples?: number; expansionsMax?: number } = {},
): Minutes {
  const tests = testsOf(procedure, model);
  const { circuit } = model;
  const candidates = withHealthy(circuit.faults);
  const few = createModel(circuit, { samples, seed: 1, meter: model.meter });
  const shows = (id: string, { test }: Planned, sample: number) => few.shows(id, test, sample);
  const table = buildTable(candidates, [...tests.values()], shows, samples);
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
      const planned = tests.get(keyOf(test))!;
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

function testsOf(procedure: Procedure, model: Model): Map<string, Planned> {
  const found = new Map<string, Planned>();
  const { volts, ohms } = model.meter;
  const add = (id: string, family: string, test: Test, minutes: number) => {
    if (found.has(keyOf(test))) return;
    const { state, unplugged, bridges, sensor } = test.setup;
    const { kind } = test.probe;
    const meter = kind === 'volts' ? volts : kind === 'ohms' ? ohms : null;
    // Live data is read at the diagnostic socket, not at the module's terminal.
    const at = kind === 'counts' ? [] : leads(test.probe).map(partName);
    found.set(keyOf(test), {
      ...{ id, family, minutes, test, state, unplugged, needs: [] },
      reaches: [...new Set(at)].filter((part) => part !== 'battery'),
      arrangement: JSON.stringify([bridges, sensor]),
      ...(meter
        ? { standardUncertainty: (value: number) => meterUncertainty(meter, value).standard }
        : {}),
    });
  };
  for (const { id, family, test, minutes } of standardTests(model.circuit))
    add(id, family, test, minutes);
  for (const step of Object.values(procedure.steps)) {
    const test = testOf(step);
    if (test && step.kind !== 'conclude')
      add(step.id, step.family, test, READING_MINUTES[test.probe.kind]);
  }
  return found;
}

/** The same for two tests that are the same, in whatever order their keys were written. */
function keyOf({ setup, probe }: Test): string {
  const { state, unplugged, bridges, sensor, target } = setup;
  const clipped = bridges.map(({ from, to, through }) => [from, to, through]);
  return JSON.stringify([
    ...[state, unplugged, clipped, sensor, target],
    Object.entries(probe).sort(([a], [b]) => (a < b ? -1 : 1)),
  ]);
}
