/** Tests that are offered to prove a conclusion, from how often each look is shown. */
import { describe, expect, test } from 'vitest';
import type { CorroborationAsk } from '../../src/suspects/corroboration-ask.ts';
import { EXACT_MODEL } from '../../src/suspects/error-model.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { offerTests } from '../../src/suspects/offer-tests.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import { buildTable, type TableTest } from '../../src/suspects/prediction-table.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { ALL_MEANS, COSTS } from '../../src/suspects/test-cost.ts';
import { look, simpleTest } from './tables.ts';

interface Asked {
  readonly at?: Partial<TableTest>;
  /** In how many of the samples (128 of them) the conclusion shows a dark light, and its rival. */
  readonly dark: readonly [number, number];
}
const SAMPLES = 128;
const TELLS = [128, 0] as const;

function offered(
  asked: readonly Asked[],
  more: Partial<CorroborationAsk> & {
    readonly samples?: number;
    readonly brings?: (reading: Reading) => boolean;
  } = {},
) {
  const { samples = SAMPLES, brings = () => true, ...ask } = more;
  const tests = asked.map(({ at }, index) => simpleTest(`t${index}`, at));
  const table = buildTable(
    ['other', 'own', 'rival'].map((id) => ({ id, repair: id, weight: 1 })),
    tests,
    (id, { id: name }, sample) => {
      const [own, rival] = asked[tests.findIndex((one) => one.id === name)]!.dark;
      return look(sample < (id === 'own' ? own : rival) ? 0 : 1);
    },
    samples,
  );
  return offerTests(
    table,
    {
      concluded: ['own'],
      readings: [],
      ranking: rankSuspects(table, []),
      outcomes: outcomesOf(table),
      now: { state: 'key-on', unplugged: [], reached: [] },
      means: ALL_MEANS,
      ...ask,
    },
    { concluded: { members: [1] }, rival: { members: [2] }, brings },
  );
}
const names = (...asked: Parameters<typeof offered>) =>
  offered(...asked).map(({ test: index }) => index);

describe('a test is offered', () => {
  test.each<[string, readonly [number, number], number[]]>([
    // one reading in fifty is a slip, and shows either look: 0.01 of each
    ['at (0.98 + 0.01) / (0.98 * 0.320 + 0.01) = 3.06', [128, 41], [0]],
    ['and not at (0.98 + 0.01) / (0.98 * 0.328 + 0.01) = 2.99', [128, 42], []],
    ['nor at (0.49 + 0.01) / (0.245 + 0.01) = 1.96', [64, 32], []],
    ['and not when both show the same', [128, 128], []],
  ])(
    'when what it would show is three times likelier than under the rival: %s',
    (_, dark, found) => {
      expect(names([{ dark }])).toEqual(found);
    },
  );
  test('when that is as likely as not, if the conclusion is right', () => {
    expect(offered([{ dark: [1, 0] }], { samples: 2 })).toEqual([
      { test: 0, minutes: 1, chance: 0.5 },
    ]);
    expect(offered([{ dark: [65, 0] }])).toMatchObject([{ chance: expect.closeTo(65 / 128, 9) }]);
    expect(names([{ dark: [63, 0] }])).toEqual([]);
    expect(offered([{ dark: [96, 10] }])).toMatchObject([{ chance: expect.closeTo(0.75, 9) }]);
  });
  test('from three times on, as it is without slips', () => {
    const exact = { errorModel: EXACT_MODEL };
    expect(names([{ dark: [96, 32] }], exact)).toEqual([0]); // 0.75 is three times 0.25
    expect(names([{ dark: [96, 33] }], exact)).toEqual([]);
    expect(names([{ dark: [96, 32] }])).toEqual([]); // 0.745 is not three times 0.255
    expect(names([{ dark: [128, 0] }], exact)).toEqual([0]);
  });
  test('unless it was done or cannot be done', () => {
    const pin = { family: 'signal', reaches: ['pin'] };
    const asked = [
      { dark: TELLS, at: pin },
      { dark: TELLS, at: { ...pin, unplugged: ['plug'] } },
      { dark: TELLS, at: { family: 'ground', reaches: ['pin'] } },
      { dark: TELLS, at: { needs: ['scope'] } },
    ];
    const means = { ...ALL_MEANS, has: ['meter'] };
    expect(names(asked, { means }).sort()).toEqual([0, 1, 2]);
    expect(names(asked, { means, readings: [{ test: 0, shown: look(1) }] }).sort()).toEqual([1, 2]);
  });
});

describe('of several tests', () => {
  const minutes = (one: number, dark: readonly [number, number] = TELLS) => ({
    dark,
    at: { minutes: one },
  });
  test('the cheapest for its chance comes first, and of equals the first', () => {
    // 4 minutes for one piece, 3.75 for 0.75 of one, 5.7 for 0.7 of one
    const [sure, likely, dear] = [minutes(4), minutes(3.75, [96, 0]), minutes(5.7, [90, 0])];
    expect(names([dear, likely, sure])).toEqual([2, 1, 0]);
    expect(names([sure, dear, likely])).toEqual([0, 2, 1]);
    expect(names([minutes(2), minutes(1), minutes(2)])).toEqual([1, 0, 2]);
  });
  test('five are offered at most', () => {
    expect(names([6, 5, 4, 3, 2, 1].map((one) => minutes(one)))).toEqual([5, 4, 3, 2, 1]);
    expect(names([4, 3, 2, 1].map((one) => minutes(one)))).toHaveLength(4);
  });
  test('those are left out that would add nothing', () => {
    const brings = ({ test: index }: Reading) => index !== 1;
    expect(names([minutes(3), minutes(1), minutes(2)], { brings })).toEqual([2, 0]);
    // the five are counted without them
    const six = [6, 1, 4, 3, 2, 1].map((one) => minutes(one));
    expect(names(six, { brings })).toEqual([5, 4, 3, 2, 0]);
  });
  test('minutes are those from where one stands, as the shop counts them', () => {
    const asked = [{ dark: TELLS, at: { minutes: 2, reaches: ['pin'] } }];
    expect(offered(asked)).toMatchObject([{ test: 0, minutes: 2 + COSTS.accessMinutes }]);
    const costs = { ...COSTS, accessMinutes: 7 };
    expect(offered(asked, { costs })).toMatchObject([{ minutes: 9 }]);
  });
});

describe('what a test is expected to show', () => {
  /** Three suspects with three samples; the third never shows what the first two do. */
  function expected(chances: readonly number[], shares: readonly number[]): unknown {
    const SHOWN = { one: [0, 1, 0], two: [0, 0, 1], rival: [2, 2, 2] } as const;
    const table = buildTable(
      ['rival', 'one', 'two'].map((id) => ({ id, repair: id, weight: 1 })),
      [simpleTest('t')],
      (id, _, sample) => look(SHOWN[id as keyof typeof SHOWN][sample]!),
      3,
    );
    const read: unknown[] = [];
    offerTests(
      table,
      {
        concluded: ['one', 'two'],
        readings: [],
        ranking: {
          ...rankSuspects(table, []),
          chances: Float64Array.from(chances),
          sampleShares: Float64Array.from([1 / 3, 1 / 3, 1 / 3, ...shares, ...shares]),
        },
        outcomes: outcomesOf(table),
        now: { state: 'key-on', unplugged: [], reached: [] },
        means: ALL_MEANS,
      },
      {
        concluded: { members: [1, 2] },
        rival: { members: [0] },
        brings: (reading) => read.push(reading) > 0,
      },
    );
    return read;
  }
  test.each<[string, readonly number[], readonly number[], number]>([
    ['the likelier fault in its likeliest sample', [0.2, 0.5, 0.3], [0.2, 0.5, 0.3], 1],
    ['the other fault, when that is likelier', [0.2, 0.3, 0.5], [0.2, 0.5, 0.3], 0],
    ['the last sample, when that is likeliest', [0.2, 0.3, 0.5], [0.2, 0.3, 0.5], 1],
    ['the first of equal samples', [0.2, 0.5, 0.3], [0.4, 0.4, 0.2], 0],
    ['the second of equal samples', [0.2, 0.5, 0.3], [0.2, 0.4, 0.4], 1],
  ])('is that of %s', (_, chances, shares, shown) => {
    expect(expected(chances, shares)).toEqual([{ test: 0, shown: look(shown) }]);
  });
});
