import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { ERROR_MODEL, EXACT_MODEL } from '../../src/suspects/error-model.ts';
import { fitReading } from '../../src/suspects/likelihood.ts';
import { buildTable, fillColumn } from '../../src/suspects/prediction-table.ts';
import {
  DISTURBED_FACTOR,
  normalised,
  priorFor,
  REPLACED_FACTOR,
  REWIRED_FACTOR,
  withHealthy,
} from '../../src/suspects/prior.ts';
import type { PairShows } from '../../src/suspects/rank-pairs.ts';
import { entropyBits, type Ranking, rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { percent, whatChanged } from '../../src/suspects/what-changed.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

const volts = (value: number): Shown => ({ kind: 'number', value, unit: 'V' });
const ohms = (value: number): Shown => ({ kind: 'number', value, unit: 'ohm' });

/** Volts at the sensor's feed, ground and signal with the sensor unplugged, and ohms of the signal wire. */
const SHOWS: Record<string, readonly number[]> = {
  healthy: [5, 0.02, 5, 0.3],
  'wire.feed.open': [0, 0.02, 5, 0.3],
  'wire.ground.open': [5, 4.6, 5, 0.3],
  'wire.signal.open': [5, 0.02, 0, Infinity],
  'sensor.dead': [5, 0.02, 5, 0.3],
};
const tests = ['feed', 'ground', 'signal', 'continuity'].map((id) => simpleTest(id));
const candidates = Object.keys(SHOWS).map((id) => ({
  id,
  words: id.replaceAll('.', ' '),
  repair: id.endsWith('.open') ? id.slice(0, -5) : id === 'sensor.dead' ? 'sensor.replace' : id,
  weight: 1,
}));
const table = buildTable(
  candidates,
  tests,
  (id, { id: asked }, sample) => {
    const at = tests.findIndex((one) => one.id === asked);
    const value = SHOWS[id]![at]! * (0.99 + 0.005 * sample);
    return asked === 'continuity' ? ohms(value) : volts(value);
  },
  5,
);
const FEED = 0;
const GROUND = 1;
const SIGNAL = 2;
const CONTINUITY = 3;
const reading = (index: number, shown: Shown) => ({
  test: index,
  shown,
  standardUncertainty: 0.01,
});

describe('one reading', () => {
  test('a number is as likely as the mean of normals around the predictions', () => {
    // By hand: one prediction of 5 V, u = hypot(0.03, 0.02 * 5 + 0.005); floor 0.02 / 2 / span, span 5.1 V from 0 to 5.1.
    const column = fillColumn(2, 1, (row) => volts(row * 5));
    const fit = fitReading(column, 2, 1, volts(5.1), 0.03, ERROR_MODEL);
    const u = Math.hypot(0.03, 0.105);
    const density = Math.exp(-0.5 * (0.1 / u) ** 2) / (u * Math.sqrt(2 * Math.PI));
    expect(fit.blind).toBeCloseTo(0.5 / 5.1, 12);
    expect(fit.perRow[1]).toBeCloseTo(0.98 * density + 0.01 / 5.1, 12);
    expect(fit.perRow[0]).toBeCloseTo(0.01 / 5.1, 12);
  });
  test('0 V is also what a lead without contact shows, so it never says more than one part in a hundred', () => {
    const column = fillColumn(2, 1, (row) => volts(row * 5));
    const fit = fitReading(column, 2, 1, volts(0), 0.001, ERROR_MODEL);
    expect(fit.perRow[0]! / fit.perRow[1]!).toBeGreaterThan(50);
    expect(fit.perRow[0]! / fit.perRow[1]!).toBeLessThan(100);
  });
  test('over-limit is the share of samples that show it', () => {
    // By hand: 3 of 4 samples; one pseudo-sample over two ways: (3 + 0.5) / 5, then 2 % wrong readings.
    const column = fillColumn(1, 4, (_, sample) => ohms(sample < 3 ? Infinity : 10));
    const fit = fitReading(column, 1, 4, ohms(Infinity), 0, ERROR_MODEL);
    expect(fit.perRow[0]).toBeCloseTo(0.98 * 0.7 + 0.02 * 0.5, 12);
  });
  test('a look is the share of samples, and one never seen keeps a floor', () => {
    // By hand: lit, dim, dark are three ways; (2 + 1/3) / 5 and (0 + 1/3) / 5.
    const column = fillColumn(1, 4, (_, sample) => look(sample < 2 ? 0 : 1));
    const share = (hits: number) => 0.98 * ((hits + 1 / 3) / 5) + 0.02 / 3;
    expect(fitReading(column, 1, 4, look(0), 0, ERROR_MODEL).perRow[0]).toBeCloseTo(share(2), 12);
    expect(fitReading(column, 1, 4, look(2), 0, ERROR_MODEL).perRow[0]).toBeCloseTo(share(0), 12);
    expect(fitReading(column, 1, 4, look(2), 0, EXACT_MODEL).perRow[0]).toBe(0);
  });
  test('a reading between two samples of a sized fault still fits it', () => {
    const column = fillColumn(2, 16, (row, sample) => volts(row === 0 ? 5 : sample / 4));
    const between = fitReading(column, 2, 16, volts(2.125), 0.001, ERROR_MODEL);
    expect(between.perRow[1]!).toBeGreaterThan(between.blind / 2);
    expect(between.perRow[1]!).toBeGreaterThan(10 * between.perRow[0]!);
  });
});

/** What must be slips if the leader is right. */
function misfitsOf({ suspects, misfitsOf }: Ranking): readonly number[] {
  return misfitsOf(suspects[0]!.index);
}

describe('ranking', () => {
  test('no signal behind a good feed and ground is the signal wire', () => {
    const ranking = rankSuspects(table, [
      reading(FEED, volts(4.98)),
      reading(GROUND, volts(0.02)),
      reading(SIGNAL, volts(0)),
    ]);
    expect(ranking.suspects[0]!.id).toBe('wire.signal.open');
    expect(ranking.suspects[0]!.chance).toBeGreaterThan(0.9);
    expect(ranking.explained).toBe(true);
    expect(misfitsOf(ranking)).toEqual([]);
  });
  test('before any reading the weights stand', () => {
    expect([...rankSuspects(table, []).chances]).toEqual([0.2, 0.2, 0.2, 0.2, 0.2]);
  });
  test('the same test three times is one piece of news', () => {
    const once = rankSuspects(table, [reading(SIGNAL, volts(0))]);
    const thrice = rankSuspects(table, Array(3).fill(reading(SIGNAL, volts(0))));
    once.chances.forEach((chance, index) => {
      expect(thrice.chances[index]).toBeCloseTo(chance, 12);
    });
  });
  test('when a lead is in the wrong place, it says so and names that reading', () => {
    const ranking = rankSuspects(table, [reading(FEED, volts(9.3)), reading(GROUND, volts(0.02))]);
    expect(ranking.explained).toBe(false);
    expect(ranking.disagrees).toMatchObject({ reading: 0, test: FEED });
    expect(ranking.disagrees!.gain).toBeGreaterThan(10);
  });
  test('one odd reading among many good ones leaves the leader, and is named', () => {
    const ranking = rankSuspects(table, [
      reading(FEED, volts(5)),
      reading(GROUND, volts(1.9)),
      reading(SIGNAL, volts(0)),
      reading(CONTINUITY, ohms(Infinity)),
    ]);
    expect(ranking.suspects[0]!.id).toBe('wire.signal.open');
    expect(ranking.suspects[0]!.chance).toBeGreaterThan(0.9);
    expect(misfitsOf(ranking)).toEqual([1]);
    expect(ranking.disagrees).toMatchObject({ reading: 1, test: GROUND });
  });
  test('two faults at once are found when no single one explains the readings', () => {
    const showsPair = (first: string, second: string, index: number) => {
      const [one, two, good] = [
        SHOWS[first]![index]!,
        SHOWS[second]![index]!,
        SHOWS.healthy![index]!,
      ];
      const value = one === good ? two : one;
      return Array.from({ length: 5 }, () => (index === CONTINUITY ? ohms(value) : volts(value)));
    };
    const readings = [
      reading(FEED, volts(0)),
      reading(SIGNAL, volts(0)),
      reading(CONTINUITY, ohms(Infinity)),
      reading(GROUND, volts(0.02)),
    ];
    const alone = rankSuspects(table, readings);
    expect(alone.explained).toBe(false);
    expect(alone.disagrees).toMatchObject({ reading: 0 });
    const both = rankSuspects(table, readings, undefined, { showsPair });
    expect(both.pairs[0]!.ids).toEqual(['wire.feed.open', 'wire.signal.open']);
    expect(both.pairs[0]!.chance).toBeGreaterThan(alone.suspects[1]!.chance);
    expect(both.suspects[0]!.chance).toBeLessThan(alone.suspects[0]!.chance);
  });
});

describe('exact readings', () => {
  const fault = (id: string, repair = id) => ({ id, repair, weight: 1 });
  /** a shows dark, dark; b dark, lit; c lit, lit. */
  const exact = matrixTable(
    [fault('a'), fault('b'), fault('c')],
    [
      [0, 0],
      [0, 1],
      [1, 1],
    ],
  );
  const ranked = (
    looks: readonly (readonly [test: number, shown: number])[],
    prior = [0.5, 0.3, 0.2],
    showsPair?: PairShows,
  ) =>
    rankSuspects(
      exact,
      looks.map(([index, shown]) => ({ test: index, shown: look(shown) })),
      Float64Array.from(prior),
      { errorModel: EXACT_MODEL, ...(showsPair && { showsPair }) },
    );
  test('leave those that show them, in proportion to what they were', () => {
    const ranking = ranked([[0, 0]]);
    expect([...ranking.chances]).toEqual([5 / 8, 3 / 8, 0].map((one) => expect.closeTo(one, 12)));
    expect(ranking).toMatchObject({ explained: true, disagrees: null, pairs: [] });
    expect(misfitsOf(ranking)).toEqual([]);
    // 5/8 and 3/8: by hand from the definition
    const bits = -(5 / 8) * Math.log2(5 / 8) - (3 / 8) * Math.log2(3 / 8);
    expect(ranking.entropyBits).toBeCloseTo(bits, 12);
    expect(entropyBits([0.25, 0.75, 0])).toBeCloseTo(2 - 0.75 * Math.log2(3), 12);
  });
  test('that nothing shows leave all as it was, and are all misfits', () => {
    const ranking = ranked([[0, 2]]);
    expect([...ranking.chances]).toEqual([0.5, 0.3, 0.2]);
    expect(ranking).toMatchObject({ explained: false, pairs: [] });
    expect(misfitsOf(ranking)).toEqual([0]);
    expect(ranking.disagrees).toMatchObject({ reading: 0, test: 0 });
  });
  test('that no single fault shows are held against two at once, beside which all stand as they were', () => {
    // lit and dark: a shows the second, c the first, b neither
    const both: PairShows = (_, __, index) => [look(1 - index)];
    const readings = [
      [0, 1],
      [1, 0],
    ] as const;
    const { pairs, suspects, repairs, chances, explained } = ranked(readings, undefined, both);
    expect(explained).toBe(false);
    expect(pairs.map(({ ids }) => ids)).toEqual([['a', 'c']]);
    const [pair] = pairs;
    expect(pair!.chance).toBeGreaterThan(0);
    for (const list of [suspects, repairs])
      expect(list.map(({ chance }) => chance)).toEqual(
        [0.5, 0.3, 0.2].map((one) => expect.closeTo(one * (1 - pair!.chance), 12)),
      );
    // by candidate they sum to one without the pairs
    expect([...chances]).toEqual([0.5, 0.3, 0.2]);
  });
  test('are not explained by what was impossible before', () => {
    // only c shows lit first, and it has no chance
    expect(ranked([[0, 1]], [0.5, 0.5, 0])).toMatchObject({ explained: false });
    expect(ranked([[0, 1]], [0.5, 0.4, 0.1])).toMatchObject({ explained: true });
  });
  describe('with slips of three in ten: 0.8 for what is shown, 0.1 for what is not', () => {
    const errorModel = { ...EXACT_MODEL, wrongReading: 0.3 };
    const dark = (...asked: readonly number[]) =>
      asked.map((index) => ({ test: index, shown: look(0) }));
    const weighed = (
      matrix: readonly (readonly number[])[],
      readings: readonly number[],
      prior: readonly number[],
      showsPair?: PairShows,
    ) =>
      rankSuspects(
        matrixTable(
          matrix.map((_, index) => fault(`f${index}`)),
          matrix,
        ),
        dark(...readings),
        Float64Array.from(prior),
        { errorModel, ...(showsPair && { showsPair }) },
      );
    test('a fault that explains all counts from a tenth of the leader’s chance on', () => {
      // by hand: the leader needs a slip, 0.1 against 0.8; with a prior of 80 to 1 that makes ten to one
      const at = (times: number) =>
        weighed([[1], [0]], [0], [times / (times + 1), 1 / (times + 1)]);
      expect(at(79)).toMatchObject({ explained: true, disagrees: null });
      expect(at(81)).toMatchObject({ explained: false });
      expect([79, 81].map((times) => misfitsOf(at(times)))).toEqual([[0], [0]]);
    });
    test('the reading that disagrees most is the one without which the rest fits best', () => {
      // none shows the second dark: 0.8 * 0.1 against a third of a third; without it 0.8 against a third
      const matrix = [
        [0, 1],
        [1, 1],
        [0, 0],
      ];
      const { disagrees } = weighed(matrix, [0, 1], [0.5, 0.5, 0]);
      expect(disagrees).toEqual({ reading: 1, test: 1, gain: expect.closeTo(1 / 3 / 0.1, 12) });
      // of two that disagree alike it is the first
      const both = weighed([[1, 1, 0]], [0, 1, 2], [1]).disagrees;
      expect(both).toEqual({ reading: 0, test: 0, gain: expect.closeTo(1 / 3 / 0.1, 12) });
    });
    test('pairs come the likeliest first, and with the singles sum to one', () => {
      const matrix = [
        [0, 1, 1],
        [1, 0, 1],
        [1, 1, 0],
      ];
      const enough = (one: string, other: string) => [look(one === 'f1' && other === 'f2' ? 0 : 1)];
      const { pairs, suspects } = weighed(matrix, [0, 1, 2], [1 / 3, 1 / 3, 1 / 3], enough);
      // by hand: each single 0.8 * 0.1 * 0.1, the last pair 0.8 three times, the others 0.1 three times
      const [single, last, other] = [0.008 / 3, (0.05 / 3) * 0.512, (0.05 / 3) * 0.001];
      const total = 3 * single + last + 2 * other;
      expect(pairs.map(({ ids, chance }) => [ids.join(' '), chance])).toEqual([
        ['f1 f2', expect.closeTo(last / total, 12)],
        ['f0 f1', expect.closeTo(other / total, 12)],
        ['f0 f2', expect.closeTo(other / total, 12)],
      ]);
      expect(suspects[0]!.chance).toBeCloseTo(single / total, 12);
    });
  });
  test('that fit the best worse than blind chance are not explained, though it is none of them a slip', () => {
    // one sample in eight shows it: 0.98 / 8 and a third of 0.02 is 0.129, less than a third but more than two slips
    const rare = buildTable(
      [fault('a')],
      [simpleTest('t')],
      (_, __, sample) => look(sample && 1),
      8,
    );
    const at = (shown: number) =>
      rankSuspects(rare, [{ test: 0, shown: look(shown) }], undefined, {
        errorModel: { ...EXACT_MODEL, wrongReading: 0.02 },
      });
    expect(at(0)).toMatchObject({ explained: false });
    expect(at(1)).toMatchObject({ explained: true });
    expect([0, 1].map((shown) => misfitsOf(at(shown)))).toEqual([[], []]);
  });
  test('rank equals in the order of the table, and repairs by all their faults', () => {
    const table = matrixTable([fault('a'), fault('b', 'B'), fault('c', 'B')], [[0], [0], [0]]);
    const { suspects, repairs } = rankSuspects(table, []);
    expect(suspects.map(({ id, index, words }) => [id, index, words])).toEqual([
      ['a', 0, 'a'],
      ['b', 1, 'b'],
      ['c', 2, 'c'],
    ]);
    expect(repairs).toEqual([
      { repair: 'B', chance: expect.closeTo(2 / 3, 12) },
      { repair: 'a', chance: expect.closeTo(1 / 3, 12) },
    ]);
  });
});

describe('before any reading', () => {
  const facts = [
    { id: 'sensor.dead', repair: 'sensor.replace', weight: 3 },
    { id: 'contact.sensor.feed.open', repair: 'connector.sensor', weight: 3 },
    { id: 'wire.feed.open', repair: 'wire.feed', weight: 3 },
    { id: 'healthy', repair: 'healthy', weight: 1 },
  ];
  test('a sensor already replaced is unlikely, and its contacts a little likelier', () => {
    const prior = priorFor(facts, { replaced: ['sensor'] });
    expect(prior[0]! / prior[2]!).toBeCloseTo(REPLACED_FACTOR, 12);
    expect(prior[1]! / prior[2]!).toBeCloseTo(DISTURBED_FACTOR, 12);
    expect([...priorFor(facts, { replaced: ['sensor.replace'] })]).toEqual([...prior]);
  });
  test('swapped wires are likelier where anything was repaired', () => {
    const swapped = { id: 'sensor.leads-swapped', repair: 'leads.swap', weight: 3 };
    const ratio = (replaced: string[]) => {
      const prior = priorFor([...facts, swapped], { replaced });
      return prior[4]! / prior[2]!;
    };
    expect(ratio([])).toBeCloseTo(1, 12);
    expect(ratio(['sensor'])).toBeCloseTo(REWIRED_FACTOR, 12);
    expect(ratio(['sensor', 'wire.signal'])).toBeCloseTo(REWIRED_FACTOR, 12);
  });
  test('a code shifts towards what sets it, without ruling anything out', () => {
    const codeChance = (id: string) => (id === 'wire.feed.open' ? 1 : 0);
    const prior = priorFor(facts, { codes: ['low'], codeChance });
    expect(prior[2]!).toBeGreaterThan(0.8);
    expect(prior[0]! / prior[2]!).toBeCloseTo(0.05, 12);
    expect(prior[3]!).toBeGreaterThan(0);
    expect(prior.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12);
  });
  test('a code speaks against the healthy circuit, and twice the same code speaks once', () => {
    const even = { codes: ['low' as const], codeChance: () => 1 };
    const prior = priorFor(facts, even);
    expect(prior[3]! / prior[0]!).toBeLessThan(1 / 3);
    expect([...priorFor(facts, { ...even, codes: ['low', 'low'] })]).toEqual([...prior]);
    // without knowing what sets it, a code says only that something is wrong
    const blind = priorFor(facts, { codes: ['low'] });
    expect(blind[0]! / blind[2]!).toBe(1);
    expect(blind[3]! / blind[0]!).toBeCloseTo(prior[3]! / prior[0]!, 12);
  });
  test('a name that was replaced counts once, and only for its own repair and connector', () => {
    const once = priorFor(facts, { replaced: ['wire.feed'] });
    // by hand: weights 3, 3, 0.3 and 1 of 7.3
    expect([...once]).toEqual([3, 3, 0.3, 1].map((weight) => expect.closeTo(weight / 7.3, 12)));
    expect([...priorFor(facts, { replaced: ['wire.feed', 'wire.feed'] })]).toEqual([...once]);
    expect([...priorFor(facts, { replaced: ['feed', 'replace'] })]).toEqual([...priorFor(facts)]);
    // both the sensor and, apart from it, its connector: 3 * 0.1, 3 * 1.5 * 0.1, 3 and 1
    const both = priorFor(facts, { replaced: ['sensor', 'connector.sensor'] });
    expect([...both]).toEqual([0.3, 0.45, 3, 1].map((weight) => expect.closeTo(weight / 4.75, 12)));
  });
  test('codes of two kinds count both, each at a twentieth at least', () => {
    const chance = { low: 0.4, high: 1 } as const;
    const prior = priorFor(facts, {
      codes: ['low', 'high'],
      codeChance: (id, kind) => (id === 'wire.feed.open' ? chance[kind as 'low' | 'high'] : 0),
    });
    // by hand: 0.05 + 0.95 * 0.4 is 0.43, times 1; nothing is 0.05 times 0.05; the healthy circuit counts 0.3 once
    const weights = [3 * 0.0025, 3 * 0.0025, 3 * 0.43, 0.3];
    const sum = weights.reduce((a, b) => a + b);
    expect([...prior]).toEqual(weights.map((weight) => expect.closeTo(weight / sum, 12)));
    const none = priorFor(facts, { codes: [], codeChance: () => 0 });
    expect([...none]).toEqual([...priorFor(facts)]);
  });
  test('no fault at all is a suspect with one part in twenty of the weight', () => {
    const suspects = withHealthy(facts.slice(0, 3));
    expect(suspects.slice(0, 3)).toEqual(facts.slice(0, 3));
    expect(suspects[3]).toMatchObject({ id: 'healthy', repair: 'healthy', subject: [] });
    expect(suspects[3]!.weight).toBeCloseTo(9 / 19, 12); // 9 of faults, a nineteenth of that beside it
    expect(priorFor(suspects)[3]).toBeCloseTo(0.05, 12);
  });
  test('weights are scaled to sum to one, and what weighs nothing stays out', () => {
    expect([...normalised(Float64Array.of(1, 0, 3))]).toEqual([0.25, 0, 0.75]);
    expect(() => normalised(Float64Array.of(1, Number.NaN))).toThrow('prior');
    expect(() => priorFor([{ id: 'x', repair: 'x', weight: Number.NaN }])).toThrow('weight of x');
    const out = [...facts, { id: 'y', repair: 'y', weight: 0 }];
    expect(priorFor(out)[4]).toBe(0);
  });
  test('a weight below nothing is a mistake of the caller', () => {
    expect(() => priorFor([{ id: 'x', repair: 'x', weight: -1 }])).toThrow('weight of x');
  });
  test('without any weight there is nothing to rank', () => {
    expect(() => priorFor([{ id: 'x', repair: 'x', weight: 0 }])).toThrow('prior');
  });
});

describe('what the last reading changed', () => {
  test('one fell, one rose', () => {
    const before = rankSuspects(table, [reading(FEED, volts(5))]);
    const after = rankSuspects(table, [reading(FEED, volts(5)), reading(SIGNAL, volts(0))]);
    const words = whatChanged(before, after);
    expect(words).toMatch(
      /^"(healthy|wire ground open|sensor dead)" fell from \d+ % to (under 1|1) %; "wire signal open" rose to (\d+|over 99) %$/,
    );
  });
  test('nothing changed', () => {
    const before = rankSuspects(table, [reading(SIGNAL, volts(0))]);
    expect(whatChanged(before, before)).toMatch(
      /^little changed; "wire signal open" leads with 96 %$/,
    );
    // A repair has the chances of all causes that it mends.
    const whole = Math.round(100 * before.repairs[0]!.chance);
    expect(whatChanged(before, before, () => 'signal wire')).toBe(
      `little changed; signal wire leads with ${whole > 99 ? 'over 99' : whole} %`,
    );
  });
  test('no longer explained', () => {
    const words = whatChanged(
      rankSuspects(table, []),
      rankSuspects(table, [reading(FEED, volts(9.3))]),
    );
    expect(words).toContain('no single suspect explains all readings any more');
  });
  test('explained again', () => {
    const odd = rankSuspects(table, [reading(FEED, volts(9.3))]);
    expect(whatChanged(odd, rankSuspects(table, []))).toContain('the readings are explained again');
  });
  /** Rankings of suspects with these chances, by place. */
  const ranking = (chances: Readonly<Record<number, number>>, explained = true): Ranking => ({
    ...rankSuspects(table, []),
    explained,
    suspects: Object.entries(chances)
      .map(([index, chance]) => ({
        index: Number(index),
        id: `f${index}`,
        words: `fault ${index}`,
        repair: `r${index}`,
        chance,
      }))
      .sort((x, y) => y.chance - x.chance),
  });
  test.each<[string, Readonly<Record<number, number>>, Readonly<Record<number, number>>, string]>([
    // what moved by a fiftieth has moved
    [
      'fell',
      { 0: 0.02, 1: 0.6, 2: 0.38 },
      { 0: 0, 1: 0.61, 2: 0.39 },
      '"fault 0" fell from 2 % to under 1 %',
    ],
    ['rose', { 0: 0, 1: 0.6, 2: 0.4 }, { 0: 0.02, 1: 0.59, 2: 0.39 }, '"fault 0" rose to 2 %'],
    [
      'hardly moved',
      { 0: 0.019, 1: 0.6, 2: 0.381 },
      { 0: 0, 1: 0.61, 2: 0.39 },
      'little changed; "fault 1" leads with 61 %',
    ],
    [
      'the farthest of several',
      { 0: 0.3, 1: 0.4, 2: 0.1, 3: 0.2 },
      { 0: 0.25, 1: 0.25, 2: 0.2, 3: 0.3 },
      '"fault 1" fell from 40 % to 25 %; "fault 2" rose to 20 %',
    ],
    [
      'of equals the likelier',
      { 0: 0.375, 1: 0.5, 2: 0, 3: 0.125 },
      { 0: 0.25, 1: 0.375, 2: 0.125, 3: 0.25 },
      '"fault 1" fell from 50 % to 38 %; "fault 3" rose to 25 %',
    ],
    [
      'new',
      { 0: 1 },
      { 0: 0.7, 1: 0.3 },
      '"fault 0" fell from over 99 % to 70 %; "fault 1" rose to 30 %',
    ],
  ])('%s', (_, before, after, words) => {
    expect(whatChanged(ranking(before), ranking(after))).toBe(words);
  });
  test('what a reading settled is told by its things, the likeliest first, three of them', () => {
    const repairs = (chances: readonly number[]): Ranking => ({
      ...ranking({ 0: 0.3, 1: 0.7 }),
      repairs: chances.map((chance, index) => ({ repair: `r${index}`, chance })),
    });
    const thing = (repair: string) => (repair === 'r4' ? null : `thing ${repair.slice(1)}`);
    const said = (before: readonly number[], after: readonly number[]) =>
      whatChanged(repairs(before), repairs(after), thing).split('; ')[0];
    expect(said([0.5, 0.48, 0.02], [0.98, 0.0099, 0.0099])).toBe('now unlikely: thing 1, thing 2');
    // 1 % is not settled, and less than 2 % was hardly open before
    expect(said([0.5, 0.48, 0.0199], [0.98, 0.01, 0])).toBe(
      'little changed; "fault 1" leads with 70 %'.split('; ')[0],
    );
    expect(said([0.2, 0.2, 0.2, 0.2, 0.2], [0, 0, 0, 0, 0])).toBe(
      'now unlikely: thing 0, thing 1, thing 2 and 1 more',
    );
  });
  test('whether the readings are explained is told when it changes', () => {
    const said = (before: boolean, after: boolean) =>
      whatChanged(ranking({ 0: 1 }, before), ranking({ 0: 1 }, after))
        .split('; ')
        .slice(2);
    expect(said(true, true)).toEqual([]);
    expect(said(false, false)).toEqual([]);
    expect(said(true, false)).toEqual(['no single suspect explains all readings any more']);
    expect(said(false, true)).toEqual(['the readings are explained again']);
  });
  test.each([
    [0.01, '1 %'],
    [0.0099, 'under 1 %'],
    [0.99, '99 %'],
    [0.9901, 'over 99 %'],
    [0.02, '2 %'],
    [0.985, '99 %'],
    [0, 'under 1 %'],
    [0.31, '31 %'],
    [0.996, 'over 99 %'],
  ])('%d reads %s', (chance, words) => {
    expect(percent(chance)).toBe(words);
  });
});
