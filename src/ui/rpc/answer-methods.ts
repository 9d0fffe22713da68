/** The present step and the record: cautions, answers, notes, the way back, a pause. */

import type { Command } from '../../session/command.ts';
import { knownLines } from '../../session/known-list.ts';
import {
  pendingCautions,
  pendingTestCautions,
  stepCautionsInShort,
  testCautionsInShort,
} from '../../session/pending-cautions.ts';
import { readSaid } from '../../session/read-known.ts';
import { presentStep } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { carryOnIn } from '../carry-on.ts';
import { adviceOf } from '../screens/pages-state.ts';
import { invalidParam, type Outcome } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { changedSince, performCall, refusedBy, refusedCall } from './refused.ts';
import { answerCommand, type SentAnswer } from './sent-answer.ts';
import { sentTest } from './sent-test.ts';
import { eventsFrom, stateOf } from './state-view.ts';

export const ANSWER_METHODS: Methods<
  | 'state'
  | 'events'
  | 'acknowledge'
  | 'reading'
  | 'choose'
  | 'done'
  | 'take'
  | 'cannot'
  | 'note'
  | 'back'
  | 'values'
  | 'set-value'
  | 'instruments'
  | 'pause'
  | 'resume'
  | 'move'
> = {
  state: { where: 'anywhere', run: (opened) => ({ state: stateOf(opened) }) },
  events: {
    where: 'anywhere',
    run: (opened, { from = 1 }) => ({ events: eventsFrom(opened, from) }),
  },
  acknowledge: { where: 'anywhere', run: acknowledge },
  reading: { where: 'session', run: answer },
  choose: { where: 'session', run: answer },
  done: { where: 'session', run: (opened) => performHere(opened, { type: 'mark-done' }) },
  take: { where: 'session', run: (opened) => answer(opened, { take: true }) },
  cannot: {
    where: 'session',
    run: (opened, { reason }) => performHere(opened, { type: 'cannot-do', reason }),
  },
  note: {
    where: 'anywhere',
    run: (opened, { text }) => performCall(opened, { type: 'add-note', text }),
  },
  back: {
    where: 'session',
    run: (opened, { to }) =>
      performCall(opened, { type: 'go-back', ...(to === undefined ? {} : { to }) }),
  },
  values: { where: 'session', run: values },
  'set-value': { where: 'session', run: setValue },
  instruments: { where: 'session', run: instruments },
  pause: { where: 'anywhere', run: (opened) => performCall(opened, { type: 'pause' }) },
  resume: { where: 'anywhere', run: resume },
  move: { where: 'anywhere', run: move },
};

/** With a real vehicle one call is one caution: somebody has read this one. */
function acknowledge(
  opened: OpenedSession,
  { caution, person, step: named, test: form }: Params<'acknowledge'>,
): Outcome {
  const session = opened.driver.session();
  if (named !== undefined && form)
    return invalidParam('/params/test', '"step" and "test" do not go together');
  if (typeof caution !== 'string' && session.opened.vehicle.kind === 'real')
    return refusedCall(
      'one-caution-a-call',
      'with a real vehicle each caution is acknowledged separately',
      'call "acknowledge" for each, with the name of the person who read it',
    );
  const test = form ? sentTest(opened, form) : null;
  if (test && 'fault' in test) return test;
  const { procedure } = session.opened;
  const known = named !== undefined && procedure && Object.hasOwn(procedure.steps, named);
  const step = named === undefined ? presentStep(session) : known ? procedure.steps[named] : null;
  const pending = test
    ? pendingTestCautions(session, test)
    : pendingCautions(session, step ?? null);
  const short = test
    ? testCautionsInShort(session, test)
    : step
      ? stepCautionsInShort(session, step)
      : [];
  const readable = [...pending, ...short.map((one) => one.caution)];
  const ids = typeof caution === 'string' ? [caution] : caution;
  const other = ids.find((id) => readable.every((one) => one.id !== id));
  if (other !== undefined)
    return refusedCall(
      'no-caution',
      `there is no caution "${other}" to acknowledge here`,
      pending.length > 0
        ? `one of: ${pending.map(({ id }) => id).join(', ')}`
        : 'there is none to acknowledge here now',
    );
  return performCall(opened, {
    type: 'acknowledge-cautions',
    ids,
    readBy: person.trim(),
    ...(named === undefined ? {} : { step: named }),
    ...(test ? { test } : {}),
  });
}

function answer(opened: OpenedSession, sent: SentAnswer): Outcome {
  const { driver } = opened;
  const step = presentStep(driver.session());
  const command = answerCommand(opened, step, sent, driver.vehicleShows());
  return 'fault' in command ? command : performHere(opened, command);
}

/** A command at the present step, whose cautions may have to be read first. */
function performHere(opened: OpenedSession, command: Command): Outcome {
  return performCall(opened, command, pendingCautions(opened.driver.session()));
}

function values(opened: OpenedSession): Outcome {
  const session = opened.driver.session();
  const car = adviceOf(opened)?.diagnosis(session).car ?? null;
  return { values: knownLines(session, car) };
}

function setValue(opened: OpenedSession, { quantity, is, from }: Params<'set-value'>): Outcome {
  const { circuit } = opened.driver.session().opened;
  if (!circuit)
    return refusedCall('no-values', 'this session has no circuit model, so there are no values');
  const read = readSaid(circuit, { what: quantity, is, from });
  if ('quantity' in read) return performCall(opened, { type: 'set-value', ...read });
  const at = read.at === 'what' ? 'quantity' : read.at;
  return invalidParam(`/params/${at}`, read.words, read.fix);
}

function instruments(
  opened: OpenedSession,
  { instruments: named, meter: given }: Params<'instruments'>,
): Outcome {
  const session = opened.driver.session();
  const atHand = named ?? session.instruments;
  const meter = given ?? session.meter;
  if (!named && !given) return { instruments: atHand, meter };
  return performCall(opened, { type: 'change-instruments', instruments: atHand, meter });
}

function resume(opened: OpenedSession, _: Params<'resume'>, program: string): Outcome {
  if (opened.driver.session().status !== 'paused')
    return refusedCall('not-paused', 'this session is not paused');
  return performCall(opened, { type: 'resume', program, by: 'program' });
}

function move(opened: OpenedSession, { folder }: Params<'move'>): Outcome {
  const before = opened.driver.session().events.length;
  const done = carryOnIn(opened, folder);
  // What the bench of a drill then stops is in the events.
  return done.ok || !done.disk ? changedSince(opened, before) : refusedBy(opened, done);
}
