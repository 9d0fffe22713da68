import { knownFlaw } from '../circuit/known-values.ts';
import type { Look } from '../circuit/test.ts';
import {
  type Caution,
  type Conclusion,
  isTask,
  type LookStep,
  outcomeOfValue,
  type Step,
} from '../procedure/procedure.ts';
import { answersStep, answersTest, answersWaking, isFromBefore } from './accept-capture.ts';
import { answerBy } from './answering-test.ts';
import type { Command } from './command.ts';
import {
  type RepairVerdict,
  RULES,
  SESSION_FORMAT,
  type SessionEvent,
  type When,
} from './events.ts';
import { canWake, isInVain } from './intermittent.ts';
import { judgeStep, judgeTest } from './judge-step.ts';
import { pendingCautions, pendingTestCautions, testCautions } from './pending-cautions.ts';
import { mustBeOff, placeOfShort, shortFlaw, testOfShort } from './place-short.ts';
import { notReadHere } from './read-cautions.ts';
import { placesOfStep } from './read-watched.ts';
import type { Refusal } from './refusal.ts';
import { isOutcomeOf, isRepeatable, passes, verdictNow } from './retest.ts';
import { isAside, presentConclusion, presentStep, type Session } from './session.ts';
import './session-model.ts';
import { stepHere } from './step-here.ts';

/** What a command comes to: the events that it makes true, or why it makes none. */
export type Decision =
  | { readonly ok: true; readonly events: readonly SessionEvent[] }
  | { readonly ok: false; readonly refusal: Refusal };

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
    case 'answer-by-test': {
      if (session.status !== 'open') return notOpen(session);
      const answered = answerBy(session, command.by, now);
      return answered ? events(answered) : wrongKind(presentStep(session));
    }
    case 'set-test-aside': {
      if (session.status === 'closed') return notOpen(session);
      const { test, aside } = command;
      if (isAside(session, test) === aside) return refuse({ code: 'nothing-to-take-back' });
      return events({ type: 'test-set-aside', test, aside, ...now });
    }
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
      return close(session, command.verdict, now);
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

function events(...list: SessionEvent[]): Decision {
  return { ok: true, events: list };
}

function refuse(refusal: Refusal): Decision {
  return { ok: false, refusal };
}

function notOpen({ status, revealed }: Session): Decision {
  if (revealed) return refuse({ code: 'not-open', status: 'revealed' });
  return refuse({ code: 'not-open', status: status === 'open' ? 'concluded' : status });
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
      ? notReadHere(session, found.setup.state, found.cautions)
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

function stepNamed(session: Session, id: string): Step | undefined {
  const steps = session.opened.procedure?.steps;
  const step = steps && Object.hasOwn(steps, id) ? steps[id] : undefined;
  return step && stepHere(session, step);
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

function noReason(): Decision {
  return refuse({ code: 'empty-text', of: 'reason' });
}

function cautionFirst(pending: readonly Caution[]): Decision {
  return refuse({ code: 'caution-first', cautions: pending.map(({ id }) => id) });
}

function wrongKind(step: Step | null): Decision {
  return refuse({ code: 'wrong-kind', step: step?.id ?? null, wanted: step?.kind ?? null });
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
  {
    place,
    typed,
    unit,
    least,
    most,
    drops,
    minutes,
    capture,
  }: Extract<Command, { type: 'watch-waking' }>,
  now: When,
): Decision {
  if (session.status !== 'open') return notOpen(session);
  const { procedure, vehicle } = session.opened;
  const step = presentStep(session);
  if (vehicle.kind === 'drill') return refuse({ code: 'no-waking' });
  if (!procedure || step?.kind !== 'ask' || !canWake(procedure, step))
    return refuse({ code: 'no-waking' });
  const known = placesOfStep(procedure, step);
  if (place !== null && !known.includes(place))
    return refuse({ code: 'no-such-outcome', step: step.id, outcome: place, known });
  const pending = pendingCautions(session);
  if (pending.length > 0) return cautionFirst(pending);
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

function noCapture(): Decision {
  return refuse({ code: 'no-capture' });
}

/** The look that was named, or the outcome's first when only the outcome was. */
function lookFor(step: LookStep, name: string, look: Look | undefined): Look | null {
  const outcome = step.outcomes.find((one) => one.name === name);
  if (look && outcome?.looks.includes(look)) return look;
  return outcome?.looks[0] ?? null;
}

function noOutcome(step: Exclude<Step, Conclusion>, outcome: string): Decision {
  const known = 'outcomes' in step ? step.outcomes.map((one) => one.name) : [];
  return refuse({ code: 'no-such-outcome', step: step.id, outcome, known });
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

function conclude(
  session: Session,
  command: Extract<Command, { type: 'conclude' }>,
  now: When,
): Decision {
  if (session.status !== 'open') return notOpen(session);
  const tree = presentConclusion(session);
  const { own, weighed } = command;
  if (!own && !tree) return refuse({ code: 'not-concluded', wanted: 'conclusion' });
  const faults = own?.faults ?? leftOf(tree?.faults ?? [], weighed?.left);
  const wrong = own ? badConclusion(session, own) : null;
  if (wrong) return refuse(wrong);
  return events({
    type: 'concluded',
    conclusion: own ? null : (tree?.id ?? null),
    ownWords: own?.words?.trim() ?? null,
    faults,
    evidence: weighed?.evidence ?? [],
    ruledOut: weighed?.ruledOut ?? [],
    proven: weighed?.proven ?? null,
    ...(weighed?.hangsOn ? { restsOn: weighed.hangsOn } : {}),
    ...now,
  });
}

/** What a tree stands for is less where readings exclude some of it, and never nothing. */
function leftOf(faults: readonly string[], left: readonly string[] | undefined): readonly string[] {
  const standing = left ? faults.filter((id) => left.includes(id)) : faults;
  return standing.length > 0 ? standing : faults;
}

/** One's own conclusion names faults of the circuit, or says in words what is wrong; on a drill none gives it up. */
function badConclusion(
  { opened }: Session,
  { words, faults }: NonNullable<Extract<Command, { type: 'conclude' }>['own']>,
): Refusal | null {
  const known = opened.circuit?.faults.map(({ id }) => id) ?? [];
  const fault = faults.find((id) => !known.includes(id));
  if (fault !== undefined)
    return opened.circuit ? { code: 'no-such-fault', fault, known } : { code: 'no-circuit' };
  const isSaid = faults.length > 0 || (words !== null && words.trim() !== '');
  return isSaid || opened.vehicle.kind === 'drill'
    ? null
    : { code: 'empty-text', of: 'conclusion' };
}

/** The verdict over the repair is what its tests say, whoever asks for another. */
function close(session: Session, verdict: RepairVerdict, now: When): Decision {
  if (session.status === 'closed') return notOpen(session);
  if (!session.concluded) return refuse({ code: 'not-concluded', wanted: 'close' });
  const due = verdictNow(session);
  if (verdict !== due) return refuse({ code: 'other-verdict', verdict, due });
  return events({ type: 'session-closed', verdict, ...now });
}

/** There is a place for the last word after the last test: days later the record takes what the drive showed. */
function reportDrive(
  session: Session,
  { code, words }: Extract<Command, { type: 'report-drive' }>,
  now: When,
): Decision {
  if (session.opened.vehicle.kind === 'drill') return refuse({ code: 'no-drive' });
  if (!session.concluded) return refuse({ code: 'not-concluded', wanted: 'drive' });
  return events({ type: 'drive-reported', code, words: words.trim(), ...now });
}

/** Asked once it is known what is wrong, and never of a vehicle that nobody owns. */
function answerWork(
  session: Session,
  { answer: said, by, words }: Extract<Command, { type: 'answer-work' }>,
  now: When,
): Decision {
  if (session.opened.vehicle.kind === 'drill') return refuse({ code: 'no-customer' });
  if (session.status === 'closed') return notOpen(session);
  if (!session.concluded) return refuse({ code: 'not-concluded', wanted: 'work' });
  if (by.trim() === '') return refuse({ code: 'empty-text', of: 'customer' });
  return events({
    type: 'work-answered',
    answer: said,
    by: by.trim(),
    words: words.trim(),
    ...now,
  });
}

function retest(
  session: Session,
  command: Extract<Command, { type: 'record-retest' | 'cannot-retest' }>,
  now: When,
): Decision {
  if (session.status === 'closed') return notOpen(session);
  if (!session.concluded) return refuse({ code: 'not-concluded', wanted: 'repair' });
  const { procedure } = session.opened;
  const step = stepNamed(session, command.step);
  if (!procedure || !step) return refuse({ code: 'no-such-step', step: command.step });
  if (!isRepeatable(procedure, step)) return wrongKind(step);
  if (command.type === 'cannot-retest') {
    const reason = command.reason.trim();
    if (reason === '') return noReason();
    return events({ type: 'retest-impossible', step: step.id, reason, ...now });
  }
  const pending = pendingCautions(session, step);
  if (pending.length > 0) return cautionFirst(pending);
  const { typed, value, look, outcome, capture } = command;
  if (!step.outcomes.some(({ name }) => name === outcome)) return noOutcome(step, outcome);
  if (!isOutcomeOf(step, command)) return refuse({ code: 'other-outcome', step: step.id, outcome });
  if (capture && (step.kind === 'ask' || !answersStep(step, capture, value, look)))
    return noCapture();
  if (capture && isFromBefore(session, capture))
    return refuse({ code: 'old-capture', name: capture.name });
  return events({
    type: 'retest-recorded',
    step: step.id,
    typed,
    value,
    look,
    outcome,
    passed: passes(procedure, step, command),
    ...(capture ? { capture } : {}),
    ...now,
  });
}
