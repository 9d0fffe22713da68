/**
 * Two faults at once, looked at only when no single one explains the readings, and only among the suspects that
 * explain at least part of them.
 */
import type { Shown } from '../circuit/test.ts';
import type { ErrorModel } from './error-model.ts';
import { jointFit, type WeighedFit } from './joint-fit.ts';
import { fitReading, type Reading, uncertaintyOf } from './likelihood.ts';
import { type Candidate, fillColumn, HEALTHY, type PredictionTable } from './prediction-table.ts';

/** What a test of the table shows with two faults present, one per sample. */
export type PairShows = (firstId: string, secondId: string, test: number) => readonly Shown[];

/** Two faults at once, with the chance of both, 0 to 1. */
export interface PairSuspect {
  readonly ids: readonly [string, string];
  readonly repairs: readonly [string, string];
  readonly chance: number;
}

/** Two independent faults in one complaint: one job in twenty. Our assumption. */
export const DOUBLE_FAULT_CHANCE = 0.05;
/** Singles that go into pairs; 16 make 120 pairs, which are computed within a second by the circuit's solver. */
const PLAUSIBLE_MAX = 16;

/** Pairs with the logarithm of prior times likelihood, on the same scale as that of single faults. */
export function rankPairs(ask: {
  readonly table: PredictionTable;
  readonly readings: readonly Reading[];
  readonly fits: readonly WeighedFit[];
  readonly prior: Float64Array;
  readonly errorModel: ErrorModel;
  readonly showsPair: PairShows;
}): (Omit<PairSuspect, 'chance'> & { readonly log: number })[] {
  const { table, readings, fits, prior, errorModel, showsPair } = ask;
  const chosen = plausibleSingles(table.candidates, fits, prior, PLAUSIBLE_MAX);
  const pairs = chosen.flatMap((a, place) => chosen.slice(place + 1).map((b) => [a, b] as const));
  if (pairs.length === 0) return [];
  const pairFits = fits.map((fit): WeighedFit => {
    const shown = pairs.map(([a, b]) =>
      showsPair(table.candidates[a]!.id, table.candidates[b]!.id, fit.test),
    );
    const column = fillColumn(pairs.length, table.samples, (row, sample) => shown[row]![sample]!);
    const reading = readings[fit.reading]!;
    const uncertainty = uncertaintyOf(table, reading);
    const { shown: asked } = reading;
    return {
      ...fit,
      ...fitReading(column, pairs.length, table.samples, asked, uncertainty, errorModel, fit.blind),
    };
  });
  const joint = jointFit(pairFits, pairs.length, table.samples, errorModel);
  const weights = pairs.map(([a, b]) => prior[a]! * prior[b]!);
  const sum = weights.reduce((x, y) => x + y, 0);
  return pairs.map(([a, b], index) => {
    const one = table.candidates[a]!;
    const two = table.candidates[b]!;
    return {
      ids: [one.id, two.id],
      repairs: [one.repair, two.repair],
      log: joint.logRows[index]! + Math.log((DOUBLE_FAULT_CHANCE * weights[index]!) / sum),
    };
  });
}

/** Faults that fit some reading better than blind chance does: those with the best sums of such fits, in the table's order. */
export function plausibleSingles(
  candidates: readonly Candidate[],
  fits: readonly Pick<WeighedFit, 'perRow' | 'blind' | 'weight'>[],
  prior: Float64Array,
  most: number,
): number[] {
  const scores = candidates.map((candidate, index) => {
    const canBeOfTwo = prior[index]! > 0 && candidate.id !== HEALTHY;
    const score = fits.reduce(
      (sum, fit) => sum + fit.weight * Math.max(0, Math.log(fit.perRow[index]! / fit.blind)),
      0,
    );
    return { index, score: canBeOfTwo ? score : 0 };
  });
  return scores
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .slice(0, most)
    .map(({ index }) => index)
    .sort((a, b) => a - b);
}
