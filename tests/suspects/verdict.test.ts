/** When the repairs that are left are settled, and when one more test is worth its minutes. */
import { describe, expect, test } from 'vitest';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable } from '../../src/suspects/prediction-table.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { atOnce } from '../../src/suspects/slices.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { verdictOf as verdictInSlices } from '../../src/suspects/verdict.ts';

const verdictOf = (...of: Parameters<typeof verdictInSlices>) => atOnce(verdictInSlices(...of));

import { look, matrixTable, simpleTest } from './tables.ts';

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
  test('a repair with less than a fiftieth of the leader is out of the question', () => {
    const chances = (b: number) =>
      rankSuspects(table, [], Float64Array.from([1 - b - 0.001, b, 0.001]));
    const at = (b: number) =>
      verdictOf(table, chances(b), {
        means: ALL_MEANS,
        outcomes: outcomesOf(table),
        without: [0, 1],
      });
    expect(at(0.1)).toMatchObject({ group: ['A', 'B'], settled: true });
    expect(at(0.01)).toMatchObject({ group: ['A'], settled: true });
    expect(at(0.01).rest).toBeCloseTo(0.011, 12);
  });
  test('what is at least a twentieth of the leader and what is at most a twentieth in all count, to the point', () => {
    const at = (a: number, b: number, c: number) =>
      verdictOf(
        table,
        {
          ...ranking,
          repairs: [
            { repair: 'A', chance: a },
            { repair: 'C', chance: c },
            { repair: 'B', chance: b },
          ],
        },
        { means: ALL_MEANS, outcomes: outcomesOf(table), without: [0, 1] },
      );
    // a twentieth of a half is a fortieth
    expect(at(0.5, 0.025, 0.475)).toMatchObject({ group: ['A', 'C', 'B'], settled: true });
    expect(at(0.5, 0.024, 0.476).group).toEqual(['A', 'C']);
    // the first test parts C
    const rest = (c: number) =>
      verdictOf(
        table,
        {
          ...ranking,
          repairs: [
            { repair: 'A', chance: 1 - c },
            { repair: 'C', chance: c },
          ],
        },
        { means: ALL_MEANS, outcomes: outcomesOf(table), without: [1] },
      );
    expect(rest(0.05)).toEqual({ group: ['A'], rest: 0.05, settled: true });
    expect(rest(0.051)).toEqual({ group: ['A'], rest: 0.051, settled: false });
  });
  test('no test is asked for when nothing is left to part', () => {
    const asked: number[] = [];
    const outcomes = (index: number) => {
      asked.push(index);
      return outcomesOf(table)(index);
    };
    const two = rankSuspects(table, [], Float64Array.from([0.5, 0, 0.5]));
    const found = verdictOf(table, two, { means: ALL_MEANS, outcomes, without: [] });
    expect(found).toMatchObject({ group: ['A'], rest: 0.5, settled: false });
    expect(asked).toEqual([0]); // it parts C, and B is impossible
  });
  test('faults with one repair look as their chances and sizes have it', () => {
    // A shows dark with a1 only, B always
    const mixed = (one: number, other: number) => {
      const faults = buildTable(
        [
          { id: 'a1', repair: 'A', weight: one },
          { id: 'a2', repair: 'A', weight: other },
          { id: 'a3', repair: 'A', weight: other },
          { id: 'b', repair: 'B', weight: 1 },
        ],
        [simpleTest('t')],
        (id, _, sample) => look(id === 'b' || (id === 'a1' && sample === 0) ? 0 : 1),
        2,
      );
      const even = rankSuspects(faults, []);
      // the sizes of a1 that the readings leave: all of it dark
      const sampleShares = Float64Array.from([1, 0, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5]);
      return verdictOf(
        faults,
        { ...even, sampleShares },
        { means: ALL_MEANS, outcomes: outcomesOf(faults), without: [] },
      ).group;
    };
    expect(mixed(6, 1)).toEqual(['A', 'B']); // six of eight parts dark
    expect(mixed(2, 3)).toEqual(['A']); // two of eight
  });
  test('what is not at hand parts nothing', () => {
    const means = { ...ALL_MEANS, without: ['key-on'] as const };
    expect(
      verdictOf(table, ranking, { means, outcomes: outcomesOf(table), without: [] }),
    ).toMatchObject({
      group: ['A', 'B', 'C'],
    });
  });
  test('a test parts two repairs that show the same in at most half of the cases', () => {
    const share = (same: number) => {
      const mixed = buildTable(
        [
          { id: 'a', repair: 'A', weight: 1 },
          { id: 'b', repair: 'B', weight: 1 },
        ],
        [simpleTest('t')],
        (id, _, sample) => look(id === 'a' || sample < same ? 0 : 1),
        10,
      );
      return verdictOf(mixed, rankSuspects(mixed, []), {
        means: ALL_MEANS,
        outcomes: outcomesOf(mixed),
        without: [],
      }).group;
    };
    expect(share(5)).toEqual(['A']);
    expect(share(6)).toEqual(['A', 'B']);
  });
});
