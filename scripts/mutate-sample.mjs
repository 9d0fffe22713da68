/**
 * A drawn sample of small faults in every room: `node scripts/mutate-sample.mjs --seed 7 --each 5 [ROOM...]`.
 * Each is written into a copy of the last commit, one at a time, and looked for by the tests that import the file:
 * the nearest `--files`, those of its room first, whole campaigns left out. The first red one ends the search, and
 * `--seconds` a search that may never end. What is left is printed with its place, and is to be looked at by a person: it
 * may change nothing. A run that was stopped goes on by itself where `--out` says it was.
 * `mutate.mjs` runs every fault of a room that computes; this one also goes where tests start whole programs.
 * Left out as there: generated files, and the text of sentences for people. `--only FILE:LINE:COLUMN` takes one again.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, posix, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { isWording } from './mutate-draw.mjs';

const ROOMS = [
  'session',
  'suspects',
  'drill',
  'ui',
  'circuit',
  'proof',
  'log',
  'records',
  'commands',
];
/** So many steps further away is a test of another room. */
const FAR = 3;
/** Whole campaigns, and what looks at the built program or at pages only. */
const TOO_SLOW =
  /^tests\/(library\/(proof|samples)|session\/(create-advisor|conclusion-evidence)|drill\/(command|class-report|score)|log\/fault-campaign|rpc\/client|records\/shared|commands\/(guided-session|way-out|capture-quantities)|proof\/check|suspects\/(guide|calibration)|proof\/(mutants|guide)|drill\/students|commands\/package|hostile\/many-parts|terminal\/|outside\/circuit-ngspice|walks\/)/;
const IMPORTED =
  /^(?:import|export)\s+(?!type\b)[^'"]*?from\s+'(\.[^']+)'|\bimport\('(\.[^']+)'\)/gm;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '7' },
    each: { type: 'string', default: '5' },
    only: { type: 'string', default: '' },
    files: { type: 'string', default: '40' },
    seconds: { type: 'string', default: '600' },
    out: { type: 'string', default: 'reports/mutation/sample.txt' },
  },
});
const texts = new Map();
const redAnyway = new Set();
const greenAlone = new Set();
const copy = mkdtempSync(join(tmpdir(), 'ohmward-mutants-'));
try {
  await sample(positionals.length > 0 ? positionals : ROOMS);
} finally {
  rmSync(copy, { recursive: true, force: true });
}

async function sample(rooms) {
  const { stdout } = spawnSync('git', ['archive', 'HEAD'], { maxBuffer: 2 ** 30 });
  spawnSync('tar', ['x', '-C', copy], { input: stdout });
  symlinkSync(resolve('node_modules'), join(copy, 'node_modules'));
  cpSync('dist', join(copy, 'dist'), { recursive: true });
  mkdirSync(dirname(values.out), { recursive: true });
  const imports = readImports();
  const told = existsSync(values.out) ? readFileSync(values.out, 'utf8') : '';
  const counts = { noticed: 0, missed: 0, stopped: 0 };
  for (const room of rooms)
    for (const mutant of await drawn(room)) {
      if (told.includes(inWords(mutant))) continue;
      const { became, by } = look(mutant, imports);
      counts[became] += 1;
      tell(`${became} ${inWords(mutant)}${by ? ` | ${by}` : ''}`);
    }
  tell(JSON.stringify({ seed: values.seed, each: values.each, ...counts }));
}

function tell(line) {
  console.log(line);
  appendFileSync(values.out, `${line}\n`);
}

/** The mutants of a room in the order of their draw: the first `--each`, or those at the place `--only`. */
async function drawn(room) {
  const files = filesUnder(`src/${room}`).filter((name) => !name.includes('/generated/'));
  const silent = { debug() {}, info() {}, isDebugEnabled: () => false };
  const options = { plugins: null, ignorers: [], excludedMutations: [], noHeader: true };
  const read = files.map((name) => ({ name, mutate: true, content: textOf(name) }));
  const { mutants } = await new Instrumenter(silent).instrument(read, options);
  if (values.only) return mutants.filter((mutant) => placeOf(mutant) === values.only);
  return mutants
    .filter((mutant) => !isWording(textOf(mutant.fileName), mutant))
    .map((mutant) => ({ mutant, lot: lotOf(mutant) }))
    .sort((a, b) => (a.lot < b.lot ? -1 : 1))
    .slice(0, Number(values.each))
    .map(({ mutant }) => mutant);
}

function lotOf(mutant) {
  const name = [values.seed, placeOf(mutant), mutant.mutatorName, mutant.replacement].join('\n');
  return createHash('sha256').update(name).digest('hex');
}

function placeOf({ fileName, location: { start } }) {
  return `${fileName}:${start.line + 1}:${start.column + 1}`;
}

function inWords(mutant) {
  const short = (text) => JSON.stringify(text.replace(/\s+/g, ' ').slice(0, 100));
  const [from, to] = spanOf(mutant);
  const was = textOf(mutant.fileName).slice(from, to);
  return `${placeOf(mutant)} ${mutant.mutatorName} ${short(was)} is ${short(mutant.replacement)}`;
}

function spanOf({ fileName, location: { start, end } }) {
  const lines = textOf(fileName).split('\n');
  const at = ({ line, column }) =>
    lines.slice(0, line).reduce((sum, text) => sum + text.length + 1, 0) + column;
  return [at(start), at(end)];
}

/** Writes the fault, lets the tests look for it, and puts the file back. */
function look(mutant, imports) {
  const [from, to] = spanOf(mutant);
  const text = textOf(mutant.fileName);
  const faulty = text.slice(0, from) + mutant.replacement + text.slice(to);
  return firstRed(mutant.fileName, faulty, testsOf(mutant.fileName, imports));
}

/** The first test that is red with the fault and green without it; one that is red without it, too, is left out from then on. */
function firstRed(fileName, faulty, all) {
  const tests = all.filter((name) => !redAnyway.has(name));
  if (tests.length === 0) return { became: 'missed' };
  put(fileName, faulty);
  const { status, stdout, stderr, signal } = runTests(tests);
  put(fileName, textOf(fileName));
  if (signal) return { became: 'stopped' };
  if (status === 0) return { became: 'missed', by: `${tests.length} files` };
  const by = /^ *FAIL +(.*)$/m.exec(stdout + stderr)?.[1] ?? '';
  const file = by.split(/ +[>[]/)[0];
  if (!tests.includes(file)) return { became: 'noticed', by: by || 'the run ended badly' };
  if (greenAlone.has(file) || runTests([file]).status === 0) {
    greenAlone.add(file);
    return { became: 'noticed', by };
  }
  redAnyway.add(file);
  tell(`red without a fault: ${file}`);
  return firstRed(fileName, faulty, all);
}

/** The program that tests start is built of the sources as they stand. */
function put(fileName, text) {
  writeFileSync(join(copy, fileName), text);
  spawnSync(process.execPath, ['scripts/build.mjs'], { cwd: copy });
}

function runTests(tests) {
  const own = ['--config', 'scripts/mutate-sample-vitest.mjs', '--reporter', 'dot'];
  return spawnSync(process.execPath, ['node_modules/vitest/vitest.mjs', 'run', ...own, ...tests], {
    cwd: copy,
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1', OHMWARD_ORDER: JSON.stringify(tests) },
    killSignal: 'SIGKILL',
    maxBuffer: 2 ** 28,
    timeout: Number(values.seconds) * 1000,
  });
}

/** The test files nearest to `file` among those that import it: by the steps between them, those of its room first. */
function testsOf(file, imports) {
  const steps = new Map([[file, 0]]);
  for (const [name, step] of steps)
    for (const by of imports.get(name) ?? []) if (!steps.has(by)) steps.set(by, step + 1);
  const room = `tests/${file.split('/')[1]}/`;
  const farness = ([name, step]) => step + (name.startsWith(room) || step === 1 ? 0 : FAR);
  return [...steps]
    .filter(([name]) => /\.test\.tsx?$/.test(name))
    .filter(
      ([name, step]) =>
        (step === 1 && !name.endsWith('drill/command.test.ts')) || !TOO_SLOW.test(name),
    )
    .sort((one, other) => farness(one) - farness(other))
    .slice(0, Number(values.files))
    .map(([name]) => name);
}

/** Of each file, which files import it when they run. */
function readImports() {
  const importedBy = new Map();
  for (const name of [...filesUnder('src'), ...filesUnder('tests')])
    for (const [, one, other] of textOf(name).matchAll(IMPORTED)) {
      const imported = posix.join(posix.dirname(name), one ?? other);
      if (existsSync(join(copy, imported)))
        importedBy.set(imported, [...(importedBy.get(imported) ?? []), name]);
    }
  return importedBy;
}

function filesUnder(folder) {
  return readdirSync(join(copy, folder), { recursive: true })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((name) => /\.tsx?$/.test(name))
    .sort();
}

/** As it was committed. */
function textOf(name) {
  if (!texts.has(name)) texts.set(name, readFileSync(join(copy, name), 'utf8'));
  return texts.get(name);
}
