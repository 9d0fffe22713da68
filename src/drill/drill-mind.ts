/** What can be known in a drill: the table of predictions, the ranking after the readings, the tests worth doing. */

import type { Circuit } from '../circuit/circuit.ts';
import { createModel, type Model } from '../circuit/model.ts';
import { shownOf } from '../circuit/shown-of.ts';
import { standardTests } from '../circuit/standard-tests.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { type Corroboration, corroborate } from '../suspects/corroborate.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { type Proposals, proposeTests } from '../suspects/next-test.ts';
import { AT_THE_START, findOptimum, type Optimum } from '../suspects/optimum.ts';
import { type Outcomes, outcomesOf } from '../suspects/outcomes.ts';
import {
  buildTable,
  type Candidate,
  HEALTHY,
  type PredictionTable,
} from '../suspects/prediction-table.ts';
import { priorFor } from '../suspects/prior.ts';
import { type Ranking, rankSuspects } from '../suspects/rank-suspects.ts';
import { ALL_MEANS, type Situation } from '../suspects/test-cost.ts';
import type { DrillMeasured, DrillOpened } from './drill-events.ts';
import { chanceOf } from './drill-random.ts';
import { type KnownTest, knownTest, standardOf, testKey } from './drill-test.ts';
import { PRESENT_CHANCE } from './drill-vehicle.ts';
import { type FaultPair, faultPairs } from './fault-pairs.ts';
import { type Level, levelNamed } from './levels.ts';
import { repairsWords } from './repairs-words.ts';

/** Samples of the tolerances in the ranking, for a debrief without a wait. */
const SAMPLES = 32;
/** Samples for what is good: those of a session, so that both name the same limits. */
const GOOD_SAMPLES = 64;
/** Two faults: pairs that are looked at, the likeliest first, and samples of each. */
const PAIRS_MAX = 300;
const PAIR_SAMPLES = 8;
/** Same for everybody, so that results can be compared. */
const MIND_SEED = 1;
/** The search for the best plan stops after so many states; what it found is then the yardstick. */
const EXPANSIONS = 300;
const CASES_MAX = 120;
/** Joins the repairs of a pair. */
export const AND = ' + ';

export interface DrillMind {
  readonly table: PredictionTable;
  readonly tests: readonly KnownTest[];
  readonly outcomes: (test: number) => Outcomes;
  /** For what a healthy circuit shows, with as many samples as a session has. */
  readonly healthy: () => Model;
  readonly rank: (readings: readonly Reading[], earlierRepair: string | null) => Ranking;
  readonly readingsOf: (measured: readonly DrillMeasured[]) => readonly Reading[];
  readonly propose: (readings: readonly Reading[], ranking: Ranking, now: Situation) => Proposals;
  readonly weigh: (ask: WeighAsk) => Corroboration;
  /** The best plan from the start, worked out once for each earlier repair. */
  readonly plan: (earlierRepair: string | null) => Optimum;
  /** The same mind with the student's own tests in its table, behind the standard ones. */
  readonly knowing: (measured: readonly DrillMeasured[]) => DrillMind;
}

export interface WeighAsk {
  readonly repair: string;
  readonly readings: readonly Reading[];
  readonly ranking: Ranking;
  readonly now: Situation;
  readonly earlierRepair: string | null;
}

/** A mind for drills on one circuit at one level. `truth` is a pair that must be among those looked at. */
export function createMind(
  opened: Pick<DrillOpened, 'circuit' | 'meter' | 'level'>,
  truth: readonly string[] = [],
): DrillMind {
  const level = levelNamed(opened.level);
  const { circuit, meter } = opened;
  const samples = level.faults === 2 ? PAIR_SAMPLES : SAMPLES;
  const model = createModel(circuit, { samples, seed: MIND_SEED, meter });
  const candidates = level.faults === 2 ? pairs(circuit, truth) : circuit.faults;
  const standard = standardTests(circuit).map(({ test, ...one }) =>
    knownTest({ ...test, wiggle: isMoved(level, test) }, meter, one),
  );
  const shows = showsFor(model, level);
  const base = buildTable(candidates, standard, shows, samples);
  const baseOutcomes = outcomesOf(base);
  const priorWith = keptBy((earlierRepair) =>
    priorFor(candidates, { replaced: earlierRepair === '' ? [] : [earlierRepair] }),
  );
  const healthy = keptBy(() =>
    createModel(circuit, { samples: GOOD_SAMPLES, seed: MIND_SEED, meter }),
  );
  const plan = keptBy((earlierRepair) =>
    findOptimum(base, {
      chances: priorWith(earlierRepair),
      outcomes: baseOutcomes,
      start: AT_THE_START,
      expansionsMax: EXPANSIONS,
      casesMax: CASES_MAX,
    }),
  );
  const build = (own: readonly KnownTest[]): DrillMind => {
    const table =
      own.length === 0 ? base : joined(base, buildTable(candidates, own, shows, samples));
    const ownOutcomes = outcomesOf(table);
    const outcomes = (test: number) =>
      test < standard.length ? baseOutcomes(test) : ownOutcomes(test);
    const tests = [...standard, ...own];
    const places = new Map(tests.map(({ test }, index) => [testKey(test), index]));
    return {
      table,
      tests,
      outcomes,
      healthy: () => healthy(''),
      rank: (readings, earlierRepair) =>
        rankSuspects(table, readings, priorWith(earlierRepair ?? '')),
      readingsOf: (measured) =>
        measured.flatMap(({ test, shown }) => {
          const index = places.get(testKey(test));
          return index === undefined ? [] : [{ test: index, shown: shownOf(shown) }];
        }),
      propose: (readings, ranking, now) =>
        proposeTests(table, ranking, {
          now,
          means: ALL_MEANS,
          outcomes,
          without: [
            ...readings.map(({ test }) => test),
            ...own.map((_, index) => standard.length + index),
          ],
        }),
      weigh: ({ repair, readings, ranking, now, earlierRepair }) =>
        corroborate(table, {
          concluded: candidates.filter((one) => one.repair === repair).map(({ id }) => id),
          readings,
          ranking,
          prior: priorWith(earlierRepair ?? ''),
          outcomes,
          now,
          means: ALL_MEANS,
        }),
      plan: (earlierRepair) => plan(earlierRepair ?? ''),
      knowing: (measured) => build(ownTests(measured, standard, opened)),
    };
  };
  return build([]);
}

/** The tests of the readings that are none of the standard ones, each once. */
function ownTests(
  measured: readonly DrillMeasured[],
  standard: readonly KnownTest[],
  { circuit, meter }: Pick<DrillOpened, 'circuit' | 'meter'>,
): KnownTest[] {
  const known = new Set(standard.map(({ test }) => testKey(test)));
  return measured.flatMap(({ test }) => {
    const key = testKey(test);
    if (known.has(key)) return [];
    known.add(key);
    return [knownTest(test, meter, standardOf(circuit, test))];
  });
}

/** On the level with a fault that comes and goes, a planned test is done with the harness moved. */
function isMoved(level: Level, { probe }: Test): boolean {
  return level.intermittent && probe.kind !== 'inspect';
}

function joined(base: PredictionTable, own: PredictionTable): PredictionTable {
  const first = base.tests.length;
  return {
    ...base,
    tests: [...base.tests, ...own.tests],
    column: (test) => (test < first ? base.column(test) : own.column(test - first)),
    shown: (test, candidate) =>
      test < first ? base.shown(test, candidate) : own.shown(test - first, candidate),
  };
}

function keptBy<T>(make: (key: string) => T): (key: string) => T {
  const kept = new Map<string, T>();
  return (key) => {
    const found = kept.get(key) ?? make(key);
    kept.set(key, found);
    return found;
  };
}

/** The repairs of an answer as one name of the table. */
export function repairName(repairs: readonly string[]): string {
  return [...repairs].sort().join(AND);
}

function pairs(circuit: Circuit, truth: readonly string[]): Candidate[] {
  const isTrue = ({ first, second }: FaultPair) =>
    truth.includes(first.id) && truth.includes(second.id);
  return faultPairs(circuit)
    .sort((a, b) => Number(isTrue(b)) - Number(isTrue(a)) || b.weight - a.weight)
    .slice(0, PAIRS_MAX)
    .map(pairOf);
}

function pairOf({ id, first, second, weight }: FaultPair): Candidate {
  return {
    id,
    words: `${first.words} and ${second.words}`,
    repair: repairName([first.repair, second.repair]),
    repairWords: repairsWords([first.repairWords, second.repairWords]),
    weight,
    subject: [...first.subject, ...second.subject],
  };
}

/** Without moving the harness, a fault that comes and goes is there in a share of the samples. */
function showsFor(model: Model, level: Level) {
  return (id: string, { test, id: testId }: KnownTest, sample: number): Shown => {
    const { setup, probe, wiggle } = test;
    const always = !level.intermittent || wiggle || probe.kind === 'inspect';
    const there = always || chanceOf(sample, `${id} ${testId}`) < PRESENT_CHANCE;
    return model.shows(there ? id : HEALTHY, { setup, probe }, sample);
  };
}
