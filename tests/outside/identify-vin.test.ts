/** VIN check digits as published: 49 CFR 565.15(c) and worked examples. */
import { describe, expect, test } from 'vitest';
import { checkVin, vinCheckDigit } from '../../src/identify/check-vin.ts';

describe('published numbers carry the check digit that the rule gives', () => {
  test.each([
    ['1G4AH59H45G118341', '4'], // 49 CFR 565.15, table V
    ['1J9RP1A36A1644345', '6'], // NHTSA, Outline for New Manufacturer Information, p. 18 (yumpu 7275978)
    ['1M8GDM9AXKP042788', 'X'], // worked example of the Wikibooks article on VINs
    ['11111111111111111', '1'], // from memory, recomputed: sum 89
    ['5GZCZ43D13S812715', '1'], // from memory, recomputed: sum 408
  ])('%s', (vin, digit) => {
    expect(vinCheckDigit(vin)).toBe(digit);
    expect(checkVin(vin)).toMatchObject({
      status: 'read',
      check: { agrees: true, expected: digit },
    });
  });
  test('SGZCZ43D13S812715 gives 384, remainder 10, and does not agree', () => {
    // from memory, recomputed
    expect(checkVin('SGZCZ43D13S812715')).toMatchObject({
      check: { expected: 'X', found: '1', agrees: false, binding: false },
    });
  });
});
