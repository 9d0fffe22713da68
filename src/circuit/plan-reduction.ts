/**
 * Which nodes of a circuit can be worked out of it before anything is known but its wiring, in which order, and where each
 * number goes: made once for a circuit, so that `reduce.ts` only adds and multiplies.
 *
 * First chains: a node where just two resistors end makes them one, a node where one ends carries no current. Then stars:
 * always the node with the fewest neighbours, which become neighbours of each other (minimum degree, Tinney and Walker 1967).
 */
import { GROUND, type Netlist } from './netlist.ts';

/** Where a chain has no second resistor: the node stands at the voltage of the first one's far end. */
export const NO_SLOT = -1;
/** Ground has no place: it is not solved for. */
export const NO_PLACE = -1;

/** Places are numbers of nodes in the reduction: those kept first, in their order, then those worked out. */
export interface ReductionPlan {
  readonly keptCount: number;
  /** Node of each place. */
  readonly nodeAt: Int32Array;
  /** Number of resistances: of elements first, then of chains. */
  readonly ohmsCount: number;
  /** Element of each resistance that is an element's own. */
  readonly resistors: Int32Array;
  /** Three a chain that joins two: the two resistances and the one they make. */
  readonly joins: Int32Array;
  /** Five a node in a chain: the node, the far ends, the resistances to them; the last is NO_SLOT at a dead end. */
  readonly links: Int32Array;
  /** Number of conductances between places: `keptCount` squared for pairs of kept ones (row below column), then others. */
  readonly pairCount: number;
  /** Two for each resistance between places: which, and the pair. */
  readonly between: Int32Array;
  /** Two for each resistance to ground: which, and the place. */
  readonly grounded: Int32Array;
  /** Four for each source: element, places of its ends, pair (NO_SLOT when an end is ground). */
  readonly sources: Int32Array;
  /** Three for each current source: element, places it takes from and gives to. */
  readonly currents: Int32Array;
  /** Places tied to ground, since nothing joins them to it. */
  readonly tied: Int32Array;
  /** For each star: its place, number of arms, then pair and place of each arm, then the pair of every two arms. */
  readonly stars: Int32Array;
  /** Where each star begins in `stars`. */
  readonly starts: Int32Array;
}

/** A resistance between two nodes, while chains are looked for. */
interface Edge {
  readonly a: number;
  readonly b: number;
  readonly slot: number;
}

/** `kept` nodes stay, in that order; elements for which `late` holds are left out and must end at kept nodes. */
export function planReduction(
  { nodes, elements }: Netlist,
  kept: readonly number[],
  late: (index: number) => boolean,
  tiedNodes: readonly number[],
): ReductionPlan {
  const busy = new Set([GROUND, ...kept, ...tiedNodes]);
  const resistors: number[] = [];
  const edges: Edge[] = [];
  const powered: number[] = [];
  elements.forEach((element, index) => {
    if (late(index)) return;
    if (element.kind === 'resistor') {
      edges.push({ a: element.a, b: element.b, slot: resistors.length });
      resistors.push(index);
    } else if (element.kind === 'emf' || element.kind === 'current') {
      powered.push(index);
      const ends =
        element.kind === 'emf' ? [element.plus, element.minus] : [element.from, element.to];
      for (const node of ends) busy.add(node);
    }
  });
  const chains = findChains(nodes.length, edges, busy, resistors.length);
  const placing = placeNodes(nodes.length, kept, chains.edges, powered, { nodes, elements });
  const { placeOf, pairOf } = placing;
  const place = (node: number): number => (node === GROUND ? NO_PLACE : placeOf[node]!);
  const between: number[] = [];
  const grounded: number[] = [];
  for (const { a, b, slot } of chains.edges) {
    if (a === b) continue;
    if (a === GROUND || b === GROUND) grounded.push(slot, place(a === GROUND ? b : a));
    else between.push(slot, pairOf(place(a), place(b)));
  }
  const sources: number[] = [];
  const currents: number[] = [];
  for (const index of powered) {
    const element = elements[index]!;
    if (element.kind === 'current') currents.push(index, place(element.from), place(element.to));
    else if (element.kind === 'emf' && element.plus !== element.minus) {
      const ends = [place(element.plus), place(element.minus)] as const;
      sources.push(index, ...ends, ends.includes(NO_PLACE) ? NO_SLOT : pairOf(...ends));
    }
  }
  return {
    keptCount: kept.length,
    nodeAt: Int32Array.from(placing.nodeAt),
    ohmsCount: resistors.length + chains.joins.length / 3,
    resistors: Int32Array.from(resistors),
    joins: Int32Array.from(chains.joins),
    links: Int32Array.from(chains.links),
    pairCount: placing.pairCount(),
    between: Int32Array.from(between),
    grounded: Int32Array.from(grounded),
    sources: Int32Array.from(sources),
    currents: Int32Array.from(currents),
    // A node that nothing is left of needs no tie: it stands at 0 V.
    tied: Int32Array.from(tiedNodes.map(place).filter((at) => at !== NO_PLACE)),
    stars: Int32Array.from(placing.stars),
    starts: Int32Array.from(placing.starts),
  };
}

/** Joins resistors at every node that only they touch; `links` are in the order in which nodes went. */
function findChains(
  count: number,
  edges: readonly Edge[],
  busy: ReadonlySet<number>,
  firstSlot: number,
): { edges: readonly Edge[]; joins: number[]; links: number[] } {
  const at = Array.from({ length: count }, () => new Set<Edge>());
  const put = (edge: Edge): void => {
    at[edge.a]!.add(edge);
    at[edge.b]!.add(edge);
  };
  for (const edge of edges) if (edge.a !== edge.b) put(edge);
  const joins: number[] = [];
  const links: number[] = [];
  const waiting = [...at.keys()];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    const here = [...at[node]!];
    if (busy.has(node) || here.length === 0 || here.length > 2) continue;
    const far = here.map(({ a, b }) => (a === node ? b : a));
    for (const edge of here) {
      at[edge.a]!.delete(edge);
      at[edge.b]!.delete(edge);
    }
    const [first, second] = here;
    links.push(node, far[0]!, far[1] ?? far[0]!, first!.slot, second?.slot ?? NO_SLOT);
    waiting.push(...far);
    if (!second || far[0] === far[1]) continue;
    const slot = firstSlot + joins.length / 3;
    joins.push(first!.slot, second.slot, slot);
    put({ a: far[0]!, b: far[1]!, slot });
  }
  return { edges: [...new Set(at.flatMap((set) => [...set]))], joins, links };
}

/** Places of the nodes that chains have left, and the stars that work out those not kept. */
function placeNodes(
  count: number,
  kept: readonly number[],
  edges: readonly Edge[],
  powered: readonly number[],
  { elements }: Netlist,
): {
  nodeAt: number[];
  placeOf: Int32Array;
  pairOf: (a: number, b: number) => number;
  pairCount: () => number;
  stars: number[];
  starts: number[];
} {
  const neighbours = Array.from({ length: count }, () => new Set<number>());
  const present = new Set<number>();
  const meet = (a: number, b: number): void => {
    for (const [one, other] of [
      [a, b],
      [b, a],
    ] as const) {
      if (one === GROUND) continue;
      present.add(one);
      if (other !== GROUND && other !== one) neighbours[one]!.add(other);
    }
  };
  for (const { a, b } of edges) meet(a, b);
  for (const index of powered) {
    const element = elements[index]!;
    if (element.kind === 'emf') meet(element.plus, element.minus);
    else if (element.kind === 'current')
      for (const node of [element.from, element.to]) meet(node, node);
  }
  for (const node of kept) present.delete(node);
  const nodeAt = [...kept];
  const placeOf = new Int32Array(count).fill(NO_PLACE);
  kept.forEach((node, index) => {
    placeOf[node] = index;
  });
  const order: { node: number; arms: number[] }[] = [];
  const left = [...present].sort((a, b) => a - b);
  while (left.length > 0) {
    let least = 0;
    left.forEach((node, index) => {
      if (neighbours[node]!.size < neighbours[left[least]!]!.size) least = index;
    });
    const [node] = left.splice(least, 1);
    placeOf[node!] = nodeAt.length;
    nodeAt.push(node!);
    const arms = [...neighbours[node!]!].sort((a, b) => a - b);
    order.push({ node: node!, arms });
    for (const a of arms) {
      neighbours[a]!.delete(node!);
      for (const b of arms) if (a !== b) neighbours[a]!.add(b);
    }
  }
  const size = kept.length;
  const others = new Map<number, number>();
  const pairOf = (a: number, b: number): number => {
    const low = Math.min(a, b);
    const high = Math.max(a, b);
    if (high < size) return low * size + high;
    const key = low * nodeAt.length + high;
    const known = others.get(key);
    if (known !== undefined) return known;
    others.set(key, size * size + others.size);
    return size * size + others.size - 1;
  };
  const stars: number[] = [];
  const starts: number[] = [];
  for (const { node, arms } of order) {
    const place = placeOf[node]!;
    const places = arms.map((arm) => placeOf[arm]!);
    starts.push(stars.length);
    stars.push(place, arms.length);
    for (const arm of places) stars.push(pairOf(place, arm), arm);
    places.forEach((a, index) => {
      for (const b of places.slice(index + 1)) stars.push(pairOf(a, b));
    });
  }
  return { nodeAt, placeOf, pairOf, pairCount: () => size * size + others.size, stars, starts };
}
