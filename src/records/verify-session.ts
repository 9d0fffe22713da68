/** Whether the file of a session or drill is what it was: its chain, its head, its events, and what they come to. */
import { type DrillVerdict, verifyDrill } from '../drill/verify-drill.ts';
import type { EventFlaw } from '../log/check-events.ts';
import type { Disk } from '../log/disk.ts';
import { sha256 } from '../log/hash.ts';
import { type OpenedFile, openSessionFile } from '../log/open-session.ts';
import {
  type KnownHead,
  type SessionLog,
  type VerifiedLog,
  verifySessionLog,
} from '../log/read-session.ts';
import { circuitFlaw, flawAt, judgeFile, type SessionFile } from '../log/read-session-file.ts';
import { type Differing, deriveAgain } from '../session/derive-again.ts';
import type { JudgedOtherwise } from '../session/history.ts';
import { Unworkable } from '../source/unworkable.ts';
import type { Head } from './record-form.ts';

/** What the check of a session's files came to. */
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

/** The outcome of checking one property of a session file, in words. */
export interface Check {
  readonly name: 'chain' | 'head' | 'events' | 'history' | 'derived' | 'drill';
  readonly passed: boolean;
  /** Something comes out otherwise by the rules of this program, which are not those of the file. */
  readonly differs?: true;
  readonly words: string;
}

/** Verifies the session or drill that ends in the file `path`, against a head noted elsewhere when there is one. */
export function verifySession(disk: Disk, path: string, known?: KnownHead): Verification {
  const opened = openSessionFile(disk, path);
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
  const { formFlaw, historyFlaw, flaw, stands } = judgeFile(opened.value);
  const last = stored.at(-1);
  const head = last && log.head !== null ? { seq: last.seq, hash: log.head } : null;
  const chain = chainCheck(log, stored.length);
  const base = { paths, events: stored.length, head };
  if (!chain.passed)
    return {
      ...base,
      genuine: false,
      checks: [chain],
      firstBad: { path, line: log.firstBadLine ?? 1, words: chain.words },
    };
  const noted = known ? headCheck(verifySessionLog(disk.read(path), known)) : null;
  const checks: Check[] = [chain, ...(noted ? [noted.check] : []), formCheck(formFlaw)];
  let firstBad = noted && !noted.check.passed ? { path, ...noted.at } : null;
  if (!formFlaw) checks.push(historyCheck(historyFlaw, stands));
  if (flaw) firstBad ??= { path: flaw.path, line: flaw.line, words: flaw.words };
  else if (stands) {
    const again = derivedFrom(stands);
    checks.push(derivedCheck(again));
    const wrong = again.find(({ isFalse }) => isFalse);
    if (wrong) firstBad ??= placeOf(wrong, opened.value);
  }
  if (!flaw && stands?.session.opened.vehicle.kind === 'drill') {
    const drill = verifyDrill(stands.events, sha256);
    checks.push(drillCheck(drill));
    const [problem] = drill.problems;
    if (problem) firstBad ??= placeOf(problem, opened.value);
  }
  return { ...base, genuine: checks.every(({ passed }) => passed), checks, firstBad };
}

function headCheck({ verdict, words, firstBadLine }: VerifiedLog) {
  const passed = verdict === 'whole' || verdict === 'grown';
  const grown = 'the noted head is in the file, and the session went on after it';
  const said = verdict === 'grown' ? grown : (words ?? 'as noted');
  const check: Check = { name: 'head', passed, words: said };
  return { check, at: { line: firstBadLine ?? 1, words: said } };
}

function formCheck(flaw: EventFlaw | null): Check {
  const words = flaw ? flawWords(flaw) : 'all are well-formed';
  return { name: 'events', passed: flaw === null, words };
}

function historyCheck(flaw: EventFlaw | null, stands: SessionFile | null): Check {
  if (flaw) return { name: 'history', passed: false, words: flawWords(flaw) };
  const { session, judgedOtherwise = [] } = stands ?? {};
  const isEnded = session?.status === 'concluded' || session?.status === 'closed';
  const same = `replayed, it reaches the same ${isEnded ? 'conclusion' : 'place'}`;
  const others = judgedOtherwise.map((one) => `; ${otherwiseWords(one)}`);
  return { name: 'history', passed: true, words: [same, ...others].join('') };
}

function flawWords({ seq, words, fix }: EventFlaw): string {
  return `event ${seq} ${words}; ${fix}`;
}

/** What a file derives and what comes out when it is derived again, where that is false. */
export function falselyDerived(stands: SessionFile): readonly Differing[] {
  return derivedFrom(stands).filter(({ isFalse }) => isFalse);
}

/** What does not come out as a file has it: false by its own rules, or otherwise by ours. */
export function derivedFrom(stands: SessionFile): readonly Differing[] {
  const notComputed = (words: string): Differing[] => [{ seq: 1, words, isFalse: true }];
  if (circuitFlaw(stands)) return notComputed(NOT_COMPUTED);
  try {
    return deriveAgain(stands.events);
  } catch (error) {
    if (error instanceof Unworkable) return notComputed(`${NOT_COMPUTED}: ${error.message}`);
    throw error;
  }
}
const NOT_COMPUTED = 'holds a circuit that cannot be computed, so nothing can be recomputed';

/** What was derived again: values of what was typed, times, cautions and limits of the tree, evidence and proof. */
function derivedCheck(found: readonly Differing[]): Check {
  const wrong = found.filter(({ isFalse }) => isFalse);
  const told = (wrong.length > 0 ? wrong : found).map(({ seq, words }) => `event ${seq} ${words}`);
  const shown = told.slice(0, TOLD_MOST);
  const more = told.length > TOLD_MOST ? [`and ${told.length - TOLD_MOST} more`] : [];
  const all = [...shown, ...more].join('; ');
  if (wrong.length > 0) return { name: 'derived', passed: false, words: all };
  if (found.some(({ ofOtherRules }) => ofOtherRules))
    return { name: 'derived', passed: true, differs: true, words: `${OTHERWISE}: ${all}` };
  return { name: 'derived', passed: true, words: all === '' ? SAME : `${SAME}; ${all}` };
}
const SAME = 'values, times, cautions, limits, evidence and proof are the same when recomputed';
const OTHERWISE = 'recomputed by our rules, which are not those of the file, not all is the same';
const TOLD_MOST = 10;

/** What the file says, and what today's rules say, without a full stop. */
export function otherwiseWords({ seq, rules, of, was, today }: JudgedOtherwise): string {
  return `event ${seq} as judged by rules ${rules}: ${of} "${was}"; today's say "${today}"`;
}

/** What the seed of a drill gives, against what its file says. */
function drillCheck({ verdict, problems, scoredOtherwise, notCompared }: DrillVerdict): Check {
  if (verdict === 'false') {
    const words = problems.map(({ seq, words: said }) => `event ${seq}: ${said}`).join('; ');
    return { name: 'drill', passed: false, words };
  }
  const same =
    notCompared === undefined
      ? 'every answer matches the seed'
      : `the fault is that of the seed; what the vehicle showed under rules ${notCompared} is not compared with today's`;
  const open = verdict === 'open' ? '; it is not finished' : '';
  return { name: 'drill', passed: true, words: `${same}${open}${scoreWords(scoredOtherwise)}` };
}

function scoreWords(other: DrillVerdict['scoredOtherwise']): string {
  if (!other) return '';
  const { seq, rules, was, today } = other;
  return `; event ${seq} as scored by rules ${rules}: ${was} points; today's give ${today}`;
}

function placeOf(
  { seq, words }: { readonly seq: number; readonly words: string },
  opened: OpenedFile,
): NonNullable<Verification['firstBad']> {
  const { path, line } = flawAt({ seq, words, fix: '' }, opened.paths, opened.starts);
  return { path, line, words };
}

function chainCheck({ verdict, words }: SessionLog, events: number): Check {
  return { name: 'chain', passed: verdict === 'whole', words: chainWords(verdict, words, events) };
}

function chainWords(verdict: SessionLog['verdict'], words: string | undefined, events: number) {
  if (words === undefined) return `${events} events, each chained to the one before`;
  return verdict === 'torn-tail'
    ? `${words}, as after a crash; resuming the session repairs it`
    : words;
}
