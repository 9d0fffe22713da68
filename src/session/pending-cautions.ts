/** Which cautions stand before a step. */
import type { Test, VehicleState } from '../circuit/test.ts';
import { type Caution, isTask, type Step } from '../procedure/procedure.ts';
import type { Command } from './command.ts';
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
  const known = knownIn(session, step.setup.state);
  const again = session.concluded ? readSince(session, session.concluded) : known;
  return step.cautions.filter(({ id }) => !known.has(id) || !again.has(id));
}

/**
 * Of the cautions of a test outside the tree, which belong to no step, those not read yet in the state it asks for; all
 * of them before each cranking, since what was read there was read for the step.
 */
export function unreadCautions(
  session: Session,
  { setup }: Test,
  cautions: readonly Caution[],
): readonly Caution[] {
  const known = setup.state === 'cranking' ? new Set() : knownIn(session, setup.state);
  return cautions.filter(({ id }) => !known.has(id));
}

/** The note that keeps in the record that they were read. */
export function readNote(cautions: readonly Caution[]): Command {
  const shown = cautions.map(({ word, say }) => `${word}: ${say}`).join(' ');
  const text = `Read and acknowledged before a test outside the procedure. ${shown}`;
  return { type: 'add-note', text };
}

/** Ids of the cautions acknowledged since the vehicle came into this state; for cranking, since the last test. */
function knownIn({ acknowledged }: Session, state: VehicleState): Set<string> {
  return new Set(acknowledged.state === state ? acknowledged.ids : []);
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
