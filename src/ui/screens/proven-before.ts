/** That a conclusion was proven before the readings left fewer causes of it, so that nobody takes the new word for a loss. */
import type { Weighed } from '../../session/advisor.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';

interface ProvenOnce {
  /** The session was so long. */
  readonly events: number;
  readonly causes: number;
}

/** By session in hand and title: what was on its screen in this run of the program. Without it a sentence is missing, no more. */
const once = new WeakMap<OpenedSession['driver'], Map<string, ProvenOnce>>();

/** A sentence with a blank behind it where it was proven before and is not now, with fewer causes left; else empty. */
export function provenBeforeWords(
  { driver }: Pick<OpenedSession, 'driver'>,
  { events }: Session,
  title: string,
  { proven, left }: Pick<Weighed, 'proven' | 'left'>,
): string {
  const seen = once.get(driver) ?? new Map<string, ProvenOnce>();
  once.set(driver, seen);
  if (proven) {
    seen.set(title, { events: events.length, causes: left.length });
    return '';
  }
  const before = seen.get(title);
  const isNarrower = before && before.events < events.length && before.causes > left.length;
  return isNarrower
    ? 'It was proven before, with more causes left open than the readings since then leave. '
    : '';
}
