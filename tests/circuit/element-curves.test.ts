/** Each element between ideal sources: the current of the sentence that defines it in `netlist.ts`, worked out by hand. */
import { describe, expect, test } from 'vitest';
import type { Element } from '../../src/circuit/netlist.ts';
import { createSolver } from '../../src/circuit/solve-dc.ts';

/** Current of `element` with node 1 at `first` and node 2 at `second` volts. */
function amps(element: Element, first: number, second = 0): number {
  const solver = createSolver({
    nodes: ['0', '1', '2'],
    elements: [
      { kind: 'emf', plus: 1, minus: 0, volts: first, ohms: 0 },
      { kind: 'emf', plus: 2, minus: 0, volts: second, ohms: 0 },
      element,
    ],
  });
  expect(solver.solve()).toBeNull();
  return solver.current(2);
}

test.each([
  [-1, -1e-6], // v / reverseOhms
  [0, 0],
  [2, 0.004],
  [4, 0.008],
  [10, 0.008],
])('a sink of 8 mA from 4 V on takes at %d V %d A', (volts, current) => {
  const sink: Element = {
    kind: 'sink',
    a: 1,
    b: 0,
    amps: 0.008,
    minVolts: 4,
    reverseOhms: 1e6,
  };
  expect(amps(sink, volts)).toBeCloseTo(current, 9);
  expect(amps({ ...sink, a: 1, b: 2 }, volts + 3, 3)).toBeCloseTo(current, 9);
});

test.each([
  [6, 0], // it takes nothing back
  [5, 0],
  [4.95, 0.05],
  [4.92, 0.08],
  [1, 0.08],
])(
  'a regulator of 5 V behind 1 ohm with its output at %d V gives %d A, 80 mA at most',
  (out, current) => {
    const regulator: Element = {
      kind: 'regulator',
      from: 0,
      out: 1,
      volts: 5,
      ohms: 1,
      limitAmps: 0.08,
    };
    expect(amps(regulator, out)).toBeCloseTo(current, 9);
    // from another node it counts from there
    expect(amps({ ...regulator, from: 2 }, out + 2, 2)).toBeCloseTo(current, 9);
  },
);

describe('a switched output of 0.1 S, off 0.001 S, from 4 V of feed, 40 mA at most', () => {
  const output: Element = {
    kind: 'gated-output',
    out: 1,
    ground: 0,
    feed: 2,
    onSiemens: 0.1,
    offSiemens: 0.001,
    minVolts: 4,
    limitAmps: 0.04,
  };
  test.each([
    // volts at the output and at the feed; the ramp runs from 3.6 to 4 V
    [0.2, 5, 0.02],
    [0.2, 4, 0.02],
    [0.2, 3.8, 0.2 * (0.001 + 0.099 / 2)],
    [0.2, 3.7, 0.2 * (0.001 + 0.099 / 4)],
    [0.2, 3.6, 0.0002],
    [0.2, 0, 0.0002],
    [0.4, 5, 0.04],
    [3, 5, 0.04],
    [3, 0, 0.003],
    [-0.1, 5, -0.01],
  ])('%d V at the output and %d V of feed: %d A', (out, feed, current) => {
    expect(amps(output, out, feed)).toBeCloseTo(current, 8);
  });
});

describe('a diode', () => {
  const diode = (ohms: number, leakOhms = Number.POSITIVE_INFINITY): Element => ({
    kind: 'diode',
    a: 1,
    b: 0,
    saturationAmps: 1e-12,
    emissionVolts: 0.05,
    ohms,
    leakOhms,
  });
  /** Voltage at which the junction passes `current`, with the resistance in series. */
  const voltsFor = (current: number, ohms: number) =>
    0.05 * Math.log(current / 1e-12 + 1) + current * ohms;
  test.each([1e-9, 1e-6, 1e-3, 0.1, 1])('passes %d A where its curve says so', (current) => {
    for (const ohms of [0, 1, 100]) {
      const found = amps(diode(ohms), voltsFor(current, ohms));
      expect(Math.abs(found / current - 1), `${ohms} ohm`).toBeLessThan(1e-6);
    }
  });
  test('blocks backwards, but for its leak', () => {
    expect(amps(diode(10), -5)).toBeCloseTo(-1e-12, 15);
    expect(amps(diode(10, 1e6), -5)).toBeCloseTo(-5e-6, 11);
    expect(amps(diode(0, 1e6), -5)).toBeCloseTo(-5e-6, 11);
    expect(amps(diode(10, 1e6), 0.1)).toBeCloseTo(1e-7, 10);
  });
});

test.each([
  [12, 12 / 48],
  [-12, -12 / 48],
  [0, 0],
  [3, 3 / 26.5], // the root of a quarter of 12 V: half of the rise
])('a lamp of 5 ohm cold and 48 ohm at 12 V takes at %d V %d A', (volts, current) => {
  const risePerRootVolt = 43 / Math.sqrt(12);
  const lamp: Element = { kind: 'lamp', a: 1, b: 0, coldOhms: 5, risePerRootVolt };
  expect(amps(lamp, volts)).toBeCloseTo(current, 9);
});

test.each<[Element, number]>([
  [{ kind: 'resistor', a: 1, b: 2, ohms: 4 }, 2], // (10 - 2) / 4
  [{ kind: 'emf', plus: 1, minus: 2, volts: 3, ohms: 5 }, 1], // (10 - 2 - 3) / 5 into its plus
  [{ kind: 'current', from: 1, to: 2, amps: 0.7 }, 0.7],
])('%o between 10 V and 2 V', (element, current) => {
  expect(Math.abs(amps(element, 10, 2))).toBeCloseTo(current, 9);
});

test('what has a corner settles on either side of it beside other elements', () => {
  // by hand: 12 V over 1 kohm into a sink of 8 mA from 4 V on: 4 V at the sink and 8 mA
  const solver = createSolver({
    nodes: ['0', 'battery', 'sink'],
    elements: [
      { kind: 'emf', plus: 1, minus: 0, volts: 12, ohms: 0 },
      { kind: 'resistor', a: 1, b: 2, ohms: 1000 },
      { kind: 'sink', a: 2, b: 0, amps: 0.008, minVolts: 4, reverseOhms: 1e6 },
    ],
  });
  expect(solver.solve()).toBeNull();
  expect(solver.volts[2]).toBeCloseTo(4, 6);
  // over 2 kohm it stays on its slope of 500 ohm: 12 * 500 / 2500
  solver.replace(1, { kind: 'resistor', a: 1, b: 2, ohms: 2000 });
  expect(solver.solve()).toBeNull();
  expect(solver.volts[2]).toBeCloseTo(2.4, 6);
  // over 500 ohm it is full: 12 - 500 * 0.008
  solver.replace(1, { kind: 'resistor', a: 1, b: 2, ohms: 500 });
  expect(solver.solve()).toBeNull();
  expect(solver.volts[2]).toBeCloseTo(8, 6);
});
