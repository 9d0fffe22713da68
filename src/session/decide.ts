import type { Look } from '../circuit/test.ts';
import { bindText } from '../procedure/bind-text.ts';
import {
  type Conclusion,
  isTask,
  type LookStep,
  outcomeOfValue,
  type Step,
  stepOf,
} from '../procedure/procedure.ts';
import { answersStep, answersTest, isFromBefore } from './accept-capture.ts';
import { takesCapture } from './capture-step.ts';
import type { Command } from './command.ts';
import type { SessionEvent, When } from './events.ts';
import { judgeExtra, judgeStep } from './judge-step.ts';
import { pendingCautions } from './pending-cautions.ts';
import { isRepeatable, passes } from './retest.ts';
import { presentConclusion, presentStep, type Session } from './session.ts';

export interface Refusal {
  readonly code:
    | 'caution-first'
    | 'wrong-kind'
    | 'no-such-outcome'
    | 'nothing-to-take-back'
    | 'not-open'
    | 'empty-text'
    | 'no-way-round'
    | 'not-concluded'
    | 'old-capture';
  readonly words: string;
  readonly fix?: string;
}

export type Decision =
  | { readonly ok: true; readonly events: readonly SessionEvent[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** Decides one command at time `now`. */
export function decide(session: Session, command: Command, now: When): Decision {
  if (session.status === 'paused' && command.type !== 'resume')
    return refuse('not-open', 'this session is paused', 'resume it first');
  switch (command.type) {
    case 'acknowledge-cautions':
      return acknowledge(session, command.step, now);
    case 'record-reading':
    case 'choose-outcome':
    case 'mark-done':
    case 'cannot-do':
      return answer(session, command, now);
    case 'go-back':
      return goBack(session, command.to, now);
    case 'add-note': {
      const text = command.text.trim();
      if (text === '') return refuse('empty-text', 'the note is empty');
      return events({ type: 'note-added', step: presentStep(session).id, text, ...now });
    }
    case 'change-instruments':
      return events({
        type: 'instruments-changed',
        instruments: command.instruments,
        meter: command.meter,
        ...now,
      });
    case 'record-extra':
      return session.status === 'open' ? extra(session, command, now) : notOpen(session);
    case 'pause':
      return session.status === 'open' || session.status === 'concluded'
        ? events({ type: 'session-paused', ...now })
        : notOpen(session);
    case 'resume':
      return events({ type: 'session-resumed', program: command.program, ...now });
    case 'conclude':
      return conclude(session, command, now);
    case 'record-retest':
    case 'cannot-retest':
      return retest(session, command, now);
    case 'close':
      if (session.status === 'closed') return notOpen(session);
      if (!session.concluded) return refuse('not-concluded', 'there is no conclusion to close yet');
      return events({
        type: 'session-closed',
        verdict: command.verdict,
        words: command.words,
        ...now,
      });
  }
}

function events(...list: SessionEvent[]): Decision {
  return { ok: true, events: list };
}

function refuse(code: Refusal['code'], words: string, fix?: string): Decision {
  return { ok: false, refusal: { code, words, ...(fix ? { fix } : {}) } };
}

/** What is closed stays closed; until then a conclusion can be taken back. */
function notOpen({ status }: Session): Decision {
  const fix = status === 'closed' ? 'begin a new session' : 'go back to change an answer';
  return refuse('not-open', 'this session has ended', fix);
}

function acknowledge(session: Session, named: string | undefined, now: When): Decision {
  const step = named === undefined ? presentStep(session) : stepOf(session.opened.procedure, named);
  const pending = pendingCautions(session, step);
  if (!isTask(step) || pending.length === 0)
    return refuse('wrong-kind', 'there is no caution to acknowledge here');
  return events({
    type: 'caution-acknowledged',
    step: step.id,
    state: step.setup.state,
    cautions: pending.map(({ id, word, say }) => ({ id, word, text: say })),
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
  if (!isTask(step)) return refuse('wrong-kind', 'the tree has come to its conclusion');
  if (command.type === 'cannot-do') {
    const reason = command.reason.trim();
    if (reason === '') return noReason();
    if (step.cannot === null)
      return refuse(
        'no-way-round',
        'this procedure has no way round this step',
        'pause here, or ask what else would tell',
      );
    return events({ type: 'step-impossible', step: step.id, reason, go: step.cannot, ...now });
  }
  if (pendingCautions(session).length > 0) return cautionFirst();
  switch (command.type) {
    case 'mark-done':
      if (step.kind !== 'act') return wrongKind(step);
      return events({ type: 'step-done', step: step.id, go: step.go, ...now });
    case 'choose-outcome':
      return choose(step, command, now);
    case 'record-reading':
      return record(session, step, command, now);
  }
}

function noReason(): Decision {
  return refuse('empty-text', 'say in a few words why it cannot be done');
}

function cautionFirst(): Decision {
  return refuse(
    'caution-first',
    'the caution of this step has not been acknowledged',
    'read and acknowledge it first',
  );
}

function wrongKind(step: Step): Decision {
  const wanted: Record<Step['kind'], string> = {
    measure: 'a reading',
    look: 'one of its looks',
    ask: 'one of its answers',
    act: 'only "done"',
    conclude: 'nothing',
  };
  return refuse('wrong-kind', `step "${step.id}" wants ${wanted[step.kind]}`);
}

function choose(
  step: Step,
  command: Extract<Command, { type: 'choose-outcome' }>,
  now: When,
): Decision {
  if (step.kind !== 'look' && step.kind !== 'ask') return wrongKind(step);
  const outcome = step.outcomes.find(({ name }) => name === command.outcome);
  if (!outcome) return noOutcome(step, command.outcome);
  const { capture } = command;
  if (capture && !takesCapture(step)) return noCapture();
  const look = step.kind === 'look' ? lookFor(step, command.outcome, command.look) : null;
  return events({
    type: 'look-recorded',
    step: step.id,
    look,
    outcome: outcome.name,
    go: outcome.go,
    ...(capture ? { capture } : {}),
    ...now,
  });
}

function extra(
  session: Session,
  command: Extract<Command, { type: 'record-extra' }>,
  now: When,
): Decision {
  const { test, words, typed, shown, expected, capture } = command;
  if (capture && !answersTest(test, shown, capture)) return noCapture();
  const taken = capture ? { capture } : {};
  // The meter's accuracy says nothing of a scope's.
  const judgement = capture || !expected ? null : judgeExtra(shown, expected, session.meter);
  return events({
    type: 'extra-reading',
    test,
    words,
    typed,
    shown,
    ...(expected ? { expected } : {}),
    ...(judgement ? { judgement } : {}),
    ...taken,
    ...now,
  });
}

function noCapture(): Decision {
  return refuse('wrong-kind', 'this answer cannot come from a capture', 'answer it by hand');
}

/** The look that was named, or the outcome's first when only the outcome was. */
function lookFor(step: LookStep, name: string, look: Look | undefined): Look | null {
  const outcome = step.outcomes.find((one) => one.name === name);
  if (look && outcome?.looks.includes(look)) return look;
  return outcome?.looks[0] ?? null;
}

function noOutcome(step: Exclude<Step, Conclusion>, name: string): Decision {
  const names = 'outcomes' in step ? step.outcomes.map((one) => one.name).join(', ') : '';
  return refuse(
    'no-such-outcome',
    `step "${step.id}" has no outcome "${name}"`,
    `one of: ${names}`,
  );
}

function record(
  session: Session,
  step: Step,
  command: Extract<Command, { type: 'record-reading' }>,
  now: When,
): Decision {
  if (step.kind !== 'measure') return wrongKind(step);
  const outcome = outcomeOfValue(step, command.value);
  if (!outcome) return refuse('no-such-outcome', 'this is not a number');
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
  if (!visit || visit.answer === null)
    return refuse('nothing-to-take-back', 'there is no earlier answer to take back');
  return events({ type: 'step-reopened', step: visit.step, answer: visit.answer, ...now });
}

function conclude(
  session: Session,
  command: Extract<Command, { type: 'conclude' }>,
  now: When,
): Decision {
  if (session.status !== 'open') return notOpen(session);
  const tree = presentConclusion(session);
  if (!command.own && !tree)
    return refuse(
      'not-concluded',
      'the tree has not come to a conclusion yet',
      'go on, or name your own conclusion',
    );
  const { own, weighed } = command;
  // The record reads in the words of this vehicle, whatever becomes of the job sheet.
  const { job, circuit } = session.opened;
  const bound = (text = '') => bindText(text, job, circuit);
  return events({
    type: 'concluded',
    conclusion: own ? null : (tree?.id ?? null),
    title: own?.title ?? bound(tree?.title),
    faults: own?.faults ?? tree?.faults ?? [],
    repair: own?.repair ?? bound(tree?.repair),
    evidence: weighed?.evidence ?? [],
    ruledOut: weighed?.ruledOut ?? [],
    proven: weighed?.proven ?? null,
    ...now,
  });
}

function retest(
  session: Session,
  command: Extract<Command, { type: 'record-retest' | 'cannot-retest' }>,
  now: When,
): Decision {
  if (session.status === 'closed') return notOpen(session);
  if (!session.concluded) return refuse('not-concluded', 'there is no conclusion to test yet');
  const { procedure } = session.opened;
  const step = stepOf(procedure, command.step);
  if (!isRepeatable(procedure, step)) return wrongKind(step);
  if (command.type === 'cannot-retest') {
    const reason = command.reason.trim();
    if (reason === '') return noReason();
    return events({ type: 'retest-impossible', step: step.id, reason, ...now });
  }
  if (pendingCautions(session, step).length > 0) return cautionFirst();
  const { typed, value, look, outcome, capture } = command;
  if (!step.outcomes.some(({ name }) => name === outcome)) return noOutcome(step, outcome);
  if (capture && (step.kind === 'ask' || !answersStep(step, capture, value))) return noCapture();
  if (capture && isFromBefore(session, capture))
    return refuse(
      'old-capture',
      `${capture.name} is the very file that was measured before the repair`,
      'capture it anew',
    );
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
