/**
 * The sessions in a folder, newest first by their names, and of each the first and last line of its files.
 *
 * A list must open at once and must not fail on a damaged file, so files are read only for what is looked at, and nothing
 * is verified here: open the session for that. Parts of one session make one entry.
 */

import { closeSync, fstatSync, readdirSync, readSync } from 'node:fs';
import { join } from 'node:path';
import { errorCodeOf } from './error-code.ts';
import { outlineJson } from './outline-json.ts';
import { NOT_A_FILE, openPlainFile } from './plain-file.ts';
import { sessionPart } from './safe-name.ts';

/** A line of a session file as parsed JSON; nothing about it has been checked. */
export type LooseEvent = Readonly<Record<string, unknown>>;

/** One session on the disk, all of its parts together. */
export interface SessionEntry {
  /** The last part: the file to resume. */
  readonly path: string;
  /** All parts in the folder, first to last. */
  readonly paths: readonly string[];
  /** First event of the first part in the folder, of its long values only the short ones in them; null when unreadable. */
  readonly first: LooseEvent | null;
  /** Last complete event of the last part; null when unreadable. */
  readonly last: LooseEvent | null;
  /** Types of the events after the first in a short file, the last one too; null in a long one. */
  readonly laterTypes: readonly string[] | null;
  /** Time of the first event, else null. */
  readonly startedAt: string | null;
  /** Number of the last complete event, 0 when unreadable. */
  readonly events: number;
  readonly bytes: number;
  /** `cut-off`: the last line is incomplete, resuming mends that. `unreadable`: `words` says why. */
  readonly state: 'complete-lines' | 'cut-off' | 'unreadable';
  readonly words?: string;
}

/** A session by the names of its files alone. */
export interface NamedSession {
  /** The last part: the file to resume. */
  readonly path: string;
  /** The ends of its files, read when they are first asked for. */
  readonly read: () => SessionEntry;
}

/**
 * Sessions of the folder, newest first by the stamp in their names: quick in a folder of any size. A missing folder holds
 * none; a closed one gives `words` and no sessions.
 */
export function listSessions(folder: string): {
  readonly sessions: readonly NamedSession[];
  readonly words?: string;
} {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch (error) {
    const code = errorCodeOf(error);
    if (code === 'ENOENT') return { sessions: [] };
    return { sessions: [], words: `the folder ${folder} cannot be read (${code})` };
  }
  const byStem = new Map<string, SessionPart[]>();
  for (const name of names) {
    const id = sessionPart(name);
    if (!id) continue;
    const parts = byStem.get(id.stem) ?? [];
    parts.push({ part: id.part, path: join(folder, name) });
    byStem.set(id.stem, parts);
  }
  const stems = [...byStem.keys()].sort().reverse();
  return { sessions: stems.map((stem) => namedSession(byStem.get(stem)!)) };
}

/** So many are read for the start menu; a folder can hold ten thousand. */
const NEWEST_READ = 100;

/** The newest sessions, and how many there are in all. */
export function newestSessions(folder: string): {
  readonly sessions: readonly SessionEntry[];
  readonly count: number;
} {
  const { sessions } = listSessions(folder);
  return {
    sessions: sessions.slice(0, NEWEST_READ).map(({ read }) => read()),
    count: sessions.length,
  };
}

interface SessionPart {
  readonly part: number;
  readonly path: string;
}

function namedSession(parts: SessionPart[]): NamedSession {
  parts.sort((a, b) => a.part - b.part);
  let entry: SessionEntry | null = null;
  return {
    path: parts.at(-1)!.path,
    read: () => {
      entry ??= entryOf(parts);
      return entry;
    },
  };
}

function entryOf(parts: readonly SessionPart[]): SessionEntry {
  const paths = parts.map(({ path }) => path);
  const ends = paths.map(endsOf);
  const first = ends[0]!.first;
  const tail = ends.at(-1)!;
  const { last, state } = tail;
  return {
    path: paths.at(-1)!,
    paths,
    first,
    last,
    laterTypes: paths.length > 1 ? null : tail.laterTypes,
    startedAt: typeof first?.at === 'string' ? first.at : null,
    events: typeof last?.seq === 'number' ? last.seq : 0,
    bytes: ends.reduce((sum, { bytes }) => sum + bytes, 0),
    state,
    ...(tail.words === undefined ? {} : { words: tail.words }),
  };
}

interface FirstAndLast {
  first: LooseEvent | null;
  last: LooseEvent | null;
  laterTypes: readonly string[] | null;
  bytes: number;
  state: SessionEntry['state'];
  words?: string;
}

/** A session nobody has worked on yet is shorter than this after its first line. */
const SHORT_BYTES = 4096;
const CHUNK_BYTES = 32_768;
/** A file up to this is read in one piece, which takes less than its head and its end by themselves. Our choice. */
const WHOLE_BYTES = 32 * CHUNK_BYTES;
/** The first line holds procedure, circuit and job and may be long; beyond this it is no session of ours. */
const MAX_LINE_BYTES = 256 * CHUNK_BYTES;

function endsOf(path: string): FirstAndLast {
  let file: number | null = null;
  try {
    file = openPlainFile(path);
    const bytes = fstatSync(file).size;
    const from = bytesOf(file, bytes);
    const head = readHead(from, bytes);
    const first = head === null ? null : parse(head, outlineJson);
    if (!first) return unreadable(bytes, 'the first line is not complete or not readable');
    const tail = readTail(from, bytes);
    const last = tail === null ? null : parse(tail.line);
    if (!last) return { ...unreadable(bytes, 'the last line is not readable'), first };
    const laterTypes = typesAfter(from, (head?.length ?? 0) + 1, bytes);
    return { first, last, laterTypes, bytes, state: tail?.cutOff ? 'cut-off' : 'complete-lines' };
  } catch (error) {
    const code = errorCodeOf(error);
    const isNone = code === NOT_A_FILE || code === 'EISDIR';
    return unreadable(0, isNone ? 'this is not a file' : `the file cannot be read (${code})`);
  } finally {
    if (file !== null) closeSync(file);
  }
}

function unreadable(bytes: number, words: string): FirstAndLast {
  return { first: null, last: null, laterTypes: null, bytes, state: 'unreadable', words };
}

function typesAfter(read: ReadBytes, from: number, size: number): string[] | null {
  if (size - from > SHORT_BYTES) return null;
  const lines = read(from, Math.max(0, size - from))
    .toString('utf8')
    .split('\n');
  return lines.slice(0, -1).map((line) => String(parse(Buffer.from(line))?.['type']));
}

/** The first complete line, read from the front in chunks. */
function readHead(read: ReadBytes, size: number): Buffer | null {
  for (let want = CHUNK_BYTES; want <= MAX_LINE_BYTES; want *= 4) {
    const bytes = read(0, Math.min(size, want));
    const end = bytes.indexOf(0x0a);
    if (end >= 0) return bytes.subarray(0, end);
    if (want >= size) return null;
  }
  return null;
}

/** The last complete line, read from the end in growing chunks, and whether anything incomplete follows it. */
function readTail(read: ReadBytes, size: number): { line: Buffer; cutOff: boolean } | null {
  for (let want = CHUNK_BYTES; want <= MAX_LINE_BYTES; want *= 4) {
    const from = Math.max(0, size - want);
    const bytes = read(from, size - from);
    const end = bytes.lastIndexOf(0x0a);
    const start = end <= 0 ? -1 : bytes.lastIndexOf(0x0a, end - 1);
    const cutOff = end !== bytes.length - 1;
    if (end >= 0 && (start >= 0 || from === 0))
      return { line: bytes.subarray(start + 1, end), cutOff };
    if (from === 0) return null;
  }
  return null;
}

/** So many bytes of a file from a place on. */
type ReadBytes = (from: number, length: number) => Buffer;

function bytesOf(file: number, size: number): ReadBytes {
  if (size > WHOLE_BYTES) return (from, length) => readAt(file, from, length);
  const whole = readAt(file, 0, size);
  return (from, length) => whole.subarray(from, from + length);
}

function readAt(file: number, from: number, length: number): Buffer {
  const bytes = Buffer.alloc(length);
  let done = 0;
  while (done < length) {
    const count = readSync(file, bytes, done, length - done, from + done);
    if (count === 0) break;
    done += count;
  }
  return bytes.subarray(0, done);
}

function parse(
  line: Buffer,
  read: (line: Buffer) => unknown = (whole) => JSON.parse(whole.toString('utf8')),
): LooseEvent | null {
  try {
    const value = read(line);
    return value !== null && typeof value === 'object' && !Array.isArray(value)
      ? (value as LooseEvent)
      : null;
  } catch {
    return null;
  }
}
