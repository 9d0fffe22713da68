/**
 * The one way from a session file to a session: chain, form, upgrade, history. `resume`, `verify`, `show`, `list` and
 * `export` all come through here, so what one of them refuses none of them believes.
 */
import { checkCircuit } from '../circuit/check-circuit.ts';
import { deriveAgain } from '../session/derive-again.ts';
import type { Recovered, SessionEvent, When } from '../session/events.ts';
import { evolve } from '../session/evolve.ts';
import { checkHistory, type JudgedOtherwise } from '../session/history.ts';
import type { Session } from '../session/session.ts';
import type { Problem } from '../source/problem.ts';
import { Unworkable } from '../source/unworkable.ts';
import { checkEvents, type EventFlaw, KEEP_FILE } from './check-events.ts';
import type { Disk } from './disk.ts';
import { parseLine, type StoredEvent } from './event-line.ts';
import { type OpenedFile, openSessionFile, resumeSession } from './open-session.ts';
import type { SessionLog } from './read-session.ts';
import type { SessionWriter } from './session-writer.ts';
import type { Tried, WriteProblem } from './write-problem.ts';

/** A session with the events it was folded from, and the state of the file that holds them. */
export interface SessionFile {
  /** In today's form. */
  readonly events: readonly SessionEvent[];
  readonly session: Session;
  /** Number and hash of the last event. */
  readonly head: { readonly seq: number; readonly hash: string };
  /** What other rules than ours judged otherwise. */
  readonly judgedOtherwise: readonly JudgedOtherwise[];
  /** The last file alone. An incomplete last line (`torn-tail`) is what a crash leaves, and resuming cuts it off. */
  readonly log: SessionLog;
  /** All files of the session, first part first. */
  readonly paths: readonly string[];
}

/** What is wrong with a file, where, and the way out; each without a full stop. */
export interface FileFlaw {
  readonly path: string;
  /** Counts from 1. */
  readonly line: number;
  readonly words: string;
  readonly fix: string;
}

/** A file that is not believed, and how far it still can be. */
export interface RefusedFile {
  readonly ok: false;
  /** The flaw with its place, or why nothing could be read at all. */
  readonly problem: Problem;
  /** The first line that cannot be believed; null when no file could be read, or none holds an event. */
  readonly flaw: FileFlaw | null;
  /** Whether its first event says that it is a drill. */
  readonly isDrill: boolean;
  /** The session as far as it can be believed; null when not even its first event can. */
  readonly stands: SessionFile | null;
}

/** A session as its file has it, or why the file is not believed. */
export type ReadSessionFile = ({ readonly ok: true } & SessionFile) | RefusedFile;

/** Reads the session that ends in the file `path`; earlier parts are looked for beside it, then in `lookIn`. */
export function readSessionFile(
  disk: Disk,
  path: string,
  lookIn: readonly string[] = [],
): ReadSessionFile {
  const opened = openSessionFile(disk, path, lookIn);
  if (!opened.ok) {
    const { words, fix } = opened.problem;
    return { ...NOTHING, problem: { problem: words, fix } };
  }
  const { flaw, stands } = judgeFile(opened.value);
  if (!flaw && stands) return { ok: true, ...stands };
  const isDrill = saysDrill(opened.value.events[0] ?? firstLineOf(disk, path));
  const problem = flaw
    ? { problem: located(flaw), fix: flaw.fix }
    : { problem: `${path} has no events`, fix: KEEP_FILE };
  return { ok: false, problem, flaw, isDrill, stands };
}

const NOTHING = { ok: false, flaw: null, isDrill: false, stands: null } as const;

function saysDrill(first: StoredEvent | null): boolean {
  const vehicle: unknown = first?.['vehicle'];
  return (
    first?.type === 'drill-opened' ||
    (typeof vehicle === 'object' && vehicle !== null && Reflect.get(vehicle, 'kind') === 'drill')
  );
}

/** What the first line says, though what follows shows that it was changed. */
function firstLineOf(disk: Disk, path: string): StoredEvent | null {
  const bytes = disk.read(path);
  const parsed = parseLine(bytes.subarray(0, Math.max(0, bytes.indexOf(LINE_FEED))));
  return 'event' in parsed ? parsed.event : null;
}

const LINE_FEED = 0x0a;

/** What the checks of a file say, one by one. */
export interface JudgedFile {
  /** The first event that has not the form it must have. */
  readonly formFlaw: EventFlaw | null;
  /** The first event that does not follow from those before it. */
  readonly historyFlaw: EventFlaw | null;
  /** The first line that cannot be believed, whatever is wrong with it; null when all can, a torn tail apart. */
  readonly flaw: FileFlaw | null;
  readonly stands: SessionFile | null;
}

/** Checks what was read of a session. */
export function judgeFile({ events: stored, log, paths, starts }: OpenedFile): JudgedFile {
  const { events: formed, flaw } = checkEvents(stored);
  const history = formed.length > 0 ? checkHistory(formed) : null;
  const formFlaw = shortened(flaw);
  const historyFlaw = shortened(history?.flaw ?? null);
  const first = historyFlaw ?? formFlaw;
  const judged = {
    formFlaw,
    historyFlaw,
    flaw: first ? flawAt(first, paths, starts) : chainFlaw(log, paths),
  };
  const session = history?.session;
  if (!history || !session) return { ...judged, stands: null };
  const { events } = session;
  const seq = events.length;
  const head = { seq, hash: stored[seq]?.prev ?? log.head ?? '' };
  const { judgedOtherwise } = history;
  const stands = { events, session, head, judgedOtherwise, log, paths };
  return { ...judged, stands };
}

/** The flaw with its place: `sessions/x.jsonl:7: event 7 lacks "typed"`. */
export function located({ path, line, words }: FileFlaw): string {
  return `${path}:${line}: ${words}`;
}

function chainFlaw(log: SessionLog, paths: readonly string[]): FileFlaw | null {
  if (log.verdict !== 'damaged') return null;
  const { firstBadLine: line = 1, words = 'the line is damaged' } = log;
  return { path: paths.at(-1) ?? '', line, words, fix: KEEP_FILE };
}

/** The flaw of one event, in the file and line where it stands. */
export function flawAt(
  { seq, words, fix }: EventFlaw,
  paths: readonly string[],
  starts: readonly number[],
): FileFlaw {
  const part = Math.max(
    0,
    starts.findLastIndex((start) => start <= seq),
  );
  const line = seq - (starts[part] ?? 1) + 1;
  return { path: paths[part] ?? '', line, words: `event ${seq} ${words}`, fix };
}

/** A name in a file may be as long as the file. */
function shortened(flaw: EventFlaw | null): EventFlaw | null {
  if (!flaw || flaw.words.length <= WORDS_MAX) return flaw;
  return { ...flaw, words: `${flaw.words.slice(0, WORDS_MAX)}...` };
}
const WORDS_MAX = 300;

/**
 * Goes on with a session that can be believed to its end. `objection` says what else is against it; it may compute what
 * the first screen will ask for, and throw `Unworkable`. Nothing is written before that is known: a file that is refused
 * stays as it is, to the byte.
 */
export function resumeSessionFile(
  disk: Disk,
  path: string,
  now: When,
  lookIn: readonly string[] = [],
  objection: (session: Session) => Problem | null = () => null,
): Tried<{ readonly writer: SessionWriter; readonly session: Session }> {
  let session: Session | null = null;
  const resumed = resumeSession(disk, path, now, lookIn, (opened) => {
    const { flaw, stands } = judgeFile(opened);
    session = stands?.session ?? null;
    const safeEvents = stands?.head.seq ?? 0;
    const found = flaw ?? (stands && circuitFlaw(stands));
    if (found) return refusalOf({ problem: located(found), fix: found.fix }, safeEvents);
    const against =
      stands && objectionTo(stands, (read) => falseValue(stands, opened) ?? objection(read));
    return against && refusalOf(against, safeEvents);
  });
  if (!resumed.ok) return resumed;
  const { writer, recovered } = resumed.value;
  return { ok: true, value: { writer, session: withNotes(session, recovered) } };
}

/** Going on, and deriving anew, computes with the circuit in the file, so it must have an operating point. */
export function circuitFlaw({ session, paths }: SessionFile): FileFlaw | null {
  const { circuit } = session.opened;
  const found = circuit && checkCircuit(circuit).find(({ severity }) => severity === 'error');
  if (!found) return null;
  const words = `event 1 holds a circuit that cannot be computed: ${found.words} (circuit)`;
  return { path: paths[0] ?? '', line: 1, words, fix: KEEP_FILE };
}

/**
 * What a file says of values, times, cautions and limits, and what does not come of it: no paper would be made of what
 * goes on from there. Evidence and proof take the advisor, and are only told not to be recomputed.
 */
function falseValue({ events, paths }: SessionFile, { starts }: OpenedFile): Problem | null {
  const wrong = deriveAgain(events, { advice: false }).find(({ isFalse }) => isFalse);
  if (!wrong) return null;
  const { seq, words } = wrong;
  const found = flawAt({ seq, words, fix: KEEP_FILE }, paths, starts);
  return { problem: located(found), fix: found.fix };
}

/** A circuit may have an operating point as it is and none in what was measured. */
function objectionTo(
  { session, paths }: SessionFile,
  objection: (session: Session) => Problem | null,
): Problem | null {
  try {
    return objection(session);
  } catch (error) {
    if (!(error instanceof Unworkable)) throw error;
    const words = `event 1 holds what cannot be worked with: ${error.message} (circuit)`;
    return { problem: located({ path: paths[0] ?? '', line: 1, words, fix: '' }), fix: KEEP_FILE };
  }
}

function refusalOf({ problem, fix: next }: Problem, safeEvents: number): WriteProblem {
  const fix = `${next.charAt(0).toUpperCase()}${next.slice(1)}.`;
  const told = { words: `${problem}.`, fix };
  return { code: 'not-believed', ...told, atTheEnd: told, safeEvents, canRetry: false };
}

function withNotes(session: Session | null, notes: readonly Recovered[]): Session {
  if (!session) throw new Error('resumeSessionFile: a file without a session is not gone on with');
  return notes.reduce(evolve, session);
}
