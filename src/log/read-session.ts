/**
 * Reads a session file and says how far it can be trusted.
 *
 * Three verdicts, as journals of databases have them: whole; torn at the end, by a crash in the middle of a write
 * (safe to cut off, it was never acknowledged); damaged (never repaired, first bad line named). The chain shows
 * damage, edits, reordering and removal inside the file. Lines cut off the end, or a chain computed anew, show only
 * against a head that was noted elsewhere.
 */
import { CONTINUED, parseLine, type StoredEvent } from './event-line.ts';
import { sha256 } from './hash.ts';

/** A file of events and the verdict over it. Events, hashes and `goodBytes` end before the first bad line. */
export interface SessionLog {
  readonly events: readonly StoredEvent[];
  /** Hash of each event's line. */
  readonly hashes: readonly string[];
  /** Hash of the last good line, null when there is none. */
  readonly head: string | null;
  readonly verdict: 'whole' | 'torn-tail' | 'damaged';
  readonly goodBytes: number;
  /** Counts from 1. */
  readonly firstBadLine?: number;
  /** What is wrong, in one sentence without a full stop. */
  readonly words?: string;
}

/** A head noted elsewhere, on a report or in a record; the number of the event makes the answer sharper. */
export interface KnownHead {
  readonly hash: string;
  readonly seq?: number;
}

/** The verdict against a noted head. `grown`: everything up to that head is there, and good events follow it. */
export type VerifiedLog = Omit<SessionLog, 'verdict'> & {
  readonly verdict: SessionLog['verdict'] | 'grown';
};

/** Reads the events that can be trusted by the file alone. Never throws, whatever the bytes. */
export function readSessionLog(bytes: Uint8Array): SessionLog {
  return scan(bytes, null);
}

/** Reads and compares with a head noted elsewhere; without one the same as `readSessionLog`. */
export function verifySessionLog(bytes: Uint8Array, knownHead?: string | KnownHead): VerifiedLog {
  if (knownHead === undefined) return scan(bytes, null);
  const known: KnownHead = typeof knownHead === 'string' ? { hash: knownHead } : knownHead;
  const log = scan(bytes, known.hash);
  if (log.verdict === 'damaged') return log;
  const last = log.events.at(-1);
  const at = log.hashes.indexOf(known.hash);
  const found = at >= 0 && (known.seq === undefined || log.events[at]!.seq === known.seq);
  if (found && at === log.hashes.length - 1) return log;
  if (found) return log.verdict === 'whole' ? { ...log, verdict: 'grown' } : log;
  const lines = log.events.length;
  if (!last || (known.seq !== undefined && last.seq < known.seq))
    return damaged(log, lines + 1, `the file ends before event ${known.seq ?? 1}, which was noted`);
  if (known.seq !== undefined && last.seq >= known.seq) {
    const line = Math.max(1, lines - (last.seq - known.seq));
    return damaged(log, line, `event ${known.seq} is not the one that was noted`);
  }
  return damaged(
    log,
    lines,
    'the noted head is nowhere in the file: line changed, or later lines removed',
  );
}

function damaged(log: SessionLog, firstBadLine: number, words: string): VerifiedLog {
  return { ...log, verdict: 'damaged', firstBadLine, words: `line ${firstBadLine}: ${words}` };
}

const LINE_FEED = 0x0a;
/** A power cut can leave a sector of the last line unwritten, and then it reads as zeros. */
const SECTOR_BYTES = 512;

function scan(bytes: Uint8Array, knownHead: string | null): SessionLog {
  const events: StoredEvent[] = [];
  const hashes: string[] = [];
  let from = 0;
  const stop = (verdict: SessionLog['verdict'], flaw?: string, steps = 0): SessionLog => {
    let goodBytes = from;
    for (let i = 0; i < steps; i += 1) {
      goodBytes = bytes.lastIndexOf(LINE_FEED, goodBytes - 2) + 1;
      events.pop();
      hashes.pop();
    }
    const log = { events, hashes, head: hashes.at(-1) ?? null, verdict, goodBytes };
    if (flaw === undefined) return log;
    const firstBadLine = events.length + 1;
    return { ...log, firstBadLine, words: `line ${firstBadLine} ${flaw}` };
  };
  if (bytes.length === 0) return stop('torn-tail', 'was never written');
  while (from < bytes.length) {
    const to = bytes.indexOf(LINE_FEED, from);
    if (to < 0) return stop('torn-tail', 'is only partly written');
    const line = bytes.subarray(from, to);
    const parsed = parseLine(line);
    if ('flaw' in parsed) {
      const torn = to === bytes.length - 1 && hasBlankSector(bytes, from, to);
      return stop(torn ? 'torn-tail' : 'damaged', torn ? 'is only partly written' : parsed.flaw);
    }
    const { event } = parsed;
    const hash = sha256(line);
    const flaw = misfit(event, events.at(-1), hashes.at(-1));
    if (flaw === 'changed') {
      // This line and the one before disagree. What follows tells which of the two was changed.
      const beforeChanged = hash === (prevOfLineAt(bytes, to + 1) ?? knownHead);
      if (beforeChanged) return stop('damaged', 'was changed after it was written', 1);
      return stop('damaged', 'does not continue the line before');
    }
    if (flaw) return stop('damaged', flaw);
    events.push(event);
    hashes.push(hash);
    from = to + 1;
  }
  return stop('whole');
}

/** Why an event cannot follow the one before; `changed` when its number fits and its link does not. */
function misfit(
  event: StoredEvent,
  before: StoredEvent | undefined,
  head: string | undefined,
): string | null {
  if (!before || head === undefined) {
    if (event.type !== CONTINUED)
      return event.seq === 1 && event.prev === null ? null : 'is not the first event of a session';
    const fits = event.seq > 1 && event.prev !== null && event.continues === event.prev;
    return fits ? null : 'does not say which event it continues';
  }
  if (event.seq !== before.seq + 1)
    return `should be event ${before.seq + 1} and is event ${event.seq}`;
  return event.prev === head ? null : 'changed';
}

function prevOfLineAt(bytes: Uint8Array, from: number): string | null {
  const to = bytes.indexOf(LINE_FEED, from);
  if (to < 0) return null;
  const parsed = parseLine(bytes.subarray(from, to));
  return 'event' in parsed ? parsed.event.prev : null;
}

function hasBlankSector(bytes: Uint8Array, from: number, to: number): boolean {
  for (let start = from; start < to; ) {
    const end = Math.min(to, (Math.floor(start / SECTOR_BYTES) + 1) * SECTOR_BYTES);
    if (bytes.subarray(start, end).every((byte) => byte === 0)) return true;
    start = end;
  }
  return false;
}
