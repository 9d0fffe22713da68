import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseAccuracy } from '../../src/quantity/parse-accuracy.ts';
import { nextSetting, rpmOfTeeth, scopeSettings, speedOfWheel } from '../../src/quantity/sums.ts';

test.each<[string, object | null]>([
  ['0.5 % + 3', { ofReading: 0.005, digits: 3 }],
  ['±(0.5% + 3 digits)', { ofReading: 0.005, digits: 3 }],
  ['0.08 % rdg + 2 dgt', { ofReading: 0.0008, digits: 2 }],
  ['+/- (1,5 % of reading + 10 counts)', { ofReading: 0.015, digits: 10 }],
  ['1 %', { ofReading: 0.01, digits: 0 }],
  ['good', null],
  ['0.5 + 3', null],
  ['', null],
  [`${'1'.repeat(70)} %`, null],
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
