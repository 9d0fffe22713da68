/** What an ohmmeter shows where nothing should conduct: over-limit, or some megohms of damp and ageing insulation. */
import { expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { ERROR_MODEL, EXACT_MODEL, leakDensity } from '../../src/suspects/error-model.ts';
import { type Fact, logLikelihood } from '../../src/suspects/fact.ts';

const ohms = (value: number): Shown => ({ kind: 'number', value, unit: 'ohm' });
const likelihood = (read: number, shown: number, model = ERROR_MODEL) => {
  const fact: Fact = {
    ...{ test: 0, shown: ohms(read), readings: [0], uncertainty: 0.02 * Math.min(read, 1e9) },
    ...{ slip: model.wrongReading, blind: 1e-9, ways: 2 },
  };
  return Math.exp(logLikelihood(fact, [{ shown: ohms(shown), share: 1 }], model));
};

test('some megohms are no sign that two wires touch', () => {
  // by hand: 0.98 * 0.3 / (51e6 * ln 100), and a slip's fiftieth of 1e-9 on top
  expect(likelihood(51e6, Infinity)).toBeCloseTo(0.98 * (0.3 / (51e6 * Math.log(100))) + 2e-11, 12);
  expect(likelihood(51e6, Infinity)).toBeGreaterThan(10 * likelihood(51e6, 1));
});

test('a few ohms are, and so is what conducts', () => {
  expect(likelihood(0.5, 0.5)).toBeGreaterThan(1e6 * likelihood(0.5, Infinity));
  expect(leakDensity(500e3, ERROR_MODEL)).toBe(0);
});

test('all that may be read comes to certainty', () => {
  // by hand: 7 in 10 over-limit, and 3 in 10 between 1 and 100 megohm, by the trapezium rule in the logarithm
  const steps = 1000;
  const rise = Math.log(100) / steps;
  const sum = Array.from({ length: steps + 1 }, (_, at) => {
    const value = Math.min(1e8, 1e6 * Math.exp(at * rise));
    return leakDensity(value, ERROR_MODEL) * value * rise * (at % steps === 0 ? 0.5 : 1);
  }).reduce((a, b) => a + b, 0);
  expect(sum).toBeCloseTo(0.3, 6);
  expect(leakDensity(Infinity, ERROR_MODEL)).toBeCloseTo(0.7, 12);
});

test('an exact instrument shows over-limit alone', () => {
  expect(likelihood(Infinity, Infinity, EXACT_MODEL)).toBe(1);
  expect(likelihood(51e6, Infinity, EXACT_MODEL)).toBe(0);
});
