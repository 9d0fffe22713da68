/** Nodes worked out of a circuit: small ones by hand, random ones against a dense matrix of all nodes. */
import { describe, expect, test } from 'vitest';
import { Mesh } from '../../src/circuit/mesh.ts';
import type { Element, Netlist } from '../../src/circuit/netlist.ts';
import { planReduction } from '../../src/circuit/plan-reduction.ts';
import { createSolver } from '../../src/circuit/solve-dc.ts';
import fc from '../seeded-check.ts';
import { densePath } from './dense-path.ts';

const resistor = (a: number, b: number, ohms = 1): Element => ({ kind: 'resistor', a, b, ohms });
const names = (count: number) => Array.from({ length: count }, (_, node) => String(node));
const none = () => false;

describe('the plan', () => {
  test('makes one resistor of a row, and carries nothing into a dead end', () => {
    // ground - 1 - 2 - 3 (kept), and 4 hangs on 2
    const elements = [resistor(0, 1), resistor(1, 2), resistor(2, 3), resistor(2, 4)];
    const plan = planReduction({ nodes: names(5), elements }, [3], none, []);
    expect(plan.stars).toEqual([]);
    expect(plan.joins).toHaveLength(2 * 3);
    expect(plan.links).toHaveLength(3 * 5);
    expect(plan.grounded).toEqual([plan.ohmsCount - 1, 0]);
  });
  test('takes the node with the fewest neighbours first, so a hub comes behind its spokes', () => {
    // two spokes between hubs 1 and 2 with a way to ground each, so that no chain takes them
    const spokes = [3, 4, 5].flatMap((spoke) => [
      resistor(1, spoke),
      resistor(2, spoke),
      resistor(spoke, 0),
    ]);
    const plan = planReduction({ nodes: names(6), elements: spokes }, [], none, []);
    expect(plan.nodeAt.slice(0, 2)).toEqual([3, 4]);
    expect(plan.starts).toHaveLength(5);
  });
  test('works out no node with more than 16 neighbours, and names all that are left then', () => {
    // each of so many nodes joined to every other; one more hangs on two of them and is taken out before
    const joined = (count: number) =>
      Array.from({ length: count }, (_, a) =>
        Array.from({ length: a }, (_, b) => resistor(a + 1, b + 1)),
      ).flat();
    const planOf = (count: number) => {
      const beside = [resistor(count + 1, 1), resistor(count + 1, 2), resistor(count + 1, 0)];
      const elements = [...joined(count), ...beside, resistor(0, 1)];
      return planReduction({ nodes: names(count + 2), elements }, [], none, []);
    };
    const least = planOf(17);
    expect(least.hubs).toEqual([]);
    expect(least.starts).toHaveLength(18);
    const more = planOf(18);
    expect(more.hubs).toEqual(Array.from({ length: 18 }, (_, at) => at + 1));
    expect(more.starts).toHaveLength(1);
  });
  test('leaves what hangs in the air without a tie where nothing is left of it', () => {
    const plan = planReduction({ nodes: names(3), elements: [resistor(0, 1)] }, [1], none, [2]);
    expect(plan.tied).toEqual([]);
  });
});

test('a mesh shows two of its nodes a voltage behind a resistance', () => {
  // 10 V behind 5 ohm at node 1, 20 ohm from 0 to 1, node 0 to ground by 25 ohm; seen between 0 and 1
  const mesh = new Mesh(2);
  mesh.addSiemens(1, -1, 1 / 5);
  mesh.addAmps(-1, 1, 2);
  mesh.addSiemens(0, 1, 1 / 20);
  mesh.addSiemens(0, -1, 1 / 25);
  const behind = { volts: 0, ohms: 0 };
  expect(mesh.lookBehind(false, behind)).toBe(true);
  // 10 V * 20 / 50 across the 20 ohm; 20 ohm beside 30 ohm
  expect(behind.volts).toBeCloseTo(-4, 12);
  expect(behind.ohms).toBeCloseTo(12, 12);
  expect(mesh.workOut(0, 1) && mesh.lookBehind(true, behind)).toBe(true);
  // from node 1: 10 V * 45 / 50, 5 ohm beside 45 ohm
  expect(behind.volts).toBeCloseTo(9, 12);
  expect(behind.ohms).toBeCloseTo(4.5, 12);
  expect(new Mesh(1).workOut(0, 1)).toBe(false);
});

test('a gigohm behind a thousand milliohm joints keeps its digits', () => {
  const elements: Element[] = [{ kind: 'emf', plus: 1, minus: 0, volts: 1, ohms: 1e9 }];
  for (let node = 1; node < 1000; node += 1) elements.push(resistor(node, node + 1, 1e-3));
  elements.push(resistor(1000, 0, 1e9));
  const netlist = { nodes: names(1001), elements };
  const watching = createSolver(netlist, { watched: [1000] });
  const all = createSolver(netlist);
  expect([watching.solve(), all.solve()]).toEqual([null, null]);
  // 1 V * 1e9 / (2e9 + 0.999)
  const far = 1 / (2 + 0.999e-9);
  expect(Math.abs(watching.volts[1000]! - far)).toBeLessThan(4e-16);
  // Going back through a row costs about a rounding for each joint.
  expect(Math.abs(all.volts[1000]! - far)).toBeLessThan(1000 * 2 ** -53);
});

const ohms = fc.double({ min: -3, max: 7, noNaN: true }).map((power) => 10 ** power);
const pair = (count: number) =>
  fc.tuple(fc.nat(count), fc.nat(count - 1)).map(([a, shift]) => {
    const b = (a + 1 + shift) % (count + 1);
    return [a, b] as const;
  });

/** A tree to ground, more resistors and sources, and one diode or none. */
const circuits: fc.Arbitrary<Netlist> = fc.integer({ min: 2, max: 14 }).chain((count) =>
  fc
    .record({
      tree: fc.tuple(...names(count).map((_, index) => fc.tuple(fc.nat(index), ohms))),
      more: fc.array(fc.tuple(pair(count), ohms), { maxLength: 6 }),
      sources: fc.array(fc.tuple(pair(count), fc.integer({ min: -15, max: 15 }), ohms), {
        minLength: 1,
        maxLength: 3,
      }),
      light: fc.option(pair(count)),
    })
    .map(({ tree, more, sources, light }) => ({
      nodes: names(count + 1),
      elements: [
        ...tree.map(([to, value], index) => resistor(index + 1, to, value)),
        ...more.map(([[a, b], value]) => resistor(a, b, value)),
        ...sources.map(
          ([[plus, minus], volts, inside]): Element => ({
            kind: 'emf',
            plus,
            minus,
            volts,
            ohms: inside,
          }),
        ),
        ...(light ? [lightAt(...light)] : []),
      ],
    })),
);

function lightAt(a: number, b: number): Element {
  return {
    kind: 'diode',
    a,
    b,
    saturationAmps: 3.6e-18,
    emissionVolts: 0.0517298,
    ohms: 334,
    leakOhms: 1e9,
  };
}

test('random circuits have the voltages of a dense matrix of all nodes, wherever one looks', () => {
  fc.assert(
    fc.property(circuits, fc.nat(13), (netlist, at) => {
      const dense = densePath(netlist);
      const all = createSolver(netlist);
      const node = 1 + (at % (netlist.nodes.length - 1));
      const one = createSolver(netlist, { watched: [node], varying: [0] });
      expect([all.solve(), one.solve()]).toEqual([null, null]);
      const scale = Math.max(1, ...dense.map(Math.abs));
      dense.forEach((volts, index) => {
        expect(Math.abs(all.volts[index]! - volts)).toBeLessThan(1e-6 * scale);
      });
      expect(Math.abs(one.volts[node]! - all.volts[node]!)).toBeLessThan(1e-9 * scale);
    }),
    { numRuns: 300 },
  );
});
