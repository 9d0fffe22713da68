/**
 * Writes a session: one file, one writer, and an event counts only when it is on the medium.
 *
 * Each event is written and synced before it is acknowledged. A failed write is cut off again, so that no later
 * event can be glued to half a line. After a failed sync the system may have dropped the pages and a second sync
 * would succeed without them, so that file is closed for good and the session goes on in a new part.
 * The file is never locked: a lock can be lost by a sleeping computer. A changed file is noticed before each event, and
 * of two programs that write in the same moment the one whose line does not follow its last event takes it out again.
 */
import { basename, dirname, join } from 'node:path';
import { sessionPart, sessionPartName } from '../files/safe-name.ts';
import type { SegmentContinued } from '../session/events.ts';
import { attempt, closeQuietly, type Disk, errorCode, writeAll } from './disk.ts';
import { CONTINUED, type LogEvent, sealEvent } from './event-line.ts';
import { done, failed, type Tried, type WriteProblem } from './write-problem.ts';

/** Proof that an event is on the medium. */
export interface Receipt {
  readonly seq: number;
  readonly hash: string;
}

/** The only way to add to a session file. */
export interface SessionWriter {
  readonly path: string;
  /** Number, hash and time of the last event that is safe. */
  readonly last: Receipt & { readonly at: string };
  /** False after a fault that only a new part can cure, and after `close`. */
  readonly isOpen: boolean;
  /** Saves an event, or says why not; then it is as if it had never been tried, and `continueIn` carries it on. */
  readonly append: (event: LogEvent) => Tried<Receipt>;
  /** Looks at the disk: why not every event is in the file at `path`, the refused one too; null when all are. */
  readonly look: () => WriteProblem | null;
  /**
   * Begins the next part of the session in `folder` (the same one is fine) and writes the refused event there;
   * `receipt` is null when none was refused. A file that was deleted or replaced is written out again first, under
   * the next free part number. On failure this writer stays as it was.
   */
  readonly continueIn: (folder: string) => Tried<{
    readonly writer: SessionWriter;
    /** The event that the new part begins with. */
    readonly link: SegmentContinued;
    readonly receipt: Receipt | null;
  }>;
  readonly close: () => void;
}

/** Code of the problem when another window has the session open and went on with it. */
export const ELSEWHERE = 'open-elsewhere';
const LEAVE = ', or leave here and resume it once the other window is closed';
/** How often, and how long each time, the other one of two programs that wrote at once gets to take its line out. */
const TURNS = 20;
const TURN_MS = 5;
/** Parts of one session in one folder; more means that something else is wrong. */
export const MAX_PARTS = 99;

/** Where a file stands: enough to go on appending. */
export interface Position {
  readonly path: string;
  readonly file: number;
  readonly identity: string;
  readonly goodBytes: number;
  readonly last: SessionWriter['last'];
}

/** Creates the session file with its first event. The name must be one of ours and not in use. */
export function createSession(
  disk: Disk,
  folder: string,
  name: string,
  first: LogEvent,
): Tried<SessionWriter> {
  if (!sessionPart(name)) throw new Error(`createSession: ${name} is no session file name`);
  const begun = place(disk, join(folder, name), () => seal([first], null), null);
  return begun.ok ? done(writerAt(disk, begun.value)) : begun;
}

/** A writer that goes on behind the last good event of an open file. */
export function writerAt(disk: Disk, start: Position): SessionWriter {
  const { path, file } = start;
  let { goodBytes, last } = start;
  let isOpen = true;
  let refused: LogEvent | null = null;
  let why: WriteProblem | null = null;
  /** Nobody gets at the file by a name any more; what is in it can be read as long as it is open. */
  let homeless: Exclude<FileChange, 'file-changed'> | null = null;
  let wentOn = false;

  const refuse = (code: string, canRetry: boolean) => {
    if (!canRetry && isOpen) {
      isOpen = false;
      if (!homeless) closeQuietly(disk, file);
    }
    const safeEvents = homeless && homeless !== BARRED ? 0 : last.seq;
    const next = code === ELSEWHERE ? { next: LEAVE } : {};
    const told = failed({ code, path, safeEvents, safeUntil: last.at, canRetry, ...next });
    why = told.problem;
    return told;
  };

  const append = (event: LogEvent): Tried<Receipt> => {
    const { line, hash } = sealEvent(event, last.seq + 1, last.hash);
    refused = event;
    if (!isOpen) return refuse(homeless ?? (wentOn ? ELSEWHERE : 'segment-closed'), false);
    const bytes = Buffer.from(`${line}\n`);
    try {
      let change = changeOf(disk, start, goodBytes);
      wentOn = change === 'file-changed' && goesOn(disk, file, goodBytes, last.hash);
      for (let turn = 0; change === 'file-changed' && !wentOn && turn < TURNS; turn += 1) {
        disk.rest(TURN_MS);
        change = changeOf(disk, start, goodBytes);
        wentOn = change === 'file-changed' && goesOn(disk, file, goodBytes, last.hash);
      }
      if (change && change !== 'file-changed') homeless = change;
      if (change) return refuse(wentOn ? ELSEWHERE : change, false);
    } catch (error) {
      return refuse(errorCode(error), true);
    }
    try {
      writeAll(disk, file, bytes);
    } catch (error) {
      const cutBack = attempt(() => disk.truncate(file, goodBytes));
      return refuse(errorCode(error), cutBack);
    }
    try {
      if (!standsThere(disk, file, bytes, goodBytes)) {
        takeOut(disk, file, bytes, goodBytes);
        wentOn = goesOn(disk, file, goodBytes, last.hash);
        return refuse(wentOn ? ELSEWHERE : 'file-changed', false);
      }
      disk.syncData(file);
    } catch (error) {
      attempt(() => disk.truncate(file, goodBytes)); // not acknowledged: better gone than doubtful
      return refuse(errorCode(error), false);
    }
    goodBytes += bytes.length;
    last = { seq: last.seq + 1, hash, at: event.at };
    refused = null;
    return done({ seq: last.seq, hash });
  };

  const look = (): WriteProblem | null => {
    if (refused) return why;
    try {
      const change = changeUnderName(disk, start, goodBytes);
      if (isOpen && homeless === BARRED) homeless = null;
      if (!change) return null;
      if (isOpen && change !== 'file-changed') homeless = change;
      const safeEvents = change === 'file-changed' || change === BARRED ? last.seq : 0;
      return failed({ code: change, path, safeEvents, safeUntil: last.at, canRetry: false })
        .problem;
    } catch (error) {
      const code = errorCode(error);
      return failed({ code, path, safeEvents: 0, canRetry: false, reading: true }).problem;
    }
  };

  const continueIn: SessionWriter['continueIn'] = (folder) => {
    const safe = homeless ? null : last;
    let before = { name: basename(path), restored: '' };
    if (homeless) {
      const restored = placeNextPart(disk, folder, path, safe, () => ({
        bytes: disk.readOpen(file).subarray(0, goodBytes),
        last,
      }));
      if (!restored.ok) return restored;
      closeQuietly(disk, restored.value.file);
      before = { name: basename(restored.value.path), restored: restored.value.path };
    }
    const link = linkTo(before.name, refused, last);
    const events = refused ? [link, refused] : [link];
    const begun = placeNextPart(disk, folder, before.restored || path, safe, () =>
      seal(events, last),
    );
    if (!begun.ok) {
      if (before.restored) attempt(() => disk.remove(before.restored));
      return begun;
    }
    if (isOpen || homeless) closeQuietly(disk, file);
    isOpen = false;
    const { seq, hash } = begun.value.last;
    const receipt = refused ? { seq, hash } : null;
    return done({ writer: writerAt(disk, begun.value), link, receipt });
  };

  return {
    path,
    get last() {
      return last;
    },
    get isOpen() {
      return isOpen;
    },
    append,
    look,
    continueIn,
    close: () => {
      if (isOpen || homeless) closeQuietly(disk, file);
      isOpen = false;
      homeless = null;
    },
  };
}

/** The first event of a later part. */
function linkTo(
  file: string,
  refused: LogEvent | null,
  last: SessionWriter['last'],
): SegmentContinued {
  const at = refused?.at ?? last.at;
  return { type: CONTINUED, at, elapsed: refused?.elapsed ?? 0, continues: last.hash, file };
}

/** Its own person may not read it any more, or not go into its folder. */
const BARRED = 'file-barred';
type FileChange = 'file-gone' | 'file-replaced' | 'file-changed' | typeof BARRED;

/** What happened to our file behind our back, null when it is as we left it. */
function changeOf(disk: Disk, start: Position, goodBytes: number): FileChange | null {
  const open = disk.factsOpen(start.file);
  const named = disk.facts(start.path);
  return named ? changeTo(named.identity, open.bytes, start, goodBytes) : 'file-gone';
}

/** The same of a file that need not be open any more, and whether it can be read. */
function changeUnderName(disk: Disk, start: Position, goodBytes: number): FileChange | null {
  try {
    const named = disk.facts(start.path);
    if (!named) return 'file-gone';
    const change = changeTo(named.identity, named.bytes, start, goodBytes);
    if (change === null) disk.read(start.path);
    return change;
  } catch (error) {
    if (['EACCES', 'EPERM'].includes(errorCode(error))) return BARRED;
    throw error;
  }
}

function changeTo(identity: string, bytes: number, start: Position, goodBytes: number) {
  if (identity !== start.identity) return 'file-replaced';
  return bytes === goodBytes ? null : 'file-changed';
}

/** What stands behind our last event is the next one of this session: another window writes to it. */
function goesOn(disk: Disk, file: number, goodBytes: number, hash: string): boolean {
  const [line = ''] = new TextDecoder().decode(disk.readOpen(file).subarray(goodBytes)).split('\n');
  try {
    return (JSON.parse(line) as { readonly prev?: unknown } | null)?.prev === hash;
  } catch {
    return false;
  }
}

/** Whether these bytes begin at `from`: always, unless another program wrote in the same moment. */
function standsThere(disk: Disk, file: number, bytes: Uint8Array, from: number): boolean {
  if (disk.factsOpen(file).bytes === from + bytes.length) return true;
  const there = disk.readOpen(file).subarray(from, from + bytes.length);
  return Buffer.compare(there, bytes) === 0;
}

/**
 * Takes a line that was written too late out again, once it is the last one: whoever wrote behind it was too late as
 * well and does the same. One that was cut off meanwhile is gone already.
 */
function takeOut(disk: Disk, file: number, bytes: Uint8Array, from: number): void {
  for (let turn = 0; turn < TURNS; turn += 1) {
    const all = Buffer.from(disk.readOpen(file));
    const at = all.lastIndexOf(bytes);
    if (at < from) return;
    if (at + bytes.length === all.length) {
      disk.truncate(file, at);
      return;
    }
    disk.rest(TURN_MS);
  }
}

/** Lines for a file, and the last event in them. */
interface Sealed {
  readonly bytes: Uint8Array;
  readonly last: SessionWriter['last'];
}

function seal(events: readonly LogEvent[], before: SessionWriter['last'] | null): Sealed {
  let last = before;
  let text = '';
  for (const event of events) {
    const seq: number = (last?.seq ?? 0) + 1;
    const { line, hash } = sealEvent(event, seq, last?.hash ?? null);
    text += `${line}\n`;
    last = { seq, hash, at: event.at };
  }
  return { bytes: Buffer.from(text), last: last! };
}

/** Creates the file of the first part number after `path`'s that is free in `folder`. */
function placeNextPart(
  disk: Disk,
  folder: string,
  path: string,
  safe: SessionWriter['last'] | null,
  contents: () => Sealed,
): Tried<Position> {
  const { stem, part } = sessionPart(basename(path))!;
  for (let next = part + 1; next <= MAX_PARTS; next += 1) {
    const placed = place(disk, join(folder, sessionPartName(stem, next)), contents, safe);
    if (placed.ok || placed.problem.code !== 'EEXIST') return placed;
  }
  return failed({ code: 'EEXIST', path: folder, safeEvents: safe?.seq ?? 0, canRetry: false });
}

/** Creates a file with these contents, all on the medium, name included; on failure nothing is left behind. */
function place(
  disk: Disk,
  path: string,
  contents: () => Sealed,
  safe: SessionWriter['last'] | null,
): Tried<Position> {
  let file: number | null = null;
  try {
    const { bytes, last } = contents();
    disk.makeFolder(dirname(path));
    file = disk.openNew(path);
    writeAll(disk, file, bytes);
    disk.syncData(file);
    disk.syncFolder(dirname(path));
    const { identity } = disk.factsOpen(file);
    return done({ path, file, identity, goodBytes: bytes.length, last });
  } catch (error) {
    const code = errorCode(error);
    if (file !== null) {
      closeQuietly(disk, file);
      attempt(() => disk.remove(path));
    }
    const next = ', or choose another folder, and try again';
    const known = { safeEvents: safe?.seq ?? 0, safeUntil: safe?.at ?? null };
    return failed({ code, path, ...known, canRetry: false, next });
  }
}
