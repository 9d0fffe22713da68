/** Copper wire against published tables: AWG (Floyd via HyperPhysics), IEC 60228, IACS, Lessons In Electric Circuits. */
import { describe, expect, test } from 'vitest';
import { awgAreaM2, awgDiameterM, copperOhms, STRANDED } from '../../src/quantity/wire.ts';

const FOOT = 0.3048;

test.each([
  // gauge, ohms per 1000 ft as published: hyperphysics.phy-astr.gsu.edu/hbase/Tables/wirega.html
  [10, 0.9989],
  [11, 1.26],
  [12, 1.588],
  [13, 2.003],
  [14, 2.525],
  [15, 3.184],
  [16, 4.016],
  [17, 5.064],
  [18, 6.385],
  [19, 8.051],
  [20, 10.15],
  [21, 12.8],
  [22, 16.14],
  [23, 20.36],
  [24, 25.67],
])('AWG %d has %d ohm per 1000 ft', (gauge, published) => {
  const ohms = copperOhms({ areaM2: awgAreaM2(gauge), metres: 1000 * FOOT });
  // 0.05 % covers the table's own rounding (3.184 against 3.1845).
  expect(Math.abs(ohms / published - 1)).toBeLessThan(5e-4);
});

test.each([
  // gauge, diameter in inches: T. Kuphaldt, Lessons In Electric Circuits, vol. I, ch. 12
  [10, 0.1019],
  [18, 0.0403],
  [24, 0.0201],
])('AWG %d is %d in thick', (gauge, inches) => {
  expect(Math.abs(awgDiameterM(gauge) / 0.0254 - inches)).toBeLessThan(5e-5);
});

test('AWG 18 is 1.0236873 mm thick (GNU units 2.22, wiregauge(18))', () => {
  expect(awgDiameterM(18) * 1000).toBeCloseTo(1.0236873, 6);
});

describe('stranded cable stays under the limits of IEC 60228 class 5', () => {
  test.each([
    // mm2, most ohms per km at 20 degC: IEC 60228 as copied, alike, by mycableengineering.com, uecables.com and
    // etechnik-synergie.com
    [0.5, 39.0],
    [0.75, 26.0],
    [1.0, 19.5],
    [1.5, 13.3],
    [2.5, 7.98],
    [4, 4.95],
    [6, 3.3],
  ])('%d mm2', (mm2, most) => {
    const usual = copperOhms({ areaM2: mm2 * 1e-6, metres: 1000, factor: STRANDED.usual });
    const upper = copperOhms({ areaM2: mm2 * 1e-6, metres: 1000, factor: STRANDED.most });
    expect(usual).toBeLessThan(most);
    // The upper factor covers the standard's limit without exceeding it by more than 3 %.
    expect(upper / most).toBeGreaterThan(0.999);
    expect(upper / most).toBeLessThan(1.03);
  });
});

test('copper at 85 and -40 degC: 1.25545 and 0.7642 of its resistance at 20 (IACS 0.393 % a degree)', () => {
  const at = (degC: number) => copperOhms({ areaM2: 1e-6, metres: 1, degC });
  expect(at(85) / at(20)).toBeCloseTo(1.25545, 5);
  expect(at(-40) / at(20)).toBeCloseTo(0.7642, 4);
});
