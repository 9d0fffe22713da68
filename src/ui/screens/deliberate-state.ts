/**
 * Whether a key was pressed in answer to what is on the screen. A key typed ahead arrives as soon as the screen is
 * there. A key held down comes again once after a longer wait, and then every few hundredths of a second: the first
 * time may be as long after the screen that it brought as an answer, so there the same key counts later.
 */

/** Nobody reads and presses faster; key repeat is faster by far. */
export const QUIET_MS = 300;

/** The longest wait before a held key repeats that a usual system can be set to; from memory. */
export const HELD_MS = 1000;

/** When keys came, beside when the screen appeared. */
export interface Deliberate {
  /** When the screen appeared, in monotonic ms. */
  readonly shownMs: number;
  /** When the last key came, or the screen appeared. */
  readonly lastMs: number;
  /** Label of the key that came last, before the screen or on it; null for none. */
  readonly last: string | null;
  /** Whether that was before the screen. */
  readonly isFirst: boolean;
}

/** Whether a key was pressed by somebody who had seen the screen, and on purpose. */
export interface KeyTiming {
  /** The screen had been there long enough to be seen, and it is not the key held down that brought it. */
  readonly isSeen: boolean;
  /** The same, and no key came just before: pressed on purpose, not held down or typed ahead. */
  readonly isDeliberate: boolean;
}

/** The state after the key `label` at `nowMs`, and what its time tells. */
export function deliberateAfter(
  { shownMs, lastMs, last, isFirst }: Deliberate,
  nowMs: number,
  label: string,
): { readonly state: Deliberate; readonly timing: KeyTiming } {
  const isHeld = label === last && nowMs - lastMs < (isFirst ? HELD_MS : QUIET_MS);
  const isSeen = !isHeld && nowMs - shownMs >= QUIET_MS;
  const isDeliberate = isSeen && nowMs - lastMs >= QUIET_MS;
  const state = { shownMs, lastMs: nowMs, last: label, isFirst: false };
  return { state, timing: { isSeen, isDeliberate } };
}
