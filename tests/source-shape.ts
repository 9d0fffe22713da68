/** What stands in a source file, read from its text: exports with their comments, functions with their length. Relies on the formatter's indents. */

/** An export that needs to be explained. */
export interface Exported {
  readonly name: string;
  readonly line: number;
  /** The words of its comment; null where there is none. */
  readonly doc: string | null;
}

/** A function, method or named arrow function. */
export interface Measured {
  readonly name: string;
  readonly line: number;
  readonly lines: number;
}

const EXPORT = /^export (?:abstract )?(?:async )?(?:function\*?|type|interface|class) (\w+)/;
const FUNCTION =
  /^( *)(?:export )?(?:default )?(?:(?:async )?function\*? (\w+)|(?:const|let) (\w+)\b[^\n]*=> \{$|(?:const|let) (\w+)\b[^\n]*= (?:async )?\($|(?:(?:private|protected|static|async|get|set|override) )*(\w+)\((?:$|.*\{$))/;
const NO_METHOD = ['if', 'for', 'while', 'switch', 'return', 'catch', 'super', 'constructor'];

/**
 * Exported functions, types, interfaces and classes. Left out is what something beside it explains: a type that is the
 * members of a list with a comment, and of a file with a component the component, which the file's header is about, and its props.
 */
export function exportsOf(file: string, text: string): Exported[] {
  const lines = text.split('\n');
  const chief = file
    .replace(/^.*\/|\.tsx?$/g, '')
    .replace(/(?:^|-)([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
  const byHeader = file.endsWith('.tsx') && text.startsWith('/**') ? [chief, `${chief}Props`] : [];
  return lines.flatMap((line, at) => {
    const name = EXPORT.exec(line)?.[1];
    if (!name || byHeader.includes(name)) return [];
    const doc = docAbove(lines, at);
    const list = /^export type .*= \(?(?:keyof )?\(?typeof (\w+)/.exec(line)?.[1];
    const isListed = list !== undefined && isExplained(lines, list);
    return doc === null && isListed ? [] : [{ name, line: at + 1, doc }];
  });
}

function isExplained(lines: readonly string[], list: string): boolean {
  const at = lines.findIndex((line) => new RegExp(`^(?:export )?const ${list}\\b`).test(line));
  return at > 0 && docAbove(lines, at) !== null;
}

function docAbove(lines: readonly string[], at: number): string | null {
  if (!lines[at - 1]?.endsWith('*/')) return null;
  let from = at - 1;
  while (from >= 0 && !lines[from]!.trimStart().startsWith('/*')) from -= 1;
  const words = lines.slice(from, at).map((line) => line.replace(/^\s*\/?\*+\/?|\*\/$/g, ''));
  return words.join(' ').trim();
}

const EMPTY_WORDS = new Set(
  'the a an of its as in to and is for that this it with what one or on are all be which at by from was has have'.split(
    ' ',
  ),
);

/** Whether a comment has two words at least that the name has not, in whichever of their forms. */
export function saysMore({ name, doc }: Exported): boolean {
  const own = name
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[ _]/)
    .map(stem);
  const words = new Set((doc ?? '').toLowerCase().match(/[\p{L}\d]+/gu) ?? []);
  return (
    [...words].filter((word) => !EMPTY_WORDS.has(word) && !own.includes(stem(word))).length > 1
  );
}

function stem(word: string): string {
  return word.replace(/(?:ies|es|s|ed|ing|e)$/, '');
}

/** Every function of a file that has a name, from its first line to its closing brace. */
export function functionsOf(text: string): Measured[] {
  const lines = text.split('\n');
  return lines.flatMap((line, at) => {
    const [, indent, ...names] = FUNCTION.exec(line) ?? [];
    const name = names.find((one) => one !== undefined);
    if (indent === undefined || !name || NO_METHOD.includes(name)) return [];
    // A signature over several lines closes its own brackets first, and ends in an opening brace.
    const closes = (one: string, by: string) => one.startsWith(`${indent}${by}`);
    const end = lines.findIndex(
      (one, other) => other > at && closes(one, '}') && !one.endsWith('{'),
    );
    const isCall = lines.slice(at, end).some((one) => closes(one, ')') && !one.endsWith('{'));
    const isBody = /^ *\}[;,]?$/.test(lines[end] ?? '');
    return isBody && !isCall ? [{ name, line: at + 1, lines: end - at + 1 }] : [];
  });
}
