/**
 * Opens a session that was begun earlier: for reading, over all its parts, or to go on with it.
 *
 * A torn tail is copied aside, cut off, and the cut is itself an event. A damaged file is only read. Which events a
 * session can have is not looked at here: see `read-session-file.ts`.
 */
import { basename, dirname, join } from 'node:path';
import { NOT_A_FILE } from '../files/plain-file.ts';
import { sessionPart } from '../files/safe-name.ts';
import type { Recovered } from '../session/events.ts';
import { attempt, closeQuietly, type Disk, errorCode, writeAll } from './disk.ts';
import { CONTINUED, type StoredEvent } from './event-line.ts';
import { sha256 } from './hash.ts';
import { readSessionLog, type SessionLog } from './read-session.ts';
import { ELSEWHERE, MAX_PARTS, type SessionWriter, writerAt } from './session-writer.ts';
import { done, failed, type Tried, type WriteProblem } from './write-problem.ts';

/** A line that another program is just writing, or taking out again, is whole or gone after so long. */
const SETTLED_MS = 50;
const CLOSE_OTHER = ', or close it there and resume again';
/** Digits of a fragment's hash in its name. */
const TORN_DIGITS = 8;

/** A session over all its parts. */
export interface OpenedFile {
  /** Every good event from the first part on, in order. */
  readonly events: readonly StoredEvent[];
  /** The file asked for, which is the last part of what was read, alone. */
  readonly log: SessionLog;
  /** How long that file was. */
  readonly bytes: number;
  /** All files read, first part first. */
  readonly paths: readonly string[];
  /** Number of the first event in each of them; 1 in a file without any. */
  readonly starts: readonly number[];
}

/** A session that can be written on, with all that stands in it. */
export interface ResumedSession {
  readonly writer: SessionWriter;
  /** Every event, the notes below among them. */
  readonly events: readonly StoredEvent[];
  /** What was written now: a note for each fragment that was cut off and kept beside the file. */
  readonly recovered: readonly Recovered[];
}

/**
 * Reads a session, damaged or not: look at `log.verdict`. Earlier parts are looked for beside the file, then in
 * `lookIn`. A problem only when the file or an earlier part cannot be read at all.
 */
export function openSessionFile(
  disk: Disk,
  path: string,
  lookIn: readonly string[] = [],
): Tried<OpenedFile> {
  let log: SessionLog;
  let length: number;
  try {
    const bytes = disk.read(path);
    length = bytes.length;
    log = readSessionLog(bytes);
  } catch (error) {
    const next = ', and try again';
    const code = errorCode(error);
    return failed({ code, path, safeEvents: 0, canRetry: false, next, reading: true });
  }
  let events = log.events;
  const paths = [path];
  const starts = [events[0]?.seq ?? 1];
  for (let part = 1; events[0]?.type === CONTINUED; part += 1) {
    const earlier = part < MAX_PARTS ? earlierPart(disk, events[0], dirname(path), lookIn) : null;
    if (!earlier) return missingPart(path, events);
    events = [...earlier.events, ...events];
    paths.unshift(earlier.path);
    starts.unshift(earlier.events[0]?.seq ?? 1);
  }
  return done({ events, log, bytes: length, paths, starts });
}

/**
 * Goes on with a session. `now` is the time of the `recovered` event, should a torn tail be found. What `refusal` says
 * no to is left as it is, to the byte; without one a file of any events is gone on with.
 */
export function resumeSession(
  disk: Disk,
  path: string,
  now: { readonly at: string; readonly elapsed: number },
  lookIn: readonly string[] = [],
  refusal: (opened: OpenedFile) => WriteProblem | null = () => null,
): Tried<ResumedSession> {
  const opened = openSettled(disk, path, lookIn);
  if (!opened.ok) return opened;
  const { log, events, bytes: length } = opened.value;
  const last = events.at(-1);
  const safe = { path, safeEvents: last?.seq ?? 0, safeUntil: last?.at ?? null, canRetry: false };
  if (log.verdict === 'damaged') {
    const next = ` and start a new session; what stands before line ${log.firstBadLine} can still be read (${log.words})`;
    return failed({ ...safe, code: 'damaged', next });
  }
  if (!last || log.head === null)
    return failed({ ...safe, code: 'nothing-saved', next: ' and start a new session' });
  const problem = refusal(opened.value);
  if (problem) return { ok: false, problem };

  let file: number | null = null;
  try {
    const later = laterPart(disk, path);
    if (later) return failed({ ...safe, code: 'continued-elsewhere', next: `: ${later}` });
    const bytes = disk.read(path);
    // What was written since the file was judged is no torn tail: another window goes on with the session.
    if (bytes.length !== length) return failed({ ...safe, code: ELSEWHERE, next: CLOSE_OTHER });
    const fragment = bytes.subarray(log.goodBytes);
    if (fragment.length > 0) keepAside(disk, path, fragment);
    file = disk.openAppend(path);
    const facts = disk.factsOpen(file);
    if (facts.bytes !== bytes.length) {
      closeQuietly(disk, file);
      return failed({ ...safe, code: ELSEWHERE, next: CLOSE_OTHER });
    }
    if (fragment.length > 0) {
      disk.truncate(file, log.goodBytes);
      disk.syncData(file);
    }
    const { identity } = facts;
    let head = log.head;
    const writer = writerAt(disk, {
      path,
      file,
      identity,
      goodBytes: log.goodBytes,
      last: { seq: last.seq, hash: head, at: last.at },
    });
    const all = [...events];
    const recovered: Recovered[] = [];
    for (const tail of untoldTails(disk, path, events)) {
      const note: Recovered = { type: 'recovered', ...now, ...tail };
      const noted = writer.append(note);
      if (!noted.ok) {
        writer.close(); // the copy stays, and is told the next time
        return noted;
      }
      all.push({ ...note, seq: noted.value.seq, prev: head });
      recovered.push(note);
      head = noted.value.hash;
    }
    return done({ writer, events: all, recovered });
  } catch (error) {
    const code = errorCode(error);
    if (file !== null) closeQuietly(disk, file);
    return failed({ ...safe, code, next: ', and try to resume again' });
  }
}

/** A last line that is not whole may still be on its way from another window: it is looked at again. */
function openSettled(disk: Disk, path: string, lookIn: readonly string[]): Tried<OpenedFile> {
  const opened = openSessionFile(disk, path, lookIn);
  if (!opened.ok || opened.value.log.verdict === 'whole') return opened;
  disk.rest(SETTLED_MS);
  return openSessionFile(disk, path, lookIn);
}

/** Copies what is cut off into a file of its own, on the medium before the cut. Doing it twice gives the same file. */
function keepAside(disk: Disk, path: string, fragment: Uint8Array): void {
  const hash = sha256(fragment);
  const aside = `${tornStem(path)}${hash.slice(0, TORN_DIGITS)}`;
  if (disk.facts(aside)) {
    if (sha256(disk.read(aside)) === hash) return;
    disk.remove(aside); // a copy that was itself cut short
  }
  const file = disk.openNew(aside);
  try {
    writeAll(disk, file, fragment);
    disk.syncData(file);
    disk.syncFolder(dirname(aside));
  } catch (error) {
    attempt(() => disk.remove(aside));
    throw error;
  } finally {
    closeQuietly(disk, file);
  }
}

/** The whole copies beside the file that no event tells of: the one just made, and one whose note was not saved. */
function untoldTails(
  disk: Disk,
  path: string,
  events: readonly StoredEvent[],
): { bytes: number; hash: string; file: string }[] {
  const stem = basename(tornStem(path));
  return disk
    .list(dirname(path))
    .filter((name) => name.startsWith(stem) && !events.some(({ file }) => file === name))
    .flatMap((file) => {
      const fragment = readIfFile(disk, join(dirname(path), file));
      return fragment ? [{ bytes: fragment.length, hash: sha256(fragment), file }] : [];
    })
    .filter(({ file, hash }) => file === `${stem}${hash.slice(0, TORN_DIGITS)}`);
}

/** What the names of the fragments of a session file begin with; the rest is the start of their hash. */
function tornStem(path: string): string {
  return `${path.replace(/\.jsonl$/, '')}.torn-`;
}

/** The events up to the one that a part continues, from the file it names; null when they are nowhere. */
function earlierPart(
  disk: Disk,
  link: StoredEvent,
  folder: string,
  lookIn: readonly string[],
): { path: string; events: readonly StoredEvent[] } | null {
  const name = link.file;
  if (typeof name !== 'string' || !sessionPart(name)) return null; // never a path out of the folder
  for (const place of [folder, ...lookIn]) {
    const path = join(place, name);
    let log: SessionLog;
    try {
      log = readSessionLog(disk.read(path));
    } catch (error) {
      errorCode(error);
      continue;
    }
    const end = log.hashes.indexOf(String(link.continues));
    if (end >= 0) return { path, events: log.events.slice(0, end + 1) };
  }
  return null;
}

function missingPart(path: string, events: readonly StoredEvent[]) {
  const first = events[0]!;
  const next = `: ${String(first.file)}, with its events up to number ${first.seq - 1}`;
  const safeEvents = events.length;
  return failed({ code: 'earlier-part-missing', path, safeEvents, canRetry: false, next });
}

/** The last part in the same folder that goes on from this file, null when this is the end of the session. */
function laterPart(disk: Disk, path: string): string | null {
  const here = sessionPart(basename(path));
  if (!here) return null;
  const later = disk
    .list(dirname(path))
    .map((name) => ({ name, part: sessionPart(name) }))
    .filter(({ part }) => part !== null && part.stem === here.stem && part.part > here.part)
    .sort((a, b) => b.part!.part - a.part!.part);
  for (const { name } of later) {
    const bytes = readIfFile(disk, join(dirname(path), name));
    if (bytes && readSessionLog(bytes).events.length > 0) return name;
  }
  return null; // a later part without a single event was never begun
}

/** Null for a pipe or a device, which holds nothing of ours. */
function readIfFile(disk: Disk, path: string): Uint8Array | null {
  try {
    return disk.read(path);
  } catch (error) {
    if (errorCode(error) === NOT_A_FILE) return null;
    throw error;
  }
}
