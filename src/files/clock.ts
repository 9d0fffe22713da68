/** The time, as events keep it: wall clock with its offset, and milliseconds that never run backwards. */
import type { When } from '../session/events.ts';

/** A clock whose `elapsed` begins at 0 now. */
export function startClock(): () => When {
  const begin = performance.now();
  return () => ({ at: localTime(new Date()), elapsed: Math.round(performance.now() - begin) });
}

/** A time has four digits for the year, in UTC and in every zone: a clock beyond that is read as this last or first day. */
const FIRST_MS = Date.UTC(1000, 0, 2);
const LAST_MS = Date.UTC(9999, 11, 30);

/** RFC 3339 with milliseconds and the offset of the place: `2031-05-06T09:30:12.345+02:00`. */
function localTime(now: Date): string {
  const date = new Date(Math.min(Math.max(now.getTime(), FIRST_MS), LAST_MS));
  const offset = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, -1);
  const two = (value: number) => String(value).padStart(2, '0');
  const minutes = Math.abs(offset);
  return `${local}${offset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
