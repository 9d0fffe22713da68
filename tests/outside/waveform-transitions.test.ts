/**
 * Waveform measures against exact results: IEEE Std 181 definitions (state levels by histogram, 10-90 % transition,
 * mid-reference instants) applied to shapes with a closed form, and the 60-2 wheel table.
 */
import { erf } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { speedOfWheel } from '../../src/quantity/sums.ts';
import { medianOf } from '../../src/waveform/capture.ts';
import { findEdges, transitionSeconds } from '../../src/waveform/find-edges.ts';
import { findLevels } from '../../src/waveform/find-levels.ts';
import { generateWheels } from '../../src/waveform/generate.ts';
import { measureChannel } from '../../src/waveform/measure-channel.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';

const RATE = 1_000_000;

function shape(seconds: number, value: (t: number) => number): Float32Array {
  return Float32Array.from({ length: Math.round(seconds * RATE) }, (_, i) => value(i / RATE));
}

function riseOf(samples: Float32Array): number {
  const levels = findLevels(samples);
  const edges = findEdges(samples, RATE, levels);
  return medianOf(transitionSeconds(samples, RATE, levels, edges, 'rising'));
}

describe('10 to 90 % transition times', () => {
  test('RC step: tau ln 9 = 2.1972246 tau (ngspice 39 measured 2.197224 ms on 1 kohm and 1 uF)', () => {
    const samples = shape(0.03, (t) => (t < 0.01 ? 0 : 5 * (1 - Math.exp(-(t - 0.01) / 1e-3))));
    // The high level is where the curve ends, a few parts in a thousand below 5 V in its modal bin.
    expect(Math.abs(riseOf(samples) / (1e-3 * Math.log(9)) - 1)).toBeLessThan(0.01);
  });
  test('linear ramp of length T: 0.8 T', () => {
    const samples = shape(0.01, (t) => 0.2 + 4.8 * Math.min(1, Math.max(0, (t - 0.004) / 1e-3)));
    // A level is the mean over three bins of 1/128 of the range, ramp samples among them.
    expect(Math.abs(riseOf(samples) / 0.8e-3 - 1)).toBeLessThan(5e-4);
  });
  test('Gaussian edge: 2.5631031310892 sigma', () => {
    const samples = shape(0.01, (t) => 2.5 * (1 + erf((t - 0.005) / 2e-4 / Math.SQRT2)));
    expect(Math.abs(riseOf(samples) / (2.5631031310892 * 2e-4) - 1)).toBeLessThan(2e-3);
  });
  test('a wave between its peaks: 0.2951672353 / f', () => {
    const samples = shape(0.05, (t) => Math.sin(2 * Math.PI * 100 * t));
    // The histogram puts a sine's levels into its extreme bins, one part in a hundred inside the peaks.
    expect(Math.abs(riseOf(samples) / (0.2951672353 / 100) - 1)).toBeLessThan(0.02);
  });
});

test.each([0.05, 0.3, 0.5, 0.77])(
  'a rectangular pulse of duty %d at any phase: one sample an edge at most',
  (duty) => {
    for (const phase of [0, 0.123, 0.4567]) {
      const samples = shape(0.02, (t) => ((t * 1000 + phase) % 1 < duty ? 5 : 0));
      const found = measureChannel({ name: 'a', unit: 'V', samples }, RATE);
      // 1000 samples a period, two edges
      expect(Math.abs(found.pulses.duty! - duty)).toBeLessThanOrEqual(2 / 1000);
      expect(found.pulses.hertz).toBeCloseTo(1000, 0);
      expect(found.levels).toMatchObject({ low: 0, high: 5 });
    }
  },
);

describe('60-2 wheel: 60/(rpm 60) s a tooth, three of them across the gap, 58 pulses a turn', () => {
  test.each([
    // rpm, tooth us, gap us, regular Hz, average pulses/s, camshaft turn ms (computed from the sums above)
    [600, 1666.667, 5000, 600, 580, 200],
    [800, 1250, 3750, 800, 773.333, 150],
    [3000, 333.333, 1000, 3000, 2900, 40],
  ])(
    'at %d rpm, by the sum and measured from a capture',
    (rpm, toothUs, gapUs, regular, average, camMs) => {
      const sum = speedOfWheel(rpm, { teeth: 60, missing: 2 });
      expect(sum.toothSeconds * 1e6).toBeCloseTo(toothUs, 3);
      expect(sum.gapSeconds * 1e6).toBeCloseTo(gapUs, 3);
      expect(sum.averageHertz).toBeCloseTo(average, 3);
      expect(speedOfWheel(rpm, { teeth: 60, ratio: 0.5 }).turnSeconds * 1e3).toBeCloseTo(camMs, 6);

      const wheel = { teeth: 60, missing: 2, sensor: 'hall', low: 0.2, high: 5 } as const;
      const random = seededRandom(1);
      const seconds = (60 / rpm) * 5.2;
      const capture = generateWheels([wheel], { rateHz: RATE / 2, seconds, rpm, random });
      const found = measureChannel(capture.channels[0]!, capture.rateHz);
      expect(found.wheel).toMatchObject({ pulses: 58, pitches: 60, missing: 2, irregular: [] });
      expect(found.wheel!.rpm!.mean / rpm).toBeCloseTo(1, 4);
      expect(found.pulses.regularHertz! / regular).toBeCloseTo(1, 2);
      expect(found.pulses.periodSeconds!.most * 1e6).toBeGreaterThan(gapUs - 4);
      expect(found.pulses.periodSeconds!.most * 1e6).toBeLessThan(gapUs + 4);
    },
  );
});
