/**
 * The program on cars that it does not know: vehicles drawn from what varies between cars, ngspice in their place, a
 * session through the program's JSON-RPC front end on each. Options stand in `cars/options.ts`.
 */
import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { compareWithProgram } from './cars/agreement.ts';
import { libraryCircuit } from './cars/client.ts';
import { DRAWINGS } from './cars/drawing.ts';
import { sharedEngine } from './cars/engine.ts';
import { unknownFaults } from './cars/faults-to-draw.ts';
import { type BenchOptions, type Cells, cellsOf, optionsFrom } from './cars/options.ts';
import type { RunLine } from './cars/run-car.ts';
import { runCar } from './cars/run-car.ts';
import { STRATA, strataOf } from './cars/strata.ts';
import { tablesOf } from './cars/tables.ts';
import { keyOf, openStore, type ResultsStore, type RunKey, versionOf } from './results-store.ts';

const DOCS = 'docs/cars.md';
const PROGRESS_MS = 20_000;

/** Runs what is not yet there, and prints the tables over all that was asked for. */
export async function benchCars(): Promise<void> {
  const options = optionsFrom(process.argv);
  const version = versionOf(import.meta.url);
  const store = storeOf(version, options);
  const keys = keysOf(options);
  for (const circuit of options.circuits) {
    const unknown = unknownFaults(drawingFor(circuit), await libraryCircuit(circuit));
    if (unknown.length > 0)
      console.log(`cars: ${circuit} has faults that the bench cannot make: ${unknown.join(', ')}`);
  }
  if (options.agreement) await printAgreement(options);
  const missing = () => {
    const done = new Set(store.read().map(keyOf));
    return keys.filter((key) => !done.has(keyOf(key))).length;
  };
  console.log(`cars: ${keys.length} runs, ${missing()} of them to do, kept in ${store.path}`);
  const timer = setInterval(
    () => process.stderr.write(`cars: ${keys.length - missing()} of ${keys.length}\n`),
    PROGRESS_MS,
  );
  const shares = Array.from({ length: options.workers }, (_, share) => share);
  // Fresh workers for each circuit: the models of all of them do not fit into one.
  for (const circuit of missing() > 0 ? options.circuits : [])
    await Promise.all(
      shares.map((share) => startWorker({ ...options, circuits: [circuit] }, version, share)),
    );
  clearInterval(timer);
  const wanted = new Set(keys.map(keyOf));
  const lines = store.read().filter((line) => wanted.has(keyOf(line)));
  const tables = tablesOf(lines);
  console.log(tables);
  const unanswered = [...new Set(lines.flatMap(({ unknown }) => unknown))];
  if (unanswered.length > 0)
    console.log(`\ncars: questions answered by their first outcome: ${unanswered.join('; ')}`);
  if (options.write) writeFileSync(DOCS, docsOf(tables, options));
}

/** One of several processes: each takes every so many-th run. */
export async function workCars(
  options: BenchOptions,
  version: string,
  share: number,
): Promise<void> {
  if (versionOf(import.meta.url) !== version)
    throw new Error('cars: the bundle has changed under the bench; start it again');
  // Without the bench that started it a worker has nothing left to do.
  process.once('disconnect', () => process.exit(1));
  const store = storeOf(version, options);
  const done = new Set(store.read().map(keyOf));
  const broken: Error[] = [];
  for (const [index, key] of keysOf(options).entries()) {
    if (index % options.workers !== share || done.has(keyOf(key))) continue;
    const stratum = STRATA.find(({ name }) => name === key.stratum);
    if (!stratum) throw new Error(`cars: no stratum "${key.stratum}"`);
    const circuit = await libraryCircuit(key.circuit);
    try {
      const { weights, toldEvery } = options;
      store.add(await runCar({ ...key, circuit, stratum, weights, toldEvery }));
    } catch (error) {
      // The others are run first; then it is told.
      broken.push(new Error(`cars: ${keyOf(key)}`, { cause: error }));
    }
  }
  for (const error of broken) console.error(error);
  if (broken.length > 0) throw new Error(`cars: ${broken.length} runs broke off`);
}

function storeOf(version: string, { weights, toldEvery }: BenchOptions): ResultsStore<RunLine> {
  return openStore('cars', `${version}-${weights}-${toldEvery}`);
}

/** Every run that is asked for; neighbours in the list share a circuit, so that its model is made once. */
function keysOf(options: BenchOptions): RunKey[] {
  return options.circuits.flatMap((circuit) =>
    cellsOf(options).flatMap((cells) => keysIn(circuit, cells, options.only)),
  );
}

function keysIn(
  circuit: string,
  { modes, persons, means, strata, runs }: Cells,
  only: readonly number[],
): RunKey[] {
  return modes.flatMap((mode) =>
    strataOf(circuit)
      .filter(({ name }) => strata.includes(name))
      .flatMap(({ name: stratum }) =>
        persons.flatMap((person) =>
          means.flatMap((means) =>
            numbersOf(only, runs[mode]).map((number) => ({
              circuit,
              stratum,
              mode,
              person,
              means,
              number,
            })),
          ),
        ),
      ),
  );
}

function numbersOf(only: readonly number[], runs: number): readonly number[] {
  return only.length > 0 ? only : Array.from({ length: runs }, (_, number) => number);
}

function startWorker(options: BenchOptions, version: string, share: number): Promise<void> {
  const code = `import { workCars } from ${JSON.stringify(import.meta.url)};
    await workCars(${JSON.stringify(options)}, ${JSON.stringify(version)}, ${share});
    process.exit(0);`;
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      ['--max-semi-space-size=64', '--input-type=module', '-e', code],
      {
        stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
      },
    );
    child.once('error', reject);
    child.once('exit', (exit) =>
      exit === 0 ? resolve() : reject(new Error(`cars: worker ${share} ended with ${exit}`)),
    );
  });
}

async function printAgreement({ circuits }: BenchOptions): Promise<void> {
  const engine = await sharedEngine();
  for (const name of circuits) {
    const circuit = await libraryCircuit(name);
    const open = circuit.faults.filter(({ id }) => id.endsWith('.open')).map(({ id }) => id);
    const { compared, differences } = await compareWithProgram(circuit, engine, open, 3);
    console.log(
      `cars: ${name}: ${compared} readings, ${differences.length} differ from the program`,
    );
    for (const { fault, test, program, vehicle } of differences)
      console.log(`  ${fault}, ${test}: ${program} in the program, ${vehicle} at the car`);
  }
}

function drawingFor(circuit: string) {
  const found = DRAWINGS.find((one) => one.circuit === circuit);
  if (!found) throw new Error(`cars: no drawing of "${circuit}"`);
  return found;
}

function docsOf(tables: string, { circuits, toldEvery }: BenchOptions): string {
  const left = DRAWINGS.map(({ circuit }) => circuit).filter((one) => !circuits.includes(one));
  const asked = process.argv
    .slice(process.argv.findIndex((word) => word.startsWith('--')))
    .join(' ');
  return [
    '# Cars that the program does not know',
    '',
    `Made by \`npm run bench cars -- ${asked}\`. Vehicles are drawn from what varies between cars (tests/bench/cars/ranges.ts),`,
    'ngspice stands in their place, and a session through the JSON-RPC front end is held on each. Shares have their 95 %',
    'interval beside them (Wilson). One repair can be told where the tests at hand, those of the tree and the standard ones,',
    'tell the true fault from every other that the module would notice in this same car, and from a whole car; each other',
    'fault is as large as the true one, or of sizes that are drawn. The values of the car are known to this count and',
    'to nobody at the car, so it is rather too large; what eyes find does not count in it, but for the marks of the wheel.',
    'Of these, only one repair alone and PROVEN counts.',
    ...(toldEvery > 1 ? [`It was asked in every ${toldEvery}th run of a cell.`] : []),
    ...(left.length > 0 ? [`Not run for these figures: ${left.join(', ')}.`] : []),
    tables,
    '',
  ].join('\n');
}
