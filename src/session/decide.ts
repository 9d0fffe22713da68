/** What a command makes true in a session, or why it makes nothing: all rules in one place, whoever asks. */
import { knownFlaw } from '../circuit/known-values.ts';
import type { Look } from '../circuit/test.ts';
import { isTask, type LookStep, outcomeOfValue, type Step } from '../procedure/procedure.ts';
import { answersStep, answersTest, answersWaking, isFromBefore } from './accept-capture.ts';
import { answerBy } from './answering-test.ts';
import type { Command } from './command.ts';
import { answerWork, closeSession, conclude, reportDrive, retest } from './decide-end.ts';
import {
  cautionFirst,
  type Decision,
  events,
  noCapture,
  noOutcome,
  noReason,
  notOpen,
  refuse,
  stepNamed,
  wrongKind,
} from './decision.ts';
import { RULES, SESSION_FORMAT, type When } from './events.ts';
import { canWake, isInVain } from './intermittent.ts';
import { judgeStep, judgeTest } from './judge-step.ts';
import { isUnreached, roundBy } from './out-of-reach.ts';
import {
  pendingCautions,
  pendingTestCautions,
  stepCautions,
  testCautions,
} from './pending-cautions.ts';
import { mustBeOff, placeOfShort, shortFlaw, testOfShort } from './place-short.ts';
import { notReadHere } from './read-cautions.ts';
import { placesOfStep } from './read-watched.ts';
import { isAside, presentStep, type Session, type Unreached } from './session.ts';
import './session-model.ts';
import { dropsCounted } from './watched-rounds.ts';

/** Decides one command at time `now`. */
export function decide(session: Session, command: Command, now: When): Decision {
  if (session.status === 'paused' && command.type !== 'resume')
    return refuse({ code: 'not-open', status: 'paused' });
  switch (command.type) {
    case 'acknowledge-cautions':
      return acknowledge(session, command, now);
    case 'record-reading':
    case 'choose-outcome':
    case 'mark-done':
    case 'cannot-do':
      return answer(session, command, now);
    case 'go-back':
      return goBack(session, command.to, now);
    case 'add-note': {
      const text = command.text.trim();
      if (text === '') return refuse({ code: 'empty-text', of: 'note' });
      return events({ type: 'note-added', step: presentStep(session)?.id ?? null, text, ...now });
    }
    case 'change-instruments':
      return events({
        type: 'instruments-changed',
        instruments: command.instruments,
        meter: command.meter,
        ...now,
      });
    case 'set-value':
      return setValue(session, command, now);
    case 'place-short':
      return placeShort(session, command, now);
    case 'watch-waking':
      return watchWaking(session, command, now);
    case 'record-test':
      return recordTest(session, command, now);
    case 'answer-by-test':
    case 'go-round':
      return answerUnasked(session, command, now);
    case 'set-test-aside':
      return setTestAside(session, command, now);
    case 'set-connector-aside':
      return setConnectorAside(session, command, now);
    case 'set-state-aside':
      return setStateAside(session, command, now);
    case 'pause':
      if (session.status === 'closed') return notOpen(session);
      return events({ type: 'session-paused', ...now });
    case 'resume': {
      const { program, by } = command;
      const versions = { format: SESSION_FORMAT, rules: RULES } as const;
      return events({ type: 'session-resumed', program, by, ...versions, ...now });
    }
    case 'conclude':
      return conclude(session, command, now);
    case 'record-retest':
    case 'cannot-retest':
      return retest(session, command, now);
    case 'answer-work':
      return answerWork(session, command, now);
    case 'report-drive':
      return reportDrive(session, command, now);
    case 'close':
      return closeSession(session, command.verdict, now);
    case 'stop-test':
    case 'pass-over':
    case 'reveal':
      return ofBench(session, command, now);
  }
}

/** What a drill's bench says; a session on any other vehicle has none that speaks. */
function ofBench(
  session: Session,
  command: Extract<Command, { type: 'stop-test' | 'pass-over' | 'reveal' }>,
  now: When,
): Decision {
  if (session.opened.vehicle.kind !== 'drill') return refuse({ code: 'no-drill' });
  if (session.revealed) return notOpen(session);
  switch (command.type) {
    case 'stop-test':
      return events({ type: 'test-stopped', test: command.test, hazard: command.hazard, ...now });
    case 'pass-over':
      return events({ type: 'caution-passed-over', cautions: command.cautions, ...now });
    case 'reveal':
      if (!session.concluded) return refuse({ code: 'not-concluded', wanted: 'close' });
      return events({ type: 'answer-revealed', ...command.answer, ...now });
  }
}

function acknowledge(
  session: Session,
  { step: named, test, ids, readBy }: Extract<Command, { type: 'acknowledge-cautions' }>,
  now: When,
): Decision {
  const found = test
    ? null
    : named === undefined
      ? presentStep(session)
      : stepNamed(session, named);
  if (found === undefined) return refuse({ code: 'no-such-step', step: named ?? '' });
  const pending = test ? pendingTestCautions(session, test) : pendingCautions(session, found);
  const isDue = new Set(pending.map(({ id }) => id));
  // What stands in short asks for nothing, and may be read again.
  const standing = test
    ? notReadHere(session, test.setup.state, testCautions(session, test))
    : found && isTask(found)
      ? notReadHere(session, found.setup.state, stepCautions(session, found))
      : [];
  const read = standing.filter(({ id }) =>
    ids ? ids.includes(id) : isDue.size === 0 || isDue.has(id),
  );
  if (read.length === 0 || (ids && read.length < ids.length)) return refuse({ code: 'no-caution' });
  const state = test ? test.setup.state : found && isTask(found) ? found.setup.state : null;
  if (state === null) return refuse({ code: 'no-caution' });
  return events({
    type: 'caution-acknowledged',
    step: found?.id ?? null,
    state,
    cautions: read.map(({ id, word, say }) => ({ id, word, text: say })),
    ...(readBy === undefined ? {} : { readBy }),
    ...now,
  });
}

type AnswerCommand = Extract<
  Command,
  { type: 'record-reading' | 'choose-outcome' | 'mark-done' | 'cannot-do' }
>;

function answer(session: Session, command: AnswerCommand, now: When): Decision {
  if (session.status !== 'open') return notOpen(session);
  const step = presentStep(session);
  if (!step || !isTask(step)) return wrongKind(step);
  if (command.type === 'cannot-do') {
    const reason = command.reason.trim();
    if (reason === '') return noReason();
    if (step.cannot === null) return refuse({ code: 'no-way-round', step: step.id });
    return events({ type: 'step-impossible', step: step.id, reason, go: step.cannot, ...now });
  }
  const pending = pendingCautions(session);
  if (pending.length > 0) return cautionFirst(pending);
  switch (command.type) {
    case 'mark-done':
      if (step.kind !== 'act') return wrongKind(step);
      return events({ type: 'step-done', step: step.id, go: step.go, ...now });
    case 'choose-outcome':
      return choose(session, step, command, now);
    case 'record-reading':
      return record(session, step, command, now);
  }
}

function choose(
  session: Session,
  step: Step,
  command: Extract<Command, { type: 'choose-outcome' }>,
  now: When,
): Decision {
  if (step.kind !== 'look' && step.kind !== 'ask') return wrongKind(step);
  const outcome = step.outcomes.find(({ name }) => name === command.outcome);
  if (!outcome) return noOutcome(step, command.outcome);
  const contradicted = command.saved ? null : dropsCounted(session, step, command.outcome);
  if (contradicted) return refuse(contradicted);
  const { capture, vain } = command;
  const look = step.kind === 'look' ? lookFor(step, command.outcome, command.look) : null;
  if (capture && !answersStep(step, capture, null, look)) return noCapture();
  return events({
    type: 'look-recorded',
    step: step.id,
    look,
    outcome: outcome.name,
    go: outcome.go,
    ...(capture ? { capture } : {}),
    ...(vain && step.kind === 'ask' && isInVain(session, step, outcome.name) ? { vain } : {}),
    ...now,
  });
}

function recordTest(
  session: Session,
  command: Extract<Command, { type: 'record-test' }>,
  now: When,
): Decision {
  const { test, typed, shown, expected, capture, made, note = '' } = command;
  if (session.status === 'closed') return notOpen(session);
  // What was made before hurts nobody now.
  const pending = made === undefined ? pendingTestCautions(session, test) : [];
  if (pending.length > 0) return cautionFirst(pending);
  if (capture && !answersTest(test, shown, capture)) return noCapture();
  return events({
    type: 'test-recorded',
    test,
    typed,
    shown,
    expected,
    // The meter's accuracy says nothing of a scope's.
    judgement: capture || !expected ? null : judgeTest(shown, expected, session.meter),
    ...(capture ? { capture } : {}),
    ...(made === undefined ? {} : { made }),
    ...(note.trim() === '' ? {} : { note: note.trim() }),
    ...now,
  });
}

function watchWaking(
  session: Session,
  command: Extract<Command, { type: 'watch-waking' }>,
  now: When,
): Decision {
  const { step: again, place, typed, unit, least, most, drops, minutes, capture } = command;
  if (session.status !== (again === undefined ? 'open' : 'concluded')) return notOpen(session);
  const { procedure, vehicle } = session.opened;
  const step = again === undefined ? presentStep(session) : stepNamed(session, again);
  if (vehicle.kind === 'drill') return refuse({ code: 'no-waking' });
  if (!procedure || step?.kind !== 'ask' || !canWake(procedure, step))
    return refuse({ code: 'no-waking' });
  const known = placesOfStep(procedure, step);
  if (place !== null && !known.includes(place))
    return refuse({ code: 'no-such-outcome', step: step.id, outcome: place, known });
  const pending = pendingCautions(session, step);
  if (pending.length > 0) return cautionFirst(pending);
  if (capture && again !== undefined && isFromBefore(session, capture))
    return refuse({ code: 'old-capture', name: capture.name });
  if (capture && !answersWaking(capture, { unit, least, most, drops })) return noCapture();
  return events({
    type: 'waking-watched',
    step: step.id,
    ...{ place, typed: typed.trim(), unit, least, most, drops, minutes },
    ...(capture ? { capture } : {}),
    ...now,
  });
}

function placeShort(
  session: Session,
  { stretch, unplugged, typed, drops }: Extract<Command, { type: 'place-short' }>,
  now: When,
): Decision {
  if (session.status !== 'open') return notOpen(session);
  const { circuit, vehicle } = session.opened;
  if (vehicle.kind === 'drill') return refuse({ code: 'no-place-on-drill' });
  if (circuit === null) return refuse({ code: 'no-circuit' });
  const flaw = shortFlaw(circuit, stretch, drops);
  if (flaw) return refuse({ code: 'no-place', flaw: flaw[0], fix: flaw[1] });
  const parts = mustBeOff(circuit, stretch).filter((name) => !unplugged.includes(name));
  if (parts.length > 0) return refuse({ code: 'still-plugged', parts });
  const pending = pendingTestCautions(session, testOfShort(circuit, stretch, 'from'));
  if (pending.length > 0) return cautionFirst(pending);
  const place = placeOfShort(circuit, stretch, drops, session.meter);
  return events({
    type: 'short-placed',
    stretch,
    unplugged,
    typed: typed.trim(),
    drops,
    place,
    ...now,
  });
}

/** The look that was named, or the outcome's first when only the outcome was. */
function lookFor(step: LookStep, name: string, look: Look | undefined): Look | null {
  const outcome = step.outcomes.find((one) => one.name === name);
  if (look && outcome?.looks.includes(look)) return look;
  return outcome?.looks[0] ?? null;
}

function record(
  session: Session,
  step: Step,
  command: Extract<Command, { type: 'record-reading' }>,
  now: When,
): Decision {
  if (step.kind !== 'measure') return wrongKind(step);
  const outcome = outcomeOfValue(step, command.value);
  if (!outcome) return refuse({ code: 'not-a-number' });
  const { capture } = command;
  if (capture && !answersStep(step, capture, command.value)) return noCapture();
  return events({
    type: 'reading-recorded',
    step: step.id,
    typed: command.typed.trim(),
    value: Number.isFinite(command.value) ? command.value : null,
    unit: step.unit,
    instrument: capture ? 'scope' : session.meter.name,
    // The meter's accuracy says nothing of a scope's.
    judgement: capture ? null : judgeStep(step, command.value, session.meter),
    outcome: outcome.name,
    go: outcome.go,
    ...(capture ? { capture } : {}),
    ...now,
  });
}

function goBack(session: Session, to: number | undefined, now: When): Decision {
  if (session.status === 'closed') return notOpen(session);
  const answered = session.trail.filter((visit) => visit.answer !== null);
  const visit = to === undefined ? answered[answered.length - 1] : session.trail[to];
  const set = to === undefined ? valueAfter(session, visit?.answer ?? null) : null;
  if (set !== null) return events({ type: 'value-taken-back', set, ...now });
  if (!visit || visit.answer === null) return refuse({ code: 'nothing-to-take-back' });
  return events({ type: 'step-reopened', step: visit.step, answer: visit.answer, ...now });
}

/** Number of the event that set a value last, where that was after the answer at `answer`; null where none was. */
function valueAfter(session: Session, answer: number | null): number | null {
  const kept = session.values.findLast(({ takenBack }) => !takenBack);
  if (!kept) return null;
  const at = session.events.indexOf(kept.event);
  const answered = answer === null ? undefined : session.answers[answer]?.event;
  const isLater = answered === undefined || at > session.events.indexOf(answered);
  return isLater ? at + 1 : null;
}

/** What the program answers, since a test of the session, or a connector or a state out of reach, does. */
function answerUnasked(
  session: Session,
  { type, by }: Extract<Command, { type: 'answer-by-test' | 'go-round' }>,
  now: When,
): Decision {
  if (session.status !== 'open') return notOpen(session);
  const step = presentStep(session);
  const answered = (type === 'go-round' ? roundBy : answerBy)(session, step, by, now);
  return answered ? events(answered) : wrongKind(step);
}

function setTestAside(
  session: Session,
  { test, aside }: Extract<Command, { type: 'set-test-aside' }>,
  now: When,
): Decision {
  if (session.status === 'closed') return notOpen(session);
  if (isAside(session, test) === aside) return refuse({ code: 'nothing-to-take-back' });
  return events({ type: 'test-set-aside', test, aside, ...now });
}

function setConnectorAside(
  session: Session,
  { part, aside, reason }: Extract<Command, { type: 'set-connector-aside' }>,
  now: When,
): Decision {
  if (session.status === 'closed') return notOpen(session);
  const { circuit, vehicle } = session.opened;
  if (vehicle.kind === 'drill') return refuse({ code: 'all-in-reach' });
  if (circuit === null) return refuse({ code: 'no-circuit' });
  const known = circuit.connectors.map((one) => one.part);
  if (!known.includes(part)) return refuse({ code: 'no-such-connector', part, known });
  const said = reasonAside(session, { part }, { aside, reason });
  return typeof said === 'string'
    ? events({ type: 'connector-set-aside', part, aside, reason: said, ...now })
    : said;
}

function setStateAside(
  session: Session,
  { state, aside, reason }: Extract<Command, { type: 'set-state-aside' }>,
  now: When,
): Decision {
  if (session.status === 'closed') return notOpen(session);
  if (session.opened.vehicle.kind === 'drill') return refuse({ code: 'all-states' });
  const said = reasonAside(session, { state }, { aside, reason });
  return typeof said === 'string'
    ? events({ type: 'state-set-aside', state, aside, reason: said, ...now })
    : said;
}

/** The reason as it is kept, empty where something is taken back; or why nothing is said. */
function reasonAside(
  session: Session,
  what: Unreached,
  { aside, reason }: { readonly aside: boolean; readonly reason: string },
): string | Decision {
  if (isUnreached(session, what) === aside) return refuse({ code: 'nothing-to-take-back' });
  if (!aside) return '';
  const said = reason.trim();
  return said === '' ? noReason() : said;
}

function setValue(
  session: Session,
  { quantity, is, typed, from }: Extract<Command, { type: 'set-value' }>,
  now: When,
): Decision {
  if (session.status !== 'open') return notOpen(session);
  const { circuit, vehicle } = session.opened;
  if (vehicle.kind === 'drill') return refuse({ code: 'as-described' });
  if (circuit === null) return refuse({ code: 'no-values' });
  const flaw = knownFlaw(circuit, { quantity, is });
  if (flaw !== null) return refuse({ code: 'bad-value', flaw });
  const said = { kind: from.kind, words: from.words.trim() };
  return events({ type: 'value-set', quantity, is, typed: typed.trim(), from: said, ...now });
}
