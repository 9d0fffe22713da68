/** How a search for a fault that does not come goes on, as a line beside a step of the procedure. */
import type { Step } from '../../procedure/procedure.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';

/** How the person gets to the best tests, and to the suspects. */
export interface WaysOn {
  readonly tests: string;
  readonly suspects: string;
}

/** What is likelier to show the fault than this step, or that nothing is any more; null where nothing is searched for. */
export function asleepWords(
  { advisor, bind }: OpenedSession,
  session: Session,
  step: Step,
  { tests, suspects }: WaysOn,
): string | null {
  const asleep = advisor?.diagnosis(session).asleep;
  if (!asleep) return null;
  const { first, end } = asleep;
  if (end) return `${bind(end.words)} To end here: ${suspects}, then "nothing to repair now".`;
  if (!first || first.step === step.id) return null;
  return `Likelier to show it than this step: ${bind(first.words)} (${first.minutes} min), ${tests}.`;
}
