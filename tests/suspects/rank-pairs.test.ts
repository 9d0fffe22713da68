/** Which pairs of faults are looked at, and how they weigh; by hand from the readings each fault alone explains. */
import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { EXACT_MODEL } from '../../src/suspects/error-model.ts';
import { buildTable, HEALTHY } from '../../src/suspects/prediction-table.ts';
import { DOUBLE_FAULT_CHANCE, rankPairs } from '../../src/suspects/rank-pairs.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

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

describe('pairs from how well each fault fits each reading', () => {
  /** Three in ten readings are slips, which show each of three looks alike: 0.8 for what a pair shows, else 0.1. */
  const errorModel = { ...EXACT_MODEL, wrongReading: 0.3 };
  interface Asked {
    readonly ids: readonly string[];
    readonly prior?: readonly number[];
    /** By reading: how many times better than blind chance each fault fits it, and what the reading counts. */
    readonly rows: readonly { readonly times: readonly number[]; readonly weight?: number }[];
    /** Faults of which one is enough for a pair to show what was read. */
    readonly enough?: readonly string[];
  }
  function pairsOf({ ids: names, prior, rows, enough = [] }: Asked) {
    const looks = matrixTable(
      names.map((id) => ({ id, repair: `repair ${id}`, weight: 1 })),
      names.map(() => rows.map(() => 0)),
    );
    return rankPairs({
      table: looks,
      readings: rows.map((_, index) => ({ test: index, shown: look(0) })),
      fits: rows.map(({ times, weight }, index) => ({
        perRow: Float64Array.from(times, (one) => one / 4),
        perSample: Float64Array.from(times, (one) => one / 4),
        blind: 1 / 4,
        tail: () => 1,
        reading: index,
        test: index,
        weight: weight ?? 1,
      })),
      prior: Float64Array.from(prior ?? names.map(() => 1 / names.length)),
      errorModel,
      showsPair: (one, other) => [look(enough.includes(one) || enough.includes(other) ? 0 : 1)],
    });
  }
  const chosen = (ask: Asked) => [...new Set(pairsOf(ask).flatMap((pair) => pair.ids))];

  test('are those of faults that fit some reading better than blind chance, however badly another', () => {
    const rows = [{ times: [2, 1, 0.5, 1.1, 3] }, { times: [0.01, 1, 0.5, 1, 3] }];
    expect(chosen({ ids: ['a', 'b', 'c', 'd', 'e'], rows })).toEqual(['a', 'd', 'e']);
    expect(pairsOf({ ids: ['a', 'b', 'c', 'd', 'e'], rows }).map((pair) => pair.ids)).toEqual([
      ['a', 'd'],
      ['a', 'e'],
      ['d', 'e'],
    ]);
  });
  test('hold neither the healthy circuit nor what was impossible before', () => {
    const ask = { ids: [HEALTHY, 'a', 'b', 'c'], rows: [{ times: [9, 2, 2, 2] }] };
    expect(chosen({ ...ask, prior: [0.3, 0.3, 0.4, 0] })).toEqual(['a', 'b']);
  });
  test('are none while no two faults fit anything', () => {
    expect(pairsOf({ ids: ['a', 'b'], rows: [{ times: [2, 1] }] })).toEqual([]);
    expect(pairsOf({ ids: ['a', 'b'], rows: [] })).toEqual([]);
  });
  test('weigh as both faults did before, by how the readings fit them', () => {
    const pairs = pairsOf({
      ids: ['a', 'b', 'c'],
      prior: [0.5, 0.3, 0.2],
      rows: [{ times: [2, 2, 2] }, { times: [2, 2, 2], weight: 0.5 }],
      enough: ['a'],
    });
    // by hand: a with b 0.15, a with c 0.1 and b with c 0.06, of 0.31; one pair in twenty complaints
    const weight = (product: number) => Math.log((0.05 * product) / 0.31);
    expect(pairs).toEqual([
      {
        ids: ['a', 'b'],
        repairs: ['repair a', 'repair b'],
        log: expect.closeTo(1.5 * Math.log(0.8) + weight(0.15), 12),
      },
      {
        ids: ['a', 'c'],
        repairs: ['repair a', 'repair c'],
        log: expect.closeTo(1.5 * Math.log(0.8) + weight(0.1), 12),
      },
      {
        ids: ['b', 'c'],
        repairs: ['repair b', 'repair c'],
        log: expect.closeTo(1.5 * Math.log(0.1) + weight(0.06), 12),
      },
    ]);
  });
  test('are made of the sixteen faults that fit best, a reading counting as much as it weighs', () => {
    const names = Array.from({ length: 18 }, (_, index) => `f${index}`);
    const times = (of: (index: number) => number) => names.map((_, index) => of(index));
    const without = (...rows: Asked['rows']) => {
      const left = chosen({ ids: names, rows });
      expect(left).toHaveLength(16);
      return names.filter((id) => !left.includes(id));
    };
    expect(without({ times: times((index) => 10 + index) })).toEqual(['f0', 'f1']);
    expect(without({ times: times(() => 10) })).toEqual(['f16', 'f17']); // of equals the first
    // f0 fits one of two looks at a test 4 times, half of which counts: as if twice; f1 fits the other test thrice
    expect(
      without(
        { times: times((index) => [4, 1, 1.5][index] ?? 1), weight: 0.5 },
        { times: times((index) => [1, 3, 1][index] ?? 10) },
      ),
    ).toEqual(['f0', 'f2']);
  });
});
