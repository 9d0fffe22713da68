/**
 * Mutation testing of the rooms that compute and judge: `npm run mutate [ROOM...] [-- --share 0.2 --seed 7 --file part --words]`.
 * Every mutant is a small fault written into the source; a fault that no test notices is a question about the tests.
 * `--share` runs a part of the mutants, drawn by hash and so the same on every machine, and tells the score with its
 * 95 % interval; `--file` takes only the files whose path holds the text; `--continue` goes on with a run of the same
 * share and seed that was stopped. Slow: run it by hand, not for every change.
 *
 * Left out, always: generated files; what runs once while a file is loaded (its mutants cannot be switched on and off
 * in a running process); and, without `--words`, the text of sentences for people, since tests name what is said by
 * its code and place, never by its wording. A text without a blank is a code, a key or a unit and is mutated.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { readResults } from './mutate-draw.mjs';

const ROOMS = ['quantity', 'session', 'suspects', 'circuit', 'proof'];
const NOTICED = ['Killed', 'Timeout'];
const MISSED = ['Survived', 'NoCoverage'];
/** A changed loop may never end; what is still running after the usual time of its tests and this much is noticed. */
const SPARE_MS = 10_000;
/** The machine may be busy: its tests may take this much longer than in the first run. */
const SLOWER = 3;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    share: { type: 'string', default: '1' },
    seed: { type: 'string', default: '7' },
    file: { type: 'string', default: '' },
    workers: { type: 'string', default: '2' },
    words: { type: 'boolean', default: false },
    continue: { type: 'boolean', default: false },
  },
});
const unknown = positionals.filter((room) => room !== 'all' && !ROOMS.includes(room));
const share = Number(values.share);
if (unknown.length > 0 || !(share > 0 && share <= 1)) {
  console.error(
    `usage: mutate [${ROOMS.join('|')}|all]... [--share 0..1] [--seed N] [--file TEXT] [--workers N] [--words] [--continue]`,
  );
  process.exit(2);
}
const rooms = positionals.length === 0 || positionals.includes('all') ? ROOMS : positionals;
const rows = [];
for (const room of rooms) rows.push(await mutate(room));
console.log(table(rows));

/** Runs one room, writes its survivors to reports/mutation, and gives the counts. */
async function mutate(room) {
  const folder = 'reports/mutation';
  mkdirSync(folder, { recursive: true });
  const log = `${folder}/${room}.log`;
  if (!values.continue) rmSync(log, { force: true });
  process.env.OHMWARD_MUTATE = room;
  const began = Date.now();
  const all = await new Stryker({
    mutate: [`src/${room}/**/*${values.file}*.ts`, '!src/**/generated/**'],
    testRunner: 'vitest',
    vitest: { configFile: 'scripts/mutate-vitest.mjs', related: false },
    plugins: ['@stryker-mutator/vitest-runner', './scripts/mutate-draw.mjs'],
    checkers: ['draw'],
    draw: { share, seed: values.seed, words: values.words, results: log },
    coverageAnalysis: 'perTest',
    ignoreStatic: true,
    concurrency: Number(values.workers),
    timeoutMS: SPARE_MS,
    timeoutFactor: SLOWER,
    reporters: ['json', 'html', 'progress-append-only', 'tell'],
    jsonReporter: { fileName: `${folder}/${room}.json` },
    htmlReporter: { fileName: `${folder}/${room}.html` },
    ignorePatterns: ['dist', 'dist.*', 'sessions', 'reports'],
    // Types are checked by `npm run types`; the sandbox needs no configuration of the compiler.
    tsconfigFile: 'none.json',
    allowConsoleColors: false,
    warnings: { unknownOptions: false },
  }).runMutationTest();
  const minutes = (Date.now() - began) / 60_000;
  const results = readResults(log);
  const missed = results.filter(({ status }) => MISSED.includes(status));
  const list = missed.map(inWords).sort(byPlace).join('\n');
  writeFileSync(`${folder}/${room}.txt`, `${list}\n`);
  console.log(list);
  const killed = results.filter(({ status }) => NOTICED.includes(status)).length;
  const ignored = all.filter(({ status }) => status === 'Ignored').length;
  return { room, killed, survived: missed.length, ignored, minutes };
}

/** `src/quantity/sums.ts:12:7 EqualityOperator "a < b" is "a <= b"`. */
function inWords({ fileName, location, mutatorName, replacement, status }) {
  const file = fileName.slice(fileName.lastIndexOf('src/'));
  const { start, end } = location;
  const lines = readFileSync(file, 'utf8')
    .split('\n')
    .slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  const short = (text) => JSON.stringify(text.replace(/\s+/g, ' ').slice(0, 90));
  const never = status === 'NoCoverage' ? ' (never run)' : '';
  return `${file}:${start.line}:${start.column} ${mutatorName} ${short(lines.join('\n'))} is ${short(replacement)}${never}`;
}

function byPlace(a, b) {
  return a.localeCompare(b, 'en', { numeric: true });
}

function table(list) {
  const lines = list.map(({ room, killed, survived, ignored, minutes }) => {
    const run = killed + survived;
    const score = share < 1 ? interval(killed, run) : `${percent(killed / run)} %`;
    return `| ${room} | ${run} | ${killed} | ${survived} | ${score} | ${ignored} | ${minutes.toFixed(1)} |`;
  });
  const drawn = share < 1 ? ` (drawn: ${share}, seed ${values.seed})` : '';
  return [
    `| room | mutants${drawn} | killed | survived | score | only at loading | minutes |`,
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...lines,
  ].join('\n');
}

/** Score and its 95 % interval after Wilson (1927), which holds near 100 % too. */
function interval(killed, run) {
  const z = 1.96;
  const middle = (killed + (z * z) / 2) / (run + z * z);
  const half = (z / (run + z * z)) * Math.sqrt((killed * (run - killed)) / run + (z * z) / 4);
  return `${percent(killed / run)} % (${percent(middle - half)} to ${percent(middle + half)})`;
}

function percent(part) {
  return (100 * part).toFixed(1);
}
