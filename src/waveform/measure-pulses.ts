/** Pulse widths, periods, frequency and duty of a train of edges (IEEE Std 181 terms). */
import { medianOf, type Spread, spreadOf } from './capture.ts';
import { type Edges, edgesGoing } from './find-edges.ts';

/** What a train of edges has in common, and how far it scatters. */
export interface Pulses {
  readonly rising: number;
  readonly falling: number;
  /** Full periods between like edges, over the time they took; null with less than two like edges. */
  readonly hertz: number | null;
  /** Frequency of the regular teeth: one over the median period. */
  readonly regularHertz: number | null;
  readonly periodSeconds: Spread | null;
  /** Time at the high and at the low level between neighbouring edges. */
  readonly highSeconds: Spread | null;
  readonly lowSeconds: Spread | null;
  /** Share of the time at the high level over whole periods, 0 to 1. */
  readonly duty: number | null;
}

/** Measures `edges`; parts that need more edges than there are come as null. */
export function measurePulses(edges: Edges): Pulses {
  const ups = edgesGoing(edges, 'rising');
  const downs = edgesGoing(edges, 'falling');
  const like = ups.length >= downs.length ? ups : downs;
  const periods = differences(like);
  const high: number[] = [];
  const low: number[] = [];
  for (let k = 1; k < edges.times.length; k += 1) {
    const width = edges.times[k]! - edges.times[k - 1]!;
    (edges.rising[k - 1] === 1 ? high : low).push(width);
  }
  const span = like.length > 1 ? like.at(-1)! - like[0]! : 0;
  return {
    rising: ups.length,
    falling: downs.length,
    hertz: span > 0 ? (like.length - 1) / span : null,
    regularHertz: periods.length > 0 ? 1 / medianOf(periods) : null,
    periodSeconds: spreadOf(periods),
    highSeconds: spreadOf(high),
    lowSeconds: spreadOf(low),
    duty: span > 0 ? highShare(edges, like[0]!, like.at(-1)!) : null,
  };
}

/** `values[k + 1] - values[k]`. */
export function differences(values: Float64Array): Float64Array {
  const result = new Float64Array(Math.max(0, values.length - 1));
  for (let k = 0; k < result.length; k += 1) result[k] = values[k + 1]! - values[k]!;
  return result;
}

function highShare(edges: Edges, from: number, to: number): number {
  let high = 0;
  for (let k = 1; k < edges.times.length; k += 1) {
    const start = edges.times[k - 1]!;
    const end = edges.times[k]!;
    if (edges.rising[k - 1] === 1 && start >= from && end <= to) high += end - start;
  }
  return high / (to - from);
}
