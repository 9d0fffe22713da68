/**
 * Which values a test depends on is kept for all sessions of a process, and a session in which a fault comes and goes has one
 * value more in each car. It must find the same ones: else what a session says hangs on those before it.
 */
import { expect, test } from 'vitest';
import { ERROR_MODEL } from '../../src/suspects/error-model.ts';
import type { Fact } from '../../src/suspects/fact.ts';
import { SuspectCars } from '../../src/suspects/suspect-cars.ts';

const VALUES = 6;
const FACT: Fact = {
  ...{ test: 0, shown: { kind: 'number', value: 1, unit: 'V' }, readings: [0] },
  ...{ uncertainty: 0.01, slip: 0.02, blind: 1, ways: 2 },
};

/** Cars of which a test shows 1 V more for each value above a limit, so that it is not felt at every change. */
function feltWith(dims: number, limit: number): readonly number[] {
  const cars = new SuspectCars(
    {
      start: (count) => new Float64Array(count * dims).fill(limit - 0.05),
      isPossible: () => true,
      ways: (_, point) => {
        const value = point.subarray(0, VALUES).filter((one) => one > limit).length;
        return [{ shown: { kind: 'number', value, unit: 'V' }, share: 1 }];
      },
      redraw: () => {},
    },
    dims,
    ERROR_MODEL,
  );
  return [...cars.model.feltAtFirst(FACT)].sort();
}

test('one more value in a car changes nothing in which others a test depends on', () => {
  const limits = Array.from({ length: 19 }, (_, place) => (place + 1) / 20);
  const found = limits.map((limit) => feltWith(VALUES, limit));
  expect(new Set(found.map((felt) => felt.length)).size).toBeGreaterThan(2);
  expect(limits.map((limit) => feltWith(VALUES + 1, limit))).toEqual(found);
});
