/** The number in front, character by character. Each expected number is read off the text by hand. */
import { describe, expect, test } from 'vitest';
import { scanNumber } from '../../src/quantity/scan-number.ts';

describe('numbers', () => {
  test.each<[string, string, number, string]>([
    // text, digits, power of the last digit, what stands behind
    ['- 5 V', '-5', 0, 'V'],
    ['+5', '5', 0, ''],
    ['.5', '0.5', -1, ''],
    ['4. V', '4', 0, 'V'],
    ['5e2 V', '5e2', 2, 'V'],
    ['5e-3', '5e-3', -3, ''],
    ['1.25E+2', '1.25e2', 0, ''],
    ["12'500", '12500', 0, ''],
    ['12 500.25', '12500.25', -2, ''],
    ['1 234 567,5', '1234567.5', -1, ''],
    ['1.234.567', '1234567', 0, ''],
    ['1,234,567', '1234567', 0, ''],
    ['1,234,567.8', '1234567.8', -1, ''],
    ['1.234.567,8', '1234567.8', -1, ''],
    ['4.7k2', '4.7', -1, 'k2'], // the point is the mark already
    ['1 000k5', '1000', 0, 'k5'],
    ['4R7e3', '4.7', -1, 'e3'],
    ['5eV', '5', 0, 'eV'],
    ['5 grade9', '5', 0, 'grade9'],
    ['-R47', '-0.47', -2, ''],
    ['+R47', '0.47', -2, ''],
  ])('%s', (text, digits, lastPower, rest) => {
    const { unfinished, ...scan } = scanNumber(text) as { unfinished: boolean };
    expect(scan).toMatchObject({ status: 'number', digits, lastPower, rest });
    expect(unfinished).toBe(text.includes('4. '));
  });

  test('the letter in place of the mark is told, and only then', () => {
    const letters = ['4k7', '4R7', 'R47', '4V7', '4\u03bc7', '4.7k'].map((text) =>
      scanNumber(text),
    );
    expect(letters.map((scan) => scan.status === 'number' && scan.letter)).toEqual([
      'k',
      'R',
      'R',
      'V',
      '\u03bc',
      '',
    ]);
  });

  test('a lone comma before three digits is read both ways', () => {
    expect(scanNumber('-1,234e2')).toMatchObject({ digits: '-1.234e2', grouped: '-1234e2' });
    expect(scanNumber('1.234')).not.toHaveProperty('grouped');
    expect(scanNumber('0,234')).not.toHaveProperty('grouped');
    expect(scanNumber('1,23')).not.toHaveProperty('grouped');
  });
});

describe('no number', () => {
  test.each([
    ['', 'open'],
    ['-', 'open'],
    ['.', 'open'],
    ['..', 'none'],
    ['x5', 'none'],
    ['R', 'none'],
    ['abc', 'none'],
    ['1. 5', 'two-numbers'],
    ['2k2 5', 'two-numbers'],
    ['5e3 4', 'two-numbers'],
    ['1 2345', 'two-numbers'],
    ['1234 567', 'two-numbers'],
    ['1 23 456', 'two-numbers'],
    ['1 234 5678 901', 'two-numbers'],
    ['1 2345 678', 'two-numbers'],
    ['1,234.5.6', 'marks'],
    ['1.234,5,6', 'marks'],
    ['12,34.5', 'marks'],
    ['12.34,5', 'marks'],
  ])('"%s" is %s', (text, status) => {
    expect(scanNumber(text)).toEqual({ status });
  });
});
