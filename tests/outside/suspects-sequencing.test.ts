/**
 * Test sequencing against the example of Pattipati and Alexandridis (IEEE T-SMC 20(4), 1990, 872-887). The matrix is
 * from memory; the optimum recalled with it, 2.18, comes out of it exactly. All other numbers were computed from the
 * matrix by a separate program, by trying every strategy. Unit costs.
 */
import { describe, expect, test } from 'vitest';
import { EXACT_MODEL } from '../../src/suspects/error-model.ts';
import { huffmanLength } from '../../src/suspects/huffman.ts';
import { proposeTests } from '../../src/suspects/next-test.ts';
import { AT_THE_START, findOptimum, type OptimumOptions } from '../../src/suspects/optimum.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { priorFor } from '../../src/suspects/prior.ts';
import { entropyBits, rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { expectedMinutes } from '../../src/suspects/strategy.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { findGroups } from '../suspects/groups.ts';
import { look, matrixTable, READING_ONLY } from '../suspects/tables.ts';

const CHANCES = [0.7, 0.01, 0.02, 0.1, 0.05, 0.12];
const MATRIX = [
  [0, 0, 0, 0, 0],
  [0, 1, 0, 0, 1],
  [0, 0, 1, 1, 0],
  [1, 0, 0, 1, 1],
  [1, 1, 0, 0, 0],
  [1, 1, 1, 1, 0],
];
const candidates = CHANCES.map((weight, index) => ({
  id: index === 0 ? 'healthy' : `s${index}`,
  repair: index === 0 ? 'healthy' : `r${index}`,
  weight,
}));
const table = matrixTable(candidates, MATRIX);
const free: OptimumOptions = { costs: READING_ONLY, start: { ...AT_THE_START, state: 'key-on' } };

describe('the example of 1990', () => {
  test('the cheapest strategy takes 2.18 tests and starts with the second or the fourth', () => {
    const found = findOptimum(table, free);
    expect(found.exact).toBe(true);
    expect(found.minutes).toBeCloseTo(2.18, 12); // recalled from the paper, recomputed
    expect(found.bound).toBeCloseTo(2.18, 12);
    expect(expectedMinutes(found.strategy)).toBeCloseTo(2.18, 12);
    expect(found.strategy.kind === 'test' && [1, 3].includes(found.strategy.test)).toBe(true);
  });
  test('one step ahead only, it would take 2.86', () => {
    expect(findOptimum(table, free).greedyMinutes).toBeCloseTo(2.86, 12); // computed
  });
  test.each([
    // computed: best strategy by its first test = 1 + what the two halves then cost
    [0, 2.86],
    [1, 2.18],
    [2, 2.82],
    [3, 2.18],
    [4, 2.89],
  ])('started with test %d the best takes %d', (first, cost) => {
    let minutes = 1;
    for (const outcome of [0, 1]) {
      const chances = Float64Array.from(CHANCES, (chance, s) =>
        MATRIX[s]![first] === outcome ? chance : 0,
      );
      const mass = chances.reduce((a, b) => a + b, 0);
      minutes += mass * findOptimum(table, { ...free, chances }).minutes;
    }
    expect(minutes).toBeCloseTo(cost, 12);
  });
  test.each([
    // computed
    [0, 0.841465],
    [1, 0.680077],
    [2, 0.584239],
    [3, 0.79504],
    [4, 0.499916],
  ])('test %d tells %d bit', (index, bits) => {
    const ranking = rankSuspects(table, [], priorFor(candidates), { errorModel: EXACT_MODEL });
    const { all } = proposeTests(table, ranking, {
      now: { ...AT_THE_START, state: 'key-on' },
      means: ALL_MEANS,
      costs: READING_ONLY,
      outcomes: outcomesOf(table),
    });
    expect(all.find((one) => one.test === index)!.bits).toBeCloseTo(bits, 6);
  });
  test('guided from test to test, it takes 2.18 as well', () => {
    let total = 0;
    candidates.forEach((_, truth) => {
      total += CHANCES[truth]! * guidedTests(truth);
    });
    expect(total).toBeCloseTo(2.18, 12);
  });
  test.each([
    // computed by Bayes' rule from the matrix
    ['second test fails', 1, 1, [0, 0.055556, 0, 0, 0.277778, 0.666667]],
    ['second test passes', 1, 0, [0.853659, 0, 0.02439, 0.121951, 0, 0]],
    ['first test fails', 0, 1, [0, 0, 0, 0.37037, 0.185185, 0.444444]],
  ] as const)('chances after the %s', (_, index, outcome, expected) => {
    const ranking = rankSuspects(table, [{ test: index, shown: look(outcome) }], undefined, {
      errorModel: EXACT_MODEL,
    });
    expected.forEach((chance, s) => {
      expect(ranking.chances[s]).toBeCloseTo(chance, 6);
    });
  });
  test('bounds: entropy 1.454873 bit, best code 1.59 tests', () => {
    expect(entropyBits(CHANCES)).toBeCloseTo(1.454873, 6); // computed
    expect(huffmanLength(CHANCES)).toBeCloseTo(1.59, 12); // computed
  });
  test('groups that tests leave together', () => {
    const two = findGroups(table, { tests: [0, 1], outcomes: outcomesOf(table) });
    expect(two.groups.map((group) => group.candidates)).toEqual([[0, 2], [1], [3], [4, 5]]); // computed
    expect(two.detectedFraction).toBeCloseTo(0.28 / 0.3, 12); // 0.933333, weighted
    expect(two.isolatedFraction(1)).toBeCloseTo(0.11 / 0.28, 12); // 0.392857, weighted
    const three = findGroups(table, { tests: [0, 1, 2], outcomes: outcomesOf(table) });
    expect(three.groups).toHaveLength(6);
    expect(three.meanGroupSize).toBe(1);
  });
  test('the same counted without weights', () => {
    const even = matrixTable(
      candidates.map((one) => ({ ...one, weight: 1 })),
      MATRIX,
    );
    const { detectedFraction, isolatedFraction } = findGroups(even, {
      tests: [0, 1],
      outcomes: outcomesOf(even),
    });
    expect(detectedFraction).toBeCloseTo(4 / 5, 12); // computed
    expect(isolatedFraction(1)).toBeCloseTo(2 / 4, 12); // computed
  });
});

describe("Huffman's code", () => {
  test.each([
    // Cover and Thomas, Elements of Information Theory, from memory, recomputed
    [[0.25, 0.25, 0.2, 0.15, 0.15], 2.3, 2.285475],
    // an encyclopedia's example, from memory, recomputed
    [[0.1, 0.15, 0.3, 0.16, 0.29], 2.25, 2.204748],
  ])('%j takes %d letters, entropy %d', (chances, length, bits) => {
    expect(huffmanLength(chances)).toBeCloseTo(length, 12);
    expect(entropyBits(chances)).toBeCloseTo(bits, 6);
  });
  test('with three letters and four things one letter stays free: 0.1 0.2 0.3 0.4 takes 1.3', () => {
    expect(huffmanLength([0.1, 0.2, 0.3, 0.4], 3)).toBeCloseTo(1.3, 12); // by hand: 0.3 + 1
  });
  test('with three letters: 0.25 0.25 0.2 0.15 0.15 takes 1.5', () => {
    expect(huffmanLength([0.25, 0.25, 0.2, 0.15, 0.15], 3)).toBeCloseTo(1.5, 12); // Cover and Thomas, from memory
  });
});

function guidedTests(truth: number): number {
  const readings: { test: number; shown: ReturnType<typeof look> }[] = [];
  for (let count = 0; count < 10; count += 1) {
    const ranking = rankSuspects(table, readings, undefined, { errorModel: EXACT_MODEL });
    if (ranking.repairs[0]!.chance > 1 - 1e-9) return count;
    const { best } = proposeTests(table, ranking, {
      now: { ...AT_THE_START, state: 'key-on' },
      means: ALL_MEANS,
      costs: READING_ONLY,
      outcomes: outcomesOf(table),
    });
    const { test: next } = best[0]!;
    readings.push({ test: next, shown: look(MATRIX[truth]![next]!) });
  }
  throw new Error('guidance does not end');
}
