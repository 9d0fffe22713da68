/** The answers and extra readings of a session as lines of a report. */
import type { Verdict } from '../circuit/judge.ts';
import { judgementWords } from '../circuit/judgement-words.ts';
import { bindText } from '../procedure/bind-text.ts';
import { endsOf, isTask, type Step, stepOf } from '../procedure/procedure.ts';
import {
  expectedRangeWords,
  instrumentWords,
  lookWords,
  setupWords,
  stepWhere,
  whereWords,
} from '../procedure/test-words.ts';
import { formatTyped } from '../quantity/format-quantity.ts';
import { capturedFindingWords, capturedPhaseWords } from '../session/capture-words.ts';
import type { Answer, ExtraReading, ReadingRecorded, StepCapture } from '../session/events.ts';
import { capturedWords } from '../session/measure-capture.ts';
import { meterAt } from '../session/meter-at.ts';
import type { Session } from '../session/session.ts';
import type { Reading, RecordExtra, RecordLine } from './record-form.ts';
import type { Clock } from './session-clock.ts';

/** Every answer in the order it was given. */
export function recordLines(session: Session, clock: Clock): RecordLine[] {
  const onTheWay = new Set(session.trail.map((visit) => visit.answer));
  return session.answers.map(({ event, superseded }, index) => ({
    ...clock(event),
    number: index + 1,
    ...lineOf(session, event),
    standing: superseded ? 'taken back' : onTheWay.has(index) ? 'standing' : 'off the way',
  }));
}

/** Tests outside the tree, in the order they were taken. */
export function recordExtras(session: Session, clock: Clock): RecordExtra[] {
  const { job, circuit } = session.opened;
  return session.extras.map((event) => ({
    ...clock(event),
    words: bindText(event.words, job, circuit),
    where: whereWords(event.test.probe, job, circuit),
    setup: setupWords(event.test.setup, job, circuit),
    instrument: instrumentWords(event.test.probe),
    ...extraFound(session, event),
    ...captured(event.capture),
  }));
}

type ExtraFound = Pick<
  RecordExtra,
  'expected' | 'expectedRange' | 'found' | 'reading' | 'verdict' | 'judgement'
>;

function extraFound(session: Session, event: ExtraReading): ExtraFound {
  const { shown, typed, expected, judgement, capture } = event;
  const nothing = { expected: '', expectedRange: null, verdict: null, judgement: '' };
  if (shown.kind === 'look') {
    const found = { ...nothing, found: lookWords(shown.look), reading: null };
    if (expected?.kind !== 'look') return found;
    const fits = expected.looks.includes(shown.look);
    return {
      ...found,
      expected: expected.looks.map(lookWords).join(' or '),
      verdict: fits ? 'as expected' : 'not as expected',
    };
  }
  const { value, unit } = shown;
  const reading = { typed, value, overLimit: value === null, unit };
  const found = { ...nothing, found: readingWords(reading), reading };
  if (expected?.kind !== 'number') return found;
  const range = { low: expected.low, high: expected.high, from: 'circuit' } as const;
  const plain = plainVerdict(value ?? Number.POSITIVE_INFINITY, endsOf(range));
  return {
    ...found,
    expected: expectedRangeWords({ ...range, nominal: null }, unit),
    expectedRange: range,
    verdict: judgement?.verdict ?? plain,
    judgement:
      (judgement && judgementWords(judgement, { value, unit }, meterAt(session, event))) ??
      `${PLAIN_WORDS[plain]}, ${capture ? 'of a capture' : "without the meter's accuracy"}`,
  };
}

/** `4.97 V`, `OL`, with the digits that were typed. */
export function readingWords({ value, unit, typed }: Reading): string {
  return formatTyped({ value: value ?? Number.POSITIVE_INFINITY, unit }, typed);
}

/** What a healthy circuit shows at a step, in words; empty where nothing is expected. */
export function expectedWords(step: Step): string {
  if (step.kind === 'measure') {
    if (!step.expected) return '';
    return expectedRangeWords(step.expected, step.unit);
  }
  return step.kind === 'look' ? step.expected.map(lookWords).join(' or ') : '';
}

/** The same as numbers, for steps that end in one. */
export function expectedRange(step: Step): RecordLine['expectedRange'] {
  if (step.kind !== 'measure' || !step.expected) return null;
  const { low, high, from } = step.expected;
  return { low, high, from };
}

type LineFacts = Omit<RecordLine, 'number' | 'standing' | 'at' | 'workedMs'>;

function lineOf(session: Session, event: Answer): LineFacts {
  const { job, circuit, procedure } = session.opened;
  const step = stepOf(procedure, event.step);
  const bind = (text: string) => bindText(text, job, circuit);
  const base = {
    step: step.id,
    title: bind(step.title),
    family: isTask(step) ? step.family : '',
    where: stepWhere(step, job, circuit),
    setup: isTask(step) ? setupWords(step.setup, job, circuit) : '',
    instrument: step.kind === 'look' ? instrumentWords(step.probe) : '',
    expected: expectedWords(step),
    expectedRange: expectedRange(step),
    found: '',
    reading: null,
    verdict: null,
    judgement: '',
    outcome: '',
    reason: '',
  };
  switch (event.type) {
    case 'reading-recorded': {
      const { typed, value, unit, instrument } = event;
      const reading = { typed, value, overLimit: value === null, unit };
      return {
        ...base,
        kind: 'reading',
        instrument,
        found: readingWords(reading),
        reading,
        ...judged(session, event, step),
        outcome: bind(outcomeWords(step, event.outcome)),
        ...captured(event.capture),
      };
    }
    case 'look-recorded': {
      const { look } = event;
      const words = bind(outcomeWords(step, event.outcome));
      const expected = step.kind === 'look' && step.expected.length > 0 ? step.expected : null;
      const fits = look !== null && expected ? expected.includes(look) : null;
      return {
        ...base,
        kind: step.kind === 'look' ? 'look' : 'answer',
        found: look === null ? words : lookWords(look),
        verdict: fits === null ? null : fits ? 'as expected' : 'not as expected',
        outcome: words,
        ...captured(event.capture),
      };
    }
    case 'step-done':
      return { ...base, kind: 'done', found: 'done' };
    case 'step-impossible':
      return { ...base, kind: 'impossible', found: 'could not be done', reason: event.reason };
  }
}

/** A capture as reports show it. */
export function captured(capture: StepCapture | undefined): Pick<RecordLine, 'capture'> {
  if (!capture) return {};
  const { findings: _, phases: _phases, ...kept } = capture;
  const pairs = capturedPhaseWords(capture);
  return {
    capture: {
      ...kept,
      words: capturedFindingWords(capture),
      ...(pairs.length > 0 ? { pairs } : {}),
      found: capturedWords(capture.measures),
    },
  };
}

/** The judgement as saved; where the meter's accuracy says nothing of the unit, a plain comparison. */
function judged(
  session: Session,
  event: ReadingRecorded,
  step: Step,
): Pick<RecordLine, 'verdict' | 'judgement'> {
  if (event.judgement) {
    const { verdict } = event.judgement;
    return { verdict, judgement: judgementWords(event.judgement, event, meterAt(session, event)) };
  }
  const without = event.capture ? 'of a capture' : "without the meter's accuracy";
  const range = step.kind === 'measure' ? step.expected : null;
  if (!range) return { verdict: null, judgement: '' };
  const verdict = plainVerdict(event.value ?? Number.POSITIVE_INFINITY, endsOf(range));
  return { verdict, judgement: `${PLAIN_WORDS[verdict]}, ${without}` };
}

const PLAIN_WORDS = { good: 'within the range', low: 'below the range', high: 'above the range' };

function plainVerdict(
  value: number,
  { low, high }: { readonly low: number; readonly high: number },
): Extract<Verdict, 'good' | 'low' | 'high'> {
  if (value < low) return 'low';
  return value > high ? 'high' : 'good';
}

/** The outcome in the words of the tree. */
export function outcomeWords(step: Step, name: string): string {
  if (!('outcomes' in step)) return name;
  const outcomes: readonly { readonly name: string; readonly words: string }[] = step.outcomes;
  return outcomes.find((one) => one.name === name)?.words || name;
}
