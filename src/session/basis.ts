/** What all of a diagnosis stands on: the readings with their ranking, and what these say of one fault, two, or a group. */
import type { Model } from '../circuit/model.ts';
import type { Job } from '../procedure/job.ts';
import type { SessionReading } from './session-readings.ts';
import { faultWords } from './suspect-rows.ts';
import type { Standing, SuspectSpace } from './suspect-space.ts';

/** A state of a session, as its diagnosis needs it. */
export interface Basis {
  readonly model: Model;
  readonly job: Job;
  readonly space: SuspectSpace;
  readonly readings: readonly SessionReading[];
  /** The same with their ranking, and what the person can do now. */
  readonly standing: Standing;
}

/** A pair is named when it is at least this likely beside the likeliest single fault. Our choice. */
const PAIR_SHARE = 0.5;

/** The reading that disagrees most with the rest; none while the readings agree. */
export function disagreeing({ readings, standing }: Basis): SessionReading | undefined {
  const { disagrees } = standing.ranking;
  return disagrees ? readings[disagrees.reading] : undefined;
}

/** The likeliest pair of faults, when a single one with a slip is not much likelier than both; else null. */
export function twoAtOnce({ standing }: Basis): readonly string[] | null {
  const { pairs, suspects } = standing.ranking;
  const [pair] = pairs;
  if (!pair || pair.chance < PAIR_SHARE * suspects[0]!.chance) return null;
  return pair.ids;
}

/** That no single fault explains the readings, and what to look at; null while one does. */
export function unexplained(basis: Basis): string | null {
  if (basis.standing.ranking.explained) return null;
  const culprit = disagreeing(basis);
  const two = twoAtOnce(basis);
  const pair = two
    ? ` Two faults at once would explain them: ${two.map((id) => faultWords(basis.model.circuit, id)).join(' and ')}.`
    : '';
  if (!culprit)
    return `No single fault explains these readings; there may be two, or a lead was in the wrong place.${pair}`;
  return `No single fault explains these readings. "${culprit.words}" (${culprit.found}) disagrees most with the rest: check where both leads were, and repeat it.${pair}`;
}

/** Repairs left that no test at hand tells apart; none while one could, and before the first reading. */
export function leftTogether({ readings, space, standing }: Basis): readonly string[] {
  if (readings.length === 0) return [];
  const { group, settled } = space.verdict(standing);
  return !settled || group.length < 2 ? [] : group;
}
