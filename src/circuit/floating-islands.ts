/** Which parts of a circuit hang in the air. */
import { GROUND, type Netlist, nodesOf } from './netlist.ts';

/** One node of each part of the circuit that no element joins to ground. */
export function floatingIslands(netlist: Netlist): number[] {
  const find = rootsOf(netlist);
  return [...netlist.nodes.keys()].filter((node) => node !== GROUND && find(node) === node);
}

/** Tells of each node one node of the part of the circuit that it lies in; ground of what is joined to ground. */
export function rootsOf(netlist: Netlist): (node: number) => number {
  const root = netlist.nodes.map((_, node) => node);
  const find = (node: number): number => {
    let top = node;
    while (root[top] !== top) top = root[top]!;
    root[node] = top;
    return top;
  };
  for (const element of netlist.elements) {
    if (element.kind === 'current') continue;
    const [a, b] = element.kind === 'resistor' ? [element.a, element.b] : nodesOf(element);
    const first = find(a!);
    const second = find(b!);
    // The smaller number is kept, so that ground stays the root of its own part.
    if (first < second) root[second] = first;
    else root[first] = second;
  }
  return find;
}
