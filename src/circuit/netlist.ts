/**
 * A circuit as the solver takes it: numbered nodes and two- and three-ended elements.
 *
 * Every element's current is a continuous function of node voltages, written once here in words, once in
 * `solve-dc.ts` and, for the second opinion, as ngspice sources in the tests.
 */

/** Node 0 is battery negative; all voltages are against it. */
export const GROUND = 0;

/** One element between numbered nodes, with the law of its current. */
export type Element =
  /** i = (va - vb) / ohms. `ohms` above 0. */
  | { readonly kind: 'resistor'; readonly a: number; readonly b: number; readonly ohms: number }
  /** Source of `volts` with `ohms` in series; 0 ohms is an ideal source, solved as a branch. */
  | {
      readonly kind: 'emf';
      readonly plus: number;
      readonly minus: number;
      readonly volts: number;
      readonly ohms: number;
    }
  /** `amps` flow inside the source from `from` to `to`. */
  | { readonly kind: 'current'; readonly from: number; readonly to: number; readonly amps: number }
  /** From `from` to `out`: max(0, min(limitAmps, (volts + v(from) - v(out)) / ohms)). It takes nothing back. */
  | {
      readonly kind: 'regulator';
      readonly from: number;
      readonly out: number;
      readonly volts: number;
      readonly ohms: number;
      readonly limitAmps: number;
    }
  /** From a to b: amps * min(1, v / minVolts) for v >= 0, v / reverseOhms below. */
  | {
      readonly kind: 'sink';
      readonly a: number;
      readonly b: number;
      readonly amps: number;
      readonly minVolts: number;
      readonly reverseOhms: number;
    }
  /** From out to ground: min(limitAmps, v * (off + (on - off) * ramp)); ramp runs 0..1 while the feed runs 0.9..1 of minVolts. */
  | {
      readonly kind: 'gated-output';
      readonly out: number;
      readonly ground: number;
      readonly feed: number;
      readonly onSiemens: number;
      readonly offSiemens: number;
      readonly minVolts: number;
      readonly limitAmps: number;
    }
  /** Junction i = saturationAmps * (exp(vj / emissionVolts) - 1) with `ohms` in series, and `leakOhms` (Infinity for none) across both. */
  | {
      readonly kind: 'diode';
      readonly a: number;
      readonly b: number;
      readonly saturationAmps: number;
      readonly emissionVolts: number;
      readonly ohms: number;
      readonly leakOhms: number;
    }
  /** Filament: i = v / (coldOhms + risePerRootVolt * sqrt(|v|)). */
  | {
      readonly kind: 'lamp';
      readonly a: number;
      readonly b: number;
      readonly coldOhms: number;
      readonly risePerRootVolt: number;
    };

/** The nodes and elements that are solved together. */
export interface Netlist {
  /** Names by number, for messages; entry 0 is battery negative. */
  readonly nodes: readonly string[];
  readonly elements: readonly Element[];
}

/** The nodes an element touches: the two that its current passes, then those it only looks at. */
export function nodesOf(element: Element): number[] {
  switch (element.kind) {
    case 'emf':
      return [element.plus, element.minus];
    case 'current':
      return [element.from, element.to];
    case 'regulator':
      return [element.from, element.out];
    case 'gated-output':
      return [element.out, element.ground, element.feed];
    case 'resistor':
    case 'sink':
    case 'diode':
    case 'lamp':
      return [element.a, element.b];
  }
}

/** The same element at other nodes. */
export function atNodes(element: Element, at: (node: number) => number): Element {
  switch (element.kind) {
    case 'emf':
      return { ...element, plus: at(element.plus), minus: at(element.minus) };
    case 'current':
      return { ...element, from: at(element.from), to: at(element.to) };
    case 'regulator':
      return { ...element, from: at(element.from), out: at(element.out) };
    case 'gated-output': {
      const { out, ground, feed } = element;
      return { ...element, out: at(out), ground: at(ground), feed: at(feed) };
    }
    // Written out, since nearly all elements are resistors.
    case 'resistor':
      return { kind: 'resistor', a: at(element.a), b: at(element.b), ohms: element.ohms };
    case 'sink':
    case 'diode':
    case 'lamp':
      return { ...element, a: at(element.a), b: at(element.b) };
  }
}
