/**
 * Captures as text, read piece by piece: the caller pushes chunks of bytes as they come from the disk, memory holds
 * the samples and one line. Numbers are read digit by digit from the bytes, without making strings of them.
 */
import type { Issue } from '../source/issue.ts';
import { type Capture, CHANNELS_MAX, SAMPLES_MAX } from './capture.ts';
import { type CsvShape, csvShape } from './csv-shape.ts';

export interface ReadOptions {
  readonly file: string;
  /** Sample rate for files that have neither a time column nor a rate in their heading. */
  readonly rateHz?: number;
}

export interface ReadResult {
  readonly capture: Capture | null;
  readonly issues: readonly Issue[];
}

/** Lines looked at to find the layout, and the bytes within which they must lie. */
const HEAD_LINES = 60;
const HEAD_BYTES = 64_000;
/** A longer line is no line of a capture. */
const LINE_BYTES = 10_000;
/** Samples kept in one piece of memory before the next is taken. */
const PIECE = 65_536;
/** More unreadable values than this share make the file useless. */
const UNREADABLE_SHARE = 0.01;
/** Time steps may differ from their mean by this share, and by the rounding of the last digit written. */
const STEP_SHARE = 0.5;

/** Rows whose times are looked at together for the digits they are written with. */
const STRETCH = 64;

const [TAB, LF, CR, SPACE, QUOTE, PLUS, COMMA, MINUS, POINT] = [9, 10, 13, 32, 34, 43, 44, 45, 46];

/** Reads one capture; use once: `push` every chunk, then `end`. */
export class CsvReader {
  private readonly options: ReadOptions;
  private readonly issues: Issue[] = [];
  private head: Uint8Array | null = new Uint8Array(0);
  private shape: CsvShape | null = null;
  private rest = new Uint8Array(0);
  private line = 0;
  private rows = 0;
  private stopped = false;
  private readonly pieces: Float32Array[][] = [];
  private readonly last: number[] = [];
  private unreadable = 0;
  private firstUnreadable = 0;
  private firstTime = 0;
  private lastTime = 0;
  private leastStep = Number.POSITIVE_INFINITY;
  private mostStep = Number.NEGATIVE_INFINITY;
  private mostStepLine = 0;
  /** Power of ten of the last digit of a time: the coarsest of stretches, each judged by its finest. */
  private timePower = Number.NEGATIVE_INFINITY;
  private stretchPower = Number.POSITIVE_INFINITY;
  private lastPower = 0;
  /** Which channel a column of the line belongs to: -2 the time, -1 none. */
  private roles = new Int8Array(0);
  /** Outcome of `number`: the value and where it stopped. */
  private value = 0;

  constructor(options: ReadOptions) {
    this.options = options;
  }

  /** Takes the next bytes. False when nothing more is wanted, because of an error or enough samples. */
  push(chunk: Uint8Array): boolean {
    if (this.stopped) return false;
    if (this.head) {
      this.head = joined(this.head, chunk);
      const lines = count(this.head, LF);
      if (lines <= HEAD_LINES && this.head.length < HEAD_BYTES) return true;
      this.begin(false);
      return !this.stopped;
    }
    this.take(this.rest.length === 0 ? chunk : joined(this.rest, chunk), false);
    return !this.stopped;
  }

  /** The capture, or null with the reasons. */
  end(): ReadResult {
    if (this.head) this.begin(true);
    if (this.shape && !this.stopped && this.rest.length > 0) this.take(this.rest, true);
    return { capture: this.finish(), issues: this.issues };
  }

  private begin(atEnd: boolean): void {
    const bytes = this.head!;
    this.head = null;
    const bom = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
    if (bytes[0] === 0xff || bytes[0] === 0xfe || bytes.subarray(0, 4000).includes(0)) {
      this.fail('not-text', 'this is not a text file in UTF-8', 'export the capture as CSV', 1);
      return;
    }
    const text = new TextDecoder('utf-8').decode(bytes).replace(/^\ufeff/, '');
    const lines = text.split(/\r?\n/);
    // What is behind the last line feed may be half a line, unless the file ends there.
    if (!atEnd || lines.at(-1) === '') lines.pop();
    const found = csvShape(lines.slice(0, HEAD_LINES), CHANNELS_MAX);
    if (!('shape' in found)) {
      this.fail(found.code, found.words, found.fix, found.line);
      return;
    }
    this.shape = found.shape;
    this.roles = new Int8Array(64).fill(-1);
    if (found.shape.time >= 0 && found.shape.time < 64) this.roles[found.shape.time] = -2;
    for (const [channel, column] of found.shape.columns.entries()) {
      if (column.at < 64) this.roles[column.at] = channel;
      this.pieces.push([]);
      this.last.push(0);
    }
    let from = bom;
    for (let skipped = 0; skipped < found.shape.headLines; skipped += 1) {
      from = lineEnd(bytes, from) + 1;
      this.line += 1;
    }
    this.take(bytes.subarray(from), false);
  }

  /** Reads whole lines from `bytes`, and the last one too when `all`. */
  private take(bytes: Uint8Array, all: boolean): void {
    let from = 0;
    while (from < bytes.length && !this.stopped) {
      let end = from;
      while (end < bytes.length && bytes[end] !== LF) end += 1;
      if (end >= bytes.length && !all) break;
      this.line += 1;
      if (end - from > LINE_BYTES) {
        this.fail(
          'line-too-long',
          `line ${this.line} is longer than ${LINE_BYTES} bytes`,
          'check that this is a capture',
          this.line,
        );
        return;
      }
      this.row(bytes, from, end);
      from = end + 1;
    }
    this.rest = bytes.slice(Math.min(from, bytes.length));
    if (this.rest.length > LINE_BYTES && !this.stopped)
      this.fail(
        'line-too-long',
        `line ${this.line + 1} is longer than ${LINE_BYTES} bytes`,
        'check that this is a capture',
        this.line + 1,
      );
  }

  private row(bytes: Uint8Array, from: number, end: number): void {
    const { separator, decimal } = this.shape!;
    const mark = decimal === ',' ? COMMA : POINT;
    const between = separator.charCodeAt(0);
    let at = from;
    while (at < end && isBlank(bytes[at]!)) at += 1;
    if (at >= end) return;
    if (this.rows >= SAMPLES_MAX) {
      this.stopped = true;
      this.warn('too-many-samples', `only the first ${SAMPLES_MAX} samples are used`, this.line);
      return;
    }
    const row = this.rows;
    const slot = row % PIECE;
    const channels = this.pieces.length;
    if (slot === 0) for (const pieces of this.pieces) pieces.push(new Float32Array(PIECE));
    let seen = 0;
    let column = 0;
    while (at <= end && column < 64) {
      const role = this.roles[column]!;
      const good = role !== -1 && this.cell(bytes, at, end, between, mark);
      if (role === -2 && good) this.time(row);
      else if (role >= 0) {
        if (good) this.last[role] = this.value * this.shape!.columns[role]!.factor;
        else this.bad();
        this.pieces[role]!.at(-1)![slot] = this.last[role]!;
        seen += 1;
      } else if (role === -2) this.bad();
      while (at < end && bytes[at] !== between) at += 1;
      if (between === SPACE) while (at + 1 < end && bytes[at + 1] === SPACE) at += 1;
      at += 1;
      column += 1;
      if (at > end) break;
    }
    for (let role = seen; role < channels; role += 1) {
      this.pieces[role]!.at(-1)![slot] = this.last[role]!;
      this.bad();
    }
    this.rows += 1;
  }

  /** Reads a number that starts at `at`; false when the cell is empty or something else. */
  private cell(
    bytes: Uint8Array,
    start: number,
    end: number,
    between: number,
    mark: number,
  ): boolean {
    let at = start;
    while (at < end && (bytes[at] === SPACE || bytes[at] === QUOTE) && bytes[at] !== between)
      at += 1;
    const negative = bytes[at] === MINUS;
    if (negative || bytes[at] === PLUS) at += 1;
    let digits = 0;
    let kept = 0;
    let dropped = 0;
    let decimals = 0;
    let marked = false;
    let any = false;
    for (; at < end; at += 1) {
      const sign = bytes[at]!;
      if (sign >= 48 && sign <= 57) {
        any = true;
        // Fifteen digits are exact in a double; what follows only moves the decimal mark.
        if (kept < 15) {
          digits = digits * 10 + (sign - 48);
          if (digits > 0) kept += 1;
          if (marked) decimals += 1;
        } else if (!marked) dropped += 1;
      } else if (sign === mark && !marked) marked = true;
      else break;
    }
    if (!any) return false;
    let exponent = dropped - decimals;
    if (at < end && (bytes[at] === 101 || bytes[at] === 69)) {
      at += 1;
      const down = bytes[at] === MINUS;
      if (down || bytes[at] === PLUS) at += 1;
      let power = 0;
      for (; at < end && bytes[at]! >= 48 && bytes[at]! <= 57; at += 1)
        power = power * 10 + (bytes[at]! - 48);
      exponent += down ? -Math.min(power, 400) : Math.min(power, 400);
    }
    while (at < end && (isBlank(bytes[at]!) || bytes[at] === QUOTE) && bytes[at] !== between)
      at += 1;
    if (at < end && bytes[at] !== between) return false;
    const size = exponent < 0 ? digits / powerOfTen(-exponent) : digits * powerOfTen(exponent);
    this.value = negative ? -size : size;
    this.lastPower = exponent;
    return Number.isFinite(size);
  }

  private time(row: number): void {
    const time = this.value;
    if (this.lastPower < this.stretchPower) this.stretchPower = this.lastPower;
    if (row % STRETCH === STRETCH - 1) this.closeStretch();
    if (row === 0) this.firstTime = time;
    else {
      const step = time - this.lastTime;
      if (step < this.leastStep) this.leastStep = step;
      if (step > this.mostStep) {
        this.mostStep = step;
        this.mostStepLine = this.line;
      }
    }
    this.lastTime = time;
  }

  private closeStretch(): void {
    if (Number.isFinite(this.stretchPower) && this.stretchPower > this.timePower)
      this.timePower = this.stretchPower;
    this.stretchPower = Number.POSITIVE_INFINITY;
  }

  private bad(): void {
    if (this.unreadable === 0) this.firstUnreadable = this.line;
    this.unreadable += 1;
  }

  private finish(): Capture | null {
    const { shape, rows } = this;
    if (!shape || this.issues.some((issue) => issue.severity === 'error')) return null;
    if (rows < 2) {
      this.fail(
        'too-few-samples',
        'a capture needs two samples at least',
        'check the export',
        this.line,
      );
      return null;
    }
    if (this.unreadable > 0) {
      const words = `${this.unreadable} values could not be read and repeat the value before them`;
      if (
        this.unreadable >
        UNREADABLE_SHARE * rows * (shape.columns.length + (shape.time < 0 ? 0 : 1))
      ) {
        this.fail(
          'unreadable-values',
          words,
          'look at this line of the file',
          this.firstUnreadable,
        );
        return null;
      }
      this.warn('unreadable-values', words, this.firstUnreadable);
    }
    if (shape.leftOut > 0)
      this.warn(
        'too-many-channels',
        `only the first ${CHANNELS_MAX} channels are used`,
        shape.headLines + 1,
      );
    const rateHz = this.rate(shape);
    if (rateHz === null) return null;
    const startSeconds = shape.time < 0 ? 0 : this.firstTime * shape.timeFactor;
    const channels = shape.columns.map(({ name, unit }, at) => ({
      name,
      unit,
      samples: this.gather(at),
    }));
    return { rateHz, startSeconds, channels };
  }

  private rate(shape: CsvShape): number | null {
    if (shape.time < 0) {
      const rate = this.options.rateHz ?? shape.rateHz;
      if (rate !== null) return rate;
      const fix = 'say how many samples a second, for example --rate "50 kHz"';
      this.fail(
        'no-rate',
        'this file has no time column and no sample rate',
        fix,
        shape.headLines + 1,
      );
      return null;
    }
    const mean = (this.lastTime - this.firstTime) / (this.rows - 1);
    if (!Number.isFinite(this.timePower)) this.closeStretch();
    const rounding = 2 * 10 ** this.timePower;
    const slack = STEP_SHARE * mean + rounding;
    if (mean > 0 && this.leastStep >= mean - slack && this.mostStep <= mean + slack)
      return 1 / (mean * shape.timeFactor);
    const words = 'the samples are not evenly spaced in time';
    this.fail(
      'uneven-time',
      words,
      'export the capture at a fixed sample rate, in one piece',
      this.mostStepLine,
    );
    return null;
  }

  /** One array from the pieces, which are let go one by one. */
  private gather(channel: number): Float32Array {
    const samples = new Float32Array(this.rows);
    const pieces = this.pieces[channel]!;
    for (let at = 0; pieces.length > 0; at += PIECE) {
      const piece = pieces.shift()!;
      samples.set(piece.subarray(0, Math.min(PIECE, this.rows - at)), at);
    }
    return samples;
  }

  private fail(code: string, words: string, fix: string, line: number): void {
    this.stopped = true;
    this.issues.push({ code, severity: 'error', at: this.spot(line), words, fix });
  }

  private warn(code: string, words: string, line: number): void {
    this.issues.push({ code, severity: 'warning', at: this.spot(line), words });
  }

  private spot(line: number): Issue['at'] {
    return { file: this.options.file, line, column: 1, endLine: line, endColumn: 1 };
  }
}

const POWERS = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const powerOfTen = (power: number) => POWERS[power] ?? 10 ** power;
const isBlank = (sign: number) => sign === SPACE || sign === TAB || sign === CR;

function lineEnd(bytes: Uint8Array, from: number): number {
  const at = bytes.indexOf(LF, from);
  return at < 0 ? bytes.length : at;
}

function count(bytes: Uint8Array, sign: number): number {
  let found = 0;
  for (const byte of bytes) if (byte === sign) found += 1;
  return found;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
