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
  private readonly root: number[];
  /** By maker; ground where both ends are. */
  private readonly rootOf: readonly number[];

  constructor({ nodes, makers }: Plan) {
    this.makers = makers;
    this.root = nodes.map((_, node) => node);
    // Where an element sits is the same in every draw.
    const ends = makers.map((make) =>
      nodesOf(make(NOMINAL_DRAW)).filter((node) => node !== GROUND),
    );
    for (const [first, ...others] of ends)
      for (const other of others) this.root[this.find(other)] = this.find(first!);
    this.rootOf = ends.map(([first]) => (first === undefined ? GROUND : this.find(first)));
  }

  /** Those that are joined to one of these nodes, in the order of the plan. */
  around(leads: readonly number[]): MakeElement[] {
    const parts = new Set(leads.filter((node) => node < this.root.length).map(this.find));
    parts.delete(GROUND);
    return this.makers.filter((_, index) => parts.has(this.rootOf[index]!));
  }

  private readonly find = (node: number): number => {
    let top = node;
    while (this.root[top] !== top) top = this.root[top]!;
    this.root[node] = top;
    return top;
  };
}
