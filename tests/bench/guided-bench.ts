/**
 * Following the guided next test on simulated vehicles: faults of every shipped circuit, with the tolerances of a
 * sample and the error of a real meter, beside the cheapest strategy there is; and how far the standard tests can
 * isolate at all. OHMWARD_LONG=1 takes all 64 samples of every fault.
 */

import type { Circuit } from '../../src/circuit/circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { createBench } from '../../src/drill/bench.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { judgingSuspects } from '../../src/session/choose-suspects.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { AT_THE_START, findOptimum } from '../../src/suspects/optimum.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { ALL_MEANS, COSTS, situationAfter, testCost } from '../../src/suspects/test-cost.ts';
import { PLANNED_MASS, WORTH_DOING_BITS } from '../../src/suspects/verdict.ts';
import { findGroups, type Testability } from '../suspects/groups.ts';

export interface GuidedFigures {
  readonly circuit: string;
  readonly vehicles: number;
  /** Shares of the vehicles, each counting alike: ended with the right repair alone, or in the group named. */
  readonly alone: number;
  readonly named: number;
  /** `named` with every fault counting by its chance. */
  readonly namedByChance: number;
  readonly meanGroup: number;
  /** Expected minutes, faults by their chance, and those of the best strategy found; none takes less than `bound`. */
  readonly minutes: number;
  readonly optimum: number;
  readonly bound: number;
  /** Milliseconds of a ranking, a verdict and a proposal: the mean and the slowest. */
  readonly stepMs: number;
  readonly slowestMs: number;
}

const MODEL_SAMPLES = 64;
const SAMPLES_SHORT = 2;
const EXPANSIONS = 300;
const READINGS_MAX = 30;

/** The suspects and standard tests of a circuit as a session sees them, over all its cars. */
export function guidedSpace(circuit: Circuit) {
  const meter = STANDARD_SETTINGS.meter;
  const model = createModel(circuit, { samples: MODEL_SAMPLES, seed: 1, meter });
  const about = { procedure: null, job: emptyJob('guided'), vehicle: { kind: 'real' } } as const;
  return { model, space: judgingSuspects(model, about, []) };
}

/** Repairs that all standard tests together leave as one, in the manner of IEEE 1522. */
export function testabilityOf(circuit: Circuit): Testability {
  const { space } = guidedSpace(circuit);
  const outcomes = space.outcomes();
  return findGroups(space.table, { tests: space.offered(), outcomes, sizeBy: 'repair' });
}

/** Follows the proposals on `perFault` vehicles of every fault, or of every so many-th, the healthy circuit among them. */
export function followGuide(
  circuit: Circuit,
  perFault: number,
  everyNth = 1,
  now: () => number = () => performance.now(),
): GuidedFigures {
  const { model, space } = guidedSpace(circuit);
  const { candidates } = space.table;
  const { prior } = space;
  const best = findOptimum(space.table, {
    chances: prior,
    tests: space.offered(),
    outcomes: space.outcomes(),
    expansionsMax: EXPANSIONS,
  });
  const sums = { alone: 0, named: 0, namedByChance: 0, group: 0, minutes: 0 };
  let steps = 0;
  let spentMs = 0;
  let slowestMs = 0;
  let looked = 0;
  let asked = 0;
  candidates.forEach(({ id, repair }, index) => {
    if (id !== HEALTHY && index % everyNth !== 0) return;
    looked += 1;
    asked += prior[index]!;
    for (let round = 0; round < perFault; round += 1) {
      const { group, minutes } = follow(id, sampleOf(index, round));
      const right = group.includes(repair) ? 1 : 0;
      const chance = prior[index]! / perFault;
      sums.named += right;
      sums.alone += group.length === 1 ? right : 0;
      sums.namedByChance += chance * right;
      sums.group += group.length;
      sums.minutes += chance * minutes;
    }
  });
  const vehicles = looked * perFault;
  return {
    circuit: circuit.name,
    vehicles,
    alone: sums.alone / vehicles,
    named: sums.named / vehicles,
    namedByChance: sums.namedByChance / asked,
    meanGroup: sums.group / vehicles,
    minutes: sums.minutes / asked,
    optimum: best.minutes,
    bound: best.bound,
    stepMs: spentMs / steps,
    slowestMs,
  };

  /** Samples of a fault evenly over all there are, another beginning for each fault. */
  function sampleOf(index: number, round: number): number {
    return (index * 7 + 3 + Math.floor((round * MODEL_SAMPLES) / perFault)) % MODEL_SAMPLES;
  }

  function follow(fault: string, sample: number): { group: readonly string[]; minutes: number } {
    const vehicle = createBench(model, fault, sample);
    const readings: Reading[] = [];
    let situation = AT_THE_START;
    let minutes = 0;
    for (;;) {
      const before = now();
      const ranking = space.rank(readings);
      const standing = { readings, ranking, means: ALL_MEANS, now: situation };
      const { group, settled } = space.verdict(standing);
      const first =
        settled || readings.length === READINGS_MAX
          ? undefined
          : space
              .propose(standing, { massKept: PLANNED_MASS })
              .best.find(({ bits }) => bits >= WORTH_DOING_BITS);
      const took = now() - before;
      steps += 1;
      spentMs += took;
      slowestMs = Math.max(slowestMs, took);
      if (!first) return { group, minutes };
      const entry = space.testAt(first.test);
      if (entry.test === null) throw new Error(`guided: "${entry.id}" is no test to propose`);
      minutes += testCost(entry, situation, COSTS, ALL_MEANS.helper).minutes;
      situation = situationAfter(entry, situation);
      readings.push({ test: first.test, shown: vehicle.shows(entry.test) });
    }
  }
}

/** Prints and returns the figures of every shipped circuit. */
export function benchGuided(
  print: (line: string) => void = console.log,
  perFault = process.env['OHMWARD_LONG'] === '1' ? MODEL_SAMPLES : SAMPLES_SHORT,
): GuidedFigures[] {
  const circuits = [...loadLibrary('procedures').circuits.values()];
  const all = circuits.map((circuit) => {
    const of = followGuide(circuit, perFault);
    const could = testabilityOf(circuit);
    print(
      `${of.circuit}: ${of.vehicles} vehicles; right repair named ${percent(of.named)} (by chance of faults ${percent(of.namedByChance)}), alone ${percent(of.alone)}, group of ${of.meanGroup.toFixed(2)}; ${of.minutes.toFixed(2)} min, best strategy found ${of.optimum.toFixed(2)} (bound ${of.bound.toFixed(2)}), ratio ${(of.minutes / of.optimum).toFixed(3)}; a step ${of.stepMs.toFixed(1)} ms, slowest ${of.slowestMs.toFixed(0)} ms`,
    );
    print(
      `${of.circuit}: all standard tests detect ${percent(could.detectedFraction)} of the faults by weight, isolate ${percent(could.isolatedFraction(1))} of these to one repair, mean group ${could.meanGroupSize.toFixed(2)}`,
    );
    return of;
  });
  const sum = (value: (one: GuidedFigures) => number) =>
    all.reduce((total, one) => total + value(one), 0);
  const named = sum((one) => one.named * one.vehicles) / sum((one) => one.vehicles);
  const ratio = sum((one) => one.minutes) / sum((one) => one.optimum);
  print(
    `guided: right repair named ${percent(named)} (wanted 99 %); minutes over the best strategy found ${ratio.toFixed(3)} (wanted 1.10)`,
  );
  return all;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(2)} %`;
}
