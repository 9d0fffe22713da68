/**
 * Expected minutes of a tree's tests beside the cheapest order of the same tests, both with the planner's costs and over
 * the same cars.
 *
 * The planner is told only what the tree reads: of a number between which limits of the tree it lies, of a look which
 * outcome of the tree it is. The numbers themselves would give each drawn car away to a planner that knows all of them by
 * heart, and a look that no step tells from another is one that its author does not trust. For the same reason the order
 * is timed over cars that it was not made from, and a car that it leads to another repair goes through the tree after all.
 *
 * Two things the trees do on purpose. They read the battery first, so the order does too. And a car with nothing wrong is
 * searched for faults that come and go, of which the order knows nothing: it has to be told from the others in both, and
 * its minutes are counted in neither.
 */

import { createModel, type Model } from '../../src/circuit/model.ts';
import type { Look, Shown, Test } from '../../src/circuit/test.ts';
import { testKey } from '../../src/circuit/test-key.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { type TreeWay, walkFaults } from '../../src/proof/walk-faults.ts';
import { WRONG_SHARE_MAX } from '../../src/proof/way-issues.ts';
import { SESSION_SEED } from '../../src/session/session-model.ts';
import { AT_THE_START, findOptimum } from '../../src/suspects/optimum.ts';
import { type Outcomes, outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, HEALTHY, type PredictionTable } from '../../src/suspects/prediction-table.ts';
import { normalised, priorFor, withHealthy } from '../../src/suspects/prior.ts';
import type { Strategy } from '../../src/suspects/strategy.ts';
import { COSTS, type Situation, situationAfter, testCost } from '../../src/suspects/test-cost.ts';
import { type TestEntry, testEntries } from '../../src/suspects/test-entries.ts';

export interface Minutes {
  /** Expected minutes of the tree's tests in cars with a fault; questions and preparations are not counted. */
  readonly tree: number;
  /** The same of the cheapest order found. */
  readonly optimum: number;
  /** No order of the tree's tests takes less, over the cars that the cheapest one was made from. */
  readonly bound: number;
  /** Part of the cars, 0 to 1, that the cheapest order leads to another repair or to an outcome it has never seen. */
  readonly astray: number;
  /**
   * By fault: the most repairs that the tree, and the cheapest order found, leave together at an end of it. Of the cars of
   * a fault that go astray in the tree as few are left out as `ohmward check` lets pass.
   */
  readonly repairsLeft: ReadonlyMap<string, { readonly tree: number; readonly optimum: number }>;
}

/** Numbers between two limits of the tree stand this far from the next, in the unit of the test: no meter mixes them up. */
const APART = 100;
/** The cars that the order is made from are not those of the session's model, over which it is timed. */
const OTHER_SEED = SESSION_SEED + 1;
/** The chance of a car with nothing wrong, times this: it is told from the others, and costs next to nothing. */
const NO_COST = 1e-6;

/**
 * Both numbers over the faults of the tree's circuit, by their weights, in the cars of `model`; the order is made from
 * `samples` others of each fault. Takes seconds to minutes.
 */
export function compareMinutes(
  procedure: Procedure,
  model: Model,
  { samples = 512, expansionsMax = 1000 }: { samples?: number; expansionsMax?: number } = {},
): Minutes {
  const { circuit } = model;
  const entries = testEntries(circuit, procedure, model.meter).filter(({ step }) => step !== null);
  const candidates = withHealthy(circuit.faults);
  const chances = normalised(
    priorFor(candidates).map(
      (chance, row) => chance * (candidates[row]!.id === HEALTHY ? NO_COST : 1),
    ),
  );
  const others = createModel(circuit, { samples, seed: OTHER_SEED, meter: model.meter });
  const read = asTheTreeReads(procedure);
  const shows = (id: string, { test, key }: TestEntry, sample: number): Shown =>
    read(
      key,
      sample < samples ? others.shows(id, test, sample) : model.shows(id, test, sample - samples),
    );
  const table = buildTable(candidates, entries, shows, samples + model.samples);
  const outcomes = outcomesOf(table);
  const battery = entries.find(({ test }) => isOfBattery(test));
  const start = battery ? situationAfter(battery, AT_THE_START) : AT_THE_START;
  const begun = battery ? testCost(battery, AT_THE_START, COSTS, false).minutes : 0;
  // The model's own cars, which come last in the table, have no part in making the order.
  const sampleShares = Float64Array.from({ length: candidates.length * table.samples }, (_, at) =>
    at % table.samples < samples ? 1 / samples : 0,
  );
  const { bound, strategy } = findOptimum(table, {
    ...{ chances, outcomes, start, sampleShares, expansionsMax },
  });
  const ways = walkFaults(procedure, model);
  const inTree = minutesByCar(ways, minutesOfTests(procedure, entries), model.samples);
  const timed = timeOrder(strategy, table, outcomes, samples, {
    chance: (row) => chances[row]! / model.samples,
    otherwise: (row, sample) => inTree.get(candidates[row]!.id)![sample]!,
  });
  const tree = candidates.reduce(
    (sum, { id }, row) => sum + chances[row]! * mean(inTree.get(id)!),
    0,
  );
  const repairOf = new Map(candidates.map(({ id, repair }) => [id, repair]));
  const leftByTree = mostRepairs(endsOfTree(ways), repairOf);
  const leftByOrder = mostRepairs(endsOfStrategy(strategy, candidates), repairOf);
  const repairsLeft = new Map(
    candidates.map(({ id }) => [
      id,
      { tree: leftByTree.get(id) ?? 0, optimum: leftByOrder.get(id) ?? 0 },
    ]),
  );
  return {
    ...{ tree, optimum: begun + timed.minutes, bound: begun + bound, repairsLeft },
    astray: timed.astray,
  };
}

/** Minutes of the tests on a way; what reads nothing of the circuit is not counted. */
function minutesOfTests(
  procedure: Procedure,
  entries: readonly TestEntry[],
): (way: TreeWay) => number {
  const tests = new Map(entries.map((entry) => [entry.key, entry]));
  return ({ visits }) => {
    let now: Situation = AT_THE_START;
    let minutes = 0;
    for (const { step } of visits) {
      const test = testOf(procedure.steps[step]!);
      if (!test) continue;
      const planned = tests.get(testKey(test))!;
      minutes += testCost(planned, now, COSTS, false).minutes;
      now = situationAfter(planned, now);
    }
    return minutes;
  };
}

/** By fault, the minutes of the tree in each of its cars. */
function minutesByCar(
  ways: readonly TreeWay[],
  minutesOf: (way: TreeWay) => number,
  cars: number,
): Map<string, Float64Array> {
  const minutes = new Map<string, Float64Array>();
  for (const way of ways) {
    const own = minutes.get(way.fault) ?? new Float64Array(cars);
    minutes.set(way.fault, own);
    // A question without a usual answer sends the same cars several ways.
    const share = (way.share * cars) / way.samples.length;
    for (const car of way.samples) own[car]! += share * minutesOf(way);
  }
  return minutes;
}

/** Follows an order in the cars of the table from number `first` on. A car that goes astray takes `otherwise` besides. */
function timeOrder(
  strategy: Strategy,
  table: PredictionTable,
  outcomes: (test: number) => Outcomes,
  first: number,
  car: { chance: (row: number) => number; otherwise: (row: number, car: number) => number },
): { minutes: number; astray: number } {
  let minutes = 0;
  let astray = 0;
  table.candidates.forEach(({ repair }, row) => {
    const chance = car.chance(row);
    for (let sample = first; sample < table.samples; sample += 1) {
      let at: Strategy | undefined = strategy;
      while (at?.kind === 'test') {
        minutes += chance * at.minutes;
        const { specs, ofSample } = outcomes(at.test);
        const seen = specs[ofSample[row * table.samples + sample]!]!.id;
        at = at.branches.find(({ outcome }) => outcome === seen)?.next;
      }
      if (at?.repairs.some((one) => one.repair === repair)) continue;
      astray += chance;
      minutes += chance * car.otherwise(row, sample - first);
    }
  });
  return { minutes, astray };
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function isOfBattery({ probe }: Test): boolean {
  return (
    probe.kind === 'volts' &&
    probe.plus === 'battery.positive' &&
    probe.minus === 'battery.negative'
  );
}

/** What is shown, as the steps of a tree tell it: the same for all that no step of this test parts. */
function asTheTreeReads(procedure: Procedure): (key: string, shown: Shown) => Shown {
  const limits = limitsOf(procedure);
  const looks = looksOf(procedure);
  return (key, shown) => {
    if (shown.kind === 'look')
      return { ...shown, look: looks.get(key)?.get(shown.look) ?? shown.look };
    const passed = [...(limits.get(key) ?? [])].filter((limit) => limit <= shown.value);
    return { ...shown, value: APART * passed.length };
  };
}

/** By test and look: the first of the looks that every step of this test leaves by the same outcome as it. */
function looksOf({ steps }: Procedure): Map<string, ReadonlyMap<Look, Look>> {
  const outcomes = new Map<string, Map<Look, string[]>>();
  for (const step of Object.values(steps)) {
    const test = testOf(step);
    if (step.kind !== 'look' || !test) continue;
    const own = outcomes.get(testKey(test)) ?? new Map<Look, string[]>();
    outcomes.set(testKey(test), own);
    for (const { name, looks } of step.outcomes)
      for (const look of looks) own.set(look, [...(own.get(look) ?? []), `${step.id}: ${name}`]);
  }
  return new Map(
    [...outcomes].map(([key, own]) => {
      const first = new Map<string, Look>();
      return [
        key,
        new Map(
          [...own].map(([look, names]) => {
            const name = names.join('\n');
            first.set(name, first.get(name) ?? look);
            return [look, first.get(name)!];
          }),
        ),
      ];
    }),
  );
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
