/** What a command comes to, and the refusals that several commands share. */
import type { Caution, Conclusion, Step } from '../procedure/procedure.ts';
import type { SessionEvent } from './events.ts';
import type { Refusal } from './refusal.ts';
import type { Session } from './session.ts';
import { stepHere } from './step-here.ts';

/** What a command comes to: the events that it makes true, or why it makes none. */
export type Decision =
  | { readonly ok: true; readonly events: readonly SessionEvent[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** The command makes these events true. */
export function events(...list: SessionEvent[]): Decision {
  return { ok: true, events: list };
}

/** It makes none true, and this is why. */
export function refuse(refusal: Refusal): Decision {
  return { ok: false, refusal };
}

/** The session takes no such command in its present state. */
export function notOpen({ status, revealed }: Session): Decision {
  if (revealed) return refuse({ code: 'not-open', status: 'revealed' });
  return refuse({ code: 'not-open', status: status === 'open' ? 'concluded' : status });
}

/** A step of the tree by its id, as it stands in this session; undefined for none. */
export function stepNamed(session: Session, id: string): Step | undefined {
  const steps = session.opened.procedure?.steps;
  const step = steps && Object.hasOwn(steps, id) ? steps[id] : undefined;
  return step && stepHere(session, step);
}

/** A step that cannot be done needs a reason. */
export function noReason(): Decision {
  return refuse({ code: 'empty-text', of: 'reason' });
}

/** These have to be read before. */
export function cautionFirst(pending: readonly Caution[]): Decision {
  return refuse({ code: 'caution-first', cautions: pending.map(({ id }) => id) });
}

/** The step asks for something else; null where none is asked. */
export function wrongKind(step: Step | null): Decision {
  return refuse({ code: 'wrong-kind', step: step?.id ?? null, wanted: step?.kind ?? null });
}

/** The capture does not show what it is said to. */
export function noCapture(): Decision {
  return refuse({ code: 'no-capture' });
}

/** The step has no outcome of this name. */
export function noOutcome(step: Exclude<Step, Conclusion>, outcome: string): Decision {
  const known = 'outcomes' in step ? step.outcomes.map((one) => one.name) : [];
  return refuse({ code: 'no-such-outcome', step: step.id, outcome, known });
}
