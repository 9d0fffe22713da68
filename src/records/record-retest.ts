/** The tests after the repair, before beside after. */
import { type Step, stepOf } from '../procedure/procedure.ts';
import { stepWhere } from '../procedure/test-words.ts';
import { seenWords } from '../session/capture-position.ts';
import {
  REPAIR_VERDICTS,
  type Retest,
  type RetestImpossible,
  type RetestRecorded,
  type StepCapture,
} from '../session/events.ts';
import { passingWords, retestLines, VERDICT_WORDS } from '../session/retest.ts';
import { type Session, standingAnswers } from '../session/session.ts';
import { stepAgain } from '../session/step-again.ts';
import { stepThen } from '../session/step-here.ts';
import type { RecordContext } from './record-context.ts';
import type { RecordReading, RecordRetest, RetestRow } from './record-form.ts';
import {
  captured,
  expectedRange,
  expectedWords,
  procedureOf,
  readingWords,
  recordedOutcome,
} from './record-lines.ts';

/** Retests since the present conclusion, what is missing, and the verdict. */
export function recordRetest(context: RecordContext): RecordRetest {
  const { session, bind } = context;
  const { concluded, closed } = session;
  const missing = concluded ? retestLines(session).filter(({ after }) => after === null) : [];
  return {
    rows: session.retests.map((event) => rowOf(context, event)),
    missing: missing.map(({ step }) => bind(step.title)),
    drives: session.drives.map((event) => ({
      ...context.clock(event),
      code: event.code,
      words: event.words,
    })),
    verdict: closed?.verdict ?? null,
    words: closed ? VERDICT_WORDS[closed.verdict] : '',
    ...(closed ? context.today(closed, repairVerdictWords) : {}),
  };
}

function repairVerdictWords(verdict: string): string {
  return REPAIR_VERDICTS.flatMap((one) => (one === verdict ? [VERDICT_WORDS[one]] : [])).join('');
}

function rowOf(context: RecordContext, event: Retest): RetestRow {
  const { session, bind, clock } = context;
  const { job, circuit } = session.opened;
  const procedure = procedureOf(session.opened);
  const then = stepThen(session, stepOf(procedure, event.step), event);
  const step = stepAgain(session, then, event);
  const was = captured(context, captureBefore(session, step.id)).capture;
  return {
    ...clock(event),
    step: step.id,
    title: bind(step.title),
    where: stepWhere(step, job, circuit),
    expected: step.kind === 'ask' ? passingWords(procedure, step) : expectedWords(step),
    expectedRange: expectedRange(step),
    before: beforeWords(session, step),
    ...(event.type === 'retest-recorded' ? shownAfter(context, step, event) : notMade(event)),
    ...(was ? { captureBefore: was } : {}),
  };
}

function shownAfter(context: RecordContext, step: Step, event: RetestRecorded) {
  const reading = step.kind === 'measure' ? readingOf(event, step.unit) : null;
  const look =
    event.look === null
      ? recordedOutcome(step, event.outcome)
      : seenWords(event.look, event.capture);
  return {
    after: reading ? readingWords(reading) : look,
    reading,
    passed: event.passed,
    ...captured(context, event.capture),
  };
}

function notMade({ reason }: RetestImpossible) {
  return { after: `could not be done: ${reason}`, reading: null, passed: null };
}

function readingOf(event: RetestRecorded, unit: RecordReading['unit']): RecordReading {
  return { typed: event.typed, value: event.value, overLimit: event.value === null, unit };
}

function captureBefore(session: Session, id: string): StepCapture | undefined {
  const before = standingAnswers(session).findLast((event) => event.step === id);
  return before && 'capture' in before ? before.capture : undefined;
}

/** What the step showed last on the way to the conclusion. */
function beforeWords(session: Session, step: Step): string {
  const before = standingAnswers(session).findLast((event) => event.step === step.id);
  switch (before?.type) {
    case undefined:
      return '';
    case 'reading-recorded':
      return readingWords({ ...before, overLimit: before.value === null });
    case 'look-recorded':
      return before.look === null
        ? recordedOutcome(step, before.outcome)
        : seenWords(before.look, before.capture);
    case 'step-done':
      return 'done';
    case 'step-impossible':
      return 'could not be done';
  }
}
