/**
 * The end of a search for a fault that comes and goes and does not come: nothing is wrong now, and no test that is left is
 * likely to show it. So that nobody goes on for an hour where only the road can tell.
 */
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { SuspectRow } from './advisor.ts';
import type { Basis } from './basis.ts';

/** A test that shows a fault in fewer of such cars is not asked for, ... */
const SHOWS_LEAST = 0.1;
/** ... and none of which it would take more than so many minutes to find one. Our choice. */
const SEARCHED_MOST = 60;

/** Whether a test is worth its minutes where it is searched for what comes and goes; `chance` to show anything, 0 to 1. */
export function isWorthSearching({
  minutes,
  chance,
}: {
  readonly minutes: number;
  readonly chance: number;
}): boolean {
  return chance >= SHOWS_LEAST && minutes <= SEARCHED_MOST * chance;
}

/** The end as a row that names no fault; null where some reading speaks against a sound car. */
export function nothingFound({ space, standing }: Basis): SuspectRow | null {
  const { chances, misfitsOf } = standing.ranking;
  const sound = space.table.candidates.findIndex(({ id }) => id === HEALTHY);
  const [before, after] = [space.prior[sound] ?? 0, chances[sound] ?? 0];
  // It may have been there for one reading, which a sound car shows by a slip only.
  if (after < before || misfitsOf(sound).length > 0) return null;
  const words = `Replace nothing: nothing shows now. The chance that the fault is in this circuit fell from ${percent(1 - before)} to ${percent(1 - after)}, and no test left here is likely to show it. Record it on a drive, and test again when it has happened.`;
  return { repair: HEALTHY, words, faults: [], chance: after };
}

function percent(chance: number): string {
  return `${Math.round(chance * 100)} %`;
}
