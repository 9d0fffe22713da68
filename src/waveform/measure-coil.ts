/**
 * A coil's (variable reluctance) signal: peak to peak against speed, the height of each tooth, run-out, and which lobe
 * comes first behind the gap, which tells whether its leads are exchanged.
 */
import { medianOf } from './capture.ts';
import { type Edges, edgesGoing } from './find-edges.ts';
import type { Wheel } from './find-wheel.ts';
import { differences } from './measure-pulses.ts';

/** What the heights of a coil's teeth tell, in volts. */
export interface Coil {
  /** Peak to peak of the slowest and of the fastest tenth of the teeth, and their tooth frequencies. */
  readonly slow: { readonly hertz: number; readonly peakToPeak: number };
  readonly fast: { readonly hertz: number; readonly peakToPeak: number };
  /** Median peak to peak over tooth frequency: constant for a sound sensor. */
  readonly perHertz: number;
  /** Once-a-turn swing of the height as a fraction, 0 where no turn is known. */
  readonly runOut: number;
  /** Pitches after the gap whose tooth gives less than `WEAK` of its neighbours. */
  readonly weakPitches: readonly number[];
  /** Lobe before the gap: a tooth that gives plus, then minus, leaves minus there. Null without a gap. */
  readonly beforeGap: 'negative' | 'positive' | null;
}

const WEAK = 0.75;
/** Share of a lobe that still counts as the quiet of the gap. */
const QUIET = 0.3;
/** The signal is averaged over this share of a pitch before quiet is looked for, against noise. */
const SMOOTH = 1 / 8;

/** The direction in which the signal passes the middle of a tooth, judged by the lobe before the longest intervals. */
export function lobeBeforeGap(
  samples: Float32Array,
  rateHz: number,
  middle: number,
  edges: Edges,
): Coil['beforeGap'] {
  const times = edgesGoing(edges, 'falling');
  const intervals = differences(times);
  let votes = 0;
  for (let k = 2; k + 2 < intervals.length; k += 1) {
    const usual = (intervals[k - 2]! + intervals[k + 2]!) / 2;
    const long = intervals[k]! > 1.6 * usual || intervals[k - 1]! + intervals[k]! > 2.6 * usual;
    if (!long || intervals[k]! < 1.2 * usual) continue;
    votes += lobeVote(
      samples,
      rateHz,
      middle,
      times[k]! - usual / 2,
      times[k + 1]! + usual / 2,
      usual,
    );
  }
  return votes === 0 ? null : votes > 0 ? 'negative' : 'positive';
}

/** +1 when the longest quiet stretch follows a negative lobe, -1 when a positive one, 0 when there is none. */
function lobeVote(
  samples: Float32Array,
  rateHz: number,
  middle: number,
  from: number,
  to: number,
  pitch: number,
): number {
  const first = Math.max(0, Math.floor(from * rateHz));
  const last = Math.min(samples.length, Math.ceil(to * rateHz));
  const smooth = runningMean(samples.subarray(first, last), Math.round(pitch * rateHz * SMOOTH));
  let peak = 0;
  for (const value of smooth) peak = Math.max(peak, Math.abs(value - middle));
  let longest = 0;
  let vote = 0;
  let quiet = 0;
  let lobe = 0;
  let before = 0;
  for (const value of smooth) {
    const away = value - middle;
    if (Math.abs(away) < QUIET * peak) {
      if (quiet === 0) before = lobe;
      quiet += 1;
      if (quiet > longest && before !== 0) {
        longest = quiet;
        vote = before < 0 ? 1 : -1;
      }
    } else {
      quiet = 0;
      lobe = Math.sign(away);
    }
  }
  return vote;
}

function runningMean(values: Float32Array, width: number): Float64Array {
  const over = Math.max(1, width);
  const result = new Float64Array(Math.max(0, values.length - over + 1));
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) {
    sum += values[i]! - (i >= over ? values[i - over]! : 0);
    if (i >= over - 1) result[i - over + 1] = sum / over;
  }
  return result;
}

/** Heights of the teeth whose middles are `times`; null with less than four teeth. */
export function measureCoil(
  samples: Float32Array,
  rateHz: number,
  times: Float64Array,
  wheel: Wheel | null,
  beforeGap: Coil['beforeGap'],
): Coil | null {
  const intervals = differences(times);
  if (intervals.length < 4) return null;
  const hertz: number[] = [];
  const heights: number[] = [];
  const at: number[] = [];
  for (let k = 1; k < intervals.length; k += 1) {
    // The shorter of the two intervals is a pitch, even beside the gap.
    const pitch = Math.min(intervals[k - 1]!, intervals[k]!);
    const height = peakToPeak(
      samples,
      (times[k]! - pitch / 2) * rateHz,
      (times[k]! + pitch / 2) * rateHz,
    );
    hertz.push(1 / pitch);
    heights.push(height);
    at.push(times[k]!);
  }
  const order = hertz.map((_, k) => k).sort((a, b) => hertz[a]! - hertz[b]!);
  const tenth = Math.max(1, Math.floor(order.length / 10));
  const typical = (picked: readonly number[]) => ({
    hertz: medianOf(picked.map((k) => hertz[k]!)),
    peakToPeak: medianOf(picked.map((k) => heights[k]!)),
  });
  const rates = heights.map((height, k) => height / hertz[k]!);
  return {
    slow: typical(order.slice(0, tenth)),
    fast: typical(order.slice(-tenth)),
    perHertz: medianOf(rates),
    ...(wheel ? aroundTurn(rates, at, wheel) : { runOut: 0, weakPitches: [] }),
    beforeGap,
  };
}

function peakToPeak(samples: Float32Array, from: number, to: number): number {
  const first = Math.max(0, Math.floor(from));
  const last = Math.min(samples.length - 1, Math.ceil(to));
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = first; i <= last; i += 1) {
    const value = samples[i]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return most - least;
}

function aroundTurn(
  rates: readonly number[],
  at: readonly number[],
  wheel: Wheel,
): { runOut: number; weakPitches: number[] } {
  const sums = new Map<number, number[]>();
  let turn = 0;
  for (const [k, time] of at.entries()) {
    while (turn + 1 < wheel.starts.length && time >= wheel.starts[turn + 1]! - 1e-9) turn += 1;
    const start = wheel.starts[turn]!;
    const end = wheel.starts[turn + 1];
    if (end === undefined || time < start - 1e-9) continue;
    const pitch = Math.round(((time - start) / (end - start)) * wheel.pitches);
    const list = sums.get(pitch) ?? [];
    list.push(rates[k]!);
    sums.set(pitch, list);
  }
  const pitches = [...sums.keys()].sort((a, b) => a - b);
  const means = pitches.map((pitch) => medianOf(sums.get(pitch)!));
  const overall = means.reduce((sum, rate) => sum + rate, 0) / Math.max(1, means.length);
  let cosine = 0;
  let sine = 0;
  for (const [k, pitch] of pitches.entries()) {
    const angle = (2 * Math.PI * pitch) / wheel.pitches;
    cosine += (means[k]! / overall - 1) * Math.cos(angle);
    sine += (means[k]! / overall - 1) * Math.sin(angle);
  }
  const weakPitches = pitches.filter((_, k) => {
    const around = means.slice(Math.max(0, k - 3), k + 4);
    return means[k]! < WEAK * medianOf(around);
  });
  const runOut = pitches.length === 0 ? 0 : (2 * Math.hypot(cosine, sine)) / pitches.length;
  return { runOut, weakPitches };
}
