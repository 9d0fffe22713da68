/** How many operating points a second: a 20-node sensor circuit, linear and with an LED, beside ngspice and mathjs. */
import { Simulation } from 'eecircuit-engine';
import { lusolve } from 'mathjs';
import type { Element, Netlist } from '../../src/circuit/netlist.ts';
import { createSolver } from '../../src/circuit/solve-dc.ts';

/** Points a second of each program on each circuit. */
export interface BenchRow {
  readonly circuit: string;
  readonly program: string;
  readonly pointsPerSecond: number;
}

const NODES = 20;
/** At least this long, so that the compiler has settled. */
const MEASURE_MS = 700;

/** A 12 V feed through contacts and wires, a divider ladder, a pull-up, and ground resistances: 20 nodes beside ground. */
function ladder(light: boolean): Netlist {
  const elements: Element[] = [{ kind: 'emf', plus: 1, minus: 0, volts: 12.6, ohms: 0.02 }];
  for (let node = 1; node < NODES; node += 1) {
    elements.push({
      kind: 'resistor',
      a: node,
      b: node + 1,
      ohms: node % 2 === 0 ? 0.01 : 0.1 + node,
    });
    if (node % 3 === 0) elements.push({ kind: 'resistor', a: node, b: 0, ohms: 1000 + 10 * node });
  }
  elements.push(
    { kind: 'resistor', a: 2, b: 17, ohms: 2200 },
    { kind: 'resistor', a: NODES, b: 0, ohms: 1e7 },
  );
  if (light)
    elements.push({
      kind: 'diode',
      a: 18,
      b: 0,
      saturationAmps: 3.5e-18,
      emissionVolts: 0.0517,
      ohms: 334,
      leakOhms: 1e9,
    });
  return { nodes: Array.from({ length: NODES + 1 }, (_, node) => `n${node}`), elements };
}

/** Prints and returns the rows; each point has another battery voltage, as tolerance samples have. */
export async function benchCircuit(
  print: (line: string) => void = console.log,
): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  for (const [circuit, light] of [
    ['linear', false],
    ['diode', true],
  ] as const) {
    const netlist = ladder(light);
    rows.push({ circuit, program: 'ohmward', pointsPerSecond: ours(netlist) });
    rows.push({
      circuit,
      program: 'ngspice (WebAssembly)',
      pointsPerSecond: await ngspice(netlist),
    });
    if (!light) rows.push({ circuit, program: 'mathjs lusolve', pointsPerSecond: mathjs(netlist) });
  }
  for (const { circuit, program, pointsPerSecond } of rows)
    print(
      `${circuit.padEnd(8)} ${program.padEnd(24)} ${Math.round(pointsPerSecond).toLocaleString('en')} operating points a second`,
    );
  return rows;
}

function ours(netlist: Netlist): number {
  const solver = createSolver(netlist);
  const first = netlist.elements[0]!;
  if (first.kind !== 'emf') throw new Error('bench: the source comes first');
  const sources = Array.from({ length: 64 }, (_, index) => ({ ...first, volts: 12 + index / 64 }));
  let sum = 0;
  const rate = perSecond(2000, () => {
    for (let point = 0; point < 2000; point += 1) {
      solver.replace(0, sources[point & 63]!);
      if (solver.solve() !== null) throw new Error('bench: no solution');
      sum += solver.volts[NODES]!;
    }
  });
  if (!Number.isFinite(sum)) throw new Error('bench: not a number');
  return rate;
}

function mathjs(netlist: Netlist): number {
  const matrix = Array.from({ length: NODES }, () => new Array<number>(NODES).fill(0));
  const right = new Array<number>(NODES).fill(0);
  for (const element of netlist.elements) {
    if (element.kind !== 'resistor' && element.kind !== 'emf') continue;
    const [a, b] =
      element.kind === 'emf'
        ? [element.plus - 1, element.minus - 1]
        : [element.a - 1, element.b - 1];
    const siemens = 1 / element.ohms;
    if (a >= 0) matrix[a]![a]! += siemens;
    if (b >= 0) matrix[b]![b]! += siemens;
    if (a >= 0 && b >= 0) {
      matrix[a]![b]! -= siemens;
      matrix[b]![a]! -= siemens;
    }
    if (element.kind === 'emf') right[a]! += element.volts * siemens;
  }
  return perSecond(20, () => {
    for (let point = 0; point < 20; point += 1) {
      right[0] = (12 + point / 20) * 50;
      lusolve(matrix, right);
    }
  });
}

/** Each point is one run of ngspice on a netlist that differs in the source. */
async function ngspice(netlist: Netlist): Promise<number> {
  const simulation = new Simulation();
  await simulation.start();
  const text = (volts: number) => {
    const lines = netlist.elements.map((element, index) => {
      if (element.kind === 'resistor')
        return `R${index} n${element.a} ${ground(element.b)} ${element.ohms}`;
      if (element.kind === 'emf')
        return `V${index} src 0 ${volts}\nR${index} src n1 ${element.ohms}`;
      if (element.kind === 'diode') return `D${index} n${element.a} 0 LED`;
      throw new Error('bench: no such element');
    });
    return ['* ladder', ...lines, '.model LED D(IS=3.5e-18 N=2 RS=334)', '.op', '.end'].join('\n');
  };
  const points = 100;
  const start = performance.now();
  for (let point = 0; point < points; point += 1) {
    simulation.setNetList(text(12 + point / points));
    await simulation.runSim();
  }
  return (1000 * points) / (performance.now() - start);
}

function ground(node: number): string {
  return node === 0 ? '0' : `n${node}`;
}

function perSecond(points: number, run: () => void): number {
  run();
  const start = performance.now();
  let done = 0;
  do {
    run();
    done += points;
  } while (performance.now() - start < MEASURE_MS);
  return (1000 * done) / (performance.now() - start);
}
