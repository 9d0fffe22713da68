import { describe, expect, test } from 'vitest';
import { findOptimum } from '../../src/suspects/optimum.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { commonest, findGroups } from './groups.ts';
import { matrixTable, READING_ONLY } from './tables.ts';

/** a1 and a2 have one repair, b looks like a1, c stands alone, d looks healthy. */
const candidates = [
  { id: 'healthy', repair: 'healthy', weight: 5 },
  { id: 'a1', repair: 'A', weight: 1 },
  { id: 'a2', repair: 'A', weight: 2 },
  { id: 'b', repair: 'B', weight: 3 },
  { id: 'c', repair: 'C', weight: 3 },
  { id: 'd', repair: 'D', weight: 1 },
];
const table = matrixTable(candidates, [
  [0, 0],
  [1, 0],
  [1, 0],
  [1, 0],
  [1, 1],
  [0, 0],
]);
const ask = { tests: [0, 1], outcomes: outcomesOf(table) };

test('a fault looks as most of its samples do; of equals the first', () => {
  const looks = [0, 1, 1, 2, 2, 0];
  const outcomes = {
    test: 0,
    specs: ['a', 'b', 'c'].map((id) => ({ kind: 'looks' as const, id, looks: [] })),
    ofSample: Uint8Array.from([...looks, ...looks.map(() => 2)]),
  };
  expect([commonest(outcomes, 0, 3), commonest(outcomes, 1, 3)]).toEqual([1, 2]);
  expect(commonest(outcomes, 0, 6)).toBe(0);
  expect(commonest(outcomes, 1, 6)).toBe(2);
});

describe('groups that no test separates', () => {
  test('by hand: {healthy d} {a1 a2 b} {c}', () => {
    const { groups } = findGroups(table, ask);
    expect(groups.map((group) => group.candidates)).toEqual([[0, 5], [1, 2, 3], [4]]);
    expect(groups.map(({ likeHealthy }) => likeHealthy)).toEqual([true, false, false]);
    expect(groups.map(({ weight }) => weight)).toEqual([6, 6, 3]);
  });
  test('detected 9 of 10; isolated to one fault 3 of 9, to three all; mean group (1 + 6 * 3 + 3) / 10', () => {
    const found = findGroups(table, ask);
    expect(found.detectedFraction).toBeCloseTo(0.9, 12);
    expect(found.isolatedFraction(1)).toBeCloseTo(3 / 9, 12);
    expect(found.isolatedFraction(2)).toBeCloseTo(3 / 9, 12);
    expect(found.isolatedFraction(3)).toBe(1);
    expect(found.meanGroupSize).toBeCloseTo(2.2, 12);
  });
  test('counted by repair the group of three is two', () => {
    const found = findGroups(table, { ...ask, sizeBy: 'repair' });
    expect(found.isolatedFraction(2)).toBe(1);
    expect(found.meanGroupSize).toBeCloseTo((1 + 6 * 2 + 3) / 10, 12);
  });
  test('the cheapest strategy stops at such a group and names its repairs', () => {
    const { strategy, exact } = findOptimum(table, { costs: READING_ONLY });
    expect(exact).toBe(true);
    const ends: string[] = [];
    const walk = (at: typeof strategy): void => {
      if (at.kind === 'conclude') ends.push(at.repairs.map(({ repair }) => repair).join('+'));
      else for (const { next } of at.branches) walk(next);
    };
    walk(strategy);
    expect(ends.sort()).toEqual(['A+B', 'C', 'healthy+D']);
  });
});
