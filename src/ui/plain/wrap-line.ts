/** A line of the dialogue for its terminal, which by itself would break it inside words. */
import { columnsOf, wrapWords } from '../parts/wrap-words.ts';

/** Where a terminal does not say how wide it is. */
const USUAL_COLUMNS = 80;
/** What stands before the words of a list: its number, a chance. */
const LIST_MARK = /^ *\d+ +(?:<?\d+ % +)?/;

/** The line broken at blanks; as it is where there is no terminal (`columns` null), as who reads it then has a width of their own. */
export function wrapLine(line: string, columns: number | null): string {
  const width = columns || USUAL_COLUMNS;
  if (columns === null || columnsOf(line) <= width) return line;
  const mark = LIST_MARK.exec(line)?.[0] ?? '';
  const lead = columnsOf(mark) < width / 2 ? columnsOf(mark) : 0;
  const words = line.slice(mark.length).trimEnd();
  // A question keeps the blank before what is typed.
  const end = line.endsWith(' ') ? ' ' : '';
  return `${mark}${wrapWords(words, width - lead).join(`\n${' '.repeat(lead)}`)}${end}`;
}

/** The width to wrap to: that of the terminal, 0 where it does not say, null for a pipe or a file. */
export function columnsOfStream({
  isTTY,
  columns,
}: {
  readonly isTTY?: boolean;
  readonly columns?: number;
}): number | null {
  return isTTY === true ? (columns ?? 0) : null;
}
