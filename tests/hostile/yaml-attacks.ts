/** What can be wrong with any of the YAML files, made out of a good one. */
import { LONG, SEED } from '../campaign.ts';
import { GOOD, type GoodFile } from './good-files.ts';
import { YAML_KINDS, type YamlKind } from './readers.ts';

interface Attack {
  readonly what: string;
  readonly text: (good: GoodFile) => string;
  /** Null: accepted, and harmless. */
  readonly code: string | null;
  /** Kinds with other limits, and what they say. */
  readonly but?: Partial<Record<YamlKind, string | null>>;
  /** Where the issue must be; null where there is no one line. */
  readonly line: (good: GoodFile) => number | null;
}

const here = (good: GoodFile): number | null => good.line;
const first = (): number | null => 1;
const nowhere = (): number | null => null;

/** The good file with these lines in place of the one with the text. */
function instead(good: GoodFile, ...lines: string[]): string {
  const all = [...good.lines];
  all.splice(good.line - 1, 1, ...lines);
  return `${all.join('\n')}\n`;
}

/** The text replaced by `value`. */
function value(what: string, written: string, code: string | null, line = here): Attack {
  return {
    what,
    code,
    line,
    text: (good) => instead(good, `${good.indent}${good.key}: ${written}`),
  };
}

/** A line added behind the text, at the same indent. */
function added(what: string, written: string, code: string): Attack {
  return {
    what,
    code,
    line: ({ line }) => line + 1,
    text: (good) => instead(good, `${good.indent}${good.key}: a text`, `${good.indent}${written}`),
  };
}

function whole(
  what: string,
  text: (good: GoodFile) => string,
  code: string | null,
  line: Attack['line'] = nowhere,
): Attack {
  return { what, text, code, line };
}

const plain = (good: GoodFile) => `${good.lines.join('\n')}\n`;
const times = (count: number, one: (n: number) => string, joint = '') =>
  Array.from({ length: count }, (_, n) => one(n)).join(joint);

const CHARACTERS: readonly (readonly [string, string])[] = [
  ['a raw escape', 'a \u001b[2J b'],
  ['a written escape', '"a \\e[31m b"'],
  ['a raw bell', 'a \u0007 b'],
  ['a written clipboard order', '"\\e]52;c;QUFB\\a"'],
  ['a raw eight-bit control sequence', 'a \u009b2J b'],
  ['a written eight-bit title order', '"\\x9d0;title\\x9c"'],
  ['a right-to-left override', 'a \u202e b'],
  ['a left-to-right isolate', 'a \u2066 b'],
  ['a zero-width space', 'a\u200bb'],
  ['a zero-width joiner', 'a\u200db'],
  ['a byte-order mark in the middle', 'a\ufeffb'],
  ['a line separator', 'a\u2028b'],
  ['a soft hyphen', 'a\u00adb'],
  ['a written zero', '"a\\0b"'],
  ['a tag character', 'a\u{e0041}b'],
  ['a private character', 'a\ue000b'],
  ['an unassigned character', 'a\u0378b'],
  ['a lone surrogate', '"a\\uD800b"'],
  ['no character at all', 'a\ufffeb'],
  ['a delete', 'a\u007fb'],
  ['a written carriage return', '"a\\rb"'],
  ['a vertical tab', '"a\\vb"'],
];

const ATTACKS: readonly Attack[] = [
  ...CHARACTERS.map(([what, written]) => value(what, written, 'invisible-character')),
  added('a key __proto__', '__proto__: { polluted: true }', 'bad-key'),
  added('a quoted key __proto__', '"__proto__": x', 'bad-key'),
  added('an escaped key __proto__', '"\\x5f_proto__": { toString: x }', 'bad-key'),
  added('a key constructor', 'constructor: { prototype: { polluted: true } }', 'bad-key'),
  added('a key prototype', 'prototype: x', 'bad-key'),
  added('a merge key', '<<: { polluted: true }', 'bad-key'),
  added('a list as a key', '? [a, b]\n: c', 'yaml-syntax'),
  added('a group in braces as a key', '{ a: b }: c', 'yaml-syntax'),
  added('an empty text as a key', '"": c', 'bad-key'),
  added('a key with an escape in it', '"a\\eb": c', 'invisible-character'),
  added('a key toString', 'toString: x', 'unknown-key'),
  added('a key hasOwnProperty', 'hasOwnProperty: x', 'unknown-key'),
  added('a key of 900,000 letters', `${'k'.repeat(900_000)}: x`, 'yaml-syntax'),
  added('a quoted key of 1,000 letters', `"${'k'.repeat(1000)}": x`, 'unknown-key'),
  added('a quoted key of 300,000 letters', `"${'k'.repeat(300_000)}": x`, 'yaml-syntax'),
  {
    what: 'the same key twice',
    code: 'repeated-key',
    line: ({ line }) => line + 1,
    text: (good) =>
      instead(good, `${good.indent}${good.key}: a text`, `${good.indent}${good.key}: another`),
  },
  {
    what: 'the same key twice, once in quotes',
    code: 'repeated-key',
    line: ({ line }) => line + 1,
    text: (good) =>
      instead(good, `${good.indent}${good.key}: a text`, `${good.indent}"${good.key}": another`),
  },
  value('an anchor', '&a text', 'yaml-alias'),
  value('an alias to nothing', '*nobody', 'yaml-alias'),
  value('an alias in a circle', '&a [*a]', 'yaml-alias'),
  value(
    'aliases that multiply',
    `[&a [x, x], ${times(8, (n) => `&${'bcdefghi'[n]} [*${'abcdefgh'[n]}, *${'abcdefgh'[n]}]`, ', ')}]`,
    'yaml-alias',
  ),
  value('20,000 aliases', `[&a x, ${times(20_000, () => '*a', ', ')}]`, 'yaml-alias'),
  value('a tag of another language', "!!js/function 'x'", 'yaml-syntax'),
  value('a tag of our own', '!include other.yaml', 'yaml-syntax'),
  value('a tag for bytes', '!!binary aGVsbG8=', 'yaml-syntax'),
  value('a tag for a time', '!!timestamp 2031-01-01', 'yaml-syntax'),
  value('a written-out tag', '!<tag:example.invalid,2031:x> x', 'yaml-syntax'),
  value('infinity', '.inf', 'bad-number'),
  value('no number', '.nan', 'bad-number'),
  value('a number beyond all bounds', '1e400', 'bad-number'),
  value('a number with more digits than it can keep', '12345678901234567890', 'wrong-type'),
  value('an octal number', '0o17', 'wrong-type'),
  value('a list', '[a, b]', 'wrong-type'),
  value('a group', '{ a: b }', 'wrong-type'),
  value('nothing', '', 'wrong-type'),
  value('a tilde', '~', 'wrong-type'),
  value('a truth', 'true', 'wrong-type'),
  {
    ...value('a word that was a truth in YAML 1.1', 'yes', null, nowhere),
    but: { cautions: 'out-of-bounds' },
  },
  {
    ...value('a number that was a time in YAML 1.1', '12:30:45', null, nowhere),
    but: { cautions: 'out-of-bounds' },
  },
  value('a text of 900,000 letters', 'x'.repeat(900_000), 'out-of-bounds', nowhere),
  value('a quote that does not end', '"a text', 'yaml-syntax', nowhere),
  value('a list that does not end', '[a, b', 'yaml-syntax', nowhere),
  value('a group that does not end', '{ a: b', 'yaml-syntax', nowhere),
  value('an unknown escape', '"a \\q b"', 'yaml-syntax'),
  value('a key inside a value', 'a: b: c', 'yaml-syntax'),
  value('40 lists in each other', `${'['.repeat(40)}${']'.repeat(40)}`, 'file-too-large'),
  value('40 groups in each other', `${'{ a: '.repeat(40)}1${' }'.repeat(40)}`, 'file-too-large'),
  value('10,000 lists in each other', `${'['.repeat(10_000)}${']'.repeat(10_000)}`, 'yaml-syntax'),
  value('lists that only open', '['.repeat(5000), 'yaml-syntax', nowhere),
  value('10,000 groups', `${'{ a: '.repeat(10_000)}`, 'yaml-syntax', nowhere),
  value('30,000 values', `[${times(30_000, String, ', ')}]`, 'file-too-large'),
  {
    what: 'a flood of 15,000 keys',
    code: 'unknown-key',
    line: ({ line }) => line + 1,
    text: (good) =>
      instead(
        good,
        `${good.indent}${good.key}: a text`,
        ...Array.from({ length: 15_000 }, (_, n) => `${good.indent}k${n}: x`),
      ),
  },
  {
    what: 'a flood of 60,000 keys',
    code: 'file-too-large',
    line: nowhere,
    text: (good) =>
      instead(
        good,
        `${good.indent}${good.key}: a text`,
        ...Array.from({ length: 60_000 }, (_, n) => `${good.indent}k${n}: x`),
      ),
  },
  {
    what: 'the same key 15,000 times',
    code: 'repeated-key',
    line: ({ line }) => line + 1,
    text: (good) =>
      instead(good, ...Array.from({ length: 15_000 }, () => `${good.indent}${good.key}: a text`)),
  },
  {
    what: 'a tab as indent',
    code: 'yaml-syntax',
    line: nowhere,
    text: (good) => instead(good, `${good.indent}${good.key}:`, '\t- a', '\t- b'),
  },
  {
    what: '30,000 mistakes',
    code: 'yaml-syntax',
    line: nowhere,
    text: (good) =>
      instead(
        good,
        times(30_000, () => '- ]', '\n'),
      ),
  },
  whole('YAML 1.1 asked for', (good) => `%YAML 1.1\n---\n${plain(good)}`, 'yaml-version', first),
  whole('YAML 9.9 asked for', (good) => `%YAML 9.9\n---\n${plain(good)}`, 'yaml-syntax', first),
  whole('an unknown directive', (good) => `%LOAD x\n---\n${plain(good)}`, 'yaml-syntax', first),
  whole(
    'two documents',
    (good) => `${plain(good)}---\n${plain(good)}`,
    'yaml-syntax',
    ({ lines }) => lines.length + 1,
  ),
  whole('a second document that is empty', (good) => `${plain(good)}---\n`, 'yaml-syntax'),
  whole('an end mark and more', (good) => `${plain(good)}...\n!!x [\n`, 'yaml-syntax'),
  whole('an empty file', () => '', 'wrong-type', first),
  whole('only a comment', () => '# nothing here\n', 'wrong-type', first),
  whole('only blanks', () => '  \n \n', 'wrong-type'),
  whole('only a word', () => 'hello\n', 'wrong-type', first),
  whole('only a number', () => '42\n', 'wrong-type', first),
  whole('a list at the top', () => '- a\n- b\n', 'wrong-type', first),
  whole('only zeros', () => '\0'.repeat(5000), 'invisible-character', first),
  whole('only escapes', () => '\u001b[2J'.repeat(2000), 'invisible-character', first),
  whole('lone carriage returns', ({ lines }) => lines.join('\r'), 'yaml-syntax'),
  whole('lines that end in both', ({ lines }) => lines.join('\r\n'), null),
  whole('a byte-order mark at the front', (good) => `\ufeff${plain(good)}`, null),
  whole(
    'one letter too many in few lines',
    (good) => `${plain(good)}#`.padEnd(1_000_001, 'x'),
    'file-too-large',
    first,
  ),
  whole(
    '990,000 empty lines',
    (good) => plain(good).padEnd(990_000, '\n'),
    'file-too-large',
    first,
  ),
  whole('49,000 empty lines', (good) => plain(good) + '\n'.repeat(49_000), null),
  whole('a comment of 990,000 letters', (good) => `${plain(good)}#`.padEnd(990_000, 'x'), null),
  whole(
    'the key that must be there is not',
    ({ lines, needed }) => lines.map((line) => line.replace(`${needed}:`, 'other:')).join('\n'),
    'missing-key',
  ),
  whole(
    'a text read with the wrong code table',
    (good) => Buffer.from(plain(good), 'utf16le').toString('latin1'),
    'invisible-character',
    first,
  ),
];

/** What the parser refuses with these never gets as far as the kind of the file. */
const REFUSED_BY_PARSER = ['yaml-syntax', 'yaml-alias', 'file-too-large', 'repeated-key'];
/** Above so many characters a file takes long enough to count. */
const LARGE = 4000;
const isParsersAlone = ATTACKS.map(
  ({ code, text }) => REFUSED_BY_PARSER.includes(code ?? '') && text(GOOD.job).length > LARGE,
);

/**
 * The attacks for a kind of file: all, but for large ones that concern the parser alone. Those are tried with one kind
 * each, in turn, and with every kind in the long form.
 */
export function attacksOn(kind: YamlKind): Attack[] {
  const turn = YAML_KINDS.indexOf(kind);
  return ATTACKS.filter(
    (_, index) => LONG || !isParsersAlone[index] || (index + SEED) % YAML_KINDS.length === turn,
  );
}
