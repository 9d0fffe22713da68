import type { Circuit } from '../circuit/circuit.ts';
/**
 * A session as the shop keeps it. Everything is read from the events, in the words of this vehicle; nothing is
 * guessed.
 */

import { freeOrderTitle } from '../procedure/free-order.ts';
import type { Circumstances, Job } from '../procedure/job.ts';
import { harnessText } from '../procedure/read-harness.ts';
import { sharesText } from '../procedure/read-neighbours.ts';
import { outcomeOfRepair } from '../procedure/read-repair.ts';
import { testOf } from '../procedure/test-of.ts';
import { wiringSketch } from '../procedure/wiring-sketch.ts';
import type { Hand, SessionEvent, SessionOpened } from '../session/events.ts';
import type { JudgedOtherwise } from '../session/history.ts';
import {
  connectorWords,
  notHadWords,
  stateNeedWords,
  unreachedWords,
} from '../session/out-of-reach.ts';
import { testOfShort } from '../session/place-short.ts';
import { distanceWords, stretchWords, touchedWords } from '../session/place-words.ts';
import type { Session } from '../session/session.ts';
import { movedWords, toldBy } from '../session/told.ts';
import { offsetOf, setBackMs } from '../session/wall-clock.ts';
import { watchedWords } from '../session/watched-words.ts';
import { needsOf } from '../suspects/test-entries.ts';
import { callSentences } from './call-words.ts';
import { recordCautions } from './record-cautions.ts';
import { recordConclusion } from './record-conclusion.ts';
import { contextOf, minutesAt, type RecordContext, titleOf } from './record-context.ts';
import { recordDrill } from './record-drill.ts';
import {
  type Head,
  KEPT_AS,
  RECORD_FORMAT,
  type RecordJob,
  type RecordVehicle,
  type SessionRecord,
} from './record-form.ts';
import { recordKnown } from './record-known.ts';
import { captured, recordLines, recordTests } from './record-lines.ts';
import { recordRetest } from './record-retest.ts';
import { durationWords, handsWords, originWords } from './report-words.ts';
import { wiringPicture } from './wiring-picture.ts';

/** Columns of the wiring sketch in a record. */
const WIRING_COLUMNS = 76;

/** What was at hand by the settings, and what else the tests that were made took: a record must not deny its own scope. */
function atHandOrUsed({ instruments, opened, events }: Session): string[] {
  const used = events.flatMap((event): readonly string[] => {
    if (event.type === 'test-recorded') return needsOf(event.test);
    if (event.type === 'short-placed' && opened.circuit)
      return needsOf(testOfShort(opened.circuit, event.stretch, 'from'));
    if (event.type !== 'reading-recorded' && event.type !== 'look-recorded') return [];
    const step = opened.procedure?.steps[event.step];
    const test = step && testOf(step);
    return test ? needsOf(test) : [];
  });
  return [...new Set([...instruments, ...used])];
}

/**
 * The record of a session. `head` is the number and hash of the last event it was replayed from; `judgedOtherwise`
 * comes from checking its history.
 */
export function recordOf(
  session: Session,
  head: Head,
  judgedOtherwise: readonly JudgedOtherwise[] = [],
): SessionRecord {
  const context = contextOf(session, judgedOtherwise);
  const { clock } = context;
  const { opened, events } = session;
  const { job, circuit, procedure } = opened;
  const lines = recordLines(context);
  const tests = recordTests(context);
  const conclusion = recordConclusion(context, lines, tests);
  const last = events.at(-1) ?? opened;
  const vehicle = VEHICLES[opened.vehicle.kind];
  const by = handsOf(events);
  return {
    format: RECORD_FORMAT,
    id: opened.id,
    program: opened.program,
    status: session.status,
    title: recordTitle(opened),
    procedure: procedure && { name: procedure.name, title: procedure.title },
    circuit: circuit?.title ?? null,
    wiring: circuit
      ? wiringSketch(circuit, job, { columns: WIRING_COLUMNS, ascii: false, besides: true })
      : [],
    picture: wiringPicture(context, conclusion),
    vehicle,
    by,
    origin: originWords(vehicle, by),
    rules: opened.rules,
    person: opened.person,
    shop: opened.shop,
    instruments: atHandOrUsed(session),
    meter: session.meter.name,
    startedAt: opened.at,
    endedAt: last.at,
    workedMs: clock(last).workedMs,
    // Prices every test; lists of ten thousand sessions never ask.
    get minutes() {
      return minutesAt(session);
    },
    complaint: job.complaint,
    cause: conclusion?.title ?? '',
    correction: conclusion?.repair ?? '',
    job: jobOf(session),
    lines,
    tests,
    shorts: recordShorts(context),
    get cautions() {
      return recordCautions(context);
    },
    known: recordKnown(context),
    notes: recordNotes(context),
    ...recordWatched(context),
    corrections: recordCorrections(context, lines),
    interruptions: recordInterruptions(context),
    conclusion,
    get call() {
      return callSentences(session, this);
    },
    work: recordWork(context),
    retest: recordRetest(context),
    drill: recordDrill(context),
    head: { seq: head.seq, hash: head.hash },
    howToVerify: `ohmward records verify SESSION --head ${head.hash}`,
  };
}

function recordNotes(context: RecordContext): SessionRecord['notes'] {
  const { session, clock } = context;
  return session.notes.map((event) => ({
    ...clock(event),
    step: titleOf(context, event.step),
    text: event.text,
  }));
}

function recordWork({ session, clock }: RecordContext): SessionRecord['work'] {
  return session.work.map((event) => ({
    ...clock(event),
    answer: event.answer,
    by: event.by,
    words: event.words,
  }));
}

/** Answers that were taken back. */
function recordCorrections(
  context: RecordContext,
  lines: SessionRecord['lines'],
): SessionRecord['corrections'] {
  const { session, clock } = context;
  return session.events.flatMap((event) => {
    if (event.type !== 'step-reopened') return [];
    const line = event.answer + 1;
    const found = lines[event.answer]?.found ?? '';
    return [{ ...clock(event), step: titleOf(context, event.step), line, found }];
  });
}

function recordInterruptions(context: RecordContext): SessionRecord['interruptions'] {
  const { session, clock } = context;
  const { events } = session;
  return events.flatMap((event, index) => {
    const words = interruptionWords(context, event);
    const told = [...clockWords(events[index - 1], event), ...(words === null ? [] : [words])];
    return told.map((one) => ({ ...clock(event), words: one }));
  });
}

/** Rounds of moving and warming. */
function recordWatched(context: RecordContext): Pick<SessionRecord, 'watched'> {
  const { session, clock } = context;
  if (session.watched.length === 0) return {};
  const again = new Set<SessionEvent>(
    session.concluded ? session.events.slice(session.events.lastIndexOf(session.concluded)) : [],
  );
  return {
    watched: session.watched.map((event) => ({
      ...clock(event),
      step: `${titleOf(context, event.step)}${again.has(event) ? ', after the repair' : ''}`,
      found: watchedWords(event),
      minutes: event.minutes,
      drops: event.drops,
      ...captured(context, event.capture),
    })),
  };
}

/** Where shorts were placed along a wire. */
function recordShorts({ session, clock }: RecordContext): SessionRecord['shorts'] {
  const { circuit } = session.opened;
  if (!circuit) return [];
  return session.shorts.map((event) => ({
    ...clock(event),
    stretch: stretchWords(circuit, event.stretch),
    touches: touchedWords(event.stretch.touches),
    typed: event.typed,
    found: distanceWords(circuit, event),
  }));
}

const VEHICLES: Readonly<Record<SessionOpened['vehicle']['kind'], RecordVehicle>> = {
  real: 'real',
  bench: 'simulated',
  drill: 'drill',
};

/** What a session is called: its procedure, or that its tests were free. */
export function recordTitle({
  procedure,
  circuit,
}: Pick<SessionOpened, 'procedure' | 'circuit'>): string {
  if (procedure) return procedure.title;
  return circuit ? freeOrderTitle(circuit) : 'Free order of tests';
}

/** Who gave answers: whoever opened it and whoever went on with it, each once. */
function handsOf(events: readonly SessionEvent[]): Hand[] {
  const hands = events.flatMap((event) =>
    event.type === 'session-opened' || event.type === 'session-resumed' ? [event.by] : [],
  );
  return [...new Set(hands)];
}

/** The title of a step, a conclusion's included; empty at none. */
function jobOf(session: Session): RecordJob {
  const { job, circuit } = session.opened;
  const words = (id: string) => circuit?.terminals.find((one) => one.id === id)?.words;
  return {
    name: job.name,
    order: job.order,
    customer: job.customer,
    codes: job.codes,
    vehicle: { ...job.vehicle },
    earlierRepairs: job.earlierRepairs.map((repair) => ({
      words: repair.words,
      part: repair.part ?? '',
      outcome: outcomeOfRepair(repair),
    })),
    harness: (job.harness ?? []).map((one) => harnessText([one])),
    told: toldRows(job, circuit),
    terminals: Object.entries(job.terminals).map(([id, { pin, colour }]) => ({
      id,
      words: words(id) ?? id.replace(/[.-]/g, ' '),
      pin,
      colour,
    })),
    notes: job.notes,
  };
}

/** The answers of the job sheet in the order of its fields. */
function toldRows(
  { codes, codeStates = {}, circumstances = {}, shares }: Job,
  circuit: Circuit | null,
): RecordJob['told'] {
  const {
    happens = [],
    failsWithIt = '',
    recentWork = '',
    seen = '',
    freezeFrame = [],
  } = circumstances;
  const kept = codes.flatMap((code) => (codeStates[code] ? [`${code} ${codeStates[code]}`] : []));
  const rows: readonly (readonly [string, string, Circumstances])[] = [
    [KEPT_AS, kept.join(', '), {}],
    ['When it happens', happens.join(', '), { happens }],
    ['What else fails', failsWithIt, { failsWithIt }],
    ['Recent work', recentWork, { recentWork }],
    ['Visible damage', seen, { seen }],
    ['Freeze frame', freezeFrame.join('; '), {}],
  ];
  const answers = rows.map(
    ([what, words, alone]) => [what, words, { circumstances: alone }] as const,
  );
  return [
    ...answers,
    ['What shares its wiring', sharesText(shares), shares ? { shares } : {}] as const,
  ]
    .filter(([, words]) => words !== '')
    .map(([what, words, alone]) => ({
      what,
      words,
      moved: movedWords(
        toldBy({ earlierRepairs: [], ...alone }).map(({ key }) => key),
        circuit,
      ),
    }));
}

/** What the reader of its times must know of the clock; nothing where it only ran. */
function clockWords(before: SessionEvent | undefined, event: SessionEvent): string[] {
  if (!before) return [];
  const backMs = setBackMs(before, event);
  const [from, to] = [offsetOf(before), offsetOf(event)];
  return [
    ...(backMs > 0
      ? [`the clock was set back by ${durationWords(backMs)}; times are as it showed them`]
      : []),
    ...(from === to ? [] : [`times from here on are those of UTC${to}; before, of UTC${from}`]),
  ];
}

/** What broke the flow of the session or its file, in words; null for everything else. */
function interruptionWords(context: RecordContext, event: SessionEvent): string | null {
  switch (event.type) {
    case 'session-opened':
      return event.from === undefined
        ? null
        : `the session started in the middle of the procedure, at the step "${titleOf(context, event.from)}" (${event.from})`;
    case 'session-paused':
      return 'paused';
    case 'session-resumed':
      return `resumed with ${event.program}, rules ${event.rules}; answers from ${handsWords([event.by])}`;
    case 'recovered':
      return 'the end of the file was recovered after a crash';
    case 'segment-continued':
      return 'the file was continued in a new part';
    case 'instruments-changed':
      return `instruments changed: ${[...event.instruments, event.meter.name].join(', ')}`;
    case 'test-set-aside': {
      const { words } = context.named(event.test);
      return event.aside
        ? `set aside, because it can't be done here: ${words}`
        : `can be done after all: ${words}`;
    }
    case 'connector-set-aside': {
      const { circuit } = context.session.opened;
      const words = connectorWords(circuit, event.part);
      if (event.reason === unreachedWords(circuit, event.part))
        return `${event.reason}: all that needs it is set aside`;
      return event.aside
        ? `all that needs ${words} is set aside: ${event.reason}`
        : `can be reached after all: ${words}`;
    }
    case 'state-set-aside': {
      const needs = `all that needs ${stateNeedWords(event.state)}`;
      if (!event.aside) return `can be done after all: ${needs}`;
      return event.reason === notHadWords(event.state)
        ? `${event.reason}: ${needs} is set aside`
        : `${needs} is set aside: ${event.reason}`;
    }
    case 'caution-acknowledged':
    case 'reading-recorded':
    case 'look-recorded':
    case 'step-done':
    case 'step-impossible':
    case 'step-reopened':
    case 'test-recorded':
    case 'value-set':
    case 'value-taken-back':
    case 'short-placed':
    case 'waking-watched':
    case 'note-added':
    case 'concluded':
    case 'test-stopped':
    case 'caution-passed-over':
    case 'answer-revealed':
    case 'retest-recorded':
    case 'retest-impossible':
    case 'session-closed':
    case 'drive-reported':
    case 'work-answered':
      return null;
  }
}
