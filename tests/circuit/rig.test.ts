/** A rig gives a car the same answer to the bit, whatever was asked before, and the answer of the whole circuit. */
import { describe, expect, test } from 'vitest';
import { looksShownBy } from '../../src/circuit/shown-by.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Shown, Test } from '../../src/circuit/test.ts';
import { freshModel, NAMES } from './shipped.ts';

/** Every so many tests and faults are looked at. */
const EACH = 7;
const CARS = 6;

function numberOf(shown: Shown, test: Test): number {
  if (shown.kind === 'number') return shown.value;
  return looksShownBy(test.probe).indexOf(shown.look);
}

describe.each(NAMES)('%s', (name) => {
  const model = freshModel(name);
  const tests = standardTests(model.circuit).map(({ test }) => test);
  const faults = ['healthy', ...model.circuit.faults.map(({ id }) => id)];
  const asked = faults.flatMap((fault, row) =>
    tests.flatMap((test, column) =>
      (row * tests.length + column) % EACH === 0 ? [{ fault, test }] : [],
    ),
  );

  test('shows the same to the bit in any order, by sample or by point', () => {
    expect(asked.length).toBeGreaterThan(50);
    const backwards = freshModel(name);
    const order = [...asked.keys()].reverse();
    const later = new Map<number, number[]>();
    for (const index of order) {
      const { fault, test } = asked[index]!;
      const cars = Array.from({ length: CARS }, (_, car) => CARS - 1 - car);
      const shown = cars.map((car) => numberOf(backwards.shows(fault, test, car, 'healthy'), test));
      later.set(index, shown.reverse());
    }
    asked.forEach(({ fault, test }, index) => {
      const single = Array.from({ length: CARS }, (_, car) =>
        numberOf(model.showsAt(fault, test, model.pointOf(car)), test),
      );
      expect(later.get(index), `${fault} ${JSON.stringify(test)}`).toEqual(single);
    });
  });
});
