import { expect, test } from 'vitest';
import { parseAccuracy } from '../../src/quantity/parse-accuracy.ts';
import {
  divider,
  nextSetting,
  parallelOhms,
  rpmOfTeeth,
  scopeSettings,
  speedOfWheel,
} from '../../src/quantity/sums.ts';
import fc from '../seeded-check.ts';

test.each<[string, object | null]>([
  ['0.5 % + 3', { ofReading: 0.005, digits: 3 }],
  ['±(0.5% + 3 digits)', { ofReading: 0.005, digits: 3 }],
  ['0.08 % rdg + 2 dgt', { ofReading: 0.0008, digits: 2 }],
  ['+/- (1,5 % of reading + 10 counts)', { ofReading: 0.015, digits: 10 }],
  ['0.5%+3d', { ofReading: 0.005, digits: 3 }],
  ['±(0.5%rdg+3dgt)', { ofReading: 0.005, digits: 3 }],
  ['1 %', { ofReading: 0.01, digits: 0 }],
  ['good', null],
  ['0.5 % + 3 cd', null],
  ['0.5 + 3', null],
  ['', null],
  [`${'1'.repeat(70)} %`, null],
  ['0.5 % + 1 digit', { ofReading: 0.005, digits: 1 }],
  ['0.5 % + 1 count', { ofReading: 0.005, digits: 1 }],
  ['12.5 %', { ofReading: 0.125, digits: 0 }],
  ['1 %'.padEnd(60), { ofReading: 0.01, digits: 0 }],
  ['1 %'.padEnd(61), null],
  ['x0.5 %', null],
  ['0.5 % + 3x', null],
])('accuracy "%s"', (text, accuracy) => {
  const found = parseAccuracy(text);
  if (accuracy === null || found === null) expect(found).toBe(accuracy);
  else
    expect(found).toEqual({
      ...accuracy,
      ofReading: expect.closeTo((accuracy as { ofReading: number }).ofReading, 12),
    });
});

test('speed to frequency and back', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 9000, noNaN: true }),
      fc.integer({ min: 1, max: 120 }),
      fc.constantFrom(1, 0.5),
      (rpm, teeth, ratio) => {
        const wheel = { teeth, ratio };
        expect(rpmOfTeeth(speedOfWheel(rpm, wheel).toothHertz, wheel) / rpm).toBeCloseTo(1, 12);
      },
    ),
  );
});

test('scope settings are 1, 2 or 5, hold the signal, and the next smaller would not', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -50, max: 0, noNaN: true }),
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      (lowVolts, highVolts) => {
        const found = scopeSettings({ lowVolts, highVolts, hertz: 100 });
        expect(found.voltsPerDivision.toExponential(0)).toMatch(/^[125]e/);
        expect(
          Math.abs(Number(found.voltsPerDivision.toExponential(0)) - found.voltsPerDivision),
        ).toBeLessThan(1e-12);
        const above = found.zero === 'centre' ? found.screenVolts / 2 : found.screenVolts;
        expect(highVolts).toBeLessThanOrEqual(above);
        expect(nextSetting(found.voltsPerDivision)).toBe(found.voltsPerDivision);
      },
    ),
  );
});

test('a divider without and with a meter on its tap', () => {
  // by hand: 12 V over 1 kohm and 2 kohm; a meter of 2 kohm halves the lower resistance
  expect(divider({ supplyVolts: 12, upperOhms: 1000, lowerOhms: 2000, meterOhms: 2000 })).toEqual({
    volts: 8,
    withMeterVolts: 6,
    sourceOhms: expect.closeTo(2000 / 3, 9),
    amps: 0.004,
  });
  const open = divider({ supplyVolts: 5, upperOhms: 2200, lowerOhms: Number.POSITIVE_INFINITY });
  expect(open).toEqual({ volts: 5, withMeterVolts: 5, sourceOhms: 2200, amps: 0 });
});

test.each([
  [3, 6, 2],
  [0, 0, 0],
  [0, 5, 0],
  [Number.POSITIVE_INFINITY, 5, 5],
  [5, Number.POSITIVE_INFINITY, 5],
])('%d ohm beside %d ohm', (a, b, ohms) => {
  expect(parallelOhms(a, b)).toBe(ohms);
});

test('a wheel of 60 pitches with 2 missing at 1000 rpm', () => {
  // by hand: 1000 / 60 turns a second, 1000 pitches a second, 58 of 60 counted, the gap three pitches long
  const speed = speedOfWheel(1000, { teeth: 60, missing: 2 });
  expect(speed.turnHertz).toBeCloseTo(1000 / 60, 9);
  expect(speed.toothHertz).toBeCloseTo(1000, 9);
  expect(speed.averageHertz).toBeCloseTo((1000 * 58) / 60, 9);
  expect(speed.toothSeconds).toBeCloseTo(0.001, 12);
  expect(speed.gapSeconds).toBeCloseTo(0.003, 12);
  expect(speed.turnSeconds).toBeCloseTo(0.06, 12);
});

test.each([
  // by hand, 8 x 10 divisions, four fifths of the height filled, two repeats: reach / 6.4 and 2 / hertz / 10; the trigger half-way
  [0, 5, 1000, 1, 0.0002, 'bottom', 2.5], // 5 / 6.4 = 0.78
  [-5, 5, 1000, 2, 0.0002, 'centre', 0], // 10 / 6.4 = 1.56
  [-1, 8, 1000, 5, 0.0002, 'centre', 3.5], // 16 / 6.4 = 2.5: the farther side decides
  [-0.5, 5, 50, 1, 0.005, 'bottom', 2.3], // a tenth below zero is still one side; 5.5 / 6.4 = 0.86
  [-9, 2, 100, 5, 0.002, 'centre', -3.5], // 18 / 6.4 = 2.8
  [-0.3, 6.3, 100, 2, 0.002, 'bottom', 3], // 6.6 / 6.4 = 1.03
])(
  'a signal of %d to %d V at %d Hz',
  (lowVolts, highVolts, hertz, volts, seconds, zero, triggerVolts) => {
    const found = scopeSettings({ lowVolts, highVolts, hertz });
    expect(found).toEqual({
      voltsPerDivision: volts,
      secondsPerDivision: seconds,
      screenVolts: expect.closeTo(8 * volts, 9),
      screenSeconds: expect.closeTo(10 * seconds, 9),
      zero,
      triggerVolts,
    });
  },
);

test.each([
  [1, 1],
  [1.01, 2],
  [2.5, 5],
  [5.1, 10],
  [1000, 1000],
  [0.002, 0.002],
])('the setting for %d is %d', (least, setting) => {
  expect(nextSetting(least)).toBe(setting);
});
