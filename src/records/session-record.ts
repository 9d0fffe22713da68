/**
 * A session as the shop keeps it. Everything is read from the events, in the words of this vehicle; nothing is
 * guessed.
 */

import { bindText } from '../procedure/bind-text.ts';
import { wiringSketch } from '../procedure/wiring-sketch.ts';
import type { SessionEvent } from '../session/events.ts';
import { customerWords } from '../session/gaps.ts';
import { presentConclusion, type Session } from '../session/session.ts';
import {
  type Head,
  RECORD_FORMAT,
  type RecordConclusion,
  type RecordJob,
  type SessionRecord,
} from './record-form.ts';
import { recordExtras, recordLines } from './record-lines.ts';
import { recordRetest } from './record-retest.ts';
import { type Clock, sessionClock } from './session-clock.ts';

/** Columns of the wiring sketch in a record. */
const WIRING_COLUMNS = 76;

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
    wiring: circuit ? wiringSketch(circuit, job, { columns: WIRING_COLUMNS, ascii: false }) : [],
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
      const words = interruptionWords(session, event);
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
    customer: tree && tree.id === concluded.conclusion ? bind(customerWords(session, tree)) : '',
    proven: concluded.proven,
    evidence: concluded.evidence.map(({ test, where, found, pointsTo, counted }) => ({
      test: bind(test),
      where: bind(where),
      found,
      pointsTo: bind(pointsTo),
      ...(counted === false ? { counted } : {}),
    })),
    ruledOut: concluded.ruledOut.map(({ words, by }) => ({ words: bind(words), by: bind(by) })),
  };
}

/** What broke the flow of the session or its file, in words; null for everything else. */
function interruptionWords(session: Session, event: SessionEvent): string | null {
  switch (event.type) {
    case 'session-opened':
      return event.from === undefined
        ? null
        : `the walk began in the middle of the procedure, at the step "${titleOf(session, event.from)}" (${event.from})`;
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
