/** A potentiometer turned through its travel: its ends, places where the wiper loses contact, changes of direction. */
import type { Levels } from './find-levels.ts';

/** One place at which contact was lost, in seconds and in the channel's unit. */
export interface DropOut {
  readonly startSeconds: number;
  readonly seconds: number;
  /** Where the track was when contact went, and the furthest value seen meanwhile. */
  readonly from: number;
  readonly to: number;
}

/** The travel as a whole, in the channel's unit. */
export interface Sweep {
  readonly start: number;
  readonly end: number;
  readonly least: number;
  readonly most: number;
  readonly dropOuts: readonly DropOut[];
  /** Instants and values at which the direction changed; one is a travel forth and back. */
  readonly reversals: readonly { readonly seconds: number; readonly value: number }[];
}

/** A jump by more than this share of the span within a sample or two is no movement of a hand or foot. */
const JUMP = 0.06;
/** Jumps also stand out of the noise by so many standard deviations. */
const JUMP_NOISE = 8;
/** A drop-out is over within this share of the capture; what lasts longer is a new position. */
const LONGEST = 0.1;
/** A direction counts as changed after so much of the span. */
const TURN = 0.05;
/** Movement allowed for in paces, and what is kept of the pace from sample to sample. */
const PACE = 1.2;
const PACE_KEPT = 0.99;
/** Weight of a new sample in the trend that jumps are measured against. */
const TREND = 0.25;

/** Measures one channel; `noise` is its standard deviation where nothing moves. */
export function measureSweep(
  samples: Float32Array,
  rateHz: number,
  levels: Levels,
  noise: number,
): Sweep {
  const span = levels.most - levels.least;
  const jump = Math.max(JUMP * span, JUMP_NOISE * noise);
  const dropOuts: DropOut[] = [];
  const turn = new TrendFollower(Math.max(TURN * span, JUMP_NOISE * noise), rateHz);
  const longest = LONGEST * samples.length;
  let trend = samples[0] ?? 0;
  let slope = 0;
  let least = trend;
  let most = trend;
  let outAt = -1;
  /** Fastest movement of late, for each sample: where the wiper can be when contact comes back. */
  let pace = 0;
  let furthest = 0;
  for (let i = 0; i < samples.length; i += 1) {
    const value = samples[i]!;
    const expected = outAt < 0 ? trend + slope : trend;
    // While contact is lost the wiper may go on or turn round, so what it comes back to is less certain.
    const back = jump + PACE * pace * (outAt < 0 ? 1 : 1 + i - outAt);
    if (Math.abs(value - expected) > back) {
      if (outAt < 0) {
        outAt = i;
        furthest = value;
      } else if (Math.abs(value - trend) > Math.abs(furthest - trend)) furthest = value;
      if (i - outAt <= longest) continue;
      // It stays there: not a drop-out but a step.
      outAt = -1;
      slope = 0;
      trend = value;
    } else if (outAt >= 0) {
      dropOuts.push({
        startSeconds: outAt / rateHz,
        seconds: (i - outAt) / rateHz,
        from: trend,
        to: furthest,
      });
      outAt = -1;
      trend = value;
    } else {
      const moved = trend + slope + TREND * (value - trend - slope);
      slope += 0.05 * (moved - trend - slope);
      trend = moved;
      pace = Math.max(Math.abs(slope), pace * PACE_KEPT);
    }
    if (trend < least) least = trend;
    if (trend > most) most = trend;
    turn.add(i, trend);
  }
  if (outAt >= 0)
    dropOuts.push({
      startSeconds: outAt / rateHz,
      seconds: (samples.length - outAt) / rateHz,
      from: trend,
      to: furthest,
    });
  return { start: samples[0] ?? 0, end: trend, least, most, dropOuts, reversals: turn.reversals };
}

/** Follows a trend and notes where it turns by more than `reach`. */
class TrendFollower {
  readonly reversals: { seconds: number; value: number }[] = [];
  private direction = 0;
  private extreme = Number.NaN;
  private extremeAt = 0;
  private readonly reach: number;
  private readonly rateHz: number;

  constructor(reach: number, rateHz: number) {
    this.reach = reach;
    this.rateHz = rateHz;
  }

  add(at: number, value: number): void {
    if (Number.isNaN(this.extreme)) this.extreme = value;
    if (this.direction === 0) {
      if (Math.abs(value - this.extreme) > this.reach)
        this.direction = Math.sign(value - this.extreme);
      else return;
    }
    if ((value - this.extreme) * this.direction >= 0) {
      this.extreme = value;
      this.extremeAt = at;
    } else if ((this.extreme - value) * this.direction > this.reach) {
      this.reversals.push({ seconds: this.extremeAt / this.rateHz, value: this.extreme });
      this.direction = -this.direction;
      this.extreme = value;
      this.extremeAt = at;
    }
  }
}
