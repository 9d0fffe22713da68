/**
 * Whether a key was pressed in answer to what is on the screen. A key typed ahead arrives as soon as the screen is
 * there, a key held down repeats every few hundredths of a second: both come without a pause before them.
 */

/** Nobody reads and presses faster; key repeat is faster by far. */
export const QUIET_MS = 300;

export interface Deliberate {
  /** When the screen appeared or the last key came, in monotonic ms. */
  readonly lastMs: number;
}

/** The state after a key at `nowMs`, and whether that key counts. */
export function deliberateAfter(
  state: Deliberate,
  nowMs: number,
): { readonly state: Deliberate; readonly counts: boolean } {
  return { state: { lastMs: nowMs }, counts: nowMs - state.lastMs >= QUIET_MS };
}
