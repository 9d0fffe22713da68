/** Which readings are pieces of evidence of their own. */
import { describe, expect, test } from 'vitest';
import type { Shown } from '../../src/circuit/test.ts';
import { corroborate } from '../../src/suspects/corroborate.ts';
import { ERROR_MODEL, type ErrorModel, EXACT_MODEL } from '../../src/suspects/error-model.ts';
import {
  carryingReadings,
  type Evidence,
  gatherEvidence,
} from '../../src/suspects/gather-evidence.ts';
import type { Reading, ReadingFit } from '../../src/suspects/likelihood.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, HEALTHY, type TableTest } from '../../src/suspects/prediction-table.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { atOnce } from '../../src/suspects/slices.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

const NOW = { state: 'key-on', unplugged: [], reached: [] } as const;
const fault = (id: string, weight = 1) => ({ id, repair: id, weight });

/** Three suspects; every test parts the concluded one from the others as its row of the matrix says. */
function pieces(matrix: readonly (readonly number[])[], tests: readonly TableTest[]): string[] {
  const table = matrixTable([fault('own'), fault('one'), fault('other')], matrix, tests);
  const readings: Reading[] = tests.map((_, index) => ({
    test: index,
    shown: look(matrix[0]![index]!),
  }));
  const { evidence } = atOnce(
    corroborate(table, {
      concluded: ['own'],
      readings,
      ranking: rankSuspects(table, readings),
      outcomes: outcomesOf(table),
      now: NOW,
      means: ALL_MEANS,
    }),
  );
  return evidence.map(({ test: index }) => tests[index]!.id).sort();
}

describe('readings at the same terminals', () => {
  const at = (id: string, ...reads: string[]) => simpleTest(id, { reads });
  test('that speak against the same rival are one piece, whatever kind of test they are', () => {
    const matrix = [
      [0, 0],
      [1, 1],
      [1, 1],
    ];
    expect(pieces(matrix, [at('a', 'pin'), at('b', 'pin')])).toHaveLength(1);
    expect(pieces(matrix, [at('a', 'pin'), at('b', 'far pin')])).toEqual(['a', 'b']);
    expect(pieces(matrix, [simpleTest('a'), simpleTest('b')])).toEqual(['a', 'b']);
  });
  test('that speak against different rivals are two', () => {
    const matrix = [
      [0, 0],
      [1, 0],
      [0, 1],
    ];
    expect(pieces(matrix, [at('a', 'pin'), at('b', 'pin')])).toEqual(['a', 'b']);
  });
});

/**
 * Pieces of evidence from likelihoods as they stand: each reading is of a test of its own with a row of how likely
 * each suspect makes it. Suspects with one letter have one repair; all are equally likely before.
 */
interface Told {
  readonly row: readonly number[];
  readonly at?: Partial<TableTest>;
  readonly blind?: number;
  readonly tail?: (row: number) => number;
}
const tell = (row: readonly number[], more: Omit<Told, 'row'> = {}): Told => ({ row, ...more });
const pin = (row: readonly number[]) => tell(row, { at: { reads: ['pin'] } });

function weighed(
  ids: readonly string[],
  told: readonly Told[],
  more: {
    readonly concluded?: readonly string[];
    readonly prior?: readonly number[];
    readonly errorModel?: ErrorModel;
    /** Tests in the order in which they were read; all of them in their order without it. */
    readonly order?: readonly number[];
    readonly pieces?: readonly Evidence[];
    /** Pieces that are enough; none are asked for without it. */
    readonly enough?: number;
    /** What each test shows; looks without it. */
    readonly shows?: Shown;
  } = {},
) {
  const candidates = ids.map((id) => ({ id, repair: id === HEALTHY ? id : id[0]!, weight: 1 }));
  const tests = told.map(({ at }, index) => simpleTest(`t${index}`, at));
  const shows = more.shows ?? look(0);
  const table = buildTable(candidates, tests, () => shows, 1);
  const order = more.order ?? [...told.keys()];
  const fits = order.map((index): ReadingFit => {
    const { row, blind, tail } = told[index]!;
    const perRow = Float64Array.from(row);
    return { perRow, blind: blind ?? 0.01, tail: tail ?? (() => 1) };
  });
  const readings = order.map((index): Reading => ({ test: index, shown: shows }));
  const concluded = more.concluded ?? [ids[0]!];
  const own = candidates.filter(({ id }) => concluded.includes(id)).map(({ repair }) => repair);
  const ask = {
    concluded,
    readings,
    ranking: rankSuspects(table, []),
    ...(more.prior && { prior: Float64Array.from(more.prior) }),
    ...(more.errorModel && { errorModel: more.errorModel }),
    outcomes: outcomesOf(table),
    now: NOW,
    means: ALL_MEANS,
  };
  return {
    gathered: () => gatherEvidence(table, ask, new Set(own), fits, more.enough ?? 0),
    carrying: () => carryingReadings(table, ask, fits, more.pieces ?? []),
  };
}

/** Test and rival of each piece, in the order in which they are taken. */
function taken(...asked: Parameters<typeof weighed>): [number, string][] {
  return weighed(...asked)
    .gathered()
    .evidence.map(({ test: index, against }) => [index, against]);
}

describe('a piece of evidence', () => {
  test.each([
    [3, 1],
    [2.99, 0],
    [1, 0],
  ])('%f times likelier than under the rival makes %d', (own, count) => {
    expect(taken(['o', 'a'], [tell([own, 1])])).toHaveLength(count);
  });
  test('says which reading, how clearly, and against whom', () => {
    const { evidence, rival } = weighed(['o', 'a'], [tell([1, 1]), tell([1, 0.1])]).gathered();
    expect(evidence).toEqual([{ reading: 1, test: 1, ratio: expect.closeTo(10, 9), against: 'a' }]);
    expect(rival).toMatchObject({ repair: 'a' });
  });
  test('is a reading that the named faults explain better than a slip would', () => {
    // one reading in fifty is a slip: 2 * 0.02 * 0.5, as likely a slip as not, is 0.02
    const at = (own: number) => taken(['o', 'a'], [tell([own, 0.001], { blind: 0.5 })]).length;
    expect([at(0.019), at(0.021)]).toEqual([0, 1]);
    const errorModel = { ...ERROR_MODEL, wrongReading: 0.05 };
    const told = [tell([0.04, 0.001], { blind: 0.5 })];
    expect(taken(['o', 'a'], told, { errorModel })).toEqual([]);
    expect(taken(['o', 'a'], told)).toHaveLength(1);
  });
  test('is no reading as likely a slip as not, however clearly the rivals cannot show it', () => {
    expect(
      taken(['o', 'a'], [tell([2 ** -5, 0.001], { blind: 1 })], {
        errorModel: { ...ERROR_MODEL, wrongReading: 2 ** -6 },
      }),
    ).toEqual([]);
  });
  test('is not so far out that less than a hundredth of what the named faults show lies there', () => {
    const at = (share: number) =>
      taken(['o', 'a'], [tell([1, 0.01], { tail: (row) => (row === 0 ? share : 1) })]).length;
    expect([at(0.0099), at(0.01)]).toEqual([0, 1]);
  });
  test('is explained by the faults that are named, not by others with their repair', () => {
    const told = [tell([0.0001, 1, 0.01])];
    expect(taken(['o1', 'o2', 'a'], told, { concluded: ['o1'] })).toEqual([]);
    expect(taken(['o1', 'o2', 'a'], told, { concluded: ['o2'] })).toHaveLength(1);
    // the two together are as likely as half of it, fifty times the rival
    expect(taken(['o1', 'o2', 'a'], told, { concluded: ['o1', 'o2'] })).toHaveLength(1);
  });
  test('is taken against the likeliest rival that the others left, the strongest first', () => {
    const told = [tell([1, 0.2, 0.3]), tell([1, 0.3, 0.1])];
    // a is likelier before: the first reading tells more against it, and then b stands
    expect(taken(['o', 'a', 'b'], told, { prior: [0.4, 0.35, 0.25] })).toEqual([
      [0, 'a'],
      [1, 'b'],
    ]);
    // b is likelier before: the second reading tells more against it
    expect(taken(['o', 'a', 'b'], told, { prior: [0.4, 0.25, 0.35] })).toEqual([
      [1, 'b'],
      [0, 'a'],
    ]);
  });
  test('of two as strong is the earlier test, in whatever order they were read', () => {
    for (const order of [
      [0, 1],
      [1, 0],
    ]) {
      const alike = (more: number) =>
        taken(['o', 'a'], [tell([1, 0.1]), tell([1 + more, 0.1])], { order });
      expect(alike(0)[0]).toEqual([0, 'a']);
      expect(alike(5e-10)[0]).toEqual([0, 'a']); // alike but for rounding
      expect(alike(2e-9)[0]).toEqual([1, 'a']);
      expect(alike(-2e-9)[0]).toEqual([0, 'a']);
    }
  });
  test('of a test that was read twice alike is the first reading', () => {
    const { evidence } = weighed(['o', 'a'], [tell([1, 0.1])], { order: [0, 0] }).gathered();
    expect(evidence.map(({ reading }) => reading)).toEqual([0]);
  });
  test('is not found twice by the same kind of test at the same place', () => {
    const first = { family: 'signal', reaches: ['plug'] };
    const told = (at: Partial<TableTest>) => [
      tell([1, 0.1, 1], { at: first }),
      tell([1, 1, 0.1], { at: { ...first, ...at } }),
    ];
    expect(taken(['o', 'a', 'b'], told({}))).toHaveLength(1);
    expect(taken(['o', 'a', 'b'], told({ state: 'running' }))).toHaveLength(2);
    expect(taken(['o', 'a', 'b'], told({ reaches: ['far'] }))).toHaveLength(2);
  });
  test('needs a rival: when everything else is impossible there is none', () => {
    const { evidence, rival } = weighed(['o', 'a'], [tell([1, 0.1])], { prior: [1, 0] }).gathered();
    expect([evidence, rival]).toEqual([[], null]);
    expect(weighed(['o', 'a'], []).gathered().rival).toMatchObject({ repair: 'a', chance: 0.5 });
  });
  test('weighs no more than tenfold in what it leaves of a rival', () => {
    // by hand: a thousand times against a, of evens, leaves it 0.1 of 1.1
    const { rival } = weighed(['o', 'a'], [tell([1, 0.001])]).gathered();
    expect(rival!.chance).toBeCloseTo(1 / 11, 9);
    // four times leaves 0.25 of 1.25, however likely the reading is
    const { rival: quarter } = weighed(['o', 'a'], [tell([0.5, 0.125])]).gathered();
    expect(quarter!.chance).toBeCloseTo(0.2, 9);
    // the same with a third suspect: b gains ten at most, and so stands at 10 of 11.25
    const lifted = weighed(['o', 'a', 'b'], [tell([1, 0.25, 400])], { prior: [0.4, 0.4, 0.2] });
    expect(lifted.gathered().rival!.chance).toBeCloseTo(2 / (0.4 + 0.1 + 2), 9);
  });
  test('is against a rival as the other readings leave it', () => {
    // by hand: a2 alone gives 1 / 0.01; with a1 as likely the mean is 0.505, not twice less than 1
    const odd = tell([1, 1, 0.01]);
    expect(taken(['o', 'a1', 'a2'], [odd])).toEqual([]);
    // Beside a reading of 0.2 for a1 the mean is (0.2 + 0.01) / 1.2 = 0.175, almost six times less than 1, and that
    // reading, beside the odd one, (0.2 + 0.01) / 1.01 = 0.208: alone each would say nothing, together they are two.
    expect(taken(['o', 'a1', 'a2'], [tell([1, 0.2, 1]), odd])).toEqual([
      [1, 'a'],
      [0, 'a'],
    ]);
    expect(taken(['o', 'a1', 'a2'], [tell([1, 0.2, 1])])).toEqual([]);
  });
  test('is found among exact readings that contradict one another', () => {
    const exact = { errorModel: EXACT_MODEL };
    // the first is impossible under o, the second under a: what is left is the ratio of the two alone
    const told = [tell([0, 0.5], { blind: 0 }), tell([0.5, 0], { blind: 0 })];
    expect(taken(['o', 'a'], told, exact)).toEqual([[1, 'a']]);
  });
});

describe('several looks at the same pin', () => {
  const suspects = ['o', 'a', 'b'];
  test('are one piece when the first speaks against the rival that is left', () => {
    // against a the first tells more; it leaves b, against which it told three or four times as well
    expect(taken(suspects, [pin([1, 0.01, 0.25]), pin([1, 1, 0.1])])).toEqual([[0, 'a']]);
    expect(taken(suspects, [pin([3, 0.01, 1]), pin([1, 1, 0.1])])).toEqual([[0, 'a']]);
    expect(taken(suspects, [pin([2.9, 0.01, 1]), pin([1, 1, 0.1])])).toHaveLength(2);
  });
  test('are one piece when the second speaks against the rival that is gone', () => {
    expect(taken(suspects, [pin([1, 0.1, 1]), pin([1, 0.25, 0.05])])).toEqual([[0, 'a']]);
    expect(taken(suspects, [pin([1, 0.1, 1]), pin([3, 1, 0.05])])).toEqual([[0, 'a']]);
    expect(taken(suspects, [pin([1, 0.1, 1]), pin([2.9, 1, 0.05])])).toHaveLength(2);
  });
  test('give the one that leaves the most pieces, where the strongest leaves too few', () => {
    // By hand: the first tells most against a, and then nothing else counts against b, since the second is at the same pin
    // and speaks against a as well. Without the first the third speaks against a, and the second against b.
    const first = pin([1, 0.01, 1]);
    const second = pin([1, 0.25, 0.05]);
    const third = tell([1, 0.1, 1]);
    for (const order of [
      [0, 1, 2],
      [2, 1, 0],
    ]) {
      const evidence = (enough: number) =>
        taken(suspects, [first, second, third], { prior: [0.4, 0.35, 0.25], order, enough });
      expect(evidence(1)).toEqual([[0, 'a']]);
      expect(evidence(2)).toEqual([
        [2, 'a'],
        [1, 'b'],
      ]);
    }
  });
  test('stay by the strongest where another would leave no more', () => {
    const told = [pin([1, 0.01, 1]), pin([1, 0.25, 0.05])];
    expect(taken(suspects, told, { prior: [0.4, 0.35, 0.25], enough: 3 })).toEqual([[0, 'a']]);
  });
  test('are not asked for the other one where they are numbers: the same pin shows the same', () => {
    // as above, and the table says that each test shows a number
    const told = [pin([1, 0.01, 1]), pin([1, 0.25, 0.05]), tell([1, 0.1, 1])];
    const more = { prior: [0.4, 0.35, 0.25], enough: 3 };
    expect(taken(suspects, told, more)).toHaveLength(2);
    expect(
      taken(suspects, told, { ...more, shows: { kind: 'number', value: 5, unit: 'V' } }),
    ).toEqual([[0, 'a']]);
  });
  test('are one piece, whichever of them it is, and a test that was made again is no way out', () => {
    const told = [pin([1, 0.01, 1]), pin([1, 0.25, 0.05])];
    const prior = [0.4, 0.35, 0.25];
    expect(taken(suspects, told, { prior, enough: 3, order: [0, 1, 0, 1] })).toHaveLength(1);
  });
  test('make no piece of what a third one says, as one of them would not', () => {
    // by hand, for the third: with a1 at 0.5 once (0.5 + 0.01) / 1.5 = 0.34, not three times less than 1;
    // counted twice it would be (0.25 + 0.01) / 1.25 = 0.21
    const third = tell([1, 1, 0.01]);
    const ids = ['o', 'a1', 'a2'];
    expect(taken(ids, [pin([1, 0.5, 1]), pin([1, 0.5, 1]), third])).toEqual([]);
    expect(taken(ids, [tell([1, 0.5, 1]), third], { order: [0, 0, 1] })).toEqual([]);
    const elsewhere = tell([1, 0.5, 1], { at: { reads: ['far pin'] } });
    expect(taken(ids, [pin([1, 0.5, 1]), elsewhere, third])).toEqual([[2, 'a']]);
    expect(taken(ids, [tell([1, 0.5, 1]), tell([1, 0.5, 1]), third])).toEqual([[2, 'a']]);
  });
  test('count by the one that tells most, in whatever order they were read', () => {
    // Of two looks at the pin the second tells more: it leaves a1 a fifth, (0.2 + 0.01) / 1.2 is almost six times less
    // than 1 for the third; and beside the third it is itself a piece.
    const told = [pin([1, 1, 1]), pin([1, 0.2, 1]), tell([1, 1, 0.01])];
    for (const order of [
      [0, 1, 2],
      [1, 0, 2],
    ])
      expect(taken(['o', 'a1', 'a2'], told, { order })).toEqual([
        [2, 'a'],
        [1, 'a'],
      ]);
    // Of two that tell alike the earlier test counts. It leaves a2, of which the third says nothing; but beside both
    // the second itself is a piece: (0.001 * 1 + 1 * 0.1) / 1.001 is ten times less than 1.
    const alike = [pin([1, 0.1, 1]), pin([1, 1, 0.1]), tell([1, 0.01, 1])];
    for (const order of [
      [0, 1, 2],
      [1, 0, 2],
    ])
      expect(taken(['o', 'a1', 'a2'], alike, { order })).toEqual([[1, 'a']]);
  });
});

describe('a reading that carries a conclusion', () => {
  const carried = (...asked: Parameters<typeof weighed>) => weighed(...asked).carrying();
  const suspects = ['o', 'a', HEALTHY];
  test.each([
    [3, [0]],
    [2.99, []],
    [1, []],
  ])('fits it %f times as well as a sound circuit', (own, places) => {
    expect(carried(suspects, [tell([own, 1, 1])])).toEqual(places);
    expect(carried([HEALTHY, 'o'], [tell([1, own])], { concluded: ['o'] })).toEqual(places);
  });
  test('is explained by it', () => {
    const slip = tell([0.01, 1, 0.001], { blind: 0.5 }); // less than 0.02, as likely a slip as not
    expect(carried(suspects, [slip])).toEqual([]);
    const errorModel = { ...ERROR_MODEL, wrongReading: 0.005 }; // where slips are rarer it is none
    expect(carried(suspects, [slip], { errorModel })).toEqual([0]);
  });
  test('is no piece of evidence', () => {
    const pieces = [{ reading: 1, test: 1, ratio: 3, against: 'a' }];
    const told = [1, 2, 3].map(() => tell([1, 1, 0.1]));
    expect(carried(suspects, told, { pieces })).toEqual([0, 2]);
  });
  test('is none where the conclusion is that nothing is wrong, or nobody asks whether anything is', () => {
    expect(carried(suspects, [tell([1, 1, 0.1])], { concluded: [HEALTHY] })).toEqual([]);
    expect(carried(suspects, [tell([1, 1, 0.1])], { concluded: [HEALTHY, 'o'] })).toEqual([]);
    expect(carried(['o', 'a'], [tell([1, 1])])).toEqual([]);
  });
});
