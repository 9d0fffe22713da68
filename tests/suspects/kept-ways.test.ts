/** What many cars show, kept in numbers. */
import { describe, expect, test } from 'vitest';
import type { Way } from '../../src/suspects/fact.ts';
import { KeptWays } from '../../src/suspects/kept-ways.ts';

/** What is kept comes back, of all cars, whatever is asked for first. */
function again(cars: readonly (readonly Way[])[]): readonly (readonly Way[])[] {
  const made = new KeptWays();
  for (const car of [...cars.keys()].reverse()) made.at(car, () => cars[car]!);
  return cars.map((_, car) =>
    made.at(car, () => {
      throw new Error('worked out again');
    }),
  );
}
const volts = (value: number, share = 1): Way => ({
  shown: { kind: 'number', value, unit: 'V' },
  share,
});
const look = (name: 'lit' | 'dim' | 'dark', share = 1): Way => ({
  shown: { kind: 'look', look: name },
  share,
});

describe('ways that were kept', () => {
  test('come back as they were, numbers to the bit', () => {
    const cars = [
      [volts(0.1 + 0.2, 0.3), volts(5, 0.7)],
      [volts(Number.POSITIVE_INFINITY, 0.25), volts(-0, 0.75)],
    ];
    expect(again(cars)).toEqual(cars);
  });
  test('and looks', () => {
    const cars = [[look('lit')], [look('dark')], [look('lit')]];
    expect(again(cars)).toEqual(cars);
  });
  test('are as many as each car has', () => {
    const cars = [[volts(1)], [volts(1, 0.5), volts(2, 0.5)], [volts(3)]];
    expect(again(cars)).toEqual(cars);
  });
  test('are worked out when they are first asked for', () => {
    const asked: number[] = [];
    const made = new KeptWays();
    const waysOf = (car: number) => {
      asked.push(car);
      return [volts(car)];
    };
    expect([4, 1, 4].map((car) => made.at(car, waysOf))).toEqual([
      [volts(4)],
      [volts(1)],
      [volts(4)],
    ]);
    expect(asked).toEqual([4, 1]);
  });
});
