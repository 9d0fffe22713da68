/**
 * A session as the shop keeps it: one plain view, nothing but JSON, that every export, list and comparison shares.
 *
 * Everything is read from the events, in the words of this vehicle; nothing is guessed. Values are SI, `null` with
 * `overLimit` is the meter's OL. Texts are as people wrote them: each export makes them harmless in its own way.
 */
import type { Verdict } from '../circuit/judge.ts';
import { bindText } from '../procedure/bind-text.ts';
import type { MeasureUnit } from '../procedure/procedure.ts';
import type { SessionEvent } from '../session/events.ts';
import { presentConclusion, type Session, type SessionStatus } from '../session/session.ts';
import { recordExtras, recordLines } from './record-lines.ts';
import { recordRetest } from './record-retest.ts';
import { type Clock, sessionClock } from './session-clock.ts';

export const RECORD_FORMAT = 1;

export interface SessionRecord {
  readonly format: typeof RECORD_FORMAT;
  readonly id: string;
  readonly program: string;
  readonly status: SessionStatus;
  readonly procedure: { readonly name: string; readonly title: string };
  readonly circuit: string | null;
  /** Readings of a simulated vehicle must never pass for those of a real one. */
  readonly vehicle: 'real' | 'simulated' | 'drill';
  readonly person: string;
  readonly shop: string;
  readonly instruments: readonly string[];
  readonly meter: string;
  readonly startedAt: string;
  readonly endedAt: string;
  /** Time with the session open, pauses left out. */
  readonly workedMs: number;
  readonly complaint: string;
  /** Title of the conclusion, empty while there is none. */
  readonly cause: string;
  /** The repair, empty while there is no conclusion. */
  readonly correction: string;
  readonly job: RecordJob;
  /** Every answer of the session in the order it was given, those taken back as well. */
  readonly lines: readonly RecordLine[];
  readonly extras: readonly RecordExtra[];
  readonly cautions: readonly RecordCaution[];
  readonly notes: readonly (Moment & { readonly step: string; readonly text: string })[];
  readonly corrections: readonly RecordCorrection[];
  readonly interruptions: readonly (Moment & { readonly words: string })[];
  readonly conclusion: RecordConclusion | null;
  readonly retest: RecordRetest;
  /** Number and SHA-256 of the last event: the whole session file hangs on it. */
  readonly head: Head;
  readonly howToVerify: string;
}

export interface Head {
  readonly seq: number;
  readonly hash: string;
}

/** Wall clock as written, and milliseconds of work since the session began. */
export interface Moment {
  readonly at: string;
  readonly workedMs: number;
}

export interface RecordJob {
  readonly name: string;
  readonly order: string;
  readonly customer: string;
  readonly codes: readonly string[];
  readonly vehicle: {
    readonly words: string;
    readonly vin: string;
    readonly plate: string;
    readonly odometer: string;
    readonly drive: string;
  };
  readonly earlierRepairs: readonly { readonly words: string; readonly part: string }[];
  readonly terminals: readonly {
    readonly id: string;
    readonly words: string;
    readonly pin: string;
    readonly colour: string;
  }[];
  readonly notes: string;
}

/** A number that was read or expected: SI value or null for OL, and in words. */
export interface Reading {
  readonly typed: string;
  readonly value: number | null;
  readonly overLimit: boolean;
  readonly unit: MeasureUnit;
}

/** What a healthy circuit shows, and who says so; null is an open end. */
export interface RecordRange {
  readonly low: number | null;
  readonly high: number | null;
  readonly from: 'circuit' | 'author';
}

/** One answer. `verdict` says how it compares with what a healthy circuit shows; null where nothing is expected. */
export interface RecordLine extends Moment {
  /** Counts the answers from 1. */
  readonly number: number;
  readonly kind: 'reading' | 'look' | 'answer' | 'done' | 'impossible';
  readonly step: string;
  readonly title: string;
  readonly family: string;
  readonly where: string;
  readonly setup: string;
  readonly instrument: string;
  readonly expected: string;
  readonly expectedRange: RecordRange | null;
  readonly found: string;
  readonly reading: Reading | null;
  readonly verdict: Verdict | 'as expected' | 'not as expected' | null;
  readonly judgement: string;
  readonly outcome: string;
  /** Why it could not be done; empty otherwise. */
  readonly reason: string;
  /** Taken back by the person, or not on the way to the conclusion any more. */
  readonly standing: 'standing' | 'taken back' | 'off the way';
}

export interface RecordExtra extends Moment {
  readonly words: string;
  readonly where: string;
  readonly setup: string;
  readonly instrument: string;
  readonly found: string;
  readonly reading: Reading | null;
}

export interface RecordCaution extends Moment {
  readonly step: string;
  readonly id: string;
  readonly word: string;
  readonly text: string;
}

export interface RecordCorrection extends Moment {
  readonly step: string;
  /** Number of the line that was taken back. */
  readonly line: number;
  readonly found: string;
}

export interface RecordConclusion extends Moment {
  readonly title: string;
  /** True when the person named it and not the procedure. */
  readonly own: boolean;
  readonly faults: readonly { readonly id: string; readonly words: string }[];
  readonly repair: string;
  /** Plain words for the customer; empty when the procedure has none. */
  readonly customer: string;
  /** Three independent pieces of evidence; null when there was no circuit to weigh them with. */
  readonly proven: boolean | null;
  readonly evidence: readonly {
    readonly test: string;
    readonly where: string;
    readonly found: string;
    readonly pointsTo: string;
  }[];
  readonly ruledOut: readonly { readonly words: string; readonly by: string }[];
}

export interface RecordRetest {
  readonly rows: readonly RetestRow[];
  /** Steps that must pass after the repair and were not repeated. */
  readonly missing: readonly string[];
  readonly verdict: 'cured' | 'not-cured' | 'changed' | 'no-retest' | null;
  readonly words: string;
}

export interface RetestRow extends Moment {
  readonly step: string;
  readonly title: string;
  readonly where: string;
  readonly expected: string;
  readonly expectedRange: RecordRange | null;
  /** What the same step showed before the repair; empty when it was not taken. */
  readonly before: string;
  readonly after: string;
  readonly reading: Reading | null;
  readonly passed: boolean;
}

/** The record of a session. `head` is the number and hash of the last event it was replayed from. */
export function recordOf(session: Session, head: Head): SessionRecord {
  const { opened, events, concluded } = session;
  const { job, circuit, procedure } = opened;
  const bind = (text: string) => bindText(text, job, circuit);
  const clock = sessionClock(events);
  const lines = recordLines(session, clock);
  const last = events.at(-1) ?? opened;
  return {
    format: RECORD_FORMAT,
    id: opened.id,
    program: opened.program,
    status: session.status,
    procedure: { name: procedure.name, title: procedure.title },
    circuit: circuit?.title ?? null,
    vehicle: opened.vehicle.kind === 'bench' ? 'simulated' : opened.vehicle.kind,
    person: opened.person,
    shop: opened.shop,
    instruments: session.instruments,
    meter: session.meter.name,
    startedAt: opened.at,
    endedAt: last.at,
    workedMs: clock(last).workedMs,
    complaint: job.complaint,
    cause: concluded ? bind(concluded.title) : '',
    correction: concluded ? bind(concluded.repair) : '',
    job: jobOf(session),
    lines,
    extras: recordExtras(session, clock),
    cautions: session.acknowledgements.flatMap((event) =>
      event.cautions.map(({ id, word, text }) => ({
        ...clock(event),
        step: titleOf(session, event.step),
        id,
        word,
        text: bind(text),
      })),
    ),
    notes: session.notes.map((event) => ({
      ...clock(event),
      step: titleOf(session, event.step),
      text: event.text,
    })),
    corrections: events.flatMap((event) => {
      if (event.type !== 'step-reopened') return [];
      const line = event.answer + 1;
      const found = lines[event.answer]?.found ?? '';
      return [{ ...clock(event), step: titleOf(session, event.step), line, found }];
    }),
    interruptions: events.flatMap((event) => {
      const words = interruptionWords(event);
      return words === null ? [] : [{ ...clock(event), words }];
    }),
    conclusion: conclusionOf(session, clock),
    retest: recordRetest(session, clock),
    head: { seq: head.seq, hash: head.hash },
    howToVerify: `ohmward records verify SESSION --head ${head.hash}`,
  };
}

/** The title of a step, a conclusion's included. */
function titleOf(session: Session, id: string): string {
  const step = session.opened.procedure.steps[id];
  return step ? bindText(step.title, session.opened.job, session.opened.circuit) : id;
}

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
    })),
    terminals: Object.entries(job.terminals).map(([id, { pin, colour }]) => ({
      id,
      words: words(id) ?? id.replace(/[.-]/g, ' '),
      pin,
      colour,
    })),
    notes: job.notes,
  };
}

function conclusionOf(session: Session, clock: Clock): RecordConclusion | null {
  const { concluded, opened } = session;
  if (!concluded) return null;
  const { job, circuit } = opened;
  const bind = (text: string) => bindText(text, job, circuit);
  const tree = concluded.conclusion === null ? null : presentConclusion(session);
  return {
    ...clock(concluded),
    title: bind(concluded.title),
    own: concluded.conclusion === null,
    faults: concluded.faults.map((id) => ({
      id,
      words: circuit?.faults.find((fault) => fault.id === id)?.words ?? id.replace(/[.-]/g, ' '),
    })),
    repair: bind(concluded.repair),
    customer: tree?.id === concluded.conclusion ? bind(tree?.customer ?? '') : '',
    proven: concluded.proven,
    evidence: concluded.evidence.map(({ test, where, found, pointsTo }) => ({
      test: bind(test),
      where: bind(where),
      found,
      pointsTo: bind(pointsTo),
    })),
    ruledOut: concluded.ruledOut.map(({ words, by }) => ({ words: bind(words), by: bind(by) })),
  };
}

/** What broke the flow of the session or its file, in words; null for everything else. */
function interruptionWords(event: SessionEvent): string | null {
  switch (event.type) {
    case 'session-paused':
      return 'paused';
    case 'session-resumed':
      return `resumed with ${event.program}`;
    case 'recovered':
      return 'the end of the file was recovered after a crash';
    case 'segment-continued':
      return 'the file was continued in a new part';
    case 'instruments-changed':
      return `instruments changed: ${[...event.instruments, event.meter.name].join(', ')}`;
    default:
      return null;
  }
}
