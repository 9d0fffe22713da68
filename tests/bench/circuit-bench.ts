/**
 * How many operating points a second: a 20-node sensor circuit, linear and with an LED, beside a plain dense matrix, ngspice
 * and mathjs; and how many readings a second the shipped circuits give, each of another car.
 *
 * Against an older commit: check it out with its own node_modules, and run there and here in turn
 * `npm run bench circuit`. The rows `ohmward` of `linear` and `diode` have been the same since 215ef3b.
 */
import { readFileSync } from 'node:fs';
import { Simulation } from 'eecircuit-engine';
import { lusolve } from 'mathjs';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import type { Element, Netlist } from '../../src/circuit/netlist.ts';
import { PLAIN_SETUP } from '../../src/circuit/plain-setup.ts';
import { createSolver } from '../../src/circuit/solve-dc.ts';
import type { Probe, Setup } from '../../src/circuit/test.ts';
import { densePath } from '../circuit/dense-path.ts';
import { METER } from '../circuit/shipped.ts';
import { AT_THE_LIMITS } from '../hostile/many-parts.ts';

/** Points a second of each program on each circuit. */
export interface BenchRow {
  readonly circuit: string;
  readonly program: string;
  readonly pointsPerSecond: number;
}

/** Of `check` and `predict`, of which loading is nearly all. */
const LOAD_S_MAX = 2;
const NODES = 20;
/** At least this long, so that the compiler has settled. */
const MEASURE_MS = 300;
const ROUNDS = 4;

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
  // Both in turn before anything else, since they are compared with each other.
  const own = [false, true, false, true].map((light) => ours(ladder(light)));
  for (const [circuit, light] of [
    ['linear', false],
    ['diode', true],
  ] as const) {
    const netlist = ladder(light);
    const pointsPerSecond = Math.max(own[light ? 1 : 0]!, own[light ? 3 : 2]!);
    rows.push({ circuit, program: 'ohmward', pointsPerSecond });
    rows.push({ circuit, program: 'dense matrix', pointsPerSecond: dense(netlist) });
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
  const of = (circuit: string, program: string) =>
    rows.find((row) => row.circuit === circuit && row.program === program)!.pointsPerSecond;
  const ratio = (a: number, b: number) => (a / b).toFixed(2);
  for (const circuit of ['linear', 'diode'])
    print(
      `${circuit.padEnd(8)} ohmward against the dense matrix: ${ratio(of(circuit, 'ohmward'), of(circuit, 'dense matrix'))}`,
    );
  print(`diode against linear: ${ratio(of('diode', 'ohmward'), of('linear', 'ohmward'))}`);
  return rows;
}

/** One reading of one shipped circuit under one fault. */
interface Reading {
  readonly words: string;
  readonly circuit: string;
  readonly fault: string;
  readonly probe: Probe;
  readonly setup?: Partial<Setup>;
}

const READINGS: readonly Reading[] = [
  {
    words: 'linear',
    circuit: 'reluctor-two-wire',
    fault: 'wire.plus.resistive',
    probe: { kind: 'volts', plus: 'sensor.plus', minus: 'battery.negative' },
  },
  {
    words: 'light',
    circuit: 'reluctor-two-wire',
    fault: 'wire.plus.resistive',
    probe: { kind: 'light', plus: 'battery.positive', minus: 'sensor.plus' },
  },
  {
    words: 'light beside a reference',
    circuit: 'hall-module-fed',
    fault: 'wire.feed.resistive',
    probe: { kind: 'light', plus: 'battery.positive', minus: 'sensor.ground' },
  },
  {
    words: 'reference at its limit',
    circuit: 'hall-module-fed',
    fault: 'wire.feed.short-to-ground',
    probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
  },
  {
    words: 'picture, two levels',
    circuit: 'hall-module-fed',
    fault: 'wire.feed.resistive',
    probe: { kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' },
    setup: { state: 'cranking', target: 'moving' },
  },
];
/** Cars of one measurement. */
const CARS = 500;

/** Readings a second of the shipped circuits, each of another car. */
export function benchReadings(print: (line: string) => void = console.log): BenchRow[] {
  return READINGS.map(({ words, circuit: name, fault, probe, setup }) => {
    const file = `procedures/circuits/${name}.yaml`;
    const { value } = loadCircuit(readFileSync(file, 'utf8'), file);
    if (!value) throw new Error(`bench: ${file} does not load`);
    const model = createModel(value, { samples: CARS, seed: 1, meter: METER });
    const points = Array.from({ length: CARS }, (_, car) => model.pointOf(car));
    const test = { setup: { ...PLAIN_SETUP, ...setup }, probe };
    const rate = perSecond(CARS, () => {
      for (const point of points) model.showsAt(fault, test, point);
    });
    print(`${words.padEnd(24)} ${Math.round(rate).toLocaleString('en')} readings a second`);
    return { circuit: words, program: 'ohmward', pointsPerSecond: rate };
  });
}

function dense(netlist: Netlist): number {
  return withSources(netlist, 200, (element) => {
    const elements = [element, ...netlist.elements.slice(1)];
    return densePath({ ...netlist, elements })[NODES]!;
  });
}

function ours(netlist: Netlist): number {
  const solver = createSolver(netlist);
  return withSources(netlist, 2000, (source) => {
    solver.replace(0, source);
    if (solver.solve() !== null) throw new Error('bench: no solution');
    return solver.volts[NODES]!;
  });
}

/** Points a second, each with another voltage of the source. */
function withSources(netlist: Netlist, points: number, solve: (source: Element) => number): number {
  const first = netlist.elements[0]!;
  if (first.kind !== 'emf') throw new Error('bench: the source comes first');
  const sources = Array.from({ length: 64 }, (_, index) => ({ ...first, volts: 12 + index / 64 }));
  let sum = 0;
  const rate = perSecond(points, () => {
    for (let point = 0; point < points; point += 1) sum += solve(sources[point & 63]!);
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
  const start = processorMs();
  for (let point = 0; point < points; point += 1) {
    simulation.setNetList(text(12 + point / points));
    await simulation.runSim();
  }
  return (1000 * points) / (processorMs() - start);
}

function ground(node: number): string {
  return node === 0 ? '0' : `n${node}`;
}

/** The best of several rounds, by processor time: on a busy machine the clock on the wall tells of the others. */
function perSecond(points: number, run: () => void): number {
  run();
  let best = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = processorMs();
    let done = 0;
    do {
      run();
      done += points;
    } while (processorMs() - start < MEASURE_MS);
    best = Math.max(best, (1000 * done) / (processorMs() - start));
  }
  return best;
}

function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Hostile circuits at the limits, each beside the shipped one that it is made of: processor seconds to load. */
export function benchLimits(print: (line: string) => void = console.log): void {
  const seconds = (text: string) => {
    const before = process.cpuUsage();
    if (!loadCircuit(text, 'bench.yaml').value) throw new Error('it is refused');
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1e6;
  };
  const shipped = readFileSync('procedures/circuits/hall-module-fed.yaml', 'utf8');
  seconds(shipped);
  for (const [name, text] of AT_THE_LIMITS) {
    const own = Math.min(...Array.from({ length: ROUNDS }, () => seconds(shipped)));
    const hostile = seconds(text);
    print(
      `load a circuit with ${name}: ${hostile.toFixed(2)} s of the processor (limit ${LOAD_S_MAX}), ` +
        `${(hostile / own).toFixed(0)} times the shipped one`,
    );
  }
}
