/** The wall clock from one event to the next: it is set by people and by networks, and it travels. */
import type { When } from './events.ts';

/** By so much a clock may go back unremarked. */
const CLOCK_SLACK_MS = 2000;

/** Milliseconds by which the clock was set back between two events that follow each other; 0 when it was not. */
export function setBackMs(before: When, event: When): number {
  const backMs = Date.parse(before.at) - Date.parse(event.at);
  return backMs > CLOCK_SLACK_MS ? backMs : 0;
}

/** The offset from UTC of a time, `+02:00`. */
export function offsetOf({ at }: Pick<When, 'at'>): string {
  const offset = /[+-]\d\d:\d\d$/.exec(at)?.[0] ?? '+00:00';
  return offset === '-00:00' ? '+00:00' : offset;
}
