/** One ngspice (WebAssembly, eecircuit-engine) kept alive for the whole bench. */
import { Simulation } from 'eecircuit-engine';

/** Where ngspice does not settle with the first it is given the next. */
const OPTIONS = [
  'RELTOL=1e-7 ABSTOL=1e-14 VNTOL=1e-10 GMIN=1e-15',
  'RELTOL=1e-5 ABSTOL=1e-12 VNTOL=1e-7 GMIN=1e-14',
  'RELTOL=1e-4 ABSTOL=1e-10 VNTOL=1e-6 GMIN=1e-12 GMINSTEPS=0 SRCSTEPS=50',
];

export interface Engine {
  /** Voltages of the wanted nodes by ngspice's names, in lower case; null where no operating point was found. */
  readonly solve: (
    lines: readonly string[],
    wanted: readonly string[],
  ) => Promise<ReadonlyMap<string, number> | null>;
  /** Runs, those that needed looser settings, those without any answer, and milliseconds so far. */
  readonly spent: { runs: number; again: number; unsolved: number; ms: number };
}

let shared: Promise<Engine> | null = null;

/** The engine of this process. */
export function sharedEngine(): Promise<Engine> {
  shared ??= startEngine();
  return shared;
}

async function startEngine(): Promise<Engine> {
  const simulation = new Simulation();
  await quietly(() => simulation.start());
  const spent = { runs: 0, again: 0, unsolved: 0, ms: 0 };
  // ngspice has one circuit at a time.
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work, work);
    last = next;
    return next;
  };
  const solve = async (
    lines: readonly string[],
    wanted: readonly string[],
  ): Promise<ReadonlyMap<string, number> | null> => {
    const start = performance.now();
    for (const [attempt, options] of OPTIONS.entries()) {
      const deck = [
        '* car',
        ...lines,
        `.options TEMP=27 TNOM=27 ITL1=500 ITL2=500 PIVTOL=1e-17 ${options}`,
        // One point of a sweep: it settles in a tenth of the time of `.op`.
        'Vsweep sweep 0 DC 1',
        'Rsweep sweep 0 1',
        '.dc Vsweep 1 1 1',
        `.save ${['sweep', ...wanted].map((node) => `v(${node})`).join(' ')}`,
        '.end',
      ];
      const volts = await quietly(() => run(simulation, deck.join('\n')));
      spent.runs += 1;
      if (attempt > 0) spent.again += 1;
      if (volts) {
        spent.ms += performance.now() - start;
        return volts;
      }
    }
    spent.unsolved += 1;
    spent.ms += performance.now() - start;
    return null;
  };
  return { spent, solve: (lines, wanted) => inTurn(() => solve(lines, wanted)) };
}

async function run(
  simulation: Simulation,
  deck: string,
): Promise<ReadonlyMap<string, number> | null> {
  simulation.setNetList(deck);
  const { data } = await simulation.runSim();
  const failed = simulation
    .getError()
    .some((line) => /no convergence|aborted|failed.*operating point|singular/i.test(line));
  if (failed) return null;
  const volts = new Map<string, number>();
  for (const { name, values } of data) {
    const node = /^v\((.+)\)$/i.exec(name);
    const [first] = values;
    if (!node?.[1] || first === undefined) continue;
    volts.set(node[1].toLowerCase(), typeof first === 'number' ? first : first.real);
  }
  return volts.size > 0 ? volts : null;
}

/** ngspice tells every attempt at length on the console. */
async function quietly<T>(work: () => Promise<T>): Promise<T> {
  const { log, warn, error } = console;
  const silent = () => undefined;
  Object.assign(console, { log: silent, warn: silent, error: silent });
  try {
    return await work();
  } finally {
    Object.assign(console, { log, warn, error });
  }
}
