/**
 * The index of a folder of sessions and of the drills beside them: a file that can be thrown away at any time, since the session files are the
 * truth and whatever changed since is read anew. Two lines a session, its row with tabs between the fields and its
 * folded text, and one line of all words for spelling help: plain lines are read several times faster than JSON.
 */
import { readdirSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { sessionPart } from '../files/safe-name.ts';
import { type Disk, errorCode } from '../log/disk.ts';
import { sha256 } from '../log/hash.ts';
import { writeWholeFile } from '../log/write-whole.ts';
import { wordsOf } from './fold-text.ts';
import { type IndexRow, indexRow, lineOfRow, rowOfLine } from './index-row.ts';

const HEAD = 'ohmward records index 3';

/** The sessions of a folder as lists and searches need them. */
export interface RecordIndex {
  readonly folder: string;
  /** Newest first. */
  readonly rows: readonly IndexRow[];
  /** Folded text of each row. */
  readonly texts: readonly string[];
  /** Every word of the texts, some of them from sessions that are gone. */
  readonly vocabulary: readonly string[];
  /** How many sessions had to be read. */
  readonly fresh: number;
  /** Why the index could not be kept; it only makes the next start slower. */
  readonly warning: string | null;
}

interface Stored {
  readonly rows: readonly IndexRow[];
  readonly texts: readonly string[];
  readonly vocabulary: readonly string[];
}

/** The index file of a folder: in the user's cache, named after the folder. */
export function indexPath(
  env: Readonly<Record<string, string | undefined>>,
  folder: string,
): string {
  const given = env['XDG_CACHE_HOME'];
  const cache = given && isAbsolute(given) ? given : join(env['HOME'] || homedir(), '.cache');
  return join(cache, 'ohmward', `records-${sha256(resolve(folder)).slice(0, 16)}.index`);
}

/** The index of `folder` as the session files are now; `words` when the folder cannot be read. */
export function openIndex(
  disk: Disk,
  folder: string,
  path: string,
  told: (done: number, of: number) => void = () => undefined,
): { readonly index: RecordIndex } | { readonly words: string } {
  let found: Map<string, FoundFile>;
  try {
    found = findFiles(folder);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code !== 'ENOENT') return { words: `the folder ${folder} cannot be read (${code})` };
    found = new Map();
  }
  const stored = readStored(disk, path);
  const kept = new Map(stored.rows.map((row, i) => [row.stem, i]));
  const entries: { row: IndexRow; text: string }[] = [];
  const newWords = new Set<string>();
  let fresh = 0;
  for (const { stem, file, stamp } of found.values()) {
    const at = kept.get(stem);
    const row = at === undefined ? undefined : stored.rows[at];
    if (at !== undefined && row?.stamp === stamp && row.file === file) {
      entries.push({ row, text: stored.texts[at] ?? '' });
      continue;
    }
    fresh += 1;
    told(fresh, found.size);
    const made = indexRow(disk, join(folder, file), { stem, file, stamp });
    for (const word of wordsOf(made.text)) newWords.add(word);
    entries.push(made);
  }
  entries.reverse();
  const index = {
    folder,
    rows: entries.map(({ row }) => row),
    texts: entries.map(({ text }) => text),
    vocabulary: fresh === 0 ? stored.vocabulary : [...new Set([...stored.vocabulary, ...newWords])],
  };
  const same = fresh === 0 && stored.rows.length === entries.length;
  return { index: { ...index, fresh, warning: same ? null : keep(disk, path, index) } };
}

interface FoundFile {
  readonly stem: string;
  /** The last part, from the folder of the index on. */
  readonly file: string;
  readonly part: number;
  readonly stamp: string;
}

function findFiles(folder: string): Map<string, FoundFile> {
  const found = new Map<string, FoundFile>();
  const names = readdirSync(folder).map((name) => ({ name, path: name }));
  const byName = [...names, ...drillsIn(folder)].sort((a, b) => (a.name < b.name ? -1 : 1));
  for (const { name, path } of byName) {
    const id = sessionPart(name);
    if (!id) continue;
    const stat = statSync(join(folder, path), { throwIfNoEntry: false });
    if (!stat?.isFile()) continue;
    const stamp = `${stat.size.toString(36)}.${stat.mtimeMs.toString(36)}`;
    const before = found.get(id.stem);
    const file = before && before.part > id.part ? before.file : path;
    const part = Math.max(before?.part ?? 0, id.part);
    found.set(id.stem, {
      stem: id.stem,
      file,
      part,
      stamp: before ? `${before.stamp}+${stamp}` : stamp,
    });
  }
  return found;
}

/** Where drills lie beside the other sessions. */
const DRILLS = 'drills';

function drillsIn(folder: string): { name: string; path: string }[] {
  try {
    return readdirSync(join(folder, DRILLS)).map((name) => ({ name, path: join(DRILLS, name) }));
  } catch (error) {
    // Most folders hold none, and one that is closed hides no session of this folder.
    errorCode(error);
    return [];
  }
}

/** What was kept, or nothing at all when it is missing, of another version or not whole. */
function readStored(disk: Disk, path: string): Stored {
  const nothing = { rows: [], texts: [], vocabulary: [] };
  let lines: string[];
  try {
    lines = Buffer.from(disk.read(path)).toString('utf8').split('\n');
  } catch (error) {
    errorCode(error);
    return nothing;
  }
  const [head, ...more] = lines;
  if (head !== HEAD || more.length % 2 !== 0 || more.at(-1) !== '') return nothing;
  const rows: IndexRow[] = [];
  const texts: string[] = [];
  for (let i = 0; i < more.length - 2; i += 2) {
    const row = rowOfLine(more[i]!);
    if (!row) return nothing;
    rows.push(row);
    texts.push(more[i + 1]!);
  }
  return { rows, texts, vocabulary: more.at(-2)!.split(' ') };
}

function keep(disk: Disk, path: string, { rows, texts, vocabulary }: Stored): string | null {
  const lines = rows.flatMap((row, i) => [lineOfRow(row), texts[i] ?? '']);
  const written = writeWholeFile(disk, path, [HEAD, ...lines, vocabulary.join(' '), ''].join('\n'));
  return written.ok ? null : `the index could not be kept: ${written.problem.words}`;
}
