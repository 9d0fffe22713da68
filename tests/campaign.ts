/**
 * Which cases a run takes of a long list: a fixed share, so that a red run can be repeated. OHMWARD_SEED=NUMBER takes
 * another share, OHMWARD_LONG=1 (npm run test:full) takes all.
 */
export const LONG = process.env['OHMWARD_LONG'] === '1';
/** Where every draw of a test begins. */
export const SEED = Number(process.env['OHMWARD_SEED'] ?? 20310506);
if (!Number.isInteger(SEED) || SEED < 0)
  throw new Error('OHMWARD_SEED is no whole number from 0 up');

/** One of so many, evenly over all; which one follows from the seed. All in the long form. */
export function shareOf<T>(all: readonly T[], oneIn: number): T[] {
  return LONG ? [...all] : all.filter((_, index) => (index + SEED) % oneIn === 0);
}
