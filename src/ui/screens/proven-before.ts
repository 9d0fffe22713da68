/** That a conclusion was proven before the readings left fewer causes of it, so that nobody takes the new word for a loss. */
import type { Weighed } from '../../session/advisor.ts';
import { replay } from '../../session/evolve.ts';
import { presentConclusion, type Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';

interface ProvenOnce {
  /** The session was so long. */
  readonly events: number;
  readonly causes: number;
}

/** By session in hand and title: what was on its screen in this run of the program, or is weighed again after a resumption. */
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

/** Tests that are gone back over. Ours: each is weighed, which takes seconds. */
const BACK_MOST = 4;

/**
 * Of a session that was resumed, how it stood before its last tests, the last first, as long as the tree had come to these faults
 * already: what was on the screen then is weighed again. Empty where nothing is to be.
 */
export function beforeLastTests(
  { driver }: Pick<OpenedSession, 'driver'>,
  { events }: Pick<Session, 'events'>,
  { faults, title }: { readonly faults: readonly string[]; readonly title: string },
): readonly Session[] {
  if (once.get(driver)?.has(title)) return [];
  if (!events.some(({ type }) => type === 'session-resumed')) return [];
  const places = events.flatMap(({ type }, at) => (type === 'test-recorded' ? [at] : []));
  const before: Session[] = [];
  for (const at of places.reverse().slice(0, BACK_MOST)) {
    const session = replay(events.slice(0, at));
    if (presentConclusion(session)?.faults.join() !== faults.join()) break;
    before.push(session);
  }
  return before;
}
