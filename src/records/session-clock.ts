/** The clock of a session's events, as a record shows it. */
import type { SessionEvent } from '../session/events.ts';
import { workedTimes } from '../session/worked-time.ts';
import type { Moment } from './record-form.ts';

/** Gives the moment of an event: when it was, on the clock of its session. */
export type Clock = (event: SessionEvent) => Moment;

/** A clock over a session's events, pauses left out. */
export function sessionClock(events: readonly SessionEvent[]): Clock {
  const worked = workedTimes(events);
  const numbers = new Map(events.map((event, index) => [event, index + 1]));
  return (event) => {
    const [number, workedMs] = [numbers.get(event), worked.get(event)];
    if (number === undefined || workedMs === undefined)
      throw new Error(`sessionClock: "${event.type}" is no event of this session`);
    return { event: number, at: event.at, workedMs };
  };
}
