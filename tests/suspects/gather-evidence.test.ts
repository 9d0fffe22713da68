/** Which readings are pieces of evidence of their own. */
import { describe, expect, test } from 'vitest';
import { corroborate } from '../../src/suspects/corroborate.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import type { TableTest } from '../../src/suspects/prediction-table.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

const NOW = { state: 'key-on', unplugged: [], reached: [] } as const;
const fault = (id: string, weight = 1) => ({ id, repair: id, weight });

/** Three suspects; every test parts the concluded one from the others as its row of the matrix says. */
function pieces(matrix: readonly (readonly number[])[], tests: readonly TableTest[]): string[] {
  const table = matrixTable([fault('own'), fault('one'), fault('other')], matrix, tests);
  const readings: Reading[] = tests.map((_, index) => ({
    test: index,
    shown: look(matrix[0]![index]!),
  }));
  const { evidence } = corroborate(table, {
    concluded: ['own'],
    readings,
    ranking: rankSuspects(table, readings),
    outcomes: outcomesOf(table),
    now: NOW,
    means: ALL_MEANS,
  });
  return evidence.map(({ test: index }) => tests[index]!.id).sort();
}

describe('readings at the same terminals', () => {
  const at = (id: string, ...reads: string[]) => simpleTest(id, { reads });
  test('that speak against the same rival are one piece, whatever kind of test they are', () => {
    const matrix = [
      [0, 0],
      [1, 1],
      [1, 1],
    ];
    expect(pieces(matrix, [at('a', 'pin'), at('b', 'pin')])).toHaveLength(1);
    expect(pieces(matrix, [at('a', 'pin'), at('b', 'far pin')])).toEqual(['a', 'b']);
    expect(pieces(matrix, [simpleTest('a'), simpleTest('b')])).toEqual(['a', 'b']);
  });
  test('that speak against different rivals are two', () => {
    const matrix = [
      [0, 0],
      [1, 0],
      [0, 1],
    ];
    expect(pieces(matrix, [at('a', 'pin'), at('b', 'pin')])).toEqual(['a', 'b']);
  });
});
