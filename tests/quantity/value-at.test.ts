/** Values drawn from what is known of them. */
import { describe, expect, test } from 'vitest';
import { parseToleranced } from '../../src/quantity/parse-quantity.ts';
import type { Toleranced } from '../../src/quantity/quantity.ts';
import { mapped, valueAt, whichOf } from '../../src/quantity/value-at.ts';

function known(text: string): Toleranced {
  const value = parseToleranced(text);
  if (!value) throw new Error(text);
  return value;
}

describe('the value at a share', () => {
  test.each<[string, number, number]>([
    // by hand: 4.9 + 0.2 u; 1000 * 16^u; half of the chance for each, then within it
    ['5 V +/- 2 %', 0, 4.9],
    ['5 V +/- 2 %', 0.25, 4.95],
    ['5 V +/- 2 %', 1, 5.1],
    ['7 V', 0.3, 7],
    ['1 kohm to 16 kohm', 0, 1000],
    ['1 kohm to 16 kohm', 0.25, 2000],
    ['1 kohm to 16 kohm', 0.5, 4000],
    ['1 kohm to 16 kohm', 1, 16000],
    ['10 V to 14 V', 0.75, 13],
    ['one of: 5 V, 8 V', 0.49, 5],
    ['one of: 5 V, 8 V', 0.5, 8],
    ['one of: 5 V, 8 V', 1, 8],
    ['one of: 4 V +/- 25 % 80 %, 8 V +/- 1 V', 0.4, 4],
    ['one of: 4 V +/- 25 % 80 %, 8 V +/- 1 V', 0.9, 8],
    ['one of: 4 V +/- 25 % 80 %, 8 V +/- 1 V', 0.95, 8.5],
  ])('%s at %d is %d', (text, u, value) => {
    expect(valueAt(known(text), u)).toBeCloseTo(value, 9);
  });

  test.each(['5 V +/- 2 %', '1 kohm to 22 kohm', '11.8 V to 14.6 V', 'one of: 5 V 3 %, 8 V 97 %'])(
    '%s: rises, and stays within its ends',
    (text) => {
      const value = known(text);
      const all = Array.from({ length: 101 }, (_, step) => valueAt(value, step / 100));
      expect(all[0]).toBe(value.low);
      expect(all.at(-1)).toBeCloseTo(value.high, 9);
      for (let step = 1; step <= 100; step += 1)
        expect(all[step]).toBeGreaterThanOrEqual(all[step - 1]!);
    },
  );

  test('the middle of what is even, in its own way, is the nominal value', () => {
    for (const text of ['5 V +/- 2 %', '1 kohm to 22 kohm', '11.8 V to 14.6 V'])
      expect(valueAt(known(text), 0.5) / known(text).nominal).toBeCloseTo(1, 12);
  });

  test('each way has its chance', () => {
    const which = whichOf([0.2, 0.5, 0.3]);
    const counts = [0, 0, 0];
    for (let step = 0; step < 1000; step += 1) counts[valueAt(which, (step + 0.5) / 1000)]! += 1;
    expect(counts).toEqual([200, 500, 300]);
    expect(which.nominal).toBe(1);
  });

  test('chances that miss 1 by a rounding leave no share without a value', () => {
    const thirds = whichOf([1 / 3, 1 / 3, 1 / 3 - 1e-16]);
    expect(valueAt(thirds, 1)).toBe(2);
    expect(valueAt(thirds, 1 - 1e-16)).toBe(2);
  });
});

test('per cent of several become shares of several', () => {
  const shares = mapped(known('one of: 20 %, 60 % +/- 10 %'), (percent) => percent / 100, '1');
  expect([shares.low, shares.nominal, shares.high, shares.unit]).toEqual([0.2, 0.2, 0.7, '1']);
  expect(valueAt(shares, 0.75)).toBeCloseTo(0.6, 9);
});
