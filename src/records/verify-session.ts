/** Whether the file of a session or drill is what it was: its chain, its head, its events, and what they come to. */
import type { DrillEvent } from '../drill/drill-events.ts';
import type { MindStore } from '../drill/drill-world.ts';
import { type DrillVerdict, verifyDrill } from '../drill/verify-drill.ts';
import type { Disk } from '../log/disk.ts';
import { sha256 } from '../log/hash.ts';
import { openSession } from '../log/open-session.ts';
import {
  type KnownHead,
  readSessionLog,
  type SessionLog,
  verifySessionLog,
} from '../log/read-session.ts';
import { checkEvents } from './check-events.ts';
import { checkHistory } from './check-history.ts';
import type { Head } from './record-form.ts';

export interface Verification {
  readonly genuine: boolean;
  /** All files of the session, first part first. */
  readonly paths: readonly string[];
  readonly events: number;
  readonly head: Head | null;
  /** What was looked at, and what came out. */
  readonly checks: readonly Check[];
  /** The first line that cannot be trusted. */
  readonly firstBad: {
    readonly path: string;
    readonly line: number;
    readonly words: string;
  } | null;
}

export interface Check {
  readonly name: 'chain' | 'head' | 'events' | 'history' | 'drill';
  readonly passed: boolean;
  readonly words: string;
}

/**
 * Verifies the session or drill that ends in the file `path`, against a head noted elsewhere when there is one.
 * `minds` is shared among the drills that are verified together.
 */
export function verifySession(
  disk: Disk,
  path: string,
  known?: KnownHead,
  minds?: MindStore,
): Verification {
  const opened = openSession(disk, path);
  if (!opened.ok)
    return {
      genuine: false,
      paths: [path],
      events: 0,
      head: null,
      checks: [{ name: 'chain', passed: false, words: opened.problem.words }],
      firstBad: null,
    };
  const { events: stored, log, paths } = opened.value;
  const last = stored.at(-1);
  const head = last && log.head !== null ? { seq: last.seq, hash: log.head } : null;
  const base = { paths, events: stored.length, head };
  const chain: Check = {
    name: 'chain',
    passed: log.verdict === 'whole',
    words: chainWords(log, stored.length),
  };
  if (!chain.passed)
    return {
      ...base,
      genuine: false,
      checks: [chain],
      firstBad: { path, line: log.firstBadLine ?? 1, words: chain.words },
    };
  const checks: Check[] = [chain];
  let firstBad: Verification['firstBad'] = null;
  if (known) {
    const against = verifySessionLog(disk.read(path), known);
    const passed = against.verdict === 'whole' || against.verdict === 'grown';
    const grown = 'the noted head is in the file, and the session went on after it';
    const words = against.verdict === 'grown' ? grown : (against.words ?? 'as noted');
    checks.push({ name: 'head', passed, words });
    if (!passed) firstBad = { path, line: against.firstBadLine ?? 1, words };
  }
  if (stored[0]?.type === 'drill-opened') {
    const { check, seq } = drillCheck(stored as unknown as readonly DrillEvent[], minds);
    checks.push(check);
    if (!check.passed) firstBad ??= lineOf(disk, paths, seq, check.words);
    return { ...base, genuine: checks.every(({ passed }) => passed), checks, firstBad };
  }
  const { events, flaw } = checkEvents(stored);
  checks.push({
    name: 'events',
    passed: flaw === null,
    words: flaw ? `event ${flaw.seq} ${flaw.words}` : 'all have the form they must have',
  });
  if (flaw) firstBad ??= lineOf(disk, paths, flaw.seq, flaw.words);
  else {
    const history = checkHistory(events);
    const broken = history
      ? history.flaw
      : { index: 0, words: 'holds a procedure whose names lead nowhere' };
    const seq = broken ? (stored[broken.index]?.seq ?? 1) : 0;
    const otherwise = history?.judgedOtherwise.length ?? 0;
    const note = otherwise > 0 ? `; ${otherwise} readings would be judged otherwise today` : '';
    const words = `replayed, it comes to the same ${endWords(history?.session.status)}${note}`;
    checks.push({
      name: 'history',
      passed: broken === null,
      words: broken ? `event ${seq} ${broken.words}` : words,
    });
    if (broken) firstBad ??= lineOf(disk, paths, seq, broken.words);
  }
  return { ...base, genuine: checks.every((check) => check.passed), checks, firstBad };
}

/** What the seed of a drill gives, against what its file says; `seq` is the first event that does not match. */
function drillCheck(
  events: readonly DrillEvent[],
  minds: MindStore | undefined,
): { readonly check: Check; readonly seq: number } {
  const { verdict, problems } = trialOf(events, minds);
  const passed = verdict !== 'false';
  const words = passed
    ? `every answer is the one that the seed gives${verdict === 'open' ? '; it is not finished' : ''}`
    : problems.join('; ');
  const seq = Number(/^event (\d+):/.exec(problems[0] ?? '')?.[1] ?? 1);
  return { check: { name: 'drill', passed, words }, seq };
}

/** A file may hold anything under a drill's name; what it makes our code throw is a finding about the file. */
function trialOf(events: readonly DrillEvent[], minds: MindStore | undefined): DrillVerdict {
  try {
    return verifyDrill(events, sha256, minds);
  } catch {
    return { verdict: 'false', problems: ['its events are not those of a drill'] };
  }
}

function chainWords({ verdict, words }: SessionLog, events: number): string {
  if (words === undefined) return `${events} events, each bound to the one before`;
  return verdict === 'torn-tail'
    ? `${words}, as after a crash; resuming the session mends it`
    : words;
}

function endWords(status: string | undefined): string {
  return status === 'concluded' || status === 'closed' ? 'conclusion' : 'place';
}

/** File and line of an event, over all parts. */
function lineOf(
  disk: Disk,
  paths: readonly string[],
  seq: number,
  words: string,
): NonNullable<Verification['firstBad']> {
  for (const path of [...paths].reverse()) {
    const first = readSessionLog(disk.read(path)).events[0]?.seq ?? Number.POSITIVE_INFINITY;
    if (first <= seq) return { path, line: seq - first + 1, words };
  }
  return { path: paths[0] ?? '', line: seq, words };
}
