/** Which pairs of faults are looked at, and how they weigh; by hand from the readings each fault alone explains. */
import { expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { buildTable } from '../../src/suspects/prediction-table.ts';
import { DOUBLE_FAULT_CHANCE } from '../../src/suspects/rank-pairs.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { simpleTest } from './tables.ts';

const OL = Number.POSITIVE_INFINITY;
const volts = (value: number): Shown => ({ kind: 'number', value, unit: 'V' });
const ohms = (value: number): Shown => ({ kind: 'number', value, unit: 'ohm' });

/** Each fault changes one thing; a healthy circuit reads 5 V, 5 V and 1 ohm. */
const SHOWS: Readonly<Record<string, readonly Shown[]>> = {
  healthy: [volts(5), volts(5), ohms(1)],
  feed: [volts(0), volts(5), ohms(1)],
  ground: [volts(5), volts(2), ohms(1)],
  wire: [volts(5), volts(5), ohms(OL)],
  other: [volts(5), volts(5), ohms(300)],
};
/** So many that a look never seen in them is no better than a slip. */
const SAMPLES = 200;
const ids = Object.keys(SHOWS);
const tests = ['a', 'b', 'c'].map((id) =>
  simpleTest(id, { standardUncertainty: (value) => 0.001 * value + 0.01 }),
);
const table = buildTable(
  ids.map((id) => ({ id, repair: `repair ${id}`, weight: 1 })),
  tests,
  (id, { id: asked }) => SHOWS[id]![tests.findIndex((one) => one.id === asked)]!,
  SAMPLES,
);
const both = (first: string, second: string, index: number): Shown => {
  const good = SHOWS['healthy']![index]!;
  const one = SHOWS[first]![index]!;
  return JSON.stringify(one) === JSON.stringify(good) ? SHOWS[second]![index]! : one;
};

function ranked(...shown: readonly Shown[]) {
  const asked = new Set<string>();
  const ranking = rankSuspects(
    table,
    shown.map((one, index) => ({ test: index, shown: one })),
    undefined,
    {
      showsPair: (first, second, index) => {
        asked.add(`${first}+${second}`);
        return Array<Shown>(SAMPLES).fill(both(first, second, index));
      },
    },
  );
  return { ranking, asked };
}

test('two faults that explain a reading each are the likeliest pair, and the healthy circuit is in none', () => {
  const { ranking, asked } = ranked(volts(0), volts(2), ohms(OL));
  expect(ranking.explained).toBe(false);
  expect([...asked].some((pair) => pair.includes('healthy'))).toBe(false);
  const { ranking: two } = ranked(volts(0), volts(2), ohms(1));
  expect(two.pairs[0]).toMatchObject({
    ids: ['feed', 'ground'],
    repairs: ['repair feed', 'repair ground'],
  });
  const chances = two.pairs.map(({ chance }) => chance);
  expect(chances).toEqual([...chances].sort((a, b) => b - a));
  const total = [...two.suspects, ...two.pairs].reduce((sum, { chance }) => sum + chance, 0);
  expect(total).toBeCloseTo(1, 12);
});

test('an over-limit counts for a pair like any reading', () => {
  const { ranking } = ranked(volts(0), volts(5), ohms(OL));
  expect(ranking.pairs[0]!.ids).toEqual(['feed', 'wire']);
  expect(ranking.pairs[0]!.chance).toBeGreaterThan(0.5); // likelier than all single ones together
});

test('a pair is as unlikely beforehand as two faults in one complaint', () => {
  // The pair fits both readings that each of its faults alone misses one of: the slip of 0.02 each is what it gains.
  const { ranking } = ranked(volts(0), volts(2), ohms(1));
  const [pair] = ranking.pairs;
  const [first] = ranking.suspects;
  expect(DOUBLE_FAULT_CHANCE).toBe(0.05);
  expect(pair!.chance / first!.chance).toBeGreaterThan(1);
  expect(
    ranking.suspects
      .map(({ id }) => id)
      .slice(0, 2)
      .sort(),
  ).toEqual(['feed', 'ground']);
});

test('while one fault explains all, no pair is looked at', () => {
  const { ranking, asked } = ranked(volts(0), volts(5), ohms(1));
  expect(ranking.explained).toBe(true);
  expect(ranking.pairs).toEqual([]);
  expect(asked.size).toBe(0);
});

test('the reading’s own uncertainty goes before that of the test', () => {
  const chance = (standardUncertainty?: number) =>
    rankSuspects(
      table,
      [
        { test: 0, shown: volts(0) },
        { test: 1, shown: volts(2.6), ...(standardUncertainty && { standardUncertainty }) },
      ],
      undefined,
      { showsPair: (a, b, index) => Array<Shown>(SAMPLES).fill(both(a, b, index)) },
    ).pairs.find((pair) => pair.ids.join('+') === 'feed+ground')?.chance ?? 0;
  // 0.6 V beside what the pair shows: far off for this meter, well within one that is good to half a volt
  expect(chance(0.5)).toBeGreaterThan(10 * chance());
});
