/** Judging a reading against an expected range with a workshop meter. */
import { describe, expect, test } from 'vitest';
import { judgeReading } from '../../src/circuit/judge.ts';
import { METER } from './shipped.ts';

const FEED = { low: 4.9, high: 5.1 };

describe('volts', () => {
  test.each([
    // reading, verdict: 0.5 % + 3 counts of 1 mV at 5 V is 28 mV, 16 mV standard
    [5.0, 'good'],
    [4.93, 'good'],
    [4.9, 'borderline'],
    [5.11, 'borderline'],
    [4.86, 'low'],
    [5.2, 'high'],
    [0, 'low'],
    [12.6, 'high'],
  ])('%f V against 4.9 to 5.1 V is %s', (value, verdict) => {
    expect(judgeReading(value, 'V', FEED, METER).verdict).toBe(verdict);
  });

  test('a reading that no fault can give is impossible, one at the edge of what can be is not', () => {
    const limits = { low: 0, high: 12.9 };
    expect(judgeReading(24, 'V', FEED, METER, limits).verdict).toBe('impossible');
    expect(judgeReading(-5, 'V', FEED, METER, limits).verdict).toBe('impossible');
    expect(judgeReading(12.9, 'V', FEED, METER, limits).verdict).toBe('high');
  });
});

describe('ohms', () => {
  test('OL is good where OL is expected, and high where a wire should be', () => {
    const open = { low: Number.POSITIVE_INFINITY, high: Number.POSITIVE_INFINITY };
    expect(judgeReading(Number.POSITIVE_INFINITY, 'ohm', open, METER).verdict).toBe('good');
    expect(
      judgeReading(Number.POSITIVE_INFINITY, 'ohm', { low: 0.09, high: 0.13 }, METER).verdict,
    ).toBe('high');
    expect(judgeReading(3, 'ohm', open, METER).verdict).toBe('low');
  });

  test('a range narrower than the meter can tell is judged as wide as the meter', () => {
    // 3 counts of 0.1 ohm: 0.11 ohm may read 0 to 0.4.
    expect(judgeReading(0.3, 'ohm', { low: 0.11, high: 0.11 }, METER).verdict).toBe('good');
    expect(judgeReading(2, 'ohm', { low: 0.11, high: 0.11 }, METER).verdict).toBe('high');
  });
});

test('the chance is that of the true value within the range', () => {
  // by hand: at an end of a wide range half of the normal lies within
  expect(judgeReading(4.9, 'V', { low: 4.9, high: 9 }, METER).chance).toBeCloseTo(0.5, 9);
  expect(judgeReading(5, 'V', FEED, METER).chance).toBeGreaterThan(0.999);
  // limits narrower than the meter can tell are widened like the range itself
  const exact = { low: 5, high: 5 };
  expect(judgeReading(5.04, 'V', exact, METER, exact).verdict).not.toBe('impossible');
  expect(judgeReading(5.2, 'V', exact, METER, exact).verdict).toBe('impossible');
});
