/**
 * The wheel behind a train of pulses: where a turn begins, how many pitches it has, which teeth are missing.
 *
 * Each interval is compared with its neighbours, so that a speed that changes along the way does not matter. A wheel
 * with a gap is recognised by the gap; any other wheel whose spacing is not even, a camshaft's for example, by the
 * smallest number of pulses after which the spacing repeats. An even wheel shows no turn; its teeth must be told.
 */
import { medianOf, type Spread, spreadOf } from './capture.ts';
import { differences } from './measure-pulses.ts';
import {
  advancedTurn,
  type Irregular,
  irregularTeeth,
  pitchSwing,
  readTurn,
  usualTurn,
  type WheelTurn,
} from './read-turns.ts';

/** What the vehicle has, if known: `teeth` counts pitches, the missing ones included. */
export interface WheelExpected {
  readonly teeth: number;
  readonly missing: number;
}

/** A wheel as its pulses show it. */
export interface Wheel {
  /** Pulses in one turn, and pitches as if no tooth were missing. */
  readonly pulses: number;
  readonly pitches: number;
  /** Teeth missing in the main gap. */
  readonly missing: number;
  /** How the turn was recognised: by its gap, by a repeating spacing, or because it was told. */
  readonly by: 'gap' | 'spacing' | 'told';
  /** Whole turns seen, and the instants at which each begins: the edge after the gap. */
  readonly turns: number;
  readonly starts: Float64Array;
  /** Pitch numbers of the teeth of the usual turn, from 0. */
  readonly pattern: readonly number[];
  /** Turns of this wheel each minute. */
  readonly rpm: Spread | null;
  /** Teeth that are not where the usual turn has them. */
  readonly irregular: readonly Irregular[];
  /** Swing of the pitch over one turn as a fraction: an eccentric wheel, or a speed that pulses with it. */
  readonly pitchSwing: number;
}

/** An interval beyond so many pitches of its neighbourhood is a gap, below the second it is a false pulse. */
const GAP_FROM = 1.6;
const SHORT_BELOW = 0.65;
/** Intervals on either side that make the neighbourhood. */
const NEIGHBOURS = 4;
/** Relative difference up to which two spacings count as the same. */
const SPACING_SAME = 0.08;
/** Intervals looked at for a repeat: twenty of the longest turns. */
const SPACING_INTERVALS = 4800;
/** Longest turn looked for, in pulses. */
const PULSES_MAX = 240;
const LEAST_PULSES = 6;

/** The wheel that `times` (like edges) shows, or null when there is too little of it or nothing repeats. */
export function findWheel(times: Float64Array, expected?: WheelExpected): Wheel | null {
  if (times.length < LEAST_PULSES) return null;
  const intervals = differences(times);
  const ratios = toNeighbours(intervals);
  const gaps = mainGaps(ratios);
  if (gaps) return byGap(times, ratios, gaps);
  const pulses = repeatingAfter(intervals);
  if (pulses !== null) return bySpacing(times, intervals, pulses);
  if (expected === undefined || expected.missing > 0) return null;
  return told(times, ratios, expected.teeth);
}

/** Each interval over the median of those around it. */
function toNeighbours(intervals: Float64Array): Float64Array {
  const ratios = new Float64Array(intervals.length);
  const window = new Float64Array(2 * NEIGHBOURS + 1);
  for (let k = 0; k < intervals.length; k += 1) {
    const from = Math.max(0, k - NEIGHBOURS);
    const to = Math.min(intervals.length, k + NEIGHBOURS + 1);
    // Sorting by insertion: nine values, and no array made for each.
    for (let i = from; i < to; i += 1) {
      const value = intervals[i]!;
      let at = i - from;
      while (at > 0 && window[at - 1]! > value) {
        window[at] = window[at - 1]!;
        at -= 1;
      }
      window[at] = value;
    }
    ratios[k] = intervals[k]! / window[(to - from - 1) >> 1]!;
  }
  return ratios;
}

/** Interval numbers of the gap of each turn: the longest kind of gap, coming back after a like number of pitches. */
function mainGaps(ratios: Float64Array): number[] | null {
  const long: number[] = [];
  for (let k = 0; k < ratios.length; k += 1) if (ratios[k]! >= GAP_FROM) long.push(k);
  if (long.length < 2) return null;
  const widest = Math.round(medianOfTop(long.map((k) => ratios[k]!)));
  const gaps = long.filter((k) => Math.round(ratios[k]!) >= widest);
  if (gaps.length < 2) return null;
  const between = gaps.slice(1).map((k, at) => pitchesBetween(ratios, gaps[at]! + 1, k + 1));
  const usual = medianOf(between);
  const alike = between.filter((pitches) => Math.abs(pitches - usual) <= 1).length;
  // Less than two thirds alike: these are drop-outs here and there, or the teeth of a camshaft.
  if (usual < LEAST_PULSES || alike * 3 < between.length * 2) return null;
  return withoutFalseGaps(gaps, between, usual);
}

/** Teeth that dropped out side by side look like a gap too; they come too soon after the last one. */
function withoutFalseGaps(gaps: number[], between: readonly number[], usual: number): number[] {
  const first = between.findIndex((pitches) => Math.abs(pitches - usual) <= 1);
  const kept = [gaps[first]!];
  let since = 0;
  for (let at = first; at < between.length; at += 1) {
    since += between[at]!;
    if (since < usual - 1) continue;
    kept.push(gaps[at + 1]!);
    since = 0;
  }
  return kept;
}

/** The usual width of the widest gaps: the median of the upper half, which one odd gap does not move. */
function medianOfTop(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => b - a);
  return medianOf(sorted.slice(0, Math.ceil(sorted.length / 2)));
}

function pitchesBetween(ratios: Float64Array, from: number, to: number): number {
  let pitch = 0;
  for (let k = from; k < to; k += 1) pitch = advancedTurn(pitch, ratios[k]!).pitch;
  return Math.round(pitch);
}

function byGap(times: Float64Array, ratios: Float64Array, gaps: readonly number[]): Wheel {
  const starts = gaps.map((gap) => times[gap + 1]!);
  const turns: WheelTurn[] = [];
  for (let at = 0; at + 1 < gaps.length; at += 1)
    turns.push(readTurn(times, ratios, gaps[at]! + 1, gaps[at + 1]! + 1));
  const pitches = medianOf(turns.map((turn) => turn.pitches));
  const whole = turns.filter((turn) => turn.pitches === pitches);
  const pattern = usualTurn(whole);
  return {
    pulses: pattern.length,
    pitches,
    missing: Math.round(medianOf(gaps.map((gap) => ratios[gap]!))) - 1,
    by: 'gap',
    turns: turns.length,
    starts: Float64Array.from(starts),
    pattern,
    rpm: spreadOf(whole.map((turn) => 60 / (turn.end - turn.start))),
    irregular: turns.flatMap((turn) => irregularTeeth(turn, pattern, pitches)),
    pitchSwing: pitchSwing(turns, pitches),
  };
}

/** The smallest number of pulses after which the spacing repeats, not counting 1; null when even or without repeat. */
function repeatingAfter(intervals: Float64Array): number | null {
  const most = Math.min(PULSES_MAX, Math.floor(intervals.length / 2));
  const logs = intervals.subarray(0, SPACING_INTERVALS).map((seconds) => Math.log(seconds));
  const likeness = (shift: number) => {
    let same = 0;
    for (let k = 0; k + shift + 1 < logs.length; k += 1) {
      // Spacing against the next spacing: the speed cancels.
      const here = logs[k + 1]! - logs[k]!;
      const there = logs[k + shift + 1]! - logs[k + shift]!;
      if (Math.abs(here - there) < SPACING_SAME) same += 1;
    }
    return same / (logs.length - shift - 1);
  };
  if (likeness(1) > 0.9) return null;
  for (let shift = 2; shift <= most; shift += 1) if (likeness(shift) > 0.9) return shift;
  return null;
}

function bySpacing(times: Float64Array, intervals: Float64Array, pulses: number): Wheel {
  // The turn begins behind its longest interval, as it would behind a gap.
  const means = Array.from({ length: pulses }, (_, at) => {
    const same = intervals.filter((_, k) => k % pulses === at);
    return same.reduce((sum, seconds) => sum + seconds, 0) / same.length;
  });
  const shortest = Math.min(...means);
  const longest = means.indexOf(Math.max(...means));
  const first = (longest + 1) % pulses;
  const starts = times.filter((_, k) => k % pulses === first);
  const turnSeconds = differences(starts);
  const turn = means.reduce((sum, seconds) => sum + seconds, 0);
  const pattern: number[] = [];
  let angle = 0;
  for (let k = 0; k < pulses; k += 1) {
    pattern.push(angle);
    angle += means[(first + k) % pulses]! / shortest;
  }
  return {
    pulses,
    pitches: turn / shortest,
    missing: 0,
    by: 'spacing',
    turns: turnSeconds.length,
    starts,
    pattern,
    rpm: spreadOf(turnSeconds.map((seconds) => 60 / seconds)),
    irregular: [],
    pitchSwing: 0,
  };
}

function told(times: Float64Array, ratios: Float64Array, teeth: number): Wheel {
  const starts = times.filter((_, k) => k % teeth === 0);
  const seconds = differences(starts);
  const irregular: Irregular[] = [];
  for (let k = 0; k < ratios.length; k += 1) {
    const kind = ratios[k]! >= GAP_FROM ? 'missing' : ratios[k]! < SHORT_BELOW ? 'extra' : null;
    if (kind === 'extra' && irregular.at(-1)?.pitch === (k - 1) % teeth) continue;
    if (kind) irregular.push({ kind, pitch: k % teeth, seconds: times[k]! });
  }
  const span = times.at(-1)! - times[0]!;
  const rpm =
    spreadOf(seconds.map((turn) => 60 / turn)) ?? evenSpeed(times.length - 1, span, teeth);
  return {
    pulses: teeth,
    pitches: teeth,
    missing: 0,
    by: 'told',
    turns: seconds.length,
    starts,
    pattern: Array.from({ length: teeth }, (_, k) => k),
    rpm,
    irregular,
    pitchSwing: 0,
  };
}

function evenSpeed(periods: number, span: number, teeth: number): Spread {
  const rpm = (60 * periods) / span / teeth;
  return { mean: rpm, least: rpm, most: rpm };
}
