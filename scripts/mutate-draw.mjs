/**
 * Which mutants `scripts/mutate.mjs` runs. A plugin of the kind that usually rejects mutants that do not compile, so
 * what is not drawn stands in the report as a compile error with its reason, and is in no score.
 */
import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';

/** Letters, a blank, letters: a sentence for people, or a part of one. */
const SENTENCE = /[A-Za-z,;:.)}]\s+[A-Za-z({$]|^.\s|\s.$/;

function drawMutants(options) {
  const { share, seed, words, results } = options.draw;
  const known = new Set(readResults(results).map((one) => nameOf(fromZero(one))));
  const texts = new Map();
  return {
    async init() {},
    async check(mutants) {
      return Object.fromEntries(mutants.map((mutant) => [mutant.id, verdict(mutant)]));
    },
    async group(mutants) {
      return [mutants.map(({ id }) => id)];
    },
  };

  function verdict(mutant) {
    if (!words && isSentence(mutant)) return { status: 'compileError', reason: 'wording' };
    if (chance(mutant) >= share) return { status: 'compileError', reason: 'not drawn' };
    if (known.has(nameOf(mutant))) return { status: 'compileError', reason: 'known' };
    return { status: 'passed' };
  }

  function isSentence({ fileName, mutatorName, location }) {
    if (!texts.has(fileName)) texts.set(fileName, readFileSync(fileName, 'utf8'));
    return isWording(texts.get(fileName), { mutatorName, location });
  }

  /** The same for the same mutant on every machine: 0 to 1 from its place and what it says. */
  function chance(mutant) {
    const digest = createHash('sha256')
      .update(`${seed}\n${nameOf(mutant)}`)
      .digest();
    return digest.readUInt32BE(0) / 2 ** 32;
  }
}
drawMutants.inject = ['options'];

/** Whether a mutant changes nothing but a sentence for people, or a part of one; lines count from 0. */
export function isWording(text, { mutatorName, location: { start, end } }) {
  if (mutatorName !== 'StringLiteral') return false;
  if (start.line !== end.line) return true;
  return SENTENCE.test((text.split('\n')[start.line] ?? '').slice(start.column, end.column));
}

/** A mutant by its place and what it says. */
function nameOf({ fileName, mutatorName, location: { start, end }, replacement }) {
  const file = fileName.replaceAll('\\', '/').split('/src/').at(-1);
  const place = [start.line, start.column, end.line, end.column];
  return [file, ...place, mutatorName, replacement].join('\n');
}

/** Lines and columns count from 1 in a report, and from 0 before. */
function fromZero({ location: { start, end }, ...rest }) {
  const moved = ({ line, column }) => ({ line: line - 1, column: column - 1 });
  return { ...rest, location: { start: moved(start), end: moved(end) } };
}

/** What became of each mutant so far, out of a file with one in JSON a line; empty when there is none. */
export function readResults(path) {
  if (!existsSync(path)) return [];
  return readFileSync(path, 'utf8')
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line));
}

/** Writes what became of each mutant as soon as it is known: a long run may be stopped, and gone on with. */
function tellMutants(options) {
  return {
    onMutantTested({ status, fileName, mutatorName, location, replacement }) {
      if (status === 'CompileError' || status === 'Ignored') return;
      const result = { status, fileName, mutatorName, location, replacement };
      appendFileSync(options.draw.results, `${JSON.stringify(result)}\n`);
    },
  };
}
tellMutants.inject = ['options'];

export const strykerPlugins = [
  declareFactoryPlugin(PluginKind.Checker, 'draw', drawMutants),
  declareFactoryPlugin(PluginKind.Reporter, 'tell', tellMutants),
];
