import { describe, expect, test } from 'vitest';
import {
  generateSweep,
  generateWheels,
  type Turning,
  type WheelSignal,
} from '../../src/waveform/generate.ts';
import { type MeasureOptions, measureChannel } from '../../src/waveform/measure-channel.ts';
import { measureCapture } from '../../src/waveform/measure-phase.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';

const runs = LONG ? 500 : 40;
const HALL: WheelSignal = { teeth: 60, missing: 2, sensor: 'hall', low: 0.2, high: 5 };
const COIL: WheelSignal = { teeth: 60, missing: 2, sensor: 'inductive', low: 2.5, high: 5 };

const measured = (
  wheel: WheelSignal,
  turning: Omit<Turning, 'random'>,
  options?: MeasureOptions,
) => {
  const capture = generateWheels([wheel], { ...turning, random: seededRandom(11) });
  return measureChannel(capture.channels[0]!, capture.rateHz, options);
};

describe('what went into a capture comes out of measuring', () => {
  test('levels, duty, frequency and wheel of a switched signal, over noise, rate, speed and length', () => {
    fc.assert(
      fc.property(
        fc.record({
          teeth: fc.constantFrom(12, 24, 36, 60),
          missing: fc.constantFrom(1, 2, 3),
          rpm: fc.integer({ min: 150, max: 6000 }),
          samplesPerTooth: fc.integer({ min: 16, max: 80 }),
          turns: fc.double({ min: 3.3, max: 9, noNaN: true }),
          duty: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
          noise: fc.double({ min: 0, max: 0.06, noNaN: true }),
          low: fc.double({ min: 0, max: 1, noNaN: true }),
          swing: fc.double({ min: 1, max: 11, noNaN: true }),
          onTooth: fc.constantFrom('low' as const, 'high' as const),
          atDegrees: fc.double({ min: 0, max: 360, noNaN: true }),
          seed: fc.nat(),
        }),
        (it) => {
          const toothHertz = (it.rpm / 60) * it.teeth;
          const rateHz = toothHertz * it.samplesPerTooth;
          const seconds = (60 / it.rpm) * it.turns;
          const high = it.low + it.swing;
          const wheel = { ...it, sensor: 'hall', high, noise: it.noise * it.swing } as const;
          const capture = generateWheels([wheel], {
            rateHz,
            seconds,
            rpm: it.rpm,
            random: seededRandom(it.seed),
          });
          const found = measureChannel(capture.channels[0]!, rateHz);
          expect(found.kind).toBe('switched');
          // Levels: within the bin-width of the histogram and the noise's own shift of its mode.
          const bound = it.swing * (0.01 + 1.2 * it.noise);
          expect(Math.abs(found.levels.low - it.low)).toBeLessThan(bound);
          expect(Math.abs(found.levels.high - high)).toBeLessThan(bound);
          expect(found.wheel).toMatchObject({
            pulses: it.teeth - it.missing,
            pitches: it.teeth,
            missing: it.missing,
            irregular: [],
          });
          // Speed: an edge is placed to a sample at either end of a turn.
          expect(Math.abs(found.wheel!.rpm!.mean / it.rpm - 1)).toBeLessThan(
            2 / (it.teeth * it.samplesPerTooth),
          );
          expect(Math.abs(found.pulses.regularHertz! / toothHertz - 1)).toBeLessThan(
            2 / it.samplesPerTooth,
          );
          // Duty over whole periods between like edges; the generator's, gap included, holds over whole turns.
          const whole = ((it.teeth - it.missing) * it.duty) / it.teeth;
          const share = it.onTooth === 'high' ? whole : 1 - whole;
          expect(Math.abs(found.pulses.duty! - share)).toBeLessThan(
            2 / it.samplesPerTooth + it.missing / it.teeth + 0.03,
          );
        },
      ),
      { numRuns: runs },
    );
  });

  test('speed, height, run-out and polarity of a coil from cranking to speed', () => {
    fc.assert(
      fc.property(
        fc.record({
          teeth: fc.constantFrom(36, 60),
          missing: fc.constantFrom(1, 2),
          rpm: fc.integer({ min: 150, max: 1000 }),
          faster: fc.double({ min: 1, max: 4, noNaN: true }),
          runOut: fc.double({ min: 0, max: 0.3, noNaN: true }),
          noise: fc.double({ min: 0, max: 0.02, noNaN: true }),
          onTooth: fc.constantFrom('low' as const, 'high' as const),
          seed: fc.nat(),
        }),
        ({ faster, ...it }) => {
          const wheel = { ...it, sensor: 'inductive', low: 2.5, high: 4.5 } as const;
          const rpmEnd = it.rpm * faster;
          const rateHz = (rpmEnd / 60) * it.teeth * 24;
          const seconds = (60 / it.rpm) * 5;
          const found = (() => {
            const random = seededRandom(it.seed);
            const capture = generateWheels([wheel], {
              rateHz,
              seconds,
              rpm: it.rpm,
              rpmEnd,
              random,
            });
            return measureChannel(capture.channels[0]!, rateHz);
          })();
          expect(found.kind).toBe('alternating');
          expect(found.wheel).toMatchObject({
            pulses: it.teeth - it.missing,
            pitches: it.teeth,
            missing: it.missing,
          });
          expect(found.coil?.beforeGap).toBe(it.onTooth === 'high' ? 'negative' : 'positive');
          // Peak to peak: 4 V at 1000 rpm; sampled 24 times a tooth a peak is missed by 1 % at most, noise adds.
          const perHertz = 4 / ((1000 / 60) * it.teeth);
          expect(Math.abs(found.coil!.perHertz / perHertz - 1)).toBeLessThan(0.05 + 8 * it.noise);
          expect(Math.abs(found.coil!.runOut - it.runOut)).toBeLessThan(0.03 + it.noise);
          expect(Math.abs(found.middle - 2.5)).toBeLessThan(0.1);
        },
      ),
      { numRuns: runs },
    );
  });

  test('phase of a camshaft in crankshaft degrees', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359, noNaN: true }),
        fc.integer({ min: 300, max: 5000 }),
        fc.integer({ min: 12, max: 60 }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (atDegrees, rpm, samplesPerTooth, noise) => {
          const cam = {
            name: 'cam',
            teeth: 4,
            missing: 1,
            sensor: 'hall',
            low: 0,
            high: 5,
            ratio: 0.5,
            atDegrees,
            noise,
          } as const;
          const rateHz = rpm * samplesPerTooth;
          const random = seededRandom(5);
          const capture = generateWheels([{ ...HALL, noise }, cam], {
            rateHz,
            seconds: (60 / rpm) * 8.3,
            rpm,
            random,
          });
          const { phases } = measureCapture(capture);
          expect(phases).toHaveLength(1);
          const [phase] = phases;
          expect(phase).toMatchObject({
            reference: 0,
            channel: 1,
            cycleDegrees: 720,
          });
          // By hand: the cam's edges stand at 0, 45, 90, 135, 180 and 225 of its degrees; crank is twice that.
          const wanted = [0, 45, 90, 135, 180, 225].map(
            (edge) => ((((edge - atDegrees) * 2) % 720) + 720) % 720,
          );
          const found = phase!.edges.map((edge) => edge.degrees);
          expect(found).toHaveLength(6);
          // Which crankshaft turn came first is not known; two samples of a tooth of 6 degrees.
          const near = (turn: number) =>
            wanted.every((degrees) =>
              found.some(
                (it) =>
                  Math.abs(((it - degrees + turn + 1080) % 720) - 360) < 12 / samplesPerTooth + 0.5,
              ),
            );
          expect(near(0) || near(360)).toBe(true);
        },
      ),
      { numRuns: runs },
    );
  });

  test('ends, drop-outs and reversals of a sweep', () => {
    fc.assert(
      fc.property(
        // Below 250 samples each way a drop-out of eight samples is a part of the movement.
        fc.integer({ min: 500, max: 5000 }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        fc.double({ min: 0.15, max: 0.85, noNaN: true }),
        fc.constantFrom(0, 5),
        fc.double({ min: 0, max: 0.015, noNaN: true }),
        fc.boolean(),
        (rateHz, seconds, at, volts, noise, andBack) => {
          const worn = [{ at, seconds: 8 / rateHz, volts }];
          const random = seededRandom(9);
          const halfVolts = (4 * (4 / rateHz)) / (andBack ? seconds / 2 : seconds);
          const sweep = generateSweep({
            rateHz,
            seconds,
            closedVolts: 0.5,
            openVolts: 4.5,
            dropOuts: worn,
            noise,
            andBack,
            random,
          });
          const found = measureChannel(sweep.channels[0]!, rateHz);
          expect(found.kind).toBe('sweep');
          expect(found.sweep!.dropOuts).toHaveLength(andBack ? 2 : 1);
          expect(found.sweep!.reversals).toHaveLength(andBack ? 1 : 0);
          for (const drop of found.sweep!.dropOuts) {
            // Contact goes at the near end of the worn place, half its width before its middle.
            expect(Math.abs(drop.from - (0.5 + 4 * at))).toBeLessThan(0.15 + halfVolts);
            expect(Math.abs(drop.to - volts)).toBeLessThan(0.1);
          }
          expect(Math.abs(found.sweep!.least - 0.5)).toBeLessThan(0.1);
          expect(Math.abs(found.sweep!.most - 4.5)).toBeLessThan(0.1);
        },
      ),
      { numRuns: runs },
    );
  });
});

describe('kinds of signals', () => {
  const turning = { rateHz: 50_000, seconds: 1, rpm: 800 };
  test.each<[string, WheelSignal, string]>([
    ['a Hall switch', { ...HALL, noise: 0.1 }, 'switched'],
    ['a Hall switch with rounded edges', { ...HALL, edgeSeconds: 1e-4 }, 'switched'],
    ['a coil', { ...COIL, noise: 0.05 }, 'alternating'],
    ['a coil without gap', { ...COIL, missing: 0 }, 'alternating'],
    ['a line with noise', { ...HALL, strength: 0, noise: 0.05 }, 'steady'],
    ['a dead flat line', { ...HALL, strength: 0 }, 'steady'],
    [
      'a current sensor',
      { ...HALL, sensor: 'current', low: 0.007, high: 0.014, noise: 2e-4 },
      'switched',
    ],
  ])('%s', (_, wheel, kind) => {
    expect(measured(wheel, turning).kind).toBe(kind);
  });
  test('what the caller knows is not questioned', () => {
    expect(measured(HALL, turning, { kind: 'sweep' }).kind).toBe('sweep');
  });
  test('a single sample and no sample are steady, not an error', () => {
    for (const samples of [new Float32Array(0), Float32Array.of(5)])
      expect(measureChannel({ name: 'a', unit: 'V', samples }, 1000).kind).toBe('steady');
  });
});

describe('particular measures', () => {
  test('currents through a sense resistor: 7 and 14 mA across 115 ohm', () => {
    const wheel: WheelSignal = { teeth: 48, sensor: 'hall', low: 0.805, high: 1.61, noise: 0.01 };
    const found = measured(
      wheel,
      { rateHz: 20_000, seconds: 1, rpm: 100 },
      { senseOhms: 115, wheel: { teeth: 48, missing: 0 } },
    );
    expect(found.currents!.low).toBeCloseTo(0.007, 4);
    expect(found.currents!.high).toBeCloseTo(0.014, 4);
    expect(found.wheel).toMatchObject({ by: 'told', pulses: 48 });
    expect(found.wheel!.rpm!.mean).toBeCloseTo(100, 1);
  });
  test('a speed that rises fifteenfold does not hide the gap', () => {
    const found = measured(
      { ...HALL, noise: 0.05 },
      { rateHz: 50_000, seconds: 2, rpm: 200, rpmEnd: 3000 },
    );
    expect(found.wheel).toMatchObject({ pulses: 58, pitches: 60, irregular: [] });
    expect(found.wheel!.rpm!.most).toBeGreaterThan(2900);
  });
  test.each([0.2, 0.4, 0.5])(
    'a crankshaft that pulses by %d of its speed while cranking keeps its 60-2',
    (pulsing) => {
      for (const wheel of [
        { ...HALL, noise: 0.1 },
        { ...COIL, noise: 0.01 },
      ]) {
        const turning = { rateHz: 20_000, seconds: 2, rpm: 200, pulsing };
        const found = measured(wheel, turning);
        expect(found.wheel).toMatchObject({ pulses: 58, pitches: 60, missing: 2, irregular: [] });
        expect(found.wheel!.rpm!.mean).toBeCloseTo(200, 1);
      }
    },
  );
  test.each([0.05, 0.1, 0.2])('polarity of a coil in noise of %d of 2 V', (noise) => {
    for (const [onTooth, lobe] of [
      ['high', 'negative'],
      ['low', 'positive'],
    ] as const) {
      const found = measured({ ...COIL, noise, onTooth }, { rateHz: 50_000, seconds: 1, rpm: 800 });
      expect(found.coil?.beforeGap).toBe(lobe);
    }
  });
  test('three gaps of two in one turn are recognised by their spacing', () => {
    const damaged = [17, 18, 20, 21].map((tooth) => ({ tooth, height: 0 }));
    const found = measured(
      { ...HALL, teeth: 36, damaged },
      { rateHz: 50_000, seconds: 1, rpm: 800 },
    );
    expect(found.wheel).toMatchObject({ by: 'spacing', pulses: 30 });
    expect(found.wheel!.rpm!.mean).toBeCloseTo(800, 1);
    expect(found.wheel!.pitches).toBeCloseTo(36, 0);
  });
  test('a lone spike does not become a level', () => {
    const capture = generateWheels([HALL], {
      rateHz: 50_000,
      seconds: 1,
      rpm: 800,
      random: seededRandom(1),
    });
    capture.channels[0]!.samples[1234] = 40;
    expect(measureChannel(capture.channels[0]!, 50_000).levels.high).toBeCloseTo(5, 2);
  });
  test('an even wheel shows no turn unless its teeth are told', () => {
    const even = { ...HALL, missing: 0 };
    const turning = { rateHz: 50_000, seconds: 1, rpm: 800 };
    expect(measured(even, turning).wheel).toBeNull();
    expect(
      measured(even, turning, { wheel: { teeth: 60, missing: 0 } }).wheel?.rpm?.mean,
    ).toBeCloseTo(800, 0);
  });
});
