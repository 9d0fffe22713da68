/**
 * Search for the cheapest expected strategy: an AND/OR graph over what may still be there and how things stand at the
 * vehicle, each state once, improved from the root along the most promising test until the lower bound meets a
 * strategy's cost (AO*, as for test sequencing by Pattipati and Alexandridis, 1990, with upper bounds from a greedy
 * strategy beside the lower ones). Stopped early, both bounds hold.
 *
 * All costs in a node are weighted with the node's chance, so that they add up over outcomes.
 */
import { CaseMeasures, type CaseSet, type Moves } from './case-measures.ts';
import type { Cases } from './cases.ts';

/** A test made at a node, with the nodes that its outcomes lead to. */
export interface Edge {
  readonly test: number;
  readonly minutes: number;
  readonly outcomes: readonly number[];
  readonly children: readonly Node[];
}

/** One state of the search, its cost held between two bounds until it is solved. */
export interface Node extends CaseSet {
  readonly leaf: boolean;
  lower: number;
  upper: number;
  best: Edge | null;
  edges: readonly Edge[] | null;
  solved: boolean;
}

/** Less than this much information (bits, weighted) about the repair is none: rounding of sums of logarithms. */
const NO_INFORMATION = 1e-9;
/** Bounds that differ by less than this share are one value: rounding in sums of products. */
const SAME_COST = 1e-12;

/** The search; `root` holds the bounds and the best strategy found. */
export class StrategySearch {
  readonly root: Node;
  expansions = 0;
  readonly #cases: Cases;
  readonly #moves: Moves;
  readonly #measures: CaseMeasures;
  /** Only so many of the most telling tests of a state are followed; the lower bound then holds for these only. */
  readonly #width: number;
  readonly #nodes = new Map<string, Node>();

  constructor(cases: Cases, moves: Moves, start: number, width = Infinity) {
    this.#cases = cases;
    this.#moves = moves;
    this.#width = width;
    this.#measures = new CaseMeasures(cases, moves);
    this.root = this.#node(
      Uint16Array.from({ length: cases.count }, (_, index) => index),
      start,
    );
  }

  /** Weighted cost of always taking the most telling test per minute. */
  greedy(): number {
    return this.#bound(this.root);
  }

  /**
   * Improves the strategy found so far without proving anything: at each of its states every test is tried with the
   * present strategies behind it. No circuit and no random table has gained by a second round.
   */
  polish(): void {
    this.#bound(this.root);
    this.#polish(this.root);
  }

  #polish(node: Node): void {
    if (node.solved) return;
    node.edges ??= this.#expand(node);
    for (const edge of node.edges) for (const child of edge.children) this.#bound(child);
    backUp(node);
    for (const child of node.best!.children) this.#polish(child);
    backUp(node);
  }

  /** Improves the bounds until they meet (true) or so many states have been looked at from all sides. */
  run(expansionsMax: number): boolean {
    this.#bound(this.root);
    while (!this.root.solved && this.expansions < expansionsMax) this.#improve(this.root);
    return this.root.solved;
  }

  /** Tests to start with, and the weighted cost of the best strategy found that starts so. */
  choices(): { readonly test: number; readonly minutes: number }[] {
    const { root } = this;
    if (root.leaf) return [];
    root.edges ??= this.#expand(root);
    for (const edge of root.edges) for (const child of edge.children) this.#bound(child);
    backUp(root);
    return root.edges.map((edge) => ({ test: edge.test, minutes: costOf(root, edge, 'upper') }));
  }

  /** Cost of always taking the most telling test per minute, from a node on; kept in the node. */
  #bound(node: Node): number {
    if (node.upper < Infinity) return node.upper;
    const [test] = this.#measures.rankTests(node);
    const edge = this.#edge(node, test!.test);
    node.best = edge;
    node.upper = edge.children.reduce(
      (sum, child) => sum + this.#bound(child),
      edge.minutes * node.weight,
    );
    return node.upper;
  }

  #improve(node: Node): void {
    node.edges ??= this.#expand(node);
    const edge = cheapest(node);
    const open = edge.children.filter((child) => !child.solved);
    let next: Node | null = null;
    for (const child of open) {
      this.#bound(child);
      if (!next || child.upper - child.lower > next.upper - next.lower) next = child;
    }
    if (next) this.#improve(next);
    backUp(node);
  }

  #expand(node: Node): Edge[] {
    this.expansions += 1;
    return this.#measures
      .rankTests(node)
      .slice(0, this.#width)
      .map(({ test }) => this.#edge(node, test));
  }

  #edge(node: Node, test: number): Edge {
    const { count, outcomeOf } = this.#cases;
    const move = this.#moves(node.place, test);
    const parts = new Map<number, number[]>();
    for (const one of node.cases) {
      const outcome = outcomeOf[test * count + one]!;
      const part = parts.get(outcome);
      if (part) part.push(one);
      else parts.set(outcome, [one]);
    }
    return {
      test,
      minutes: move.minutes,
      outcomes: [...parts.keys()],
      children: [...parts.values()].map((part) => this.#node(Uint16Array.from(part), move.place)),
    };
  }

  #node(cases: Uint16Array, place: number): Node {
    const key = `${place}:${String.fromCharCode(...cases)}`;
    const known = this.#nodes.get(key);
    if (known) return known;
    let weight = 0;
    for (const one of cases) weight += this.#cases.weight[one]!;
    const information = this.#measures.information(cases);
    const leaf = information <= NO_INFORMATION * weight;
    const node: Node = {
      cases,
      place,
      weight,
      leaf,
      lower: 0,
      upper: leaf ? 0 : Infinity,
      best: null,
      edges: null,
      solved: leaf,
    };
    if (!leaf) node.lower = this.#measures.lowerBound(node, information);
    this.#nodes.set(key, node);
    return node;
  }
}

function cheapest(node: Node): Edge {
  let best: Edge | null = null;
  let least = Infinity;
  for (const edge of node.edges!) {
    const lower = costOf(node, edge, 'lower');
    if (lower < least - SAME_COST * Math.abs(lower)) {
      least = lower;
      best = edge;
    }
  }
  if (!best) throw new Error('strategy: a state that can be told apart has no test');
  return best;
}

/** Takes the children's news into a node: its bounds, its best test, and whether they meet. */
function backUp(node: Node): void {
  let lower = Infinity;
  for (const edge of node.edges!) {
    lower = Math.min(lower, costOf(node, edge, 'lower'));
    const upper = costOf(node, edge, 'upper');
    if (upper < node.upper) {
      node.upper = upper;
      node.best = edge;
    }
  }
  node.lower = Math.max(node.lower, lower);
  if (node.upper - node.lower <= SAME_COST * node.upper) {
    node.lower = node.upper;
    node.solved = true;
  }
}

/** Minutes times chance from a state on, if this test comes first. */
function costOf(node: Node, edge: Edge, bound: 'lower' | 'upper'): number {
  let cost = edge.minutes * node.weight;
  for (const child of edge.children) cost += child[bound];
  return cost;
}
