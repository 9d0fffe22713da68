/** A capture against a known-good one: what differs in level, duty, pattern and phase, speed set aside. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import type { ChannelMeasures } from './measure-channel.ts';
import type { CaptureMeasures, Phase } from './measure-phase.ts';

/** One thing in which a capture differs from the known-good one, in numbers and words. */
export interface Difference {
  readonly what:
    | 'kind'
    | 'low'
    | 'high'
    | 'height'
    | 'duty'
    | 'pattern'
    | 'polarity'
    | 'phase'
    | 'channels';
  readonly channel: string;
  readonly words: string;
  /** Found and good values, where they are numbers: unit of the channel, share, or degrees. */
  readonly found: number | null;
  readonly good: number | null;
}

/** A level may differ by this share of the good amplitude. Common practice, no source. */
const LEVEL_SHARE = 0.1;
/** Duty may differ by so many points of a hundred. Common practice, no source. */
const DUTY_MOST = 0.03;
/** A tooth may stand so many pitches elsewhere before the pattern differs. */
const PITCH_MOST = 0.3;
/** A chain or belt that jumped a tooth moves a camshaft by ten degrees and more. Common practice, no source. */
export const PHASE_DEGREES_MOST = 5;

/** All differences worth a word; none means alike. Channels are compared in their order. */
export function compareCaptures(found: CaptureMeasures, good: CaptureMeasures): Difference[] {
  const differences: Difference[] = [];
  const pairs = Math.min(found.channels.length, good.channels.length);
  if (found.channels.length !== good.channels.length)
    differences.push({
      what: 'channels',
      channel: '',
      words: `${found.channels.length} channels against ${good.channels.length} in the good capture`,
      found: found.channels.length,
      good: good.channels.length,
    });
  for (let at = 0; at < pairs; at += 1)
    differences.push(...channelDifferences(found.channels[at]!, good.channels[at]!));
  for (const phase of found.phases) {
    const other = good.phases.find(({ channel }) => channel === phase.channel);
    const name = (at: number) => found.channels[at]!.name;
    if (other) differences.push(...phaseDifferences(phase, other, name));
  }
  return differences;
}

function channelDifferences(found: ChannelMeasures, good: ChannelMeasures): Difference[] {
  const channel = found.name;
  if (found.kind !== good.kind) {
    const words = `${channel}: the signal is ${found.kind}, the good one is ${good.kind}`;
    return [{ what: 'kind', channel, words, found: null, good: null }];
  }
  const list: Difference[] = [];
  const add = (what: Difference['what'], words: string, f: number | null, g: number | null) =>
    list.push({ what, channel, words: `${channel}: ${words}`, found: f, good: g });
  const unit: Unit = found.unit;
  const show = (value: number) => formatQuantity({ value, unit });
  if (found.kind === 'switched' || found.kind === 'steady') {
    const most = LEVEL_SHARE * Math.max(good.levels.amplitude, found.levels.amplitude);
    for (const level of ['low', 'high'] as const) {
      const [f, g] = [found.levels[level], good.levels[level]];
      if (Math.abs(f - g) > most)
        add(level, `the ${level} level is ${show(f)} instead of ${show(g)}`, f, g);
    }
  }
  if (found.kind === 'sweep' && found.sweep && good.sweep)
    for (const [what, end] of [
      ['low', 'least'],
      ['high', 'most'],
    ] as const) {
      const [f, g] = [found.sweep[end], good.sweep[end]];
      if (Math.abs(f - g) > (LEVEL_SHARE / 2) * (good.sweep.most - good.sweep.least))
        add(what, `the ${end} voltage of the sweep is ${show(f)} instead of ${show(g)}`, f, g);
    }
  if (found.kind === 'switched' && found.pulses.duty !== null && good.pulses.duty !== null) {
    const [f, g] = [found.pulses.duty, good.pulses.duty];
    if (Math.abs(f - g) > DUTY_MOST)
      add('duty', `high for ${percent(f)} of the time instead of ${percent(g)}`, f, g);
  }
  if (found.gapLevel && good.gapLevel && found.gapLevel !== good.gapLevel)
    add(
      'polarity',
      `${found.gapLevel} while the gap passes instead of ${good.gapLevel}`,
      null,
      null,
    );
  if (found.coil && good.coil) {
    const ratio = found.coil.perHertz / good.coil.perHertz;
    if (Math.abs(ratio - 1) > 2 * LEVEL_SHARE)
      add(
        'height',
        `at the same speed it gives ${percent(ratio)} of the good amplitude`,
        found.coil.perHertz,
        good.coil.perHertz,
      );
    if (found.coil.beforeGap && good.coil.beforeGap && found.coil.beforeGap !== good.coil.beforeGap)
      add('polarity', 'the polarity at the gap is inverted', null, null);
  }
  const pattern = patternDifference(found, good);
  if (pattern !== null)
    add('pattern', pattern, found.wheel?.pulses ?? null, good.wheel?.pulses ?? null);
  return list;
}

function patternDifference(
  { wheel: found }: ChannelMeasures,
  { wheel: good }: ChannelMeasures,
): string | null {
  if (!good) return null;
  if (!found) return `no repeating turn of ${good.pulses} pulses is seen`;
  const name = (wheel: typeof found) =>
    `${wheel.pulses} pulses in ${Number(wheel.pitches.toFixed(1))} pitches`;
  if (found.pulses !== good.pulses) return `${name(found)} a turn instead of ${name(good)}`;
  // Start of the turn aligned; where a spacing has several starts alike, any of them will do.
  for (let shift = 0; shift < (found.by === 'spacing' ? found.pulses : 1); shift += 1)
    if (farthest(found, good, shift) <= PITCH_MOST) return null;
  return `the teeth are at other positions in the turn, by ${farthest(found, good, 0).toFixed(1)} pitches at most`;
}

function farthest(
  found: NonNullable<ChannelMeasures['wheel']>,
  good: NonNullable<ChannelMeasures['wheel']>,
  shift: number,
): number {
  const origin = found.pattern[shift]!;
  let most = Math.abs(found.pitches - good.pitches);
  for (let k = 0; k < good.pulses; k += 1) {
    const at = found.pattern[(k + shift) % found.pulses]! - origin;
    const around = at < 0 ? at + found.pitches : at;
    most = Math.max(most, Math.abs(around - good.pattern[k]!));
  }
  return most;
}

function phaseDifferences(
  found: Phase,
  good: Phase,
  name: (channel: number) => string,
): Difference[] {
  const channel = name(found.channel);
  if (found.edges.length !== good.edges.length || found.cycleDegrees !== good.cycleDegrees) {
    const words = `${channel}: ${found.edges.length} edges in ${found.cycleDegrees} degrees instead of ${good.edges.length} in ${good.cycleDegrees}`;
    return [{ what: 'phase', channel, words, found: null, good: null }];
  }
  const shift = phaseShift(found, good);
  if (shift === null || Math.abs(shift) <= PHASE_DEGREES_MOST) return [];
  const way = shift > 0 ? 'late' : 'early';
  const words = `${channel}: ${Math.abs(shift).toFixed(1)} crankshaft degrees ${way} against ${name(found.reference)}`;
  return [{ what: 'phase', channel, words, found: shift, good: 0 }];
}

/**
 * Mean shift of the edges in degrees, positive when they come later, in the pairing that fits best. Which of the two
 * turns of a cycle came first in the capture is chance, so a whole turn may lie between the captures. Null when no
 * pairing fits.
 */
export function phaseShift(
  found: Pick<Phase, 'cycleDegrees' | 'edges'>,
  good: Pick<Phase, 'cycleDegrees' | 'edges'>,
): number | null {
  const cycle = found.cycleDegrees;
  const count = found.edges.length;
  let best: { shift: number; spread: number } | null = null;
  for (let offset = 0; offset < count; offset += 1) {
    const shifts: number[] = [];
    for (let k = 0; k < count; k += 1) {
      const here = found.edges[(k + offset) % count]!;
      const there = good.edges[k]!;
      if (here.direction !== there.direction) break;
      shifts.push(here.degrees - there.degrees);
    }
    if (shifts.length < count) continue;
    const first = shifts[0]!;
    // Each shift as near to the first as turns allow, then the mean as near to zero as whole crank turns allow.
    const near = shifts.map((shift) => first + nearestAngle(shift - first, cycle));
    const mean = near.reduce((sum, shift) => sum + shift, 0) / count;
    const spread = Math.max(...near) - Math.min(...near);
    const shift = nearestAngle(mean, 360);
    const better =
      best === null ||
      spread < best.spread - SPREAD_SAME ||
      (spread < best.spread + SPREAD_SAME && Math.abs(shift) < Math.abs(best.shift));
    if (better) best = { shift, spread };
  }
  return best === null || best.spread > SPREAD_MOST ? null : best.shift;
}

/** Pairings whose spreads differ by less than this many degrees fit alike. */
const SPREAD_SAME = 1;
/** Edges that are spread wider than this in degrees are no shifted copy of the good ones. */
export const SPREAD_MOST = 20;

/** The same angle nearest to zero. */
export function nearestAngle(degrees: number, cycle: number): number {
  return degrees - cycle * Math.round(degrees / cycle);
}

function percent(share: number): string {
  return formatQuantity({ value: share * 100, unit: '%' });
}
