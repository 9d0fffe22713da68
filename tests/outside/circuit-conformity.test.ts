/** Judgement of readings against cases of conformity assessment (JCGM 106) and of a meter's specification. */
import { describe, expect, test } from 'vitest';
import { judgeReading } from '../../src/circuit/judge.ts';
import type { Meter } from '../../src/circuit/test.ts';

/** A meter whose limit at a reading is exactly `limit`, so that its standard uncertainty is limit / sqrt 3 (GUM 4.3.7). */
function meterOf(limit: number, counts = 1e9): Meter {
  const rule = { ranges: [1000], counts, ofReading: 0, digits: (limit * counts) / 1000 };
  return { name: 'test', inputOhms: 1e7, volts: rule, ohms: rule };
}
const withStandard = (standard: number) => meterOf(standard * Math.sqrt(3));

describe('chance to conform', () => {
  test.each([
    // case, reading, standard uncertainty, low, high, chance, source
    [
      'Zener diode, -5.47 V, upper limit -5.40 V',
      -5.47,
      0.05,
      Number.NEGATIVE_INFINITY,
      -5.4,
      0.919243,
    ],
    ['burst pressure 509.7, lower limit 490', 509.7, 8.6, 490, Number.POSITIVE_INFINITY, 0.98901],
  ])(
    '%s (JCGM 106 examples, from memory; chance computed with scipy)',
    (_name, value, standard, low, high, chance) => {
      const judged = judgeReading(value, 'V', { low, high }, withStandard(standard));
      expect(judged.chance).toBeCloseTo(chance, 5);
    },
  );
});

describe('a meter of 0.5 % + 3 counts, 2 V range of 1 mV (1.987 to 2.013 V by the page "multimeter error" of gvda-instrument.com; u computed 7.50555 mV)', () => {
  const meter: Meter = {
    name: 'test',
    inputOhms: 1e7,
    volts: { ranges: [2], counts: 2000, ofReading: 0.005, digits: 3 },
    ohms: { ranges: [2e3], counts: 2000, ofReading: 0.01, digits: 3 },
  };

  test('2.000 V against a limit one standard uncertainty above conforms with 84.13 %', () => {
    const judged = judgeReading(2, 'V', { low: 0, high: 2 + 0.00750555 }, meter);
    // Phi(1) = 0.8413447
    expect(judged.chance).toBeCloseTo(0.841345, 5);
    expect(judged.verdict).toBe('borderline');
  });

  test('two uncertainties inside is good, two outside is not', () => {
    expect(judgeReading(1.985, 'V', { low: 0, high: 2 }, meter).verdict).toBe('good');
    expect(judgeReading(1.985, 'V', { low: 0, high: 1.97 }, meter).verdict).toBe('high');
    expect(judgeReading(1.985, 'V', { low: 2, high: 3 }, meter).verdict).toBe('low');
  });
});
