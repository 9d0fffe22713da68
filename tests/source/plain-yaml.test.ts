/** Plain YAML is read as the parser that knows all of it reads it, or left to that one: both side by side. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readPlainYaml } from '../../src/source/plain-yaml.ts';
import { readWholeYaml } from '../../src/source/whole-yaml.ts';
import { LONG } from '../campaign.ts';
import { GOOD } from '../hostile/good-files.ts';
import { YAML_KINDS } from '../hostile/readers.ts';
import { attacksOn } from '../hostile/yaml-attacks.ts';
import fc from '../seeded-check.ts';

/** Whether it was read; what was read, and that nothing is wrong with it, is held against the other parser. */
function isReadTheSame(text: string): boolean {
  const data = readPlainYaml(text);
  if (data === null) return false;
  const { value, issues } = readWholeYaml(text, 'x.yaml');
  expect(issues, text).toEqual([]);
  // Compares -0 with 0, prototypes and undefined as well, but not the order of keys.
  expect(data, text).toStrictEqual(value!.data);
  expect(JSON.stringify(data), text).toBe(JSON.stringify(value!.data));
  return true;
}

const FILES = (readdirSync('procedures', { recursive: true }) as string[])
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => [name, readFileSync(join('procedures', name), 'utf8')] as const);

test.each(FILES)('%s is plain', (_, text) => {
  expect(isReadTheSame(text)).toBe(true);
});

test.each([
  'a:\n- b\n- c: d\n  e:\n  - f\ng: h',
  '# a\n\na:   # b\n\n  # c\n  b: c # d\n',
  'a:\nb: ~\nc: [ 1, -2.5, "x, y", \'z\', {} ]\nd: { e: [], f: { g: h i } }\n',
  'a: |\n  b\n\n  # c\nd: >\n  e\n  f\n\n  g\n\n',
  'say: Größe "5 V" +/- 10 %, 12:30, it\'s & so\n',
])('%j is plain', (text) => {
  expect(isReadTheSame(text)).toBe(true);
});

/** What can stand behind a key, in a list and in brackets. */
const VALUES = [
  ...[
    '1',
    '-1',
    '-0',
    '012',
    '1.50',
    '5.',
    '.5',
    '-.5',
    '+3',
    '1e3',
    '0o7',
    '0x1F',
    '0b1',
    '1_000',
  ],
  ...[
    '999999999999999',
    '12345678901234567890',
    '1.2.3',
    '1e',
    '.inf',
    '-.inf',
    '.nan',
    '.',
    '+.5',
  ],
  ...['~', '~x', 'null', 'Null', 'null x', 'true', 'True', 'FALSE', 'yes', 'no', 'on', 'y', 'n'],
  ...['4.5 V', '-5 V', '5 V +/- 10 %', '12:30', '2031-01-01', 'a word', 'two  blanks', 'a, b', ''],
  ...['a:b', 'a: b', 'a :b', 'a : b', 'a:', ':a', '::', 'a #b', 'a#b', 'a # b', '#b', 'http://x/y'],
  ...[
    '"a"',
    "'a'",
    '"a\\nb"',
    "'it''s'",
    '"a" b',
    '"a": b',
    '"a # b"',
    "'a: b'",
    '"a',
    '""',
    "' '",
  ],
  ...[
    '[]',
    '[a]',
    '[ a , b ]',
    '[a,]',
    '[a,,b]',
    '[a: b]',
    '[a] b',
    '[a] # c',
    '[a]# c',
    '[[a], b]',
  ],
  ...[
    '{}',
    '{a: b}',
    '{a:b}',
    '{a}',
    '{a: b,}',
    '{a: , b: c}',
    '{a: 1, a: 2}',
    '{"a": b}',
    '{a: [b}',
  ],
  ...[
    '@a',
    '`a',
    '%a',
    '!a b',
    '!!str a',
    '&a b',
    '*a',
    '? a',
    '?a',
    '- a',
    '-a',
    '-',
    '---',
    '...',
  ],
  ...[
    '|',
    '>',
    '>-',
    '|+',
    '>2',
    '|-2',
    '> # c',
    '>-#',
    '>x',
    'a]',
    'a}',
    'a{b',
    'a"b',
    "a'b",
    'a|b',
  ],
  ...['ä ö', '\u00a0', 'a\u00a0#b', 'a\u2028b', 'a\u0085b', 'a\tb', 'a\\', '<<', 'a\rb', '\ufeffa'],
  'x'.repeat(2000),
];
const KEYS = [
  ...[
    'a',
    'b',
    'c-d',
    'e.f',
    'G_1',
    'to',
    'on',
    'y',
    'null',
    'True',
    '~',
    '1',
    '1.0',
    '0o7',
    '"a"',
  ],
  ...[
    "'a'",
    '',
    'a b',
    '? a',
    '__proto__',
    'constructor',
    'prototype',
    '<<',
    'toString',
    'ä',
    '*a',
  ],
  ...['a:b', 'a#', 'a ', '[a]', '!x a', '&x a', '-a', '.a', 'k'.repeat(1100)],
];

/** The other parser takes long over larger ones. */
const LARGE = 20_000;

describe('what is not plain is left', () => {
  const around: readonly ((value: string) => string)[] = [
    (value) => `a: ${value}\nb: ${value}\n`,
    (value) => `a: ${value}`,
    (value) => `a:\n- ${value}\n-   ${value}\n`,
    (value) => `- a: ${value}\n  b: c\n`,
    (value) => `a:\n  - b\n  - [${value}, b, ${value}]\n`,
    (value) => `a: { b: ${value}, c: ${value} } # d\n`,
    (value) => `a: >-\n  ${value}\n\n\n  ${value}\nb: |\n   ${value}\n   ${value}\n`,
    (value) => `a: b\n${value}\n`,
    (value) => `a: b\n  ${value}\n`,
    (value) => `# ${value}\na:\n\n  # ${value}\n  b: c\n`,
    (value) => `a: b\r\nc: ${value}\r\n`,
  ];
  test.each(around.map((form) => [form('VALUE'), form] as const))('%j', (_, form) => {
    for (const value of VALUES) isReadTheSame(form(value));
  });
  test('keys', () => {
    for (const key of KEYS)
      for (const text of [
        `${key}: b`,
        `- ${key}: b`,
        `a: { ${key}: b, ${key}: c }`,
        `a: 1\n${key}: 2`,
      ])
        isReadTheSame(text);
  });
  test.each(YAML_KINDS)('hostile files of the kind %s', (kind) => {
    for (const { text } of attacksOn(kind)) {
      const whole = text(GOOD[kind]);
      if (LONG || whole.length < LARGE) isReadTheSame(whole);
    }
  });
  test('as deep and as much as the other allows', () => {
    for (const count of [30, 31, 32, 33])
      isReadTheSame(`a: ${'['.repeat(count)}${']'.repeat(count)}`);
    for (const count of [19_997, 19_998, 19_999]) isReadTheSame(`a: [${'1,'.repeat(count)}1]`);
  });
});

const value = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('a', 'b c', '4.5 V', '1', 'true', '[a, b]') },
  fc.constantFrom(...VALUES),
);
const key = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 0, max: 40 }).map((n) => `k${n}`) },
  fc.constantFrom(...KEYS),
);
const blanks = (max: number) => fc.integer({ min: 0, max }).map((count) => ' '.repeat(count));
const line = fc.oneof(
  fc
    .tuple(key, fc.constantFrom(': ', ': ', ':  ', ':', ' : '), value)
    .map((parts) => parts.join('')),
  fc.tuple(key, fc.constantFrom(':', ': >-', ': |', ': # c')).map((parts) => parts.join('')),
  fc
    .tuple(fc.constantFrom('- ', '-  ', '- - '), key, value)
    .map(([dash, k, v]) => `${dash}${k}: ${v}`),
  value.map((words) => `- ${words}`),
  value,
  fc.constantFrom('', '# c', '---'),
);
/** Each line mostly in the column of the one before, or two to the right or left. */
const lines = fc
  .array(fc.tuple(fc.constantFrom(0, 0, 0, 0, 2, 2, -2, -2, 1), line), { maxLength: 7 })
  .map((all) => {
    let column = 0;
    return all.map(([step, words], index) => {
      column = index === 0 ? 0 : Math.max(0, column + step);
      return ' '.repeat(column) + words;
    });
  })
  .map((all) => all.join('\n'));
const brackets = fc.letrec<{ any: string }>((tie) => ({
  any: fc.oneof(
    { maxDepth: 4 },
    value,
    fc
      .array(fc.tuple(blanks(2), tie('any'), blanks(2)).map((parts) => parts.join('')))
      .map((all) => `[${all}]`),
    fc
      .array(fc.tuple(key, fc.constantFrom(': ', ':'), tie('any')).map((parts) => parts.join('')))
      .map((all) => `{ ${all} }`),
  ),
})).any;
const TEXT_LINES = ['a', 'b c', ' a', '  a', 'a ', '', '', ' ', '# a', '- a', 'a: b', '\u00a0a'];
const texts = fc
  .tuple(
    fc.constantFrom('>', '|', '>-', '|-', '>+', '|1'),
    blanks(3),
    fc.array(fc.tuple(blanks(1), fc.constantFrom(...TEXT_LINES)), { maxLength: 6 }),
    fc.constantFrom('', '\n', '\nb: c', '\n  # c\n', '\n\n\n'),
  )
  .map(
    ([head, indent, all, end]) =>
      `a:\n  b: ${head}\n${all.map(([more, words]) => `  ${indent}${more}${words}`).join('\n')}${end}`,
  );
/** A shipped file of the smaller ones with something put in, or a piece of it left out or written twice. */
const changed = fc
  .tuple(
    fc.constantFrom(...FILES.map(([, text]) => text).filter(({ length }) => length < 2500)),
    fc.nat(2500),
    fc.nat(30),
    fc.constantFrom(' ', '\n', ': ', '- ', '#', '"', '[', '}', ',', '|', '', '', 'twice'),
  )
  .map(([text, at, length, put]) =>
    put === 'twice'
      ? text.slice(0, at + length) + text.slice(at)
      : text.slice(0, at) + put + text.slice(put === '' ? at + length : at),
  );

test.each([
  ['lines', lines, 2000],
  ['brackets', brackets.map((words) => `a: ${words}\n`), 1000],
  ['texts over several lines', texts, 1500],
  ['shipped files with a change', changed, 100],
] as const)('drawn %s', (_, drawn, numRuns) => {
  let read = 0;
  fc.assert(
    fc.property(drawn, (text) => {
      if (isReadTheSame(text)) read += 1;
    }),
    { numRuns: LONG ? numRuns * 100 : numRuns },
  );
  // Else it was held against nothing.
  expect(read).toBeGreaterThan(numRuns / 50);
});
