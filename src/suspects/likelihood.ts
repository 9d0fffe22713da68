/**
 * How likely a reading is under each suspect. A number: the mean over the samples of a normal around each prediction,
 * as wide as the meter's uncertainty and the model's own allowance together. Over-limit and looks: the share of
 * samples that show the same. To each comes a small chance that the reading is not what it claims to be, so that one
 * slip never rules a suspect out for good.
 */
import { LOOKS, type Look, type Shown } from '../circuit/test.ts';
import { normalCdf } from '../quantity/normal.ts';
import { type ErrorModel, modelWidth, slipDensity } from './error-model.ts';
import type { Column, PredictionTable } from './prediction-table.ts';

/** One reading of a test of the table. */
export interface Reading {
  readonly test: number;
  readonly shown: Shown;
  /** Of the instrument, in the reading's unit; without it the test's own is used. */
  readonly standardUncertainty?: number;
  /** Readings that one answer gave have the same number: a slip of the hand is in all of them. Absent of one by itself. */
  readonly event?: number;
}

/** How likely one reading is for each row, and what blind chance would give it. */
export interface ReadingFit {
  readonly perRow: Float64Array;
  /** Of a wrong reading, leads without contact among them. */
  readonly blind: number;
  /**
   * Share of what the suspect of a row shows that lies as far out as the reading or farther, counted on the side where
   * less of it lies and doubled; of looks and over-limit, the share of its samples that show the same. 0 to 1.
   */
  readonly tail: (row: number) => number;
}

/** The same for each row and sample. */
export interface SampledFit extends ReadingFit {
  readonly perSample: Float64Array;
}

const SQRT_2PI = Math.sqrt(2 * Math.PI);
/** A normal this many deviations away adds nothing a double could hold beside the floor. */
const FAR_DEVIATIONS = 12;
/** Samples stand for the values between them, but never smear further than this share of a suspect's own spread. */
const GAP_SHARE_MAX = 0.1;

/** Standard uncertainty of a reading: its own, or the test's at what it shows. Looks have none. */
export function uncertaintyOf(table: PredictionTable, reading: Reading): number {
  const { test, shown, standardUncertainty } = reading;
  if (standardUncertainty !== undefined || shown.kind === 'look') return standardUncertainty ?? 0;
  return table.tests[test]!.standardUncertainty?.(shown.value) ?? 0;
}

/** The fit of `shown` to `rows` rows of a column. `blindAs` takes blind chance for a number from another column. */
export function fitReading(
  column: Column,
  rows: number,
  samples: number,
  shown: Shown,
  standardUncertainty: number,
  errorModel: ErrorModel,
  blindAs?: number,
): SampledFit {
  if (shown.kind === 'look') return fitLook(column, rows, samples, shown.look, errorModel);
  if (column.kind !== 'number') throw new Error('likelihood: a number for a test that shows looks');
  return shown.value === Infinity
    ? fitOverLimit(column, rows, samples, errorModel)
    : fitNumber(column, rows, samples, shown.value, standardUncertainty, errorModel, blindAs);
}

function fitNumber(
  column: Column,
  rows: number,
  samples: number,
  value: number,
  standardUncertainty: number,
  errorModel: ErrorModel,
  blindAs?: number,
): SampledFit {
  const blind = blindAs ?? slipDensity(column, value, standardUncertainty, errorModel);
  const perSample = new Float64Array(rows * samples);
  const perRow = new Float64Array(rows);
  const floor = errorModel.wrongReading * blind;
  const gaps = new Float64Array(samples);
  const predictedOf = (row: number) => column.values.subarray(row * samples, (row + 1) * samples);
  const widthAt = (at: number, sample: number) =>
    Math.hypot(standardUncertainty, modelWidth(column.unit, at, errorModel), gaps[sample]!);
  for (let row = 0; row < rows; row += 1) {
    const predicted = predictedOf(row);
    sampleGaps(predicted, gaps);
    let sum = 0;
    for (let sample = 0; sample < samples; sample += 1) {
      const at = predicted[sample]!;
      let density = 0;
      if (at !== Infinity) {
        const width = widthAt(at, sample);
        const z = (value - at) / width;
        if (Math.abs(z) < FAR_DEVIATIONS) density = Math.exp(-0.5 * z * z) / (width * SQRT_2PI);
      }
      const likelihood = (1 - errorModel.wrongReading) * density + floor;
      perSample[row * samples + sample] = likelihood;
      sum += likelihood;
    }
    perRow[row] = sum / samples;
  }
  const tail = (row: number) => {
    const predicted = predictedOf(row);
    sampleGaps(predicted, gaps);
    let below = 0;
    let above = 0;
    for (let sample = 0; sample < samples; sample += 1) {
      const at = predicted[sample]!;
      const z = at === Infinity ? -Infinity : (value - at) / widthAt(at, sample);
      below += normalCdf(z) / samples;
      above += normalCdf(-z) / samples;
    }
    return Math.min(1, 2 * Math.min(below, above));
  };
  return { perSample, perRow, blind, tail };
}

/** For each sample, half the distance to its nearer neighbour among the same suspect's samples. */
function sampleGaps(predicted: Float64Array, gaps: Float64Array): void {
  gaps.fill(0);
  const first = predicted[0]!;
  if (predicted.every((value) => value === first)) return;
  const order = Array.from(predicted.keys())
    .filter((index) => predicted[index] !== Infinity)
    .sort((a, b) => predicted[a]! - predicted[b]!);
  const last = order.length - 1;
  if (last < 1) return;
  const most = GAP_SHARE_MAX * (predicted[order[last]!]! - predicted[order[0]!]!);
  order.forEach((index, place) => {
    const at = predicted[index]!;
    const left = place > 0 ? at - predicted[order[place - 1]!]! : Infinity;
    const right = place < last ? predicted[order[place + 1]!]! - at : Infinity;
    gaps[index] = Math.min(Math.min(left, right) / 2, most);
  });
}

function fitOverLimit(
  column: Column,
  rows: number,
  samples: number,
  errorModel: ErrorModel,
): SampledFit {
  return fitShare(rows, samples, 2, errorModel, (at) => column.values[at] === Infinity);
}

function fitLook(
  column: Column,
  rows: number,
  samples: number,
  look: Look,
  errorModel: ErrorModel,
): SampledFit {
  if (column.kind !== 'look') throw new Error('likelihood: a look for a test that shows numbers');
  const wanted = column.looks.indexOf(look);
  return fitShare(
    rows,
    samples,
    looksLike(look, column),
    errorModel,
    (at) => column.values[at] === wanted,
  );
}

/** How many looks the test's instrument can show. */
function looksLike(look: Look, column: Column): number {
  const looks = Object.values(LOOKS).find(
    (list: readonly Look[]) =>
      list.includes(look) && column.looks.every((one) => list.includes(one)),
  );
  return looks?.length ?? Math.max(column.looks.length, 2);
}

function fitShare(
  rows: number,
  samples: number,
  ways: number,
  errorModel: ErrorModel,
  same: (at: number) => boolean,
): SampledFit {
  const blind = 1 / ways;
  const { wrongReading, pseudoSamples } = errorModel;
  const perSample = new Float64Array(rows * samples);
  const perRow = new Float64Array(rows);
  const shares = new Float64Array(rows);
  for (let row = 0; row < rows; row += 1) {
    let hits = 0;
    for (let sample = 0; sample < samples; sample += 1) {
      const hit = same(row * samples + sample) ? 1 : 0;
      hits += hit;
      perSample[row * samples + sample] = mix(hit, samples);
    }
    shares[row] = hits / samples;
    perRow[row] = mix(shares[row]!, samples);
  }
  return { perSample, perRow, blind, tail: (row) => shares[row]! };

  function mix(share: number, of: number): number {
    const smooth = (share * of + pseudoSamples * blind) / (of + pseudoSamples);
    return (1 - wrongReading) * smooth + wrongReading * blind;
  }
}
