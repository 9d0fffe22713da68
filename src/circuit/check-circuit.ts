/** Asks of a circuit, before it is solved for anyone, what the solver could only answer with a shrug. */
import type { Path } from '../source/yaml-source.ts';
import { type Circuit, moduleOf, sensorOf } from './circuit.ts';
import { floatingIslands, rootsOf } from './floating-islands.ts';
import { GROUND, type Netlist, nodesOf } from './netlist.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import { NOMINAL_DRAW } from './plan.ts';
import { planNetlist } from './plan-netlist.ts';
import { createSolver } from './solve-dc.ts';
import { TEST_STATES } from './test.ts';

/** Regulated outputs that feed the same wires; a vehicle has one, or two by a fault. */
const OUTPUTS_MAX = 20;

/** One finding, with the place in the circuit file of the part or wire it belongs to. */
export interface CircuitFinding {
  readonly code: string;
  readonly severity: 'error' | 'warning';
  readonly words: string;
  readonly path: Path;
}

/** Nodes without a path to ground, states that do not settle, signals that no input reads. */
export function checkCircuit(circuit: Circuit): CircuitFinding[] {
  const findings: CircuitFinding[] = [];
  for (const state of TEST_STATES) {
    const plan = planNetlist(circuit, { ...PLAIN_SETUP, state }, []);
    const netlist = { nodes: plan.nodes, elements: plan.makers.map((make) => make(NOMINAL_DRAW)) };
    if (state !== 'key-off')
      for (const island of floatingIslands(netlist)) {
        const name = plan.nodes[island]!;
        findings.push({
          code: 'no-path-to-ground',
          severity: 'error',
          words: `"${name.replace(/\.pin$/, '')}" has no path to ground`,
          path: ownerOf(circuit, name),
        });
      }
    if (state === 'key-on') findings.push(...manyOutputs(circuit, netlist));
    const failure = createSolver(netlist).solve();
    if (failure)
      findings.push({
        code: failure.reason,
        severity: 'error',
        words: `with ${state}, ${failure.words}`,
        path: ownerOf(circuit, failure.node),
      });
  }
  const module = moduleOf(circuit);
  const ends = circuit.wires.flatMap((wire) => [wire.from, wire.to]);
  if (!module.inside.some((pin) => pin.input && ends.includes(`${module.name}.${pin.name}`)))
    findings.push({
      code: 'no-input',
      severity: 'error',
      words: `no input of "${module.name}" is wired, so nothing reads "${sensorOf(circuit).name}"`,
      path: ['parts', module.name],
    });
  const seen = new Set<string>();
  return findings.filter(({ words }) => (seen.has(words) ? false : seen.add(words)));
}

/** Each regulated output looks for its region beside all others that it feeds together with. */
function manyOutputs(circuit: Circuit, netlist: Netlist): CircuitFinding[] {
  const between = netlist.elements.filter(
    (element) => element.kind !== 'regulator' && !nodesOf(element).includes(GROUND),
  );
  const roots = rootsOf({ ...netlist, elements: between });
  const together = new Map<number, number>();
  return netlist.elements.flatMap((element): CircuitFinding[] => {
    if (element.kind !== 'regulator') return [];
    const root = roots(element.out);
    const count = (together.get(root) ?? 0) + 1;
    together.set(root, count);
    if (count !== OUTPUTS_MAX + 1) return [];
    return [
      {
        code: 'too-many-outputs',
        severity: 'error',
        words: `more than ${OUTPUTS_MAX} regulated outputs are connected together`,
        path: ownerOf(circuit, netlist.nodes[element.out]!),
      },
    ];
  });
}

/** The part that a node lies in, else the wire that ends there, else the whole file. */
function ownerOf(circuit: Circuit, node: string): Path {
  const part = circuit.parts.find((one) => node.startsWith(`${one.name}.`));
  if (part) return ['parts', part.name];
  const wire = circuit.wires.find((one) => one.from === node || one.to === node);
  return wire ? ['wires', wire.name] : [];
}
