/** When a conclusion is proven, what is missing, and what is offered, on small tables and rankings set by hand. */
import { describe, expect, test } from 'vitest';
import { corroborate } from '../../src/suspects/corroborate.ts';
import type { CorroborationAsk } from '../../src/suspects/corroboration-ask.ts';
import type { ReadingFit } from '../../src/suspects/likelihood.ts';
import { outcomesOf } from '../../src/suspects/outcomes.ts';
import type { TableTest } from '../../src/suspects/prediction-table.ts';
import { rankSuspects } from '../../src/suspects/rank-suspects.ts';
import { atOnce } from '../../src/suspects/slices.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { look, matrixTable, simpleTest } from './tables.ts';

const weighed = (...of: Parameters<typeof corroborate>) => atOnce(corroborate(...of));

/** What each test shows under each suspect: 0 as under the conclusion, 1 otherwise. */
type Shown = readonly (readonly [own: number, a: number, b: number, c: number])[];
const A: Shown[number] = [0, 1, 0, 0];
const B: Shown[number] = [0, 0, 1, 0];
const ALL: Shown[number] = [0, 1, 1, 1];
const FIVE: Shown = [ALL, ALL, ALL, ALL, ALL];
const SURE = [0.99, 0.01, 0, 0];

function weigh(
  shown: Shown,
  done: readonly number[],
  more: Partial<CorroborationAsk> & {
    /** Of own, a, b and c after the readings; as they come out without it. */
    readonly chances?: readonly number[];
    readonly explained?: boolean;
    readonly misfit?: number;
    readonly fit?: (fit: ReadingFit, reading: number) => ReadingFit;
    readonly subject?: readonly string[];
    readonly at?: readonly Partial<TableTest>[];
    /** Readings that must be slips under each of own, a, b and c. */
    readonly slips?: readonly (readonly number[])[];
  } = {},
) {
  const { chances, explained, misfit, fit, subject, at, slips, ...ask } = more;
  const table = matrixTable(
    ['own', 'a', 'b', 'c'].map((id, index) => ({
      id,
      repair: id,
      weight: 1,
      ...(subject && index === 0 && { subject }),
    })),
    [0, 1, 2, 3].map((suspect) => shown.map((one) => one[suspect]!)),
    shown.map((_, index) => simpleTest(`t${index}`, at?.[index])),
  );
  const readings = done.map((index) => ({ test: index, shown: look(0) }));
  const ranking = rankSuspects(table, readings);
  return weighed(table, {
    concluded: ['own'],
    readings,
    ranking: {
      ...ranking,
      chances: chances ? Float64Array.from(chances) : ranking.chances,
      explained: explained ?? ranking.explained,
      misfit: misfit ?? ranking.misfit,
      fits: fit ? ranking.fits.map(fit) : ranking.fits,
      misfitsOf: slips ? (candidate) => slips[candidate]! : ranking.misfitsOf,
    },
    outcomes: outcomesOf(table),
    now: { state: 'key-on', unplugged: [], reached: [] },
    means: ALL_MEANS,
    ...ask,
  });
}
const offersOf = (found: ReturnType<typeof weigh>) => found.offers.map(({ test: index }) => index);

describe('a conclusion', () => {
  test('is proven by three pieces, when its chance is 99 in 100', () => {
    const three = [ALL, ALL, ALL];
    expect(weigh(three, [0, 1])).toMatchObject({ proven: false, missing: 1 });
    const at = (own: number) =>
      weigh(three, [0, 1, 2], { chances: [own, 1 - own, 0, 0], explained: true });
    expect(at(0.99)).toMatchObject({ proven: true, missing: 0, chance: 0.99 });
    expect(at(0.989)).toMatchObject({ proven: false, missing: 1, chance: 0.989 });
  });
  test('is not proven while something is unexplained', () => {
    const found = weigh([ALL, ALL, ALL], [0, 1, 2], { chances: SURE, explained: false });
    expect(found).toMatchObject({ proven: false, missing: 0 });
  });
  test('is not proven on a car that may well not be as described', () => {
    const at = (misfit: number) => weigh([ALL, ALL, ALL], [0, 1, 2], { chances: SURE, misfit });
    expect(at(0.1)).toMatchObject({ proven: true, missing: 0 });
    expect(at(0.11)).toMatchObject({ proven: false, missing: 0 });
  });
  test('more than three pieces leave nothing missing', () => {
    expect(weigh(FIVE, [0, 1, 2, 3, 4])).toMatchObject({ proven: true, missing: 0 });
    // by hand: 0.66^4 / (0.66^4 + 3 * 0.17^4) = 0.987, less than 99 in 100
    expect(weigh(FIVE, [0, 1, 2, 3])).toMatchObject({ proven: false, missing: 1 });
  });
});

/**
 * By hand, where a light has three looks: 0.98 * (1 + 1/3) / 2 + 0.02 / 3 = 0.66 for a suspect that shows what was seen, and
 * 0.98 * (1/3) / 2 + 0.02 / 3 = 0.17 for one that does not.
 */
describe('a conclusion hangs on a reading', () => {
  const hangsOn = (...asked: Parameters<typeof weigh>) => weigh(...asked).hangsOn;
  test('without which it would be less likely than not', () => {
    // by hand: 0.66 / (0.66 + 3 * 0.17) = 0.564, and one in four without it
    expect(hangsOn([ALL], [0])).toBe(0);
  });
  test('not where others say enough', () => {
    // by hand: 0.834 with both, and 0.564 without either
    expect(hangsOn([ALL, ALL], [0, 1])).toBeNull();
    // 0.632 with both; 0.307 without the first, 0.564 without the second
    expect(hangsOn([ALL, A], [0, 1])).toBe(0);
  });
  test('not where it was made again', () => {
    expect(hangsOn([ALL], [0, 0])).toBeNull();
  });
  test('and is least likely without the one named first', () => {
    // by hand: 0.349 without A, which was read first; 0.239 without the other
    const chances = [0.55, 0.2, 0.15, 0.1];
    expect(hangsOn([ALL, A], [1, 0], { chances })).toBe(1);
  });
  test('and is then not proven, whatever its chance', () => {
    // A reading a thousand times likelier under the conclusion: by hand 0.99 / (0.99 + 1000 * 0.01) = 0.09 without it
    const decisive: Partial<ReadingFit> = { perRow: Float64Array.of(1, 1e-3, 1e-3, 1e-3) };
    const at = (place: number) =>
      weigh([ALL, ALL, ALL], [0, 1, 2], {
        chances: SURE,
        fit: (fit, reading) => (reading === place ? { ...fit, ...decisive } : fit),
      });
    expect(at(3)).toMatchObject({ proven: true, hangsOn: null });
    expect(at(1)).toMatchObject({ proven: false, missing: 0, hangsOn: 1 });
  });
});

describe('the rival that the next piece must speak against', () => {
  const chances = [0.5, 0.1, 0.15, 0.25];
  test('is the likeliest after all readings, while the conclusion is less than 99 in 100', () => {
    // the pieces speak against a and b and leave c; but the ranking has it otherwise
    const found = weigh([A, B, ALL], [0, 1], { chances: [0.5, 0.3, 0.15, 0.05] });
    expect(found.rival).toEqual({ repair: 'a', chance: 0.3 });
    expect(weigh([A, B, ALL], [0, 1], { chances }).rival).toEqual({ repair: 'c', chance: 0.25 });
  });
  test('is the strongest that the pieces left, once it is', () => {
    const sure = [0.991, 0.005, 0.003, 0.001];
    expect(weigh([A, B, ALL], [0, 1], { chances: sure }).rival).toEqual({
      repair: 'c',
      chance: 0.001,
    });
  });
});

describe('tests are offered', () => {
  const pin = { reads: ['pin'] };
  test('that would add a piece: none at a pin that was read', () => {
    expect(offersOf(weigh([ALL, ALL, ALL], [0], { at: [pin, pin, {}] }))).toEqual([2]);
    expect(offersOf(weigh([ALL, ALL, ALL], [0], { at: [pin, {}, {}] }))).toEqual([1, 2]);
  });
  test('against a rival that still stands, though they add no piece, when there are three', () => {
    const at = [pin, {}, {}, pin];
    const chances = [0.6, 0.4, 0, 0];
    expect(offersOf(weigh([ALL, ALL, ALL, ALL], [0, 1, 2], { at, chances }))).toEqual([3]);
    // of two pieces one is missing, and the pin gives none
    expect(offersOf(weigh([ALL, ALL, [0, 0, 0, 0], ALL], [0, 1, 2], { at, chances }))).toEqual([]);
  });
  test('that bring a piece against another rival, where none speaks against the likeliest', () => {
    // a and b fell to two pieces; c has what is left of the chance and shows what the conclusion does
    const open = [0.6, 0.1, 0.1, 0.2];
    const C: Shown[number] = [0, 0, 0, 1];
    expect(offersOf(weigh([A, B, C], [0, 1], { chances: open }))).toEqual([2]);
  });
  test('again, where the likeliest rival stands only if they were wrong', () => {
    const three = [ALL, ALL, ALL];
    const at = [{ minutes: 3 }, { minutes: 2 }, {}];
    const more = { chances: [0.97, 0.03, 0, 0], slips: [[], [0, 1], [2], []] };
    expect(offersOf(weigh(three, [0, 1, 2], { ...more, at }))).toEqual([1, 0]);
    // not what was made twice, nor what is not to be offered, nor what is as odd under the conclusion
    expect(offersOf(weigh(three, [0, 1, 2, 0], more))).toEqual([1]);
    expect(offersOf(weigh(three, [0, 1, 2], { ...more, without: [1] }))).toEqual([0]);
    expect(offersOf(weigh(three, [0, 1, 2], { ...more, slips: [[1], [0, 1]] }))).toEqual([0]);
    // with the chance there, nothing is
    expect(offersOf(weigh(three, [0, 1, 2], { ...more, chances: SURE }))).toEqual([]);
  });
  test('not when nothing is missing', () => {
    const found = weigh([ALL, ALL, ALL, ALL], [0, 1, 2], { chances: SURE });
    expect(found).toMatchObject({ missing: 0 });
    expect(found.rival).not.toBeNull();
    expect(found.offers).toEqual([]);
  });
});

describe('a repair is said to be ruled out', () => {
  const ruledOut = (...asked: Parameters<typeof weigh>) =>
    weigh(...asked).ruledOut.map(({ repair }) => repair);
  test('with less than one chance in fifty, and a reading against it', () => {
    const chances = [0.951, 0.02, 0.0199, 0.0091];
    expect(ruledOut([ALL], [0], { chances })).toEqual(['b', 'c']);
    expect(ruledOut([B], [0], { chances })).toEqual(['b']);
  });
  test('unless what was found sits in it as well', () => {
    const chances = [0.99, 0.004, 0.003, 0.003];
    expect(ruledOut([ALL], [0], { chances, subject: [] })).toEqual(['a', 'b', 'c']);
    expect(ruledOut([ALL], [0], { chances, subject: ['own', 'b'] })).toEqual(['a', 'c']);
    // of two faults that were found it is enough that one does
    const both = { concluded: ['own', 'c'], chances, subject: ['b'] };
    expect(ruledOut([[0, 1, 1, 0]], [0], both)).toEqual(['a']);
  });
});
