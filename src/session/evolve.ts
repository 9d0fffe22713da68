/** Folds events into the state. Handles every event, never refuses; deciding is `decide.ts`. */
import { isTask, type Procedure, stepOf } from '../procedure/procedure.ts';
import { type Answer, isAnswer, type SessionEvent, type SessionOpened } from './events.ts';
import type { KeptAnswer, Session, Visit } from './session.ts';

/** A way through a tree with a loop is cut here; a checked tree never comes near. */
const VISITS_MAX = 1000;

/** The state right after the first event. */
export function openSession(opened: SessionOpened): Session {
  return {
    status: 'open',
    opened,
    instruments: opened.instruments,
    meter: opened.meter,
    answers: [],
    trail: walk(opened.procedure, []),
    acknowledged: { state: '', ids: [] },
    acknowledgements: [],
    extras: [],
    notes: [],
    concluded: null,
    retests: [],
    closed: null,
    events: [opened],
  };
}

/** The state of a whole list of events; the first must open the session. */
export function replay(events: readonly SessionEvent[]): Session {
  const [first, ...rest] = events;
  if (first?.type !== 'session-opened')
    throw new Error('replay: the first event opens the session');
  return rest.reduce(evolve, openSession(first));
}

/** The state after one more event. */
export function evolve(before: Session, event: SessionEvent): Session {
  const session: Session = { ...before, events: [...before.events, event] };
  if (isAnswer(event)) return withAnswer(session, event);
  switch (event.type) {
    case 'session-opened':
      throw new Error('evolve: a session is opened once');
    case 'caution-acknowledged': {
      const same = session.acknowledged.state === event.state;
      const earlier = same ? session.acknowledged.ids : [];
      const ids = [...new Set([...earlier, ...event.cautions.map((caution) => caution.id)])];
      return {
        ...session,
        acknowledged: { state: event.state, ids },
        acknowledgements: [...session.acknowledgements, event],
      };
    }
    case 'step-reopened': {
      const answers = session.answers.map((kept, index) =>
        index === event.answer ? { ...kept, superseded: true } : kept,
      );
      return withWay({ ...session, status: 'open', concluded: null }, answers);
    }
    case 'extra-reading':
      return { ...session, extras: [...session.extras, event] };
    case 'note-added':
      return { ...session, notes: [...session.notes, event] };
    case 'instruments-changed':
      return { ...session, instruments: event.instruments, meter: event.meter };
    case 'session-paused':
      return { ...session, status: 'paused' };
    case 'session-resumed':
      return { ...session, status: statusOf(session), acknowledged: { state: '', ids: [] } };
    case 'concluded':
      return { ...session, status: 'concluded', concluded: event };
    case 'retest-recorded': {
      const step = stepOf(session.opened.procedure, event.step);
      const state = isTask(step) ? step.setup.state : '';
      const stays = session.acknowledged.state === state;
      return {
        ...session,
        acknowledged: stays ? session.acknowledged : { state, ids: [] },
        retests: [...session.retests, event],
      };
    }
    case 'session-closed':
      return { ...session, status: 'closed', closed: event };
    case 'recovered':
    case 'segment-continued':
      return session;
  }
}

function statusOf(session: Session): Session['status'] {
  if (session.closed) return 'closed';
  return session.concluded ? 'concluded' : 'open';
}

function withAnswer(session: Session, event: Answer): Session {
  const step = stepOf(session.opened.procedure, event.step);
  const state = isTask(step) ? step.setup.state : '';
  const stays = session.acknowledged.state === state;
  const acknowledged = stays ? session.acknowledged : { state, ids: [] };
  return withWay({ ...session, acknowledged }, [...session.answers, { event, superseded: false }]);
}

function withWay(session: Session, answers: readonly KeptAnswer[]): Session {
  return { ...session, answers, trail: walk(session.opened.procedure, answers) };
}

/**
 * The way through the tree that the kept answers give: the n-th visit of a step takes its n-th kept answer. Answers
 * of steps the way no longer passes stay kept and count again when it passes them again.
 */
export function walk(procedure: Procedure, answers: readonly KeptAnswer[]): Visit[] {
  const trail: Visit[] = [];
  const used = new Set<number>();
  let step = procedure.start;
  while (trail.length < VISITS_MAX) {
    const answer = answers.findIndex(
      ({ event, superseded }, index) => !superseded && event.step === step && !used.has(index),
    );
    const kept = answers[answer];
    trail.push({ step, answer: kept ? answer : null });
    if (!kept) return trail;
    used.add(answer);
    step = kept.event.go;
  }
  return trail;
}
