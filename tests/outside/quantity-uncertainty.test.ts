/** Conformity and meter uncertainty against JCGM 106:2012, JCGM 100:2008 and published meter examples. */
import { erf } from 'mathjs';
import { describe, expect, test } from 'vitest';
import {
  chanceWithin,
  meterUncertainty,
  normalCdf,
  rectangularStandard,
} from '../../src/quantity/normal.ts';

const { POSITIVE_INFINITY: UP, NEGATIVE_INFINITY: DOWN } = Number;

describe('JCGM 106:2012', () => {
  test.each([
    // table 1 (clause 7.3), from memory; recomputed with scipy
    [0.8, 0.841621],
    [0.9, 1.281552],
    [0.95, 1.644854],
    [0.99, 2.326348],
    [0.999, 3.090232],
  ])('a chance of %d needs z = %d', (chance, z) => {
    // half a unit of the last printed digit of z, on the steepest of these, changes the chance by 1.4e-7
    expect(Math.abs(normalCdf(z) - chance)).toBeLessThan(1.5e-7);
  });
  test.each<[string, number, number, number, number, number]>([
    // inputs from memory, results computed with scipy
    ['breakdown of a Zener diode, limit -5.40 V', -5.47, 0.05, DOWN, -5.4, 0.9192433407662],
    ['burst pressure, limit 490 kPa', 509.7, 8.6, 490, UP, 0.98901],
    ['kinematic viscosity 12.5 to 16.3 mm2/s', 13.6, 1.8, 12.5, 16.3, 0.66263],
    // inputs seen in a script of the resistor example, result computed with scipy
    ['precision resistor 1499.8 to 1500.2 ohm', 1500, 0.12, 1499.8, 1500.2, 0.904419],
  ])('%s', (_, mean, u, low, high, chance) => {
    expect(Math.abs(chanceWithin(mean, u, low, high) - chance)).toBeLessThan(
      chance === 0.9192433407662 ? 1e-12 : 5e-7,
    );
  });
  test('guarded speed limit: at 106.587 km/h, 2 % of the reading, 100 km/h is passed with chance 0.999', () => {
    // the guide's z of 3.09 is 3.0902 rounded
    expect(chanceWithin(106.587, 0.02 * 106.587, 100, UP)).toBeCloseTo(0.999, 5);
  });
});

test('the normal distribution agrees with a second opinion (error function of mathjs)', () => {
  for (let z = -5; z <= 5; z += 0.01)
    expect(Math.abs(normalCdf(z) - (1 + erf(z / Math.SQRT2)) / 2)).toBeLessThan(2e-13);
});

test('far tails keep their digits', () => {
  // from memory, as printed in tables of the normal distribution: Q(6) 9.8659e-10, Q(8) 6.2210e-16
  expect(normalCdf(-6) / 9.8659e-10).toBeCloseTo(1, 4);
  expect(normalCdf(-8) / 6.221e-16).toBeCloseTo(1, 4);
});

describe('JCGM 100:2008 and published meter specifications', () => {
  test('bounds alone: a / sqrt(3) (clause 4.3.7); 15 uV gives 8.7 uV', () => {
    expect(rectangularStandard(15)).toBeCloseTo(8.66025, 5);
  });
  test.each<
    [
      string,
      { ranges: number[]; counts: number; ofReading: number; digits: number },
      number,
      number,
      number,
    ]
  >([
    // limits seen: gvda-instrument.com, its page "multimeter error"; u computed
    [
      '0.5 % + 3 counts, 2 V range',
      { ranges: [2], counts: 2000, ofReading: 0.005, digits: 3 },
      2,
      0.013,
      7.50555e-3,
    ],
    // limits seen: victorruoshui.com/newsinfo/72611; u computed
    [
      '0.08 % + 2 digits',
      { ranges: [2], counts: 2000, ofReading: 0.0008, digits: 2 },
      2,
      0.0036,
      2.07846e-3,
    ],
    // limit seen: 51a.net/176206441408785004 (5.02 +/- 0.1304 V)
    [
      '2 % + 3 digits of 10 mV',
      { ranges: [20], counts: 2000, ofReading: 0.02, digits: 3 },
      5.02,
      0.1304,
      75.2865e-3,
    ],
    // limit seen: pastebin.com/ucDPkWmf; u computed
    [
      '0.3 % + 2 digits of 1 mV',
      { ranges: [2], counts: 2000, ofReading: 0.003, digits: 2 },
      0.326,
      0.002978,
      1.719349e-3,
    ],
  ])('%s', (_, meter, reading, limit, standard) => {
    const stated = meterUncertainty(meter, reading);
    expect(stated.limit).toBeCloseTo(limit, 9);
    expect(stated.standard).toBeCloseTo(standard, 7);
  });
});
