/**
 * Which faults a set of tests leaves together, and what share of faults it finds and isolates: the measures of
 * testability as MIL-STD-2165 and IEEE 1522 use them (formulas from memory). A fault's signature is its commonest
 * outcome in each test.
 */
import type { Outcomes } from '../../src/suspects/outcomes.ts';
import { HEALTHY, type PredictionTable } from '../../src/suspects/prediction-table.ts';

export interface FaultGroup {
  /** Numbers of the candidates with the same signature, the healthy circuit among them if it has it too. */
  readonly candidates: readonly number[];
  /** Sum of their weights, the healthy circuit's included. */
  readonly weight: number;
  /** Whether the healthy circuit looks the same: then these faults are not detected. */
  readonly likeHealthy: boolean;
}

export interface Testability {
  readonly groups: readonly FaultGroup[];
  /** Weight of detected faults over weight of all faults. */
  readonly detectedFraction: number;
  /** Weight of detected faults in groups of at most `size`, over weight of detected faults. */
  readonly isolatedFraction: (size: number) => number;
  /** Mean size of the group in which a fault ends, by weight. */
  readonly meanGroupSize: number;
}

/** Groups left by `tests`; sizes count faults, or repairs when `sizeBy` says so. */
export function findGroups(
  table: PredictionTable,
  ask: {
    readonly tests: readonly number[];
    readonly outcomes: (test: number) => Outcomes;
    readonly sizeBy?: 'fault' | 'repair';
  },
): Testability {
  const bySignature = new Map<string, number[]>();
  table.candidates.forEach((_, candidate) => {
    const signature = ask.tests
      .map((test) => commonest(ask.outcomes(test), candidate, table.samples))
      .join(' ');
    const group = bySignature.get(signature);
    if (group) group.push(candidate);
    else bySignature.set(signature, [candidate]);
  });
  const groups = [...bySignature.values()].map(
    (candidates): FaultGroup => ({
      candidates,
      weight: weightOf(table, candidates),
      likeHealthy: candidates.some((one) => table.candidates[one]!.id === HEALTHY),
    }),
  );
  const faults = groups.map((group) => faultsOf(table, group, ask.sizeBy ?? 'fault'));
  const all = sum(faults.map(({ weight }) => weight));
  const detected = faults.filter(({ likeHealthy }) => !likeHealthy);
  const detectedWeight = sum(detected.map(({ weight }) => weight));
  return {
    groups,
    detectedFraction: share(detectedWeight, all),
    isolatedFraction: (most) =>
      share(
        sum(detected.filter(({ size }) => size <= most).map(({ weight }) => weight)),
        detectedWeight,
      ),
    meanGroupSize: share(sum(faults.map(({ weight, size }) => weight * size)), all),
  };
}

/** The outcome most samples of a candidate fall into; of equals the first. */
export function commonest(outcomes: Outcomes, candidate: number, samples: number): number {
  const counts = new Array<number>(outcomes.specs.length).fill(0);
  for (let sample = 0; sample < samples; sample += 1)
    counts[outcomes.ofSample[candidate * samples + sample]!]! += 1;
  return counts.indexOf(Math.max(...counts));
}

function faultsOf(table: PredictionTable, group: FaultGroup, sizeBy: 'fault' | 'repair') {
  const faults = group.candidates.filter((one) => table.candidates[one]!.id !== HEALTHY);
  const size =
    sizeBy === 'fault'
      ? faults.length
      : new Set(faults.map((one) => table.candidates[one]!.repair)).size;
  return { weight: weightOf(table, faults), size, likeHealthy: group.likeHealthy };
}

function weightOf(table: PredictionTable, candidates: readonly number[]): number {
  return sum(candidates.map((one) => table.candidates[one]!.weight));
}

function share(part: number, whole: number): number {
  return whole > 0 ? part / whole : 0;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}
