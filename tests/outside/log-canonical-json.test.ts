/** Canonical JSON against RFC 8785: its appendix, the official test files, and another implementation. */
import canonicalize from 'canonicalize';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/log/canonical-json.ts';
import { sha256 } from '../../src/log/hash.ts';
import fc from '../seeded-check.ts';

describe('numbers of RFC 8785, appendix B', () => {
  // IEEE 754 bits in hex, and the text. Source: RFC 8785 appendix B (all 24 rows that have a text).
  const ROWS: readonly (readonly [string, string])[] = [
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ];
  it.each(ROWS)('%s is written %s', (hex, text) => {
    expect(canonicalJson(Buffer.from(hex, 'hex').readDoubleBE(0))).toBe(text);
  });
  // RFC 8785 section 3.2.2.3: these must be rejected. Bit patterns from appendix B.
  it.each(['7fffffffffffffff', '7ff0000000000000', 'fff0000000000000'])('%s is refused', (hex) => {
    expect(() => canonicalJson(Buffer.from(hex, 'hex').readDoubleBE(0))).toThrow('no JSON number');
  });
});

describe('official test files (cyberphone/json-canonicalization, testdata/, Apache-2.0)', () => {
  // Name, a value equal to the input file's, SHA-256 of the expected output file.
  const FILES: readonly (readonly [string, unknown, string])[] = [
    [
      'arrays',
      [56, { d: true, '10': null, '1': [] }],
      '099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42',
    ],
    [
      'french',
      {
        peach: 'This sorting order',
        péché: 'is wrong according to French',
        pêche: 'but canonicalization MUST',
        sin: 'ignore locale',
      },
      'd99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5',
    ],
    [
      'structures',
      {
        '1': { f: { f: 'hi', F: 5 }, '\n': 56.0 },
        '10': {},
        '': 'empty',
        a: {},
        '111': [{ e: 'yes', E: 'no' }],
        A: {},
      },
      '605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5',
    ],
    [
      'unicode',
      { 'Unnormalized Unicode': 'A\u030a' },
      '0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3',
    ],
    [
      'values',
      {
        numbers: JSON.parse('[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001]'),
        string: '\u20ac$\u000f\u000aA\'\u0042\u0022\u005c\\"/',
        literals: [null, true, false],
      },
      '2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb',
    ],
  ];
  it.each(FILES)('%s', (_name, value, hash) => {
    expect(sha256(canonicalJson(value))).toBe(hash);
  });
  // File "weird": order of the keys by UTF-16 code units, as the expected output has it.
  it('weird: keys in the order of their UTF-16 code units', () => {
    const order = ['\n', '\r', '1', '</script>', '\u0080', 'ö', '€', '😂', '\ufb33'];
    const value = Object.fromEntries([...order].reverse().map((key, i) => [key, i]));
    expect(Object.keys(JSON.parse(canonicalJson(value)))).toEqual([
      '1',
      ...order.filter((k) => k !== '1'),
    ]);
    const text = canonicalJson(value);
    const places = order.map((key) => text.indexOf(`${JSON.stringify(key)}:`));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });
});

describe('second opinion: canonicalize 4.0.0 by the co-author of the RFC', () => {
  it('agrees on 3,000 random values and texts read back unchanged', () => {
    fc.assert(
      fc.property(fc.jsonValue({ stringUnit: 'binary', maxDepth: 4 }), (value) => {
        const ours = canonicalJson(value);
        expect(ours).toBe(canonicalize(value));
        expect(canonicalJson(JSON.parse(ours))).toBe(ours);
      }),
      { numRuns: 3000, seed: 8785 },
    );
  });
  it('agrees on 10,000 random doubles', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(canonicalJson(value)).toBe(canonicalize(value));
      }),
      { numRuns: 10_000, seed: 754 },
    );
  });
});
