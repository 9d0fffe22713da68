/** Small sums against printed answers and sums by hand; each says which. */
import { expect, test } from 'vitest';
import { divider, parallelOhms, speedOfWheel } from '../../src/quantity/sums.ts';
import { copperOhms } from '../../src/quantity/wire.ts';

test.each<[string, Parameters<typeof divider>[0], number, number]>([
  // T. Kuphaldt, Lessons In Electric Circuits vol. I ch. 8: 24 V, 250 Mohm twice, 10 Mohm meter
  [
    '10 Mohm meter on 250 Mohm',
    { supplyVolts: 24, upperOhms: 250e6, lowerOhms: 250e6, meterOhms: 10e6 },
    12,
    0.8889,
  ],
  // Horowitz and Hill, The Art of Electronics, exercise 1.7, by hand: 1 V * 20 / 30
  [
    '20 kohm meter behind 10 kohm',
    { supplyVolts: 1, upperOhms: 1e4, lowerOhms: Infinity, meterOhms: 2e4 },
    1,
    0.6667,
  ],
  [
    '20 kohm meter on a 10 k/10 k divider',
    { supplyVolts: 1, upperOhms: 1e4, lowerOhms: 1e4, meterOhms: 2e4 },
    0.5,
    0.4,
  ],
  // edudirectory.50webs.com/tutorials/elect99
  [
    '20 kohm/V meter on 400 kohm',
    { supplyVolts: 30, upperOhms: 4e5, lowerOhms: 4e5, meterOhms: 4e5 },
    15,
    10,
  ],
  // viztrainings.org 21022318: 5 V, 1 ohm, 10 ohm beside a meter of 100 ohm
  [
    '100 ohm meter on 10 ohm',
    { supplyVolts: 5, upperOhms: 1, lowerOhms: 10, meterOhms: 100 },
    4.5455,
    4.5045,
  ],
  // by hand: 5 V * 10 / 10.1
  [
    '10 Mohm meter behind 100 kohm',
    { supplyVolts: 5, upperOhms: 1e5, lowerOhms: Infinity, meterOhms: 1e7 },
    5,
    4.9505,
  ],
])('%s', (_, given, volts, withMeter) => {
  const found = divider(given);
  expect(found.volts).toBeCloseTo(volts, 4);
  expect(found.withMeterVolts).toBeCloseTo(withMeter, 4);
});

test('250 Mohm beside 10 Mohm is 9.615 Mohm (Lessons In Electric Circuits vol. I ch. 8)', () => {
  expect(parallelOhms(250e6, 10e6) / 1e6).toBeCloseTo(9.615, 3);
});

test('2300 ft of AWG 14 copper: 4107 circular mils, 5.651 ohm one way at 10.09 ohm cmil/ft (same, ch. 12)', () => {
  // The book's resistivity is that of pure copper, 2.7 % below IACS (10.371); the area is taken from the book.
  const areaM2 = 4107 * (Math.PI / 4) * 0.0254e-3 ** 2;
  const iacs = copperOhms({ areaM2, metres: 2300 * 0.3048 });
  expect((iacs * 10.09) / 10.371).toBeCloseTo(5.651, 2);
});

test('crankshaft frequency is rpm / 60, camshaft half of it (common practice, no source)', () => {
  expect(speedOfWheel(800, { teeth: 60, missing: 2 })).toMatchObject({ toothHertz: 800 });
  expect(speedOfWheel(1200, { teeth: 1 }).turnHertz).toBe(20);
  expect(speedOfWheel(1200, { teeth: 1, ratio: 0.5 }).turnHertz).toBe(10);
});
