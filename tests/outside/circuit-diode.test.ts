/**
 * Diodes, light-emitting diodes and Newton's method against two other programs, mpmath and ngspice, and against the
 * resistors that Lessons In Electric Circuits (LEC) prints for an LED.
 *
 * "2019" and "2014" are the constants behind kT/q at 300.15 K: the exact ones of 2019, and CODATA 2014, which ngspice 39
 * uses. The long digits were computed with mpmath.
 */
import { describe, expect, test } from 'vitest';
import { createSolver } from '../../src/circuit/solve-dc.ts';
import { wrightOmega } from '../../src/circuit/wright-omega.ts';
import { solved } from '../circuit/netlist-text.ts';

const VT_2019 = 0.0258649257863288;
/** k and q of CODATA 2014: 1.38064852e-23 and 1.6021766208e-19. */
const VT_2014 = (1.38064852e-23 * 300.15) / 1.6021766208e-19;

describe('a light-emitting diode, saturation current 1e-20 A, n 1.6', () => {
  test.each([
    // supply, resistor, junction volts and milliampere with 2019 constants, the same with 2014 (also ngspice 39)
    [5, 1330, 1.658058428301, 2.512738023833, 1.658057872401, 2.512738441804],
    [5, 330, 1.715029437137, 9.954456251, 1.715028862258, 9.954457993159],
    [12.6, 1000, 1.718713602163, 10.88128639784, 1.718713021001, 10.881286979],
  ])('%f V through %f ohm', (supply, ohms, volts2019, milliamps2019, volts2014, milliamps2014) => {
    for (const [vt, volts, milliamps] of [
      [VT_2019, volts2019, milliamps2019],
      [VT_2014, volts2014, milliamps2014],
    ] as const) {
      const outside = solved(`V a 0 ${supply}\nR a b ${ohms}\nD b 0 1e-20 ${1.6 * vt}`);
      expect(Math.abs(outside.volts('b') - volts)).toBeLessThan(2e-9);
      expect(Math.abs(outside.amps(2) * 1000 - milliamps)).toBeLessThan(2e-8);
      // The resistor inside the element instead: the closed form by Wright's omega.
      const inside = solved(
        `V a 0 ${supply}\nR a b ${ohms / 2}\nD b 0 1e-20 ${1.6 * vt} ${ohms / 2}`,
      );
      expect(Math.abs(inside.amps(2) * 1000 - milliamps)).toBeLessThan(2e-8);
    }
  });
});

describe('silicon diodes', () => {
  test('5 V, 1 kohm, 1e-14 A, n 1: 0.6928878323822 V, 4.307112167618 mA (mpmath)', () => {
    const c = solved(`V a 0 5\nR a b 1000\nD b 0 1e-14 ${VT_2019}`);
    expect(c.volts('b')).toBeCloseTo(0.6928878323822, 10);
    expect(c.amps(2) * 1000).toBeCloseTo(4.307112167618, 9);
  });

  test('1 V, 1 kohm, 1e-15 A at 25 mV: 0.663543376798 V, 0.336456623202 mA (digits by mpmath)', () => {
    const c = solved('V a 0 1\nR a b 1000\nD b 0 1e-15 0.025');
    expect(c.volts('b')).toBeCloseTo(0.663543376798, 10);
    expect(c.amps(2) * 1000).toBeCloseTo(0.336456623202, 9);
  });

  test('7 V, 10 kohm, 6e-15 A at 25.8 mV: 0.654916406202 V, 0.63450835938 mA (digits by mpmath)', () => {
    const c = solved('V a 0 7\nR a b 10000\nD b 0 6e-15 0.0258');
    expect(c.volts('b')).toBeCloseTo(0.654916406202, 10);
    expect(c.amps(2) * 1000).toBeCloseTo(0.63450835938, 9);
  });

  test('5 V, 1 kohm, 1 mA at 0.7 V and 0.1 V a decade: 4.2372911692 mA, 0.762708830796 V (a diode as Sedra and Smith describe theirs; digits by mpmath)', () => {
    // I = 1 mA * 10^((v - 0.7) / 0.1), so n VT = 0.1 / ln 10 and IS = 1 mA * 10^-7; the -1 of the law changes 1e-10 A.
    const c = solved(`V a 0 5\nR a b 1000\nD b 0 1e-10 ${0.1 / Math.LN10}`);
    expect(Math.abs(c.amps(2) * 1000 - 4.2372911692)).toBeLessThan(2e-7);
    expect(Math.abs(c.volts('b') - 0.762708830796)).toBeLessThan(2e-9);
  });

  test('a diode backwards passes its saturation current only', () => {
    const c = solved('V 0 a 5\nR a b 1000\nD b 0 1e-9 0.025');
    expect(c.amps(2)).toBeCloseTo(-1e-9, 18);
  });
});

describe('resistor for an LED of 1.6 V at 20 mA (LEC vol. III ch. 3)', () => {
  test.each([
    // supply, printed ohms, printed milliwatts
    [6, 220, 88],
    [24, 1120, 448],
  ])('%f V: %f ohm, %f mW', (supply, ohms, milliwatts) => {
    // A steep junction stands for the fixed drop of the book: 20 mA at 1.6 V, a thousandth of a volt a decade.
    const emission = 0.0025;
    const c = solved(
      `V a 0 ${supply}\nR a b ${ohms}\nD b 0 ${0.02 / Math.expm1(1.6 / emission)} ${emission}`,
    );
    expect(c.amps(2) * 1000).toBeCloseTo(20, 1);
    expect(c.amps(1) ** 2 * ohms * 1000).toBeCloseTo(milliwatts, 0);
  });
});

describe('the Wright omega function', () => {
  test.each([
    // x, omega: omega(1) = 1 and omega(0) = 0.5671432904097838 (the omega constant, OEIS A030178); omega(e + 1) = e
    [1, 1],
    [0, 0.5671432904097838],
    [Math.E + 1, Math.E],
    [100 + Math.log(100), 100],
    [0.001 + Math.log(0.001), 0.001],
  ])('at %f is %f', (x, omega) => {
    expect(wrightOmega(x) / omega).toBeCloseTo(1, 13);
  });

  test('w + ln w = x from far below zero to far above', () => {
    for (let x = -600; x <= 600; x += 0.37) {
      const w = wrightOmega(x);
      expect(Math.abs(w + Math.log(w) - x)).toBeLessThan(1e-12 * Math.max(1, Math.abs(x)));
    }
  });
});

describe('limits of a current source', () => {
  test('a reference of 5 V, 0.5 ohm and 80 mA gives 80 mV into 1 ohm and 4.975 V into 100 ohm (by hand)', () => {
    const reference = (ohms: number) => {
      const solver = createSolver({
        nodes: ['0', 'out'],
        elements: [
          { kind: 'regulator', from: 0, out: 1, volts: 5, ohms: 0.5, limitAmps: 0.08 },
          { kind: 'resistor', a: 1, b: 0, ohms },
        ],
      });
      expect(solver.solve()).toBeNull();
      return solver.volts[1]!;
    };
    expect(reference(1)).toBeCloseTo(0.08, 12);
    // 5 V * 100 / 100.5 = 4.97512 V and 49.75 mA
    expect(reference(100)).toBeCloseTo(4.975124378, 9);
  });
});
