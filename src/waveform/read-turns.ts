/** Turns of a wheel with a gap: where each tooth stands, the usual turn, and what differs from it. */

/** A tooth of one turn that the usual turn has not, or the other way round. */
export interface Irregular {
  readonly kind: 'missing' | 'extra';
  /** Pitches after the gap (or after the first edge where there is none), from 0. */
  readonly pitch: number;
  readonly seconds: number;
}

/** An interval below so many pitches of its neighbourhood is cut short by a false pulse. */
const SHORT_BELOW = 0.7;
/** Pitches from a whole number: up to the first a tooth is on it, from the second it stands between two. */
const ANCHOR = 0.25;
const BETWEEN = 0.25;
/** The teeth between two gaps: where each stands in pitches, exactly and to the nearest whole one. */
export interface WheelTurn {
  readonly start: number;
  readonly end: number;
  readonly times: Float64Array;
  readonly exact: readonly number[];
  readonly near: readonly number[];
  readonly pitches: number;
}

/**
 * From one tooth to the next: where it stands, and the pitch to count on from. From a tooth that is on a whole pitch an
 * interval of about one or more counts as whole pitches, so that neither small errors nor a speed that pulses add up
 * around the turn; shorter ones are false pulses and count as they are.
 */
export function advancedTurn(pitch: number, ratio: number): { exact: number; pitch: number } {
  const on = Number.isInteger(pitch);
  if (on && ratio >= SHORT_BELOW) {
    const whole = pitch + Math.max(1, Math.round(ratio));
    return { exact: whole, pitch: whole };
  }
  const exact = pitch + ratio;
  const whole = Math.round(exact);
  return { exact, pitch: Math.abs(exact - whole) < ANCHOR ? whole : exact };
}

/** The turn whose first edge is number `from` and whose gap ends at edge `to`. */
export function readTurn(
  times: Float64Array,
  ratios: Float64Array,
  from: number,
  to: number,
): WheelTurn {
  const exact = [0];
  const near = [0];
  let pitch = 0;
  for (let k = from; k < to - 1; k += 1) {
    const { exact: place, pitch: next } = advancedTurn(pitch, ratios[k]!);
    exact.push(place);
    near.push(Math.round(place));
    pitch = next;
  }
  const pitches = Math.round(advancedTurn(pitch, ratios[to - 1]!).pitch);
  return {
    start: times[from]!,
    end: times[to]!,
    times: times.slice(from, to),
    exact,
    near,
    pitches,
  };
}

/** The pitches at which most turns have a tooth. */
export function usualTurn(turns: readonly WheelTurn[]): number[] {
  const votes = new Map<number, number>();
  for (const { near } of turns)
    for (const pitch of new Set(near)) votes.set(pitch, (votes.get(pitch) ?? 0) + 1);
  return [...votes]
    .filter(([, count]) => count * 2 > turns.length)
    .map(([pitch]) => pitch)
    .sort((a, b) => a - b);
}

/** Teeth of one turn that the usual turn has not, and the other way round. A gap that was not seen joins two turns. */
export function irregularTeeth(
  turn: WheelTurn,
  pattern: readonly number[],
  pitches: number,
): Irregular[] {
  const joined = Math.max(1, Math.round(turn.pitches / pitches));
  const found: Irregular[] = [];
  const secondsAt = (pitch: number) =>
    turn.start + ((turn.end - turn.start) * pitch) / (joined * pitches);
  const wanted = new Set<number>();
  for (let round = 0; round < joined; round += 1)
    for (const pitch of pattern) wanted.add(pitch + round * pitches);
  const seen = new Set<number>();
  for (const [k, pitch] of turn.near.entries()) {
    const off = Math.abs(turn.exact[k]! - pitch) > BETWEEN;
    if (off || seen.has(pitch) || !wanted.has(pitch))
      found.push({ kind: 'extra', pitch: pitch % pitches, seconds: turn.times[k]! });
    else seen.add(pitch);
  }
  for (const pitch of wanted)
    if (!seen.has(pitch))
      found.push({ kind: 'missing', pitch: pitch % pitches, seconds: secondsAt(pitch) });
  return found;
}

/** Amplitude of the once-a-turn part of the tooth intervals, over the mean interval; a steady change of speed is taken out. */
export function pitchSwing(turns: readonly WheelTurn[], pitches: number): number {
  let cosine = 0;
  let sine = 0;
  let count = 0;
  for (let at = 1; at + 1 < turns.length; at += 1) {
    const turn = turns[at]!;
    const seconds = (it: WheelTurn) => it.end - it.start;
    if ([turns[at - 1]!, turn, turns[at + 1]!].some((it) => it.pitches !== pitches)) continue;
    const drift = (seconds(turns[at + 1]!) - seconds(turns[at - 1]!)) / 2 / seconds(turn);
    for (let k = 1; k < turn.near.length; k += 1) {
      if (turn.near[k]! - turn.near[k - 1]! !== 1) continue;
      const share = (turn.near[k]! - 0.5) / pitches;
      const interval = ((turn.times[k]! - turn.times[k - 1]!) * pitches) / seconds(turn);
      const away = interval - 1 - drift * (share - 0.5);
      cosine += away * Math.cos(2 * Math.PI * share);
      sine += away * Math.sin(2 * Math.PI * share);
      count += 1;
    }
  }
  return count === 0 ? 0 : (2 * Math.hypot(cosine, sine)) / count;
}
