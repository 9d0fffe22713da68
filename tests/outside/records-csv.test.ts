/** CSV against RFC 4180 and what is published about formulas in it. */
import { describe, expect, it } from 'vitest';
import { csvField } from '../../src/records/readings-csv.ts';
import { readCsvStrictly } from '../records/readers/read-csv-strictly.ts';

describe('RFC 4180, section 2', () => {
  it('rule 5 and 6: fields with line breaks, quotes and commas are quoted', () => {
    // The RFC's own example: "aaa","b CRLF bb","ccc"
    expect(csvField('b\r\nbb')).toBe('"b\nbb"'); // one kind of line end inside texts is ours
    expect(csvField('a,b')).toBe('"a,b"');
  });

  it('rule 7: a quote inside a quoted field is doubled', () => {
    // The RFC's own example: "aaa","b""bb","ccc"
    expect(csvField('b"bb')).toBe('"b""bb"');
  });

  it('the reader of these tests takes the examples of the RFC', () => {
    const values = (text: string) =>
      readCsvStrictly(text).map((row) => row.map(({ value }) => value));
    expect(values('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(values('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(values('"aaa","b""bb","ccc"\r\n')).toEqual([['aaa', 'b"bb', 'ccc']]);
    expect(() => values('a"b\r\n')).toThrow();
    expect(() => values('"a\r\n')).toThrow();
    expect(() => values('a\n')).toThrow();
  });
});

describe('formulas (CWE-1236; OWASP ASVS 5.0, 1.2.10 names = + - @ tab and null)', () => {
  it.each([
    ['=1+1', `"'=1+1"`],
    ['+1+1', `"'+1+1"`],
    ['-1+1', `"'-1+1"`],
    ['@SUM(1)', `"'@SUM(1)"`],
    ['\t=1', `"'    '=1"`],
    ['\0=1', `"'␀=1"`],
    [' =1', `"' =1"`],
  ])('%j is guarded', (text, wanted) => {
    expect(csvField(text)).toBe(wanted);
  });

  it.each([
    ['-0.42', '-0.42'],
    ['12', '12'],
    ['-7', '-7'],
  ])('what is nothing but a number stays one: %s', (text, wanted) => {
    expect(csvField(text)).toBe(wanted);
  });

  it.each([
    [-0.3, '-0.3'],
    [1e-9, '1e-9'],
    [1e21, '1e+21'],
    [0, '0'],
    [null, ''],
    [Number.POSITIVE_INFINITY, ''],
  ])('a number %s is written bare', (value, wanted) => {
    expect(csvField(value)).toBe(wanted);
  });
});
