/** Everything one channel has to tell: what kind of signal it is, its levels, pulses, and the wheel behind them. */
import { type Channel, medianOf, type Spread, spreadOf } from './capture.ts';
import {
  type Edges,
  edgesGoing,
  findCrossings,
  findEdges,
  robustMiddle,
  transitionSeconds,
} from './find-edges.ts';
import { findLevels, type Levels } from './find-levels.ts';
import { findWheel, type Wheel, type WheelExpected } from './find-wheel.ts';
import { type Coil, lobeBeforeGap, measureCoil } from './measure-coil.ts';
import { measurePulses, type Pulses } from './measure-pulses.ts';
import { measureSweep, type Sweep } from './measure-sweep.ts';

export const SIGNAL_KINDS = ['steady', 'switched', 'alternating', 'sweep'] as const;
/** A line that does not move, two levels, a coil's alternating voltage, or a slow analog movement. */
export type SignalKind = (typeof SIGNAL_KINDS)[number];

/** All that was measured of one channel; what its kind does not have is null. */
export interface ChannelMeasures {
  readonly name: string;
  readonly unit: Channel['unit'];
  readonly kind: SignalKind;
  readonly samples: number;
  readonly sampleSeconds: number;
  readonly levels: Levels;
  /** Bias of an alternating signal and deviation of the noise on any signal. */
  readonly middle: number;
  readonly noise: number;
  readonly edges: Edges;
  readonly pulses: Pulses;
  /** 10 to 90 % of the transitions of a switched signal. */
  readonly riseSeconds: Spread | null;
  readonly fallSeconds: Spread | null;
  readonly wheel: Wheel | null;
  /** The edges that the wheel's turns are counted in. */
  readonly wheelEdge: 'rising' | 'falling';
  /** Level of a switched signal while the gap passes, null where no gap is known. */
  readonly gapLevel: 'low' | 'high' | null;
  readonly coil: Coil | null;
  readonly sweep: Sweep | null;
  /** A switched current's two states, in amperes: from an ampere channel, or through `senseOhms`. */
  readonly currents: { readonly low: number; readonly high: number } | null;
}

/** What is known of the signal beforehand. */
export interface MeasureOptions {
  /** What kind of signal this is, when known. */
  readonly kind?: SignalKind;
  readonly wheel?: WheelExpected;
  /** Resistor across which a two-wire current sensor's voltage was captured. */
  readonly senseOhms?: number;
}

/** Swings below these are a meter's own flicker. In volts, amperes, full scale. */
export const LEAST_SWING: Readonly<Record<Channel['unit'], number>> = {
  V: 0.03,
  A: 5e-4,
  '1': 0.003,
};
/** A Gaussian line has both its modes near the middle: its "amplitude" is under so many standard deviations. */
const STEADY_DEVIATIONS = 1.6;
/** Share of samples at one of two levels from which a signal is switched; a sine has 0.54. */
const SWITCHED_SHARE = 0.68;
/** A transition longer than this share of the capture is a movement, not a switch. */
const SLOW_TRANSITION = 0.02;

/** What most kinds of signal do not have. */
const NOTHING_FOUND = {
  riseSeconds: null,
  fallSeconds: null,
  wheel: null,
  gapLevel: null,
  coil: null,
  sweep: null,
} as const;

/** Measures one channel; never fails, parts that are not there are null. */
export function measureChannel(
  channel: Channel,
  rateHz: number,
  options: MeasureOptions = {},
): ChannelMeasures {
  const { samples, unit, name } = channel;
  const levels = findLevels(samples);
  const { middle, noise } = robustMiddle(samples);
  const switched = findEdges(samples, rateHz, levels);
  const timed = (direction: 'rising' | 'falling') =>
    transitionSeconds(samples, rateHz, levels, switched, direction);
  const rise = timed('rising');
  const fall = timed('falling');
  const slowest = Math.max(
    rise.length > 0 ? medianOf(rise) : 0,
    fall.length > 0 ? medianOf(fall) : 0,
  );
  const slow = (slowest * rateHz) / samples.length > SLOW_TRANSITION;
  const kind = options.kind ?? kindOf(samples, unit, levels, slow);
  const sampled = { samples: samples.length, sampleSeconds: 1 / rateHz };
  const base = { name, unit, kind, ...sampled, levels, middle, noise };
  const nothing: Edges = { times: new Float64Array(0), rising: new Uint8Array(0) };
  const still = { ...NOTHING_FOUND, wheelEdge: 'rising', currents: null } as const;
  if (kind === 'steady')
    return { ...base, ...still, edges: nothing, pulses: measurePulses(nothing) };
  if (kind === 'sweep') {
    const sweep = measureSweep(samples, rateHz, levels, noise);
    return { ...base, ...still, edges: nothing, pulses: measurePulses(nothing), sweep };
  }
  if (kind === 'switched') {
    const found = wheelOf(switched, options.wheel);
    const pulses = measurePulses(switched);
    const spreads = { riseSeconds: spreadOf(rise), fallSeconds: spreadOf(fall) };
    const currents = currentsOf(unit, levels, options.senseOhms);
    const gapLevel = gapLevelOf(switched, found.wheel);
    return {
      ...base,
      ...NOTHING_FOUND,
      ...spreads,
      ...found,
      gapLevel,
      edges: switched,
      pulses,
      currents,
    };
  }
  const floor = Math.max(6 * noise, (levels.most - levels.least) * 1e-3);
  const edges = findCrossings(samples, rateHz, middle, floor);
  const beforeGap = lobeBeforeGap(samples, rateHz, middle, edges);
  const wheelEdge = beforeGap === 'positive' ? 'rising' : 'falling';
  const times = edgesGoing(edges, wheelEdge);
  const wheel = findWheel(times, options.wheel);
  const coil = measureCoil(samples, rateHz, times, wheel, beforeGap);
  return {
    ...base,
    ...NOTHING_FOUND,
    edges,
    pulses: measurePulses(edges),
    wheel,
    wheelEdge,
    coil,
    currents: null,
  };
}

function kindOf(
  samples: Float32Array,
  unit: Channel['unit'],
  levels: Levels,
  slow: boolean,
): SignalKind {
  const { amplitude, deviation, most, least, atLevels } = levels;
  if (!(most - least >= LEAST_SWING[unit])) return 'steady';
  const single = amplitude < LEAST_SWING[unit] || amplitude < STEADY_DEVIATIONS * deviation;
  if (atLevels >= SWITCHED_SHARE && !slow && amplitude >= LEAST_SWING[unit]) return 'switched';
  if (isSweep(samples, levels)) return 'sweep';
  return single && !swings(samples, levels)
    ? 'steady'
    : atLevels >= SWITCHED_SHARE
      ? 'switched'
      : 'alternating';
}

const BLOCKS = 200;

/** A sweep seen from afar is a smooth line that covers its range and turns a few times at most. */
function isSweep(samples: Float32Array, levels: Levels): boolean {
  const line = blockMedians(samples);
  const span = levels.most - levels.least;
  const seen = new Set(line.map((value) => Math.floor(((value - levels.least) / span) * 19.999)));
  let steps = 0;
  for (let k = 1; k < line.length; k += 1)
    if (Math.abs(line[k]! - line[k - 1]!) > span / 8) steps += 1;
  // Half of twenty bands covered, and hardly a block jumps.
  return seen.size >= 10 && steps <= BLOCKS / 10;
}

/** Medians over a few samples of each of `BLOCKS` stretches. */
function blockMedians(samples: Float32Array): number[] {
  const line: number[] = [];
  const size = samples.length / BLOCKS;
  for (let block = 0; block < BLOCKS; block += 1) {
    const from = Math.floor(block * size);
    const to = Math.max(from + 1, Math.floor((block + 1) * size));
    const step = Math.max(1, Math.floor((to - from) / 31));
    const picked: number[] = [];
    for (let i = from; i < to && i < samples.length; i += step) picked.push(samples[i]!);
    if (picked.length > 0) line.push(medianOf(picked));
  }
  return line;
}

/** An alternating signal that varies in height has one mode too; unlike noise it is smooth from sample to sample. */
function swings(samples: Float32Array, levels: Levels): boolean {
  let steps = 0;
  const count = Math.min(samples.length, 200_000);
  for (let i = 1; i < count; i += 1) steps += (samples[i]! - samples[i - 1]!) ** 2;
  // White noise: the steps have twice its variance. A sampled wave of ten samples or more a period: under half.
  return steps / Math.max(1, count - 1) < levels.deviation ** 2;
}

function currentsOf(
  unit: Channel['unit'],
  { low, high }: Levels,
  senseOhms: number | undefined,
): ChannelMeasures['currents'] {
  if (unit === 'A') return { low, high };
  return senseOhms === undefined ? null : { low: low / senseOhms, high: high / senseOhms };
}

/** The longer of the two stretches before the edges that begin a turn, by majority. */
function gapLevelOf(edges: Edges, wheel: Wheel | null): ChannelMeasures['gapLevel'] {
  if (wheel?.by !== 'gap') return null;
  let high = 0;
  let turn = 0;
  for (let k = 2; k < edges.times.length && turn < wheel.starts.length; k += 1) {
    if (edges.times[k] !== wheel.starts[turn]) continue;
    turn += 1;
    const last = edges.times[k]! - edges.times[k - 1]!;
    const before = edges.times[k - 1]! - edges.times[k - 2]!;
    const longer = last > before ? k - 1 : k - 2;
    high += edges.rising[longer] === 1 ? 1 : -1;
  }
  return high === 0 ? null : high > 0 ? 'high' : 'low';
}

/** The wheel by the edges in the direction that shows it more regularly. */
function wheelOf(
  edges: Edges,
  expected: WheelExpected | undefined,
): { wheel: Wheel | null; wheelEdge: 'rising' | 'falling' } {
  const up = findWheel(edgesGoing(edges, 'rising'), expected);
  const down = findWheel(edgesGoing(edges, 'falling'), expected);
  const worth = (wheel: Wheel | null) =>
    wheel === null ? -1e9 : (wheel.by === 'spacing' ? -1e6 : 0) - wheel.irregular.length;
  return worth(down) > worth(up)
    ? { wheel: down, wheelEdge: 'falling' }
    : { wheel: up, wheelEdge: 'rising' };
}
