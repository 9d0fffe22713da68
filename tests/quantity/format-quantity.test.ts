/** Signs, prefixes and digits on the screen. Each text is written by hand after the rule it stands for. */
import { describe, expect, test } from 'vitest';
import {
  formatMiddle,
  formatQuantity,
  formatRange,
  formatReadings,
  unitSign,
  withoutNoise,
} from '../../src/quantity/format-quantity.ts';
import type { Unit } from '../../src/quantity/quantity.ts';

const { POSITIVE_INFINITY: UP, NEGATIVE_INFINITY: DOWN } = Number;

test.each<[Unit, string, string]>([
  ['ohm', '\u03a9', 'ohm'],
  ['m2', 'mm\u00b2', 'mm2'],
  ['degC', '\u00b0C', 'degC'],
  ['deg', '\u00b0', 'deg'],
  ['V', 'V', 'V'],
  ['1', '', ''],
])('%s has the sign "%s", and "%s" where only ASCII is', (unit, sign, ascii) => {
  expect([unitSign(unit), unitSign(unit, true)]).toEqual([sign, ascii]);
});

describe('one value', () => {
  test.each<[number, Unit, string, string]>([
    [DOWN, 'V', '-OL', '-OL'],
    [5e-6, 'V', '5 \u00b5V', '5 uV'],
    [20, 'degC', '20 \u00b0C', '20 degC'],
    [12, 'deg', '12\u00b0', '12 deg'],
    [0.5, 'V', '0.5 V', '0.5 V'], // volts and ohms stay plain down to a tenth
    [500, 'V', '500 V', '500 V'], // but kilo begins at one
    [0.3, 'A', '300 mA', '300 mA'],
    [850, 'rpm', '850 rpm', '850 rpm'],
    [45, '%', '45 %', '45 %'],
    [500, 'ohm', '500 \u03a9', '500 ohm'],
    [0, 'F', '0 mF', '0 mF'],
    [-1e-120, 'V', '0 \u00b5V', '0 uV'], // nothing is left of it, not even its sign
  ])('%d %s is %s', (value, unit, text, ascii) => {
    expect(formatQuantity({ value, unit })).toBe(text);
    expect(formatQuantity({ value, unit }, { ascii: true })).toBe(ascii);
  });
});

describe('a range', () => {
  test.each<[number, number, Unit, string]>([
    [DOWN, UP, 'V', 'anything'],
    [UP, UP, 'ohm', 'OL'],
    [4.8812345, 5.12, 'V', '4.88 to 5.12 V'], // no more digits than tell the ends apart
    [1, 1 + 4 * Number.EPSILON, 'V', '1 to 1 V'], // a double keeps 15 digits
  ])('%d to %d %s', (low, high, unit, text) => {
    expect(formatRange(low, high, unit)).toBe(text);
  });
  test.each<[number, number, Unit, string]>([
    [0.3, 1e4, 'ohm', '0.3 \u03a9 to 10 k\u03a9'],
    [10, 1e4, 'ohm', '10 \u03a9 to 10 k\u03a9'],
    [10.01, 1e4, 'ohm', '0.01 to 10 k\u03a9'], // not quite a thousand times
    [-5, 0.002, 'V', '-5 to 0.002 V'], // volts keep one prefix
    [0, 1e4, 'ohm', '0 to 10 k\u03a9'],
  ])('far apart: from %d to %d %s', (low, high, unit, text) => {
    expect(formatRange(low, high, unit)).toBe(text);
  });
  test('in ASCII', () => {
    expect(formatRange(1000, 2000, 'ohm', { ascii: true })).toBe('1 to 2 kohm');
  });
});

test('a reading of less than a millivolt is 0 V', () => {
  expect(formatReadings(-133e-6, 895e-6, 'V')).toBe('0 V');
  expect(formatReadings(0.0002, 0.04, 'V')).toBe('0 to 40 mV');
  expect(formatReadings(4.75, 5.25, 'V')).toBe('4.75 to 5.25 V');
  expect(formatReadings(1e-4, 2e-4, 'ohm')).not.toBe('0 Ω');
  expect(withoutNoise(-8.48e-8, 'V')).toBe(0);
  expect(withoutNoise(-0.03, 'V')).toBe(-0.03);
});

test.each<[number, number, number, Unit, string]>([
  [557e-6, 129e-6, 3.22e-3, 'V', '0.557 mV  (0.129 to 3.22 mV)'],
  [-0.049, -3.76, 3.89, 'V', '-0.049 V  (-3.76 to 3.89 V)'],
  [0, 0, 2.25e-3, 'V', '0 mV  (0 to 2.25 mV)'],
  [5, 5, 5, 'V', '5 V'], // nothing to tell of a range
  [470, 0.3, 1e4, 'ohm', '470 \u03a9  (0.3 \u03a9 to 10 k\u03a9)'], // far apart: each its own
  [470, 100, 1200, 'ohm', '0.47 k\u03a9  (0.1 to 1.2 k\u03a9)'],
  [UP, 1e6, UP, 'ohm', 'OL  (above 1 M\u03a9)'],
  [UP, 1e6, 2e6, 'ohm', 'OL  (1 to 2 M\u03a9)'],
])('%d within %d to %d %s', (value, low, high, unit, text) => {
  expect(formatMiddle({ value, unit }, low, high)).toBe(text);
});
