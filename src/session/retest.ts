/** After the repair: which tests must pass, which have, and what that says. */
import { testKey } from '../circuit/test-key.ts';
import {
  type AskStep,
  expectedEnds,
  type LookStep,
  type MeasureStep,
  outcomeOfValue,
  type Procedure,
  type Step,
  stepOf,
} from '../procedure/procedure.ts';
import type { Command } from './command.ts';
import type { Answer, RepairVerdict, Retest, RetestRecorded, TestRecorded } from './events.ts';
import { canWake, wakes } from './intermittent.ts';
import { presentConclusion, type Session, standingAnswers } from './session.ts';
import { stepAgain } from './step-again.ts';
import { stepHere } from './step-here.ts';

/** What can be repeated: a measurement, a look, and a step that wakes a fault which comes and goes. */
export type RepeatableStep = MeasureStep | LookStep | AskStep;

/** One test to repeat, with what is good for the repaired car, what it showed before the repair and, once done, after. */
export interface RetestLine {
  readonly step: RepeatableStep;
  readonly before: Answer | null;
  readonly after: Retest | null;
}

/**
 * The tests of the conclusion that must pass, and every test of the session that read something unhealthy or woke the
 * fault: what failed must pass now. A conclusion of one's own names none, so only what failed is repeated. In the order
 * they were done in, since one may build on the clips of another; those that were not done, such as the last look at
 * the live data, come after them in the order of the tree. Where the conclusion is one's own, a test
 * that was made besides and failed is repeated by the step that asks for the same.
 */
export function retestLines(session: Session): RetestLine[] {
  const { procedure } = session.opened;
  if (!procedure) return [];
  const isOwn = session.concluded?.conclusion === null;
  // Of the way that stands: what was answered on another one, before a correction, has led to nothing.
  const last = new Map(standingAnswers(session).map((answer) => [answer.step, answer]));
  const done = [...last.keys()];
  const named = isOwn ? [] : (presentConclusion(session)?.retest ?? []);
  const besides = isOwn ? failedBesides(session, procedure) : [];
  const wanted = new Set([...named, ...besides].map((id) => doneAs(procedure, id, done)));
  return [...new Set([...done, ...Object.keys(procedure.steps)])].flatMap((id): RetestLine[] => {
    const step = stepHere(session, stepOf(procedure, id));
    if (!isRepeatable(procedure, step)) return [];
    const before = last.get(id) ?? null;
    if (!wanted.has(id) && !failed(procedure, step, before)) return [];
    const after = session.retests.findLast((retest) => retest.step === id) ?? null;
    return [{ step: stepAgain(session, step, after), before, after }];
  });
}

/** The step by which the same test was done, as a tree may hold a test by several names; the step itself otherwise. */
function doneAs(procedure: Procedure, id: string, done: readonly string[]): string {
  if (done.includes(id)) return id;
  return done.findLast((other) => keyOf(procedure, other) === keyOf(procedure, id)) ?? id;
}

/** Steps of the tree, the first for each, that ask for a test which was made besides and was not as it should be. */
function failedBesides({ events }: Session, procedure: Procedure): string[] {
  const before = events.slice(
    0,
    events.findIndex(({ type }) => type === 'concluded'),
  );
  const made = before.flatMap((event) => (event.type === 'test-recorded' ? [event] : []));
  const last = new Map(made.map((one) => [testKey(one.test), one]));
  const ids = Object.keys(procedure.steps);
  return [...last].flatMap(([key, one]) =>
    isUnhealthy(one) ? (ids.find((id) => keyOf(procedure, id) === key) ?? []) : [],
  );
}

function isUnhealthy({ shown, expected }: TestRecorded): boolean {
  if (expected === null) return false;
  if (shown.kind === 'look')
    return expected.kind === 'look' && !expected.looks.includes(shown.look);
  return expected.kind === 'number' && !isWithin(expected, shown.value);
}

/** What a step measures; its own name where it measures nothing. */
function keyOf(procedure: Procedure, id: string): string {
  const step = stepOf(procedure, id);
  return (step.kind === 'measure' || step.kind === 'look') && step.probe !== null
    ? testKey({ setup: step.setup, probe: step.probe })
    : id;
}

/** What a step that wakes a fault should come to after the repair, in words. */
export function passingWords(procedure: Procedure, step: AskStep): string {
  return step.outcomes
    .filter(({ name }) => !wakes(procedure, step, name))
    .map(({ words }) => words)
    .join(', or ');
}

/** Whether a step can be repeated after a repair. */
export function isRepeatable(procedure: Procedure, step: Step): step is RepeatableStep {
  if (step.kind === 'ask') return canWake(procedure, step);
  return step.kind === 'measure' || step.kind === 'look';
}

/** A test passes when a healthy circuit would show the same; a step that wakes a fault, when it wakes none. */
export function passes(
  procedure: Procedure,
  step: RepeatableStep,
  { value, look, outcome }: Pick<RetestRecorded, 'value' | 'look' | 'outcome'>,
): boolean {
  switch (step.kind) {
    case 'ask':
      return !wakes(procedure, step, outcome);
    case 'look':
      return look !== null && step.expected.includes(look);
    case 'measure':
      return step.expected !== null && isWithin(step.expected, value);
  }
}

/** Whether an outcome is the one of what was shown: of a number the range it falls into, of a look one that has it. */
export function isOutcomeOf(
  step: RepeatableStep,
  { value, look, outcome }: Pick<RetestRecorded, 'value' | 'look' | 'outcome'>,
): boolean {
  const named = step.outcomes.find(({ name }) => name === outcome);
  if (!named || (step.kind !== 'measure' && value !== null)) return false;
  switch (step.kind) {
    case 'measure':
      return (
        look === null && outcomeOfValue(step, value ?? Number.POSITIVE_INFINITY)?.name === outcome
      );
    case 'look':
      return look === null || ('looks' in named && named.looks.includes(look));
    case 'ask':
      return look === null;
  }
}

function isWithin(
  expected: Pick<NonNullable<MeasureStep['expected']>, 'low' | 'high'>,
  value: number | null,
): boolean {
  const { low, high } = expectedEnds(expected);
  const read = value ?? Number.POSITIVE_INFINITY;
  return read >= low && read <= high;
}

/** The command that records a test made again after the repair. */
export type RetestCommand = Extract<Command, { type: 'record-retest' }>;

/** An answer to a step as the answer after the repair; null when it answers no test, or its number falls nowhere. */
export function againCommand(step: RepeatableStep, answer: Command): RetestCommand | null {
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
export function retestVerdict(session: Session): RepairVerdict | null {
  const lines = retestLines(session);
  if (lines.some(({ after }) => after === null)) return null;
  const made = lines.flatMap(({ before, after }) =>
    after?.type === 'retest-recorded' ? [{ before, after }] : [],
  );
  const fails = made.filter(({ after }) => !after.passed);
  if (fails.length === 0) {
    if (made.length === 0) return 'no-retest';
    return made.length === lines.length ? 'cured' : 'not-shown';
  }
  // A test that was not made before the repair cannot have changed.
  const isOther = fails.some(({ before, after }) => {
    const was = before && 'outcome' in before ? before.outcome : null;
    return was !== null && was !== after.outcome;
  });
  return isOther ? 'changed' : 'not-cured';
}

/** Closes the session with what the retests say. */
export function closeCommand(session: Session): Extract<Command, { type: 'close' }> {
  return { type: 'close', verdict: verdictNow(session) };
}

/** What the retests say as they stand, some of them missing or not. */
export function verdictNow(session: Session): RepairVerdict {
  return retestVerdict(session) ?? 'no-retest';
}

/** The verdict in words for the record. */
export const VERDICT_WORDS: Readonly<Record<RepairVerdict, string>> = {
  cured: 'every test that has to pass after the repair passes',
  'not-cured': 'a test still fails the same way as before the repair',
  changed: 'a test fails differently from before the repair: something else is wrong now',
  'not-shown':
    'every test that could be done passes, but not all that have to pass could be done: the repair is not proven',
  'no-retest': 'closed without a test after the repair',
};

/** What is left to do when the tests after the repair pass: they are made with the vehicle standing still. */
export const LAST_WORD =
  "Clear the trouble codes and drive the vehicle as the maker's procedure says. The last word is that the code stays away.";

function failed(procedure: Procedure, step: RepeatableStep, before: Answer | null): boolean {
  if (before?.type === 'look-recorded') return !passes(procedure, step, { ...before, value: null });
  if (before?.type !== 'reading-recorded') return false;
  const { judgement, value } = before;
  if (judgement) return judgement.verdict === 'low' || judgement.verdict === 'high';
  // Of a capture, and of quantities that a meter's accuracy says nothing of.
  return step.kind === 'measure' && step.expected !== null && !isWithin(step.expected, value);
}
