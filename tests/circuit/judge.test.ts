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
    expect(judgeReading(24, 'V', FEED, METER, limits).words).toContain('leads');
  });

  test('borderline words name the range and its step', () => {
    expect(judgeReading(4.9, 'V', FEED, METER).words).toBe(
      'too close to the edge for this meter; make sure it is on its 6 V range (steps of 1 mV), or repeat it',
    );
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

describe('the words of a verdict', () => {
  const words = (value: number, limits?: { low: number; high: number }) =>
    judgeReading(value, 'V', FEED, METER, limits).words;
  test('say on which side it lies', () => {
    expect(words(5)).toBe('within the expected range');
    expect(words(4.5)).toBe('below the expected range');
    expect(words(5.5)).toBe('above the expected range');
    expect(words(24, { low: 0, high: 13 })).toMatch(/^24 V cannot come from this circuit/);
  });
  test('beyond the highest range only a repeat helps', () => {
    const wide = { low: 0, high: 700 };
    expect(judgeReading(700, 'V', wide, METER)).toMatchObject({
      verdict: 'borderline',
      words: 'too close to the edge for this meter; repeat it',
    });
  });
  test('in ohms the range is one of the ohmmeter', () => {
    expect(judgeReading(600, 'ohm', { low: 500, high: 601 }, METER).words).toContain(
      'on its 600 \u03a9 range (steps of 0.1 \u03a9)',
    );
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
