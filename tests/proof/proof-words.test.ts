/** Small wordings of the proof, and what passes where. */
import { describe, expect, test } from 'vitest';
import { passingOf } from '../../src/proof/passing.ts';
import { listed, quoted, sharePercent } from '../../src/proof/proof-words.ts';
import type { TreeWay } from '../../src/proof/walk-faults.ts';

test.each([
  [[], ''],
  [['a'], 'a'],
  [['a', 'b'], 'a and b'],
  [['a', 'b', 'c', 'd'], 'a, b, c and d'],
  [['a', 'b', 'c', 'd', 'e'], 'a, b, c and 2 more'],
])('%o is listed as "%s"', (names, words) => {
  expect(listed(names)).toBe(words);
});

test.each([
  [[], ''],
  [['a'], '"a"'],
  [['a', 'b'], '"a" or "b"'],
  [['a', 'b', 'c'], '"a", "b" or "c"'],
])('%o is quoted as %s', (names, words) => {
  expect(quoted(names, 'or')).toBe(words);
});

test.each([
  [0, '0 %'],
  [0.004, 'under 1 %'],
  [0.006, '1 %'],
  [0.5, '50 %'],
  [0.997, '99 %'],
  [1 - 1e-12, '100 %'],
  [1, '100 %'],
])('a share of %d is %s', (share, words) => {
  expect(sharePercent(share)).toBe(words);
});

describe('what passes an outcome', () => {
  const way = (fault: string, share: number, ...visits: (readonly [string, string | null])[]) =>
    ({
      fault,
      share,
      visits: visits.map(([step, outcome]) => ({ step, outcome })),
      samples: [],
      end: { kind: 'concluded', step: 'z' },
    }) satisfies TreeWay;
  const passing = passingOf([
    way('healthy', 1, ['a', 'good']),
    way('wire.open', 0.4, ['a', 'good'], ['b', 'low'], ['a', 'good']),
    way('wire.open', 0.2, ['a', 'good'], ['b', 'high']),
    way('wire.open', 0.4, ['a', 'bad'], ['c', null]),
    way('fuse', 0.3, ['b', 'low']),
    way('fuse', 0.7, ['b', 'low']),
  ]);
  test.each<[string, string, string[]]>([
    // by hand: shares of a fault add up over its ways, and a step that is passed twice counts once
    ['a', 'good', ['a healthy circuit', 'wire.open 60 %']],
    ['a', 'bad', ['wire.open 40 %']],
    ['b', 'low', ['wire.open 40 %', 'fuse']],
    ['c', '', ['wire.open 40 %']],
    ['c', 'low', []],
  ])('%s %s: %o', (step, outcome, names) => {
    expect(passing(step, outcome)).toEqual(names);
  });
});
