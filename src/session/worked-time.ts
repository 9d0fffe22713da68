/** Time worked at each event. `elapsed` starts anew at each resume, so the stretches between are added up. */
import type { SessionEvent } from './events.ts';

/** Milliseconds worked up to each event, pauses left out. */
export function workedTimes(events: readonly SessionEvent[]): ReadonlyMap<SessionEvent, number> {
  const worked = new Map<SessionEvent, number>();
  let total = 0;
  let before = 0;
  for (const event of events) {
    // A resumed session may count on or from zero; what passed while it was paused is no work.
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
