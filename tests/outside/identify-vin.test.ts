/** VIN check digits: 49 CFR 565.15(c), its sample and its rule, which was worked by hand on the other numbers. */
import { describe, expect, test } from 'vitest';
import { checkVin, vinCheckDigit } from '../../src/identify/check-vin.ts';

describe('numbers carry the check digit that the rule gives', () => {
  test.each([
    ['1G4AH59H45G118341', '4'], // 49 CFR 565.15, table V: sum 411 = 37 x 11 + 4
    ['1J9RP1A36A1644345', '6'], // printed by the authority: NHTSA, Outline for New Manufacturer Information, p. 18
    ['11111111111111111', '1'], // the weights of table IV alone: 89 = 8 x 11 + 1
    ['00000001X00000000', 'X'], // the weight of position 8 alone: remainder 10
    ['1ZZTESTSXAA000702', 'X'], // made up: 241 = 21 x 11 + 10
  ])('%s', (vin, digit) => {
    expect(vinCheckDigit(vin)).toBe(digit);
    expect(checkVin(vin)).toMatchObject({
      status: 'read',
      check: { agrees: true, expected: digit },
    });
  });
  test('SZZTESTS1AA000712 gives 252 = 22 x 11 + 10 and does not agree; with 5 for S it would: 276 = 25 x 11 + 1', () => {
    expect(checkVin('SZZTESTS1AA000712')).toMatchObject({
      check: { expected: 'X', found: '1', agrees: false, binding: false },
    });
    expect(vinCheckDigit('5ZZTESTS1AA000712')).toBe('1');
  });
});
