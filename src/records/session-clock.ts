/** The clock of a session's events, as a record shows it. */
import type { SessionEvent } from '../session/events.ts';
import { workedMs, workedTimes } from '../session/worked-time.ts';
import type { Moment } from './record-form.ts';

export type Clock = (event: SessionEvent) => Moment;

/** A clock over a session's events, pauses left out. */
export function sessionClock(events: readonly SessionEvent[]): Clock {
  const worked = workedTimes(events);
  const total = workedMs(events);
  return (event) => ({ at: event.at, workedMs: worked.get(event) ?? total });
}
