/** The part of a known-good capture that shows the same part of a turn as a part of another. */
import type { CaptureMeasures } from './measure-phase.ts';

/** A stretch of a capture, in its own seconds. */
export interface TimeView {
  readonly from: number;
  readonly to: number;
}

/**
 * `view` of `found` carried over to `good`: the starts of a turn are laid over one another and the speed is set aside.
 * Where no turn is known in both, the first edges are laid over one another. Always within the good capture.
 */
export function alignView(view: TimeView, found: CaptureMeasures, good: CaptureMeasures): TimeView {
  const pair = found.channels
    .map((channel, at) => [channel, good.channels[at]] as const)
    .find(
      ([mine, other]) =>
        mine.wheel !== null && other?.wheel && other.wheel.turns > 0 && mine.wheel.turns > 0,
    );
  const mine = pair?.[0].wheel;
  const other = pair?.[1]?.wheel;
  if (mine && other) {
    const scale = meanTurn(other.starts) / meanTurn(mine.starts);
    const anchor = mine.starts.findLast((start) => start <= view.from) ?? mine.starts[0]!;
    const offset = (view.from - anchor) * scale;
    const start = other.starts.find((it) => it + offset >= 0) ?? other.starts[0]!;
    return within(start + offset, (view.to - view.from) * scale, good.seconds);
  }
  const first = (measures: CaptureMeasures) =>
    measures.channels.map((channel) => channel.edges.times[0]).find((time) => time !== undefined) ??
    0;
  return within(view.from + first(good) - first(found), view.to - view.from, good.seconds);
}

function meanTurn(starts: Float64Array): number {
  return (starts.at(-1)! - starts[0]!) / (starts.length - 1);
}

function within(from: number, length: number, seconds: number): TimeView {
  const start = Math.max(0, Math.min(from, seconds - length));
  return { from: start, to: Math.min(seconds, start + length) };
}
