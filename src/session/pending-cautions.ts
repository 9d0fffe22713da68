/** Which cautions stand before a step, and before a test that no step asks for. */
import type { Test, VehicleState } from '../circuit/test.ts';
import { cautionsFor, OPENING_CAUTION } from '../procedure/cautions.ts';
import { type Caution, isTask, type Step } from '../procedure/procedure.ts';
import type { SessionEvent } from './events.ts';
import { presentStep, type Session } from './session.ts';

/**
 * Cautions that must be acknowledged before a step is worked on; the present step unless another is given. After a
 * conclusion the repair lies between: what was read before it is read again.
 */
export function pendingCautions(
  session: Session,
  step: Step | null = presentStep(session),
): readonly Caution[] {
  if (!step || !isTask(step)) return [];
  return unread(session, step.setup.state, step.cautions);
}

/** All cautions of a test that no step asks for, gravest first. */
export function testCautions({ opened }: Session, { setup, probe }: Test): readonly Caution[] {
  // To look into a connector it is opened; a step of a tree says so itself.
  const opens = probe.kind === 'inspect' && probe.of.startsWith('connector.');
  const named = opens ? [OPENING_CAUTION] : [];
  const { cautionRules, circuit, job } = opened;
  return cautionsFor(
    cautionRules,
    { drive: job.vehicle.drive, setup, probes: [probe], circuit },
    named,
  );
}

/** Those of them that must still be acknowledged. */
export function pendingTestCautions(session: Session, test: Test): readonly Caution[] {
  return unread(session, test.setup.state, testCautions(session, test));
}

/**
 * Ids of the cautions that were read in this session, whatever the state; after a conclusion, since then. A DANGER is read
 * whole each time.
 */
export function readBefore(session: Session): ReadonlySet<string> {
  const since = session.concluded ? session.events.lastIndexOf(session.concluded) : -1;
  return new Set(
    session.acknowledgements
      .filter((one) => session.events.lastIndexOf(one) > since)
      .flatMap(({ cautions }) => cautions.filter(({ word }) => word !== 'DANGER'))
      .map(({ id }) => id),
  );
}

function unread(session: Session, state: VehicleState, cautions: readonly Caution[]): Caution[] {
  const known = knownIn(session, state);
  const again = session.concluded ? readSince(session, session.concluded) : known;
  return cautions.filter(({ id }) => !known.has(id) || !again.has(id));
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
