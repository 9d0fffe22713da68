/** A reading in a record reads as it was typed. */
import { expect, test } from 'vitest';
import { formatTyped } from '../../src/quantity/format-quantity.ts';

test.each([
  ['5.0', 5, 'V', '5.0 V'],
  ['0.1 mV', 0.0001, 'V', '0.1 mV'],
  ['0.0 mV', 0, 'V', '0.0 mV'],
  ['4,97', 4.97, 'V', '4.97 V'],
  ['+11.90 v', 11.9, 'V', '11.90 V'],
  ['-0.42', -0.42, 'V', '-0.42 V'],
  ['12.680 V', 12.68, 'V', '12.680 V'],
  ['2.20k', 2200, 'ohm', '2.20 kΩ'],
  ['80', 80, '%', '80 %'],
  ['7.00 mA', 0.007, 'A', '7.00 mA'],
  // written in another way, or not the value that stands: by the value
  ['OL', Number.POSITIVE_INFINITY, 'ohm', 'OL'],
  ['2k2', 2200, 'ohm', '2.2 kΩ'],
  ['about 5', 5, 'V', '5 V'],
  ['4.9', 4.97, 'V', '4.97 V'],
  ['4.973947464622507 V', 4.973947464622507, 'V', '4.97395 V'],
] as const)('%s of %d %s is %s', (typed, value, unit, words) => {
  expect(formatTyped({ value, unit }, typed)).toBe(words);
});
