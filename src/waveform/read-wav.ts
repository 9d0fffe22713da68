/**
 * Captures as sound files (RIFF WAVE): whole-number samples of 8 to 32 bits or floating point. Sound cards and some
 * scopes write them; their values are fractions of full scale unless the full scale is told.
 */
import type { Issue } from '../source/issue.ts';
import { CHANNELS_MAX, isSample, SAMPLES_MAX } from './capture.ts';
import { type ReadOptions, type ReadResult, UNREADABLE_SHARE } from './read-csv.ts';

/** What a sound file does not say of the volts that it stands for. */
export interface WavOptions extends ReadOptions {
  /** Volts at full scale; without it the unit is a fraction of full scale. */
  readonly fullScaleVolts?: number;
}

/** True when `bytes` begin like a sound file. */
export function isWav(bytes: Uint8Array): boolean {
  return tag(bytes, 0) === 'RIFF' && tag(bytes, 8) === 'WAVE';
}

interface Format {
  readonly coding: number;
  readonly channels: number;
  readonly rateHz: number;
  readonly bits: number;
  /** Bytes from one moment to the next, as the file says; many programs leave it at 0. */
  readonly frame: number;
}

/** Reads a whole file. */
export function readWav(bytes: Uint8Array, options: WavOptions): ReadResult {
  const issues: Issue[] = [];
  const at = { file: options.file, line: 1, column: 1, endLine: 1, endColumn: 1 };
  const fail = (code: string, words: string, fix: string): ReadResult => ({
    capture: null,
    issues: [...issues, { code, severity: 'error', at, words, fix }],
  });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let format: Format | null = null;
  let data: Uint8Array | null = null;
  for (let from = 12; from + 8 <= bytes.length && !data; ) {
    const name = tag(bytes, from);
    const size = view.getUint32(from + 4, true);
    if (name === 'fmt ' && from + 24 <= bytes.length) format = readFormat(view, from + 8, size);
    if (name === 'data') data = bytes.subarray(from + 8, Math.min(bytes.length, from + 8 + size));
    from += 8 + size + (size % 2);
  }
  if (!format || !data) return fail('bad-wav', 'this sound file has no samples', 'export it again');
  const read = sampleReader(format);
  if (!read || format.channels < 1 || !(format.rateHz > 0))
    return fail(
      'wav-coding',
      'this sound file is compressed or of an unknown kind',
      'save it as plain PCM',
    );
  const bytesEach = format.bits / 8;
  const stride = bytesEach * format.channels;
  if (format.frame > stride)
    return fail(
      'wav-coding',
      'samples and channels of this sound file do not fill its frames',
      'save it as plain PCM',
    );
  const whole = Math.floor(data.length / stride);
  const rows = Math.min(whole, SAMPLES_MAX);
  if (rows < 2)
    return fail('too-few-samples', 'a capture needs two samples at least', 'check the export');
  const warn = (code: string, words: string) =>
    issues.push({ code, severity: 'warning', at, words });
  if (whole > rows) warn('too-many-samples', `only the first ${SAMPLES_MAX} samples are used`);
  if (format.channels > CHANNELS_MAX)
    warn('too-many-channels', `only the first ${CHANNELS_MAX} channels are used`);
  let unreadable = 0;
  const scale = options.fullScaleVolts ?? 1;
  const samplesView = new DataView(data.buffer, data.byteOffset, data.byteLength);
  const channels = Array.from({ length: Math.min(CHANNELS_MAX, format.channels) }, (_, channel) => {
    const samples = new Float32Array(rows);
    for (let row = 0; row < rows; row += 1) {
      const value = Math.fround(read(samplesView, row * stride + channel * bytesEach) * scale);
      if (isSample(value)) samples[row] = value;
      else {
        unreadable += 1;
        samples[row] = row > 0 ? samples[row - 1]! : 0;
      }
    }
    const unit = options.fullScaleVolts === undefined ? ('1' as const) : ('V' as const);
    return { name: `channel ${channel + 1}`, unit, samples };
  });
  if (unreadable > 0) {
    const words = `${unreadable} values could not be read and repeat the value before them`;
    if (unreadable > UNREADABLE_SHARE * rows * channels.length)
      return fail('unreadable-values', words, 'export it again');
    warn('unreadable-values', words);
  }
  return { capture: { rateHz: format.rateHz, startSeconds: 0, channels }, issues };
}

function readFormat(view: DataView, at: number, size: number): Format {
  const coding = view.getUint16(at, true);
  // The extensible form keeps the real coding in the first bytes of its identifier.
  const extended = coding === 0xfffe && size >= 26 && at + 26 <= view.byteLength;
  return {
    coding: extended ? view.getUint16(at + 24, true) : coding,
    channels: view.getUint16(at + 2, true),
    rateHz: view.getUint32(at + 4, true),
    frame: view.getUint16(at + 12, true),
    bits: view.getUint16(at + 14, true),
  };
}

function sampleReader({ coding, bits }: Format): ((view: DataView, at: number) => number) | null {
  if (coding === 3 && bits === 32) return (view, at) => view.getFloat32(at, true);
  if (coding === 3 && bits === 64) return (view, at) => view.getFloat64(at, true);
  if (coding !== 1) return null;
  if (bits === 8) return (view, at) => (view.getUint8(at) - 128) / 128;
  if (bits === 16) return (view, at) => view.getInt16(at, true) / 32768;
  if (bits === 24)
    return (view, at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 8388608;
  if (bits === 32) return (view, at) => view.getInt32(at, true) / 2147483648;
  return null;
}

function tag(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
