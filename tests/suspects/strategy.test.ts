/** Strategies: minutes and lengths by hand, and what stands at the end of each way. */
import { expect, test } from 'vitest';
import { findOptimum } from '../../src/suspects/optimum.ts';
import { expectedMinutes, type Strategy } from '../../src/suspects/strategy.ts';
import type { Situation } from '../../src/suspects/test-cost.ts';
import { openWire, testAt } from './open-wire.ts';
import { longestPath, matrixTable, READING_ONLY, simpleTest } from './tables.ts';

const KEY_ON: Situation = { state: 'key-on', unplugged: [], reached: [] };

const end = (chance: number): Strategy => ({
  kind: 'conclude',
  chance,
  repairs: [],
  candidates: [],
});
const ask = (minutes: number, ...next: Strategy[]): Strategy => ({
  kind: 'test',
  test: 0,
  minutes,
  branches: next.map((one, index) => ({ outcome: String(index), next: one })),
});

test('minutes are those of each end, by its chance', () => {
  // by hand: 2 minutes for a half, 5 for the two quarters behind a second test of 3 minutes
  const strategy = ask(2, end(0.5), ask(3, end(0.25), end(0.25)));
  expect(expectedMinutes(strategy)).toBeCloseTo(3.5, 12);
  expect(longestPath(strategy)).toBe(2);
  // chances that do not sum to one count by their share
  expect(expectedMinutes(ask(2, end(0.2), ask(3, end(0.2))))).toBeCloseTo(3.5, 12);
  expect([expectedMinutes(end(1)), longestPath(end(1)), expectedMinutes(end(0))]).toEqual([
    0, 0, 0,
  ]);
});

test('an end names what is left, the likeliest repair first, its candidates in the order of the table', () => {
  const candidates = [
    { id: 'z', repair: 'Z', weight: 1 },
    { id: 'a', repair: 'A', weight: 1 },
    { id: 'b', repair: 'B', weight: 4 },
    { id: 'a2', repair: 'A', weight: 2 },
  ];
  // the first test parts z from the rest; nothing parts a, b and a2
  const table = matrixTable(candidates, [[0], [1], [1], [1]], [simpleTest('t', { minutes: 3 })]);
  const { strategy, minutes, exact, greedyMinutes, bound } = findOptimum(table, {
    costs: READING_ONLY,
  });
  expect([minutes, greedyMinutes, bound, exact]).toEqual([3, 3, 3, true]);
  if (strategy.kind !== 'test') throw new Error('one test is worth doing');
  expect(strategy).toMatchObject({ test: 0, minutes: 3 });
  const ends = strategy.branches.map(({ next }) => next);
  expect(ends).toEqual([
    {
      kind: 'conclude',
      chance: expect.closeTo(1 / 8, 12),
      repairs: [{ repair: 'Z', chance: 1 }],
      candidates: [0],
    },
    {
      kind: 'conclude',
      chance: expect.closeTo(7 / 8, 12),
      repairs: [
        { repair: 'B', chance: expect.closeTo(4 / 7, 12) },
        { repair: 'A', chance: expect.closeTo(3 / 7, 12) },
      ],
      candidates: [1, 2, 3],
    },
  ]);
});

test('chances of the ends are shares of what was looked at', () => {
  const candidates = [6, 3, 1].map((weight, index) => ({
    id: `f${index}`,
    repair: `r${index}`,
    weight,
  }));
  const table = matrixTable(candidates, [[0], [1], [2]], [simpleTest('t', { minutes: 3 })]);
  const { strategy, minutes, greedyMinutes, bound } = findOptimum(table, {
    costs: READING_ONLY,
    massKept: 0.85,
  });
  // by hand: six and three of nine tenths
  const ends = strategy.kind === 'test' ? strategy.branches.map(({ next }) => next) : [];
  expect(ends).toMatchObject([
    { kind: 'conclude', chance: expect.closeTo(2 / 3, 12), repairs: [{ repair: 'r0', chance: 1 }] },
    { kind: 'conclude', chance: expect.closeTo(1 / 3, 12), repairs: [{ repair: 'r1', chance: 1 }] },
  ]);
  for (const one of [minutes, greedyMinutes, bound]) expect(one).toBeCloseTo(3, 12);
});

test('the cheapest strategy for the open wire tells all four repairs apart in three tests at most', () => {
  const found = findOptimum(openWire, { start: KEY_ON });
  expect(found.exact).toBe(true);
  expect(longestPath(found.strategy)).toBeLessThanOrEqual(3);
});

test('a strategy has only tests that can be done', () => {
  const means = { has: ['meter', 'lead'], helper: false, without: [] };
  const used = testsIn(findOptimum(openWire, { start: KEY_ON, means }).strategy);
  expect(used.size).toBeGreaterThan(0);
  // the others need a test light, a spare sensor or somebody's eyes
  const able = ['pull-up at the sensor', 'pull-up at the module', 'bypass'];
  for (const place of used) expect(able).toContain(testAt(place));
});

test('where the unlikeliest are left out, the bound is per unit of the chance that is looked at', () => {
  const found = findOptimum(openWire, { start: KEY_ON, massKept: 0.8 });
  expect(found.cases.mass).toBeLessThan(0.95);
  expect(found.bound).toBeCloseTo(found.minutes, 9);
});

/** Places of all tests that are asked somewhere in it. */
function testsIn(strategy: Strategy, found = new Set<number>()): Set<number> {
  if (strategy.kind === 'conclude') return found;
  found.add(strategy.test);
  for (const { next } of strategy.branches) testsIn(next, found);
  return found;
}
