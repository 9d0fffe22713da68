/** What could not be tested on the way to a conclusion, and what may be said to the customer all the same. */
import type { Conclusion } from '../procedure/procedure.ts';
import type { StepImpossible } from './events.ts';
import { type Session, standingAnswers } from './session.ts';

/** Steps on the present way that could not be done. */
export function gapsOf(session: Session): StepImpossible[] {
  return standingAnswers(session).filter((answer) => answer.type === 'step-impossible');
}

/** Said instead of what the whole way would have shown to be good. */
export const GAPS_WORDS =
  'Not everything could be tested, so what was not tested may still be at fault.';

/** What the customer should know; what was to be shown good is claimed only after a way without gaps. */
export function customerWords(session: Session, conclusion: Conclusion): string {
  const { customer, cleared = '' } = conclusion;
  if (customer === '') return '';
  const more = gapsOf(session).length > 0 ? GAPS_WORDS : cleared;
  return more === '' ? customer : `${customer} ${more}`;
}
