/** Sizes and ages of files in a few signs, and a row with them at its end whatever the name is. */
import { countWords } from '../../quantity/count-words.ts';
import { safeText } from '../../source/safe-text.ts';
import { columnsOf, cutWords, padWords } from './wrap-words.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** An age beyond this is told in years. */
const YEAR = 365 * DAY;

/** `just now`, `5 min ago`, `3 h ago`, `2 days ago`. */
export function ageWords(ageMs: number): string {
  if (ageMs < MINUTE) return 'just now';
  if (ageMs < HOUR) return `${Math.floor(ageMs / MINUTE)} min ago`;
  if (ageMs < DAY) return `${Math.floor(ageMs / HOUR)} h ago`;
  return ageMs < YEAR
    ? `${countWords(Math.floor(ageMs / DAY), 'day')} ago`
    : `${countWords(Math.floor(ageMs / YEAR), 'year')} ago`;
}

/** `812 B`, `4.2 kB`, `37 MB`. */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  const [scale, unit] = bytes < 1e6 ? [1e3, 'kB'] : bytes < 1e9 ? [1e6, 'MB'] : [1e9, 'GB'];
  const value = bytes / scale;
  return `${value < 10 ? value.toFixed(1) : Math.round(value)} ${unit}`;
}

const SIZE_COLUMNS = 8;
const AGE_COLUMNS = 13;

/** A row of just `width` columns: the name, cut in its middle so that its ending is seen, then size and age. */
export function fileRow(
  { name, size, age }: { readonly name: string; readonly size: string; readonly age: string },
  width: number,
  mark: string,
): string {
  const room = Math.max(8, width - SIZE_COLUMNS - AGE_COLUMNS - 2);
  const shown = padWords(withEnding(safeText(name), room, mark), room, mark);
  return `${shown}  ${size.padStart(SIZE_COLUMNS)}${age.padStart(AGE_COLUMNS)}`;
}

/** Signs of a long name that are kept at its end: the ending and a number before it. */
const END_SIGNS = 10;

function withEnding(name: string, width: number, mark: string): string {
  if (columnsOf(name) <= width) return name;
  const end = Array.from(name).slice(-END_SIGNS).join('');
  const head = width - columnsOf(end);
  return head > columnsOf(mark) ? cutWords(name, head, mark) + end : cutWords(name, width, mark);
}
