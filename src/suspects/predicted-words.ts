/** What a suspect would show in a test, in words. */
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { formatQuantity, withoutNoise } from '../quantity/format-quantity.ts';
import type { Column, PredictionTable } from './prediction-table.ts';

/** One suspect and what it would show, to be read by a person. */
export interface PredictedWords {
  readonly id: string;
  readonly words: string;
  /** `about 5 V`, `0.5 V to 4.2 V`, `OL`, `the light is bright or the light is dim`. */
  readonly shows: string;
}

/** Looks rarer than this among the samples are left out of the words. */
const RARE_LOOK = 0.1;
/** Ends of a range closer than this share of the larger one read as one value. */
const NARROW = 0.05;
/** Or closer than this many volts or ohms. */
const NARROW_ABSOLUTE = 0.05;

/** What `suspect` would show in test number `test`. */
export function predictedWords(
  table: PredictionTable,
  test: number,
  suspect: { readonly index: number; readonly id: string; readonly words: string },
): PredictedWords {
  const column = table.column(test);
  const from = suspect.index * table.samples;
  const values = column.values.subarray(from, from + table.samples);
  const shows = column.kind === 'look' ? lookWords(column, values) : numberWords(column, values);
  return { id: suspect.id, words: suspect.words, shows };
}

function lookWords(column: Column, values: Float64Array): string {
  const counts = column.looks.map((look, index) => ({
    look,
    share: values.filter((value) => value === index).length / values.length,
  }));
  return counts
    .filter(({ share }) => share >= RARE_LOOK)
    .sort((a, b) => b.share - a.share)
    .map(({ look }) => LOOK_WORDS[look])
    .join(' or ');
}

function numberWords(column: Column, values: Float64Array): string {
  const unit = column.unit ?? 'V';
  const finite = values.filter((value) => value !== Infinity).sort();
  if (finite.length === 0) return 'OL';
  const low = finite[0]!;
  const high = finite[finite.length - 1]!;
  const middle = finite[Math.floor(finite.length / 2)]!;
  const narrow = high - low <= Math.max(NARROW * Math.abs(high), NARROW_ABSOLUTE);
  const said = (value: number) => formatQuantity({ value: withoutNoise(value, unit), unit });
  const words = narrow ? `about ${said(middle)}` : `${said(low)} to ${said(high)}`;
  return finite.length < values.length ? `${words} or OL` : words;
}
