/** Reads a text file a person names: at most 1 MB, strict UTF-8, and clear words when it cannot be read. */
import { safeText } from '../source/safe-text.ts';
import { errorCodeOf } from './error-code.ts';
import { readPlainFile } from './plain-file.ts';

/** No procedure, circuit, job, answer list or capture a person keeps by hand is larger. */
export const MAX_TEXT_BYTES = 1_000_000;

/**
 * Why a file could not be read: `code` for programs, `words` and `fix` for people, each without a full stop. `path` is
 * for people too: as a terminal may show it.
 */
export interface ReadProblem {
  readonly code: string;
  readonly path: string;
  readonly words: string;
  readonly fix: string;
}

/** The text without byte-order mark, or the problem. Line ends are left as they are. */
export function readTextFile(
  path: string,
  maxBytes: number = MAX_TEXT_BYTES,
): { readonly text: string } | { readonly problem: ReadProblem } {
  const refuse = (code: string, words: string, fix: string) => ({
    problem: { code, path: safeText(path), words, fix },
  });
  let bytes: Buffer;
  try {
    bytes = readPlainFile(path, maxBytes + 1);
  } catch (error) {
    const code = errorCodeOf(error);
    const [words, fix] = CAUSES[code] ?? [`the system refused with ${code}`, 'look at the file'];
    return refuse(code, words, fix);
  }
  if (bytes.length > maxBytes)
    return refuse(
      'too-large',
      `the file is larger than ${maxBytes} bytes`,
      'check that it is the right file, or split it',
    );
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return refuse('not-utf-8', badTextWords(bytes), 'save it as UTF-8 in your editor');
  }
}

const CAUSES: Readonly<Record<string, readonly [string, string]>> = {
  ENOENT: ['there is no such file', 'check the spelling and the folder'],
  EISDIR: ['this is a folder, not a file', 'name a file inside it'],
  ENOTDIR: ['a part of this path is a file, not a folder', 'check the path'],
  EACCES: ['you are not allowed to read this file', 'ask its owner for the right to read it'],
  EPERM: ['you are not allowed to read this file', 'ask its owner for the right to read it'],
  ELOOP: ['the links of this path lead in a circle', 'name the file itself'],
  ENAMETOOLONG: ['the name is too long', 'check the path'],
  EIO: ['the disk reported a fault', 'check the disk and its cable'],
  'not-a-file': ['this is a device or a pipe, not a file', 'save its contents to a file first'],
  ERR_INVALID_ARG_VALUE: ['the name holds a character no file name can hold', 'check the path'],
};

function badTextWords(bytes: Buffer): string {
  const wide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (wide) return 'the file is UTF-16 text, not UTF-8';
  return `the file is not UTF-8 text, first at line ${badLine(bytes)}`;
}

function badLine(bytes: Buffer): number {
  let line = 1;
  for (let from = 0; from <= bytes.length; line += 1) {
    const end = bytes.indexOf(0x0a, from);
    const to = end < 0 ? bytes.length : end;
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(from, to));
    } catch {
      return line;
    }
    from = to + 1;
  }
  return line;
}
