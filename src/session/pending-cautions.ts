/** Which cautions stand before a step. */
import { type Caution, isTask, type Step } from '../procedure/procedure.ts';
import type { SessionEvent } from './events.ts';
import { presentStep, type Session } from './session.ts';

/**
 * Cautions that must be acknowledged before a step is worked on; the present step unless another is given. After a
 * conclusion the repair lies between: what was read before it is read again.
 */
export function pendingCautions(
  session: Session,
  step: Step = presentStep(session),
): readonly Caution[] {
  if (!isTask(step)) return [];
  const { state, ids } = session.acknowledged;
  const known = new Set(state === step.setup.state ? ids : []);
  const again = session.concluded ? readSince(session, session.concluded) : known;
  return step.cautions.filter(({ id }) => !known.has(id) || !again.has(id));
}

/** Ids of the cautions acknowledged after an event. */
function readSince({ events: all, acknowledgements }: Session, event: SessionEvent): Set<string> {
  const from = all.lastIndexOf(event);
  return new Set(
    acknowledgements
      .filter((one) => all.lastIndexOf(one) > from)
      .flatMap(({ cautions }) => cautions.map(({ id }) => id)),
  );
}
