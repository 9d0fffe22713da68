import { describe, expect, test } from 'vitest';
import { formatQuantity, formatRange } from '../../src/quantity/format-quantity.ts';
import { chanceWithin, meterUncertainty } from '../../src/quantity/normal.ts';
import { parseQuantity, parseToleranced } from '../../src/quantity/parse-quantity.ts';
import type { Unit } from '../../src/quantity/quantity.ts';
import {
  areaForDropM2,
  awgAreaM2,
  awgOfArea,
  cableMm2For,
  copperOhms,
} from '../../src/quantity/wire.ts';
import fc from '../seeded-check.ts';

describe('quantities in files', () => {
  test.each<[string, number, Unit]>([
    ['4.75 V', 4.75, 'V'],
    ['0.5 mm2', 5e-7, 'm2'],
    ['2.2 kohm', 2200, 'ohm'],
    ['2.2 kΩ', 2200, 'ohm'],
    ['30 mA', 0.03, 'A'],
    ['800 rpm', 800, 'rpm'],
    ['3 m', 3, 'm'],
    ['-40 degC', -40, 'degC'],
    ['45 %', 45, '%'],
    ['5', 5, '1'],
    ['OL', Number.POSITIVE_INFINITY, 'ohm'],
    ['5 V'.padEnd(100), 5, 'V'],
    ['0 AWG', awgAreaM2(0), 'm2'],
    ['40 AWG', awgAreaM2(40), 'm2'],
  ])('%s', (text, value, unit) => {
    expect(parseQuantity(text)).toEqual({ value, unit });
  });
  test.each([
    '',
    'V',
    '5 v',
    '5 Kohm',
    '5,0 V',
    '5 V V',
    '5 mV2',
    '--5 V',
    '1e999x',
    '5 QV',
    'x'.repeat(200),
    '5 V'.padEnd(101),
    '-1 AWG',
    '41 AWG',
    '1.5 AWG',
  ])('"%s" is none', (text) => {
    expect(parseQuantity(text)).toBeNull();
  });
  test.each<[string, number, number, number, Unit]>([
    ['5 V +/- 2 %', 4.9, 5, 5.1, 'V'],
    ['5 V ± 0.25 V', 4.75, 5, 5.25, 'V'],
    ['12.6 V +/- 0.3 V', 12.3, 12.6, 12.9, 'V'],
    ['1 kohm .. 2.5 kohm', 1000, 1750, 2500, 'ohm'],
    ['11.8 V to 14.6 V', 11.8, 13.2, 14.6, 'V'],
    ['-1 V to 10 V', -1, 4.5, 10, 'V'],
    ['50 % +/- 5 %', 45, 50, 55, '%'],
    ['20 mohm', 0.02, 0.02, 0.02, 'ohm'],
    ['-12 V +/- 10 %', -13.2, -12, -10.8, 'V'],
    ['5 V +/- 0 V', 5, 5, 5, 'V'],
    ['5 V .. 5 V', 5, 5, 5, 'V'],
    ['5 V'.padEnd(100), 5, 5, 5, 'V'],
  ])('%s', (text, low, nominal, high, unit) => {
    expect(parseToleranced(text)).toEqual({ low, nominal, high, unit });
  });
  test.each(['1 kohm to 9 kohm', '1 kohm .. 9 kohm'])('%s: even in the logarithm', (text) => {
    // by hand: the square root of 1 times 9
    const known = { low: 1000, nominal: 3000, high: 9000, unit: 'ohm', spread: 'log' };
    expect(parseToleranced(text)).toEqual(known);
  });
  test('ends are far apart when one is more than three times the other, whatever the last bit says', () => {
    for (const three of ['1 V to 3 V', '10 mV to 30 mV', '50 mV to 150 mV', '0.7 V to 2.1 V'])
      expect(parseToleranced(three), three).not.toHaveProperty('spread');
    expect(parseToleranced('1 V to 3.01 V')).toHaveProperty('spread', 'log');
    expect(parseToleranced('0 V to 3 V')).not.toHaveProperty('spread');
    expect(parseToleranced('20 % to 80 %')).not.toHaveProperty('spread');
    // a tolerance is around a value that is known, however wide
    expect(parseToleranced('4 ohm +/- 80 %')).not.toHaveProperty('spread');
  });
  test.each<[string, [number, number, number, number][], number]>([
    // chance, low, nominal, high of each
    [
      'one of: 5 V, 8 V',
      [
        [0.5, 5, 5, 5],
        [0.5, 8, 8, 8],
      ],
      5,
    ],
    [
      'one of 5 V, 8 V',
      [
        [0.5, 5, 5, 5],
        [0.5, 8, 8, 8],
      ],
      5,
    ],
    [
      'one of: 5 V 30 %, 8 V 70 %',
      [
        [0.3, 5, 5, 5],
        [0.7, 8, 8, 8],
      ],
      8,
    ],
    [
      'one of: 4 V +/- 25 % 80 %, 8 V',
      [
        [0.8, 3, 4, 5],
        [0.2, 8, 8, 8],
      ],
      4,
    ],
    [
      'one of: 4 V +/- 25 %, 1 V to 2 V 60 %',
      [
        [0.4, 3, 4, 5],
        [0.6, 1, 1.5, 2],
      ],
      1.5,
    ],
  ])('%s', (text, ways, nominal) => {
    const read = parseToleranced(text);
    expect(read?.nominal).toBe(nominal);
    expect(read?.low).toBe(Math.min(...ways.map(([, low]) => low)));
    expect(read?.high).toBe(Math.max(...ways.map(([, , , high]) => high)));
    expect(
      read?.oneOf?.map(({ chance, value }) => [chance, value.low, value.nominal, value.high]),
    ).toEqual(ways);
  });
  test.each([
    'one of: 5 V',
    'one of: 5 V, 8 A',
    'one of: 5 V, sky',
    'one of: 5 V 70 %, 8 V 40 %',
    'one of: 5 V 100 %, 8 V',
    'one of: 5 V 0 %, 8 V 100 %',
    'one of: 5 V, one of: 6 V, 7 V',
    '1 V to 2 V to 3 V',
    '1 V to 2 A',
  ])('"%s" is none of the kinds', (text) => {
    expect(parseToleranced(text)).toBeNull();
  });
  test.each([
    '5 V +/- 3 A',
    '10 V .. 1 V',
    '1 V .. 2 A',
    '5 V +/-',
    '5 V +/- -1 V',
    'V',
    'V .. 5 V',
    '5 V .. V',
    '5 V +/- 1 V +/- 1 V',
    '20 degC +/- 10 %',
    'OL +/- 1 ohm',
    '5 V'.padEnd(101),
  ])('"%s" has no tolerance to give', (text) => {
    expect(parseToleranced(text)).toBeNull();
  });
});

describe('quantities on the screen', () => {
  test.each<[number, Unit, string]>([
    [4.97, 'V', '4.97 V'],
    [2200, 'ohm', '2.2 kΩ'],
    [0.0183, 'V', '18.3 mV'],
    [12.6, 'V', '12.6 V'],
    [0.3, 'ohm', '0.3 Ω'],
    [0.9996, 'A', '1 A'],
    [0.032, 'A', '32 mA'],
    [1234, 'rpm', '1234 rpm'],
    [12345, 'Hz', '12.3 kHz'],
    [5e-7, 'm2', '0.5 mm²'],
    [0, 'V', '0 V'],
    [-0.02, 'V', '-20 mV'],
    [Number.POSITIVE_INFINITY, 'ohm', 'OL'],
    [45, '%', '45 %'],
    [12, 'deg', '12°'],
    [58, '1', '58'],
  ])('%d %s is %s', (value, unit, text) => {
    expect(formatQuantity({ value, unit })).toBe(text);
  });
  test('ASCII has no sign that a plain terminal lacks', () => {
    for (const unit of ['ohm', 'V', 'm2', 'degC', 'deg', 's'] as const)
      expect(formatQuantity({ value: 3.3e-6, unit }, { ascii: true })).toMatch(/^[\x20-\x7e]+$/);
  });
  test.each<[number, number, Unit, string]>([
    [4.88, 5.12, 'V', '4.88 to 5.12 V'],
    [5.0001, 5.0002, 'V', '5.0001 to 5.0002 V'],
    [800, 1200, 'ohm', '0.8 to 1.2 kΩ'],
    [1000, Number.POSITIVE_INFINITY, 'ohm', 'above 1 kΩ'],
    [Number.NEGATIVE_INFINITY, 4.75, 'V', 'below 4.75 V'],
    [5, 5, 'V', '5 V'],
  ])('%d to %d %s', (low, high, unit, text) => {
    expect(formatRange(low, high, unit)).toBe(text);
  });
  test('two ends that differ never look the same', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: 1e-6, max: 50, noNaN: true }),
        (low, width) => {
          const [a, b] = formatRange(low, low + width, 'V').split(' to ');
          expect(b).toBeDefined();
          expect(a).not.toBe(b?.replace(/ .*$/, ''));
        },
      ),
    );
  });
});

describe('chances', () => {
  test('the three chances below, within and above are one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.double({ min: 0.001, max: 5, noNaN: true }),
        (mean, u) => {
          const parts = [
            chanceWithin(mean, u, Number.NEGATIVE_INFINITY, -1),
            chanceWithin(mean, u, -1, 2),
            chanceWithin(mean, u, 2, Number.POSITIVE_INFINITY),
          ];
          expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 12);
          for (const part of parts) expect(part).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
  test('without uncertainty the lower end counts and the upper does not', () => {
    const within = (mean: number) => chanceWithin(mean, 0, 4.75, 5.25);
    expect([4, 4.75, 5.25].map(within)).toEqual([0, 1, 0]);
    expect(chanceWithin(5, 0, 4.75, Number.POSITIVE_INFINITY)).toBe(1);
  });
  test('an over-limit lies in ranges that have no upper end', () => {
    const over = Number.POSITIVE_INFINITY;
    expect(chanceWithin(over, over, 1e6, over)).toBe(1);
    expect(chanceWithin(over, over, 0, 1e6)).toBe(0);
    expect(chanceWithin(-over, over, -over, 0)).toBe(1);
    expect(chanceWithin(-over, over, -1e6, 0)).toBe(0);
  });
  test('an empty range has no chance', () => {
    expect(chanceWithin(5, 1, 6, 4)).toBe(0);
  });
  test('the meter uses the lowest range that holds the reading, and one count is never hidden', () => {
    const meter = { ranges: [0.6, 6, 60, 600], counts: 6000, ofReading: 0, digits: 0 };
    expect(meterUncertainty(meter, 5).resolution).toBeCloseTo(0.001, 12); // 6 V / 6000
    expect(meterUncertainty(meter, -12.6).resolution).toBeCloseTo(0.01, 12);
    expect(meterUncertainty(meter, 5).standard).toBeCloseTo(0.001 / Math.sqrt(12), 12);
    expect(meterUncertainty(meter, 6).resolution).toBeCloseTo(0.001, 12);
    expect(meterUncertainty(meter, 700).resolution).toBeCloseTo(0.1, 12); // 600 V / 6000
  });
});

describe('wire', () => {
  test('length doubles resistance and area halves it', () => {
    const once = copperOhms({ areaM2: 5e-7, metres: 3 });
    expect(copperOhms({ areaM2: 5e-7, metres: 6 })).toBeCloseTo(2 * once, 12);
    expect(copperOhms({ areaM2: 1e-6, metres: 3 })).toBeCloseTo(once / 2, 12);
  });
  test('gauge to area and back', () => {
    for (let gauge = -3; gauge <= 40; gauge += 1)
      expect(awgOfArea(awgAreaM2(gauge))).toBeCloseTo(gauge, 9);
  });
  test('10 A over 5 m with 0.3 V allowed needs 2.87 mm2, so 4 mm2 of the shelf', () => {
    const area = areaForDropM2({ amps: 10, metres: 5, dropVolts: 0.3 }); // by hand: 10 * 5 / 58 / 0.3 mm2
    expect(area * 1e6).toBeCloseTo(2.8735632, 6);
    expect(cableMm2For(area)).toBe(4);
    expect(cableMm2For(1)).toBeNull();
    expect(cableMm2For(4e-6)).toBe(4);
    expect(cableMm2For(4.001e-6)).toBe(6);
  });
});
