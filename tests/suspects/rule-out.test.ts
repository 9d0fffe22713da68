/** What rules a repair out, from likelihoods as they stand and from what two faults show together. */
import { describe, expect, test } from 'vitest';
import { ERROR_MODEL, type ErrorModel, EXACT_MODEL } from '../../src/suspects/error-model.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { ruleOut } from '../../src/suspects/rule-out.ts';
import { look, matrixTable } from './tables.ts';

/** How likely a dark light is with one sample of three looks that shows it, and with one that does not. */
const SAME = (0.98 * (1 + 1 / 3)) / 2 + 0.02 / 3; // 0.66
const OTHER = (0.98 * (1 / 3)) / 2 + 0.02 / 3; // 0.17, almost four times less

interface Asked {
  /** The conclusion, which is the first by default, and the rest. */
  readonly ids?: readonly string[];
  readonly concluded?: string;
  /** By reading: how likely each suspect makes it. */
  readonly rows: readonly (readonly number[])[];
  /** By id of a fault: what each reading would show with the conclusion beside it; 0 is what was read. */
  readonly beside?: Readonly<Record<string, readonly number[]>>;
  readonly prior?: readonly number[];
  readonly errorModel?: ErrorModel;
}

/** Places of the readings that rule out all faults whose ids begin with "a"; null when they do not. */
function against({ ids = ['own', 'a'], concluded = 'own', rows, ...more }: Asked) {
  const table = matrixTable(
    ids.map((id) => ({ id, repair: id, weight: 1 })),
    ids.map(() => rows.map(() => 0)),
  );
  const { beside } = more;
  const members = ids.flatMap((id, index) => (id.startsWith('a') ? [index] : []));
  const found = ruleOut(
    {
      table,
      readings: rows.map((_, index) => ({ test: index, shown: look(0) })),
      fits: rows.map((row) => {
        const perRow = Float64Array.from(row);
        return { perRow, perSample: perRow, blind: 1 / 3, tail: () => 1 };
      }),
      concluded: ids.indexOf(concluded),
      prior: Float64Array.from(more.prior ?? ids.map(() => 1 / ids.length)),
      showsPair:
        beside &&
        ((first, second, asked) => {
          expect(first).toBe(concluded);
          return [look(beside[second]![asked]!)];
        }),
      errorModel: more.errorModel ?? ERROR_MODEL,
    },
    { repair: 'A', members, chance: 0.01 },
  );
  if (found) expect(found).toMatchObject({ repair: 'A', chance: 0.01 });
  return found?.readings ?? null;
}

describe('a fault held against the conclusion by itself', () => {
  test.each([
    [0.75, [0]],
    [0.74, null],
  ])('is ruled out by a reading three times likelier without it: %f and 0.25', (own, readings) => {
    expect(against({ rows: [[own, 0.25]] })).toEqual(readings);
  });
  test('is so as well when the conclusion is that nothing is wrong', () => {
    const ids = [HEALTHY, 'a'];
    // there is no fault to be beside: 0.75 is three times 0.25, whatever both together would show
    const ask = { ids, concluded: HEALTHY, rows: [[0.75, 0.25]] };
    expect(against({ ...ask, beside: { a: [0] } })).toEqual([0]);
  });
  test('stands when no reading speaks against it, or none was made', () => {
    expect(against({ rows: [[0.5, 0.5]] })).toBeNull();
    expect(against({ rows: [] })).toBeNull();
  });
});

describe('a fault beside what was found', () => {
  test('is ruled out when both together would show something else', () => {
    expect(against({ rows: [[SAME, OTHER]], beside: { a: [1] } })).toEqual([0]);
    expect(against({ rows: [[SAME, OTHER]], beside: { a: [0] } })).toBeNull();
  });
  test('stands when the reading fits it alone as well as the conclusion', () => {
    expect(against({ rows: [[SAME, SAME]], beside: { a: [1] } })).toBeNull();
    expect(against({ rows: [[SAME, SAME / 2.9]], beside: { a: [1] } })).toBeNull();
  });
  test('needs a reading that fits the conclusion three times better', () => {
    // three in four readings are slips, which show each of three looks alike: 0.75 / 3 is 0.25
    const errorModel = { ...EXACT_MODEL, wrongReading: 0.75 };
    const at = (own: number) => against({ rows: [[own, 0.01]], beside: { a: [1] }, errorModel });
    expect([at(0.75), at(0.74)]).toEqual([[0], null]);
  });
});

describe('a repair', () => {
  const ids = ['own', 'a1', 'a2'];
  test('is ruled out when each of its faults is, by as many readings as that takes', () => {
    expect(against({ ids, rows: [[1, 0.1, 0.1]] })).toEqual([0]);
    expect(against({ ids, rows: [[1, 0.1, 1]] })).toBeNull();
    expect(
      against({
        ids,
        rows: [
          [1, 0.1, 1],
          [1, 1, 1],
          [1, 1, 0.1],
        ],
      }),
    ).toEqual([0, 2]);
  });
  test('is not ruled out by faults that were impossible before', () => {
    expect(against({ ids, rows: [[1, 0.1, 1]], prior: [0.5, 0.5, 0] })).toEqual([0]);
    expect(against({ ids, rows: [[1, 0.1, 0.1]], prior: [1, 0, 0] })).toBeNull();
  });
  test('is told by the reading that rules out most of it, wherever it stands', () => {
    const prior = [0.5, 0.1, 0.4];
    const [less, more] = [
      [1, 0.01, 1],
      [1, 1, 0.1],
    ];
    expect(against({ ids, prior, rows: [less!, more!] })).toEqual([1, 0]);
    expect(against({ ids, prior, rows: [more!, less!] })).toEqual([0, 1]);
    const all = [1, 0.1, 0.1];
    expect(against({ ids, prior, rows: [less!, more!, all] })).toEqual([2]);
  });
  test('of readings that rule out as much is told by the clearest, and of equals by the first', () => {
    // by hand: 4 times 4 is 16, 10 times 3.125 is 31.25
    const [even, uneven] = [
      [1, 0.25, 0.25],
      [1, 0.1, 0.32],
    ];
    expect(against({ ids, rows: [even!, uneven!] })).toEqual([1]);
    expect(against({ ids, rows: [uneven!, even!] })).toEqual([0]);
    expect(against({ ids, rows: [even!, even!] })).toEqual([0]);
  });
});

describe('a reading as of a sound circuit', () => {
  /** The first rules out both faults, the second one of them; it reads as in a sound circuit when `sound` is likely. */
  const ask = (sound: number, ids = ['own', HEALTHY, 'a1', 'a2']): Asked => {
    const likely = (own: number, healthy: number, one: number, other: number) =>
      ids.map((id) => ({ own, [HEALTHY]: healthy, a1: one, a2: other })[id]!);
    return {
      ids,
      rows: [likely(SAME, 0.1, OTHER, OTHER), likely(SAME, sound, OTHER, SAME)],
      beside: { a1: [1, 1], a2: [1, 0] },
    };
  };
  test('goes first, though another would rule out more', () => {
    expect(against(ask(SAME))).toEqual([1, 0]);
    expect(against(ask(SAME, [HEALTHY, 'own', 'a1', 'a2']))).toEqual([1, 0]);
    expect(against(ask(SAME / 2.9))).toEqual([1, 0]);
  });
  test('is none that fits the conclusion three times better', () => {
    expect(against(ask(SAME / 3.1))).toEqual([0]);
    const { rows, ...exact } = ask(0.5);
    // exactly three times, and a little to either side
    const first = ([1.5, 1.4, 1.9] as const).map((own) =>
      against({ ...exact, rows: [rows[0]!, [own, 0.5, OTHER, SAME]] }),
    );
    expect(first).toEqual([[0], [1, 0], [0]]);
  });
  test('does not go first where nobody asks whether anything is wrong', () => {
    expect(against(ask(SAME, ['own', 'a1', 'a2']))).toEqual([0]);
  });
  test('alone rules out where nobody knows what two faults show: an odd one is as odd with another beside it', () => {
    const { beside, ...alone } = ask(SAME);
    expect(beside).toBeDefined();
    expect(against(alone)).toBeNull();
    const [odd, sound] = alone.rows;
    expect(
      against({
        ...alone,
        rows: [odd!, sound!.map((_, at) => (odd![at] === OTHER ? OTHER : SAME))],
      }),
    ).toEqual([1]);
  });
  test('goes first wherever it was read', () => {
    const { rows, ...more } = ask(SAME);
    const beside = { a1: [1, 1], a2: [0, 1] };
    expect(against({ ...more, beside, rows: [rows[1]!, rows[0]!] })).toEqual([0, 1]);
  });
});
