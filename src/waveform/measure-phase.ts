/** Where the edges of one signal stand in the turn of another, in degrees. */
import { type Capture, captureSeconds } from './capture.ts';
import { edgesGoing } from './find-edges.ts';
import type { Wheel } from './find-wheel.ts';
import { type ChannelMeasures, type MeasureOptions, measureChannel } from './measure-channel.ts';

/** One edge of the usual turn, wherever it was seen. */
export interface PhaseEdge {
  /** Crankshaft degrees after the reference, 0 to 720 where two turns make a cycle, else 0 to 360. */
  readonly degrees: number;
  readonly direction: 'rising' | 'falling';
  /** Half of the scatter between its appearances. */
  readonly plusMinus: number;
  readonly seen: number;
}

/** The edges of one channel in the turn of another. */
export interface Phase {
  /** Numbers of the two channels in the capture, from 0. */
  readonly reference: number;
  readonly channel: number;
  /** Degrees of one cycle: 720 for a camshaft seen from the crankshaft, 360 otherwise. */
  readonly cycleDegrees: 360 | 720;
  readonly edges: readonly PhaseEdge[];
}

/** A whole capture, channel by channel and beside one another. */
export interface CaptureMeasures {
  readonly rateHz: number;
  readonly seconds: number;
  readonly channels: readonly ChannelMeasures[];
  /** Of every other switched or alternating channel against the first that shows turns. */
  readonly phases: readonly Phase[];
}

/** Measures each channel, `options` by channel number, and the pairs. */
export function measureCapture(
  capture: Capture,
  options: readonly (MeasureOptions | undefined)[] = [],
): CaptureMeasures {
  const channels = capture.channels.map((channel, at) =>
    measureChannel(channel, capture.rateHz, options[at] ?? options[0] ?? {}),
  );
  const turning = referenceOf(channels);
  const reference = turning ? channels.indexOf(turning) : -1;
  const phases = channels.flatMap((measured, channel): Phase[] => {
    const found = turning && channel !== reference ? measurePhase(turning, measured) : null;
    return found ? [{ reference, channel, ...found }] : [];
  });
  return { rateHz: capture.rateHz, seconds: captureSeconds(capture), channels, phases };
}

/** The channel whose turns are the crankshaft's: one with a gap, the one with most pulses in a turn. */
function referenceOf(channels: readonly ChannelMeasures[]): ChannelMeasures | null {
  const turning = channels.filter((channel) => channel.wheel !== null && channel.wheel.turns >= 2);
  const gapped = turning.filter((channel) => channel.wheel!.by === 'gap');
  const from = gapped.length > 0 ? gapped : turning;
  return from.reduce<ChannelMeasures | null>(
    (best, channel) =>
      best === null || channel.wheel!.pulses > best.wheel!.pulses ? channel : best,
    null,
  );
}

/** Edges closer than so many degrees in different cycles are the same edge. */
const SAME_EDGE_DEGREES = 6;
/** An edge counts when it is there in this share of the cycles. */
const USUAL_SHARE = 0.6;
/** Channels with more pulses than this in a turn have no phase one could name. */
const PULSES_MOST = 24;

/** Phase of `channel` in the turns of `reference`, or null when too little repeats. */
function measurePhase(
  reference: ChannelMeasures,
  channel: ChannelMeasures,
): Omit<Phase, 'reference' | 'channel'> | null {
  const wheel = reference.wheel;
  if (!wheel || wheel.turns < 2) return null;
  const times = edgesGoing(reference.edges, reference.wheelEdge);
  const turnAt = angleClock(times, wheel);
  const falls = edgesGoing(channel.edges, 'falling');
  const rises = edgesGoing(channel.edges, 'rising');
  if (rises.length + falls.length === 0) return null;
  const perTurn = (rises.length + falls.length) / 2 / wheel.turns;
  if (perTurn > PULSES_MOST) return null;
  // Even and odd turns alike: the channel repeats every turn; otherwise every second one.
  for (const cycle of [360, 720] as const) {
    const cycles = Math.floor((wheel.turns * 360) / cycle);
    if (cycles < 1) return null;
    const edges = [
      ...cluster(rises, turnAt, cycle, cycles, 'rising'),
      ...cluster(falls, turnAt, cycle, cycles, 'falling'),
    ];
    const seen = edges.reduce((sum, edge) => sum + edge.seen, 0);
    const within = [...rises, ...falls].filter((time) => turnAt(time) !== null).length;
    if (edges.length === 0 || seen < 0.8 * within) continue;
    edges.sort((a, b) => a.degrees - b.degrees);
    return { cycleDegrees: cycle, edges };
  }
  return null;
}

/** Turns of the wheel since its first start at an instant, by the teeth around it; null outside the turns seen. */
function angleClock(times: Float64Array, wheel: Wheel): (seconds: number) => number | null {
  const knots: number[] = [];
  const turns: number[] = [];
  for (let turn = 0; turn + 1 < wheel.starts.length; turn += 1) {
    const start = wheel.starts[turn]!;
    const end = wheel.starts[turn + 1]!;
    const from = lowerBound(times, start - 1e-12);
    const to = lowerBound(times, end - 1e-12);
    const regular = to - from === wheel.pattern.length;
    for (let k = from; k < to; k += 1) {
      knots.push(times[k]!);
      // Known teeth carry their own angle; in a damaged turn only its start does.
      turns.push(
        turn +
          (regular
            ? wheel.pattern[k - from]! / wheel.pitches
            : (times[k]! - start) / (end - start)),
      );
    }
  }
  knots.push(wheel.starts.at(-1)!);
  turns.push(wheel.starts.length - 1);
  const sorted = Float64Array.from(knots);
  return (seconds) => {
    const after = lowerBound(sorted, seconds);
    if (after === 0 || after >= sorted.length)
      return after === 0 && seconds === sorted[0] ? 0 : null;
    const from = sorted[after - 1]!;
    const share = (seconds - from) / (sorted[after]! - from);
    return turns[after - 1]! + share * (turns[after]! - turns[after - 1]!);
  };
}

/** Number of `values` (rising) below `limit`. */
function lowerBound(values: Float64Array, limit: number): number {
  let low = 0;
  let high = values.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[middle]! < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

function cluster(
  times: Float64Array,
  turnAt: (seconds: number) => number | null,
  cycle: number,
  cycles: number,
  direction: PhaseEdge['direction'],
): PhaseEdge[] {
  const angles: number[] = [];
  for (const time of times) {
    const turns = turnAt(time);
    if (turns !== null) angles.push((turns * 360) % cycle);
  }
  angles.sort((a, b) => a - b);
  const groups: number[][] = [];
  for (const angle of angles) {
    const group = groups.at(-1);
    if (group && angle - group.at(-1)! < SAME_EDGE_DEGREES) group.push(angle);
    else groups.push([angle]);
  }
  // An edge at the reference itself falls on either side of zero.
  const first = groups[0];
  const last = groups.at(-1);
  if (first && last && first !== last && first[0]! + cycle - last.at(-1)! < SAME_EDGE_DEGREES) {
    groups.pop();
    groups[0] = [...last.map((angle) => angle - cycle), ...first];
  }
  return groups
    .filter((group) => group.length >= USUAL_SHARE * cycles)
    .map((group) => {
      const mean = group.reduce((sum, angle) => sum + angle, 0) / group.length;
      const plusMinus = (Math.max(...group) - Math.min(...group)) / 2;
      return { degrees: (mean + cycle) % cycle, direction, plusMinus, seen: group.length };
    });
}
