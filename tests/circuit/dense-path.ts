/**
 * The plain way to an operating point, to hold the solver against: every node an unknown, one dense matrix made anew for
 * each point, Newton's method for diodes. Resistors, sources with resistance, current sources, diodes with resistance.
 */
import { createElimination, eliminate, SOLVED } from '../../src/circuit/eliminate.ts';
import type { Element, Netlist } from '../../src/circuit/netlist.ts';
import { wrightOmega } from '../../src/circuit/wright-omega.ts';

const STEPS_MAX = 50;
const SETTLED_VOLTS = 1e-10;

/** Node voltages, ground first. */
export function densePath({ nodes, elements }: Netlist): Float64Array {
  const size = nodes.length - 1;
  const work = createElimination(size);
  const volts = new Float64Array(nodes.length);
  const add = (row: number, column: number, value: number): void => {
    if (row > 0 && column > 0) work.matrix[(row - 1) * (size + 1) + column - 1]! += value;
  };
  const stamp = (a: number, b: number, siemens: number, amps: number): void => {
    for (const [one, other, sign] of [
      [a, b, 1],
      [b, a, -1],
    ] as const) {
      add(one, one, siemens);
      add(one, other, -siemens);
      if (one > 0) work.matrix[(one - 1) * (size + 1) + size]! -= sign * amps;
    }
  };
  for (let step = 0; step < STEPS_MAX; step += 1) {
    work.matrix.fill(0);
    for (const element of elements) stampAt(element, volts, stamp);
    if (eliminate(work) !== SOLVED) throw new Error('dense path: no solution');
    let change = 0;
    work.next.forEach((value, unknown) => {
      change = Math.max(change, Math.abs(value - volts[unknown + 1]!));
      volts[unknown + 1] = value;
    });
    if (change < SETTLED_VOLTS || !elements.some(({ kind }) => kind === 'diode')) return volts;
  }
  throw new Error('dense path: does not settle');
}

function stampAt(
  element: Element,
  volts: Float64Array,
  stamp: (a: number, b: number, siemens: number, amps: number) => void,
): void {
  switch (element.kind) {
    case 'resistor':
      stamp(element.a, element.b, 1 / element.ohms, 0);
      return;
    case 'emf':
      stamp(element.plus, element.minus, 1 / element.ohms, -element.volts / element.ohms);
      return;
    case 'current':
      stamp(element.from, element.to, 0, element.amps);
      return;
    case 'diode': {
      const { a, b, saturationAmps, emissionVolts, ohms, leakOhms } = element;
      const v = volts[a]! - volts[b]!;
      const scale = emissionVolts / ohms;
      const omega = wrightOmega(
        (v + saturationAmps * ohms) / emissionVolts + Math.log(saturationAmps / scale),
      );
      const siemens = omega / (1 + omega) / ohms + 1 / leakOhms;
      stamp(a, b, siemens, scale * omega - saturationAmps + v / leakOhms - siemens * v);
      return;
    }
    default:
      throw new Error(`dense path: no ${element.kind}`);
  }
}
