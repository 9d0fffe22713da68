/** A netlist in the making: nodes, and for each element how to make it from one draw of the toleranced values. */
import type { Toleranced } from '../quantity/quantity.ts';
import type { FaultEffect, Span } from './circuit.ts';
import type { Element } from './netlist.ts';

/** The sensor at one instant. */
export interface Instant {
  /** The switched output is on. */
  readonly on: boolean;
  /** The coil's voltage as a share of its peak: -1, 0 or 1. */
  readonly swing: number;
  /** Travel of the wiper, 0 at rest and 1 fully moved. */
  readonly travel: number;
  /** The wiper stands on the worn spot, if there is one. */
  readonly onSpot: boolean;
}

/** One sample: values within their tolerances, and what the sensor does at this instant. */
export interface Draw extends Instant {
  /** The value of a toleranced quantity, by its key. */
  readonly value: (key: string, of: Toleranced) => number;
  /** The size of the fault. */
  readonly size: (of: Span) => number;
}

/** Makes an element for a draw; says of itself where that is simpler than a function. */
export interface MakeElement {
  (draw: Draw): Element;
  /** A resistor of one value of the car. */
  readonly plain?: PlainOhms;
  /** The same element in every draw. */
  readonly fixed?: boolean;
}

/** A value, `times` a number, warm where it is copper, and the size of a fault on top where there is one. */
export interface PlainOhms {
  readonly key: string;
  readonly of: Toleranced;
  readonly times: number;
  readonly warmth: ((draw: Draw) => number) | null;
  readonly more: Span | null;
}

/** Most of a circuit: wires, contacts, and what else is one resistance. */
export function plainResistor(
  a: number,
  b: number,
  key: string,
  of: Toleranced,
  { times = 1, warmth = null, more = null }: Partial<Omit<PlainOhms, 'key' | 'of'>> = {},
): MakeElement {
  const make = (draw: Draw): Element => ({
    kind: 'resistor',
    a,
    b,
    ohms:
      times * (warmth === null ? 1 : warmth(draw)) * draw.value(key, of) +
      (more === null ? 0 : draw.size(more)),
  });
  return Object.assign(make, { plain: { key, of, times, warmth, more } });
}

/** An element that is the same in every car. */
export function fixedElement(element: Element): MakeElement {
  return Object.assign(() => element, { fixed: true });
}

/** The middle of every tolerance; output on, coil at its peak, half-way travel. */
export const NOMINAL_DRAW: Draw = {
  value: (_key, of) => of.nominal,
  size: (span) => Math.sqrt(span.low * span.high),
  on: true,
  swing: 1,
  travel: 0.5,
  onSpot: false,
};

export interface Plan {
  readonly nodes: string[];
  readonly makers: MakeElement[];
  /** Number of the node of a terminal, splice or other name; made when it is new. */
  readonly node: (name: string) => number;
}

/** A part's own failure. */
export type PartEffect = Extract<FaultEffect, { kind: 'part' }>;
