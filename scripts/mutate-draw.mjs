/**
 * Which mutants `scripts/mutate.mjs` runs. A plugin of the kind that usually rejects mutants that do not compile, so
 * what is not drawn stands in the report as a compile error with its reason, and is in no score.
 */
import { createHash } from 'node:crypto';
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';

/** Letters, a blank, letters: a sentence for people, or a part of one. */
const SENTENCE = /[A-Za-z,;:.)}]\s+[A-Za-z({$]|^.\s|\s.$/;

function drawMutants(options) {
  const { share, seed, words } = options.draw;
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
    return { status: 'passed' };
  }

  function isSentence({ fileName, mutatorName, location }) {
    if (mutatorName !== 'StringLiteral') return false;
    if (location.start.line !== location.end.line) return true;
    if (!texts.has(fileName)) texts.set(fileName, readFileSync(fileName, 'utf8').split('\n'));
    const line = texts.get(fileName)[location.start.line] ?? '';
    return SENTENCE.test(line.slice(location.start.column, location.end.column));
  }

  /** The same for the same mutant on every machine: 0 to 1 from its place and what it says. */
  function chance({ fileName, mutatorName, location: { start, end }, replacement }) {
    const file = fileName.replaceAll('\\', '/').split('/src/').at(-1);
    const name = [
      seed,
      file,
      start.line,
      start.column,
      end.line,
      end.column,
      mutatorName,
      replacement,
    ];
    return createHash('sha256').update(name.join('\n')).digest().readUInt32BE(0) / 2 ** 32;
  }
}
drawMutants.inject = ['options'];

/** Writes what became of each mutant as soon as it is known: a long run may be stopped and still tells something. */
function tellMutants(options) {
  writeFileSync(options.draw.results, '');
  return {
    onMutantTested({ status, fileName, mutatorName, location: { start }, replacement }) {
      if (status === 'CompileError' || status === 'Ignored') return;
      const place = `${fileName.slice(fileName.lastIndexOf('src/'))}:${start.line}:${start.column}`;
      const line = [status, place, mutatorName, replacement.replace(/\s+/g, ' ').slice(0, 90)];
      appendFileSync(options.draw.results, `${line.join(' ')}\n`);
    },
  };
}
tellMutants.inject = ['options'];

export const strykerPlugins = [
  declareFactoryPlugin(PluginKind.Checker, 'draw', drawMutants),
  declareFactoryPlugin(PluginKind.Reporter, 'tell', tellMutants),
];
