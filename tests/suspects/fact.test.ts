/** What a test showed, read once or again; densities by hand from their formulas. */
import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { ERROR_MODEL } from '../../src/suspects/error-model.ts';
import {
  areApart,
  type Fact,
  factsOf,
  logLikelihood,
  misreadChance,
  topLogLikelihood,
} from '../../src/suspects/fact.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { buildTable } from '../../src/suspects/prediction-table.ts';
import { look, simpleTest } from './tables.ts';

const volts = (value: number): Shown => ({ kind: 'number', value, unit: 'V' });
const ohms = (value: number): Shown => ({ kind: 'number', value, unit: 'ohm' });
const bell = (z: number, width: number) =>
  Math.exp(-0.5 * z * z) / (width * Math.sqrt(2 * Math.PI));

/** Tests of volts (0 to 5 V), of a light (dark, lit or dim) and of ohms; the meter is good for 10 mV or 10 ohm. */
const table = buildTable(
  ['a', 'b'].map((id) => ({ id, repair: id, weight: 1 })),
  [
    simpleTest('volts', { standardUncertainty: () => 0.01 }),
    simpleTest('light'),
    simpleTest('ohms', { standardUncertainty: () => 10 }),
  ],
  (id, { id: asked }) =>
    asked === 'volts' ? volts(id === 'a' ? 0 : 5) : asked === 'light' ? look(0) : ohms(1000),
  1,
);
const [VOLTS, LIGHT, OHMS] = [0, 1, 2];
const read = (at: number, shown: Shown): Reading => ({ test: at, shown });
const facts = (...readings: Reading[]) => factsOf(table, readings, ERROR_MODEL);
const one = (...readings: Reading[]): Fact => {
  const [first, ...others] = facts(...readings);
  expect(others).toEqual([]);
  return first!;
};
const said = ({ shown }: Fact) => (shown.kind === 'look' ? shown.look : shown.value);
const always = (shown: Shown) => [{ shown, share: 1 }];

describe('the facts', () => {
  test('are one for each test, in the order in which the tests were first made', () => {
    const found = facts(read(LIGHT!, look(1)), read(VOLTS!, volts(2)), read(LIGHT!, look(1)));
    expect(found.map(({ test: at, readings }) => [at, readings])).toEqual([
      [LIGHT, [0, 2]],
      [VOLTS, [1]],
    ]);
  });

  test.each<[string, number[], number, number]>([
    // two readings agree within 4 deviations of their difference: 4 * sqrt(2) * 10 mV = 57 mV
    ['a single one', [2], 2, 1],
    ['the last of two that agree', [2, 2.05], 2.05, 2],
    ['the last of two that do not', [2, 2.06], 2.06, 1],
    ['what most say', [2, 0, 2.01], 2.01, 2],
    ['what most say, though the last says otherwise', [2, 2.01, 0], 2.01, 2],
    ['of two on each side the last', [2, 0, 2.01, 0.01], 0.01, 2],
    ['the last of as many that all differ', [1, 2, 3], 3, 1],
  ])('of repeats are %s', (_, values, value, agreeing) => {
    const fact = one(...values.map((each) => read(VOLTS!, volts(each))));
    expect(said(fact)).toBe(value);
    // by hand: one reading in fifty is a slip; all that agree have to be
    expect(fact.slip).toBeCloseTo(0.02 ** agreeing, 15);
    expect(fact.readings).toEqual(values.map((_each, place) => place));
  });

  test('of looks agree where they are the same, and over-limits with each other', () => {
    expect(said(one(...[1, 2, 1].map((at) => read(LIGHT!, look(at)))))).toBe('lit');
    const over = one(...[Infinity, 1000, Infinity].map((value) => read(OHMS!, ohms(value))));
    expect(said(over)).toBe(Infinity);
    expect(over.slip).toBeCloseTo(0.0004, 15);
  });

  test('have the uncertainty of the reading where it has one of its own', () => {
    expect(one(read(VOLTS!, volts(2))).uncertainty).toBe(0.01);
    expect(one({ ...read(VOLTS!, volts(2)), standardUncertainty: 0.3 }).uncertainty).toBe(0.3);
  });
});

describe('how likely a fact is', () => {
  // by hand: a slip shows 0 to 5 V evenly, or in half of the cases the nothing of a lead that does not touch
  const fact = one(read(VOLTS!, volts(2)));
  const width = Math.hypot(0.01, 0.02 * 2 + 0.005);
  const blind = 0.5 / 5;
  test('goes by the normal around what is shown, and by slips', () => {
    expect(fact.blind).toBeCloseTo(blind, 9);
    const exact = 0.98 * bell(0, width) + 0.02 * blind;
    expect(logLikelihood(fact, always(volts(2)), ERROR_MODEL)).toBeCloseTo(Math.log(exact), 9);
    const off = Math.hypot(0.01, 0.02 * 2.1 + 0.005);
    expect(logLikelihood(fact, always(volts(2.1)), ERROR_MODEL)).toBeCloseTo(
      Math.log(0.98 * bell(0.1 / off, off) + 0.02 * blind),
      9,
    );
  });
  test('never falls below a slip', () => {
    for (const shown of [5, Infinity])
      expect(logLikelihood(fact, always(volts(shown)), ERROR_MODEL)).toBeCloseTo(
        Math.log(0.02 * blind),
        9,
      );
  });
  test('is the mean over what the test may show', () => {
    const ways = [
      { shown: volts(2), share: 0.25 },
      { shown: volts(5), share: 0.75 },
    ];
    expect(logLikelihood(fact, ways, ERROR_MODEL)).toBeCloseTo(
      Math.log(0.98 * 0.25 * bell(0, width) + 0.02 * blind),
      9,
    );
  });
  test('of a look: it is called by one of the two other names in three of a hundred cases', () => {
    const lit = one(read(LIGHT!, look(1)));
    expect(lit.ways).toBe(3);
    const at = (outcome: number) =>
      Math.exp(logLikelihood(lit, always(look(outcome)), ERROR_MODEL));
    expect(at(1)).toBeCloseTo(0.98 * 0.97 + 0.02 / 3, 9);
    expect(at(2)).toBeCloseTo(0.98 * 0.015 + 0.02 / 3, 9);
  });
  test('of an over-limit: it is one in seven of ten cars whose insulation does not leak, or a slip', () => {
    const over = one(read(OHMS!, ohms(Infinity)));
    const at = (value: number) => Math.exp(logLikelihood(over, always(ohms(value)), ERROR_MODEL));
    expect(at(Infinity)).toBeCloseTo(0.98 * 0.7 + 0.02 / 2, 9);
    expect(at(1000)).toBeCloseTo(0.02 / 2, 9);
  });
  test('is nowhere above its top', () => {
    for (const value of [0, 0.01, 2, 4.99]) {
      const at = one(read(VOLTS!, volts(value)));
      const top = topLogLikelihood(at, ERROR_MODEL);
      for (let shown = 0; shown < 5; shown += 0.001)
        expect(logLikelihood(at, always(volts(shown)), ERROR_MODEL)).toBeLessThanOrEqual(top);
    }
  });
});

describe('a fact is not what its test showed', () => {
  const chance = (fact: Fact, shown: Shown) =>
    misreadChance(fact, logLikelihood(fact, always(shown), ERROR_MODEL), ERROR_MODEL);
  test('as often as slips are likelier than what the test shows', () => {
    const fact = one(read(VOLTS!, volts(2)));
    const width = Math.hypot(0.01, 0.02 * 2 + 0.005);
    const [right, slip] = [0.98 * bell(0, width), 0.02 * 0.1];
    expect(chance(fact, volts(2))).toBeCloseTo(slip / (right + slip), 9);
    expect(chance(fact, volts(5))).toBeCloseTo(1, 9);
  });
  test('where another look is shown for certain, be it a slip or the wrong name', () => {
    const lit = one(read(LIGHT!, look(1)));
    expect(chance(lit, look(2))).toBeCloseTo(1, 9);
    // by hand: 0.02 / 3 of 0.98 * 0.97 + 0.02 / 3
    expect(chance(lit, look(1))).toBeCloseTo(0.02 / 3 / (0.98 * 0.97 + 0.02 / 3), 9);
  });
});

describe('two things that a test shows are apart', () => {
  const fact = one(read(VOLTS!, volts(2)));
  test.each<[string, boolean, Shown, Shown]>([
    // by hand: a twentieth of sqrt(10^2 + 45^2) = 46 mV is 2.3 mV
    ['when they are by more than a twentieth of the width', true, volts(2), volts(2.0024)],
    ['not when they are nearer', false, volts(2), volts(2.0022)],
    ['when only one is over the limit', true, volts(2), volts(Infinity)],
    ['not when both are', false, volts(Infinity), volts(Infinity)],
    ['when they are two looks', true, look(1), look(2)],
    ['not when they are one', false, look(1), look(1)],
  ])('%s', (_, apart, here, there) => {
    expect(areApart(fact, always(here), always(there), ERROR_MODEL)).toBe(apart);
  });
  test('when one is shown more often', () => {
    const ways = (share: number) => [
      { shown: look(1), share },
      { shown: look(2), share: 1 - share },
    ];
    expect(areApart(fact, ways(0.5), ways(0.52), ERROR_MODEL)).toBe(true);
    expect(areApart(fact, ways(0.5), ways(0.505), ERROR_MODEL)).toBe(false);
  });
});
