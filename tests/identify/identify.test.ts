import { describe, expect, test } from 'vitest';
import { checkVin, vinCheckDigit } from '../../src/identify/check-vin.ts';
import { describeCode } from '../../src/identify/describe-code.ts';
import { codeSpans, formatCode, readCode } from '../../src/identify/trouble-code.ts';
import fc from '../seeded-check.ts';

const SIGNS = '0123456789ABCDEFGHJKLMNPRSTUVWXYZ';
const anyVin = fc
  .string({ unit: fc.constantFrom(...SIGNS), minLength: 17, maxLength: 17 })
  .map((vin) => vin.slice(0, 8) + vinCheckDigit(vin) + vin.slice(9));

describe('vehicle identification numbers', () => {
  test('case, blanks and dashes do not matter', () => {
    expect(checkVin(' 1zztestsx-aa 000702 ')).toMatchObject({
      status: 'read',
      vin: '1ZZTESTSXAA000702',
    });
  });
  test.each([
    ['1ZZTESTSXAA00070', 'too-short', /this one has 16/],
    ['1ZZTESTSXAA0007022', 'too-long', /this one has 18/],
    ['1ZZTESTSXAAO00702', 'sign-not-used', /"O" at position 12/],
    ['1ZZTESTSXAA00070?', 'sign-not-used', /"\?" at position 17/],
    ['1ZZTESTSX\u202eAA000702', 'sign-not-used', /an invisible character at position 10/],
    ['', 'too-short', /has 0/],
  ])('%s is refused as %s', (typed, code, words) => {
    const check = checkVin(typed);
    expect(check).toMatchObject({ status: 'refused', code });
    expect(check.words).toMatch(words);
  });
  test('a look-alike letter is answered with the digit', () => {
    expect(checkVin('IZZTESTSXAA000702')).toMatchObject({ fix: 'probably 1' });
  });
  test('a wrong check digit is a mistake where the rule binds and only a remark elsewhere', () => {
    const bound = checkVin('1ZZTESTS1AA000702');
    const free = checkVin('ZZZTESTS1AA000702');
    expect(bound.words).toMatch(/probably wrong/);
    expect(free.words).toMatch(/need not be a mistake/);
  });
  test('one confused sign is found again among the near numbers', () => {
    expect(checkVin('SZZTESTS1AA000712')).toMatchObject({
      near: expect.arrayContaining(['5ZZTESTS1AA000712']),
    });
  });
  test('every single wrong digit is noticed outside position 9', () => {
    // Weights and 11 have no common factor except at position 9, so a changed digit always changes the remainder.
    fc.assert(
      fc.property(
        anyVin,
        fc.integer({ min: 0, max: 16 }),
        fc.integer({ min: 1, max: 9 }),
        (vin, at, by) => {
          if (at === 8 || !/\d/.test(vin[at]!)) return;
          const wrong = vin.slice(0, at) + ((Number(vin[at]) + by) % 10) + vin.slice(at + 1);
          expect(checkVin(wrong)).toMatchObject({ check: { agrees: false } });
        },
      ),
    );
  });
});

describe('trouble codes', () => {
  test('runs of codes are told by their ends', () => {
    expect(codeSpans(['P0335', 'P0336', 'P0339', 'P0340', 'P0341'])).toBe(
      'P0335 P0336 P0339-P0341',
    );
    expect(codeSpans(['C0039', 'C003A', 'C003B', 'C0040', 'P0041'])).toBe(
      'C0039-C003B C0040 P0041',
    );
    expect(codeSpans([])).toBe('');
  });

  test('bytes to text and back, for every pair of bytes', () => {
    for (let bytes = 1; bytes <= 0xffff; bytes += 1) {
      const read = readCode(formatCode(bytes));
      if (read.status !== 'read' || read.twoByte !== bytes)
        expect(read).toMatchObject({ twoByte: bytes });
    }
    expect(readCode('P0000').status).toBe('refused');
  });
  test('any spelling and the failure type are read', () => {
    expect(readCode(' p 0335 ')).toMatchObject({ code: 'P0335', failureType: null });
    expect(readCode('P0335-13')).toMatchObject({ code: 'P0335', failureType: 0x13 });
    expect(readCode('0xe103')).toMatchObject({ code: 'U2103' });
  });
  test.each([
    ['P03O5', /zero and one as digits/],
    ['0335', /write P0335/],
    ['P4335', /for example/],
    ['hello', /for example/],
    ['0x0000', /^$/],
  ])('%s is refused with a way out', (typed, fix) => {
    const read = readCode(typed);
    expect(read.status === 'refused' && read.fix).toMatch(fix);
    expect(describeCode(typed)).toBeNull();
  });
  test('each description is a sentence that names its sensor', () => {
    expect(describeCode('P0337')?.words).toBe(
      'crankshaft position sensor A: its signal stays too low',
    );
    expect(describeCode('P1234')?.words).toMatch(/maker's own code/);
    expect(describeCode('P0340-31')).toMatchObject({ sensorRole: 'camshaft', twoByte: 0x0340 });
  });
});
