/** Likelihoods, allowances and spans worked out by hand from their formulas. */
import { describe, expect, test } from 'vitest';
import type { Look, Shown } from '../../src/circuit/test.ts';
import {
  ERROR_MODEL,
  EXACT_MODEL,
  joinedWidth,
  modelWidth,
  shownSpan,
  slipDensity,
} from '../../src/suspects/error-model.ts';
import { jointFit } from '../../src/suspects/joint-fit.ts';
import { fitReading, uncertaintyOf } from '../../src/suspects/likelihood.ts';
import { buildTable, type Column, fillColumn } from '../../src/suspects/prediction-table.ts';
import { simpleTest } from './tables.ts';

const OL = Number.POSITIVE_INFINITY;
const column = (unit: 'V' | 'ohm', ...values: number[]): Column => ({
  kind: 'number',
  unit,
  looks: [],
  values: Float64Array.from(values),
});
const looks = (names: readonly Look[], ...values: number[]): Column => ({
  kind: 'look',
  unit: null,
  looks: names,
  values: Float64Array.from(values),
});
const number = (value: number, unit: 'V' | 'ohm' = 'V'): Shown => ({ kind: 'number', value, unit });
const bell = (z: number, width: number) =>
  Math.exp(-0.5 * z * z) / (width * Math.sqrt(2 * Math.PI));

describe('what the model allows itself', () => {
  test.each<['V' | 'ohm', number, number]>([
    ['V', 5, 0.105], // 2 % of 5 V and 5 mV
    ['V', -5, 0.105],
    ['V', 0, 0.005],
    ['ohm', 100, 2.2], // 2 % of 100 ohm and 0.2 ohm
  ])('in %s at %d', (unit, at, width) => {
    expect(modelWidth(unit, at, ERROR_MODEL)).toBeCloseTo(width, 12);
  });
  test('is never quite nothing', () => {
    expect(modelWidth('V', 5, EXACT_MODEL)).toBeCloseTo(6e-9, 15);
  });
});

describe('the span of what is shown', () => {
  test.each<[string, Column, number, number]>([
    ['from the lowest to the highest', column('V', 1, 5, OL, 3), 2, 4],
    ['as far as a reading above', column('V', 1, 5), 9, 8],
    ['as far as a reading below', column('V', 1, 5), -1, 6],
    ['a volt at least', column('V', 1, 1.2), 1.1, 1],
    // in ohms the value times the decades between, and one ohm of leads
    ['in ohms by the logarithm', column('ohm', 10, 1000), 100, 100 * Math.log(100) + 1],
    ['in ohms a decade at least', column('ohm', 1, 2), 1, Math.log(10) + 1],
    ['in ohms from one ohm on', column('ohm', 0.1, 1000), 0.5, Math.log(1000) + 1],
  ])('%s', (_, of, value, span) => {
    expect(shownSpan(of, value)).toBeCloseTo(span, 9);
  });
  test('a slip shows anything, or in volts the nothing of a lead that does not touch', () => {
    const volts = column('V', 0, 5);
    expect(slipDensity(volts, 5, 0, ERROR_MODEL)).toBeCloseTo(0.1, 9); // half of 1 / 5 V
    expect(slipDensity(volts, 0, 0, ERROR_MODEL)).toBeCloseTo(0.1 + 0.5 * bell(0, 0.005), 9);
    expect(slipDensity(volts, 0.01, 0.012, ERROR_MODEL)).toBeCloseTo(
      0.1 + 0.5 * bell(0.01 / 0.013, 0.013), // 12 mV and 5 mV make 13 mV
      9,
    );
    expect(slipDensity(column('ohm', 10, 1000), 100, 0, ERROR_MODEL)).toBeCloseTo(
      1 / (100 * Math.log(100) + 1),
      12,
    );
  });
});

describe('a number', () => {
  test('is as likely as the normal around each prediction, with a floor for slips', () => {
    const of = column('V', 5, 5, 0, 0);
    const fit = fitReading(of, 2, 2, number(5.1), 0.1, ERROR_MODEL);
    const width = Math.hypot(0.1, 0.105);
    const blind = slipDensity(of, 5.1, 0.1, ERROR_MODEL);
    expect(fit.blind).toBeCloseTo(blind, 12);
    expect(fit.perRow[0]).toBeCloseTo(0.98 * bell(0.1 / width, width) + 0.02 * blind, 12);
    expect(fit.perRow[1]).toBeCloseTo(0.02 * blind, 12);
    expect([...fit.perSample.subarray(0, 2)]).toEqual([fit.perRow[0], fit.perRow[0]]);
  });
  test('stands for what lies between the samples, to a tenth of their spread', () => {
    const fit = fitReading(column('V', 5, 1.1, 1), 1, 3, number(2), 0.3, EXACT_MODEL);
    // half the way to the nearer neighbour: 0.05 V, and for the far one a tenth of 4 V
    const at = (value: number, gap: number) => {
      const width = Math.hypot(0.3, gap);
      return bell((2 - value) / width, width);
    };
    const each = [at(5, 0.4), at(1.1, 0.05), at(1, 0.05)];
    each.forEach((density, index) => {
      expect(fit.perSample[index]).toBeCloseTo(density, 6);
    });
    expect(fit.perRow[0]).toBeCloseTo(each.reduce((a, b) => a + b) / 3, 6);
  });
  test('is not shown by a sample that is over the limit', () => {
    const fit = fitReading(column('ohm', OL, 5), 1, 2, number(5, 'ohm'), 0.1, EXACT_MODEL);
    expect(fit.perSample[0]).toBe(0);
    expect(fit.perSample[1]).toBeCloseTo(bell(0, 0.1), 6);
  });
  test.each([
    [5, 1], // where the sample lies
    [5.3, 0.0026997961],
    [4.7, 0.0026997961], // three deviations, on either side: 1 - erf(3 / sqrt 2), from memory
    [5.1, 0.3173105079],
  ])('%f V lies as far out as %f of what 5 V with 0.1 V shows', (value, share) => {
    const fit = fitReading(column('V', 5, 5), 1, 2, number(value), 0.1, EXACT_MODEL);
    expect(fit.tail(0)).toBeCloseTo(share, 8);
  });
  test('lies within samples on both sides of it, and an over-limit one lies above', () => {
    const tail = (...samples: number[]) =>
      fitReading(column('ohm', ...samples), 1, 4, number(50, 'ohm'), 1, EXACT_MODEL).tail(0);
    expect(tail(10, 20, 30, 90)).toBeCloseTo(0.5, 4);
    expect(tail(10, 20, OL, OL)).toBeCloseTo(1, 4);
    expect(tail(90, 90, 90, OL)).toBeCloseTo(0, 4);
  });
  test('takes blind chance from another column when told to', () => {
    const of = column('V', 5);
    expect(fitReading(of, 1, 1, number(5), 0.1, ERROR_MODEL, 0.7).blind).toBe(0.7);
  });
});

describe('over-limit and looks', () => {
  // one more sample shows all ways evenly, one reading in fifty is a slip
  const mixed = (hits: number, of: number, ways: number) =>
    (0.98 * (hits + 1 / ways)) / (of + 1) + 0.02 / ways;
  test('an over-limit is as likely as its share of the samples', () => {
    const fit = fitReading(column('ohm', OL, OL, OL, 5, 5, 5), 3, 2, number(OL), 0, ERROR_MODEL);
    expect([...fit.perRow]).toEqual([2, 1, 0].map((hits) => expect.closeTo(mixed(hits, 2, 2), 12)));
    expect(fit.perSample[0]).toBeCloseTo(mixed(2, 2, 2), 12);
    expect(fit.perSample[3]).toBeCloseTo(mixed(0, 2, 2), 12);
    expect(fit.blind).toBe(0.5);
    expect([0, 1, 2].map(fit.tail)).toEqual([1, 0.5, 0]);
  });
  test.each<[readonly Look[], Look, number]>([
    [['lit', 'dark'], 'lit', 3], // a test light has three looks
    [['follows'], 'follows', 2],
    [['full'], 'full', 6],
    [['lit', 'full'], 'lit', 2], // of no one instrument: as many as are shown
    [['lit', 'full', 'still'], 'lit', 3],
    [['lit'], 'full', 2],
  ])('of %o "%s" is one of %d', (names, look, ways) => {
    const fit = fitReading(looks(names, 0, 0), 1, 2, { kind: 'look', look }, 0, ERROR_MODEL);
    expect(fit.blind).toBeCloseTo(1 / ways, 12);
    expect(fit.perRow[0]).toBeCloseTo(mixed(look === names[0] ? 2 : 0, 2, ways), 12);
  });
  test('numbers and looks are not mixed', () => {
    expect(() => fitReading(looks(['lit'], 0), 1, 1, number(5), 0, ERROR_MODEL)).toThrow('number');
    const look: Shown = { kind: 'look', look: 'lit' };
    expect(() => fitReading(column('V', 5), 1, 1, look, 0, ERROR_MODEL)).toThrow('look');
  });
});

describe('all readings together', () => {
  const weighed = (perRow: number, perSample: readonly number[], weight: number) => ({
    perRow: Float64Array.of(perRow),
    perSample: Float64Array.from(perSample),
    blind: 0.5,
    tail: () => 1,
    reading: 0,
    test: 0,
    weight,
  });
  test('one sample explains them all, or each has its own: evens of both', () => {
    const joint = jointFit(
      [weighed(0.5, [0.9, 0.1], 1), weighed(0.5, [0.1, 0.9], 1)],
      1,
      2,
      ERROR_MODEL,
    );
    const steady = (0.9 * 0.1 + 0.1 * 0.9) / 2;
    expect(joint.logRows[0]).toBeCloseTo(Math.log(0.5 * steady + 0.5 * 0.25), 12);
    expect(joint.logBlind).toBeCloseTo(2 * Math.log(0.5), 12);
    expect([...joint.sampleShares]).toEqual([expect.closeTo(0.5, 12), expect.closeTo(0.5, 12)]);
  });
  test('each row by itself, and samples share what is held by them', () => {
    // two rows; the second is the first with its samples changed about
    const two = (perRow: number, one: number, other: number) => ({
      ...weighed(perRow, [one, other, other, one], 1),
      perRow: Float64Array.of(perRow, perRow),
    });
    const joint = jointFit([two(0.5, 0.9, 0.1), two(0.3, 0.5, 0.1)], 2, 2, ERROR_MODEL);
    // by hand: one sample explains both with 0.45 or 0.01, so 0.23; samples of their own with 0.15; evens of both 0.19
    const log = expect.closeTo(Math.log(0.19), 12);
    expect([...joint.logRows]).toEqual([log, log]);
    const held = (0.5 * 0.23) / 0.19;
    const share = (one: number) => expect.closeTo(held * (one / 0.46) + (1 - held) / 2, 12);
    expect([...joint.sampleShares]).toEqual([0.45, 0.01, 0.01, 0.45].map(share));
  });
  test('that no one sample explains are still explained by samples of their own', () => {
    const fits = [weighed(0.5, [1, 0], 1), weighed(0.5, [0, 1], 1)];
    const joint = jointFit(fits, 1, 2, ERROR_MODEL);
    expect(joint.logRows[0]).toBeCloseTo(Math.log(0.5 * 0.25), 12);
    expect([...joint.sampleShares]).toEqual([0.5, 0.5]);
  });
  test('samples share the chance as they explain the readings', () => {
    const joint = jointFit([weighed(0.5, [0.9, 0.1], 1)], 1, 2, ERROR_MODEL);
    // half is held by the samples in proportion, half is even
    expect([...joint.sampleShares]).toEqual([expect.closeTo(0.7, 12), expect.closeTo(0.3, 12)]);
  });
  test('a reading counts as much as it weighs', () => {
    const joint = jointFit([weighed(0.25, [0.25, 0.25], 0.5)], 1, 2, ERROR_MODEL);
    expect(joint.logRows[0]).toBeCloseTo(Math.log(0.5), 12); // the root of a quarter
    expect(joint.logBlind).toBeCloseTo(0.5 * Math.log(0.5), 12);
  });
  test('what nothing explains has no chance, and its samples share evenly', () => {
    const joint = jointFit([weighed(0, [0, 0], 1)], 1, 2, EXACT_MODEL);
    expect(joint.logRows[0]).toBe(Number.NEGATIVE_INFINITY);
    expect([...joint.sampleShares]).toEqual([0.5, 0.5]);
  });
});

describe('a table', () => {
  const one = [{ id: 'a', repair: 'a', weight: 1 }];
  const meter = simpleTest('t', { standardUncertainty: (value) => value / 100 });
  test('knows how uncertain a reading is', () => {
    const table = buildTable(one, [meter, simpleTest('u')], () => number(5), 1);
    const reading = { test: 0, shown: number(5) };
    expect(uncertaintyOf(table, reading)).toBe(0.05);
    expect(uncertaintyOf(table, { ...reading, standardUncertainty: 0.2 })).toBe(0.2);
    expect(uncertaintyOf(table, { ...reading, test: 1 })).toBe(0);
    expect(uncertaintyOf(table, { test: 0, shown: { kind: 'look', look: 'lit' } })).toBe(0);
  });
  test('of nothing, or of what makes no sense, is a mistake of the caller', () => {
    expect(() => buildTable([], [meter], () => number(5), 1)).toThrow('nothing to predict');
    expect(() => buildTable(one, [meter], () => number(5), 0)).toThrow('nothing to predict');
    expect(() => buildTable(one, [{ ...meter, minutes: 0 }], () => number(5), 1)).toThrow(
      'minutes',
    );
    const table = buildTable(one, [meter], () => number(Number.NaN), 1);
    expect(() => table.column(0)).toThrow('not a number');
    expect(() => table.column(1)).toThrow('no test 1');
    const both = (row: number): Shown => (row === 0 ? number(5) : { kind: 'look', look: 'lit' });
    expect(() => fillColumn(2, 1, both)).toThrow('both numbers and looks');
    expect(fillColumn(2, 1, () => number(5, 'ohm'))).toMatchObject({ kind: 'number', unit: 'ohm' });
  });
  test('asks for a column once, and shows it again as it was', () => {
    let asked = 0;
    const shows = (_: string, __: unknown, sample: number): Shown => {
      asked += 1;
      return { kind: 'look', look: sample === 1 ? 'dark' : 'lit' };
    };
    const table = buildTable(one, [meter], shows, 3);
    expect(table.column(0).looks).toEqual(['lit', 'dark']);
    expect([...table.column(0).values]).toEqual([0, 1, 0]);
    expect(table.shown(0, 0).map((shown) => shown.kind === 'look' && shown.look)).toEqual([
      'lit',
      'dark',
      'lit',
    ]);
    expect(asked).toBe(3);
  });
});

test('two widths are joined as the language does it, to the bit', () => {
  const sizes = [0, 1e-12, 0.005, 0.0201, 1 / 3, 0.1, 3, 4, 17.77, 1e6 / 7, 1e9];
  for (const one of sizes)
    for (const other of sizes) expect(joinedWidth(one, -other)).toBe(Math.hypot(one, other));
});
