/**
 * The solver against printed answers of textbooks.
 *
 * OSX: OpenStax, University Physics volume 2, chapter 10 (CC BY 4.0).
 * LEC: T. Kuphaldt, Lessons In Electric Circuits, volume I DC (Design Science License).
 * Tolerance is half a unit of the last printed digit, unless more digits were found by a second program.
 */
import { describe, expect, test } from 'vitest';
import { solved } from '../circuit/netlist-text.ts';

/** A printed number: its value, and half a unit of its last digit. */
function printed(text: string): { value: number; half: number } {
  const digits = text.replace(/^-/, '').split('.')[1]?.length ?? 0;
  return { value: Number(text), half: 0.5 * 10 ** -digits * (1 + 1e-9) };
}

function expectPrinted(actual: number, text: string, scale = 1): void {
  const { value, half } = printed(text);
  expect(Math.abs(actual * scale - value), `${actual * scale} against ${text}`).toBeLessThanOrEqual(
    half,
  );
}

describe('one loop and parallel resistors', () => {
  test('12.00 V over 1, 2 and 3 ohm: 2.00 A (OSX, loop example)', () => {
    const c = solved('V a 0 12\nR a b 1\nR b c 2\nR c 0 3');
    expectPrinted(c.amps(1), '2.00');
  });

  test('24 V against 12 V over 10, 30 and 20 ohm: 0.20 A; 0.40, 1.20, 0.80 and 4.80 W (OSX ex. 10.7)', () => {
    const c = solved('V a 0 24\nR a b 10\nR b c 30\nV c d 12\nR d 0 20');
    expectPrinted(c.amps(1), '0.20');
    expectPrinted(c.amps(1) ** 2 * 10, '0.40');
    expectPrinted(c.amps(2) ** 2 * 30, '1.20');
    expectPrinted(c.amps(4) ** 2 * 20, '0.80');
    expectPrinted(-c.amps(0) * 24, '4.80');
  });

  test('24 V, 7 ohm before 10 ohm beside 6 + 4 ohm: 2 A; 14, 10, 6, 4 V; 48 W (OSX)', () => {
    const c = solved('V a 0 24\nR a b 7\nR b 0 10\nR b c 6\nR c 0 4');
    expectPrinted(c.amps(1), '2');
    expectPrinted(c.volts('a', 'b'), '14');
    expectPrinted(c.volts('b'), '10');
    expectPrinted(c.volts('b', 'c'), '6');
    expectPrinted(c.volts('c'), '4');
    expectPrinted(-c.amps(0) * 24, '48');
  });

  test('12.0 V, wires of 1.00 ohm, 6.00 beside 13.0 ohm: 2.35 A, drop 2.35 V, 9.65 V, 1.61 A, 15.5 W, 0.742 A (OSX ex. 10.4)', () => {
    const c = solved('V a 0 12\nR a b 1\nR b 0 6\nR b 0 13');
    expectPrinted(c.amps(1), '2.35');
    expectPrinted(c.volts('a', 'b'), '2.35');
    expectPrinted(c.volts('b'), '9.65');
    expectPrinted(c.amps(2), '1.61');
    expectPrinted(c.amps(2) ** 2 * 6, '15.5');
    expectPrinted(c.amps(3), '0.742');
  });

  test('24 V, 100 beside 250 before 350 beside 200 ohm: 8.627 V, 15.37 V, 120.78 mA; branches (LEC ch. 7)', () => {
    const c = solved('V a 0 24\nR a b 100\nR a b 250\nR b 0 350\nR b 0 200');
    expectPrinted(c.volts('a', 'b'), '8.627');
    expectPrinted(c.volts('b'), '15.37');
    expectPrinted(-c.amps(0), '120.78', 1000);
    for (const [line, amps] of [
      [1, '86.27'],
      [2, '34.51'],
      [3, '43.92'],
      [4, '76.86'],
    ] as const)
      expectPrinted(c.amps(line), amps, 1000);
  });

  test('the same with the 250 ohm shorted: total current up, upper voltage down, lower up (LEC ch. 7, fault table)', () => {
    const good = solved('V a 0 24\nR a b 100\nR a b 250\nR b 0 350\nR b 0 200');
    const bad = solved('V a 0 24\nR a b 100\nR a b 0.001\nR b 0 350\nR b 0 200');
    expect(-bad.amps(0)).toBeGreaterThan(-good.amps(0));
    expect(bad.volts('a', 'b')).toBeLessThan(good.volts('a', 'b'));
    expect(bad.volts('b')).toBeGreaterThan(good.volts('b'));
  });
});

describe('several sources', () => {
  test('Kirchhoff3: 24 and 29 V, all 3 ohm but one of 4: 3.00, 5.00, -2.00 A, 130 W (OSX)', () => {
    const c = solved('V f e 24\nV d e 29\nR f b 3\nR b e 3\nR b c 3\nR c d 4\nR e 0 1');
    expectPrinted(c.amps(2), '3.00');
    expectPrinted(c.amps(3), '5.00');
    expectPrinted(c.amps(4), '-2.00');
    expectPrinted(-c.amps(0) * 24 - c.amps(1) * 29, '130');
  });

  test('three sources of 0.5, 0.6 and 2.3 V: 0.20, 0.30, 0.50 A, 1.09 W and each resistor (OSX ex. 10.6)', () => {
    const c = solved(
      'R f a 1\nV n1 a 0.5\nR n1 b 2\nV f n2 0.6\nR n2 b 1\nR f e 5\nV n3 e 2.3\nR n3 d 1\nR d b 2\nR b 0 1',
    );
    // Lines: R1 0, R4 2, R3 4, R2 5, R5 7, R6 8.
    for (const [line, amps] of [
      [0, '0.20'],
      [5, '0.30'],
      [4, '0.50'],
      [7, '0.30'],
    ] as const)
      expectPrinted(Math.abs(c.amps(line)), amps);
    const watts = (
      [
        [0, 1, '0.04'],
        [5, 5, '0.45'],
        [4, 1, '0.25'],
        [2, 2, '0.08'],
        [7, 1, '0.09'],
        [8, 2, '0.18'],
      ] as const
    ).map(([line, ohms, text]) => {
      expectPrinted(c.amps(line) ** 2 * ohms, text);
      return c.amps(line) ** 2 * ohms;
    });
    expectPrinted(
      watts.reduce((sum, one) => sum + one, 0),
      '1.09',
    );
  });

  test('12 V and 5 V through 3, 4, 2 and 2 ohm: 1.5, 2, 0.5, 2.5, 2 A; 34 W (OSX, problem 6)', () => {
    const c = solved('V t l 12\nR m l 3\nR t m 4\nR r m 2\nV t r 5\nR t r 2\nR l 0 1');
    expectPrinted(Math.abs(c.amps(2)), '1.5');
    expectPrinted(Math.abs(c.amps(1)), '2.0');
    expectPrinted(Math.abs(c.amps(3)), '0.5');
    expectPrinted(Math.abs(c.amps(5)), '2.5');
    expectPrinted(-c.amps(0) * 12 - c.amps(4) * 5, '34');
  });

  test('28 V and 7 V over 4, 2 and 1 ohm: 20, 8, 1 V; 5, 4, 1 A (LEC ch. 10)', () => {
    const c = solved('V 1 0 28\nV 3 0 7\nR 1 2 4\nR 2 0 2\nR 2 3 1');
    expectPrinted(c.volts('1', '2'), '20');
    expectPrinted(c.volts('2'), '8');
    expectPrinted(c.volts('2', '3'), '1');
    for (const [line, amps] of [
      [2, '5'],
      [3, '4'],
      [4, '1'],
    ] as const)
      expectPrinted(c.amps(line), amps);
  });

  test('its Thevenin equivalent at the 2 ohm: 11.2 V (from memory), 0.8 ohm (LEC ch. 10)', () => {
    const open = solved('V 1 0 28\nV 3 0 7\nR 1 2 4\nR 2 3 1').volts('2');
    expectPrinted(open, '11.2');
    const short = solved('V 1 0 28\nV 3 0 7\nR 1 2 4\nR 2 0 0.000000001\nR 2 3 1').amps(3);
    expectPrinted(short, '14.0');
    expectPrinted(open / short, '0.8');
  });

  test('10 V and -4 V by the node method: 3.809524 and -1.547619 V (LEC ch. 10)', () => {
    const c = solved('V 11 0 10\nV 22 0 -4\nR 11 1 2\nR 1 0 4\nR 1 2 2.5\nR 2 0 5\nR 2 22 1');
    expectPrinted(c.volts('1'), '3.809524');
    expectPrinted(c.volts('2'), '-1.547619');
  });
});

describe('bridges', () => {
  test('24 V, unbalanced: 6.345, 4.690, 1.655, 17.66, 19.31 V; 136.092 mA (LEC ch. 10; digits by ngspice 39)', () => {
    const c = solved('V 1 0 24\nR 1 2 150\nR 1 3 50\nR 2 3 100\nR 2 0 300\nR 3 0 250');
    expect(c.volts('1', '2')).toBeCloseTo(6.3448275862, 9);
    expect(c.volts('1', '3')).toBeCloseTo(4.6896551724, 9);
    expect(c.volts('3', '2')).toBeCloseTo(1.6551724138, 9);
    expect(c.volts('2')).toBeCloseTo(17.655172414, 8);
    expect(c.volts('3')).toBeCloseTo(19.310344828, 8);
    expectPrinted(-c.amps(0), '136.092', 1000);
  });

  test('10 V by star and delta: 4.706, 5.294, 0.5882, 5.294, 4.706 V (LEC ch. 10)', () => {
    const c = solved('V 1 0 10\nR 1 2 12\nR 1 3 18\nR 2 3 6\nR 2 0 18\nR 3 0 12');
    expectPrinted(c.volts('1', '2'), '4.706');
    expectPrinted(c.volts('1', '3'), '5.294');
    expectPrinted(c.volts('2', '3'), '0.5882');
    expectPrinted(c.volts('2'), '5.294');
    expectPrinted(c.volts('3'), '4.706');
  });

  test('6 V bridge with a 300 ohm galvanometer: 43.32129964 uA (Scilab textbook companion, ex. 11.2; digits by ngspice 39)', () => {
    const c = solved('V s 0 6\nR s a 1000\nR a 0 3500\nR s b 2500\nR b 0 10000\nR b a 300');
    expect(c.amps(5) * 1e6).toBeCloseTo(43.32129964, 6);
    expect(c.volts('a')).toBeCloseTo(4.700361, 6);
    expect(c.volts('b')).toBeCloseTo(4.7133574, 6);
  });
});

describe('batteries with resistance inside', () => {
  test.each([
    // emf, inside, load, amps, terminal volts (OSX ex. 10.1; its first voltage is printed as 11.90 after rounding on the
    // way, by hand 12 * 10 / 10.1 = 11.88)
    ['12.00', 0.1, 10, '1.188', '11.88'],
    ['12.00', 0.1, 0.5, '20.00', '10.00'],
    ['12.00', 0.5, 0.5, '12.00', '6.00'],
  ])('%s V, %f ohm inside, %f ohm load: %s A, %s V', (emf, inside, load, amps, volts) => {
    const c = solved(`V a 0 ${emf} ${inside}\nR a 0 ${load}`);
    expectPrinted(c.amps(1), amps);
    expectPrinted(c.volts('a'), volts);
  });

  test('three cells of 1.58 V (0.0200 ohm) and one of 1.53 V (0.100 ohm) into 10.0 ohm: 0.617 A, 3.81 W (OSX)', () => {
    const c = solved('V a 0 1.58 0.02\nV b a 1.58 0.02\nV c b 1.58 0.02\nV d c 1.53 0.1\nR d 0 10');
    expectPrinted(c.amps(4), '0.617');
    expectPrinted(c.amps(4) ** 2 * 10, '3.81');
  });

  test('a 12.0 V battery of 0.400 ohm charged with 10.0 A shows 16.0 V and takes 40.0 W (OSX)', () => {
    const c = solved('V emf 0 12\nR post emf 0.4\nI 0 post 10');
    expectPrinted(c.volts('post'), '16.0');
    expectPrinted(c.amps(1) * c.volts('post', 'emf'), '40.0');
    expectPrinted(c.amps(0), '10.0');
  });

  test('120 V, wire of 0.800 ohm, a 75.0 W lamp and a starting motor, 15.0 A in all: lamp 60.8 W, motor 1.56 kW (OSX)', () => {
    const lamp = 120 ** 2 / 75;
    // The book gives the 15.0 A of both; what the lamp leaves of them is the motor's.
    const c = solved('V a 0 120\nR a b 0.8\nI b 0 15');
    expectPrinted(c.volts('b') ** 2 / lamp, '60.8');
    expectPrinted(c.volts('b') * (15 - c.volts('b') / lamp), '1.56', 1e-3);
  });
});

describe('a meter loads what it measures', () => {
  test.each([
    // name, netlist, shown volts, tolerance, source
    [
      '24 V over two 250 Mohm, 10 Mohm meter (LEC ch. 8; ngspice 39)',
      'V a 0 24\nR a b 250e6\nR b 0 250e6\nR b 0 10e6',
      0.88888888889,
      1e-9,
    ],
    [
      '1 V behind 10 kohm, 20 kohm meter (Horowitz and Hill, exercise 1.7; by hand 20 / 30)',
      'V a 0 1\nR a b 10e3\nR b 0 20e3',
      0.667,
      5e-4,
    ],
    [
      '1 V, 10k/10k, 20 kohm meter (the same exercise; by hand 6.667 / 16.667)',
      'V a 0 1\nR a b 10e3\nR b 0 10e3\nR b 0 20e3',
      0.4,
      1e-9,
    ],
    [
      '30 V over two 400 kohm, 400 kohm meter (edudirectory.50webs.com/tutorials/elect99)',
      'V a 0 30\nR a b 400e3\nR b 0 400e3\nR b 0 400e3',
      10,
      1e-9,
    ],
    [
      '5 V, 1 ohm, 10 ohm beside a 100 ohm meter (viztrainings.org 21022318)',
      'V a 0 5\nR a b 1\nR b 0 10\nR b 0 100',
      4.5045,
      5e-5,
    ],
    [
      '1.585 V cell of 0.100 ohm, 1.00 kohm meter (OSX problem; by hand 1.585 * 1000 / 1000.1)',
      'V b 0 1.585 0.1\nR b 0 1000',
      1.584842,
      5e-7,
    ],
    [
      '5 V behind 1 kohm, 10 Mohm (by hand, 5 * 10 / 10.001)',
      'V a 0 5\nR a b 1e3\nR b 0 10e6',
      4.9995,
      5e-7,
    ],
    [
      '5 V behind 100 kohm, 10 Mohm (by hand, 5 * 10 / 10.1)',
      'V a 0 5\nR a b 100e3\nR b 0 10e6',
      4.950495,
      5e-7,
    ],
    [
      '5 V behind 1 Mohm, 10 Mohm (by hand, 5 * 10 / 11)',
      'V a 0 5\nR a b 1e6\nR b 0 10e6',
      4.545455,
      5e-7,
    ],
  ])('%s', (_name, text, volts, tolerance) => {
    expect(Math.abs(solved(text).volts('b') - volts)).toBeLessThanOrEqual(tolerance);
  });

  test('14 V through two 15 ohm copper wires into 250 ohm: 12.5 V, at 35 degC 12.42 V (LEC ch. 12)', () => {
    expectPrinted(solved('V a 0 14\nR a b 15\nR b c 250\nR c 0 15').volts('b', 'c'), '12.5');
    // The book's coefficient, 0.004041 per degree, is that of pure copper.
    const warm = 15 * (1 + 0.004041 * 15);
    const c = solved(`V a 0 14\nR a b ${warm}\nR b c 250\nR c 0 ${warm}`);
    expect(c.volts('b', 'c')).toBeCloseTo(12.419343, 6);
    expect(c.amps(1) * 1000).toBeCloseTo(49.677372, 6);
  });

  // By hand: 10 V * 2.2 / 12.2, 20 V * 1 / 13.2 and 20 V * 11 / 13.2.
  test('potentiometers with end resistors: 1.80328 to 10.000 V, and 1.51515 to 16.6667 V', () => {
    expect(solved('V a 0 10\nR a b 10e3\nR b 0 2.2e3').volts('b')).toBeCloseTo(1.80328, 5);
    expect(solved('V a 0 20\nR a t 2.2e3\nR t b 10e3\nR b 0 1e3').volts('b')).toBeCloseTo(
      1.51515,
      5,
    );
    expect(solved('V a 0 20\nR a t 2.2e3\nR t b 10e3\nR b 0 1e3').volts('t')).toBeCloseTo(
      16.6667,
      4,
    );
  });
});
