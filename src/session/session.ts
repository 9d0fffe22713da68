/** The state of a session: nothing but the fold of its events. */
import type { Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import type { Conclusion, Step } from '../procedure/procedure.ts';
import { stepOf } from '../procedure/procedure.ts';
import type {
  Answer,
  AnswerRevealed,
  CautionAcknowledged,
  CautionPassedOver,
  Concluded,
  DriveReported,
  EventNumber,
  NoteAdded,
  Retest,
  SessionClosed,
  SessionEvent,
  SessionOpened,
  ShortPlaced,
  StateAside,
  TestRecorded,
  TestStopped,
  ValueSet,
  WakingWatched,
  WorkAnswered,
} from './events.ts';
import { stepHere } from './step-here.ts';

/** Where a session stands: it takes answers, rests, has its conclusion, or is over. */
export type SessionStatus = 'open' | 'paused' | 'concluded' | 'closed';

/** An answer as it was saved, and whether it was taken back since. */
export interface KeptAnswer {
  readonly event: Answer;
  readonly superseded: boolean;
}

/** One visit of a step on the present way through the tree; the last visit has no answer yet. */
export interface Visit {
  readonly step: string;
  /** Position in `answers`, or null for the step that is asked now. */
  readonly answer: number | null;
}

/** A value of this car as it was set, and whether that was taken back since. */
export interface KeptValue {
  readonly event: ValueSet;
  readonly takenBack: boolean;
}

/** What cannot be had on this job: a connector, by its part, or a state of the vehicle. */
export type Unreached = { readonly part: string } | { readonly state: StateAside };
/** It with the event that says so. */
export type OutOfReach = Unreached & { readonly reason: string; readonly by: EventNumber };

/** All that is known of a session after its events. */
export interface Session {
  readonly status: SessionStatus;
  readonly opened: SessionOpened;
  readonly instruments: readonly string[];
  readonly meter: SessionOpened['meter'];
  /** All answers in the order they were given. */
  readonly answers: readonly KeptAnswer[];
  /** The present way: kept answers from the start to the step that is asked now; empty in free order. */
  readonly trail: readonly Visit[];
  /** Cautions acknowledged since the vehicle came into its present state. */
  readonly acknowledged: { readonly state: string; readonly ids: readonly string[] };
  readonly acknowledgements: readonly CautionAcknowledged[];
  /** Tests outside the procedure, in the order they were made. */
  readonly tests: readonly TestRecorded[];
  /** Tests that the person cannot make: proposed no more. */
  readonly aside: readonly Test[];
  /** Connectors and vehicle states that cannot be had, the last one last. */
  readonly unreached: readonly OutOfReach[];
  /** What was set of this car's values, in the order in which it was. */
  readonly values: readonly KeptValue[];
  /** Shorts whose place was measured, in the order in which they were. */
  readonly shorts: readonly ShortPlaced[];
  /** Rounds of moving and warming, in the order they were made. */
  readonly watched: readonly WakingWatched[];
  readonly notes: readonly NoteAdded[];
  readonly concluded: Concluded | null;
  /** Since the present conclusion. */
  readonly retests: readonly Retest[];
  readonly closed: SessionClosed | null;
  /** What was reported of driving it, since the present conclusion. */
  readonly drives: readonly DriveReported[];
  /** What the customer said about the work, since the present conclusion; the last one counts. */
  readonly work: readonly WorkAnswered[];
  /** On a drill: tests that the bench stopped, cautions that were passed over, and the answer once it is known. */
  readonly stopped: readonly TestStopped[];
  readonly passedOver: readonly CautionPassedOver[];
  readonly revealed: AnswerRevealed | null;
  readonly events: readonly SessionEvent[];
}

/** Whether two of them are the same connector or state. */
export function isSameReach(one: Unreached, other: Unreached): boolean {
  return 'part' in one
    ? 'part' in other && one.part === other.part
    : 'state' in other && one.state === other.state;
}

/** Whether a test was set aside. */
export function isAside({ aside }: Pick<Session, 'aside'>, test: Test): boolean {
  const key = testKey(test);
  return aside.some((one) => testKey(one) === key);
}

/** The step that is asked now, as it is for this car: the last of the trail; null in free order. */
export function presentStep(session: Session): Step | null {
  const { procedure } = session.opened;
  const last = session.trail.at(-1);
  return procedure && last ? stepHere(session, stepOf(procedure, last.step)) : null;
}

/** The conclusion the tree has come to, or null while it still asks. */
export function presentConclusion(session: Session): Conclusion | null {
  const step = presentStep(session);
  return step?.kind === 'conclude' ? step : null;
}

/** Version of the rules by which the session goes on now. */
export function rulesInForce({ opened, events }: Pick<Session, 'opened' | 'events'>): number {
  const resumed = events.findLast(({ type }) => type === 'session-resumed');
  return resumed?.type === 'session-resumed' ? resumed.rules : opened.rules;
}

/** The answers on the present way, in its order. */
export function standingAnswers(session: Session): Answer[] {
  return session.trail.flatMap((visit) => {
    const kept = visit.answer === null ? undefined : session.answers[visit.answer];
    return kept ? [kept.event] : [];
  });
}
