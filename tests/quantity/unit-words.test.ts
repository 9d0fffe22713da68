/** How units are spelt. Powers of ten: BIPM, SI brochure, table 7. */
import { describe, expect, test } from 'vitest';
import type { Unit } from '../../src/quantity/quantity.ts';
import {
  beginsUnit,
  spokenUnit,
  strictUnit,
  takesPrefix,
  toSi,
} from '../../src/quantity/unit-words.ts';

const plain = { power: 0, factor: 1, offset: 0, prefix: '', spelled: false };

describe('units as files spell them', () => {
  test('both signs for micro, and the compatible forms of ohm', () => {
    expect(strictUnit('\u00b5F')).toMatchObject({ unit: 'F', power: -6, prefix: 'u' });
    expect(strictUnit('\u03bcF')).toMatchObject({ unit: 'F', power: -6, prefix: 'u' });
    expect(strictUnit('k\u2126')).toMatchObject({ unit: 'ohm', power: 3, prefix: 'k' });
  });
  test.each(['', 'x', 'kx', 'krpm', 'QV', 'toString', 'mconstructor'])('"%s" is none', (text) => {
    expect(strictUnit(text)).toBeNull();
  });
  test('a square millimetre is a millionth of a square metre', () => {
    expect(strictUnit('mm2')).toMatchObject({ unit: 'm2', power: -6, prefix: '' });
    expect(toSi('2.5', strictUnit('mm2')!)).toBe(2.5e-6);
  });
});

describe('units as people type them', () => {
  test.each<[string, Unit, Unit, number, string, boolean]>([
    // typed, asked for, understood, power, prefix, prefix was a word
    ['volts', 'V', 'V', 0, '', false],
    ['kvolts', 'V', 'V', 3, 'k', false],
    ['\u00b5V', 'V', 'V', -6, 'u', false],
    ['\u03bcV', 'V', 'V', -6, 'u', false],
    ['K', 'ohm', 'ohm', 3, 'k', false],
    ['k', 'ohm', 'ohm', 3, 'k', false],
    ['Kohm', 'ohm', 'ohm', 3, 'k', false],
    ['k ohm', 'ohm', 'ohm', 3, 'k', false],
    ['kilo', 'ohm', 'ohm', 3, 'k', true],
    ['kilohm', 'ohm', 'ohm', 3, 'k', true],
    ['kilohms', 'ohm', 'ohm', 3, 'k', true],
    ['kilo ohms', 'ohm', 'ohm', 3, 'k', true],
    ['microohm', 'ohm', 'ohm', -6, 'u', true],
    ['megohm', 'ohm', 'ohm', 6, 'M', true],
    ['Megohms', 'ohm', 'ohm', 6, 'M', true],
    ['mega', 'ohm', 'ohm', 6, 'M', true],
    ['Msec', 's', 's', 6, 'M', false],
    ['m', 'm', 'm', 0, '', false],
    ['m', 'V', 'V', -3, 'm', false],
    ['mF', 'V', 'F', -3, 'm', false],
  ])('"%s" where %s is asked', (typed, asked, unit, power, prefix, spelled) => {
    expect(spokenUnit(typed, asked)).toEqual({ ...plain, unit, power, prefix, spelled });
  });
  test.each<[string, Unit]>([
    ['', 'V'],
    ['x', 'V'],
    ['mk', 'V'],
    ['xv', 'V'],
    ['k', '1'],
    ['n', 'Hz'],
    ['ksec', 's'],
    ['kilosec', 's'],
    ['kilofoo', 'ohm'],
    ['megohmfoo', 'ohm'],
    ['Mrpm', 'rpm'],
    ['kpct', '%'],
  ])('"%s" where %s is asked is none', (typed, asked) => {
    expect(spokenUnit(typed, asked)).toBeNull();
  });
  test('32 and 212 degrees Fahrenheit are freezing and boiling water', () => {
    const word = spokenUnit('degF', 'degC')!;
    expect(toSi('32', word)).toBeCloseTo(0, 12);
    expect(toSi('212', word)).toBeCloseTo(100, 12);
  });
});

test.each<[Unit, string, boolean]>([
  ['V', 'k', true],
  ['V', 'M', true],
  ['s', 'M', true], // a capital M is asked about wherever milli is in use
  ['s', 'k', false],
  ['Hz', 'n', false],
  ['rpm', 'M', false],
  ['1', 'k', false],
])('%s with prefix %s: %s', (unit, prefix, takes) => {
  expect(takesPrefix(unit, prefix)).toBe(takes);
});

describe('beginnings of units', () => {
  test.each(['v', 'vo', 'kvo', 'mvo', 'ft', 'mm2', 'cm', 'Oh', 'kil', 'kilo', 'kilovo', 'mega oh'])(
    '"%s" may become one',
    (text) => {
      expect(beginsUnit(text)).toBe(true);
    },
  );
  test.each(['', 'x', 'xvo', 'kilox', 'ilo', 'q'])('"%s" cannot', (text) => {
    expect(beginsUnit(text)).toBe(false);
  });
});
