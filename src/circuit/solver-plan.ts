/** How a circuit is taken apart for the solver: what is reduced once, and what is left for each step. */

import { floatingIslands } from './floating-islands.ts';
import { type Element, GROUND, type Netlist, nodesOf } from './netlist.ts';
import { planReduction, type ReductionPlan } from './plan-reduction.ts';

/** Places for the ends of each element: the most have three. */
export const ENDS = 3;

/** What is wanted of a solution and what will change, so that the rest is reduced once. */
export interface SolverOptions {
  /** Only the voltages of these nodes are wanted, and of those that elements with curves or corners touch; without, all. */
  readonly watched?: readonly number[];
  /** Linear elements, by number, that change between `solve` and `solveAgain`. */
  readonly varying?: readonly number[];
}

/** A netlist sorted for the solver: which nodes are kept, and where each element stands in the equations. */
export interface SolverPlan extends Wiring {
  readonly netlist: Netlist;
}

/** What of a plan hangs on the kinds of the elements and on where they end, and on no value. */
interface Wiring {
  readonly reduction: ReductionPlan;
  /** The nodes that are solved for in each step. */
  readonly kept: readonly number[];
  /** Kept nodes and sources without resistance. */
  readonly size: number;
  /** Node of each end of each element; ground where there is no such end. */
  readonly nodes: Int32Array;
  /** Unknown of each end, -1 for ground and for what is reduced; of a source without resistance the third is its current. */
  readonly ends: Int32Array;
  /** Elements by what they are to the solver. */
  readonly varying: readonly number[];
  readonly ideal: readonly number[];
  readonly curved: readonly number[];
  readonly corners: readonly number[];
  /** Diodes and lamps. */
  readonly lights: readonly number[];
  /** Whether all of them sit between the last two kept nodes, or the last one and ground. */
  readonly lightsTogether: boolean;
  /** Whether only the kept nodes are wanted. */
  readonly keptOnly: boolean;
}

/** Wirings that are kept: many faults, vehicle states and meters leave a circuit wired the same. */
const WIRINGS_KEPT = 1024;
/** Of more elements none is kept. */
const KEPT_ELEMENTS_MAX = 256;
const wirings = new Map<string, Wiring>();

/** Takes a netlist apart. */
export function planSolver(netlist: Netlist, options: SolverOptions): SolverPlan {
  if (netlist.elements.length > KEPT_ELEMENTS_MAX)
    return { netlist, ...wiringOf(netlist, options) };
  const key = wiringKey(netlist, options);
  let wiring = wirings.get(key);
  if (!wiring) {
    wiring = wiringOf(netlist, options);
    if (wirings.size >= WIRINGS_KEPT) wirings.delete(wirings.keys().next().value!);
    wirings.set(key, wiring);
  }
  return { netlist, ...wiring };
}

/** All that `wiringOf` looks at, as numbers in a word. */
function wiringKey({ nodes, elements }: Netlist, { watched, varying = [] }: SolverOptions): string {
  const numbers = [nodes.length, varying.length, ...varying];
  if (watched) numbers.push(watched.length, ...watched);
  for (const element of elements) {
    const isIdeal = element.kind === 'emf' && element.ohms === 0;
    numbers.push(KEY_OF_KIND[isIdeal ? 'ideal' : element.kind], ...nodesOf(element));
  }
  return numbers.join();
}

/** Below 0, as no number of a node is. */
const KEY_OF_KIND: Readonly<Record<Element['kind'] | 'ideal', number>> = {
  resistor: -1,
  emf: -2,
  ideal: -3,
  current: -4,
  regulator: -5,
  sink: -6,
  'gated-output': -7,
  diode: -8,
  lamp: -9,
};

function wiringOf(netlist: Netlist, { watched, varying = [] }: SolverOptions): Wiring {
  const { elements } = netlist;
  const lights: number[] = [];
  const corners: number[] = [];
  const ideal: number[] = [];
  elements.forEach((element, index) => {
    if (element.kind === 'diode' || element.kind === 'lamp') lights.push(index);
    else if (element.kind === 'emf' && element.ohms === 0) ideal.push(index);
    else if (!isLinear(element)) corners.push(index);
  });
  const late = new Set([...corners, ...lights, ...ideal, ...varying]);
  const lit = new Set(lights.flatMap((index) => nodesOf(elements[index]!)));
  const lightsTogether =
    lights.length > 0 &&
    lit.size === 2 &&
    lights.every((index) => new Set(nodesOf(elements[index]!)).size === 2);
  const touched = [...late].flatMap((index) => nodesOf(elements[index]!));
  const wanted = [...new Set([...touched, ...(watched ?? [])])]
    .filter((node) => node !== GROUND)
    .sort((a, b) => Number(lit.has(a)) - Number(lit.has(b)) || a - b);
  const islands = floatingIslands(netlist);
  const isLate = (index: number) => late.has(index);
  const first = planReduction(netlist, wanted, isLate, islands);
  // Behind what hangs on them and before the lights, which come last.
  const kept =
    first.hubs.length === 0
      ? wanted
      : [
          ...wanted.filter((node) => !lit.has(node)),
          ...first.hubs,
          ...wanted.filter((node) => lit.has(node)),
        ];
  const reduction = kept === wanted ? first : planReduction(netlist, kept, isLate, islands);
  const unknownOf = new Map(kept.map((node, unknown) => [node, unknown]));
  const nodes = new Int32Array(elements.length * ENDS);
  const ends = new Int32Array(elements.length * ENDS).fill(-1);
  elements.forEach((element, index) => {
    nodesOf(element).forEach((node, end) => {
      nodes[index * ENDS + end] = node;
      if (late.has(index)) ends[index * ENDS + end] = unknownOf.get(node) ?? -1;
    });
  });
  ideal.forEach((index, count) => {
    ends[index * ENDS + 2] = kept.length + count;
  });
  return {
    reduction,
    kept: kept,
    size: kept.length + ideal.length,
    nodes,
    ends,
    varying: varying.filter((index) => !ideal.includes(index)),
    ideal: ideal,
    curved: [...corners, ...lights].sort((a, b) => a - b),
    corners: corners,
    lights: lights,
    lightsTogether,
    keptOnly: watched !== undefined,
  };
}

/** Elements whose current is a straight line over their voltage, wherever it stands. */
export function isLinear({ kind }: Element): boolean {
  return kind === 'resistor' || kind === 'emf' || kind === 'current';
}
