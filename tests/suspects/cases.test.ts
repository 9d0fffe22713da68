/** Cases and what can be said of them, worked out by hand. */
import { describe, expect, test } from 'vitest';
import { CaseMeasures } from '../../src/suspects/case-measures.ts';
import { type CaseOptions, type Cases, splitIntoCases } from '../../src/suspects/cases.ts';
import { huffmanLength } from '../../src/suspects/huffman.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable } from '../../src/suspects/prediction-table.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

describe('cases', () => {
  /** Samples of two faults: the first shows two looks, the second only one of them. */
  const split = (repairs: readonly [string, string], options: CaseOptions = {}) => {
    const table = buildTable(
      [
        { id: 'a', repair: repairs[0], weight: 1 },
        { id: 'b', repair: repairs[1], weight: 1 },
      ],
      [simpleTest('t')],
      (id, _, sample) => look(id === 'a' && sample === 1 ? 1 : 0),
      2,
    );
    return splitIntoCases(table, [0], outcomesOf(table), Float64Array.from([0.6, 0.4]), options);
  };
  const shape = ({ weight, candidates, repairOf, mass, count }: Cases) => ({
    weight: [...weight].map((one) => Math.round(one * 1e9) / 1e9),
    candidates,
    repairOf: [...repairOf],
    mass: Math.round(mass * 1e9) / 1e9,
    count,
  });
  test('a fault with two outcomes is two cases', () => {
    expect(shape(split(['A', 'B']))).toEqual({
      weight: [0.3, 0.3, 0.4],
      candidates: [[0], [0], [1]],
      repairOf: [0, 0, 1],
      mass: 1,
      count: 3,
    });
    expect([...split(['A', 'B']).signatureOf]).toEqual([0, 1, 0]);
  });
  test('faults with one repair that look alike are one case', () => {
    expect(shape(split(['A', 'A']))).toMatchObject({
      weight: [0.7, 0.3],
      candidates: [[0, 1], [0]],
    });
  });
  test('samples weigh as they are given', () => {
    const sampleShares = Float64Array.from([0.9, 0.1, 1, 0]);
    expect(shape(split(['A', 'B'], { sampleShares }))).toMatchObject({ weight: [0.54, 0.06, 0.4] });
  });
  test('a look without any share is none', () => {
    const sampleShares = Float64Array.from([1, 0, 1, 0]);
    expect(shape(split(['A', 'B'], { sampleShares }))).toMatchObject({ weight: [0.6, 0.4] });
  });
  test('all of the chance are all cases, however unlikely', () => {
    const sampleShares = Float64Array.from([1, 1e-20, 1, 0]);
    expect(split(['A', 'B'], { sampleShares, massKept: 1 }).count).toBe(3);
    expect(split(['A', 'B'], { sampleShares, casesMax: 3 }).count).toBe(3);
    expect(split(['A', 'B'], { sampleShares, massKept: 0.999 }).count).toBe(2);
  });
  test.each<[CaseOptions, number[]]>([
    [{ casesMax: 3 }, [0.3, 0.3, 0.4]],
    [{ casesMax: 2 }, [0.6, 0.4]], // one that stands for both of its repair
    [{ casesMax: 1 }, [0.6]],
    [{ massKept: 0.1 }, [0.3, 0.4]], // two at least, or there is nothing to tell apart
    [{ massKept: 0.7 }, [0.3, 0.4]],
    [{ massKept: 0.75 }, [0.3, 0.3, 0.4]],
  ])('with %o the likeliest are kept, in their order', (options, weight) => {
    const kept = split(['A', 'B'], options);
    expect(shape(kept)).toMatchObject({ weight, count: weight.length });
    expect(kept.mass).toBeCloseTo(
      weight.reduce((a, b) => a + b),
      9,
    );
  });
});

describe('cases of several faults', () => {
  const fault = (id: string) => ({ id, repair: id, weight: 1 });
  test('are two where faults look different, or have different repairs', () => {
    for (const matrix of [
      [
        [1, 0],
        [0, 0],
      ],
      [
        [0, 0],
        [1, 0],
      ],
      [
        [0, 0],
        [0, 0],
      ],
    ]) {
      const table = matrixTable([fault('a'), fault('b')], matrix);
      const even = Float64Array.from([0.5, 0.5]);
      const of = outcomesOf(table);
      const { count, weight, candidates } = splitIntoCases(table, [0, 1], of, even);
      expect({ count, weight: [...weight], candidates }).toEqual({
        count: 2,
        weight: [0.5, 0.5],
        candidates: [[0], [1]],
      });
    }
  });
  test('cases hold the outcomes of each test, one after the other', () => {
    const table = matrixTable(
      [fault('a'), fault('b')],
      [
        [0, 0, 1],
        [1, 0, 2],
      ],
    );
    const even = Float64Array.from([0.5, 0.5]);
    const { outcomeOf, tests, outcomes } = splitIntoCases(table, [2, 0], outcomesOf(table), even);
    expect([...outcomeOf]).toEqual([0, 1, 0, 1]);
    expect(tests).toEqual([2, 0]);
    expect(outcomes.map(({ test: one }) => one)).toEqual([2, 0]);
  });
  test('leave out a fault that is all but out', () => {
    const table = matrixTable([fault('a'), fault('b'), fault('c')], [[0], [1], [2]]);
    const of = (...chances: number[]) =>
      splitIntoCases(table, [0], outcomesOf(table), Float64Array.from(chances)).candidates;
    expect(of(0.5, 0.5, 0)).toEqual([[0], [1]]);
    expect(of(0.5, 0.5, 1e-8)).toEqual([[0], [1], [2]]);
    expect(of(0.5, 0.5, 1e-10)).toEqual([[0], [1]]);
    // chances count by their share of all
    expect(of(5, 5, 5e-9)).toEqual([[0], [1]]);
    expect(of(0.05, 0.05, 5e-10)).toEqual([[0], [1], [2]]);
  });
});

describe('a set of cases', () => {
  const candidates = ['a', 'b', 'c', 'd'].map((id) => ({ id, repair: id, weight: 1 }));
  const tests = [
    [0, 0],
    [0, 1],
    [1, 1],
    [1, 1],
  ];
  const table = matrixTable(candidates, tests);
  const even = Float64Array.from([0.25, 0.25, 0.25, 0.25]);
  const cases = splitIntoCases(table, [0, 1], outcomesOf(table), even);
  const READING = [2, 1];
  const measures = new CaseMeasures(cases, (place, one) => ({
    place: 1,
    minutes: READING[one]! + (place < 0 ? 0 : 3),
  }));
  const set = (...list: number[]) => ({
    cases: Uint16Array.from(list),
    place: 0,
    weight: list.length / 4,
  });

  test('holds what all tests together could tell: a, b, and c with d', () => {
    // 2 bits of four, less half of the one bit between c and d that no test tells
    expect(measures.information(set(0, 1, 2, 3).cases)).toBeCloseTo(1.5, 12);
    expect(measures.information(set(2, 3).cases)).toBeCloseTo(0, 12);
    expect(measures.information(set(1).cases)).toBe(0);
    expect(measures.information(set(0, 1).cases)).toBeCloseTo(0.5, 12); // one bit, half the weight
  });
  test('ranks its tests by bits per minute', () => {
    const quarter = 2 - 0.75 * Math.log2(3); // entropy of 1/4 and 3/4
    const ranked = measures.rankTests(set(0, 1, 2, 3));
    expect(ranked.map(({ test: one }) => one)).toEqual([1, 0]);
    expect(ranked.map(({ bits }) => bits)).toEqual([
      expect.closeTo(quarter, 12),
      expect.closeTo(1, 12),
    ]);
    expect(ranked.map(({ minutes }) => minutes)).toEqual([4, 5]);
    expect(ranked[0]!.score).toBeCloseTo(quarter / 4, 5);
    expect(measures.rankTests(set(2, 3))).toEqual([]);
    // asked again it says the same: nothing is left over in between
    expect(measures.rankTests(set(0, 1, 2, 3))).toEqual(ranked);
  });
  test('needs at least the best code of its repairs, and the move to a useful test', () => {
    const whole = set(0, 1, 2, 3);
    const information = measures.information(whole.cases);
    // a, b and c-or-d: code words of 2, 2 and 1 letters, 1.5 on average, a minute each; 3 minutes to get there
    expect(measures.lowerBound(whole, information)).toBeCloseTo(4.5, 12);
    const two = set(1, 2);
    // only the first test parts b from c: 2 minutes and 3 to get there, at half the weight
    expect(measures.lowerBound(two, measures.information(two.cases))).toBeCloseTo(2.5, 12);
  });
  /** Cases of faults as they look in some tests, and what those take in minutes, wherever one stands. */
  const weighed = (
    faults: readonly (readonly [repair: string, weight: number, ...shown: number[]])[],
    minutes: readonly number[],
  ) => {
    const looks = matrixTable(
      faults.map(([repair, weight], index) => ({ id: `f${index}`, repair, weight })),
      faults.map(([, , ...shown]) => shown),
    );
    const split = splitIntoCases(
      looks,
      minutes.map((_, index) => index),
      outcomesOf(looks),
      Float64Array.from(faults, ([, weight]) => weight),
    );
    const of = new CaseMeasures(split, (place, one) => ({ place, minutes: minutes[one]! }));
    const list = Uint16Array.from({ length: split.count }, (_, index) => index);
    const whole = { cases: list, place: 0, weight: split.mass };
    return {
      information: of.information(list),
      bound: of.lowerBound(whole, of.information(list)),
      ranked: (...cases: readonly number[]) =>
        of.rankTests({
          cases: Uint16Array.from(cases),
          place: 0,
          weight: cases.reduce((sum, one) => sum + split.weight[one]!, 0),
        }),
    };
  };
  test.each<[string, number, Parameters<typeof weighed>]>([
    [
      'one reading of the only test that parts them, though another is cheaper',
      2,
      [
        [
          ['A', 0.9, 0, 0],
          ['B', 0.1, 1, 0],
        ],
        [2, 1],
      ],
    ],
    [
      'one reading of three outcomes for three',
      1,
      [
        [
          ['A', 1 / 3, 0],
          ['B', 1 / 3, 1],
          ['C', 1 / 3, 2],
        ],
        [1],
      ],
    ],
    [
      // the code over three letters is 1.5 readings of 4 minutes; but 2 bits at a quarter of a bit per minute are 8
      'what the most telling minute brings, where outcomes of a dear test make the code short',
      8,
      [
        [
          ['A', 0.25, 0, 0, 0],
          ['B', 0.25, 0, 1, 1],
          ['C', 0.25, 1, 0, 2],
          ['D', 0.25, 1, 1, 2],
        ],
        [4, 4, 40],
      ],
    ],
    [
      // words of 1, 2 and 2 letters for 0.7, 0.1 and 0.2: those that look alike are one
      'the best code of what can be parted',
      1.3,
      [
        [
          ['A', 0.7, 0, 0],
          ['B', 0.1, 1, 0],
          ['C', 0.1, 1, 1],
          ['D', 0.1, 1, 1],
        ],
        [1, 1],
      ],
    ],
    [
      // D looks like E in one case and like C in the other, so the three are one, of a quarter beside A
      'one reading where others are joined by one that looks like each of them',
      1,
      [
        [
          ['E', 0.0625, 1, 1],
          ['C', 0.0625, 1, 0],
          ['D', 0.0625, 1, 0],
          ['D', 0.0625, 1, 1],
          ['A', 0.75, 0, 0],
        ],
        [1, 1],
      ],
    ],
    [
      'one reading where two look alike in each of their two cases',
      1,
      [
        [
          ['C', 0.0625, 1, 0],
          ['C', 0.0625, 1, 1],
          ['D', 0.0625, 1, 0],
          ['D', 0.0625, 1, 1],
          ['A', 0.75, 0, 0],
        ],
        [1, 1],
      ],
    ],
  ])('need at least %s: %f minutes', (_, minutes, asked) => {
    expect(weighed(...asked).bound).toBeCloseTo(minutes, 9);
  });
  test('of one repair hold nothing, however its weights round', () => {
    const { information } = weighed(
      [
        ['A', 0.1, 0],
        ['A', 0.2, 1],
        ['A', 0.7, 2],
      ],
      [1],
    );
    expect(information).toBe(0);
  });
  test('tell in bits of what is left, whatever its weight, with many repairs', () => {
    const many = Array.from(
      { length: 16 },
      (_, index) => [`r${index}`, 1 / 16, index % 2] as const,
    );
    const { ranked } = weighed(many, [2]);
    const half = { test: 0, bits: expect.closeTo(1, 12), minutes: 2 };
    const score = expect.closeTo((1 + 1e-6) / 2, 12);
    expect(ranked(...many.keys())).toEqual([{ ...half, score }]);
    expect(ranked(4, 5, 6, 7)).toEqual([{ ...half, score }]);
    expect(ranked(4, 6)).toEqual([]);
  });
  test('of tests that tell as much of the repairs, the one that tells more of the faults comes first', () => {
    // both part A from B; the second also parts the two faults of A, the third tells nothing but that
    const faults = ['a1', 'a2', 'b', 'b2'].map((id) => ({
      id,
      repair: id[0]!.toUpperCase(),
      weight: 1,
    }));
    const looks = matrixTable(faults, [
      [0, 0, 0],
      [0, 2, 1],
      [1, 1, 0],
      [1, 1, 0],
    ]);
    const three = splitIntoCases(looks, [0, 1, 2], outcomesOf(looks), Float64Array.from(even));
    const ranked = new CaseMeasures(three, () => ({ place: 0, minutes: 2 })).rankTests({
      cases: Uint16Array.from({ length: three.count }, (_, index) => index),
      place: 0,
      weight: 1,
    });
    // the third: one quarter dark by A leaves a quarter of A and a half of B; 1 - 0.75 * H(1/3)
    const rest = 1 - 0.75 * (Math.log2(3) - 2 / 3);
    expect(ranked.map(({ test: one, bits }) => [one, bits])).toEqual([
      [1, expect.closeTo(1, 12)],
      [0, expect.closeTo(1, 12)],
      [2, expect.closeTo(rest, 12)],
    ]);
    // parting cases counts a millionth: 1.5 bits and 1 bit
    expect(ranked[0]!.score).toBeCloseTo((1 + 1.5e-6) / 2, 12);
    expect(ranked[1]!.score).toBeCloseTo((1 + 1e-6) / 2, 12);
  });
  test('of tests with more outcomes than can be counted is a mistake of the caller', () => {
    const many = { ...cases, outcomeOf: cases.outcomeOf.map((_, at) => (at === 3 ? 31 : 30)) };
    expect(() => new CaseMeasures(many, () => ({ place: 0, minutes: 1 }))).toThrow('outcomes');
    const most = { ...cases, outcomeOf: cases.outcomeOf.map(() => 30) };
    expect(() => new CaseMeasures(most, () => ({ place: 0, minutes: 1 }))).not.toThrow();
  });
});

describe('the best code for things of given weights', () => {
  test.each<[number[], number, number]>([
    // by hand: the sums of the merges
    [[5], 2, 0],
    [[], 2, 0],
    [[1, 1], 2, 2],
    [[1, 1, 0], 2, 2], // what has no weight needs no word
    [[1, 2, 3], 2, 3 + 6],
    [[4, 1, 3, 2], 2, 3 + 6 + 10],
    [[1, 1, 1, 1], 2, 2 + 2 + 4],
    [[1, 1, 1, 1, 1], 2, 2 + 2 + 3 + 5],
    [[1, 1, 1], 3, 3],
    [[1, 2, 3, 4], 3, 3 + 10], // two at first, so that three can be merged at last
    [[1, 1, 1, 1, 1], 3, 3 + 5],
    [[1, 2, 3, 4, 5, 6], 4, 6 + 21],
    [[0.5, 0.25, 0.25], 2, 0.5 + 1],
  ])('%o over %d letters has length %f', (weights, ways, length) => {
    expect(huffmanLength(weights, ways)).toBeCloseTo(length, 12);
  });
  test('has two letters when nothing else is said', () => {
    expect(huffmanLength([1, 1, 1])).toBe(5);
  });
});

test('a test with one outcome tells nothing', () => {
  expect(() => huffmanLength([1, 1], 1)).toThrow('two outcomes');
  expect(() => huffmanLength([1, 1], Number.NaN)).toThrow('two outcomes');
});
