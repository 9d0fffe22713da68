/** Which session a person means: by path, file name, id, the beginning of either, or `last`. */
import { statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { systemCode } from '../files/error-code.ts';
import { sessionPart } from '../files/safe-name.ts';
import type { Disk } from '../log/disk.ts';
import { Unworkable } from '../source/unworkable.ts';
import type { IndexRow } from './index-row.ts';
import type { RecordIndex } from './record-index.ts';

/** The path of the one session that is meant, or why it is none or several. */
export type FoundSession =
  | { readonly ok: true; readonly path: string }
  | { readonly ok: false; readonly words: string; readonly fix: string };

const SHOWN_CHOICES = 5;

/** A path as it is; with an earlier part of a session, the last part beside it. Null when there is no such file. */
export function sessionAtPath(disk: Disk, cwd: string, name: string): string | null {
  const path = resolve(cwd, name);
  if (!isFile(path)) return null;
  const own = sessionPart(basename(path));
  if (!own) return path;
  const parts = disk
    .list(dirname(path))
    .map((file) => ({ file, part: sessionPart(file) }))
    .filter(({ part }) => part?.stem === own.stem)
    .sort((a, b) => (b.part?.part ?? 0) - (a.part?.part ?? 0));
  return join(dirname(path), parts[0]?.file ?? basename(path));
}

/** A name of thousands of letters is that of no file. In a folder that nobody may go into it could be one. */
function isFile(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false })?.isFile() === true;
  } catch (error) {
    const code = systemCode(error);
    if (code === 'EACCES' || code === 'EPERM')
      throw new Unworkable(
        `reading is not allowed there (${path})`,
        'ask for the right to read it',
      );
    if (code !== 'ENAMETOOLONG') throw error;
    return false;
  }
}

/** The session file of that whole name in `folder`, with its ending or without: samples and drills are in no index. */
export function sessionFileIn(disk: Disk, folder: string, name: string): string | null {
  return sessionAtPath(disk, folder, name.endsWith('.jsonl') ? name : `${name}.jsonl`);
}

/** The session of the index that `name` means. */
export function sessionInIndex(index: RecordIndex, name: string): FoundSession {
  const { rows, folder } = index;
  if (name === 'last' && rows[0]) return { ok: true, path: join(folder, rows[0].file) };
  const stem = sessionPart(name)?.stem ?? name;
  const exact = rows.filter((row) => row.stem === stem || row.id === name);
  const wide = stem.toLowerCase();
  const begins = (row: IndexRow) =>
    row.stem.toLowerCase().startsWith(wide) || row.id.toLowerCase().startsWith(wide);
  const found = exact.length > 0 ? exact : name === '' ? [] : rows.filter(begins);
  const [only, ...more] = found;
  if (only && more.length === 0) return { ok: true, path: join(folder, only.file) };
  if (!only)
    return {
      ok: false,
      words: `no session "${name}" in ${folder}`,
      fix: 'see them with: ohmward records list',
    };
  const shown = found.slice(0, SHOWN_CHOICES).map((row) => row.stem);
  const rest = found.length - shown.length;
  return {
    ok: false,
    words: `"${name}" fits ${found.length} sessions: ${shown.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`,
    fix: 'write more of the name',
  };
}
