/** What a session is told of the car, in words, from what is known of its values. */
import { describe, expect, test } from 'vitest';
import type { CarQuantity } from '../../src/circuit/car-quantities.ts';
import type { Toleranced } from '../../src/quantity/quantity.ts';
import { unknownBetween, whichOf } from '../../src/quantity/value-at.ts';
import { type CarViewAsk, carView, MISFIT_TOLD } from '../../src/session/car-view.ts';
import type { CarKnowledge } from '../../src/suspects/shown-values.ts';

const quantity = (
  key: string,
  value: Toleranced | null,
  ways?: readonly string[],
): CarQuantity => ({
  ...{ key, words: `words of ${key}`, value, unit: value?.unit ?? '1' },
  ...(ways && { ways }),
});
const BATTERY = quantity('battery.rest', unknownBetween(11.8, 14.6, 'V'));
const PULL_UP = quantity('module.pull', unknownBetween(1e3, 22e3, 'ohm'));
const LEADS_TO = quantity('module.to', whichOf([0.3, 0.4, 0.3]), ['reference', '8 V', 'battery']);

type Known = readonly [low: number, middle: number, high: number];
const OPEN: Known = [0.05, 0.5, 0.95];
const knowing = (...values: Known[]): CarKnowledge => ({
  values: values.map(([low, middle, high], at) => ({ at, low, middle, high })),
  outside: null,
});
/** One quantity, of which nothing was known before the only reading. */
const told = (one: CarQuantity, known: Known, more: Partial<CarViewAsk> = {}) =>
  carView({
    ...{ quantities: [one], misfit: 0.01, leading: 0.5, events: [7], disagrees: null },
    before: [knowing(OPEN), knowing(known)],
    ...more,
  });

describe('a value that the readings have shown', () => {
  test.each<[string, CarQuantity, Known, string]>([
    // by hand: 11.8 V + 2.8 V * u
    ['is one number where it is as good as known', BATTERY, [0.03, 0.0357, 0.04], '11.9 V'],
    // by hand: 1 kohm * 22^u is 4.02, 4.7 and 5.65 kohm; 1.86 and 6.39 kohm
    ['is about one where it is nearly', PULL_UP, [0.45, 0.50065, 0.56], 'about 4.7 kΩ'],
    // by hand: 11.8 V + 2.8 V * u is 12.36, 12.5 and 12.9 V
    ['bears a third digit where its ends are close', BATTERY, [0.2, 0.25, 0.4], 'about 12.5 V'],
    ['is a range where it is wider', PULL_UP, [0.2, 0.4, 0.6], '1.9 to 6.4 kΩ'],
    // by hand: the second of three lies from 0.3 to 0.7
    ['is a way where one is left', LEADS_TO, [0.35, 0.5, 0.65], '8 V'],
  ])('%s', (_, one, known, shown) => {
    const { values } = told(one, known);
    expect(values).toHaveLength(1);
    expect(values[0]).toMatchObject({ quantity: one.key, words: one.words, shown, by: 7 });
  });

  test('has its ends in its own unit', () => {
    const [value] = told(PULL_UP, [0.2, 0.4, 0.6]).values;
    expect(value!.low).toBeCloseTo(1e3 * 22 ** 0.2, 6);
    expect(value!.high).toBeCloseTo(1e3 * 22 ** 0.6, 6);
    expect(value!.unit).toBe('ohm');
  });

  test.each<[string, CarQuantity, Known]>([
    ['it could still be nearly anything', BATTERY, [0.2, 0.4, 0.66]],
    ['two ways are left', LEADS_TO, [0.25, 0.5, 0.65]],
    ['it is copper', quantity('wire.feed', unknownBetween(0.01, 0.2, 'ohm')), [0.1, 0.2, 0.3]],
    ['it is a contact', quantity('contact.a.b', unknownBetween(0.01, 0.2, 'ohm')), [0.1, 0.2, 0.3]],
    ['it is known anyway', quantity('a.b', unknownBetween(5, 5, 'V')), [0.1, 0.2, 0.3]],
    ['it is a matter of chance', quantity('a.b', null), [0.1, 0.2, 0.3]],
  ])('is not told where %s', (_, one, known) => {
    expect(told(one, known).values).toEqual([]);
  });

  test('is told with the reading after which it was known', () => {
    const early: Known = [0.1, 0.2, 0.3];
    const { values } = carView({
      ...{
        quantities: [BATTERY, PULL_UP],
        misfit: 0,
        leading: 0.5,
        events: [7, 9, 12],
        disagrees: null,
      },
      before: [
        knowing(OPEN, OPEN),
        knowing(OPEN, OPEN),
        knowing(early, OPEN),
        knowing(early, early),
      ],
    });
    expect(values.map(({ quantity: key, by }) => [key, by])).toEqual([
      ['battery.rest', 9],
      ['module.pull', 12],
    ]);
  });

  test('is nothing before any reading', () => {
    const none = carView({
      ...{ quantities: [BATTERY], misfit: 0, leading: 0.5, events: [], disagrees: null },
      before: [knowing([0.1, 0.2, 0.3])],
    });
    expect(none.values).toEqual([]);
  });
});

describe('the car that is not as described', () => {
  // by hand: 14.6 V * 3^(u - 1) is 29.2 V, twice as much, at u = 1.6309
  const known: CarKnowledge = {
    values: [{ at: 0, low: 0.05, middle: 0.5, high: 0.95 }],
    outside: { at: 0, middle: 1 + Math.log(2) / Math.log(3), chance: 0.9 },
  };
  const at = (misfit: number, more: Partial<CarViewAsk> = {}) =>
    told(BATTERY, OPEN, { misfit, before: [knowing(OPEN), known], disagrees: 7, ...more }).misfit;

  test('is told with its chance, and from three in ten on with the value that disagrees', () => {
    expect(at(0.29)).toEqual({ chance: 0.29, value: null });
    expect(at(MISFIT_TOLD)).toEqual({
      chance: 0.3,
      value: {
        ...{ quantity: 'battery.rest', words: 'words of battery.rest', by: 7 },
        described: '11.8 to 14.6 V',
        shown: 'about 29 V',
      },
    });
  });
  test('names no reading and no value where none is known', () => {
    expect(at(0.9, { disagrees: null }).value?.by).toBeNull();
    expect(at(0.9, { before: [knowing(OPEN), knowing(OPEN)] }).value).toBeNull();
  });
});
