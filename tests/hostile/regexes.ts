/** The regular expressions of the program's source, and texts that each of them has most to do with. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One of them, and where it stands. */
export interface FoundRegex {
  readonly where: string;
  readonly regex: RegExp;
}

/** A literal stands where a value begins; a sign of division does not. */
const LITERAL =
  /(?<=(?:[(,=:[!&|?{};>]|\breturn)\s*)\/((?:[^/\\[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])+)\/([dgimsuvy]*)/g;

/** All literals below a folder, validators made by machine left out. */
export function regexesIn(folder: string): FoundRegex[] {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  return names
    .filter((name) => /\.tsx?$/.test(name) && !name.includes('generated'))
    .sort()
    .flatMap((name) => {
      const lines = readFileSync(join(folder, name), 'utf8').split('\n');
      return lines.flatMap((line, index) => {
        if (/^\s*(\*|\/\/)|\/\*\*/.test(line)) return [];
        return [...line.matchAll(LITERAL)].map(([, source, flags]) => ({
          where: `${name}:${index + 1} /${source}/${flags}`,
          regex: new RegExp(source!, flags),
        }));
      });
    });
}

/** One sign of each kind that a class of an expression may stand for. */
const KINDS = [
  ' ',
  '\t',
  '\n',
  'a',
  'A',
  '1',
  '.',
  '-',
  '"',
  "'",
  '\\',
  '{',
  '/',
  '\u0301',
  '\u200b',
  '語',
  '\u05d0',
  '\u0000',
];

/** What is repeated: signs of the kinds, signs of the expression itself and its words. */
export function unitsFor(regex: RegExp): string[] {
  const words = regex.source.match(/[A-Za-z]{2,}/g) ?? [];
  const own = [...regex.source.replace(/\\[pP]\{[^}]*\}|\\[a-z]/g, '')];
  return [
    ...new Set([
      ...KINDS,
      ...own,
      ...words,
      ...own.map((sign) => `${sign}1`),
      'a ',
      '1.',
      ' \n',
      '1 ',
      'a-',
    ]),
  ];
}

/** What stands before and behind: nothing, what ends a run, and what an expression may have to begin with. */
export function aroundFor(regex: RegExp): readonly (readonly [string, string])[] {
  const begin =
    /^\^?((?:\\?[^\\()[\]{}.*+?|^$])+)/.exec(regex.source)?.[1]?.replace(/\\(?=\W)/g, '') ?? '';
  return [
    ['', '!'],
    ['', 'x'],
    ['', '\u0001\n'],
    [begin, '!'],
    [begin, ''],
  ];
}
