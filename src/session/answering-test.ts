/**
 * A step whose test the session has already is answered by it, and not made again: a test that no step asked for, with
 * the same setup and the same leads, since nothing was done to the vehicle. Whoever wants it made again takes the answer
 * back; only a test that was made after it answers the step then.
 */
import { testKey } from '../circuit/test-key.ts';
import { type Family, isTask, outcomeOfValue, type Step } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type {
  EventNumber,
  LookRecorded,
  ReadingRecorded,
  SessionEvent,
  StepImpossible,
  TestRecorded,
  When,
} from './events.ts';
import { judgeStep } from './judge-step.ts';
import { presentStep, type Session } from './session.ts';

/** An answer that a test of the session gave. */
export type ByTest = (ReadingRecorded | LookRecorded) & { readonly by: EventNumber };

/** A step that was gone round, since its connector is out of reach. */
export type GoneRound = StepImpossible & { readonly by: EventNumber };

/** The last test of the session that answers the present step, as the number of its event; null where none does. */
export function answeringTest(session: Session): EventNumber | null {
  const { status, opened, answers, events } = session;
  const step = presentStep(session);
  const asked = step && testOf(step);
  // On a drill its bench reads, and what is read twice counts.
  if (status !== 'open' || !asked || opened.vehicle.kind === 'drill') return null;
  const answered = answers.findLast(({ event }) => event.step === step.id)?.event;
  const key = testKey(asked);
  for (let at = events.length - 1; at >= 0; at -= 1) {
    const event = events[at]!;
    if (event === answered || event.type === 'concluded' || isWorkDone(session, event)) return null;
    if (event.type !== 'test-recorded' || testKey(event.test) !== key) continue;
    if (answerBy(session, step, at + 1, { at: '', elapsed: 0 })) return at + 1;
  }
  return null;
}

/** What was done to the vehicle makes another vehicle of it; what was only looked at, asked or made ready does not. */
export function isWorkDone({ opened }: Session, event: SessionEvent): boolean {
  if (event.type !== 'step-done') return false;
  const step = opened.procedure?.steps[event.step];
  return !(step && isTask(step) && READY.includes(step.family));
}
const READY: readonly Family[] = ['interview', 'inspection'];

/** A step as that test answers it; null where it does not. */
export function answerBy(
  session: Session,
  step: Step | null,
  by: EventNumber,
  now: When,
): ByTest | null {
  const test = session.events[by - 1];
  const asked = step && testOf(step);
  if (!asked || test?.type !== 'test-recorded') return null;
  if (testKey(test.test) !== testKey(asked)) return null;
  return reading(session, step, test, by, now);
}

function reading(
  { meter }: Session,
  step: Step,
  { typed, shown, capture }: TestRecorded,
  by: EventNumber,
  now: When,
): ByTest | null {
  if (step.kind === 'measure') {
    if (shown.kind !== 'number' || shown.unit !== step.unit) return null;
    const value = shown.value ?? Number.POSITIVE_INFINITY;
    const outcome = outcomeOfValue(step, value);
    if (!outcome) return null;
    const judgement = capture ? null : judgeStep(step, value, meter);
    return {
      type: 'reading-recorded',
      step: step.id,
      ...{ typed, value: shown.value, unit: step.unit },
      instrument: capture ? 'scope' : meter.name,
      ...{ judgement, outcome: outcome.name, go: outcome.go, by },
      ...now,
    };
  }
  if (step.kind !== 'look' || shown.kind !== 'look') return null;
  const { look } = shown;
  const outcome = step.outcomes.find(({ looks }) => looks.includes(look));
  if (!outcome) return null;
  const { name, go } = outcome;
  return { type: 'look-recorded', step: step.id, look, outcome: name, go, by, ...now };
}

/** The steps that the program answered since the person did something last, in their order. */
export function answeredJustNow({ events }: Session): (ByTest | GoneRound)[] {
  const found: (ByTest | GoneRound)[] = [];
  for (let at = events.length - 1; at >= 0; at -= 1) {
    const event = events[at]!;
    if (!isUnasked(event)) break;
    found.unshift(event);
  }
  return found;
}

/** Whether an event is an answer that nobody gave: by a test of the session, or of a step that was gone round. */
export function isUnasked(event: { readonly type: string }): event is ByTest | GoneRound {
  return isByTest(event) || ('by' in event && event.type === 'step-impossible');
}

/** Whether an event is an answer that a test of the session gave, so that nothing was read for it. */
export function isByTest(event: { readonly type: string }): event is ByTest {
  return 'by' in event && (event.type === 'reading-recorded' || event.type === 'look-recorded');
}
