/** After the repair: which tests must pass, which have, and what that says. */
import {
  endsOf,
  type LookStep,
  type MeasureStep,
  outcomeOfValue,
  stepOf,
} from '../procedure/procedure.ts';
import type { Command } from './decide.ts';
import type { Answer, RetestRecorded, SessionClosed } from './events.ts';
import { presentConclusion, type Session } from './session.ts';

/** One test to repeat, with what it showed before the repair and, once done, after. */
export interface RetestLine {
  readonly step: MeasureStep | LookStep;
  readonly before: Answer | null;
  readonly after: RetestRecorded | null;
}

/**
 * The tests of the conclusion that must pass, and every test of the session that read something unhealthy: what
 * failed must pass now. In the order they were done in, since one may build on the clips of another; those that were
 * not done, such as the last look at the live data, come after them in the order of the tree.
 */
export function retestLines(session: Session): RetestLine[] {
  const { procedure } = session.opened;
  const wanted = new Set(presentConclusion(session)?.retest ?? []);
  const last = new Map<string, Answer>();
  for (const { event, superseded } of session.answers) if (!superseded) last.set(event.step, event);
  const done = session.trail.map(({ step }) => step).filter((id) => last.has(id));
  return [...new Set([...done, ...Object.keys(procedure.steps)])].flatMap((id): RetestLine[] => {
    const step = stepOf(procedure, id);
    if (step.kind !== 'measure' && step.kind !== 'look') return [];
    const before = last.get(id) ?? null;
    if (!wanted.has(id) && !failed(step, before)) return [];
    const after = session.retests.findLast((retest) => retest.step === id) ?? null;
    return [{ step, before, after }];
  });
}

/** An answer to a step as the answer after the repair; null when it answers no test, or its number falls nowhere. */
export function againCommand(step: MeasureStep | LookStep, answer: Command): Command | null {
  const base = { type: 'record-retest', step: step.id } as const;
  const taken = 'capture' in answer && answer.capture ? { capture: answer.capture } : {};
  if (answer.type === 'choose-outcome') {
    const { outcome, look = null } = answer;
    return { ...base, typed: '', value: null, look, outcome, ...taken };
  }
  if (answer.type !== 'record-reading' || step.kind !== 'measure') return null;
  const { typed } = answer;
  const outcome = outcomeOfValue(step, answer.value)?.name;
  if (outcome === undefined) return null;
  const value = Number.isFinite(answer.value) ? answer.value : null;
  return { ...base, typed, value, look: null, outcome, ...taken };
}

/** What the retests say so far; null while some are missing. */
export function retestVerdict(session: Session): SessionClosed['verdict'] | null {
  const lines = retestLines(session);
  if (lines.length === 0) return 'no-retest';
  if (lines.some(({ after }) => after === null)) return null;
  if (lines.every(({ after }) => after?.passed)) return 'cured';
  // A test that was not made before the repair cannot have changed.
  const other = lines.some(
    ({ before, after }) =>
      before !== null && !after?.passed && outcomeOf(before) !== after?.outcome,
  );
  return other ? 'changed' : 'not-cured';
}

/** Closes the session with what the retests say. */
export function closeCommand(session: Session): Extract<Command, { type: 'close' }> {
  const verdict = retestVerdict(session) ?? 'no-retest';
  return { type: 'close', verdict, words: VERDICT_WORDS[verdict] };
}

/** The verdict in words for the record. */
export const VERDICT_WORDS: Readonly<Record<SessionClosed['verdict'], string>> = {
  cured: 'every test that must pass after the repair passes',
  'not-cured': 'a test still fails as before the repair',
  changed: 'a test fails in another way than before the repair: something else is wrong now',
  'no-retest': 'closed without a test after the repair',
};

function failed(step: MeasureStep | LookStep, before: Answer | null): boolean {
  if (before?.type === 'look-recorded' && step.kind === 'look')
    return before.look !== null && !step.expected.includes(before.look);
  if (before?.type !== 'reading-recorded') return false;
  const { judgement, value } = before;
  if (judgement) return judgement.verdict === 'low' || judgement.verdict === 'high';
  // Of a capture, and of quantities that a meter's accuracy says nothing of.
  if (step.kind !== 'measure' || !step.expected) return false;
  const { low, high } = endsOf(step.expected);
  const read = value ?? Number.POSITIVE_INFINITY;
  return read < low || read > high;
}

function outcomeOf(before: Answer | null): string | null {
  return before && 'outcome' in before ? before.outcome : null;
}
