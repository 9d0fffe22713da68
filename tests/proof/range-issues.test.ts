/** The author's limits of a step that no healthy car comes to are held against all healthy cars. */
import { expect, it } from 'vitest';
import { checkExample } from './example.ts';

const WIRE = `      good: { below: 2 ohm, words: good, go: low-wire }
      high: { from: 2 ohm, words: open or resistive, go: high-broken }`;
const NARROW = `      low: { below: 1.5 ohm, words: less, go: low-wire }
      good: { from: 1.5 ohm, to: 2 ohm, words: good, go: low-wire }
      high: { from: 2 ohm, words: open or resistive, go: high-broken }`;

it('limits that leave out every good wire are told', () => {
  const { proof, issues } = checkExample([WIRE, NARROW]);
  // Only what reads wrongly at the controller gets there.
  const healthy = proof!.ways.filter(({ fault }) => fault === 'healthy');
  expect(healthy.length).toBeGreaterThan(0);
  expect(healthy.some(({ visits }) => visits.some(({ step }) => step === 'high-wire'))).toBe(false);
  const narrow = issues.filter(({ code }) => code === 'good-too-narrow');
  expect(narrow.map(({ severity, words }) => [severity, words.includes('"high-wire"')])).toEqual([
    ['error', true],
  ]);
});
