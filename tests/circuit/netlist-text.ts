/** Small netlists for tests: `R a b 100`, `V plus minus 12`, `D a b saturation emission [ohms]`; node 0 is ground. */
import type { Element, Netlist } from '../../src/circuit/netlist.ts';
import { createSolver } from '../../src/circuit/solve-dc.ts';

interface Solved {
  readonly netlist: Netlist;
  /** Voltage of a node, or between two. */
  volts(a: string, b?: string): number;
  /** Current through the n-th line, in at its first node. */
  amps(line: number): number;
}

export function netlistOf(text: string): Netlist {
  const nodes = ['0'];
  const node = (name: string): number => {
    const at = nodes.indexOf(name);
    return at >= 0 ? at : nodes.push(name) - 1;
  };
  const elements = text
    .trim()
    .split('\n')
    .map((line): Element => {
      const [kind, first, second, ...values] = line.trim().split(/\s+/);
      const a = node(first!);
      const b = node(second!);
      const [x, y, z] = values.map(Number);
      if (kind === 'R') return { kind: 'resistor', a, b, ohms: x! };
      if (kind === 'V') return { kind: 'emf', plus: a, minus: b, volts: x!, ohms: y ?? 0 };
      if (kind === 'I') return { kind: 'current', from: a, to: b, amps: x! };
      if (kind === 'D')
        return {
          kind: 'diode',
          a,
          b,
          saturationAmps: x!,
          emissionVolts: y!,
          ohms: z ?? 0,
          leakOhms: Number.POSITIVE_INFINITY,
        };
      throw new Error(`no element "${kind}"`);
    });
  return { nodes, elements };
}

export function solved(text: string): Solved {
  const netlist = netlistOf(text);
  const solver = createSolver(netlist);
  const failure = solver.solve();
  if (failure) throw new Error(failure.words);
  const at = (name: string) => {
    const index = netlist.nodes.indexOf(name);
    if (index < 0) throw new Error(`no node "${name}"`);
    return solver.volts[index]!;
  };
  return { netlist, volts: (a, b = '0') => at(a) - at(b), amps: (line) => solver.current(line) };
}
