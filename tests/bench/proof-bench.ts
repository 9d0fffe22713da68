/**
 * How long checking takes: the proof of the library, and the structure of many trees. With `-- --beside FOLDER` each tree of
 * the library beside the same tree in another checkout: `npm run bench proof -- --beside ../older`.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { Checker, SAMPLES_WATCHING } from '../../src/commands/check/check-files.ts';
import { type Gathered, gatherFiles } from '../../src/commands/check/gather-files.ts';
import { watchFiles } from '../../src/commands/check/watch-files.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { linkProcedure } from '../../src/procedure/link-procedure.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { proveProcedure } from '../../src/proof/prove-procedure.ts';

export interface ProofBench {
  /** Trees of the shipped library, and milliseconds to load, link and prove them all from nothing, by samples a fault. */
  readonly trees: number;
  readonly libraryMs: readonly { readonly samples: number; readonly ms: number }[];
  /** Milliseconds for the structure of so many trees of 40 steps, from text. */
  readonly structureMs: readonly { readonly trees: number; readonly ms: number }[];
}

const SAMPLES = [64, 128, 256];
const TREES = [1000, 2000, 4000];
const STEPS = 40;
const CAUTIONS = 'cautions.yaml';
/** What several trees stand on. */
const SHARED = ['circuits/hall-module-fed.yaml', 'families/look-at-connector.yaml'];

/** Prints and returns the times; `now` is the caller's clock in milliseconds. */
export function benchProof(
  now: () => number = () => performance.now(),
  print: (line: string) => void = console.log,
): ProofBench {
  let trees = 0;
  const libraryMs = SAMPLES.map((samples) => {
    const start = now();
    trees = proveLibrary(samples);
    const ms = now() - start;
    print(
      `proof: ${trees} trees of the library, ${samples} samples a fault, in ${ms.toFixed(0)} ms`,
    );
    return { samples, ms };
  });
  const structureMs = TREES.map((count) => {
    const texts = Array.from({ length: count }, (_, index) => treeOf(STEPS, index));
    const start = now();
    for (const text of texts) checkShape(text);
    const ms = now() - start;
    print(`proof: structure of ${count} trees of ${STEPS} steps in ${ms.toFixed(0)} ms`);
    return { trees: count, ms };
  });
  return { trees, libraryMs, structureMs };
}

/** Everything from the disk to the last proof; the number of trees. */
function proveLibrary(samples: number): number {
  const library = loadLibrary('procedures');
  const models = new Map<Circuit, ReturnType<typeof createModel>>();
  const modelOf = (circuit: Circuit) => {
    const model =
      models.get(circuit) ??
      createModel(circuit, { samples, seed: 1, meter: STANDARD_SETTINGS.meter });
    models.set(circuit, model);
    return model;
  };
  let count = 0;
  for (const parsed of library.procedures.values()) {
    if (parsed.draft.needs !== undefined) continue;
    const { value } = linkProcedure(parsed, library, { drive: 'combustion', modelOf });
    if (!value?.circuit) continue;
    proveProcedure(value, modelOf(value.circuit));
    count += 1;
  }
  return count;
}

function checkShape(text: string): void {
  const { value } = parseProcedure(text, 'bench.yaml');
  if (!value) throw new Error('bench: the tree must have the right shape');
  const library = { procedures: new Map(), circuits: new Map(), cautions: [] };
  const linked = linkProcedure(value, library, {
    drive: 'combustion',
    modelOf: () => {
      throw new Error('bench: a tree without circuit needs no model');
    },
  });
  if (!linked.value) throw new Error('bench: the tree must link');
}

/** A tree of `steps` steps: three of four measure, each leading on or to a conclusion. */
function treeOf(steps: number, seed: number): string {
  const lines = [`procedure: bench-${seed}`, 'title: A tree to measure', 'start: s0', 'steps:'];
  const tasks = Math.floor((steps * 3) / 4);
  for (let index = 0; index < tasks; index += 1) {
    const next = index + 1 < tasks ? `s${index + 1}` : 'c0';
    lines.push(
      `  s${index}:`,
      '    say: Read it.',
      '    why: To know.',
      '    measure: { reading: { unit: V } }',
      '    outcomes:',
      `      low: { below: ${index + 1} V, go: c${index % (steps - tasks)} }`,
      `      good: { from: ${index + 1} V, go: ${next} }`,
    );
  }
  for (let index = 0; index < steps - tasks; index += 1)
    lines.push(
      `  c${index}:`,
      '    conclude: [a.fault]',
      '    say: Found.',
      '    repair: Mend it.',
      '    retest: [s0]',
    );
  return `${lines.join('\n')}\n`;
}

/**
 * Milliseconds from a save to the end of its check, by what was saved: each tree of the library, then a circuit and a
 * sub-procedure, after which every tree that uses them is proved anew. The first is the first check, from nothing.
 */
export async function benchWatch(
  now: () => number = () => performance.now(),
  print: (line: string) => void = console.log,
): Promise<ReadonlyMap<string, number>> {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-watch-'));
  cpSync('procedures', folder, { recursive: true });
  const checker = new Checker(SAMPLES_WATCHING);
  const stop = new AbortController();
  let done: () => void = () => {};
  const times = new Map<string, number>();
  let saved = 'first check';
  let start = now();
  const watching = watchFiles<Gathered>({
    read: () => gatherFiles([folder], null),
    foldersOf: ({ folders }) => folders,
    contentOf: ({ files }) => JSON.stringify(files),
    changed: (gathered) => {
      checker.check(gathered);
      times.set(saved, now() - start);
      done();
    },
    signal: stop.signal,
  });
  const trees = readdirSync(folder).filter((name) => name.endsWith('.yaml') && name !== CAUTIONS);
  for (const name of [...trees, ...SHARED]) {
    const path = join(folder, name);
    const next = new Promise<void>((resolve) => {
      done = resolve;
    });
    const text = readFileSync(path, 'utf8');
    const changed = text.replace(/^title: /m, 'title: Again, ');
    if (changed === text) throw new Error(`bench: ${name} must change`);
    saved = name;
    start = now();
    writeFileSync(path, changed);
    await next;
  }
  stop.abort();
  await watching;
  rmSync(folder, { recursive: true, force: true });
  for (const [name, ms] of times)
    print(
      `proof: watching, ${name === 'first check' ? name : `after a save of ${name}`} ${ms.toFixed(0)} ms`,
    );
  return times;
}

const BESIDE_SAMPLES = 256;
/** The least of so many runs counts, in turn with the other checkout: the machine has other things to do. */
const BESIDE_RUNS = 3;

/** What both checkouts run: links and proves one tree from nothing, and prints the seconds of the processor it took. */
const PROVE_ONE = `
import { createModel } from './src/circuit/model.ts';
import { loadLibrary } from './src/files/load-library.ts';
import { STANDARD_SETTINGS } from './src/files/settings.ts';
import { linkProcedure } from './src/procedure/link-procedure.ts';
import { proveProcedure } from './src/proof/prove-procedure.ts';
const [name, samples] = process.argv.slice(2);
const library = loadLibrary('procedures');
const parsed = library.procedures.get(name);
const before = process.cpuUsage();
let model;
const modelOf = (circuit) =>
  (model ??= createModel(circuit, { samples: Number(samples), seed: 1, meter: STANDARD_SETTINGS.meter }));
const { value } = linkProcedure(parsed, library, { drive: 'combustion', modelOf });
proveProcedure(value, modelOf(value.circuit));
const { user, system } = process.cpuUsage(before);
console.log((user + system) / 1e6);
`;

/**
 * Prints and returns, by tree, the seconds of the processor here and in the checkout after `--beside`, and their ratio.
 * Each run is a process of its own. Empty without `--beside`.
 */
export async function benchBeside(
  print: (line: string) => void = console.log,
): Promise<ReadonlyMap<string, { readonly here: number; readonly there: number }>> {
  const at = process.argv.indexOf('--beside');
  const folder = process.argv[at + 1];
  const found = new Map<string, { here: number; there: number }>();
  if (at < 0 || folder === undefined) return found;
  const programs = [await programOf('here', process.cwd()), await programOf('there', folder)];
  const library = loadLibrary('procedures');
  for (const [name, { draft }] of library.procedures) {
    if (draft.needs !== undefined || draft.circuit === undefined) continue;
    const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let run = 0; run < BESIDE_RUNS; run += 1)
      for (const [which, program] of programs.entries())
        least[which] = Math.min(least[which]!, secondsOf(program, name));
    const [here, there] = [least[0]!, least[1]!];
    found.set(name, { here, there });
    print(
      `proof: ${name}, ${BESIDE_SAMPLES} samples a fault, ${here.toFixed(2)} s here, ${there.toFixed(2)} s there: ${(here / there).toFixed(2)} times`,
    );
  }
  const sum = (of: 'here' | 'there') => [...found.values()].reduce((all, one) => all + one[of], 0);
  print(`proof: all trees ${(sum('here') / sum('there')).toFixed(2)} times`);
  return found;
}

interface Program {
  readonly file: string;
  readonly cwd: string;
}

async function programOf(name: string, folder: string): Promise<Program> {
  const cwd = resolve(folder);
  const file = resolve(`node_modules/.cache/bench/prove-one-${name}.mjs`);
  await build({
    stdin: { contents: PROVE_ONE, resolveDir: cwd, loader: 'ts' },
    outfile: file,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    logLevel: 'warning',
  });
  return { file, cwd };
}

function secondsOf({ file, cwd }: Program, tree: string): number {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [file, tree, String(BESIDE_SAMPLES)],
    { cwd, encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`bench: ${tree} in ${cwd}: ${stderr}`);
  return Number(stdout);
}
