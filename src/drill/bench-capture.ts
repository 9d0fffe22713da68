/**
 * What a scope on the simulated vehicle would save: the levels come from the circuit's solver, the shape from the
 * wheel or the travel, and what the fault does to it from the same look that the bench answers with. Same circuit,
 * fault, seed and speed, same samples.
 */

import { sensorOf } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import { plainSetup } from '../circuit/plain-setup.ts';
import type { Test } from '../circuit/test.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Capture } from '../waveform/capture.ts';
import { generateSweep, generateWheels } from '../waveform/generate.ts';
import { seededRandom } from '../waveform/seeded-random.ts';

/** The vehicle that the scope is put to, and how it turns meanwhile. */
export interface BenchCapture {
  readonly fault: string;
  readonly seed: number;
  /** A pattern test; its setup says what moves the target. */
  readonly test: Test;
  /** The fault whose car it is where that one is not there now. */
  readonly carOf?: string;
  /** Speed of the crankshaft, or of the target where it does not turn with it; as the vehicle state has it unless given. */
  readonly rpm?: number;
  /** Where the target stands at the start, in its own degrees; drawn unless given. */
  readonly atDegrees?: number;
  /** Samples a second at least, where another signal beside it is faster. */
  readonly rateLeastHz?: number;
}

/** Usual speeds. Common practice, no source. */
export const BENCH_RPM = {
  cranking: 200,
  running: 800,
  driving: 800,
  'key-on': 60,
  'key-off': 60,
} as const;
/** Turns in a capture, and more of them where a turn has few teeth. */
const TURNS_LEAST = 4;
const TEETH_LEAST = 48;
const SAMPLES_A_TOOTH = 40;
/** A wheel whose teeth nobody stated. */
const TEETH = 12;
const SWEEP_SECONDS = 4;
const SWEEP_RATE_HZ = 5000;
/** Noise as a share of the healthy swing, and at least so many volts. Common practice, no source. */
const NOISE_SHARE = 0.004;
const NOISE_VOLTS = 0.001;
/** A real wheel is never quite round. Common practice, no source. */
const RUN_OUT = 0.04;
/** Share of a tooth that is left when it is damaged: a switch does not see it, a coil still does a little. */
const STUMP = { switched: 0, coil: 0.35 };
/** Where on its travel a potentiometer is worn most: little open. Common practice, no source. */
const WORN_AT = 0.3;
const WORN_SECONDS = 0.03;
/** An edge takes this share of a pitch. */
const EDGE_SHARE = 0.02;

/** The capture of one channel at the leads of the test. */
export function benchCapture(model: Model, wanted: BenchCapture): Capture {
  const { fault, seed, test, carOf = fault } = wanted;
  const sample = seed % model.samples;
  const { low, high } = model.levels(fault, test, sample, carOf);
  const healthy = model.levels(HEALTHY, { ...test, setup: plainSetup(test.setup) }, -1);
  const shown = model.shows(fault, test, sample, carOf);
  const uneven = shown.kind === 'look' && shown.look === 'uneven';
  const random = seededRandom(seed + 1);
  const noise = Math.max(NOISE_VOLTS, NOISE_SHARE * (healthy.high - healthy.low));
  const name = nameOf(test);
  if (sensorOf(model.circuit).kind === 'potentiometer')
    return generateSweep({
      name,
      rateHz: SWEEP_RATE_HZ,
      seconds: SWEEP_SECONDS,
      closedVolts: low,
      openVolts: high,
      noise,
      random,
      dropOuts: uneven
        ? [{ at: WORN_AT, seconds: WORN_SECONDS, volts: lostVolts(wanted, model) }]
        : [],
    });
  const rpm = wanted.rpm ?? BENCH_RPM[test.setup.state];
  const { target } = model.circuit;
  const teeth = target?.teeth ?? TEETH;
  const missing = target?.missing ?? 0;
  const ratio = target && target.turns > 0 ? target.turns : 1;
  const pitchSeconds = 60 / (rpm * ratio * teeth);
  const turning = {
    rateHz: Math.max(SAMPLES_A_TOOTH / pitchSeconds, wanted.rateLeastHz ?? 0),
    seconds: Math.max(TURNS_LEAST, Math.ceil(TEETH_LEAST / teeth)) * teeth * pitchSeconds,
    rpm,
    random,
  };
  const isCoil = sensorOf(model.circuit).kind === 'reluctor';
  const height = isCoil ? STUMP.coil : STUMP.switched;
  const damaged = uneven ? damagedTeeth(wanted, teeth - missing, height, random) : [];
  const drawn = 360 * random();
  const atDegrees = wanted.atDegrees ?? drawn;
  const wheel = { name, teeth, missing, ratio, noise, damaged, atDegrees };
  const edgeSeconds = EDGE_SHARE * pitchSeconds;
  if (!isCoil)
    return generateWheels(
      [{ ...wheel, sensor: 'hall', low, high, onTooth: 'low', edgeSeconds }],
      turning,
    );
  const middle = (low + high) / 2;
  const peak = (high - low) / 2;
  // The solver's peak is the one at this speed; the generator states its own at 1000 rpm.
  const strength = 1000 / (rpm * ratio);
  const lobes = { low: middle, high: middle + peak, strength, runOut: RUN_OUT };
  return generateWheels([{ ...wheel, sensor: 'inductive', ...lobes }], turning);
}

function nameOf({ probe }: Test): string {
  return 'plus' in probe ? probe.plus.replace(/\.pin$/, '') : 'signal';
}

/** One broken tooth, or with too wide a gap a few that are missed. */
function damagedTeeth(
  { fault }: BenchCapture,
  count: number,
  height: number,
  random: () => number,
): { readonly tooth: number; readonly height: number }[] {
  const missed = /gap-wide|target\.weak/.test(fault) ? Math.max(1, Math.min(3, count >> 3)) : 1;
  const first = 1 + Math.floor(count * (0.2 + 0.5 * random()));
  return Array.from({ length: missed }, (_, k) => ({ tooth: first + 2 * k, height }));
}

/** What the wire shows while the wiper has no contact: as with a wiper that never has any. */
function lostVolts({ fault, seed, test, carOf = fault }: BenchCapture, model: Model): number {
  const worn = model.circuit.faults.find(({ id }) => id === fault)?.effect;
  const at = worn?.kind === 'part' ? worn.at : null;
  const open = model.circuit.faults.find(
    ({ effect }) => effect.kind === 'part' && effect.mode === 'wiper-open' && effect.at === at,
  );
  return open ? model.levels(open.id, test, seed % model.samples, carOf).low : 0;
}
