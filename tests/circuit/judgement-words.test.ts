/** A judgement in words, made from the reading and the meter that showed it. */
import { expect, test } from 'vitest';
import { judgeReading, type Verdict } from '../../src/circuit/judge.ts';
import { judgementWords } from '../../src/circuit/judgement-words.ts';
import { METER } from './shipped.ts';

const FEED = { low: 4.9, high: 5.1 };
const said = (verdict: Verdict, value: number | null, unit: 'V' | 'ohm') =>
  judgementWords({ verdict, chance: 0.5 }, { value, unit }, METER);

test.each([
  [5, 'within the expected range'],
  [4.5, 'below the expected range'],
  [5.5, 'above the expected range'],
])('%d V against 4.9 to 5.1 V is %s', (value, words) => {
  const judged = judgeReading(value, 'V', FEED, METER);
  expect(judgementWords(judged, { value, unit: 'V' }, METER)).toBe(words);
});

test('what cannot be names the reading, and where to look for the slip', () => {
  expect(said('impossible', 24, 'V')).toBe(
    '24 V is not possible in this circuit: check where the leads are, the range and the unit',
  );
});

test('OL is told as OL, as infinity and as events keep it', () => {
  expect(said('impossible', null, 'ohm')).toMatch(/^OL is not possible/);
  expect(said('impossible', Number.POSITIVE_INFINITY, 'ohm')).toBe(said('impossible', null, 'ohm'));
});

test('at the edge, the narrowest range that holds the reading is named with its step', () => {
  // by hand: 6000 counts of 6 V, and of 600 ohm; below zero the same range holds it
  expect(said('borderline', 4.9, 'V')).toBe(
    'too close to the limit for this meter; make sure it is on its 6 V range (steps of 1 mV), or repeat it',
  );
  expect(said('borderline', -4.9, 'V')).toBe(said('borderline', 4.9, 'V'));
  expect(said('borderline', 600, 'ohm')).toContain('on its 600 \u03a9 range (steps of 0.1 \u03a9)');
});

test('beyond the highest range only a repeat helps', () => {
  expect(said('borderline', 700, 'V')).toBe('too close to the limit for this meter; repeat it');
  expect(said('borderline', null, 'ohm')).toBe('too close to the limit for this meter; repeat it');
});

test('another meter has other steps', () => {
  const coarse = { ...METER, volts: { ...METER.volts, ranges: [20], counts: 2000 } };
  const words = judgementWords(
    { verdict: 'borderline', chance: 0.5 },
    { value: 4.9, unit: 'V' },
    coarse,
  );
  // by hand: 20 V in 2000 counts
  expect(words).toContain('on its 20 V range (steps of 10 mV)');
});
