/** Which unknown comes when in the elimination, and which parts of a circuit hang in the air. */
import { GROUND, type Netlist, nodesOf } from './netlist.ts';

/**
 * The unknown of each node (-1 for ground): always the node with the fewest neighbours first, neighbours of an
 * eliminated node becoming neighbours of each other (minimum degree, Tinney and Walker 1967).
 */
export function orderNodes(netlist: Netlist): Int32Array {
  const neighbours = netlist.nodes.map(() => new Set<number>());
  for (const element of netlist.elements) {
    const nodes = nodesOf(element).filter((node) => node !== GROUND);
    for (const a of nodes) for (const b of nodes) if (a !== b) neighbours[a]!.add(b);
  }
  const unknownOf = new Int32Array(netlist.nodes.length).fill(-1);
  const left = new Set(netlist.nodes.keys());
  left.delete(GROUND);
  for (let unknown = 0; left.size > 0; unknown += 1) {
    let least = -1;
    for (const node of left)
      if (least < 0 || neighbours[node]!.size < neighbours[least]!.size) least = node;
    unknownOf[least] = unknown;
    left.delete(least);
    const around = [...neighbours[least]!];
    for (const a of around) {
      neighbours[a]!.delete(least);
      for (const b of around) if (a !== b) neighbours[a]!.add(b);
    }
  }
  return unknownOf;
}

/** One node of each part of the circuit that no element joins to ground. */
export function floatingIslands(netlist: Netlist): number[] {
  const root = netlist.nodes.map((_, node) => node);
  const find = (node: number): number => {
    let top = node;
    while (root[top] !== top) top = root[top]!;
    root[node] = top;
    return top;
  };
  for (const element of netlist.elements) {
    if (element.kind === 'current') continue;
    const [a, b] = nodesOf(element);
    const first = find(a!);
    const second = find(b!);
    // The smaller number is kept, so that ground stays the root of its own part.
    if (first < second) root[second] = first;
    else root[first] = second;
  }
  return [...netlist.nodes.keys()].filter((node) => node !== GROUND && find(node) === node);
}
