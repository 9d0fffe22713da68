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
  width?: number,
) {
  const candidates = weights.map((weight, index) => ({
    id: `f${index}`,
    repair: `r${index}`,
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
  test('of what no test parts has nothing to do', () => {
    const search = searchOf([1, 1], [[0], [0]], [3]);
    expect([search.greedy(), search.run(10), search.choices()]).toEqual([0, true, []]);
    expect(search.expansions).toBe(0);
  });
});
