/**
 * Bayes' rule and the next measurement on the three-multiplier, two-adder circuit of de Kleer and Williams (Artificial
 * Intelligence 32, 1987, 97-130). Inputs, observations and the consistent sets of broken parts: seen in the slides of
 * B. Williams, MIT 16.412J, 2004; minimal diagnoses and "measure X first" from memory for the paper; all chances and
 * entropies computed by a separate program (each part broken with chance 0.01, 16 equally likely wrong outputs).
 */
import { describe, expect, test } from 'vitest';
import { EXACT_MODEL } from '../../src/suspects/error-model.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { expectedDrop } from '../../src/suspects/next-test.ts';
import { findOutcomes, type OutcomeSpec } from '../../src/suspects/outcomes.ts';
import { buildTable, type PredictionTable } from '../../src/suspects/prediction-table.ts';
import { type Ranking, rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { look, simpleTest } from '../suspects/tables.ts';

const PARTS = ['A1', 'A2', 'M1', 'M2', 'M3'] as const;
const POINTS = ['F', 'G', 'X', 'Y', 'Z'] as const;
const WAYS = 16;
/** Up to three broken parts; four or five together have a chance below 1e-8. */
const BROKEN_MAX = 3;

interface Values {
  F: number;
  G: number;
  X: number;
  Y: number;
  Z: number;
}

/** All values when the broken parts put out `wrong`, in arithmetic of 16 values. */
function compute(broken: readonly string[], wrong: (part: string) => number): Values {
  const out = (part: string, right: number) => (broken.includes(part) ? wrong(part) : right % WAYS);
  const X = out('M1', 3 * 2);
  const Y = out('M2', 2 * 3);
  const Z = out('M3', 2 * 3);
  return { X, Y, Z, F: out('A1', X + Y), G: out('A2', Y + Z) };
}

const subsets = Array.from({ length: 2 ** PARTS.length }, (_, bits) =>
  PARTS.filter((_, index) => bits & (1 << index)),
).filter((broken) => broken.length <= BROKEN_MAX);
const candidates = subsets.map((broken) => ({
  id: broken.join('+') || 'healthy',
  repair: broken.join('+') || 'healthy',
  weight: 0.01 ** broken.length * 0.99 ** (PARTS.length - broken.length),
}));
const brokenOf = new Map(candidates.map(({ id }, index) => [id, subsets[index]!]));
const tests = POINTS.map((id) => simpleTest(id));

/** Sample number = what the broken parts put out, as a number to base 16. */
const table = buildTable(
  candidates,
  tests,
  (id, { id: point }, sample) => {
    const broken = brokenOf.get(id)!;
    const values = compute(
      broken,
      (part) => Math.floor(sample / WAYS ** broken.indexOf(part as 'A1')) % WAYS,
    );
    return { kind: 'number', value: values[point as keyof Values], unit: 'V' };
  },
  WAYS ** BROKEN_MAX,
);

function at(point: (typeof POINTS)[number], value: number): Reading {
  return { test: POINTS.indexOf(point), shown: { kind: 'number', value, unit: 'V' } };
}
function rankAfter(readings: readonly Reading[], of: PredictionTable = table): Ranking {
  return rankSuspects(of, readings, undefined, { errorModel: EXACT_MODEL });
}
function chance(ranking: Ranking, id: string): number {
  return ranking.suspects.find((suspect) => suspect.id === id)!.chance;
}

const observed = [at('F', 10), at('G', 12)];
const ranking = rankAfter(observed);

describe('F shows 10 instead of 12, G shows 12', () => {
  test('the smallest sets of broken parts that explain it', () => {
    const possible = ranking.suspects
      .filter((suspect) => suspect.chance > 0)
      .map(({ id }) => brokenOf.get(id)!);
    const minimal = possible.filter(
      (one) =>
        !possible.some(
          (other) => other.length < one.length && other.every((part) => one.includes(part)),
        ),
    );
    const names = minimal.map((one) => one.join('+')).sort();
    expect(names).toEqual(['A1', 'A2+M2', 'M1', 'M2+M3']); // from memory, and by enumeration
  });
  test.each([
    // computed
    ['A1', 0.496225],
    ['M1', 0.496225],
    ['A1+M1', 0.005012],
    ['A2+M2', 0.000313],
    ['M2+M3', 0.000313],
    ['A1+M2', 0.000313],
  ])('%s has a chance of %d', (id, expected) => {
    expect(Math.abs(chance(ranking, id) - expected)).toBeLessThan(1e-6);
  });
  test('1.071352 bit of uncertainty', () => {
    // computed over all 32 sets; the six of four or five parts, left out here, hold 4e-6 bit
    expect(Math.abs(ranking.entropyBits - 1.071352)).toBeLessThan(5e-6);
  });
  test.each([
    // computed; counted are the two values that a single broken part predicts, as the separate program did
    ['X', [4, 6], 0.03817],
    ['Y', [4, 6], 1.06352],
    ['Z', [6, 8], 1.06697],
  ] as const)('measuring %s, values %j, leaves %d bit on average', (point, values, bits) => {
    const left = values.reduce(
      (sum, value) =>
        sum + chanceOf(point, value) * rankAfter([...observed, at(point, value)]).entropyBits,
      0,
    );
    expect(Math.abs(left - bits)).toBeLessThan(1e-5);
  });
  test.each([
    // computed by enumeration over all 16 values and all 32 sets
    ['X', 0.038337],
    ['Y', 1.063548],
    ['Z', 1.067007],
  ] as const)('measuring %s leaves %d bit when all 16 values count', (point, bits) => {
    expect(Math.abs(ranking.entropyBits - drop(point) - bits)).toBeLessThan(5e-6);
  });
  test('so X is measured first', () => {
    // from memory for the paper
    expect(drop('X')).toBeGreaterThan(drop('Y'));
    expect(drop('X')).toBeGreaterThan(drop('Z'));
  });
  test.each([
    // computed
    [6, 'A1', 0.9962],
    [4, 'M1', 0.99747],
  ])('X = %d leaves %s with %d', (value, id, expected) => {
    expect(Math.abs(chance(rankAfter([...observed, at('X', value)]), id) - expected)).toBeLessThan(
      5e-5,
    );
  });
  test('when a wrong output is taken to fit any observation, singles 0.478026 and doubles 0.004829', () => {
    const possible = new Set(ranking.suspects.filter((one) => one.chance > 0).map(({ id }) => id));
    const fits = buildTable(
      candidates,
      [simpleTest('F and G')],
      (id) => look(possible.has(id) ? 1 : 0),
      1,
    );
    const plain = rankAfter([{ test: 0, shown: look(1) }], fits);
    // Computed over all 32 sets; without the 6 largest here, so to 5 parts in 10,000.
    expect(chance(plain, 'A1')).toBeCloseTo(0.478026, 4);
    expect(chance(plain, 'M1')).toBeCloseTo(0.478026, 4);
    expect(chance(plain, 'A2+M2')).toBeCloseTo(0.004829, 5);
  });
});

/** Chance that a point has a value, before it is measured. */
function chanceOf(point: (typeof POINTS)[number], value: number): number {
  const { values } = table.column(POINTS.indexOf(point));
  let sum = 0;
  ranking.sampleShares.forEach((share, place) => {
    if (values[place] === value) sum += ranking.chances[Math.floor(place / table.samples)]! * share;
  });
  return sum;
}

function drop(point: (typeof POINTS)[number]): number {
  const values = Array.from(
    { length: WAYS },
    (_, value): OutcomeSpec => ({
      kind: 'range',
      id: String(value),
      from: value - 0.5,
      below: value + 0.5,
    }),
  );
  return expectedDrop(table, ranking, findOutcomes(table, POINTS.indexOf(point), values));
}
