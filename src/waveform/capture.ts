/** A capture: one or more channels sampled evenly at the same instants. */

export const CHANNELS_MAX = 4;
export const SAMPLES_MAX = 5_000_000;
/** Volts or amperes either way: no instrument shows more, and a logger that has nothing to show may write such a number. Our choice. */
const SAMPLE_MOST = 1e10;

/** Whether a number can be a sample. */
export function isSample(value: number): boolean {
  return Math.abs(value) <= SAMPLE_MOST;
}

/** One signal of a capture. */
export interface Channel {
  readonly name: string;
  /** `1` is a fraction of full scale, as in sound files. */
  readonly unit: 'V' | 'A' | '1';
  /** Single precision: seven digits are more than any scope has, in half the memory. */
  readonly samples: Float32Array;
}

/** Channels that were sampled together, as they were read or generated. */
export interface Capture {
  readonly rateHz: number;
  /** Time of the first sample; scopes count from the trigger, so it may be negative. */
  readonly startSeconds: number;
  readonly channels: readonly Channel[];
}

/** Time from the first sample to one interval past the last. */
export function captureSeconds(capture: Capture): number {
  return (capture.channels[0]?.samples.length ?? 0) / capture.rateHz;
}

/** What a quantity that comes many times is on average, at its least and at its most. */
export interface Spread {
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

/** Mean, least and most of `values`, or null when there are none. */
export function spreadOf(values: ArrayLike<number>): Spread | null {
  if (values.length === 0) return null;
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    sum += value;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { mean: sum / values.length, least, most };
}

/** Middle value of `values` (the lower of two), or NaN when there are none. */
export function medianOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[(sorted.length - 1) >> 1] ?? Number.NaN;
}
