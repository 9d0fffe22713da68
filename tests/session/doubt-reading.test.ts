import { expect, it } from 'vitest';
import { judgeReading } from '../../src/circuit/judge.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { doubtReading } from '../../src/session/doubt-reading.ts';

const SWAPPED = /leads look swapped/;
const OVER = /over limit on a volts range/;
const DEAD_METER = /blown fuse/;

it.each([
  // value, unit, low, high
  [-4.97, 'V', 4.81, 5.18, SWAPPED],
  [4.97, 'V', -5.18, -4.81, SWAPPED],
  [-0.03, 'V', 0, 0.1, SWAPPED],
  [4.97, 'V', 4.81, 5.18, null],
  [12.3, 'V', Number.NEGATIVE_INFINITY, 0.1, null], // a supply that is lost, and no matter of the leads
  [-12.3, 'V', 4.7, Number.POSITIVE_INFINITY, SWAPPED],
  [-4.2, 'V', 4.81, 5.18, null], // exchanged it would be low too
  [-0.02, 'V', -0.1, 0.1, null], // good as it is
  [0.02, 'V', 4.81, 5.18, null],
  [Number.POSITIVE_INFINITY, 'V', 4.81, 5.18, OVER],
  [Number.POSITIVE_INFINITY, 'ohm', 800, 1200, null],
  // a blown fuse where less than 2 ohm are good: no matter of the leads
  [Number.POSITIVE_INFINITY, 'ohm', Number.NEGATIVE_INFINITY, 2, null],
  [-1, 'ohm', 800, 1200, null],
  [-1000, 'ohm', 800, 1200, null], // ohms have no sign
  // no current at all: the meter's own fuse first
  [0, 'A', 0.0055, 0.0172, DEAD_METER],
  [-0.00002, 'A', 0.0055, 0.0172, DEAD_METER],
  [0.002, 'A', 0.0055, 0.0172, null],
  [0, 'A', 0, 0.001, null],
  [-0.007, 'A', 0.0055, 0.0172, SWAPPED],
] as const)('%d %s where %d to %d is good', (value, unit, low, high, words) => {
  const { meter } = STANDARD_SETTINGS;
  const said = doubtReading(value, unit, (one) => judgeReading(one, unit, { low, high }, meter));
  if (words === null) expect(said).toBeNull();
  else expect(said).toMatch(words);
});

it('over limit is asked about where nothing is expected, too', () => {
  expect(doubtReading(Number.POSITIVE_INFINITY, 'V', () => null)).toMatch(OVER);
  expect(doubtReading(-5, 'V', () => null)).toBeNull();
});

it('a reading whose opposite nobody can judge is not doubted', () => {
  const low = { verdict: 'low', chance: 0, words: '' } as const;
  expect(doubtReading(-5, 'V', (value) => (value < 0 ? low : null))).toBeNull();
});

it('what is below every limit, or near one, is not over limit', () => {
  expect(doubtReading(Number.NEGATIVE_INFINITY, 'V', () => null)).toBeNull();
  expect(doubtReading(600, 'V', () => null)).toBeNull();
});
