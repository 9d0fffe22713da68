/**
 * How a capture file is laid out, found from its first lines: separator, decimal mark, heading, units, which column is
 * the time. Scopes and loggers differ in all of these and say none of them.
 */
import { strictUnit } from '../quantity/unit-words.ts';
import type { Channel } from './capture.ts';

/** A column that holds a channel. */
export interface CsvColumn {
  readonly name: string;
  readonly unit: Channel['unit'];
  /** Multiply a number in the file by this for volts, amperes or seconds. */
  readonly factor: number;
}

/** How one file is to be read, line by line. */
export interface CsvShape {
  readonly separator: ',' | ';' | '\t' | ' ';
  readonly decimal: '.' | ',';
  /** Lines before the first line of data. */
  readonly headLines: number;
  /** Number of the time column, or -1. */
  readonly time: number;
  readonly timeFactor: number;
  /** Columns of the channels by their number in the line. */
  readonly columns: readonly (CsvColumn & { readonly at: number })[];
  /** Columns of data left out because there are too many. */
  readonly leftOut: number;
  /** Stated in the heading, or null. */
  readonly rateHz: number | null;
}

/** The layout, or why the first lines show none. */
export type CsvShapeResult =
  | { readonly shape: CsvShape }
  | { readonly code: string; readonly words: string; readonly fix: string; readonly line: number };

const TIME_NAME = /^(?:time|times|timestamp|t|zeit|temps|seconds?|x|x-axis)$/i;
const INDEX_NAME = /^(?:index|sample|samples|n|no|nr|#)$/i;
const RATE_NAME = /^(?:sample ?rate|sampling ?rate|samplerate|rate|sample frequency|fs)$/i;
const INTERVAL_NAME = /^(?:sample ?interval|interval|increment|x ?increment|dt|delta ?t)$/i;
const NUMBER = /^[+-]?(?:\d{1,40}[.,]?\d{0,40}|[.,]\d{1,40})(?:[eE][+-]?\d{1,3})?$/;

/** Finds the layout in the first `lines`; `channelsMax` columns are taken at most. */
export function csvShape(lines: readonly string[], channelsMax: number): CsvShapeResult {
  for (const separator of separatorsOf(lines)) {
    const first = lines.findIndex((line) => isData(line, separator));
    if (first < 0) continue;
    return layOut(lines, first, separator, channelsMax);
  }
  return {
    code: 'no-data',
    words: 'no line of numbers was found at the beginning of this file',
    fix: 'export the capture as text with one line for each sample',
    line: 1,
  };
}

/** Separators to try, the unmistakable ones first. */
function separatorsOf(lines: readonly string[]): CsvShape['separator'][] {
  const text = lines.join('\n');
  const found: CsvShape['separator'][] = [];
  if (text.includes('\t')) found.push('\t');
  if (text.includes(';')) found.push(';');
  found.push(',', ' ');
  return found;
}

/** Cells of a line without blanks and quotes around them. Blanks in a row are one separator. */
export function cellsOf(line: string, separator: CsvShape['separator']): string[] {
  const cells = separator === ' ' ? line.trim().split(/ +/) : line.split(separator);
  return cells.map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );
}

function isData(line: string, separator: CsvShape['separator']): boolean {
  const cells = cellsOf(line, separator);
  while (cells.length > 1 && cells.at(-1) === '') cells.pop();
  return (
    cells.length > 0 &&
    cells.every((cell) => cell === '' || NUMBER.test(cell)) &&
    NUMBER.test(cells.at(-1)!)
  );
}

function layOut(
  lines: readonly string[],
  first: number,
  separator: CsvShape['separator'],
  channelsMax: number,
): CsvShapeResult {
  const rows = lines.slice(first).filter((line) => line.trim() !== '');
  const cells = rows.map((line) => cellsOf(line, separator));
  const width = Math.max(...cells.map((row) => trimmedWidth(row)));
  const head = lines
    .slice(0, first)
    .map((line) => cellsOf(line.replace(/^[#%]\s*/, ''), separator));
  const names = head.findLast(
    (row) => row.length >= width && row.some((cell) => /\p{L}/u.test(cell)),
  );
  const lastHead = head.at(-1);
  const unitsRow = lastHead?.every(isUnitCell) ? lastHead : null;
  const titles = unitsRow !== null && names === unitsRow ? (head.at(-2) ?? unitsRow) : names;
  // One heading without a comma over lines with one comma each: the comma is a decimal mark.
  const single =
    separator === ',' &&
    head.length > 0 &&
    head.every((row) => row.length === 1) &&
    isCommaRiddle(rows);
  if (!single && separator === ',' && titles === undefined && isCommaRiddle(rows))
    return {
      code: 'comma-riddle',
      words: 'the comma can be a decimal mark or a separator here: two numbers a line, or one',
      fix: 'add a heading line, or use semicolons between columns',
      line: first + 1,
    };
  const parts = single ? rows.map((line) => [line.trim()]) : cells;
  const decimal =
    single || (separator !== ',' && parts.some((row) => row.some((cell) => cell.includes(','))));
  const described = Array.from({ length: single ? 1 : width }, (_, at) =>
    describe(titles?.[at] ?? (single ? lastHead?.[0] : undefined), unitsRow?.[at], at),
  );
  const time = timeColumn(described, parts, decimal);
  const skip = described.findIndex((column) => INDEX_NAME.test(column.name));
  const channels = described
    .map((column, at) => ({ ...column, at }))
    .filter(({ at, isTime }) => at !== time && at !== skip && !isTime)
    .map(({ isTime: _, ...column }) => ({ ...column, unit: column.unit ?? 'V' }));
  if (channels.length === 0)
    return {
      code: 'no-channel',
      words: 'only a time column was found',
      fix: 'export the channels too',
      line: first + 1,
    };
  return {
    shape: {
      separator: single ? ';' : separator,
      decimal: decimal ? ',' : '.',
      headLines: first,
      time,
      timeFactor: time < 0 ? 1 : described[time]!.factor,
      columns: channels.slice(0, channelsMax),
      leftOut: Math.max(0, channels.length - channelsMax),
      rateHz: statedRate(lines.slice(0, first)),
    },
  };
}

function trimmedWidth(row: readonly string[]): number {
  let width = row.length;
  while (width > 1 && row[width - 1] === '') width -= 1;
  return width;
}

const isCommaRiddle = (rows: readonly string[]) =>
  rows.length > 0 && rows.every((line) => /^\s*[+-]?\d{1,15},\d{1,15}\s*$/.test(line));

interface Described {
  readonly name: string;
  readonly unit: Channel['unit'] | null;
  readonly factor: number;
  readonly isTime: boolean;
}

/**
 * `CH1 (mV)`, `Time [ms]`, `volts`, `cam mV`, `ms` alone for the time, or a name with its unit in the row below. A lone A
 * behind a name is part of it: a sensor is called so.
 */
function describe(title: string | undefined, below: string | undefined, at: number): Described {
  const match =
    /^(.{0,80}?)\s*[([]\s*([^)\]]{1,12})\s*[)\]]$/.exec(title ?? '') ??
    /^(.{0,80}\S) {1,4}(m?V|kV|mA)$/.exec(title ?? '') ??
    /^((?:[Tt]ime|[Tt])?) {0,4}([munµμ]?s)$/.exec(title ?? '');
  const name = ((match ? match[1] : title) ?? '').trim() || `channel ${at + 1}`;
  const written = (match?.[2] ?? below ?? '').replace(/[()[\]]/g, '').trim();
  const unit = strictUnit(written) ?? strictUnit(written.replace(/^(volts?|v)$/i, 'V'));
  const factor = unit ? 10 ** unit.power * unit.factor : 1;
  const isTime = TIME_NAME.test(name) || unit?.unit === 's';
  const signal = unit?.unit === 'V' || unit?.unit === 'A' ? unit.unit : null;
  return { name, unit: signal, factor: signal || unit?.unit === 's' ? factor : 1, isTime };
}

function isUnitCell(cell: string): boolean {
  const bare = cell.replace(/[()[\]]/g, '').trim();
  return bare !== '' && (strictUnit(bare) !== null || /^volts?$/i.test(bare));
}

/** By its heading; without headings, the first column when it climbs by like steps and is not alone. */
function timeColumn(
  described: readonly Described[],
  rows: readonly string[][],
  decimal: boolean,
): number {
  const named = described.findIndex((column) => column.isTime);
  if (named >= 0) return named;
  const titled = described.some((column, at) => column.name !== `channel ${at + 1}`);
  if (titled || described.length < 2 || rows.length < 4) return -1;
  const first = rows.map((row) => Number(decimal ? row[0]!.replace(',', '.') : row[0]));
  const steps = first.slice(1).map((value, k) => value - first[k]!);
  const mean = (first.at(-1)! - first[0]!) / steps.length;
  return mean > 0 && steps.every((step) => step > 0 && Math.abs(step - mean) < 0.5 * mean) ? 0 : -1;
}

/** A line that states something is no longer: a longer one is not looked through for it. */
const STATED_MAX = 200;
const STATED = /^([A-Za-z ]{1,24}?)"?\s{0,24}[:=,;\t]\s{0,24}"?([^"]{1,40})"?$/;

/** A line such as `Sample rate: 50 kHz` or `Interval, 2e-05`. */
function statedRate(head: readonly string[]): number | null {
  for (const line of head) {
    if (line.length > STATED_MAX) continue;
    const match = STATED.exec(line.replace(/^[#%"\s]+/, '').trimEnd());
    if (!match) continue;
    const [, label = '', value = ''] = match;
    const number = /^[+-]?\d{1,15}(?:\.\d{1,15})?(?:[eE][+-]?\d{1,3})?/.exec(value.trim())?.[0];
    if (number === undefined) continue;
    const unit = strictUnit(
      value
        .trim()
        .slice(number.length)
        .replace(/[,;()\s]/g, ''),
    );
    const scaled = Number(number) * (unit ? 10 ** unit.power * unit.factor : 1);
    if (!(scaled > 0)) continue;
    if (RATE_NAME.test(label.trim())) return scaled;
    if (INTERVAL_NAME.test(label.trim())) return 1 / scaled;
  }
  return null;
}
