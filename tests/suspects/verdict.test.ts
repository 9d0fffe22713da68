/** When the repairs that are left are settled, and when one more test is worth its minutes. */
import { describe, expect, test } from 'vitest';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { verdictOf } from '../../src/suspects/verdict.ts';
import { matrixTable } from './tables.ts';

describe('the verdict', () => {
  const table = matrixTable(
    [
      { id: 'a', repair: 'A', weight: 4 },
      { id: 'b', repair: 'B', weight: 3 },
      { id: 'c', repair: 'C', weight: 2 },
    ],
    [
      [1, 0],
      [1, 0],
      [0, 1],
    ],
  );
  const ranking = rankSuspects(table, []);
  const verdict = (without: number[]) =>
    verdictOf(table, ranking, { means: ALL_MEANS, outcomes: outcomesOf(table), without });

  test('A and B look alike in every test and stay together; C is parted, so nothing is settled', () => {
    expect(verdict([])).toMatchObject({ group: ['A', 'B'], settled: false });
    expect(verdict([]).rest).toBeCloseTo(2 / 9, 12);
  });
  test('when no test is left all three are one group', () => {
    expect(verdict([0, 1])).toMatchObject({ group: ['A', 'B', 'C'], settled: true });
  });
});
