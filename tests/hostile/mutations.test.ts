/** Seeded mutations of the shipped files and of good captures and logs: never a crash, a wait, or an issue without a place. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LONG, SEED } from '../campaign.ts';
import { finishedLog } from '../log/damages.ts';
import { GOOD } from './good-files.ts';
import { cpuMs, flawOfAnswer, type Kind, prototypesNow, readAs } from './readers.ts';

const MUTATIONS = LONG ? 20_000 : 500;
/** No file may keep a person waiting longer (processor time, the same on a busy machine). */
const ANSWER_MS = 2000;
/** The runner's own limit, far above what it takes. */
const TIME_MS = 1_800_000;

function yamlIn(folder: string, kind: Kind): [Kind, string][] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.yaml') && name !== 'cautions.yaml')
    .sort()
    .map((name) => [kind, readFileSync(join(folder, name), 'utf8')]);
}

/** Every shipped file, and a small good one of the kinds that are not shipped. */
function goodOnes(): [Kind, string][] {
  const capture = `time,signal (V)\n${Array.from({ length: 200 }, (_, n) => `${n / 1000},${n % 7}`).join('\n')}\n`;
  return [
    ...yamlIn('procedures', 'procedure'),
    ...yamlIn('procedures/families', 'procedure'),
    ...yamlIn('procedures/circuits', 'circuit'),
    ...yamlIn('procedures/jobs', 'job'),
    ['cautions', readFileSync('procedures/cautions.yaml', 'utf8')],
    ['job', GOOD.job.lines.join('\n')],
    ['answers', GOOD.answers.lines.join('\n')],
    ['csv', capture],
    ['log', finishedLog(5).bytes.toString()],
  ];
}

/** What is put in: each is something some reader somewhere has stumbled over. */
const TOKENS = [
  '\u001b[2J',
  '\u009b',
  '\0',
  '\u202e',
  '\ufeff',
  '\u2028',
  '\ud800',
  '\r',
  '\t',
  '\n',
  '\n\n',
  '  ',
  ' ',
  '"',
  "'",
  '{',
  '}',
  '[',
  ']',
  ':',
  ': ',
  '- ',
  '? ',
  '#',
  '&a ',
  '*a ',
  '!!js/function ',
  '!x ',
  '|',
  '>',
  '%YAML 1.1\n',
  '---\n',
  '...\n',
  '<<: ',
  '__proto__: ',
  'constructor: ',
  'toString',
  '.nan',
  '.inf',
  '1e999',
  '-1',
  '0',
  '1e-300',
  '99999999999999999999',
  'null',
  'true',
  '~',
  '$',
  '{sensor.feed}',
  '{__proto__}',
  '$__proto__',
  ' +/- 900 %',
  ' Mohm',
  '\\',
  ',',
  ';',
  '=',
  '\u{1f600}',
  'x'.repeat(3000),
  '['.repeat(500),
  '{a: '.repeat(200),
  '\n- '.repeat(100),
];

type Change = (text: string, random: () => number, all: readonly [Kind, string][]) => string;
const at = (text: string, random: () => number) => Math.floor(random() * (text.length + 1));
const span = (random: () => number) => 1 + Math.floor(random() ** 3 * 200);

const CHANGES: readonly Change[] = [
  (text, random) => insert(text, at(text, random), TOKENS[Math.floor(random() * TOKENS.length)]!),
  (text, random) => {
    const from = at(text, random);
    return text.slice(0, from) + text.slice(from + span(random));
  },
  (text, random) => {
    const from = at(text, random);
    return insert(text, at(text, random), text.slice(from, from + span(random)));
  },
  (text, random) => {
    const from = at(text, random);
    const sign = String.fromCharCode(text.charCodeAt(from) ^ (1 << Math.floor(random() * 7)));
    return text.slice(0, from) + sign + text.slice(from + 1);
  },
  (text, random, all) => {
    const other = all[Math.floor(random() * all.length)]![1];
    const from = at(other, random);
    return insert(text, at(text, random), other.slice(from, from + span(random)));
  },
  (text, random) => byLine(text, random, (lines, n) => lines.splice(n, 1)),
  (text, random) => byLine(text, random, (lines, n) => lines.splice(n, 0, lines[n]!)),
  (text, random) =>
    byLine(text, random, (lines, n) =>
      lines.splice(n, 0, lines.splice(at(text, random) % lines.length, 1)[0]!),
    ),
  (text, random) =>
    byLine(text, random, (lines, n) => {
      lines[n] = random() < 0.5 ? `  ${lines[n]}` : lines[n]!.replace(/^ {1,2}/, '');
    }),
  // A value in place of a value, so that the file is still well-formed and the schema and what follows it see it.
  (text, random) => everyNth(text, random, /(?<=: )[^\s{}[\],:]+/g, TOKENS),
  (text, random) =>
    everyNth(text, random, /\d+(?:\.\d+)?/g, [
      '0',
      '-5',
      '1e9',
      '1e-9',
      '900',
      '1e400',
      '0.5',
      'x',
    ]),
  (text, random) =>
    everyNth(text, random, /[a-z-]+(?=:)/g, [
      'x',
      'toString',
      '__proto__',
      'kind',
      'circuit',
      'title',
    ]),
  (text, random) => text.slice(0, at(text, random)),
];

function insert(text: string, where: number, what: string): string {
  return text.slice(0, where) + what + text.slice(where);
}

function byLine(
  text: string,
  random: () => number,
  change: (lines: string[], n: number) => unknown,
): string {
  const lines = text.split('\n');
  change(lines, Math.floor(random() * lines.length));
  return lines.join('\n');
}

function everyNth(
  text: string,
  random: () => number,
  pattern: RegExp,
  values: readonly string[],
): string {
  const found = [...text.matchAll(pattern)];
  const one = found[Math.floor(random() * found.length)];
  if (!one) return text;
  const value = values[Math.floor(random() * values.length)]!;
  return text.slice(0, one.index) + value + text.slice(one.index + one[0].length);
}

it(
  `${MUTATIONS} mutations: no crash, nothing slow, nothing polluted, every issue at its place`,
  () => {
    const random = seededRandom(SEED);
    const all = goodOnes();
    for (const [kind, text] of all) expect(readAs(kind, text).issues).toEqual([]);
    const prototypes = prototypesNow();
    const tally = { refused: 0, accepted: 0, slowest: 0 };
    const flaws: string[] = [];
    for (let n = 0; n < MUTATIONS; n += 1) {
      const [kind, good] = all[Math.floor(random() * all.length)]!;
      let text = good;
      for (let changes = 1 + Math.floor(random() ** 3 * 5); changes > 0; changes -= 1)
        text = CHANGES[Math.floor(random() * CHANGES.length)]!(text, random, all);
      const content = Buffer.from(text); // as it would come from a disk: lone surrogates become U+FFFD
      let flaw: string | null = null;
      try {
        const { value, ms } = cpuMs(() => readAs(kind, content));
        flaw = flawOfAnswer(value, content.toString());
        tally[value.usable ? 'accepted' : 'refused'] += 1;
        tally.slowest = Math.max(tally.slowest, Math.round(ms));
        if (ms > ANSWER_MS) flaw = `took ${Math.round(ms)} ms`;
      } catch (error) {
        flaw = `crashed: ${error instanceof Error ? error.stack?.slice(0, 400) : String(error)}`;
      }
      if (prototypesNow() !== prototypes) flaw = 'changed a prototype';
      if (flaw) flaws.push(`mutation ${n} of a ${kind}: ${flaw}`);
      if (flaws.length > 5) break;
    }
    console.info(`mutations=${MUTATIONS} seed=${SEED} ${JSON.stringify(tally)} ms`);
    expect(flaws).toEqual([]);
    // A mutation that hardly ever gets past the first gate tests only that gate.
    expect(tally.accepted).toBeGreaterThan(MUTATIONS / 20);
    expect(tally.refused).toBeGreaterThan(MUTATIONS / 4);
  },
  TIME_MS,
);
