/** The answers of a session, and the tests that no step asked for, as lines of a report. */

import type { Verdict } from '../circuit/judge.ts';
import { judgementWords } from '../circuit/judgement-words.ts';
import { lookWords } from '../circuit/look-words.ts';
import { functionOf, isMeterUnit } from '../circuit/meter-units.ts';
import type { Meter } from '../circuit/test.ts';
import { expectedEnds, isTask, type Procedure, type Step, stepOf } from '../procedure/procedure.ts';
import {
  expectedRangeWords,
  instrumentWords,
  probeWhere,
  setupWords,
  stepWhere,
} from '../procedure/test-words.ts';
import { formatTyped } from '../quantity/format-quantity.ts';
import { meterUncertainty } from '../quantity/normal.ts';
import { capturedAgainstWords } from '../session/against-words.ts';
import { isByTest } from '../session/answering-test.ts';
import { seenWords } from '../session/capture-position.ts';
import { capturedFindingWords, capturedPhaseWords } from '../session/capture-words.ts';
import type {
  Answer,
  ReadingRecorded,
  SessionOpened,
  StepCapture,
  TestRecorded,
} from '../session/events.ts';
import { capturedWords } from '../session/measure-capture.ts';
import { stepThen } from '../session/step-here.ts';
import { vainWords } from '../session/vain-words.ts';
import { dropsWords } from '../session/watched-words.ts';
import type { RecordContext, Today } from './record-context.ts';
import type { RecordCapture, RecordLine, RecordReading, RecordTest } from './record-form.ts';

/** All answers in the order they were given. */
export function recordLines(context: RecordContext): RecordLine[] {
  const { session, clock } = context;
  const onTheWay = new Set(session.trail.map((visit) => visit.answer));
  return session.answers.map(({ event, superseded }, index) => ({
    ...clock(event),
    number: index + 1,
    ...lineOf(context, event),
    ...readBefore(context, event),
    standing: superseded ? 'taken back' : onTheWay.has(index) ? 'standing' : 'off the way',
  }));
}

/** Said behind the setup of a test during which it was. */
export const HARNESS_MOVED = 'harness moved';

/** Of an answer that a test of no step gave: which one. */
function readBefore(
  { session }: RecordContext,
  event: Answer,
): Partial<Pick<RecordLine, 'by' | 'reason'>> {
  if (!isByTest(event)) return {};
  const test = session.events[event.by - 1];
  const number = test?.type === 'test-recorded' ? session.tests.indexOf(test) + 1 : 0;
  return { by: event.by, reason: `not repeated: test No. ${number}, outside the procedure` };
}

/** Tests outside the procedure, in the order they were made. */
export function recordTests(context: RecordContext): RecordTest[] {
  const { session, clock, named } = context;
  const { job, circuit } = session.opened;
  const since = session.concluded ? clock(session.concluded).event : Number.POSITIVE_INFINITY;
  return session.tests.map((event, index) => {
    const { test, capture, made, note } = event;
    const { words, family } = named(test);
    const moment = clock(event);
    const setup = setupWords(test.setup, job, circuit);
    return {
      ...moment,
      number: index + 1,
      afterRepair: moment.event > since,
      ...(made === undefined ? {} : { made }),
      ...(note === undefined ? {} : { note }),
      title: words,
      family,
      where: probeWhere(test.probe, job, circuit),
      setup: test.wiggle ? `${setup}; ${HARNESS_MOVED}` : setup,
      instrument: capture ? 'scope' : instrumentWords(test.probe),
      ...testFound(context, event),
      ...captured(context, capture),
    };
  });
}

type Judged = Pick<RecordLine, 'verdict' | 'judgement'>;
type FoundOfTest = Pick<RecordTest, 'expected' | 'expectedRange' | 'found' | 'reading'> &
  Judged &
  Today;

const NOT_JUDGED = { verdict: null, judgement: '' } as const;

function testFound(context: RecordContext, event: TestRecorded): FoundOfTest {
  const { shown, typed } = event;
  const expected = context.showsGood ? event.expected : null;
  const nothing = { expected: '', expectedRange: null, ...NOT_JUDGED };
  if (shown.kind === 'look') {
    const found = { ...nothing, found: seenWords(shown.look, event.capture), reading: null };
    if (expected?.kind !== 'look') return found;
    return {
      ...found,
      expected: expected.looks.map(lookWords).join(' or '),
      verdict: expected.looks.includes(shown.look) ? 'as expected' : 'not as expected',
    };
  }
  const { value, unit } = shown;
  const reading = readingOf({ typed, value, unit }, event.capture ? null : context.meterAt(event));
  const found = { ...nothing, found: readingWords(reading), reading };
  if (expected?.kind !== 'number') return found;
  const range = { low: expected.low, high: expected.high, from: 'circuit' } as const;
  return {
    ...found,
    expected: expectedRangeWords({ ...range, nominal: null }, unit),
    expectedRange: range,
    ...judged(context, event, reading, range),
    ...context.today(event, upper),
  };
}

/** A number that was read, with what `meter` may be off there; null for what no meter read. */
export function readingOf(
  { typed, value, unit }: Pick<RecordReading, 'typed' | 'value' | 'unit'>,
  meter: Meter | null,
): RecordReading {
  const accuracy = meter && isMeterUnit(unit) ? functionOf(meter, unit) : null;
  const reading = { typed, value, overLimit: value === null, unit };
  if (value === null || !accuracy) return reading;
  return { ...reading, mayBeOff: meterUncertainty(accuracy, value).limit };
}

/** `4.97 V`, `OL`, with the digits that were typed. */
export function readingWords({ value, unit, typed }: RecordReading): string {
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

type LineFacts = Omit<RecordLine, 'number' | 'standing' | 'event' | 'at' | 'workedMs'>;

function lineOf(context: RecordContext, event: Answer): LineFacts {
  const { session, bind, showsGood } = context;
  const { job, circuit } = session.opened;
  const step = stepThen(session, stepOf(procedureOf(session.opened), event.step), event);
  const base = {
    step: step.id,
    title: bind(step.title),
    family: isTask(step) ? step.family : '',
    where: stepWhere(step, job, circuit),
    setup: isTask(step) ? setupWords(step.setup, job, circuit) : '',
    instrument: step.kind === 'look' ? instrumentWords(step.probe) : '',
    expected: showsGood ? expectedWords(step) : '',
    expectedRange: showsGood ? expectedRange(step) : null,
    found: '',
    reading: null,
    ...NOT_JUDGED,
    outcome: '',
    reason: '',
  };
  switch (event.type) {
    case 'reading-recorded': {
      const { typed, value, unit, instrument } = event;
      const reading = readingOf(
        { typed, value, unit },
        event.capture ? null : context.meterAt(event),
      );
      return {
        ...base,
        kind: 'reading',
        instrument,
        found: readingWords(reading),
        reading,
        ...judged(context, event, reading, base.expectedRange),
        ...context.today(event, (today, of) =>
          of === 'outcome' ? bind(recordedOutcome(step, today)) : upper(today),
        ),
        outcome: showsGood ? bind(recordedOutcome(step, event.outcome)) : '',
        ...captured(context, event.capture),
      };
    }
    case 'look-recorded': {
      const { look } = event;
      const words = bind(recordedOutcome(step, event.outcome));
      const isExpected = showsGood && step.kind === 'look' && step.expected.length > 0;
      const fits = look !== null && isExpected ? step.expected.includes(look) : null;
      return {
        ...base,
        kind: step.kind === 'look' ? 'look' : 'answer',
        found: look === null ? words : seenWords(look, event.capture),
        verdict: fits === null ? null : fits ? 'as expected' : 'not as expected',
        outcome: showsGood || look === null ? words : '',
        ...(event.vain ? { judgement: vainWords(event.vain) } : {}),
        ...captured(context, event.capture),
      };
    }
    case 'step-done':
      return { ...base, kind: 'done', found: 'done' };
    case 'step-impossible':
      return {
        ...{ ...base, kind: 'impossible', found: 'could not be done', reason: event.reason },
        ...(event.by === undefined ? {} : { by: event.by }),
      };
  }
}

/** The procedure whose step was answered or tested again. */
export function procedureOf({ procedure }: Pick<SessionOpened, 'procedure'>): Procedure {
  if (!procedure) throw new Error('records: a step was answered without a procedure');
  return procedure;
}

/** A capture as reports show it. */
export function captured(
  { showsGood }: RecordContext,
  capture: StepCapture | undefined,
): Pick<RecordLine, 'capture'> {
  if (!capture) return {};
  const { name, sha256, from, channel, measures, channels } = capture;
  return {
    capture: {
      name,
      sha256,
      from,
      ...(channel === undefined ? {} : { channel }),
      found: capturedWords(measures),
      measures,
      words: showsGood ? capturedFindingWords(capture) : [],
      pairs: [
        ...capturedPhaseWords(capture),
        ...(showsGood ? capturedAgainstWords(capture) : []),
        ...(capture.drops ? [dropsWords(capture.drops, measures.unit)] : []),
      ],
      ...filesBeside(capture),
      channels,
    },
  };
}

/** The other files of a capture: those of the same crank and the known-good one, by name and SHA-256. */
function filesBeside({ second, against }: StepCapture): Partial<Pick<RecordCapture, 'beside'>> {
  const files = [
    ...(second ? [{ what: 'second' as const, ...second }] : []),
    ...(against?.kind === 'good'
      ? [{ what: 'good' as const, name: against.name, sha256: against.sha256 }]
      : []),
  ];
  return files.length === 0 ? {} : { beside: files };
}

/** As it was judged when it was recorded; where the meter's accuracy says nothing of it, a plain comparison. */
function judged(
  context: RecordContext,
  event: ReadingRecorded | TestRecorded,
  { value, unit }: RecordReading,
  range: RecordLine['expectedRange'],
): Judged {
  if (!context.showsGood) return NOT_JUDGED;
  const { judgement, capture } = event;
  if (judgement) {
    const words = judgementWords(judgement, { value, unit }, context.meterAt(event));
    return { verdict: judgement.verdict, judgement: words };
  }
  if (!range) return NOT_JUDGED;
  const verdict = plainVerdict(value ?? Number.POSITIVE_INFINITY, expectedEnds(range));
  const without = capture ? 'of a capture' : "without the meter's accuracy";
  return { verdict, judgement: `${PLAIN_WORDS[verdict]}, ${without}` };
}

/** Verdicts stand in capitals in every report. */
function upper(verdict: string): string {
  return verdict.toUpperCase();
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
export function recordedOutcome(step: Step, name: string): string {
  if (!('outcomes' in step)) return name;
  const outcomes: readonly { readonly name: string; readonly words: string }[] = step.outcomes;
  return outcomes.find((one) => one.name === name)?.words || name;
}
