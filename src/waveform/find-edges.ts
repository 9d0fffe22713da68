/**
 * Transitions of a signal: the instants at which it passes half-way between its levels (IEEE Std 181, mid reference
 * level), found with hysteresis so that noise makes no edges, and placed by linear interpolation between samples.
 */
import { medianOf } from './capture.ts';
import type { Levels } from './find-levels.ts';

/** All transitions of one channel in their order. */
export interface Edges {
  /** Mid-reference instants in seconds from the first sample, rising. */
  readonly times: Float64Array;
  /** 1 for a rising edge, 0 for a falling one; they alternate. */
  readonly rising: Uint8Array;
}

/** Hysteresis on either side of the middle in amplitudes, and in standard deviations of noise when that is more. */
const HYSTERESIS = 0.15;
const HYSTERESIS_NOISE = 4;
/** The most that noise may widen it to: beyond, edges of the signal itself would be missed. */
const HYSTERESIS_MOST = 0.35;

/** All edges around the middle of `levels`, or around `middle` when given. */
export function findEdges(
  samples: Float32Array,
  rateHz: number,
  levels: Levels,
  middle = (levels.low + levels.high) / 2,
): Edges {
  const { amplitude } = levels;
  if (!(amplitude > 0)) return { times: new Float64Array(0), rising: new Uint8Array(0) };
  const wide = Math.max(HYSTERESIS * amplitude, HYSTERESIS_NOISE * levels.noise);
  const reach = Math.min(wide, HYSTERESIS_MOST * amplitude);
  const times: number[] = [];
  const rising: number[] = [];
  let state = -1;
  /** The latest passage of the middle in either direction since the last edge. */
  let passed = -1;
  let before = samples[0] ?? 0;
  for (let i = 0; i < samples.length; i += 1) {
    const value = samples[i]!;
    if (i > 0 && before < middle !== value < middle) passed = i;
    before = value;
    const next = value > middle + reach ? 1 : value < middle - reach ? 0 : state;
    if (next === state) continue;
    if (state !== -1 && passed > 0) {
      const from = samples[passed - 1]!;
      const to = samples[passed]!;
      const share = to === from ? 0.5 : (middle - from) / (to - from);
      times.push((passed - 1 + share) / rateHz);
      rising.push(next);
    }
    state = next;
    passed = -1;
  }
  return { times: Float64Array.from(times), rising: Uint8Array.from(rising) };
}

/** An alternating signal must swing so far beyond the middle, as a share of its previous lobe, to count as a new lobe. */
const LOBE_SHARE = 0.35;
/** After so many of the last intervals without an edge the lobe expected is halved, again and again. */
const LOBE_PATIENCE = 3;

/**
 * Passages of an alternating signal through `middle`, the least lobe following the signal's own height: a coil gives a
 * hundred times more at speed than at cranking, and all of it counts. `floor` is the least lobe ever accepted.
 */
export function findCrossings(
  samples: Float32Array,
  rateHz: number,
  middle: number,
  floor: number,
): Edges {
  const times: number[] = [];
  const rising: number[] = [];
  let state = -1;
  let passed = -1;
  let lobe = 0;
  let expected = floor;
  let lastAt = 0;
  let interval = samples.length;
  let before = samples[0] ?? 0;
  for (let i = 0; i < samples.length; i += 1) {
    const value = samples[i]!;
    if (i > 0 && before < middle !== value < middle) passed = i;
    before = value;
    const away = value - middle;
    const height = state === 1 ? away : -away;
    if (height > lobe) lobe = height;
    if (i - lastAt > LOBE_PATIENCE * interval) {
      expected = Math.max(floor, expected / 2);
      lastAt = i;
    }
    const next = away > expected ? 1 : away < -expected ? 0 : state;
    if (next === state) continue;
    if (state !== -1) {
      interval = Math.max(1, i - lastAt);
      if (passed > 0) {
        const from = samples[passed - 1]!;
        const to = samples[passed]!;
        times.push((passed - 1 + (to === from ? 0.5 : (middle - from) / (to - from))) / rateHz);
        rising.push(next);
      }
      expected = Math.max(floor, lobe * LOBE_SHARE);
    }
    lastAt = i;
    lobe = 0;
    state = next;
    passed = -1;
  }
  return { times: Float64Array.from(times), rising: Uint8Array.from(rising) };
}

/** Samples looked at for a robust figure, and the stretches they are taken from. */
const ROBUST_SAMPLES = 20_000;
const STRETCHES = 32;

/**
 * Middle value and noise of a signal, both from ranks, so that lobes and spikes do not move them. The noise is that of
 * the quieter stretches, where a moving signal adds least to it.
 */
export function robustMiddle(samples: Float32Array): { middle: number; noise: number } {
  const step = Math.max(1, Math.floor(samples.length / ROBUST_SAMPLES));
  const values: number[] = [];
  const bends: number[] = [];
  for (let i = 1; i + 1 < samples.length; i += step) {
    values.push(samples[i]!);
    bends.push(Math.abs(samples[i - 1]! - 2 * samples[i]! + samples[i + 1]!));
  }
  const size = Math.max(8, Math.ceil(bends.length / STRETCHES));
  const medians: number[] = [];
  for (let from = 0; from < bends.length; from += size)
    medians.push(medianOf(bends.slice(from, from + size)));
  const quiet = medians.sort((a, b) => a - b)[medians.length >> 2] ?? 0;
  // The second difference of white noise has sqrt(6) times its deviation; the median of |x| is 0.6745 of it.
  return { middle: medianOf(values), noise: quiet / 0.6745 / Math.sqrt(6) };
}

/** Instants of the edges in one direction. */
export function edgesGoing(edges: Edges, direction: 'rising' | 'falling'): Float64Array {
  const wanted = direction === 'rising' ? 1 : 0;
  return edges.times.filter((_, at) => edges.rising[at] === wanted);
}

/** At most so many transitions are timed, spread over the capture: their spread is known well before that. */
const TRANSITIONS_TIMED = 2000;

/**
 * Transition durations from 10 % to 90 % of the amplitude (IEEE Std 181), in seconds, for edges in one direction.
 * Edges that do not reach both reference levels before the next edge are left out.
 */
export function transitionSeconds(
  samples: Float32Array,
  rateHz: number,
  levels: Levels,
  edges: Edges,
  direction: 'rising' | 'falling',
): Float64Array {
  const up = direction === 'rising';
  const first = levels.low + levels.amplitude * (up ? 0.1 : 0.9);
  const last = levels.low + levels.amplitude * (up ? 0.9 : 0.1);
  const step = Math.max(1, Math.floor(edges.times.length / 2 / TRANSITIONS_TIMED));
  const durations: number[] = [];
  let counted = -1;
  for (let k = 0; k < edges.times.length; k += 1) {
    if ((edges.rising[k] === 1) !== up) continue;
    counted += 1;
    if (counted % step !== 0) continue;
    const start = edges.times[k]! * rateHz;
    const floor = Math.max(0, Math.ceil((edges.times[k - 1] ?? 0) * rateHz));
    const ceiling = Math.min(
      samples.length - 1,
      Math.floor((edges.times[k + 1] ?? Infinity) * rateHz),
    );
    let back = Math.floor(start);
    while (back > floor && (up ? samples[back]! > first : samples[back]! < first)) back -= 1;
    let ahead = Math.ceil(start);
    while (ahead < ceiling && (up ? samples[ahead]! < last : samples[ahead]! > last)) ahead += 1;
    const reached =
      (up ? samples[back]! <= first : samples[back]! >= first) &&
      (up ? samples[ahead]! >= last : samples[ahead]! <= last);
    if (!reached || ahead <= back) continue;
    const from = crossing(samples, back, first);
    const to = crossing(samples, ahead - 1, last);
    durations.push(Math.max(0, to - from) / rateHz);
  }
  return Float64Array.from(durations);
}

/** Where the line between sample `at` and the next passes `level`, as a fractional sample number. */
function crossing(samples: Float32Array, at: number, level: number): number {
  const from = samples[at]!;
  const to = samples[at + 1] ?? from;
  return from === to ? at : at + Math.min(1, Math.max(0, (level - from) / (to - from)));
}
