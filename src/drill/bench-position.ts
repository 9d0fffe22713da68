/**
 * What a scope with two leads on the simulated vehicle would save: the signal of its circuit beside the other one of the
 * engine, which the circuit does not know. Crank and camshaft turn together, and a wheel that has moved stands elsewhere.
 */

import { shiftsTiming } from '../circuit/fault-electrics.ts';
import type { Model } from '../circuit/model.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Capture } from '../waveform/capture.ts';
import { generateWheels, type WheelSignal } from '../waveform/generate.ts';
import { joinCaptures } from '../waveform/join-captures.ts';
import { seededRandom } from '../waveform/seeded-random.ts';
import { BENCH_RPM, type BenchCapture, benchCapture } from './bench-capture.ts';

/** The other signal: a crankshaft's wheel of the usual kind, a camshaft's of three unequal lobes. Common practice, no source. */
const CRANK = { name: 'crankshaft', teeth: 60, missing: 2, ratio: 1 } as const;
const CAM = { name: 'camshaft', teeth: 4, missing: 1, ratio: 0.5 } as const;
/** Where the camshaft's wheel stands when the crankshaft's begins a turn, in its own degrees. Ours. */
const CAM_DEGREES = 20;
/** A chain or belt that jumped a tooth moves a camshaft by ten degrees of the crankshaft and more. Common practice, no source. */
const MOVED_LEAST = 10;
const MOVED_MORE = 14;
const SAMPLES_A_TOOTH = 40;

/** Both channels, the circuit's first; null where its target does not turn with the crankshaft. */
export function benchPosition(model: Model, wanted: BenchCapture): Capture | null {
  const { target } = model.circuit;
  const ratio = target?.turns ?? 0;
  if (ratio !== 1 && ratio !== 0.5) return null;
  const { seed, fault, test } = wanted;
  const random = seededRandom(seed + 2);
  const crankAt = 360 * random();
  const moved = MOVED_LEAST + MOVED_MORE * random();
  const shift = isMoved(model, fault) ? moved : 0;
  const rpm = wanted.rpm ?? BENCH_RPM[test.setup.state];
  const rateLeastHz = (SAMPLES_A_TOOTH * CRANK.teeth * rpm) / 60;
  const camAt = crankAt * CAM.ratio + CAM_DEGREES;
  const ownAt = (ratio === 1 ? crankAt : camAt) - shift * ratio;
  const own = benchCapture(model, { ...wanted, rpm, rateLeastHz, atDegrees: ownAt });
  const { rateHz } = own;
  const other: WheelSignal =
    ratio === 1
      ? { ...CAM, ...LEVELS, atDegrees: camAt }
      : { ...CRANK, ...LEVELS, atDegrees: crankAt };
  const seconds = (own.channels[0]?.samples.length ?? 0) / rateHz;
  const both = joinCaptures(own, generateWheels([other], { rateHz, seconds, rpm, random }));
  if ('problem' in both) throw new Error('drill: both signals are made for one crank');
  return both;
}

/** The same pair of the same engine without its fault. */
export function goodPosition(model: Model, wanted: BenchCapture): Capture | null {
  return benchPosition(model, { ...wanted, fault: HEALTHY });
}

const LEVELS = { sensor: 'hall', low: 0.1, high: 5, onTooth: 'low', noise: 0.02 } as const;

function isMoved({ circuit }: Model, id: string): boolean {
  return shiftsTiming(circuit.faults.find((fault) => fault.id === id) ?? null);
}
