/** What was answered, read and found, in words, and the titles of what was asked. No React. */
import { lookWords } from '../../circuit/look-words.ts';
import type { Test } from '../../circuit/test.ts';
import { showsGood } from '../../drill/levels.ts';
import type { Step } from '../../procedure/procedure.ts';
import {
  expectedRangeWords,
  goodWords,
  instrumentWords,
  probeWhere,
} from '../../procedure/test-words.ts';
import { formatTyped } from '../../quantity/format-quantity.ts';
import { answeredJustNow, isByTest } from '../../session/answering-test.ts';
import { seenWords } from '../../session/capture-position.ts';
import {
  type Answer,
  isAnswer,
  type Retest,
  type RetestRecorded,
  type TestRecorded,
} from '../../session/events.ts';
import { capturedWords } from '../../session/measure-capture.ts';
import { passingWords, type RepeatableStep } from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import { expectedShownWords, nameOfTest } from '../../session/session-tests.ts';
import { stepThen } from '../../session/step-here.ts';
import type { OpenedSession } from '../app-services.ts';

/** What a healthy circuit shows here, without who says so; null where nothing is expected. */
export function expectedPlain(step: Step): string | null {
  if (step.kind === 'look') return goodWords(step);
  return step.kind === 'measure' && step.expected
    ? expectedRangeWords(step.expected, step.unit)
    : null;
}

/** What a test has to show after the repair; null where nothing is expected. */
export function expectedAgain(step: RepeatableStep, session: Session): string | null {
  const { procedure } = session.opened;
  return step.kind === 'ask' && procedure ? passingWords(procedure, step) : goodWords(step);
}

/** The title of a step; a step that the procedure does not have by its name. */
export function stepTitle(
  { bind }: Pick<OpenedSession, 'bind'>,
  { opened }: Session,
  step: string,
): string {
  return bind(opened.procedure?.steps[step]?.title ?? step);
}

/** What a test is called; where no table knows it, by instrument and place. */
export function testWords(
  { bind }: Pick<OpenedSession, 'bind'>,
  session: Session,
  test: Test,
): string {
  const name = nameOfTest(session, test);
  if (name !== null) return bind(name);
  const { job, circuit } = session.opened;
  const where = probeWhere(test.probe, job, circuit);
  return `${instrumentWords(test.probe)}: ${where}`;
}

/** What a test that no step asked for showed, with the digits that were typed, and what was said of it. */
export function foundWords({ typed, shown, judgement, capture }: TestRecorded): string {
  if (shown.kind === 'look') {
    const captured = capture ? `; captured: ${capturedWords(capture.measures)}` : '';
    return `${seenWords(shown.look, capture)}${captured}`;
  }
  const { value, unit } = shown;
  const found = formatTyped({ value: value ?? Number.POSITIVE_INFINITY, unit }, typed);
  return judgement ? `${found}: ${judgement.verdict}` : found;
}

/** What was read last, with what is good there where it may be told; null before the first reading. */
export function lastFound(opened: OpenedSession, session: Session): string | null {
  const last = session.events.findLast(
    (event): event is Answer | TestRecorded => event.type === 'test-recorded' || isAnswer(event),
  );
  if (!last) return null;
  if (last.type === 'test-recorded') {
    const good = last.expected ? expectedShownWords(last.expected, last.test) : '';
    return `${testWords(opened, session, last.test)}: ${foundWords(last)}${goodIs(good)}`;
  }
  const asked = session.opened.procedure?.steps[last.step];
  const step = asked && stepThen(session, asked, last);
  const good = step && (opened.drill?.level.expected ?? true) ? goodWords(step) : null;
  return `${stepTitle(opened, session, last.step)}: ${opened.bind(answerWords(last, session))}${goodIs(good ?? '')}`;
}

function goodIs(words: string): string {
  return words === '' ? '' : `. Good is: ${words}`;
}

/**
 * The steps that were just answered unasked, by a test of the session or since their connector is out of reach, and how one
 * is asked all the same; null where there is none.
 */
export function answeredWords(opened: OpenedSession, session: Session): string | null {
  const unasked = answeredJustNow(session);
  const title = ({ step }: Answer) => stepTitle(opened, session, step);
  const answered = unasked
    .filter(isByTest)
    .map((answer) => `${title(answer)}, ${opened.bind(foundAt(answer, session))}`);
  const round = unasked.flatMap((answer) => (answer.type === 'step-impossible' ? [answer] : []));
  const reasons = [...new Set(round.map(({ reason }) => reason))];
  const said = [
    ...(answered.length === 0
      ? []
      : [`Already answered (F2 or back to repeat it): ${answered.join('; ')}.`]),
    ...reasons.map((reason) => {
      const steps = round.filter((one) => one.reason === reason).map(title);
      return `Skipped (F2 or back to do it): ${steps.join('; ')} (${reason}).`;
    }),
  ];
  return said.length === 0 ? null : said.join(' ');
}

/** What was found, in a few words. */
export function answerWords(answer: Answer, session: Session): string {
  return isByTest(answer) ? `${foundAt(answer, session)} (read before)` : foundAt(answer, session);
}

function foundAt(answer: Answer, session: Session): string {
  const step = session.opened.procedure?.steps[answer.step];
  const outcomes = step && 'outcomes' in step ? step.outcomes : [];
  const outcome =
    'outcome' in answer
      ? outcomes.find(({ name }) => name === answer.outcome)?.words || answer.outcome
      : '';
  // The words of an outcome say whether it is good; an answer in words has no others.
  const isJudged = showsGood(session);
  switch (answer.type) {
    case 'reading-recorded': {
      const { typed, value, unit } = answer;
      const found = formatTyped({ value: value ?? Number.POSITIVE_INFINITY, unit }, typed);
      return isJudged ? `${found}: ${outcome}` : found;
    }
    case 'look-recorded': {
      if (answer.look === null) return outcome;
      const seen = seenWords(answer.look, answer.capture);
      return isJudged ? seenAndSaid(seen, outcome) : seen;
    }
    case 'step-done':
      return 'done';
    case 'step-impossible':
      return `could not be done: ${answer.reason}`;
  }
}

/** What was seen, and the words of the outcome where they say more. */
function seenAndSaid(seen: string, outcome: string): string {
  return seen.toLowerCase().startsWith(outcome.toLowerCase()) ? seen : `${seen}: ${outcome}`;
}

/**
 * What was found after the repair, beside what is good. The words of an outcome say where the diagnosis goes on from it,
 * so they stand here only where nothing else was answered.
 */
export function retestWords(step: RepeatableStep, after: Retest): string {
  if (after.type === 'retest-impossible') return `could not be done: ${after.reason}`;
  const found = foundAfter(step, after);
  const expected = step.kind === 'ask' ? null : expectedPlain(step);
  return expected === null || expected === found ? found : `${found} (good is ${expected})`;
}

function foundAfter(step: RepeatableStep, { look, typed, value, outcome }: RetestRecorded): string {
  if (look !== null) return lookWords(look);
  if (step.kind === 'measure')
    return formatTyped({ value: value ?? Number.POSITIVE_INFINITY, unit: step.unit }, typed);
  return step.outcomes.find(({ name }) => name === outcome)?.words || outcome;
}

/** One word on a test after the repair. */
export function retestMark(after: Retest | null): 'passes' | 'FAILS' | 'not done' {
  if (after?.type !== 'retest-recorded') return 'not done';
  return after.passed ? 'passes' : 'FAILS';
}

/** The answer that was just taken back at the present step, to stand in the prompt again. */
export function takenBack(session: Session): Answer | null {
  const present = session.trail.at(-1);
  const last = session.events.findLast(
    (event) => event.type === 'step-reopened' || isAnswer(event),
  );
  if (last?.type !== 'step-reopened' || last.step !== present?.step) return null;
  return session.answers[last.answer]?.event ?? null;
}
