/** The end of a search for a fault that does not come: when it may be said, and in which words. */
import { expect, test } from 'vitest';
import type { Basis } from '../../src/session/basis.ts';
import { isWorthSearching, nothingFound } from '../../src/session/nothing-found.ts';

/** A fault and a sound circuit, with the chance of the sound one before the readings and after, and what it must misread. */
function basis(before: number, after: number, misread: readonly number[] = []): Basis {
  return {
    space: {
      table: { candidates: [{ id: 'wire.a.open~~' }, { id: 'healthy' }] },
      prior: Float64Array.of(1 - before, before),
    },
    standing: {
      ranking: {
        chances: Float64Array.of(1 - after, after),
        misfitsOf: (at: number) => (at === 1 ? misread : []),
      },
    },
  } as unknown as Basis;
}

test('it says how far the chance fell, and names no fault', () => {
  const end = nothingFound(basis(0.05, 0.2))!;
  expect(end.words).toContain('fell from 95 % to 80 %');
  expect([end.faults, end.chance]).toEqual([[], 0.2]);
});

test.each<[string, Basis]>([
  ['the readings speak for a fault', basis(0.05, 0.04)],
  ['a sound car shows one of them by a slip only', basis(0.05, 0.2, [3])],
])('it is not said where %s', (_, of) => {
  expect(nothingFound(of)).toBeNull();
});

test.each<[number, number, boolean]>([
  [6, 0.1, true],
  [6.5, 0.1, false],
  [1, 0.09, false],
  [12, 0.2, true],
])(
  'a test of %s minutes that shows a fault with a chance of %s is worth it: %s',
  (minutes, chance, isWorth) => {
    expect(isWorthSearching({ minutes, chance })).toBe(isWorth);
  },
);
