/**
 * What was read of the cautions that stand before a test. One that was read before an earlier test in the same vehicle state
 * stands in short and stops nothing, a NOTICE whatever the state; a DANGER stands whole each time that the vehicle comes into
 * the state, and before each cranking. That nobody has said what drives the vehicle is no danger that was found: it stands
 * whole once in each state, so that it is still read where it counts. What a test brings with it (ohms, a light, an open
 * plug) has cautions of its own, so that another kind of test has others.
 */
import type { VehicleState } from '../circuit/test.ts';
import type { Caution } from '../procedure/procedure.ts';
import type { CautionAcknowledged, SessionEvent } from './events.ts';
import type { Session } from './session.ts';

/** A caution that stands in short, and where it was read whole. */
export interface CautionInShort {
  readonly caution: Caution;
  readonly read: CautionAcknowledged;
}

/** Those that must be read: not read before, or a DANGER that was found. */
export function unreadCautions(
  session: Session,
  state: VehicleState,
  cautions: readonly Caution[],
): Caution[] {
  const earlier = readEarlier(session, state);
  return notReadHere(session, state, cautions).filter((caution) => !earlier(caution));
}

/**
 * Ids of the cautions that were read in this session, whatever the state; after a conclusion, since then. They stand
 * short on the page that asks. A DANGER is read whole each time.
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

/** Those of `cautions` that stand in short before a test in this vehicle state: read before another, and not since. */
export function cautionsInShort(
  session: Session,
  state: VehicleState,
  cautions: readonly Caution[],
): CautionInShort[] {
  const earlier = readEarlier(session, state);
  return notReadHere(session, state, cautions).flatMap((caution) => {
    const read = earlier(caution);
    return read ? [{ caution, read }] : [];
  });
}

/** Where a caution was read whole so that it may stand in short now; null where it has to be read. */
function readEarlier(
  session: Session,
  state: VehicleState,
): (caution: Caution) => CautionAcknowledged | null {
  const here = readInPart(session, state);
  const anywhere = readInPart(session, null);
  return (caution) => {
    const { id, word } = caution;
    if (word === 'DANGER' && !isOfUnstatedDrive(session, caution)) return null;
    return (word === 'NOTICE' ? anywhere : here).get(id) ?? null;
  };
}

/** It warns of high voltage only because nobody has said what drives the vehicle. */
function isOfUnstatedDrive({ opened }: Session, { hazards }: Caution): boolean {
  return (
    opened.job.vehicle.drive === 'not-stated' && hazards.every((one) => one === 'high-voltage')
  );
}

/** Those that were not read since the vehicle came into this state, or since the repair where one lies between. */
export function notReadHere(
  session: Session,
  state: VehicleState,
  cautions: readonly Caution[],
): Caution[] {
  const known = knownIn(session, state);
  const again = session.concluded ? readSince(session, session.concluded) : known;
  return cautions.filter(({ id }) => !known.has(id) || !again.has(id));
}

/**
 * What was read in this vehicle state, or in any for null, by the id, in this part of the session: since it was begun or
 * gone on with, and since a conclusion, behind which a repair may lie.
 */
function readInPart(
  { events, acknowledgements }: Session,
  state: VehicleState | null,
): ReadonlyMap<string, CautionAcknowledged> {
  const from = events.findLastIndex(
    ({ type }) => type === 'session-resumed' || type === 'concluded',
  );
  const since = new Set<SessionEvent>(events.slice(from + 1));
  return new Map(
    acknowledgements
      .filter((one) => (state === null || one.state === state) && since.has(one))
      .flatMap((one) => one.cautions.map(({ id }) => [id, one] as const)),
  );
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
