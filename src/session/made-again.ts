/** Which reading is made once more before a conclusion is accepted: one that it hangs on, or one that does not fit it. */
import type { Corroboration } from '../suspects/corroborate.ts';
import { COSTS, testCost } from '../suspects/test-cost.ts';
import type { Better, Proposal } from './advisor.ts';
import type { Basis } from './basis.ts';

/** A test that takes more minutes is repeated only where no cheaper one would show the same. Our choice. */
const REPEAT_MINUTES = 5;

/** What is to be made where a conclusion hangs on one reading: `again` is its test once more. */
export function restsOn(
  again: Repeat,
  weighed: Corroboration,
  { space }: Basis,
  proposed: Proposes,
): Better {
  const { minutes, id } = again.proposal;
  if (minutes <= REPEAT_MINUTES) return again;
  const other = weighed.offers.find(({ test }) => space.testAt(test).id !== id);
  if (!other || other.minutes >= minutes) return again;
  const why =
    'the conclusion depends on one reading: this shows the same, or refutes it, in less time';
  return {
    kind: 'first',
    proposal: proposed.proposal(other.test, other.minutes, { shows: [], why, bits: null }),
  };
}

/** Who puts a test of the table into words for a person. */
export interface Proposes {
  proposal(
    place: number,
    minutes: number,
    told: Pick<Proposal, 'shows' | 'why' | 'bits'>,
  ): Proposal;
}

/** A test that was made, to be made once more before anything else. */
export type Repeat = Extract<Better, { kind: 'repeat' }>;
/** Why one is, where the conclusion hangs on it. */
export const DEPENDS = 'the conclusion depends on this one reading: repeat it';
const DOES_NOT_FIT = 'what leads explains every reading but this: repeat it';

/** The test of a reading once more; null where only a step of the tree can make it. */
export function madeAgain(
  reading: number,
  why: string,
  { readings, space, standing }: Basis,
  proposed: Proposes,
): Repeat | null {
  const { test, event } = readings[reading]!;
  const { now, means, aside } = standing;
  if (space.testAt(test).test === null || aside?.includes(test)) return null;
  const { minutes } = testCost(space.testAt(test), now, COSTS, means.helper);
  return {
    kind: 'repeat',
    proposal: proposed.proposal(test, minutes, { shows: [], why, bits: null }),
    reading: event,
    isOdd: why === DOES_NOT_FIT,
  };
}

/** With more readings than these against it nothing leads: it is no slip then. Our choice. */
const ODD_MOST = 2;

/**
 * The reading, made once, that the likeliest fault of a conclusion that is borne out (of all, where none is) explains as a
 * slip only, once more: the cheapest of such.
 */
export function oddReading(
  faults: readonly string[] | null,
  basis: Basis,
  proposed: Proposes,
): Repeat | null {
  const { space, standing, readings } = basis;
  const { chances, misfitsOf } = standing.ranking;
  const ids = space.table.candidates.map(({ id }) => id);
  const among = faults ? space.namedBy(faults) : ids;
  const leader = ids.reduce(
    (best, id, at) =>
      among.includes(id) && (best < 0 || chances[at]! > chances[best]!) ? at : best,
    -1,
  );
  if (leader < 0) return null;
  const odd = misfitsOf(leader);
  if (odd.length > ODD_MOST) return null;
  const once = odd.filter(
    (at) => readings.filter(({ test }) => test === readings[at]!.test).length === 1,
  );
  return cheapest(once.map((at) => madeAgain(at, DOES_NOT_FIT, basis, proposed)));
}

/** Where no other test would confirm it, that of the reading without which it would not be borne out, once more. */
export function leaningOn(weighed: Corroboration, basis: Basis, proposed: Proposes): Repeat | null {
  const { leansOn } = weighed;
  if (leansOn === null || weighed.offers.length > 0) return null;
  return madeAgain(leansOn, DEPENDS, basis, proposed);
}

function cheapest(repeats: readonly (Repeat | null)[]): Repeat | null {
  return repeats
    .filter((one) => one !== null)
    .reduce<Repeat | null>(
      (best, one) => (best && best.proposal.minutes <= one.proposal.minutes ? best : one),
      null,
    );
}
