/** A netlist in the making: nodes, and for each element how to make it from one draw of the toleranced values. */
import type { Toleranced } from '../quantity/quantity.ts';
import type { FaultEffect, Span } from './circuit.ts';
import type { Element } from './netlist.ts';

/** One sample: values within their tolerances, and what the sensor does at this instant. */
export interface Draw {
  /** The value of a toleranced quantity, by its key. */
  readonly value: (key: string, of: Toleranced) => number;
  /** The size of the fault. */
  readonly size: (of: Span) => number;
  /** The switched output is on. */
  readonly on: boolean;
  /** The coil's voltage as a share of its peak: -1, 0 or 1. */
  readonly swing: number;
  /** Travel of the wiper, 0 at rest and 1 fully moved. */
  readonly travel: number;
  /** The wiper stands on the worn spot, if there is one. */
  readonly onSpot: boolean;
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

export type MakeElement = (draw: Draw) => Element;

export interface Plan {
  readonly nodes: string[];
  readonly makers: MakeElement[];
  /** Number of the node of a terminal, splice or other name; made when it is new. */
  readonly node: (name: string) => number;
}

/** A part's own failure. */
export type PartEffect = Extract<FaultEffect, { kind: 'part' }>;
