/** What could not be tested on the way to a conclusion, and what may be said to the customer all the same. */
import type { Conclusion } from '../procedure/procedure.ts';
import type { StepImpossible } from './events.ts';
import { type Session, standingAnswers } from './session.ts';

/** Steps on the present way that could not be done. */
export function gapsOf(session: Session): StepImpossible[] {
  return standingAnswers(session).filter((answer) => answer.type === 'step-impossible');
}

/** Said beside what is wrong where something on the way could not be done. */
export const GAPS_WORDS =
  'Not everything could be tested, so what was not tested may still be at fault.';

/** What the customer should know. What is good no author says: the readings that rule the rest out do. */
export function customerWords(session: Session, conclusion: Conclusion): string {
  const { customer } = conclusion;
  if (customer === '') return '';
  return gapsOf(session).length > 0 ? `${customer} ${GAPS_WORDS}` : customer;
}
