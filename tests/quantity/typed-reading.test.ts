/** What an instrument can show and what is usual there, at their ends. */
import { describe, expect, test } from 'vitest';
import type { Unit } from '../../src/quantity/quantity.ts';
import {
  conceivable,
  type ExpectedReading,
  impossible,
  isUsual,
} from '../../src/quantity/typed-reading.ts';

test.each<[number, Unit, boolean]>([
  // the table of what hand-held instruments show: common practice, no source
  [0, 'V', true],
  [1e-5, 'V', true],
  [0.9e-5, 'V', false],
  [2e3, 'V', true],
  [-2e3, 'V', true],
  [2001, 'V', false],
  [1e9, 'rpm', true],
])('%d %s can be shown: %s', (value, unit, can) => {
  expect(conceivable({ value, unit })).toBe(can);
});

test.each<[number, ExpectedReading['usual'], boolean]>([
  // a hundred times beyond either end, either sign
  [0.1, { low: 10, high: 20 }, true],
  [0.09, { low: 10, high: 20 }, false],
  [2000, { low: 10, high: 20 }, true],
  [2001, { low: 10, high: 20 }, false],
  [-2000, { low: -20, high: -10 }, true],
  [-0.09, { low: -20, high: -10 }, false],
  [1e9, undefined, true],
])('%d is usual where %o is: %s', (value, usual, is) => {
  const choice = { quantity: { value, unit: 'V' as const }, resolution: 1, words: '' };
  expect(isUsual(choice, { unit: 'V', ...(usual && { usual }) })).toBe(is);
});

describe('impossible values', () => {
  test.each<[number, Unit, ExpectedReading['limit'], RegExp | null]>([
    [100, '%', undefined, null],
    [100.1, '%', undefined, /between 0 and 100/],
    [-273.15, 'degC', undefined, null],
    [-273.2, 'degC', undefined, /absolute zero/],
    [-300, 'V', undefined, null],
    [60, 'V', { high: 60 }, null],
    [60.1, 'V', { high: 60 }, /more than is possible here$/],
    [-2, 'V', { low: -2 }, null],
    [-3, 'V', { low: -2 }, /less than is possible here$/],
    [-3, 'V', { low: -2, because: 'the leads' }, /less than is possible here: the leads$/],
    [0.000001, 'V', undefined, null], // too small to be shown is no reason to refuse
    [2001, 'V', undefined, /hand-held/],
  ])('%d %s within %o', (value, unit, limit, words) => {
    const found = impossible({ value, unit }, { unit, ...(limit && { limit }) });
    if (words === null) expect(found).toBeNull();
    else expect(found).toMatch(words);
  });
});
