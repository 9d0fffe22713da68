/** What many cars show, kept in numbers. */
import { describe, expect, test } from 'vitest';
import type { Way } from '../../src/suspects/fact.ts';
import { KeptWays } from '../../src/suspects/kept-ways.ts';

function kept(...cars: readonly (readonly Way[])[]): KeptWays {
  const made = new KeptWays();
  for (const ways of cars) made.add(ways);
  return made;
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
    const made = kept(...cars);
    expect(made.count).toBe(2);
    expect([0, 1].map((car) => made.of(car))).toEqual(cars);
  });
  test('and looks', () => {
    const cars = [[look('lit')], [look('dark')], [look('lit')]];
    expect([0, 1, 2].map((car) => kept(...cars).of(car))).toEqual(cars);
  });
  test('are as many for each car', () => {
    expect(() => kept([volts(1)], [volts(1, 0.5), volts(2, 0.5)])).toThrow(
      'kept-ways: 2 ways instead of 1',
    );
    expect(() => kept([])).toThrow('0 ways');
    expect(new KeptWays().count).toBe(0);
  });
});
