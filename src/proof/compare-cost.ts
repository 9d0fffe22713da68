/**
 * What a tree costs beside the cheapest strategy there is and beside following the proposals of the next test: three
 * expected times over the same faults, the same chances and the same costs of getting from one test to the next. A plan is
 * timed in cars that it was not made from: those it was made from it knows by heart, and seems cheaper than it is.
 */
import type { Model } from '../circuit/model.ts';
import { LOOKS, type Look, type Shown } from '../circuit/test.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { EXACT_MODEL } from '../suspects/error-model.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { proposeTests } from '../suspects/next-test.ts';
import { AT_THE_START, findOptimum } from '../suspects/optimum.ts';
import { type Outcomes, outcomesOf } from '../suspects/outcomes.ts';
import { buildTable, type PredictionTable } from '../suspects/prediction-table.ts';
import { priorFor, withHealthy } from '../suspects/prior.ts';
import { rankSuspects } from '../suspects/rank-suspects.ts';
import type { Strategy } from '../suspects/strategy.ts';
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
  /** Expected minutes of the cheapest strategy found, in cars that it was not made from; that can be `guided`. */
  readonly optimum: number;
  /** No strategy takes less in the cars that the cheapest one was made from, which it knows by heart. */
  readonly bound: number;
  /** Expected minutes of always doing the first proposal until none tells anything more. */
  readonly guided: number;
  /** Part of the cars, 0 to 1, that the cheapest strategy leads to another repair; their minutes of the tree are added. */
  readonly astray: number;
}

/** Cars of each fault that the plans are made over, and as many others that they are timed in. Our choice. */
const SAMPLES = 16;
/** Looks as mere marks of outcomes, each once; there are more of them than a test has outcomes. */
const MARKS: readonly Look[] = [...new Set(Object.values(LOOKS).flat())];
/** States the search for the optimum looks at before it stops. */
const EXPANSIONS = 2000;

/** Parts of the time that the table and the optimum take. About so with the shipped trees. */
const TABLE_SHARE = 0.2;
const OPTIMUM_SHARE = 0.3;

/** The cars of each fault: the plans are made over the first, and timed in those from `first` on. */
interface Cars {
  readonly planned: number;
  readonly first: number;
  readonly all: number;
}

/** What a car takes: its chance, and its minutes of the tree where a plan leads it astray. */
interface Timing {
  readonly chance: (row: number) => number;
  readonly otherwise: (row: number, sample: number) => number;
}

interface Timed {
  readonly minutes: number;
  readonly astray: number;
}

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
  const cars = carsOf(model.samples);
  const cells = candidates.length * tests.length * cars.all;
  let cell = 0;
  const shows = (id: string, { test }: TestEntry, sample: number) => {
    onShare((TABLE_SHARE * cell) / cells);
    cell += 1;
    return model.shows(id, test, sample);
  };
  const table = buildTable(candidates, tests, shows, cars.all);
  const outcomes = outcomesOf(table);
  const chances = priorFor(candidates);
  const chanceOf = new Map(candidates.map(({ id }, index) => [id, chances[index]!]));
  const minutesOf = minutesOfWays(procedure, tests);
  const inTree = minutesByCar(ways, minutesOf);
  const timing: Timing = {
    chance: (row) => chances[row]! / (cars.all - cars.first),
    otherwise: (row, sample) => inTree(candidates[row]!.id, sample),
  };
  const { strategy, bound } = findOptimum(table, {
    ...{ chances, outcomes, expansionsMax: EXPANSIONS },
    sampleShares: plannedShares(candidates.length, cars),
  });
  const ordered = timeStrategy(strategy, table, outcomes, cars, timing);
  const tree = ways.reduce(
    (sum, way) => sum + chanceOf.get(way.fault)! * way.share * minutesOf(way),
    0,
  );
  const guided = timeProposals(table, { chances, outcomes, cars, timing }, (share) => {
    const before = TABLE_SHARE + OPTIMUM_SHARE;
    onShare(before + (1 - before) * share);
  });
  const [best] = [ordered, guided].sort((one, other) => one.minutes - other.minutes);
  return { tree, optimum: best!.minutes, bound, guided: guided.minutes, astray: best!.astray };
}

/** With a single car the plans can only be timed in the one that they are made from. */
function carsOf(samples: number): Cars {
  const planned = Math.min(SAMPLES, Math.ceil(samples / 2));
  return samples === 1
    ? { planned, first: 0, all: 1 }
    : { planned, first: planned, all: Math.min(samples, 2 * planned) };
}

/** The cars that come last in the table have no part in making a plan. */
function plannedShares(rows: number, { planned, all }: Cars): Float64Array {
  return Float64Array.from({ length: rows * all }, (_, at) =>
    at % all < planned ? 1 / planned : 0,
  );
}

/** Minutes of the tree in one car of a fault; a question sends the same car several ways, each with its part. */
function minutesByCar(
  ways: readonly TreeWay[],
  minutesOf: (way: TreeWay) => number,
): (fault: string, sample: number) => number {
  const cars = new Map<string, { minutes: number; share: number }>();
  for (const way of ways)
    for (const sample of way.samples) {
      const key = `${way.fault} ${sample}`;
      const known = cars.get(key) ?? { minutes: 0, share: 0 };
      known.share += way.share / way.samples.length;
      known.minutes += (minutesOf(way) * way.share) / way.samples.length;
      cars.set(key, known);
    }
  return (fault, sample) => {
    const car = cars.get(`${fault} ${sample}`);
    return car ? car.minutes / car.share : 0;
  };
}

/** Follows a strategy in the cars that it was not made from. One that goes astray takes its minutes of the tree besides. */
function timeStrategy(
  strategy: Strategy,
  table: PredictionTable,
  outcomes: (test: number) => Outcomes,
  { first, all }: Cars,
  { chance, otherwise }: Timing,
): Timed {
  let minutes = 0;
  let astray = 0;
  table.candidates.forEach(({ repair }, row) => {
    for (let sample = first; sample < all; sample += 1) {
      let at: Strategy | undefined = strategy;
      while (at?.kind === 'test') {
        minutes += chance(row) * at.minutes;
        const { specs, ofSample } = outcomes(at.test);
        const seen = specs[ofSample[row * all + sample]!]!.id;
        at = at.branches.find(({ outcome }) => outcome === seen)?.next;
      }
      if (at?.repairs.some((one) => one.repair === repair)) continue;
      astray += chance(row);
      minutes += chance(row) * otherwise(row, sample);
    }
  });
  return { minutes, astray };
}

/** The same of the proposals, made with readings that are the outcomes themselves. */
function timeProposals(
  whole: PredictionTable,
  {
    chances,
    outcomes: found,
    cars,
    timing,
  }: {
    readonly chances: Float64Array;
    readonly outcomes: (test: number) => Outcomes;
    readonly cars: Cars;
    readonly timing: Timing;
  },
  onShare: (share: number) => void,
): Timed {
  const { table, markOf } = outcomesAsLooks(whole, found, cars.planned);
  const outcomes = outcomesOf(table);
  const decided = new Map<string, PlannedTest>();
  const decide = (readings: readonly Reading[], now: Situation): PlannedTest => {
    const key = JSON.stringify(readings);
    const known = decided.get(key);
    if (known) return known;
    const left = repairsLeft(table, readings);
    const without = readings.map(({ test }) => test);
    // No car that the plan knows shows this: there is nothing to go by.
    const made =
      left.size === 0
        ? null
        : proposeTests(table, rankSuspects(table, readings, chances, { errorModel: EXACT_MODEL }), {
            ...{ now, means: ALL_MEANS, outcomes, without },
          });
    const decision = { test: made?.best[0]?.test ?? null, left };
    decided.set(key, decision);
    return decision;
  };
  let minutes = 0;
  let astray = 0;
  const timed = cars.all - cars.first;
  table.candidates.forEach(({ repair }, truth) => {
    const chance = timing.chance(truth);
    for (let sample = cars.first; sample < cars.all; sample += 1) {
      onShare((truth + (sample - cars.first) / timed) / table.candidates.length);
      const readings: Reading[] = [];
      let now: Situation = AT_THE_START;
      let next = decide(readings, now);
      while (next.test !== null) {
        const test = table.tests[next.test]!;
        minutes += chance * testCost(test, now, COSTS, ALL_MEANS.helper).minutes;
        now = situationAfter(test, now);
        readings.push({ test: next.test, shown: markOf(next.test, truth, sample) });
        next = decide(readings, now);
      }
      if (next.left.has(repair)) continue;
      astray += chance;
      minutes += chance * timing.otherwise(truth, sample);
    }
  });
  return { minutes, astray };
}

/** The test that is made next, or none, and the repairs that some planned car with these readings needs. */
interface PlannedTest {
  readonly test: number | null;
  readonly left: ReadonlySet<string>;
}

function repairsLeft(table: PredictionTable, readings: readonly Reading[]): ReadonlySet<string> {
  const left = new Set<string>();
  table.candidates.forEach(({ repair }, row) => {
    for (let sample = 0; sample < table.samples; sample += 1)
      if (readings.every(({ test, shown }) => alike(table.shown(test, row)[sample]!, shown))) {
        left.add(repair);
        return;
      }
  });
  return left;
}

function alike(one: Shown, other: Shown): boolean {
  return one.kind === 'look' && other.kind === 'look' && one.look === other.look;
}

/** The planned cars with each outcome as a look of its own, so that two readings of one outcome are the same reading. */
function outcomesAsLooks(
  table: PredictionTable,
  outcomes: (test: number) => Outcomes,
  planned: number,
): {
  readonly table: PredictionTable;
  readonly markOf: (test: number, row: number, sample: number) => Shown;
} {
  const rows = new Map(table.candidates.map(({ id }, index) => [id, index]));
  const columns = new Map(table.tests.map(({ id }, index) => [id, index]));
  const markOf = (test: number, row: number, sample: number): Shown => {
    const look = MARKS[outcomes(test).ofSample[row * table.samples + sample]!];
    if (!look)
      throw new Error(
        `compare-cost: ${table.tests[test]!.id} has more outcomes than there are marks`,
      );
    return { kind: 'look', look };
  };
  const marks = buildTable(
    table.candidates,
    table.tests,
    (id, test, sample) => markOf(columns.get(test.id)!, rows.get(id)!, sample),
    planned,
  );
  return { table: marks, markOf };
}
