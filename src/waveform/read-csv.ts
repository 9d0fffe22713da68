/**
 * Captures as text, read piece by piece: the caller pushes chunks of bytes as they come from the disk, memory holds
 * the samples and one line. Numbers are read digit by digit from the bytes, without making strings of them.
 */
import type { Issue } from '../source/issue.ts';
import { BYTE, ByteNumber, isBlank } from './byte-number.ts';
import { type Capture, CHANNELS_MAX, isSample, SAMPLES_MAX } from './capture.ts';
import { type CsvShape, csvShape } from './csv-shape.ts';
import { EvenSteps } from './even-steps.ts';

/** Where it comes from, and what the file itself may not say. */
export interface ReadOptions {
  readonly file: string;
  /** Sample rate for files that have neither a time column nor a rate in their heading. */
  readonly rateHz?: number;
}

/** The capture, null when there is none, and all that is wrong with the file. */
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
export const UNREADABLE_SHARE = 0.01;

/** Samples a second: no logger is slower and no scope faster. Our choice. */
const RATE_MIN = 1e-6;
const RATE_MAX = 1e12;

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
  private readonly steps = new EvenSteps();
  private readonly number = new ByteNumber();
  /** Which channel a column of the line belongs to: -2 the time, -1 none. */
  private roles = new Int8Array(0);
  constructor(options: ReadOptions) {
    this.options = options;
  }

  /** Takes the next bytes. False when nothing more is wanted, because of an error or enough samples. */
  push(chunk: Uint8Array): boolean {
    if (this.stopped) return false;
    if (this.head) {
      this.head = joined(this.head, chunk);
      const lines = count(this.head, BYTE.lineFeed);
      if (lines <= HEAD_LINES && this.head.length < HEAD_BYTES) return true;
      this.begin(false);
      return !this.stopped;
    }
    let from = 0;
    if (this.rest.length > 0) {
      // Only the line across the border is copied, never the chunk.
      from = Math.min(chunk.length, lineEnd(chunk, 0) + 1);
      this.take(joined(this.rest, chunk.subarray(0, from)), false);
    }
    if (!this.stopped && from < chunk.length) this.take(chunk.subarray(from), false);
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
      while (end < bytes.length && bytes[end] !== BYTE.lineFeed) end += 1;
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
    const mark = decimal === ',' ? BYTE.comma : BYTE.point;
    const between = separator.charCodeAt(0);
    let at = from;
    while (at < end && isBlank(bytes[at]!)) at += 1;
    if (at >= end) return;
    // A tab at the beginning is not blank where tabs part the cells: the first one is empty.
    if (between === BYTE.tab) at = from;
    if (this.rows >= SAMPLES_MAX) {
      this.stopped = true;
      this.warn('too-many-samples', `only the first ${SAMPLES_MAX} samples are used`, this.line);
      return;
    }
    const { number, rows: row } = this;
    const slot = row % PIECE;
    const channels = this.pieces.length;
    if (slot === 0) for (const pieces of this.pieces) pieces.push(new Float32Array(PIECE));
    let seen = 0;
    let column = 0;
    while (at <= end && column < 64) {
      const role = this.roles[column]!;
      const good = role !== -1 && number.read(bytes, at, end, between, mark);
      if (role === -2 && good) this.steps.add(number.value, number.lastPower, row, this.line);
      else if (role >= 0) {
        const value = Math.fround(number.value * this.shape!.columns[role]!.factor);
        if (good && isSample(value)) this.last[role] = value;
        else this.bad();
        this.pieces[role]!.at(-1)![slot] = this.last[role]!;
        seen += 1;
      } else if (role === -2) this.bad();
      while (at < end && bytes[at] !== between) at += 1;
      if (between === BYTE.space) while (at + 1 < end && bytes[at + 1] === BYTE.space) at += 1;
      at += 1;
      column += 1;
    }
    for (let role = seen; role < channels; role += 1) {
      this.pieces[role]!.at(-1)![slot] = this.last[role]!;
      this.bad();
    }
    this.rows += 1;
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
      const words =
        this.unreadable === 1
          ? 'one value could not be read and repeats the value before it'
          : `${this.unreadable} values could not be read and repeat the value before them`;
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
    if (rateHz === null || !this.isRate(rateHz, shape)) return null;
    const startSeconds = shape.time < 0 ? 0 : this.steps.start() * shape.timeFactor;
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
    const even = this.steps.step();
    if (even.step !== null) return 1 / (even.step * shape.timeFactor);
    const words = 'the samples are not evenly spaced in time';
    const fix = 'export the capture at a fixed sample rate, in one piece';
    this.fail('uneven-time', words, fix, even.line);
    return null;
  }

  private isRate(rateHz: number, shape: CsvShape): boolean {
    if (rateHz >= RATE_MIN && rateHz <= RATE_MAX) return true;
    const from = shape.time < 0 ? 'sample rate' : 'time column';
    const words = `no instrument takes as many or as few samples per second as the ${from} says`;
    this.fail(
      'odd-rate',
      words,
      'look at the unit, and export the capture again',
      shape.headLines + 1,
    );
    return false;
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

function lineEnd(bytes: Uint8Array, from: number): number {
  const at = bytes.indexOf(BYTE.lineFeed, from);
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
