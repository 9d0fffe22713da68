/**
 * A capture as text: braille dots (two by four in a cell) or plain ASCII, with axes, units, the two levels and the
 * edges marked. Every sample counts: a column shows the least and the most of the samples under it.
 */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Channel } from './capture.ts';
import { axisRange, type Range } from './plot-range.ts';

/** The room for a plot and the part of the capture that goes in. */
export interface PlotOptions {
  /** Whole width in columns, at least 30. */
  readonly width: number;
  /** Rows of the curve, default 10. */
  readonly rows?: number;
  readonly ascii?: boolean;
  readonly rateHz: number;
  /** Seconds of the first sample on the axis, default 0. */
  readonly startSeconds?: number;
  /** Part to draw in seconds from the first sample, default all. */
  readonly from?: number;
  readonly to?: number;
  /** The axis covers at least so much (`spanLeastOf`), default nothing. */
  readonly spanLeast?: number;
  /** Values to mark with a line and their names. */
  readonly levels?: readonly { readonly value: number; readonly name: string }[];
  /** Instants to mark below the curve. */
  readonly marks?: ArrayLike<number>;
}

const WIDTH_LEAST = 30;
const ROWS = 10;
const BRAILLE = 0x2800;
/** Bit of each dot of a braille cell, by row and column (Unicode, braille patterns). */
const DOTS = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

/** Lines of text no wider than `width`. */
export function plotText(channel: Channel, options: PlotOptions): string[] {
  const { ascii = false, rateHz, rows = ROWS, startSeconds = 0 } = options;
  const width = Math.max(WIDTH_LEAST, Math.floor(options.width));
  const first = Math.max(0, Math.floor((options.from ?? 0) * rateHz));
  const last = Math.min(channel.samples.length, Math.ceil((options.to ?? Infinity) * rateHz));
  if (last - first < 1) return [`${channel.name}: nothing to draw`];
  const across = ascii ? 1 : 2;
  const down = ascii ? 1 : 4;
  const { levels = [], spanLeast = 0 } = options;
  const extremes = axisRange(channel.samples, first, last, { levels, spanLeast });
  const show = (value: number) => formatQuantity({ value, unit: channel.unit }, { ascii });
  const labels = labelRows(extremes, rows, levels, show);
  const gutter = Math.min(Math.floor(width / 3), Math.max(...labels.map((label) => label.length)));
  const columns = width - gutter - 2;
  const grid = drawCurve(channel.samples, {
    first,
    last,
    columns: columns * across,
    rows: rows * down,
    ...extremes,
  });
  const bar = ascii ? '|' : '│';
  const dash = ascii ? '-' : '·';
  const marked = new Set(levels.map(({ value }) => rowOf(value, extremes, rows)));
  const lines = Array.from({ length: rows }, (_, row) => {
    let text = '';
    for (let column = 0; column < columns; column += 1) {
      const sign = ascii ? asciiCell(grid, row, column) : brailleCell(grid, row, column);
      text += sign !== ' ' || !marked.has(row) ? sign : dash;
    }
    return `${labels[row]!.slice(0, gutter).padStart(gutter)} ${bar}${text}`.trimEnd();
  });
  const scale = { from: first / rateHz, to: last / rateHz, columns };
  return [
    channel.name.slice(0, width),
    ...lines,
    ...edgeRow(options.marks, scale, gutter, ascii),
    axisRow(gutter, columns, ascii),
    timeRow(startSeconds, scale, gutter, ascii),
  ];
}

function rowOf(value: number, { low, high }: Range, rows: number): number {
  const share = (value - low) / (high - low);
  return Math.min(rows - 1, Math.max(0, Math.round((1 - share) * (rows - 1))));
}

/** Text before each row: the ends and the named levels; a level beside an end wins over the number. */
function labelRows(
  extremes: Range,
  rows: number,
  levels: NonNullable<PlotOptions['levels']>,
  show: (value: number) => string,
): string[] {
  const labels = Array<string>(rows).fill('');
  labels[0] = show(extremes.high);
  labels[rows - 1] = show(extremes.low);
  for (const { value, name } of levels)
    labels[rowOf(value, extremes, rows)] = `${name} ${show(value)}`;
  return labels;
}

interface Grid {
  readonly columns: number;
  readonly rows: number;
  /** 1 where the curve passes. */
  readonly dots: Uint8Array;
}

function drawCurve(
  samples: Float32Array,
  view: Range & { first: number; last: number; columns: number; rows: number },
): Grid {
  const { first, last, columns, rows } = view;
  const dots = new Uint8Array(columns * rows);
  const size = (last - first) / columns;
  let before: number | null = null;
  for (let column = 0; column < columns; column += 1) {
    const from = first + Math.floor(column * size);
    const to = Math.max(from + 1, first + Math.floor((column + 1) * size));
    let least = samples[from]!;
    let most = least;
    for (let i = from; i < to && i < last; i += 1) {
      const value = samples[i]!;
      if (value < least) least = value;
      else if (value > most) most = value;
    }
    // The line from the last column's end joins in, so that steep edges are drawn whole.
    const joinLeast = before === null ? least : Math.min(least, before);
    const joinMost = before === null ? most : Math.max(most, before);
    const top = rowOf(joinMost, view, rows);
    const bottom = rowOf(joinLeast, view, rows);
    for (let row = top; row <= bottom; row += 1) dots[row * columns + column] = 1;
    before = samples[Math.min(last, to) - 1]!;
  }
  return { columns, rows, dots };
}

function brailleCell({ dots, columns }: Grid, row: number, column: number): string {
  let bits = 0;
  for (let y = 0; y < 4; y += 1)
    for (let x = 0; x < 2; x += 1)
      if (dots[(row * 4 + y) * columns + column * 2 + x]) bits |= DOTS[y]![x]!;
  return bits === 0 ? ' ' : String.fromCharCode(BRAILLE + bits);
}

function asciiCell({ dots, columns, rows }: Grid, row: number, column: number): string {
  if (!dots[row * columns + column]) return ' ';
  const above = row > 0 && dots[(row - 1) * columns + column];
  const below = row < rows - 1 && dots[(row + 1) * columns + column];
  return above || below ? '#' : '*';
}

interface Scale {
  readonly from: number;
  readonly to: number;
  readonly columns: number;
}

function edgeRow(
  marks: ArrayLike<number> | undefined,
  scale: Scale,
  gutter: number,
  ascii: boolean,
): string[] {
  if (!marks || marks.length === 0) return [];
  const row = Array<string>(scale.columns).fill(' ');
  for (let k = 0; k < marks.length; k += 1) {
    const share = (marks[k]! - scale.from) / (scale.to - scale.from);
    if (share < 0 || share >= 1) continue;
    row[Math.floor(share * scale.columns)] = ascii ? '^' : '▲';
  }
  const text = row.join('').trimEnd();
  return text === '' ? [] : [`${' '.repeat(gutter + 2)}${text}`];
}

function axisRow(gutter: number, columns: number, ascii: boolean): string {
  return ' '.repeat(gutter + 1) + (ascii ? '+' : '└') + (ascii ? '-' : '─').repeat(columns);
}

/** Times at both ends and, where there is room, in the middle. */
function timeRow(
  start: number,
  { from, to, columns }: Scale,
  gutter: number,
  ascii: boolean,
): string {
  const show = (seconds: number) =>
    formatQuantity({ value: seconds + start, unit: 's' }, { ascii });
  const [left, middle, right] = [show(from), show((from + to) / 2), show(to)];
  const room = columns - left.length - right.length;
  if (room < 1) return ' '.repeat(gutter + 2) + left.slice(0, columns);
  const at = Math.floor((columns - middle.length) / 2);
  const fits = at > left.length && at + middle.length < columns - right.length;
  const between = fits
    ? ' '.repeat(at - left.length) +
      middle +
      ' '.repeat(columns - right.length - at - middle.length)
    : ' '.repeat(room);
  return ' '.repeat(gutter + 2) + left + between + right;
}
