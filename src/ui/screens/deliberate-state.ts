/**
 * Whether a key was pressed in answer to what is on the screen. A key typed ahead arrives as soon as the screen is
 * there, a key held down repeats every few hundredths of a second: both come without a pause before them.
 */

/** Nobody reads and presses faster; key repeat is faster by far. */
export const QUIET_MS = 300;

export interface Deliberate {
  /** When the screen appeared, in monotonic ms. */
  readonly shownMs: number;
  /** When the last key came, or the screen appeared. */
  readonly lastMs: number;
}

/** What the time of a key tells. */
export interface KeyTiming {
  /** The screen had been there long enough to be seen. */
  readonly isSeen: boolean;
  /** The same, and no key came just before: pressed on purpose, not held down or typed ahead. */
  readonly isDeliberate: boolean;
}

/** The state after a key at `nowMs`, and what its time tells. */
export function deliberateAfter(
  { shownMs, lastMs }: Deliberate,
  nowMs: number,
): { readonly state: Deliberate; readonly timing: KeyTiming } {
  const isSeen = nowMs - shownMs >= QUIET_MS;
  const isDeliberate = isSeen && nowMs - lastMs >= QUIET_MS;
  return { state: { shownMs, lastMs: nowMs }, timing: { isSeen, isDeliberate } };
}
