/** The search for the cheapest strategy: what it counts, keeps and improves, on small tables. */
import { describe, expect, test } from 'vitest';
import type { Moves } from '../../src/suspects/case-measures.ts';
import { splitIntoCases } from '../../src/suspects/cases.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { priorFor } from '../../src/suspects/prior.ts';
import { StrategySearch } from '../../src/suspects/strategy-search.ts';
import { matrixTable } from './tables.ts';

/** A search over faults with repairs of their own; `minutes` are those of each test, wherever one stands. */
function searchOf(
  weights: readonly number[],
  matrix: readonly (readonly number[])[],
  minutes: readonly number[],
  { width, repairs }: { readonly width?: number; readonly repairs?: readonly string[] } = {},
) {
  const candidates = weights.map((weight, index) => ({
    id: `f${index}`,
    repair: repairs?.[index] ?? `r${index}`,
    weight,
  }));
  const table = matrixTable(candidates, matrix);
  const cases = splitIntoCases(
    table,
    [...table.tests.keys()],
    outcomesOf(table),
    priorFor(candidates),
  );
  const moves: Moves = (_, one) => ({ place: 0, minutes: minutes[one]! });
  return new StrategySearch(cases, moves, 0, width);
}

describe('a search', () => {
  test('of one test looks at one state', () => {
    const search = searchOf([1, 1], [[0], [1]], [3]);
    expect(search.expansions).toBe(0);
    expect(search.run(10)).toBe(true);
    expect(search.expansions).toBe(1);
    expect([search.root.lower, search.root.upper]).toEqual([3, 3]);
  });
  test('keeps the first of two tests that take as long', () => {
    const search = searchOf(
      [1, 1],
      [
        [0, 0],
        [1, 1],
      ],
      [3, 3],
    );
    search.run(10);
    search.polish();
    expect(search.root.best!.test).toBe(0);
    expect(search.choices()).toHaveLength(2);
    expect(search.root.best!.test).toBe(0);
  });
  test('of what no test parts has nothing to do', () => {
    const alike = searchOf([1, 1], [[0], [0]], [3]);
    const repaired = searchOf([1, 1], [[0], [1]], [3], { repairs: ['r', 'r'] });
    for (const search of [alike, repaired]) {
      search.polish();
      expect([search.greedy(), search.run(10), search.choices()]).toEqual([0, true, []]);
      expect(search.expansions).toBe(0);
      expect([search.root.lower, search.root.upper]).toEqual([0, 0]);
    }
  });
  test('that is stopped early has gone down one way at a time', () => {
    const faults = Array.from({ length: 7 }, (_, index) => index);
    const alone = faults.map((fault) => faults.map((one) => (one === fault ? 1 : 0)));
    const even = faults.map(() => 1);
    const search = searchOf(even, alone, even);
    expect(search.run(1)).toBe(false);
    expect(search.expansions).toBeGreaterThan(0);
    expect(search.expansions).toBeLessThanOrEqual(6); // a state of seven, six, ... two
  });
  test('looks at each state once, however many ways lead to it', () => {
    // seven faults, each parted off by a test of its own: every set of two or more is a state, 2^7 - 7 - 1 of them
    const faults = Array.from({ length: 7 }, (_, index) => index);
    const alone = faults.map((fault) => faults.map((one) => (one === fault ? 1 : 0)));
    const search = searchOf(
      faults.map(() => 1),
      alone,
      faults.map(() => 1),
    );
    expect(search.run(1000)).toBe(true);
    expect(search.expansions).toBeLessThanOrEqual(120);
    expect(search.root.upper).toBeCloseTo((1 + 2 + 3 + 4 + 5 + 6 + 6) / 7, 12);
  });
});

describe('three faults of a quarter, a quarter and a half', () => {
  /** The first test parts a off in 2 minutes, the second c in 3. */
  const three = (width?: number) =>
    searchOf(
      [1, 1, 2],
      [
        [1, 0],
        [0, 0],
        [0, 1],
      ],
      [2, 3],
      width === undefined ? {} : { width },
    );
  // by hand: the first tells 0.81 bits in 2 minutes, the second 1 bit in 3
  const FIRST = 2 + 3 * 0.75;
  const SECOND = 3 + 2 * 0.5;
  test('take longer by the test that tells most per minute', () => {
    const search = three();
    expect(search.greedy()).toBeCloseTo(FIRST, 12);
    expect(search.greedy()).toBeCloseTo(FIRST, 12); // asked again it says the same
    expect(search.expansions).toBe(0);
  });
  test('are improved by trying each test before what is known behind it', () => {
    const search = three();
    expect(search.greedy()).toBeCloseTo(FIRST, 12);
    search.polish();
    expect(search.root.upper).toBeCloseTo(SECOND, 12);
    expect(search.root.best!.test).toBe(1);
    search.polish(); // once is enough
    expect(search.root.upper).toBeCloseTo(SECOND, 12);
  });
  test('need the best code of them at the cheaper test, at least', () => {
    // words of 1, 2 and 2 letters at 2 minutes; 1.5 bits at half a bit per minute are as many
    expect(three().root.lower).toBeCloseTo(1.5 * 2, 12);
  });
  test('are solved in the same way behind a test that leaves them', () => {
    // a fourth of half the chance is parted off in a minute
    const matrix = [
      [1, 0, 0],
      [0, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    const [searched, polished] = [0, 1].map(() => searchOf([1, 1, 2, 4], matrix, [2, 3, 1]));
    expect(searched!.greedy()).toBeCloseTo(1 + 0.5 * FIRST, 12);
    expect(searched!.run(20)).toBe(true);
    polished!.polish();
    for (const { root } of [searched!, polished!])
      expect(root.upper).toBeCloseTo(1 + 0.5 * SECOND, 12);
  });
  test.each([
    ['first', [3, 3, 6, 1, 1, 2]],
    ['second', [1, 1, 2, 3, 3, 6]],
    ['first, of two alike', [1, 1, 2, 1, 1, 2]],
  ])(
    'and three more, parted from them in a minute, are looked at where most is open: the %s',
    (which, weights) => {
      const matrix = [0, 1].flatMap((half) => [
        [half, 1, 0],
        [half, 0, 0],
        [half, 0, 1],
      ]);
      const search = searchOf(weights, matrix, [1, 2, 3]);
      const looked = () =>
        search.root.edges
          ?.find((edge) => edge.test === 0)
          ?.children.map(({ edges }) => edges !== null) ?? [];
      for (let more = 0; more < 50 && !looked().includes(true); more += 1)
        search.run(search.expansions + 1);
      expect(looked()).toEqual(which === 'second' ? [false, true] : [true, false]);
      // by hand: both halves of the chance take SECOND after the minute
      expect(search.run(100)).toBe(true);
      expect(search.root.upper).toBeCloseTo(1 + SECOND, 12);
    },
  );
  test('are solved when the bounds meet', () => {
    const search = three();
    expect(search.run(0)).toBe(false);
    expect(search.root.lower).toBeLessThanOrEqual(SECOND);
    expect(search.root.upper).toBeCloseTo(FIRST, 12);
    expect(search.run(10)).toBe(true);
    expect([search.root.lower, search.root.upper]).toEqual([
      expect.closeTo(SECOND, 12),
      expect.closeTo(SECOND, 12),
    ]);
    expect(search.root.best).toMatchObject({ test: 1, minutes: 3, outcomes: [0, 1] });
    expect(search.root.best!.children.map(({ cases }) => [...cases])).toEqual([[0, 1], [2]]);
  });
  test('have two tests to start with, each with what the job takes then, the most telling first', () => {
    const both = [
      { test: 0, minutes: expect.closeTo(FIRST, 12) },
      { test: 1, minutes: expect.closeTo(SECOND, 12) },
    ];
    expect(three().choices()).toEqual(both);
    const searched = three();
    searched.run(10);
    expect(searched.choices()).toEqual(both);
  });
  test('have one when only the most telling is followed', () => {
    const search = three(1);
    expect(search.run(10)).toBe(true);
    expect(search.choices()).toEqual([{ test: 0, minutes: expect.closeTo(FIRST, 12) }]);
  });
});
