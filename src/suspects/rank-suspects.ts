/**
 * Which suspects remain after the readings: Bayes' rule over single faults and the healthy circuit, in logarithms.
 * When no single one explains the readings, it says so, names the reading that disagrees most, and looks at pairs.
 */
import { ERROR_MODEL, type ErrorModel } from './error-model.ts';
import { type JointFit, jointFit, type WeighedFit } from './joint-fit.ts';
import { fitReading, type Reading, type ReadingFit, uncertaintyOf } from './likelihood.ts';
import type { Candidate, PredictionTable } from './prediction-table.ts';
import { priorFor } from './prior.ts';
import { type PairShows, type PairSuspect, rankPairs } from './rank-pairs.ts';
import type { Slices } from './slices.ts';

/** One suspect with its present chance. */
export interface Suspect {
  /** Place in the table's candidates. */
  readonly index: number;
  readonly id: string;
  readonly words: string;
  readonly repair: string;
  readonly chance: number;
}

/** The chance of all faults that one repair puts right, 0 to 1. */
export interface RepairChance {
  readonly repair: string;
  readonly chance: number;
}

/** How the chances stand after the readings. */
export interface Ranking {
  /** Likeliest first; equals in the table's order. With `pairs` the chances sum to 1. */
  readonly suspects: readonly Suspect[];
  readonly repairs: readonly RepairChance[];
  /** Pairs of faults; empty unless no single one explains the readings. */
  readonly pairs: readonly PairSuspect[];
  /** By candidate, summing to 1 without the pairs. */
  readonly chances: Float64Array;
  /** By candidate and sample: how the candidate's chance is spread over its samples. Each row sums to 1. */
  readonly sampleShares: Float64Array;
  /**
   * False when even the best single suspect fits the readings worse than blind chance would, or when every leading
   * suspect needs some reading to be a slip.
   */
  readonly explained: boolean;
  /** The reading that disagrees most, when nothing explains them all. */
  readonly disagrees: Disagreement | null;
  /** Readings, by place, that must be slips if this candidate is what is wrong. */
  readonly misfitsOf: (candidate: number) => readonly number[];
  /** Chance that the car is not as its circuit file describes it; 0 where nobody asks. */
  readonly misfit: number;
  /** Uncertainty about the repair that is left, in bits. */
  readonly entropyBits: number;
  /** What every test would show after the readings, as the chances and shares have it. */
  readonly table: PredictionTable;
  /** By reading, how likely it is for each candidate; where clouds of cars are known, given the readings before it. */
  readonly fits: readonly ReadingFit[];
  /**
   * Chances by candidate if a reading, by its place, had not been made, from those that are left when its fit is divided
   * out; absent where `fits` tell that.
   */
  readonly without?: (reading: number, divided: Float64Array) => Slices<Float64Array>;
  /** What pairs of faults show, on the samples of the table; undefined where pairs are not looked at. */
  readonly showsPair: PairShows | undefined;
}

/** The reading without which the others would agree best. */
export interface Disagreement {
  /** Place in the readings. */
  readonly reading: number;
  readonly test: number;
  /** How many times better the rest fits without it, against blind chance. */
  readonly gain: number;
}

/** How readings err, and whether pairs are looked at. */
export interface RankOptions {
  readonly errorModel?: ErrorModel;
  /** What pairs of faults show; without it pairs are not looked at. */
  readonly showsPair?: PairShows;
}

/** Suspects with this share of the leader's chance are asked as well whether they explain every reading. */
const LEADING_SHARE = 0.1;

/** Ranks all candidates of `table` after `readings`, from `prior` (by default the candidates' weights). */
export function rankSuspects(
  table: PredictionTable,
  readings: readonly Reading[],
  prior: Float64Array = priorFor(table.candidates),
  options: RankOptions = {},
): Ranking {
  const errorModel = options.errorModel ?? ERROR_MODEL;
  const fits = fitReadings(table, readings, errorModel);
  const joint = jointFit(fits, table.candidates.length, table.samples, errorModel);
  const logs = joint.logRows.map((log, index) => log + Math.log(prior[index]!));
  const { chances, scale } = softmax(logs, prior);
  const misfitsOf = (candidate: number) =>
    fits.filter((fit) => isSlip(fit, candidate, errorModel)).map(({ reading }) => reading);
  const leading = LEADING_SHARE * chances.reduce((a, b) => Math.max(a, b), 0);
  const explained =
    bestOf(joint.logRows, prior) >= joint.logBlind &&
    chances.some((chance, index) => chance >= leading && misfitsOf(index).length === 0);
  const disagrees = explained ? null : worstReading(fits, table, prior, errorModel, joint);
  const pairs =
    explained || !options.showsPair
      ? []
      : rankPairs({ table, fits, prior, errorModel, showsPair: options.showsPair, readings });
  const total = pairs.reduce((sum, pair) => sum + Math.exp(pair.log - scale), 1);
  const { suspects, repairs } = suspectsOf(table.candidates, chances, total);
  return {
    ...{ suspects, repairs, table, fits, misfit: 0, showsPair: options.showsPair },
    pairs: pairs
      .map(({ log, ...pair }) => ({ ...pair, chance: Math.exp(log - scale) / total }))
      .sort((a, b) => b.chance - a.chance),
    chances,
    sampleShares: joint.sampleShares,
    explained,
    disagrees,
    misfitsOf,
    entropyBits: entropyBits(repairs.map(({ chance }) => chance * total)),
  };
}

/** Candidates and their repairs, likeliest first; `total` is the mass of all, pairs included, in parts of theirs. */
export function suspectsOf(
  candidates: readonly Candidate[],
  chances: Float64Array,
  total = 1,
): { readonly suspects: readonly Suspect[]; readonly repairs: readonly RepairChance[] } {
  const sums = new Map<string, number>();
  candidates.forEach(({ repair }, index) => {
    sums.set(repair, (sums.get(repair) ?? 0) + chances[index]! / total);
  });
  return {
    suspects: candidates
      .map(({ id, words, repair }, index) => ({
        ...{ index, id, repair, words: words ?? id },
        chance: chances[index]! / total,
      }))
      .sort((a, b) => b.chance - a.chance),
    repairs: [...sums]
      .map(([repair, chance]) => ({ repair, chance }))
      .sort((a, b) => b.chance - a.chance),
  };
}

function fitReadings(
  table: PredictionTable,
  readings: readonly Reading[],
  errorModel: ErrorModel,
): WeighedFit[] {
  const repeats = new Map<number, number>();
  for (const { test } of readings) repeats.set(test, (repeats.get(test) ?? 0) + 1);
  return readings.map((one, reading) => ({
    ...fitReading(
      table.column(one.test),
      table.candidates.length,
      table.samples,
      one.shown,
      uncertaintyOf(table, one),
      errorModel,
    ),
    reading,
    test: one.test,
    weight: 1 / repeats.get(one.test)!,
  }));
}

function bestOf(logs: Float64Array, prior: Float64Array): number {
  let best = -Infinity;
  logs.forEach((log, index) => {
    if (prior[index]! > 0 && log > best) best = log;
  });
  return best;
}

/** The reading whose absence lifts the best fit most, against blind chance. */
function worstReading(
  fits: readonly WeighedFit[],
  table: PredictionTable,
  prior: Float64Array,
  errorModel: ErrorModel,
  joint: JointFit,
): Disagreement | null {
  const whole = bestOf(joint.logRows, prior) - joint.logBlind;
  let worst: Disagreement | null = null;
  for (const fit of fits) {
    const others = fits.filter(({ test }) => test !== fit.test);
    const without = jointFit(others, table.candidates.length, table.samples, errorModel);
    const gain = Math.exp(bestOf(without.logRows, prior) - without.logBlind - whole);
    if (!worst || gain > worst.gain) worst = { reading: fit.reading, test: fit.test, gain };
  }
  return worst;
}

/** Whether, if the candidate is there, the reading is more likely a slip than not. */
function isSlip(fit: ReadingFit, candidate: number, errorModel: ErrorModel): boolean {
  return fit.perRow[candidate]! <= 2 * errorModel.wrongReading * fit.blind;
}

/** Chances from logarithms; when none is possible at all the prior stands. */
function softmax(
  logs: Float64Array,
  prior: Float64Array,
): { chances: Float64Array; scale: number } {
  const most = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  if (most === -Infinity) return { chances: Float64Array.from(prior), scale: 0 };
  const weights = logs.map((log) => Math.exp(log - most));
  const sum = weights.reduce((a, b) => a + b, 0);
  return { chances: weights.map((weight) => weight / sum), scale: most + Math.log(sum) };
}

/** Shannon's entropy in bits of chances that sum to 1. */
export function entropyBits(chances: Iterable<number>): number {
  let bits = 0;
  for (const chance of chances) if (chance > 0) bits -= chance * Math.log2(chance);
  return bits;
}
