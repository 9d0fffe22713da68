/**
 * How large a resistive fault is: 0.6 to 10 times the resistance of the loop it sits in.
 *
 * Loop resistance is open-circuit voltage over short-circuit current at the cut, in the healthy circuit with the
 * sensor's output on, so that a fault always matters and grows with the circuit. Where no current flows by itself,
 * one volt is put into the loop instead.
 */
import type { Circuit, FaultEffect, Span } from './circuit.ts';
import type { Element } from './netlist.ts';
import type { Cut, SizeAt } from './part-faults.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import type { Draw } from './plan.ts';
import { CONTACT, planNetlist } from './plan-netlist.ts';
import { createSolver } from './solve-dc.ts';
import type { Setup } from './test.ts';

const SMALLEST_OF_LOOP = 0.6;
const LARGEST_OF_LOOP = 10;
/** Less than this is a meter's own current, not the circuit's. */
const LEAST_AMPS = 1e-6;
/** Less than this across the cut is no voltage that drives the loop. */
const LEAST_VOLTS = 0.01;
/** A loop that the model knows no way around still gets a size. */
const LOOP_OHMS_MAX = 1e6;
const RUNNING: Setup = { ...PLAIN_SETUP, state: 'running', target: 'moving' };

/** The middle of every tolerance; output on, coil at its peak, half-way travel. */
export const NOMINAL_DRAW: Draw = {
  value: (_key, of) => of.nominal,
  size: (span) => Math.sqrt(span.low * span.high),
  on: true,
  swing: 1,
  travel: 0.5,
  onSpot: false,
};

/** Sizes for a circuit whose faults are not known yet. */
export function sizeFaults(circuit: Omit<Circuit, 'faults'>): SizeAt {
  const whole: Circuit = { ...circuit, faults: [] };
  const known = new Map<string, Span>();
  return (cut) => {
    const key = 'wire' in cut ? `wire.${cut.wire}` : `contact.${cut.contact}`;
    const found = known.get(key);
    if (found) return found;
    const loop = Math.min(LOOP_OHMS_MAX, loopOhms(whole, cut));
    const span = { low: rounded(SMALLEST_OF_LOOP * loop), high: rounded(LARGEST_OF_LOOP * loop) };
    known.set(key, span);
    return span;
  };
}

/** Resistance in ohms of the loop through a wire or a contact, the healthy circuit running. */
export function loopOhms(circuit: Circuit, cut: Cut): number {
  const { ends, healthyOhms, effect } = cutAt(circuit, cut);
  const across = (
    bridge: (a: number, b: number) => Element | null,
  ): { volts: number; amps: number } => {
    const plan = planNetlist(circuit, RUNNING, [effect]);
    const from = plan.node(ends[0]);
    const to = plan.node(ends[1]);
    const elements = plan.makers.map((make) => make(NOMINAL_DRAW));
    const added = bridge(from, to);
    const solver = createSolver({
      nodes: plan.nodes,
      elements: added ? [...elements, added] : elements,
    });
    if (solver.solve() !== null) return { volts: 0, amps: 0 };
    return {
      volts: solver.volts[from]! - solver.volts[to]!,
      amps: added ? solver.current(elements.length) : 0,
    };
  };
  const open = across(() => null);
  const closed = across((from, to) => ({ kind: 'resistor', a: from, b: to, ohms: healthyOhms }));
  if (Math.abs(closed.amps) > LEAST_AMPS && Math.abs(open.volts) > LEAST_VOLTS)
    return Math.abs(open.volts / closed.amps);
  const driven = across((from, to) => ({
    kind: 'emf',
    plus: from,
    minus: to,
    volts: 1,
    ohms: healthyOhms,
  }));
  const amps = Math.abs(driven.amps - closed.amps);
  return amps > LEAST_AMPS ? 1 / amps : LOOP_OHMS_MAX;
}

/** The two ends of a cut, what joins them in a healthy circuit, and the fault that it is. */
function cutAt(
  circuit: Circuit,
  cut: Cut,
): { ends: readonly [string, string]; healthyOhms: number; effect: FaultEffect } {
  if ('contact' in cut)
    return {
      ends: [cut.contact, `${cut.contact}.pin`],
      healthyOhms: CONTACT.nominal,
      effect: { kind: 'contact-open', terminal: cut.contact },
    };
  const wire = circuit.wires.find((one) => one.name === cut.wire);
  if (!wire) throw new Error(`size-faults: no wire "${cut.wire}"`);
  return {
    ends: [wire.from, wire.to],
    healthyOhms: wire.ohms,
    effect: { kind: 'wire-open', wire: wire.name },
  };
}

/** Three digits are enough for a size. */
function rounded(ohms: number): number {
  return Number(ohms.toPrecision(3));
}
