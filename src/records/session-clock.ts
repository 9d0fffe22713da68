/** Time worked at each event. `elapsed` starts anew at each resume, so the stretches between are added up. */
import type { SessionEvent } from '../session/events.ts';
import type { Moment } from './record-form.ts';

export type Clock = (event: SessionEvent) => Moment;

/** A clock over a session's events, pauses left out. */
export function sessionClock(events: readonly SessionEvent[]): Clock {
  const moments = new Map<SessionEvent, Moment>();
  let total = 0;
  let before = 0;
  for (const [index, event] of events.entries()) {
    // A resumed session may count on or from zero; what passed while it was paused is no work.
    if (event.type !== 'session-resumed') {
      total += event.elapsed >= before ? event.elapsed - before : event.elapsed;
    }
    before = event.elapsed;
    moments.set(event, { event: index + 1, at: event.at, workedMs: total });
  }
  return (event) => {
    const moment = moments.get(event);
    if (!moment) throw new Error(`sessionClock: "${event.type}" is no event of this session`);
    return moment;
  };
}
