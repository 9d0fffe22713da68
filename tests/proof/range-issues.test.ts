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

it('what is computed as low or high ends where an outcome of the author begins', () => {
  const { linked, issues } = checkExample([
    '      low: { words: too low, go: coil-low }',
    `      low: { words: too low, go: coil-low }
      nothing: { below: 10 mV, words: nothing, go: coil-low }`,
  ]);
  if (!linked) throw new Error(JSON.stringify(issues));
  const step = linked.procedure.steps['bias'];
  const ends = Object.fromEntries(
    step?.kind === 'measure' ? step.outcomes.map(({ name, from, to }) => [name, [from, to]]) : [],
  );
  expect(ends).toMatchObject({ nothing: [null, 0.01], battery: [5, null] });
  expect(ends['low']).toEqual([0.01, ends['good']![0]]);
  expect(ends['high']).toEqual([ends['good']![1], 5]);
});
