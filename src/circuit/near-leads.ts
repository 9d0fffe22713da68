/**
 * What can move anything at the leads of an instrument: all that is joined to one of them, one element after the other. A
 * way over battery negative does not count, which stands at 0 V whatever flows there. Of a large circuit little is left.
 */
import { GROUND, nodesOf } from './netlist.ts';
import { type MakeElement, NOMINAL_DRAW, type Plan } from './plan.ts';

/** The makers of a plan, by the part of the circuit that they belong to. */
export class NearLeads {
  private readonly makers: readonly MakeElement[];
  /** By node: one node of the part that it lies in. */
  private readonly root: Int32Array;
  /** By maker; ground where both ends are. */
  private readonly rootOf: Int32Array;

  constructor({ nodes, makers }: Plan) {
    this.makers = makers;
    this.root = new Int32Array(nodes.length);
    for (let node = 0; node < nodes.length; node += 1) this.root[node] = node;
    this.rootOf = new Int32Array(makers.length);
    makers.forEach((make, index) => {
      this.rootOf[index] = make.plain
        ? this.joined(make.plain.a, make.plain.b)
        : // Where an element sits is the same in every draw.
          nodesOf(make(NOMINAL_DRAW)).reduce((one, other) => this.joined(one, other), GROUND);
    });
    this.rootOf.forEach((node, index) => {
      this.rootOf[index] = this.find(node);
    });
  }

  /** Those that are joined to one of these nodes, in the order of the plan. */
  around(leads: readonly number[]): MakeElement[] {
    const parts = new Set(leads.filter((node) => node < this.root.length).map(this.find));
    parts.delete(GROUND);
    return this.makers.filter((_, index) => parts.has(this.rootOf[index]!));
  }

  /** Joins the parts of two nodes, and gives one of the nodes; ground joins nothing. */
  private joined(one: number, other: number): number {
    if (one === GROUND || other === GROUND) return one === GROUND ? other : one;
    this.root[this.find(other)] = this.find(one);
    return one;
  }

  private readonly find = (node: number): number => {
    let top = node;
    while (this.root[top] !== top) top = this.root[top]!;
    this.root[node] = top;
    return top;
  };
}
