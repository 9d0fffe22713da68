/** The tests after the repair, before beside after. */
import { bindText } from '../procedure/bind-text.ts';
import { type Step, stepOf } from '../procedure/procedure.ts';
import { lookWords, stepWhere } from '../procedure/test-words.ts';
import type { Retest, RetestImpossible, RetestRecorded, StepCapture } from '../session/events.ts';
import { passingWords, retestLines } from '../session/retest.ts';
import { type Session, standingAnswers } from '../session/session.ts';
import type { Reading, RecordRetest, RetestRow } from './record-form.ts';
import {
  captured,
  expectedRange,
  expectedWords,
  outcomeWords,
  readingWords,
} from './record-lines.ts';
import type { Clock } from './session-clock.ts';

/** Retests since the present conclusion, what is missing, and the verdict. */
export function recordRetest(session: Session, clock: Clock): RecordRetest {
  const { concluded, closed } = session;
  const missing = concluded ? retestLines(session).filter(({ after }) => after === null) : [];
  return {
    rows: session.retests.map((event) => rowOf(session, event, clock)),
    missing: missing.map(({ step }) => titleOf(session, step)),
    verdict: closed?.verdict ?? null,
    words: closed?.words ?? '',
  };
}

function titleOf({ opened: { job, circuit } }: Session, { title }: Step): string {
  return bindText(title, job, circuit);
}

function rowOf(session: Session, event: Retest, clock: Clock): RetestRow {
  const { job, circuit, procedure } = session.opened;
  const step = stepOf(procedure, event.step);
  const was = captured(captureBefore(session, step.id)).capture;
  return {
    ...clock(event),
    step: step.id,
    title: titleOf(session, step),
    where: stepWhere(step, job, circuit),
    expected: step.kind === 'ask' ? passingWords(procedure, step) : expectedWords(step),
    expectedRange: expectedRange(step),
    before: beforeWords(session, step.id),
    ...(event.type === 'retest-recorded' ? shownAfter(step, event) : notMade(event)),
    ...(was ? { captureBefore: was } : {}),
  };
}

function shownAfter(step: Step, event: RetestRecorded) {
  const reading = step.kind === 'measure' ? readingOf(event, step.unit) : null;
  const look = event.look === null ? outcomeWords(step, event.outcome) : lookWords(event.look);
  return {
    after: reading ? readingWords(reading) : look,
    reading,
    passed: event.passed,
    ...captured(event.capture),
  };
}

function notMade({ reason }: RetestImpossible) {
  return { after: `could not be made: ${reason}`, reading: null, passed: null };
}

function readingOf(event: RetestRecorded, unit: Reading['unit']): Reading {
  return { typed: event.typed, value: event.value, overLimit: event.value === null, unit };
}

function captureBefore(session: Session, id: string): StepCapture | undefined {
  const before = standingAnswers(session).findLast((event) => event.step === id);
  return before && 'capture' in before ? before.capture : undefined;
}

/** What the step showed last on the way to the conclusion. */
function beforeWords(session: Session, id: string): string {
  const before = standingAnswers(session).findLast((event) => event.step === id);
  const step = stepOf(session.opened.procedure, id);
  switch (before?.type) {
    case undefined:
      return '';
    case 'reading-recorded':
      return readingWords({ ...before, overLimit: before.value === null });
    case 'look-recorded':
      return before.look === null ? outcomeWords(step, before.outcome) : lookWords(before.look);
    case 'step-done':
      return 'done';
    case 'step-impossible':
      return 'could not be done';
  }
}
