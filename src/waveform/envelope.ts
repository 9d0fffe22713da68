/** A capture reduced to what a small picture needs: plain numbers that fit into an event of a session. */
import type { TimeView } from './align-view.ts';
import type { Capture, Channel } from './capture.ts';

/** Numbers kept of a channel at most. */
export const ENVELOPE_POINTS_MAX = 400;
/** As a scope's screen: three digits would show steps, five are more than any has. */
const DIGITS = 4;

/** One channel, thinned out so that every spike is still seen. */
export interface Envelope {
  readonly name: string;
  readonly unit: Channel['unit'];
  /** Time of the first point and from the first to one interval past the last, in seconds of the capture. */
  readonly from: number;
  readonly seconds: number;
  /** Evenly spaced. Where a stretch had more samples than points, its least and its most in their order. */
  readonly points: readonly number[];
}

/** The part of a channel within `view`. */
export function envelopeOf(channel: Channel, rateHz: number, view: TimeView): Envelope {
  const first = Math.max(0, Math.floor(view.from * rateHz));
  const last = Math.min(channel.samples.length, Math.ceil(view.to * rateHz));
  const samples = channel.samples.subarray(first, last);
  return {
    name: channel.name,
    unit: channel.unit,
    from: first / rateHz,
    seconds: samples.length / rateHz,
    points: pointsOf(samples).map((value) => Number(value.toPrecision(DIGITS))),
  };
}

/** The capture that envelopes of the same stretch draw like. */
export function captureOfEnvelopes(envelopes: readonly Envelope[]): Capture {
  const [first] = envelopes;
  const seconds = first?.seconds ?? 0;
  return {
    rateHz: seconds > 0 ? (first?.points.length ?? 0) / seconds : 1,
    startSeconds: first?.from ?? 0,
    channels: envelopes.map(({ name, unit, points }) => ({
      name,
      unit,
      samples: Float32Array.from(points),
    })),
  };
}

function pointsOf(samples: Float32Array): number[] {
  if (samples.length <= ENVELOPE_POINTS_MAX) return Array.from(samples);
  const stretches = ENVELOPE_POINTS_MAX / 2;
  const points: number[] = [];
  for (let k = 0; k < stretches; k += 1) {
    const start = Math.floor((k * samples.length) / stretches);
    const end = Math.floor(((k + 1) * samples.length) / stretches);
    let least = start;
    let most = start;
    for (let i = start; i < end; i += 1) {
      if (samples[i]! < samples[least]!) least = i;
      if (samples[i]! > samples[most]!) most = i;
    }
    points.push(samples[Math.min(least, most)]!, samples[Math.max(least, most)]!);
  }
  return points;
}
