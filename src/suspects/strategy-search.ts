/**
 * Search for the cheapest expected strategy: an AND/OR graph over what may still be there and how things stand at the
 * vehicle, each state once, improved from the root along the most promising test until the lower bound meets a
 * strategy's cost (AO*, as for test sequencing by Pattipati and Alexandridis, 1990, with upper bounds from a greedy
 * strategy beside the lower ones). Stopped early, both bounds hold.
 *
 * All costs in a node are weighted with the node's chance, so that they add up over outcomes.
 */
import type { Cases } from './cases.ts';
import { huffmanLength } from './huffman.ts';

export interface Edge {
  readonly test: number;
  readonly minutes: number;
  readonly outcomes: readonly number[];
  readonly children: readonly Node[];
}

export interface Node {
  readonly cases: Uint16Array;
  readonly place: number;
  readonly weight: number;
  readonly leaf: boolean;
  lower: number;
  upper: number;
  best: Edge | null;
  edges: readonly Edge[] | null;
  solved: boolean;
}

/** Where a test leads from an arrangement, and its minutes from there. Places are the caller's numbers. */
export type Moves = (place: number, test: number) => { readonly place: number; readonly minutes: number };

/** Less than this much information (bits, weighted) about the repair is none: rounding of sums of logarithms. */
const NO_INFORMATION = 1e-9;
/** Outcomes seen at a state are bits of a 32-bit number. */
const OUTCOMES_MAX = 31;
/** Bounds that differ by less than this share are one value: rounding in sums of products. */
const SAME_COST = 1e-12;
/** Telling cases apart without telling repairs apart counts this little, but breaks ties. */
const CASE_GAIN_SHARE = 1e-6;

/** The search; `root` holds the bounds and the best strategy found. */
export class StrategySearch {
  readonly root: Node;
  expansions = 0;
  readonly #cases: Cases;
  readonly #moves: Moves;
  /** Only so many of the most telling tests of a state are followed; the lower bound then holds for these only. */
  readonly #width: number;
  readonly #nodes = new Map<string, Node>();
  /** Sums while a state is looked at; zero in between. */
  readonly #sums: Float64Array;
  readonly #byOutcome = new Float64Array(OUTCOMES_MAX);
  readonly #byRepair: Float64Array;
  readonly #bySignature: Float64Array;

  constructor(cases: Cases, moves: Moves, start: number, width = Infinity) {
    this.#cases = cases;
    this.#moves = moves;
    this.#width = width;
    this.#sums = new Float64Array(OUTCOMES_MAX * Math.max(1, cases.repairs.length));
    this.#byRepair = new Float64Array(Math.max(1, cases.repairs.length));
    this.#bySignature = new Float64Array(cases.count);
    if (cases.outcomeOf.some((outcome) => outcome >= OUTCOMES_MAX))
      throw new Error(`strategy: a test has more than ${OUTCOMES_MAX} outcomes`);
    this.root = this.#node(Uint16Array.from({ length: cases.count }, (_, index) => index), start);
  }

  /** Weighted cost of always taking the most telling test per minute. */
  greedy(): number {
    return this.#bound(this.root);
  }

  /** Improves the bounds until they meet (true) or so many states have been looked at from all sides. */
  run(expansionsMax: number): boolean {
    this.#bound(this.root);
    while (!this.root.solved && this.expansions < expansionsMax) this.#improve(this.root);
    return this.root.solved;
  }

  /** Tests to start with, and the weighted cost of the best strategy found that starts so; cheapest first. */
  choices(): { readonly test: number; readonly minutes: number }[] {
    const { root } = this;
    if (root.leaf) return [];
    root.edges ??= this.#expand(root);
    for (const edge of root.edges) for (const child of edge.children) this.#bound(child);
    backUp(root);
    return root.edges
      .map((edge) => ({ test: edge.test, minutes: costOf(root, edge, 'upper') }))
      .sort((a, b) => a.minutes - b.minutes || a.test - b.test);
  }

  /** Cost of always taking the most telling test per minute, from a node on; kept in the node. */
  #bound(node: Node): number {
    if (node.upper < Infinity) return node.upper;
    const [test] = this.rankTests(node);
    const edge = this.#edge(node, test!.test);
    node.best = edge;
    node.upper = edge.children.reduce(
      (sum, child) => sum + this.#bound(child),
      edge.minutes * node.weight,
    );
    return node.upper;
  }

  #improve(node: Node): void {
    if (node.solved) return;
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
    return this.rankTests(node)
      .slice(0, this.#width)
      .map(({ test }) => this.#edge(node, test));
  }

  #edge(node: Node, test: number): Edge {
    const known = node.edges?.find((edge) => edge.test === test) ?? (node.best?.test === test ? node.best : null);
    if (known) return known;
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
    const information = this.#information(cases);
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
    if (!leaf) node.lower = this.#lowerBound(node, information);
    this.#nodes.set(key, node);
    return node;
  }

  /** What all tests together could still say about the repair, in bits times weight. */
  #information(cases: Uint16Array): number {
    const { repairOf, signatureOf, weight } = this.#cases;
    const first = repairOf[cases[0]!]!;
    if (cases.every((one) => repairOf[one] === first)) return 0;
    const repairs = this.#byRepair;
    const signatures = this.#bySignature;
    let total = 0;
    let logs = 0;
    for (const one of cases) {
      total += weight[one]!;
      repairs[repairOf[one]!]! += weight[one]!;
      signatures[signatureOf[one]!]! += weight[one]!;
      // Each case is the only one of its repair and signature.
      logs += xlog2(weight[one]!);
    }
    for (const one of cases) {
      logs -= xlog2(repairs[repairOf[one]!]!) + xlog2(signatures[signatureOf[one]!]!);
      repairs[repairOf[one]!] = 0;
      signatures[signatureOf[one]!] = 0;
    }
    return xlog2(total) + logs;
  }

  /**
   * Readings: the greater of two bounds, the tests of the best code for the repairs (those that no test separates are
   * one) times the cheapest useful test, and the information needed over the most that a minute can bring. To this
   * comes the least that it takes to get from here to any useful test.
   */
  #lowerBound(node: Node, information: number): number {
    const { count, outcomeOf, tests } = this.#cases;
    let cheapestMinutes = Infinity;
    let cheapestMove = Infinity;
    let ways = 2;
    let bitsPerMinute = 0;
    for (let test = 0; test < tests.length; test += 1) {
      const first = test * count;
      let seen = 0;
      for (let at = 0; at < node.cases.length; at += 1) seen |= 1 << outcomeOf[first + node.cases[at]!]!;
      const size = bitCount(seen);
      if (size < 2) continue;
      const { minutes } = this.#moves(node.place, test);
      const reading = this.#readingMinutes(test);
      cheapestMinutes = Math.min(cheapestMinutes, reading);
      cheapestMove = Math.min(cheapestMove, minutes - reading);
      ways = Math.max(ways, size);
      bitsPerMinute = Math.max(bitsPerMinute, Math.log2(size) / reading);
    }
    const lengths = huffmanLength(this.#repairWeights(node.cases), ways);
    const readings = Math.max(cheapestMinutes * lengths, information / bitsPerMinute);
    return cheapestMove * node.weight + readings;
  }

  readonly #readings = new Map<number, number>();
  #readingMinutes(test: number): number {
    let minutes = this.#readings.get(test);
    if (minutes === undefined) {
      minutes = this.#moves(-1, test).minutes;
      this.#readings.set(test, minutes);
    }
    return minutes;
  }

  /** Weights of the repairs in a state, those joined by a common signature being one. */
  #repairWeights(cases: Uint16Array): number[] {
    const { repairOf, signatureOf, weight } = this.#cases;
    const parent = new Map<number, number>();
    const find = (repair: number): number => {
      let at = repair;
      for (let up = parent.get(at); up !== undefined && up !== at; up = parent.get(at)) at = up;
      return at;
    };
    const owner = new Map<number, number>();
    for (const one of cases) {
      const repair = find(repairOf[one]!);
      const other = owner.get(signatureOf[one]!);
      if (other === undefined) owner.set(signatureOf[one]!, repair);
      else if (find(other) !== repair) parent.set(repair, find(other));
    }
    const sums = new Map<number, number>();
    for (const one of cases) add(sums, find(repairOf[one]!), weight[one]!);
    return [...sums.values()];
  }

  #repairLogs(cases: Uint16Array): number {
    const { repairOf, weight } = this.#cases;
    const sums = this.#byRepair;
    let logs = 0;
    for (const one of cases) sums[repairOf[one]!]! += weight[one]!;
    for (const one of cases) {
      logs += xlog2(sums[repairOf[one]!]!);
      sums[repairOf[one]!] = 0;
    }
    return logs;
  }

  /** Tests that split a state, by information about the repair per minute, best first. Bits are not weighted. */
  rankTests(node: Node): { test: number; bits: number; minutes: number; perMinute: number }[] {
    const { count, outcomeOf, repairOf, repairs, tests, weight } = this.#cases;
    const ranked: { test: number; bits: number; minutes: number; perMinute: number; score: number }[] = [];
    const { cases } = node;
    const joint = this.#sums;
    const byOutcome = this.#byOutcome;
    const whole = xlog2(node.weight);
    const before = this.#repairLogs(cases);
    for (let test = 0; test < tests.length; test += 1) {
      const first = test * count;
      let seen = 0;
      for (let at = 0; at < cases.length; at += 1) {
        const one = cases[at]!;
        const outcome = outcomeOf[first + one]!;
        seen |= 1 << outcome;
        byOutcome[outcome]! += weight[one]!;
        joint[outcome * repairs.length + repairOf[one]!]! += weight[one]!;
      }
      let logs = 0;
      let outcomes = 0;
      for (let at = 0; at < cases.length; at += 1) {
        const one = cases[at]!;
        const outcome = outcomeOf[first + one]!;
        const cell = outcome * repairs.length + repairOf[one]!;
        logs += xlog2(joint[cell]!);
        outcomes += xlog2(byOutcome[outcome]!);
        joint[cell] = 0;
        byOutcome[outcome] = 0;
      }
      if (bitCount(seen) < 2) continue;
      const bits = Math.max(0, (whole - before - outcomes + logs) / node.weight);
      const { minutes } = this.#moves(node.place, test);
      const caseBits = (whole - outcomes) / node.weight;
      const score = (bits + CASE_GAIN_SHARE * caseBits) / minutes;
      ranked.push({ test, bits, minutes, perMinute: bits / minutes, score });
    }
    return ranked.sort((a, b) => b.score - a.score || a.test - b.test);
  }
}

function bitCount(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count += 1;
  return count;
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

export function costOf(node: Node, edge: Edge, bound: 'lower' | 'upper'): number {
  let cost = edge.minutes * node.weight;
  for (const child of edge.children) cost += child[bound];
  return cost;
}

function add(sums: Map<number, number>, key: number, mass: number): void {
  sums.set(key, (sums.get(key) ?? 0) + mass);
}

function xlog2(x: number): number {
  return x > 0 ? x * Math.log2(x) : 0;
}
