/** The commands that end a session: its conclusion, and after it the customer's answer, the tests after the repair, the drive and the close. */

import { answersStep, isFromBefore } from './accept-capture.ts';
import type { Command } from './command.ts';
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
import type { RepairVerdict, When } from './events.ts';
import { pendingCautions } from './pending-cautions.ts';
import type { Refusal } from './refusal.ts';
import { isOutcomeOf, isRepeatable, passes, verdictNow } from './retest.ts';
import { presentConclusion, type Session } from './session.ts';
import { stepAgain } from './step-again.ts';
import { dropsCounted } from './watched-rounds.ts';

/** Names what is wrong: the end that the tree has come to, or one of the person's own. */
export function conclude(
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
export function closeSession(session: Session, verdict: RepairVerdict, now: When): Decision {
  if (session.status === 'closed') return notOpen(session);
  if (!session.concluded) return refuse({ code: 'not-concluded', wanted: 'close' });
  const due = verdictNow(session);
  if (verdict !== due) return refuse({ code: 'other-verdict', verdict, due });
  return events({ type: 'session-closed', verdict, ...now });
}

/** There is a place for the last word after the last test: days later the record takes what the drive showed. */
export function reportDrive(
  session: Session,
  { code, words }: Extract<Command, { type: 'report-drive' }>,
  now: When,
): Decision {
  if (session.opened.vehicle.kind === 'drill') return refuse({ code: 'no-drive' });
  if (!session.concluded) return refuse({ code: 'not-concluded', wanted: 'drive' });
  return events({ type: 'drive-reported', code, words: words.trim(), ...now });
}

/** Asked once it is known what is wrong, and never of a vehicle that nobody owns. */
export function answerWork(
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

/** A test made again after the repair, or why it cannot be. */
export function retest(
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
  const contradicted = dropsCounted(session, step, outcome);
  if (contradicted) return refuse(contradicted);
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
    passed: passes(procedure, stepAgain(session, step, null), command),
    ...(capture ? { capture } : {}),
    ...now,
  });
}
