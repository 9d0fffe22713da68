import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { splitIntoCases } from '../../src/suspects/cases.ts';
import { findOutcomes, OUTSIDE, outcomeShown, outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, type TableTest } from '../../src/suspects/prediction-table.ts';
import { priorFor } from '../../src/suspects/prior.ts';
import { look, simpleTest } from './tables.ts';

function numbers(
  rows: readonly (readonly number[])[],
  unit: 'V' | 'ohm',
  more: Partial<TableTest> = {},
) {
  const candidates = rows.map((_, index) => ({ id: `f${index}`, repair: `r${index}`, weight: 1 }));
  const shows = (id: string, _: TableTest, sample: number): Shown => ({
    kind: 'number',
    value: rows[Number(id.slice(1))]![sample]!,
    unit,
  });
  return buildTable(candidates, [simpleTest('t', more)], shows, rows[0]!.length);
}

/** Outcome of each candidate's samples. */
function rowsOf(
  table: ReturnType<typeof numbers>,
  authored?: Parameters<typeof findOutcomes>[2],
): number[][] {
  const { ofSample } = findOutcomes(table, 0, authored);
  return table.candidates.map((_, row) => [
    ...ofSample.subarray(row * table.samples, (row + 1) * table.samples),
  ]);
}

describe('outcomes found from the predictions', () => {
  test('values apart by more than the uncertainty are different outcomes', () => {
    const rows = rowsOf(
      numbers(
        [
          [0, 0.01],
          [2.5, 2.52],
          [5, 5.05],
        ],
        'V',
      ),
    );
    expect(rows).toEqual([
      [0, 0],
      [1, 1],
      [2, 2],
    ]);
  });
  test('values that the meter cannot tell apart are one outcome', () => {
    const near = [
      [4.99, 4.99],
      [5.01, 5.01],
    ];
    expect(rowsOf(numbers(near, 'V'))).toEqual([
      [0, 0],
      [0, 0],
    ]);
    const coarse = numbers(
      [
        [4, 4],
        [6, 6],
      ],
      'V',
      { standardUncertainty: () => 3 },
    );
    expect(rowsOf(coarse)).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });
  test('over-limit is an outcome by itself, whatever else there is', () => {
    const { specs } = findOutcomes(
      numbers(
        [
          [Infinity, Infinity],
          [0.3, 0.4],
        ],
        'ohm',
      ),
      0,
    );
    expect(specs.map(({ id }) => id)).toEqual(['OL', 'range-1']);
    expect(
      rowsOf(
        numbers(
          [
            [Infinity, 3],
            [0.3, 0.4],
          ],
          'ohm',
        ),
      )[0]![0],
    ).toBe(0);
  });
  test('a fault of all sizes is cut where healthy values begin', () => {
    const sized = Array.from({ length: 40 }, (_, k) => k * 0.125);
    const healthy = Array.from({ length: 40 }, (_, k) => 4.95 + k * 0.0025);
    const [low, good] = rowsOf(numbers([sized, healthy], 'V'));
    expect(new Set(good).size).toBe(1);
    const shared = low!.filter((outcome) => outcome === good![0]).length;
    expect(shared).toBeLessThanOrEqual(5);
  });
  test('are found once for each test', () => {
    const of = outcomesOf(numbers([[0], [5]], 'V'));
    expect(of(0)).toBe(of(0));
  });
  test('never more than six ranges', () => {
    const rows = Array.from({ length: 30 }, (_, k) => [k * 10, k * 10]);
    expect(findOutcomes(numbers(rows, 'V'), 0).specs).toHaveLength(6);
  });
});

describe("the author's outcomes", () => {
  const table = numbers(
    [
      [0, 4.75],
      [5.25, 9],
    ],
    'V',
  );
  const good = { kind: 'range', id: 'good', from: 4.75, below: 5.25 } as const;
  test('a range counts its lower end and not its upper', () => {
    const high = { kind: 'range', id: 'high', from: 5.25, below: Infinity } as const;
    const low = { kind: 'range', id: 'low', from: -Infinity, below: 4.75 } as const;
    expect(rowsOf(table, [low, good, high])).toEqual([
      [0, 1],
      [2, 2],
    ]);
  });
  test('what no range holds is outside', () => {
    expect(findOutcomes(table, 0, [good]).specs.at(-1)!.id).toBe(OUTSIDE);
    expect(rowsOf(table, [good])).toEqual([
      [1, 0],
      [1, 1],
    ]);
  });
});

describe('cases', () => {
  test('a fault that falls into two outcomes is two cases of half its chance, told apart by repair and outcome', () => {
    const candidates = [
      { id: 'a', repair: 'one', weight: 1 },
      { id: 'b', repair: 'one', weight: 1 },
      { id: 'c', repair: 'two', weight: 2 },
    ];
    const shows = (id: string, _: TableTest, sample: number) => look(id === 'c' ? 0 : sample);
    const table = buildTable(candidates, [simpleTest('t')], shows, 2);
    const cases = splitIntoCases(table, [0], outcomesOf(table), priorFor(candidates));
    expect(cases.count).toBe(3);
    expect([...cases.weight]).toEqual([0.25, 0.25, 0.5]);
    expect(cases.candidates).toEqual([[0, 1], [0, 1], [2]]);
    // The first case of "one" looks like "two".
    expect([...cases.signatureOf]).toEqual([0, 1, 0]);
  });
});

describe('where a range is cut', () => {
  const cuts = (rows: readonly (readonly number[])[], unit: 'V' | 'ohm') =>
    findOutcomes(numbers(rows, unit), 0).specs.flatMap((spec) =>
      spec.kind === 'range' && Number.isFinite(spec.from) ? [spec.from] : [],
    );
  test('in the middle of the gap, in ohms by the ratio', () => {
    expect(cuts([[0], [5]], 'V')).toEqual([2.5]);
    expect(cuts([[1], [100]], 'ohm')).toEqual([expect.closeTo(10, 9)]);
    expect(cuts([[0], [100]], 'ohm')).toEqual([50]); // nothing has no ratio
    expect(cuts([[-3], [5]], 'V')).toEqual([1]);
  });
  test('not between values that are the same, and not where nothing is told', () => {
    expect(cuts([[5], [5]], 'V')).toEqual([]);
    expect(cuts([[5]], 'V')).toEqual([]);
    // both suspects show both values: the cut would say nothing about which it is
    expect(
      cuts(
        [
          [0, 5],
          [0, 5],
        ],
        'V',
      ),
    ).toEqual([]);
  });
  test('at most five times, for six ranges, and over-limit beside them', () => {
    const rows = Array.from({ length: 9 }, (_, k) => [k * 2]);
    expect(cuts(rows, 'V')).toHaveLength(5);
    const { specs } = findOutcomes(numbers([...rows, [Number.POSITIVE_INFINITY]], 'ohm'), 0);
    expect(specs).toHaveLength(7);
    expect(specs[0]).toMatchObject({ id: 'OL' });
    expect(specs.slice(1).map(({ id }) => id)).toEqual([1, 2, 3, 4, 5, 6].map((n) => `range-${n}`));
  });
  test('the ranges follow one another, from the lowest to the highest', () => {
    const { specs, ofSample } = findOutcomes(numbers([[0], [5], [12]], 'V'), 0);
    expect(specs).toEqual([
      { kind: 'range', id: 'range-1', from: Number.NEGATIVE_INFINITY, below: 2.5 },
      { kind: 'range', id: 'range-2', from: 2.5, below: 8.5 },
      { kind: 'range', id: 'range-3', from: 8.5, below: Number.POSITIVE_INFINITY },
    ]);
    expect([...ofSample]).toEqual([0, 1, 2]);
  });
  test('only over-limit is one outcome', () => {
    const over = Number.POSITIVE_INFINITY;
    expect(findOutcomes(numbers([[over], [over]], 'ohm'), 0).specs).toEqual([
      { kind: 'range', id: 'OL', from: over, below: over },
    ]);
  });
});

test("an author's look holds no number, and a range no look", () => {
  const volts = numbers([[0], [5]], 'V');
  const looks = [{ kind: 'looks', id: 'lit', looks: ['lit'] }] as const;
  expect(findOutcomes(volts, 0, looks).specs).toEqual([
    ...looks,
    { kind: 'looks', id: OUTSIDE, looks: [] },
  ]);
  const lights = buildTable(volts.candidates, [simpleTest('t')], () => look(1), 1);
  const range = [{ kind: 'range', id: 'any', from: 0, below: 9 }] as const;
  expect(findOutcomes(lights, 0, range).specs.map(({ id }) => id)).toEqual(['any', OUTSIDE]);
  expect([...findOutcomes(lights, 0, looks).ofSample]).toEqual([0, 0]);
});

test('what a vehicle shows is the first outcome that holds it: a look by name, a number from its least up', () => {
  const specs = [
    { kind: 'looks', id: 'off', looks: ['dim', 'dark'] },
    { kind: 'range', id: 'low', from: 0, below: 2 },
    { kind: 'range', id: 'high', from: 2, below: Infinity },
  ] as const;
  const id = (shown: Shown) => outcomeShown(specs, shown)?.id;
  const volts = (value: number) => id({ kind: 'number', value, unit: 'V' });
  expect([-1, 0, 1.9, 2, Infinity].map(volts)).toEqual([undefined, 'low', 'low', 'high', 'high']);
  expect(id({ kind: 'look', look: 'dark' })).toBe('off');
  expect(id({ kind: 'look', look: 'lit' })).toBeUndefined();
});
