/** Suspects in groups: how they share chances and likelihoods, and which readings are the same news. */
import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { evidenceKey, ratioOf, sameNews, samePlace } from '../../src/suspects/evidence-ratio.ts';
import {
  groupRows,
  likeliestOf,
  meanOver,
  memberChance,
  namedGroup,
} from '../../src/suspects/hypothesis-groups.ts';
import type { TableTest } from '../../src/suspects/prediction-table.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

const of = (...numbers: number[]) => Float64Array.from(numbers);
const group = (...members: number[]) => ({ members });

describe('a conclusion and its rivals', () => {
  const table = matrixTable(
    [
      { id: 'a1', repair: 'A', weight: 1 },
      { id: 'b1', repair: 'B', weight: 1 },
      { id: 'a2', repair: 'A', weight: 1 },
      { id: 'c1', repair: 'C', weight: 1 },
      { id: 'd1', repair: 'D', weight: 1 },
    ],
    [[0], [0], [0], [0], [0]],
  );
  test('all faults with a repair are in one group, the likeliest rival first', () => {
    const { concluded, others } = groupRows(
      table,
      new Set(['B', 'C']),
      of(0.1, 0.2, 0.25, 0.15, 0.3),
    );
    expect(concluded).toEqual({ members: [1, 3], chance: expect.closeTo(0.35, 12) });
    expect(others).toEqual([
      { repair: 'A', members: [0, 2], chance: expect.closeTo(0.35, 12) },
      { repair: 'D', members: [4], chance: 0.3 },
    ]);
    const { others: later } = groupRows(table, new Set(['B', 'C']), of(0.1, 0.2, 0.1, 0.1, 0.5));
    expect(later.map(({ repair }) => repair)).toEqual(['D', 'A']);
  });
  test('the faults that a conclusion names are less than all with their repair', () => {
    expect(namedGroup(table, ['c1', 'a1'])).toEqual(group(0, 3));
  });
  test('the likeliest of a group is the first of equals', () => {
    const chances = of(0.1, 0.4, 0.3, 0.4);
    expect(likeliestOf(group(0, 1, 2), chances)).toBe(1);
    expect(likeliestOf(group(1, 3), chances)).toBe(1);
    expect(likeliestOf(group(2, 3, 0), chances)).toBe(3);
  });
});

describe('the likelihood of a group', () => {
  test('is the mean over its members by their chance', () => {
    // by hand: (0.3 * 0.5 + 0.1 * 0.9) / 0.4
    expect(meanOver(of(0.5, 7, 0.9), group(0, 2), of(0.3, 0.6, 0.1))).toBeCloseTo(0.6, 9);
  });
  test('is the plain mean when all its members are out, and nothing when it has none', () => {
    expect(meanOver(of(0.5, 0.9), group(0, 1), of(0, 0))).toBeCloseTo(0.7, 12);
    expect(memberChance(of(0), 0)).toBeGreaterThan(0);
    expect(meanOver(of(0.5), group(), of(1))).toBe(0);
  });
  test.each([
    [0.6, 0.2, 3],
    [0.6, 0, Number.POSITIVE_INFINITY],
    [0, 0.2, 0],
    [0, 0, 1], // what neither can show speaks for neither
  ])('%f against %f makes a reading %f times likelier', (ours, theirs, ratio) => {
    expect(ratioOf(of(ours, theirs), group(0), group(1), of(0.5, 0.5))).toBeCloseTo(ratio, 9);
  });
});

describe('the same piece of news', () => {
  const asked = simpleTest('a', { family: 'signal', state: 'key-on', reaches: ['pin', 'plug'] });
  test.each<[string, Partial<TableTest>, boolean]>([
    ['under another name and from other connectors', { id: 'b', unplugged: ['plug'] }, true],
    ['its places named in another order', { reaches: ['plug', 'pin'] }, true],
    ['another kind', { family: 'ground' }, false],
    ['another state', { state: 'running' }, false],
    ['another place', { reaches: ['pin'] }, false],
  ])('%s', (_, more, isSame) => {
    expect(evidenceKey({ ...asked, ...more }) === evidenceKey(asked)).toBe(isSame);
  });
  const volts = (value: number) => ({ kind: 'number', unit: 'V', value }) as const;
  test.each<[Shown, Shown, boolean]>([
    [volts(0.251), volts(0.258), true],
    [volts(0.258), volts(4.9), false], // the neighbour was taken off, and the feed came back
    [volts(2.4), volts(4.9), false],
    [volts(2.5), volts(4.9), true],
    [volts(-5), volts(5), false],
    [volts(0), volts(0), true],
    [volts(Number.POSITIVE_INFINITY), volts(Number.POSITIVE_INFINITY), true],
    [volts(Number.POSITIVE_INFINITY), volts(5), false],
    [look(0), look(0), true],
    [look(0), look(1), false],
  ])('that shows %o and %o', (one, other, isSame) => {
    expect(sameNews(asked, { ...asked, unplugged: ['plug'] }, one, other)).toBe(isSame);
    expect(sameNews(asked, { ...asked, family: 'ground' }, one, other)).toBe(false);
  });
  test.each<[readonly string[] | undefined, readonly string[] | undefined, boolean]>([
    [['pin'], ['pin'], true],
    [['pin', 'ground'], ['pin', 'ground'], true],
    [['pin'], ['far pin'], false],
    [['pin'], undefined, false],
    [undefined, undefined, false], // nobody asks what they read
    [[], [], false], // only battery posts: no pin to be wrong about
  ])('read at %o and at %o', (one, other, isSame) => {
    const at = (reads: readonly string[] | undefined) => simpleTest('t', reads ? { reads } : {});
    expect(samePlace(at(one), at(other))).toBe(isSame);
  });
});
