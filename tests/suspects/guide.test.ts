/** The guidance against its figures on the shipped circuits: a short form of `npm run bench guided`. */
import { describe, expect, test } from 'vitest';
import { loadLibrary } from '../../src/files/load-library.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { verdictOf } from '../../src/suspects/verdict.ts';
import { followGuide, testabilityOf } from '../bench/guided-bench.ts';
import { matrixTable } from './tables.ts';

const { circuits } = loadLibrary('procedures');

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

describe('all standard tests together, in the manner of IEEE 1522', () => {
  // Lower bounds as seen on the shipped circuits.
  test.each([
    ['current-two-wire', 1, 1],
    ['hall-module-fed', 1, 1],
    ['hall-relay-fed', 0.85, 1.3],
    ['pedal-dual', 1, 1],
    ['reluctor-two-wire', 1, 1],
    ['throttle-potentiometer', 1, 1],
  ])(
    '%s: at least %d of the faults isolated to one repair, groups of at most %d',
    (name, isolated, size) => {
      const found = testabilityOf(circuits.get(name)!);
      expect(found.detectedFraction).toBe(1);
      expect(found.isolatedFraction(1)).toBeGreaterThanOrEqual(isolated);
      expect(found.meanGroupSize).toBeLessThanOrEqual(size);
    },
  );
});

test('followed on a vehicle with each fault, the guide names the right repair and takes little more than the best way', () => {
  const found = followGuide(circuits.get('reluctor-two-wire')!, 2);
  expect(found.named).toBeGreaterThanOrEqual(0.99);
  expect(found.meanGroup).toBeLessThan(1.3);
  expect(found.minutes / found.optimum).toBeLessThanOrEqual(1.1);
});
