/** What is good for this car: what tells it, when it is worth telling, and when it tells little. */
import { expect, it } from 'vitest';
import { goodHere, isNarrower } from '../../src/session/good-here.ts';

const range = (low: number | null, high: number | null) => ({ kind: 'number', low, high }) as const;

it.each([
  // low, high, unit, wide
  [11.6, 12.0, 'V', false],
  [4.9, 14.6, 'V', true], // over a third of 12.6 V
  [1.2, 4.0, 'V', true], // more than three times
  [0.002, 0.05, 'V', false], // a drop
  [0, 0.1, 'V', false],
  [190, 2500, 'ohm', true],
  [800, 1200, 'ohm', false],
  [0, 0.5, 'ohm', false],
  [10_000_000, null, 'ohm', false], // OL
] as const)('%d to %d %s is wide: %s', (low, high, unit, wide) => {
  const found = goodHere({ expected: range(low, high), unit, batteryVolts: 12.6, told: [] });
  expect(found).toMatchObject({ isWide: wide, from: null });
});

it('comes from the reading that narrowed it most, and from none that hardly did', () => {
  const told = [
    { event: 3, before: range(0, 15), after: range(10, 15) },
    { event: 5, before: range(10, 15), after: range(11.7, 12.2) },
    { event: 6, before: range(11.7, 12.2), after: range(11.71, 12.2) },
  ];
  const ask = { expected: range(11.7, 12.2), unit: 'V', batteryVolts: 12.6 } as const;
  expect(goodHere({ ...ask, told })?.from).toBe(5);
  expect(goodHere({ ...ask, told: told.slice(2) })?.from).toBeNull();
});

it('is none for looks', () => {
  const expected = { kind: 'look', looks: ['lit'] } as const;
  expect(goodHere({ expected, unit: 'V', batteryVolts: 12.6, told: [] })).toBeNull();
});

it('is told beside a range that it narrows and touches', () => {
  expect(isNarrower(range(11.7, 12.2), range(11.5, 14.6))).toBe(true);
  expect(isNarrower(range(11.7, 12.2), range(11.8, 12.2))).toBe(false);
  expect(isNarrower(range(11.7, 12.2), range(4.5, null))).toBe(true);
  expect(isNarrower(range(1, 1.2), range(4.5, null))).toBe(false);
});
