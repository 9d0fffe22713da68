/** Laws that hold for every table. */

import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { CaseMeasures } from '../../src/suspects/case-measures.ts';
import { splitIntoCases } from '../../src/suspects/cases.ts';
import { huffmanLength } from '../../src/suspects/huffman.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { proposeTests } from '../../src/suspects/next-test.ts';
import { AT_THE_START, findOptimum } from '../../src/suspects/optimum.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import {
  buildTable,
  type Candidate,
  type PredictionTable,
} from '../../src/suspects/prediction-table.ts';
import { priorFor } from '../../src/suspects/prior.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { expectedMinutes } from '../../src/suspects/strategy.ts';
import { ALL_MEANS, COSTS } from '../../src/suspects/test-cost.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';
import { asOutcomes, guidedMinutes } from './guided.ts';
import { matrixTable, READING_ONLY, simpleTest, voltsTable } from './tables.ts';

const SHORT = process.env.OHMWARD_SHORT === '1';
const RUNS = LONG ? 500 : SHORT ? 4 : 40;
const seeds = fc.integer({ min: 1, max: 1_000_000 });

function smallTable(seed: number): PredictionTable {
  return voltsTable({ seed, faults: 8, tests: 6, samples: 6 });
}

/** What a fault shows in some tests, with a few readings that fit nothing. */
function someReadings(table: PredictionTable, seed: number): Reading[] {
  const random = seededRandom(seed * 31 + 1);
  const truth = Math.floor(random() * table.candidates.length);
  return [...table.tests.keys()]
    .filter(() => random() < 0.7)
    .map((index) => {
      const shown = table.shown(index, truth)[Math.floor(random() * table.samples)]!;
      const wrong = shown.kind === 'number' && random() < 0.2;
      return { test: index, shown: wrong ? { ...shown, value: random() * 15 } : shown };
    });
}

function shuffled<T>(list: readonly T[], seed: number): T[] {
  const random = seededRandom(seed);
  return list
    .map((one) => ({ one, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => one);
}

describe('ranking', () => {
  test('chances lie between 0 and 1 and sum to 1, for suspects, repairs and samples', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const table = smallTable(seed);
        const ranking = rankSuspects(table, someReadings(table, seed));
        for (const list of [ranking.suspects, ranking.repairs]) {
          expect(list.every(({ chance }) => chance >= 0 && chance <= 1 + 1e-12)).toBe(true);
          expect(list.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
        }
        table.candidates.forEach((_, row) => {
          const shares = ranking.sampleShares.subarray(
            row * table.samples,
            (row + 1) * table.samples,
          );
          expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
        });
      }),
      { numRuns: RUNS },
    );
  });
  test('with pairs the singles and the pairs sum to 1', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const table = smallTable(seed);
        const showsPair = (first: string, second: string, index: number): readonly Shown[] => {
          const [a, b] = [first, second].map((id) =>
            table.candidates.findIndex((one) => one.id === id),
          );
          const [one, two] = [table.shown(index, a!), table.shown(index, b!)];
          return one.map((shown, sample) =>
            JSON.stringify(shown) === JSON.stringify(table.shown(index, 0)[sample])
              ? two[sample]!
              : shown,
          );
        };
        const { suspects, pairs } = rankSuspects(table, someReadings(table, seed), undefined, {
          showsPair,
        });
        const sum = [...suspects, ...pairs].reduce((total, { chance }) => total + chance, 0);
        expect(sum).toBeCloseTo(1, 12);
      }),
      { numRuns: RUNS },
    );
  });
  test('the order of the readings does not matter', () => {
    fc.assert(
      fc.property(seeds, seeds, (seed, order) => {
        const table = smallTable(seed);
        const readings = someReadings(table, seed);
        const one = rankSuspects(table, readings);
        const other = rankSuspects(table, shuffled(readings, order));
        one.chances.forEach((chance, index) => {
          expect(Math.abs(chance - other.chances[index]!)).toBeLessThan(1e-9);
        });
        expect(other.explained).toBe(one.explained);
      }),
      { numRuns: RUNS },
    );
  });
  test('the order and names of the suspects do not matter', () => {
    fc.assert(
      fc.property(seeds, seeds, (seed, order) => {
        const table = smallTable(seed);
        const renamed = relabelled(table, order);
        const readings = someReadings(table, seed);
        const one = rankSuspects(table, readings);
        const other = rankSuspects(renamed.table, readings);
        renamed.from.forEach((old, index) => {
          expect(Math.abs(other.chances[index]! - one.chances[old]!)).toBeLessThan(1e-9);
        });
      }),
      { numRuns: RUNS },
    );
  });
});

describe('next test', () => {
  test('a test that shows the same under all suspects is worth nothing and is not proposed', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const table = smallTable(seed);
        const dull = buildTable(
          table.candidates,
          [...table.tests, simpleTest('dull')],
          (id, asked, sample): Shown => {
            if (asked.id === 'dull')
              return { kind: 'number', value: 5 + 0.1 * (sample / table.samples), unit: 'V' };
            const row = table.candidates.findIndex((one) => one.id === id);
            return table.shown(
              table.tests.findIndex((one) => one.id === asked.id),
              row,
            )[sample]!;
          },
          table.samples,
        );
        const ask = { now: AT_THE_START, means: ALL_MEANS, outcomes: outcomesOf(dull) };
        const { all, best } = proposeTests(dull, rankSuspects(dull, []), ask);
        expect(all.find(({ test: index }) => index === table.tests.length)!.bits).toBeLessThan(
          1e-9,
        );
        expect(best.some(({ test: index }) => index === table.tests.length)).toBe(false);
      }),
      { numRuns: RUNS },
    );
  });
  test('no test is worth less than nothing or more than what is unknown', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const table = smallTable(seed);
        const ranking = rankSuspects(table, someReadings(table, seed));
        const ask = { now: AT_THE_START, means: ALL_MEANS, outcomes: outcomesOf(table) };
        for (const { bits } of proposeTests(table, ranking, ask).all) {
          expect(bits).toBeGreaterThanOrEqual(0);
          expect(bits).toBeLessThanOrEqual(ranking.entropyBits + 1e-9);
        }
      }),
      { numRuns: RUNS },
    );
  });
});

/** A random matrix of looks, every candidate its own repair. */
function randomMatrix(seed: number, ways: number) {
  const random = seededRandom(seed);
  const count = 3 + Math.floor(random() * 5);
  const candidates: Candidate[] = Array.from({ length: count }, (_, index) => ({
    id: `s${index}`,
    repair: `r${index}`,
    weight: 0.05 + random(),
  }));
  const matrix = candidates.map(() => Array.from({ length: 6 }, () => Math.floor(random() * ways)));
  return { candidates, matrix };
}

describe('optimum', () => {
  test('best code <= optimum <= guided and greedy, and the optimum is what trying everything finds', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 2, max: 3 }), (seed, ways) => {
        const { candidates, matrix } = randomMatrix(seed, ways);
        const table = matrixTable(candidates, matrix);
        const found = findOptimum(table, {
          costs: READING_ONLY,
          start: { ...AT_THE_START, state: 'key-on' },
        });
        expect(found.exact).toBe(true);
        expect(found.greedyMinutes).toBeGreaterThanOrEqual(found.minutes - 1e-9);
        expect(guidedMinutes(table, READING_ONLY)).toBeGreaterThanOrEqual(found.minutes - 1e-9);
        expect(found.bound).toBeCloseTo(found.minutes, 9);
        expect(expectedMinutes(found.strategy)).toBeCloseTo(found.minutes, 9);
        const total = candidates.reduce((sum, { weight }) => sum + weight, 0);
        expect(found.minutes).toBeCloseTo(
          everything(
            matrix,
            candidates.map(({ weight }) => weight / total),
          ),
          9,
        );
        const signatures = new Map<string, number>();
        matrix.forEach((row, index) => {
          const key = row.join('');
          signatures.set(key, (signatures.get(key) ?? 0) + candidates[index]!.weight / total);
        });
        expect(found.minutes).toBeGreaterThanOrEqual(
          huffmanLength([...signatures.values()], ways) - 1e-9,
        );
      }),
      { numRuns: RUNS },
    );
  });
  test('names and order of suspects and tests do not change it, nor its bound', () => {
    fc.assert(
      fc.property(seeds, seeds, (seed, order) => {
        const table = asOutcomes(smallTable(seed));
        const other = relabelled(table, order).table;
        const [one, two] = [findOptimum(table), findOptimum(other)];
        expect(two.minutes).toBeCloseTo(one.minutes, 9);
        expect(two.bound).toBeCloseTo(one.bound, 9);
      }),
      { numRuns: RUNS },
    );
  });
  test.each([
    // by hand: 8 equal repairs need 3 tests of two outcomes, 9 equal repairs 2 tests of three
    [2, 3],
    [3, 2],
  ])(
    'with perfect tests of %d outcomes the bound is the optimum before any search',
    (ways, columns) => {
      const count = ways ** columns;
      const candidates = Array.from({ length: count }, (_, index) => ({
        id: `s${index}`,
        repair: `r${index}`,
        weight: 1,
      }));
      const matrix = candidates.map((_, index) =>
        Array.from({ length: columns }, (_, column) => Math.floor(index / ways ** column) % ways),
      );
      const table = matrixTable(candidates, matrix);
      expect(boundOf(table)).toBeCloseTo(columns, 9);
      expect(findOptimum(table, { costs: READING_ONLY, expansionsMax: 0 }).minutes).toBeCloseTo(
        columns,
        9,
      );
    },
  );
  test('the bound before any search is never above the optimum', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 2, max: 3 }), (seed, ways) => {
        const { candidates, matrix } = randomMatrix(seed, ways);
        const total = candidates.reduce((sum, { weight }) => sum + weight, 0);
        const chances = candidates.map(({ weight }) => weight / total);
        expect(boundOf(matrixTable(candidates, matrix))).toBeLessThanOrEqual(
          everything(matrix, chances) + 1e-9,
        );
      }),
      { numRuns: 5 * RUNS },
    );
  });
  test('the bound counts what it takes to get to the first test', () => {
    const far = simpleTest('far', { reaches: ['module'] });
    const table = matrixTable(
      ['a', 'b'].map((id) => ({ id, repair: id, weight: 1 })),
      [[0], [1]],
      [far],
    );
    const found = findOptimum(table, { expansionsMax: 0 });
    // By hand: the reading, the way to the module, the key, and the walk to the seat alone.
    const minutes = 1 + COSTS.accessMinutes + COSTS.keyMinutes + COSTS.aloneMinutes;
    expect(found.minutes).toBeCloseTo(minutes, 12);
    expect(found.bound).toBeCloseTo(minutes, 12);
  });
  test('stopped early, its bounds hold the true value', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 0, max: 12 }), (seed, expansionsMax) => {
        const table = smallTable(seed);
        const truth = findOptimum(table);
        expect(truth.exact).toBe(true);
        const early = findOptimum(table, { expansionsMax });
        expect(early.bound).toBeLessThanOrEqual(truth.minutes + 1e-9);
        expect(early.minutes).toBeGreaterThanOrEqual(truth.minutes - 1e-9);
        expect(early.minutes).toBeLessThanOrEqual(early.greedyMinutes + 1e-9);
      }),
      { numRuns: RUNS },
    );
  });
});

describe('guidance', () => {
  test('following the proposals takes at most 1.10 times the cheapest strategy', () => {
    const tables = LONG ? 200 : SHORT ? 2 : 12;
    const ratios = Array.from({ length: tables }, (_, seed) => {
      const table = asOutcomes(voltsTable({ seed: seed + 1, faults: 12, tests: 12, samples: 4 }));
      const found = findOptimum(table);
      expect(found.exact).toBe(true);
      return guidedMinutes(table) / found.minutes;
    });
    expect(Math.max(...ratios)).toBeLessThanOrEqual(1.1);
    expect(Math.min(...ratios)).toBeGreaterThanOrEqual(1 - 1e-9);
  });
});

/** The lower bound of the whole table at unit costs. */
function boundOf(table: PredictionTable): number {
  const all = [...table.tests.keys()];
  const cases = splitIntoCases(table, all, outcomesOf(table), priorFor(table.candidates));
  const measures = new CaseMeasures(cases, () => ({ place: 0, minutes: 1 }));
  const list = Uint16Array.from({ length: cases.count }, (_, index) => index);
  const information = measures.information(list);
  if (information < 1e-9) return 0;
  return measures.lowerBound({ cases: list, place: 0, weight: cases.mass }, information);
}

/** Expected tests of the best strategy, by trying every test at every point. */
function everything(matrix: readonly (readonly number[])[], chances: readonly number[]): number {
  const best = (left: readonly number[]): number => {
    let least = Infinity;
    const mass = left.reduce((sum, one) => sum + chances[one]!, 0);
    for (let column = 0; column < matrix[0]!.length; column += 1) {
      const parts = [0, 1, 2].map((outcome) =>
        left.filter((one) => matrix[one]![column] === outcome),
      );
      if (parts.filter((part) => part.length > 0).length < 2) continue;
      least = Math.min(least, mass + parts.reduce((sum, part) => sum + best(part), 0));
    }
    return least === Infinity ? 0 : least;
  };
  return best(matrix.map((_, index) => index));
}

/** The same table with suspects in another order and under other names; `from[new] = old`. */
function relabelled(
  table: PredictionTable,
  seed: number,
): { table: PredictionTable; from: number[] } {
  const from = shuffled([...table.candidates.keys()], seed);
  const candidates = from.map((old, index) => ({ ...table.candidates[old]!, id: `n${index}` }));
  const made = buildTable(
    candidates,
    table.tests,
    (id, asked, sample): Shown => {
      const old = from[Number(id.slice(1))]!;
      return table.shown(table.tests.indexOf(asked), old)[sample]!;
    },
    table.samples,
  );
  return { table: made, from };
}
