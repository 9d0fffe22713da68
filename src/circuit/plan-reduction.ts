/**
 * Which nodes of a circuit can be worked out of it before anything is known but its wiring, in which order, and where each
 * number goes: made once for a circuit, so that `reduce.ts` only adds and multiplies.
 *
 * First chains: a node where just two resistors end makes them one, a node where one ends carries no current. Then stars:
 * always the node with the fewest neighbours, which become neighbours of each other (minimum degree, Tinney and Walker 1967).
 */
import { type Element, GROUND, type Netlist } from './netlist.ts';

/** Where a chain has no second resistor: the node stands at the voltage of the first one's far end. */
export const NO_SLOT = -1;
/** Ground has no place: it is not solved for. */
export const NO_PLACE = -1;

const NO_ROW = -1;

/**
 * A node with more neighbours than this is not worked out: all of them would become neighbours of each other. Our choice, well
 * above what a vehicle's splices have.
 */
const ARMS_MAX = 16;

/** Places are numbers of nodes in the reduction: those kept first, in their order, then those worked out. */
export interface ReductionPlan {
  readonly keptCount: number;
  /** Node of each place. */
  readonly nodeAt: readonly number[];
  /** Number of resistances: of elements first, then of chains. */
  readonly ohmsCount: number;
  /** Element of each resistance that is an element's own. */
  readonly resistors: readonly number[];
  /** Three a chain that joins two: the two resistances and the one they make. */
  readonly joins: readonly number[];
  /** Five a node in a chain: the node, the far ends, the resistances to them; the last is NO_SLOT at a dead end. */
  readonly links: readonly number[];
  /** Number of conductances between places: `keptCount` squared for pairs of kept ones (row below column), then others. */
  readonly pairCount: number;
  /** Two for each resistance between places: which, and the pair. */
  readonly between: readonly number[];
  /** Two for each resistance to ground: which, and the place. */
  readonly grounded: readonly number[];
  /** Four for each source: element, places of its ends, pair (NO_SLOT when an end is ground). */
  readonly sources: readonly number[];
  /** Three for each current source: element, places it takes from and gives to. */
  readonly currents: readonly number[];
  /** Places tied to ground, since nothing joins them to it. */
  readonly tied: readonly number[];
  /** For each star: its place, number of arms, then pair and place of each arm, then the pair of every two arms. */
  readonly stars: readonly number[];
  /** Where each star begins in `stars`. */
  readonly starts: readonly number[];
  /** Nodes that have too many neighbours to be worked out, and better are kept as well; with any, this plan is not whole. */
  readonly hubs: readonly number[];
}

/** A resistance between two nodes, while chains are looked for. */
interface ChainEdge {
  readonly a: number;
  readonly b: number;
  readonly slot: number;
  /** It has become a part of another one. */
  gone: boolean;
}

/** `kept` nodes stay, in that order; elements for which `late` holds are left out and must end at kept nodes. */
export function planReduction(
  { nodes, elements }: Netlist,
  kept: readonly number[],
  late: (index: number) => boolean,
  tiedNodes: readonly number[],
): ReductionPlan {
  const busy = new Uint8Array(nodes.length);
  busy[GROUND] = 1;
  for (const node of kept) busy[node] = 1;
  for (const node of tiedNodes) busy[node] = 1;
  const resistors: number[] = [];
  const edges: ChainEdge[] = [];
  const powered: number[] = [];
  elements.forEach((element, index) => {
    if (late(index)) return;
    if (element.kind === 'resistor') {
      edges.push({ a: element.a, b: element.b, slot: resistors.length, gone: false });
      resistors.push(index);
    } else if (element.kind === 'emf' || element.kind === 'current') {
      powered.push(index);
      const ends =
        element.kind === 'emf' ? [element.plus, element.minus] : [element.from, element.to];
      for (const node of ends) busy[node] = 1;
    }
  });
  const chains = findChains(nodes.length, edges, busy);
  const placing = placeNodes(nodes.length, kept, chains.edges, powered, elements);
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
    nodeAt: placing.nodeAt,
    ohmsCount: resistors.length + chains.joins.length / 3,
    resistors: resistors,
    joins: chains.joins,
    links: chains.links,
    pairCount: placing.pairCount(),
    between: between,
    grounded: grounded,
    sources: sources,
    currents: currents,
    // A node that nothing is left of needs no tie: it stands at 0 V.
    tied: tiedNodes.map(place).filter((at) => at !== NO_PLACE),
    stars: placing.stars,
    starts: placing.starts,
    hubs: placing.hubs,
  };
}

/** Joins resistors at every node that only they touch; `links` are in the order in which nodes went. */
function findChains(
  count: number,
  first: readonly ChainEdge[],
  busy: Uint8Array,
): { edges: readonly ChainEdge[]; joins: number[]; links: number[] } {
  const edges = [...first];
  const at: ChainEdge[][] = Array.from({ length: count }, () => []);
  const put = (edge: ChainEdge): void => {
    at[edge.a]!.push(edge);
    at[edge.b]!.push(edge);
  };
  for (const edge of edges) if (edge.a !== edge.b) put(edge);
  const joins: number[] = [];
  const links: number[] = [];
  let slot = first.length;
  const waiting = [...at.keys()];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (busy[node] === 1) continue;
    const here = at[node]!.filter(({ gone }) => !gone);
    const [one, two] = here;
    if (!one || here.length > 2) continue;
    const far = one.a === node ? one.b : one.a;
    const other = two ? (two.a === node ? two.b : two.a) : far;
    for (const edge of here) edge.gone = true;
    links.push(node, far, other, one.slot, two?.slot ?? NO_SLOT);
    if (two && far !== other) {
      joins.push(one.slot, two.slot, slot);
      const joined = { a: far, b: other, slot, gone: false };
      slot += 1;
      edges.push(joined);
      put(joined);
    } else waiting.push(far);
  }
  return { edges: edges.filter(({ gone }) => !gone), joins, links };
}

/** Where the nodes that chains have left stand, and the stars that work out those not kept. */
interface Placing {
  readonly nodeAt: number[];
  readonly placeOf: Int32Array;
  readonly pairOf: (a: number, b: number) => number;
  readonly pairCount: () => number;
  readonly stars: number[];
  readonly starts: number[];
  readonly hubs: number[];
}

function placeNodes(
  count: number,
  kept: readonly number[],
  edges: readonly ChainEdge[],
  powered: readonly number[],
  elements: readonly Element[],
): Placing {
  const meetings: number[] = [];
  for (const { a, b } of edges) meetings.push(a, b);
  for (const index of powered) {
    const element = elements[index]!;
    if (element.kind === 'emf') meetings.push(element.plus, element.minus);
    else if (element.kind === 'current')
      meetings.push(element.from, element.from, element.to, element.to);
  }
  const around = new Neighbours(count, meetings, kept);
  const nodeAt = [...kept];
  const placeOf = new Int32Array(count).fill(NO_PLACE);
  kept.forEach((node, index) => {
    placeOf[node] = index;
  });
  const starArms: number[][] = [];
  const hubs: number[] = [];
  for (let node = around.least(); node !== GROUND; node = around.least()) {
    // The fewest of all that are left: each of them has too many.
    if (around.degreeOf(node) > ARMS_MAX) hubs.push(...around.left());
    if (hubs.length > 0) break;
    placeOf[node] = nodeAt.length;
    nodeAt.push(node);
    starArms.push(around.takeOut(node));
  }
  const size = kept.length;
  const places = nodeAt.length;
  const known = new Map<number, number>();
  let pairs = size * size;
  const pairOf = (a: number, b: number): number => {
    const low = Math.min(a, b);
    const high = Math.max(a, b);
    if (high < size) return low * size + high;
    const found = known.get(low * places + high);
    if (found !== undefined) return found;
    known.set(low * places + high, pairs);
    pairs += 1;
    return pairs - 1;
  };
  const stars: number[] = [];
  const starts: number[] = [];
  starArms.forEach((nodesAround, index) => {
    const place = size + index;
    const arms = nodesAround.map((node) => placeOf[node]!);
    starts.push(stars.length);
    stars.push(place, arms.length);
    for (const arm of arms) stars.push(pairOf(place, arm), arm);
    for (let i = 0; i < arms.length; i += 1)
      for (let j = i + 1; j < arms.length; j += 1) stars.push(pairOf(arms[i]!, arms[j]!));
  });
  return { nodeAt, placeOf, pairOf, pairCount: () => pairs, stars, starts, hubs };
}

/**
 * Which nodes are next to which while one after the other is taken out; ground is nobody's neighbour. Only nodes that meet
 * another have a row and a column, in the order of their numbers: chains leave few of a large circuit.
 */
class Neighbours {
  /** Node of each row. */
  private readonly nodes: readonly number[];
  /** Row of each node. */
  private readonly rowOf: Int32Array;
  /** 1 for rows of nodes that are not kept and not taken out. */
  private readonly present: Uint8Array;
  private readonly next: Uint8Array;
  private readonly degrees: Int32Array;

  /** `meetings` are the nodes at the two ends of each thing that joins them, one pair behind the other. */
  constructor(count: number, meetings: readonly number[], kept: readonly number[]) {
    const met = new Uint8Array(count);
    for (const node of meetings) met[node] = 1;
    met[GROUND] = 0;
    const nodes: number[] = [];
    this.rowOf = new Int32Array(count).fill(NO_ROW);
    for (let node = 1; node < count; node += 1)
      if (met[node] === 1) this.rowOf[node] = nodes.push(node) - 1;
    this.nodes = nodes;
    this.present = new Uint8Array(nodes.length).fill(1);
    this.next = new Uint8Array(nodes.length * nodes.length);
    this.degrees = new Int32Array(nodes.length);
    for (let k = 0; k < meetings.length; k += 2) {
      const a = this.rowOf[meetings[k]!]!;
      const b = this.rowOf[meetings[k + 1]!]!;
      if (a !== b && a !== NO_ROW && b !== NO_ROW) this.join(a, b);
    }
    for (const node of kept) {
      const row = this.rowOf[node]!;
      if (row !== NO_ROW) this.present[row] = 0;
    }
  }

  /** The present node with the fewest neighbours; ground when none is left. */
  least(): number {
    let least = NO_ROW;
    for (let row = 0; row < this.nodes.length; row += 1)
      if (
        this.present[row] === 1 &&
        (least === NO_ROW || this.degrees[row]! < this.degrees[least]!)
      )
        least = row;
    return least === NO_ROW ? GROUND : this.nodes[least]!;
  }

  /** The present nodes. */
  left(): number[] {
    return this.nodes.filter((_, row) => this.present[row] === 1);
  }

  degreeOf(node: number): number {
    return this.degrees[this.rowOf[node]!]!;
  }

  /** Takes a node out, which makes neighbours of its neighbours; these are returned. */
  takeOut(node: number): number[] {
    const { nodes, next } = this;
    const size = nodes.length;
    const gone = this.rowOf[node]!;
    const arms: number[] = [];
    for (let row = 0; row < size; row += 1) if (next[gone * size + row] === 1) arms.push(row);
    this.present[gone] = 0;
    for (const arm of arms) {
      next[arm * size + gone] = 0;
      this.degrees[arm]! -= 1;
    }
    for (const a of arms) for (const b of arms) if (a < b) this.join(a, b);
    return arms.map((row) => nodes[row]!);
  }

  private join(a: number, b: number): void {
    const size = this.nodes.length;
    if (this.next[a * size + b] === 1) return;
    this.next[a * size + b] = 1;
    this.next[b * size + a] = 1;
    this.degrees[a]! += 1;
    this.degrees[b]! += 1;
  }
}
