/** Folds events into the state. Handles every event, never refuses; deciding is `decide.ts`. */

import type { VehicleState } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import { isRequired, isTask, standingConclusion, stepOf } from '../procedure/procedure.ts';
import { isUnasked } from './answering-test.ts';
import { type Answer, isAnswer, type SessionEvent, type SessionOpened } from './events.ts';
import {
  isSameReach,
  type KeptAnswer,
  type Session,
  type Unreached,
  type Visit,
} from './session.ts';

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
    trail: walk(opened, []),
    acknowledged: { state: '', ids: [] },
    acknowledgements: [],
    tests: [],
    aside: [],
    unreached: [],
    values: [],
    shorts: [],
    watched: [],
    notes: [],
    concluded: null,
    retests: [],
    closed: null,
    drives: [],
    work: [],
    stopped: [],
    passedOver: [],
    revealed: null,
    events: [opened],
  };
}

/** The state of a whole list of events; the first must open the session. */
export function replay(events: readonly SessionEvent[]): Session {
  const [first] = events;
  if (first?.type !== 'session-opened')
    throw new Error('replay: the first event opens the session');
  let session = openSession(first);
  for (let index = 1; index < events.length; index += 1)
    session = fold(session, events[index]!, IN_PLACE);
  return { ...session, trail: walk(session.opened, session.answers) };
}

/** The state after one more event; the state before stays as it is. */
export function evolve(before: Session, event: SessionEvent): Session {
  return fold(before, event, COPYING);
}

/** The same for whoever alone holds the state before: its lists grow in place, and it must not be looked at again. */
export function evolveInPlace(before: Session, event: SessionEvent): Session {
  return fold(before, event, { ...IN_PLACE, way: walk });
}

/** How lists grow. The rules of an event are the same either way. */
interface Lists {
  readonly add: <T>(list: readonly T[], item: T) => readonly T[];
  readonly change: <T>(list: readonly T[], index: number, to: (item: T) => T) => readonly T[];
  readonly way: typeof walk;
}

const COPYING: Lists = {
  add: (list, item) => [...list, item],
  change: (list, index, to) => list.map((item, at) => (at === index ? to(item) : item)),
  way: walk,
};

/** For the states nobody sees: they share their lists, and no rule of an event looks at the way. */
const IN_PLACE: Lists = {
  add: <T>(list: readonly T[], item: T) => {
    (list as T[]).push(item);
    return list;
  },
  change: <T>(list: readonly T[], index: number, to: (item: T) => T) => {
    if (index in list) (list as T[])[index] = to(list[index] as T);
    return list;
  },
  way: () => [],
};

function fold(before: Session, event: SessionEvent, lists: Lists): Session {
  const session: Session = { ...before, events: lists.add(before.events, event) };
  if (isAnswer(event)) return withAnswer(session, event, lists);
  // biome-ignore lint/nursery/useExhaustiveSwitchCases: answers are dealt with above, and the compiler holds the rest complete
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
        acknowledgements: lists.add(session.acknowledgements, event),
      };
    }
    case 'step-reopened': {
      const answers = lists.change(session.answers, event.answer, (kept) => ({
        ...kept,
        superseded: true,
      }));
      return withWay({ ...session, ...reopened() }, answers, lists);
    }
    case 'test-recorded': {
      const acknowledged =
        event.made === undefined
          ? acknowledgedAfter(session, event.test.setup.state)
          : session.acknowledged;
      return { ...session, acknowledged, tests: lists.add(session.tests, event) };
    }
    case 'test-set-aside': {
      const key = testKey(event.test);
      const others = session.aside.filter((one) => testKey(one) !== key);
      return { ...session, aside: event.aside ? [...others, event.test] : others };
    }
    case 'connector-set-aside':
      return withReach(session, { part: event.part }, event);
    case 'state-set-aside':
      return withReach(session, { state: event.state }, event);
    case 'value-set':
      return { ...session, values: lists.add(session.values, { event, takenBack: false }) };
    case 'value-taken-back': {
      const at = session.values.findIndex(
        (kept) => session.events.indexOf(kept.event) === event.set - 1,
      );
      const values = lists.change(session.values, at, (kept) => ({ ...kept, takenBack: true }));
      return { ...session, ...reopened(), values };
    }
    case 'short-placed': {
      const acknowledged = acknowledgedAfter(session, 'key-off');
      return { ...session, acknowledged, shorts: lists.add(session.shorts, event) };
    }
    case 'waking-watched':
      return { ...session, watched: lists.add(session.watched, event) };
    case 'note-added':
      return { ...session, notes: lists.add(session.notes, event) };
    case 'instruments-changed':
      return { ...session, instruments: event.instruments, meter: event.meter };
    case 'session-paused':
      return { ...session, status: 'paused' };
    case 'session-resumed':
      return { ...session, status: statusOf(session), acknowledged: { state: '', ids: [] } };
    case 'concluded':
      return { ...session, status: 'concluded', concluded: event };
    case 'retest-recorded':
    case 'retest-impossible':
      return {
        ...session,
        acknowledged: acknowledgedAt(session, event.step),
        retests: lists.add(session.retests, event),
      };
    case 'session-closed':
      return { ...session, status: 'closed', closed: event };
    case 'drive-reported':
      return { ...session, drives: lists.add(session.drives, event) };
    case 'work-answered':
      return { ...session, work: lists.add(session.work, event) };
    case 'test-stopped':
      return { ...session, stopped: lists.add(session.stopped, event) };
    case 'caution-passed-over':
      return { ...session, passedOver: lists.add(session.passedOver, event) };
    case 'answer-revealed':
      return { ...session, status: 'closed', revealed: event };
    case 'recovered':
    case 'segment-continued':
      return session;
  }
}

/** What is tested again after another conclusion is tested after another repair. A list of its own, as it may grow. */
function reopened() {
  return { status: 'open', concluded: null, retests: [], drives: [], work: [] } as const;
}

function statusOf(session: Session): Session['status'] {
  if (session.closed || session.revealed) return 'closed';
  return session.concluded ? 'concluded' : 'open';
}

function withAnswer(session: Session, event: Answer, lists: Lists): Session {
  const acknowledged = isUnasked(event)
    ? session.acknowledged
    : acknowledgedAt(session, event.step);
  const answers = lists.add(session.answers, { event, superseded: false });
  return withWay({ ...session, acknowledged }, answers, lists);
}

/** What is still acknowledged after a step: see `acknowledgedAfter`. */
function acknowledgedAt(session: Session, id: string): Session['acknowledged'] {
  const { procedure } = session.opened;
  const step = procedure && stepOf(procedure, id);
  return acknowledgedAfter(session, step && isTask(step) ? step.setup.state : '');
}

/**
 * What is still acknowledged after a test in this vehicle state: nothing when the vehicle comes from another state,
 * and nothing after cranking, since the engine begins to turn anew for each test.
 */
function acknowledgedAfter(
  { acknowledged }: Session,
  state: VehicleState | '',
): Session['acknowledged'] {
  return acknowledged.state === state && state !== 'cranking' ? acknowledged : { state, ids: [] };
}

function withWay(session: Session, answers: readonly KeptAnswer[], lists: Lists): Session {
  return { ...session, answers, trail: lists.way(session.opened, answers) };
}

/** Steps of a way that could not be done. */
function skippedOn(trail: readonly Visit[], answers: readonly KeptAnswer[]): string[] {
  return trail.flatMap(({ step, answer }) =>
    answer !== null && answers[answer]!.event.type === 'step-impossible' ? [step] : [],
  );
}

/**
 * The way through the tree that the kept answers give, from where the session began: the n-th visit of a step takes its
 * n-th kept answer. Answers of steps the way no longer passes stay kept and count again when it passes them again.
 */
export function walk(
  opened: Pick<SessionOpened, 'procedure' | 'from'>,
  answers: readonly KeptAnswer[],
): Visit[] {
  if (!opened.procedure) return [];
  const standing = new Map<string, number[]>();
  for (const [index, { event, superseded }] of answers.entries()) {
    if (superseded) continue;
    const known = standing.get(event.step);
    if (known) known.push(index);
    else standing.set(event.step, [index]);
  }
  const visits = new Map<string, number>();
  const trail: Visit[] = [];
  let step = opened.from ?? opened.procedure.start;
  while (trail.length < VISITS_MAX) {
    const visit = visits.get(step) ?? 0;
    const answer = standing.get(step)?.[visit];
    if (answer === undefined) {
      const skipped = skippedOn(trail, answers);
      const stands = standingConclusion(opened.procedure, step, (conclusion) =>
        skipped.some((one) => isRequired(conclusion, one)),
      );
      trail.push({ step: stands, answer: null });
      return trail;
    }
    trail.push({ step, answer });
    visits.set(step, visit + 1);
    step = answers[answer]!.event.go;
  }
  return trail;
}

/** A connector or a state is out of reach from here on, or is not after all. */
function withReach(
  session: Session,
  what: Unreached,
  { aside, reason }: { readonly aside: boolean; readonly reason: string },
): Session {
  const others = session.unreached.filter((one) => !isSameReach(one, what));
  const by = session.events.length;
  return { ...session, unreached: aside ? [...others, { ...what, reason, by }] : others };
}
