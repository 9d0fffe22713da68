/**
 * Time worked at each event. The clock behind `elapsed` runs as long as the program does, so that a session begins and
 * goes on wherever it stands: the stretches between are added up.
 */
import type { SessionEvent } from './events.ts';
import type { Session } from './session.ts';

/** Milliseconds worked up to each event, pauses left out. */
export function workedTimes(events: readonly SessionEvent[]): ReadonlyMap<SessionEvent, number> {
  const worked = new Map<SessionEvent, number>();
  let total = 0;
  let before = events[0]?.elapsed ?? 0;
  for (const event of events) {
    // A resumed session may count on or from zero; what passed while it was paused is no work on it.
    // The note of a torn end is written on the way there.
    if (event.type !== 'session-resumed' && event.type !== 'recovered')
      total += event.elapsed >= before ? event.elapsed - before : event.elapsed;
    before = event.elapsed;
    worked.set(event, total);
  }
  return worked;
}

/** Milliseconds worked in all of them. */
export function workedMs(events: readonly SessionEvent[]): number {
  const last = events.at(-1);
  return last ? (workedTimes(events).get(last) ?? 0) : 0;
}

/**
 * Minutes by the clock up to the conclusion, pauses left out. Null where no clock has measured the work: on a simulated
 * vehicle, and where a file or a program has answered.
 */
export function clockMinutes({ opened, events, concluded }: Session): number | null {
  const hands = events.flatMap((event) => (event.type === 'session-resumed' ? [event.by] : []));
  const isMeasured = [opened.by, ...hands].every((by) => by === 'person');
  if (opened.vehicle.kind !== 'real' || !isMeasured) return null;
  return workedMs(concluded ? events.slice(0, events.lastIndexOf(concluded) + 1) : events) / MS;
}
const MS = 60_000;
