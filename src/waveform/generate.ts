/**
 * Captures made from a description of what is turning: for drills, for the simulated bench, and for tests that
 * ask whether measuring finds again what went in. Randomness comes in as an argument.
 */
import type { Capture, Channel } from './capture.ts';
import { normalRandom } from './seeded-random.ts';

/** A sensor before a toothed wheel: what it gives, and what is wrong with it. */
export interface WheelSignal {
  readonly name?: string;
  /** Pitches around the wheel, counted as if none were missing. */
  readonly teeth: number;
  /** Teeth cut away in one gap at the end of the turn; default 0. */
  readonly missing?: number;
  /** A switched voltage, a coil's alternating voltage, or a switched current. */
  readonly sensor: 'hall' | 'inductive' | 'current';
  /** Volts or amperes of the two states; for a coil `low` is the bias and `high` the peak above it at 1000 rpm. */
  readonly low: number;
  readonly high: number;
  /** State while a tooth is in front of the sensor, default high. For a coil, low means leads exchanged. */
  readonly onTooth?: 'low' | 'high';
  /** Share of a pitch that is tooth, default 0.5. Switched sensors only. */
  readonly duty?: number;
  /** Time of a transition from 0 to 100 %, default none. Switched sensors only. */
  readonly edgeSeconds?: number;
  /** Turns of this wheel for each turn of the crankshaft: 1, or 0.5 for a camshaft. */
  readonly ratio?: number;
  /** Where the wheel stands at the start, in its own degrees. */
  readonly atDegrees?: number;
  /** Standard deviation of noise, in the signal's unit. */
  readonly noise?: number;
  /** Eccentric wheel: the coil's amplitude swings by this fraction once a turn. */
  readonly runOut?: number;
  /** Teeth, counted from the one after the gap, that are broken off or weak (a fraction of full height). */
  readonly damaged?: readonly { readonly tooth: number; readonly height: number }[];
  /** Short false pulses in mid-space after these teeth. Switched sensors only. */
  readonly extra?: readonly number[];
  /** Amplitude of the whole signal against nominal, for a wide air gap. Default 1. */
  readonly strength?: number;
}

/** How fast it all turns, and how densely that is sampled. */
export interface Turning {
  readonly rateHz: number;
  readonly seconds: number;
  /** Crankshaft speed at the start and, changing evenly, at the end. */
  readonly rpm: number;
  readonly rpmEnd?: number;
  /** Compression: the speed swings by this fraction of itself twice a turn of the crankshaft. */
  readonly pulsing?: number;
  readonly random: () => number;
}

/** One channel for each wheel, all turned by the same crankshaft. */
export function generateWheels(wheels: readonly WheelSignal[], turning: Turning): Capture {
  const channels = wheels.map((wheel, at) => wheelChannel(wheel, turning, at));
  return { rateHz: turning.rateHz, startSeconds: 0, channels };
}

/** Half width of a false pulse in pitches. */
const EXTRA_HALF_WIDTH = 0.1;

function wheelChannel(wheel: WheelSignal, turning: Turning, index: number): Channel {
  const { rateHz, seconds, rpm, rpmEnd = rpm, pulsing = 0, random } = turning;
  const { teeth, missing = 0, ratio = 1, noise = 0, runOut = 0, duty = 0.5, strength = 1 } = wheel;
  const samples = new Float32Array(Math.round(rateHz * seconds));
  const heights = new Float64Array(teeth).fill(1, 0, teeth - missing);
  for (const { tooth, height } of wheel.damaged ?? []) heights[tooth - 1] = height;
  const extra = new Set(wheel.extra ?? []);
  const normal = normalRandom(random);
  const upright = wheel.onTooth !== 'low';
  const heightAt = (tooth: number) => heights[((tooth % teeth) + teeth) % teeth]!;
  for (let i = 0; i < samples.length; i += 1) {
    const t = i / rateHz;
    const evenSpeed = rpm + ((rpmEnd - rpm) * t) / seconds;
    const even = ((rpm + evenSpeed) / 2 / 60) * t;
    const beat = 4 * Math.PI * even;
    const crank = even + (pulsing / (4 * Math.PI)) * Math.sin(beat);
    const speed = evenSpeed * (1 + pulsing * Math.cos(beat));
    const turns = crank * ratio + (wheel.atDegrees ?? 0) / 360;
    const position = turns * teeth;
    const tooth = Math.floor(position);
    let value: number;
    if (wheel.sensor === 'inductive') {
      // The tooth stands at the middle of its pitch: positive before, negative behind.
      const wave = Math.sin(2 * Math.PI * (position - tooth)) * heightAt(tooth);
      const swing =
        (1 + runOut * Math.cos(2 * Math.PI * turns)) * ((speed * ratio) / 1000) * strength;
      value = wheel.low + (wheel.high - wheel.low) * wave * swing * (upright ? 1 : -1);
    } else {
      const width = Math.max(1e-12, ((wheel.edgeSeconds ?? 0) * speed * ratio * teeth) / 60);
      let on = 0;
      for (let k = tooth - 1; k <= tooth + 1; k += 1) {
        on += heightAt(k) * pulse(position - k, duty, width);
        if (extra.has((((k % teeth) + teeth) % teeth) + 1)) {
          const from = (1 + duty) / 2 - EXTRA_HALF_WIDTH;
          on += pulse(position - k - from, 2 * EXTRA_HALF_WIDTH, width);
        }
      }
      const share = upright ? on : 1 - on;
      value = wheel.low + (wheel.high - wheel.low) * share * strength;
    }
    samples[i] = noise === 0 ? value : value + noise * normal();
  }
  return {
    name: wheel.name ?? `channel ${index + 1}`,
    unit: wheel.sensor === 'current' ? 'A' : 'V',
    samples,
  };
}

/** A pulse from 0 to `length` whose ramps of `width` are centred on its ends. */
function pulse(x: number, length: number, width: number): number {
  return clamp(0.5 + x / width) - clamp(0.5 + (x - length) / width);
}

function clamp(x: number): number {
  return Math.max(0, Math.min(1, x));
}

/** A potentiometer that is moved through its travel. */
export interface SweepSignal {
  readonly name?: string;
  readonly rateHz: number;
  readonly seconds: number;
  readonly closedVolts: number;
  readonly openVolts: number;
  /** Back to closed in the second half, default true. */
  readonly andBack?: boolean;
  /** Places of the track without contact: share of travel, how long the wiper is on it, and what is seen meanwhile. */
  readonly dropOuts?: readonly {
    readonly at: number;
    readonly seconds: number;
    readonly volts: number;
  }[];
  readonly noise?: number;
  readonly random: () => number;
}

/** A potentiometer turned from closed to open, and back unless told otherwise. */
export function generateSweep(sweep: SweepSignal): Capture {
  const { rateHz, seconds, closedVolts, openVolts, andBack = true, dropOuts = [] } = sweep;
  const samples = new Float32Array(Math.round(rateHz * seconds));
  const normal = normalRandom(sweep.random);
  const way = andBack ? seconds / 2 : seconds;
  for (let i = 0; i < samples.length; i += 1) {
    const t = i / rateHz;
    const travel = t <= way ? t / way : 2 - t / way;
    // A worn place of the track covers the travel that the wiper makes in the stated time.
    const worn = dropOuts.find((place) => Math.abs(travel - place.at) <= place.seconds / way / 2);
    const volts = worn ? worn.volts : closedVolts + (openVolts - closedVolts) * travel;
    samples[i] = volts + (sweep.noise ?? 0) * normal();
  }
  const channel: Channel = { name: sweep.name ?? 'position', unit: 'V', samples };
  return { rateHz, startSeconds: 0, channels: [channel] };
}
