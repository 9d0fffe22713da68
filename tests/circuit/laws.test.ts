/** Laws that hold for every circuit, on random ones: Kirchhoff, Tellegen, superposition, scaling, monotone resistance. */

import { expect, test } from 'vitest';
import { type Element, type Netlist, nodesOf } from '../../src/circuit/netlist.ts';
import { createSolver, type DcSolver } from '../../src/circuit/solve-dc.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';

const SHORT = process.env['OHMWARD_SHORT'] === '1';
const RUNS = LONG ? 3000 : SHORT ? 10 : 150;
/** Currents are compared with this share of the largest, and corners of elements are kept to 20 nV, here up to 0.1 uA. */
const SHARE = 1e-7;

const ohms = fc.double({ min: -1, max: 5, noNaN: true }).map((power) => 10 ** power);
const volts = fc.double({ min: -15, max: 15, noNaN: true });

/** Nodes 1..n, each joined by a resistor to an earlier one, and more elements between any two. */
function circuits(more: fc.Arbitrary<(a: number, b: number) => Element>): fc.Arbitrary<Netlist> {
  return fc.integer({ min: 2, max: 9 }).chain((count) => {
    const pair = fc
      .tuple(fc.nat(count), fc.nat(count - 1))
      .map(([a, shift]) => [a, (a + 1 + shift) % (count + 1)] as const);
    const tree = fc.tuple(
      ...Array.from({ length: count }, (_, index) => fc.tuple(fc.nat(index), ohms)),
    );
    return fc
      .tuple(tree, fc.array(fc.tuple(pair, more), { minLength: 1, maxLength: 10 }))
      .map(([branches, extras]) => ({
        nodes: Array.from({ length: count + 1 }, (_, node) => String(node)),
        elements: [
          ...branches.map(
            ([to, value], index): Element => ({
              kind: 'resistor',
              a: index + 1,
              b: to,
              ohms: value,
            }),
          ),
          ...extras.map(([[a, b], make]) => make(a, b)),
        ],
      }));
  });
}

const resistor = ohms.map(
  (value) =>
    (a: number, b: number): Element => ({ kind: 'resistor', a, b, ohms: value }),
);
const source = fc.tuple(volts, ohms).map(
  ([value, inside]) =>
    (a: number, b: number): Element => ({
      kind: 'emf',
      plus: a,
      minus: b,
      volts: value,
      ohms: inside,
    }),
);
const curved: fc.Arbitrary<(a: number, b: number) => Element> = fc.oneof(
  ohms.map(
    (value) =>
      (a: number, b: number): Element => ({
        kind: 'diode',
        a,
        b,
        saturationAmps: 1e-15,
        emissionVolts: 0.04,
        ohms: value,
        leakOhms: 1e9,
      }),
  ),
  fc.constant(
    (a: number, b: number): Element => ({
      kind: 'diode',
      a,
      b,
      saturationAmps: 1e-12,
      emissionVolts: 0.026,
      ohms: 0,
      leakOhms: 1e9,
    }),
  ),
  ohms.map(
    (value) =>
      (a: number, b: number): Element => ({
        kind: 'lamp',
        a,
        b,
        coldOhms: value,
        risePerRootVolt: value,
      }),
  ),
  volts.map(
    (value) =>
      (a: number, b: number): Element => ({
        kind: 'regulator',
        from: a,
        out: b,
        volts: Math.abs(value),
        ohms: 0.5,
        limitAmps: 0.08,
      }),
  ),
  fc.constant(
    (a: number, b: number): Element => ({
      kind: 'sink',
      a,
      b,
      amps: 0.008,
      minVolts: 4,
      reverseOhms: 500,
    }),
  ),
  fc.nat(2).map(
    (feed) =>
      (a: number, b: number): Element => ({
        kind: 'gated-output',
        out: a,
        ground: b,
        feed,
        onSiemens: 0.02,
        offSiemens: 5e-7,
        minVolts: 4,
        limitAmps: 0.04,
      }),
  ),
);
const linear = circuits(fc.oneof(resistor, source));
const any = circuits(fc.oneof(resistor, source, source, curved, curved));

function solve(netlist: Netlist): DcSolver {
  const solver = createSolver(netlist);
  expect(solver.solve()).toBeNull();
  return solver;
}

/** Sum of the currents that leave each node, and the largest current. */
function balance(netlist: Netlist, solver: DcSolver): { sums: number[]; largest: number } {
  const sums = netlist.nodes.map(() => 0);
  let largest = 1e-9;
  netlist.elements.forEach((element, index) => {
    const [a, b] = nodesOf(element);
    const amps = solver.current(index);
    sums[a!]! += amps;
    sums[b!]! -= amps;
    largest = Math.max(largest, Math.abs(amps));
  });
  return { sums, largest };
}

test('currents at every node sum to zero, with any elements (Kirchhoff)', () => {
  fc.assert(
    fc.property(any, (netlist) => {
      const { sums, largest } = balance(netlist, solve(netlist));
      for (const sum of sums.slice(1)) expect(Math.abs(sum)).toBeLessThan(SHARE * largest + 2e-7);
    }),
    { numRuns: RUNS },
  );
});

test('what the elements take sums to zero (Tellegen)', () => {
  fc.assert(
    fc.property(any, (netlist) => {
      const solver = solve(netlist);
      let sum = 0;
      let largest = 1e-9;
      netlist.elements.forEach((element, index) => {
        const [a, b] = nodesOf(element);
        const watts = solver.current(index) * (solver.volts[a!]! - solver.volts[b!]!);
        sum += watts;
        largest = Math.max(largest, Math.abs(watts));
      });
      expect(Math.abs(sum)).toBeLessThan(1e-6 * largest + 1e-6);
    }),
    { numRuns: RUNS },
  );
});

test('resistors never give power', () => {
  fc.assert(
    fc.property(any, (netlist) => {
      const solver = solve(netlist);
      netlist.elements.forEach((element, index) => {
        if (element.kind === 'resistor' || element.kind === 'lamp' || element.kind === 'diode')
          expect(
            solver.current(index) * (solver.volts[element.a]! - solver.volts[element.b]!),
          ).toBeGreaterThanOrEqual(-1e-15);
      });
    }),
    { numRuns: RUNS },
  );
});

test('in linear circuits the sources add up (superposition)', () => {
  fc.assert(
    fc.property(linear, (netlist) => {
      const whole = solve(netlist).volts;
      const sums = new Float64Array(whole.length);
      netlist.elements.forEach((kept, index) => {
        if (kept.kind !== 'emf') return;
        const elements = netlist.elements.map((one, other) =>
          one.kind === 'emf' && other !== index ? { ...one, volts: 0 } : one,
        );
        solve({ ...netlist, elements }).volts.forEach((value, node) => {
          sums[node]! += value;
        });
      });
      const largest = Math.max(1, ...whole.map(Math.abs));
      whole.forEach((value, node) => {
        expect(Math.abs(value - sums[node]!)).toBeLessThan(1e-9 * largest);
      });
    }),
    { numRuns: RUNS },
  );
});

test('all resistances times k leave voltages and divide currents by k; all sources times k multiply voltages', () => {
  fc.assert(
    fc.property(linear, fc.double({ min: 0.1, max: 50, noNaN: true }), (netlist, k) => {
      const before = solve(netlist);
      const scale = (resistance: number, emf: number) =>
        solve({
          ...netlist,
          elements: netlist.elements.map((one) =>
            one.kind === 'resistor'
              ? { ...one, ohms: one.ohms * resistance }
              : one.kind === 'emf'
                ? { ...one, ohms: one.ohms * resistance, volts: one.volts * emf }
                : one,
          ),
        });
      const larger = scale(k, 1);
      const stronger = scale(1, k);
      before.volts.forEach((value, node) => {
        expect(larger.volts[node]!).toBeCloseTo(value, 8);
        expect(stronger.volts[node]!).toBeCloseTo(value * k, 6);
      });
      netlist.elements.forEach((_, index) => {
        expect(larger.current(index) * k).toBeCloseTo(before.current(index), 7);
      });
    }),
    { numRuns: RUNS },
  );
});

test('a growing resistance in a branch never lets more current through it', () => {
  fc.assert(
    fc.property(
      linear,
      ohms,
      fc.double({ min: 1.01, max: 100, noNaN: true }),
      (netlist, first, factor) => {
        const through = (value: number) => {
          const elements: Element[] = [
            ...netlist.elements,
            { kind: 'resistor', a: 1, b: 0, ohms: value },
          ];
          const solver = solve({ ...netlist, elements });
          return Math.abs(solver.current(elements.length - 1));
        };
        const less = through(first * factor);
        expect(less).toBeLessThanOrEqual(through(first) * (1 + 1e-9) + 1e-12);
      },
    ),
    { numRuns: RUNS },
  );
});

test('the answer does not depend on the order of elements, and a second solve repeats it to the bit', () => {
  fc.assert(
    fc.property(any, (netlist) => {
      const solver = solve(netlist);
      const first = Float64Array.from(solver.volts);
      expect(solver.solve()).toBeNull();
      expect(solver.volts).toEqual(first);
      const turned = solve({ ...netlist, elements: [...netlist.elements].reverse() });
      const scale = Math.max(1, ...first.map(Math.abs));
      // Circuits with positive feedback through a gated output can have two answers; one without cannot.
      if (netlist.elements.some((element) => element.kind === 'gated-output')) return;
      turned.volts.forEach((value, node) => {
        expect(Math.abs(value - first[node]!)).toBeLessThan(1e-6 * scale);
      });
    }),
    { numRuns: RUNS },
  );
});
