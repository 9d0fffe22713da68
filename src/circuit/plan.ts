/** A netlist in the making: nodes, and for each element how to make it from one draw of the toleranced values. */
import type { Toleranced } from '../quantity/quantity.ts';
import type { FaultEffect, Span } from './circuit.ts';
import type { Element } from './netlist.ts';

/** How the sensor stands at one instant of a turn or a travel. */
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

/** A value as every draw of its circuit looks it up. */
export interface PlanValue {
  /** As in `car-quantities.ts`. */
  readonly key: string;
  readonly of: Toleranced;
  /** Where it stands in a car. */
  readonly place: number;
  /** Whether it is what the circuit says of this key: a car has its value then, else only where in its range it lies. */
  readonly isOwn: boolean;
}

/** One sample: values within their tolerances, and what the sensor does at this instant. */
export interface Draw extends Instant {
  readonly value: (value: PlanValue) => number;
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

/** Between two nodes a value, `times` a number, warm where it is copper, and the size of a fault on top where there is one. */
export interface PlainOhms {
  readonly a: number;
  readonly b: number;
  readonly value: PlanValue;
  readonly times: number;
  readonly warmth: ((draw: Draw) => number) | null;
  readonly more: Span | null;
}

/** Most of a circuit: wires, contacts, and what else is one resistance. */
export function plainResistor(
  a: number,
  b: number,
  value: PlanValue,
  { times = 1, warmth = null, more = null }: Partial<Omit<PlainOhms, 'a' | 'b' | 'value'>> = {},
): MakeElement {
  const make = (draw: Draw): Element => ({
    kind: 'resistor',
    a,
    b,
    ohms:
      times * (warmth === null ? 1 : warmth(draw)) * draw.value(value) +
      (more === null ? 0 : draw.size(more)),
  });
  return Object.assign(make, { plain: { a, b, value, times, warmth, more } });
}

/** An element that is the same in every car. */
export function fixedElement(element: Element): MakeElement {
  return Object.assign(() => element, { fixed: true });
}

/** The middle of every tolerance; output on, coil at its peak, half-way travel. */
export const NOMINAL_DRAW: Draw = {
  value: ({ of }) => of.nominal,
  size: (span) => Math.sqrt(span.low * span.high),
  on: true,
  swing: 1,
  travel: 0.5,
  onSpot: false,
};

/** The netlist as it grows; elements are added to `makers` and find their nodes by name. */
export interface Plan {
  readonly nodes: string[];
  readonly makers: MakeElement[];
  /** Number of the node of a terminal, splice or other name; made when it is new. */
  readonly node: (name: string) => number;
  /** The same; undefined when there is none. */
  readonly find: (name: string) => number | undefined;
  /** The value of the circuit that is known by this key, or another one in its place. */
  readonly value: (key: string, of: Toleranced) => PlanValue;
}

/** The nodes of a plan with room for more; the plan stays as it is. */
export function onFrom(plan: Plan): Pick<Plan, 'nodes' | 'node'> {
  const nodes = [...plan.nodes];
  const own = new Map<string, number>();
  const find = (name: string) => plan.find(name) ?? own.get(name);
  const node = (name: string): number => {
    const found = find(name);
    if (found !== undefined) return found;
    own.set(name, nodes.length);
    return nodes.push(name) - 1;
  };
  return { nodes, node };
}

/** A part's own failure. */
export type PartEffect = Extract<FaultEffect, { kind: 'part' }>;

/** What a failure of a part puts between two nodes, as large as the failure is. */
export function faultResistor(a: number, b: number, own: PartEffect): MakeElement {
  const ohms = sizeOf(own);
  return (draw) => ({ kind: 'resistor', a, b, ohms: ohms(draw) });
}

/** The size of a part's failure in a draw. */
export function sizeOf({ size }: PartEffect): (draw: Draw) => number {
  return (draw) => draw.size(size);
}
