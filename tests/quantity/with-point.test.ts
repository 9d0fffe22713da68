/** Decimal commas become points; what may be thousands stays as it is. */
import { expect, test } from 'vitest';
import { withPoint } from '../../src/quantity/with-point.ts';

test.each([
  ['4,5 V', '4.5 V'],
  ['2,2 kohm +/- 0,5 %', '2.2 kohm +/- 0.5 %'],
  ['0,1234 A', '0.1234 A'],
  ['1,000 ohm', null],
  ['12,000 ohm', null],
  ['one of: 5 V, 8 V', null],
  ['5 V', null],
])('%s', (text, pointed) => {
  expect(withPoint(text)).toBe(pointed);
});
