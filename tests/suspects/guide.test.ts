/** The guidance against its figures on the shipped circuits: a short form of `npm run bench guided`. */
import { describe, expect, test } from 'vitest';
import { loadLibrary } from '../../src/files/load-library.ts';
import { followGuide, testabilityOf } from '../bench/guided-bench.ts';

const { circuits } = loadLibrary('procedures');

describe('all standard tests together, in the manner of IEEE 1522', () => {
  // Lower bounds as seen on the shipped circuits, over all cars: two wires that touch are not told apart by every car, nor
  // by any instrument a wheel that is gone from one that is too far away.
  test.each([
    ['current-two-wire', 0.96, 1.1],
    ['hall-module-fed', 0.95, 1.1],
    ['hall-relay-fed', 0.85, 1.3],
    ['pedal-dual', 1, 1],
    ['reluctor-two-wire', 1, 1],
    ['throttle-potentiometer', 0.98, 1.1],
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
  // Every ninth fault; the bench takes all of all circuits.
  const found = followGuide(circuits.get('reluctor-two-wire')!, 1, 9);
  expect(found.named).toBeGreaterThanOrEqual(0.99);
  // A pair is named where no test of this car tells the two apart.
  expect(found.meanGroup).toBeLessThan(1.4);
  // The planner knows the eight cars that it plans for, which nobody does who stands before another one.
  expect(found.minutes / found.optimum).toBeLessThanOrEqual(1.55);
});
