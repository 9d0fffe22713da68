/**
 * An answer on the way through the tree that the same test, made again, does not bear out: the tree went on from a
 * reading that most of its repeats contradict, and leads elsewhere with what they showed.
 */
import { testKey } from '../circuit/test-key.ts';
import { testOf } from '../procedure/test-of.ts';
import { answerBy, isWorkDone } from './answering-test.ts';
import { stepNamed } from './decision.ts';
import type { EventNumber } from './events.ts';
import type { Session } from './session.ts';

/** Where the tree went by an answer that its repeats contradict. */
export interface Overturned {
  /** Position on the way, from 0. */
  readonly place: number;
  /** The answer, ... */
  readonly answer: EventNumber;
  /** ... and the last of the repeats that contradict it. */
  readonly by: EventNumber;
}

/** The first such answer; null where each is borne out, and on a drill, whose bench reads. */
export function overturnedAnswer(session: Session): Overturned | null {
  const { opened, trail } = session;
  if (opened.vehicle.kind === 'drill') return null;
  for (const [place, { answer }] of trail.entries()) {
    const found = answer === null ? null : overturnedAt(session, place, answer);
    if (found) return found;
  }
  return null;
}

function overturnedAt(session: Session, place: number, answer: number): Overturned | null {
  const { event } = session.answers[answer]!;
  if (event.type !== 'reading-recorded' && event.type !== 'look-recorded') return null;
  const step = stepNamed(session, event.step) ?? null;
  const asked = step && testOf(step);
  if (!asked) return null;
  const key = testKey(asked);
  const answeredAt = session.events.indexOf(event);
  const outcomes = [event.outcome];
  let by = 0;
  for (let at = answeredAt + 1; at < session.events.length; at += 1) {
    const later = session.events[at]!;
    if (isWorkDone(session, later)) return null;
    if (later.type !== 'test-recorded' || testKey(later.test) !== key) continue;
    const repeat = answerBy(session, step, at + 1, { at: '', elapsed: 0 });
    if (!repeat) continue;
    outcomes.push(repeat.outcome);
    by = at + 1;
  }
  const now = mostOf(outcomes);
  // What the last repeat contradicts in turn is not settled.
  return now === event.outcome || outcomes.at(-1) !== now
    ? null
    : { place, answer: answeredAt + 1, by };
}

/** The outcome that most readings have; of as many, the last one's. */
function mostOf(outcomes: readonly string[]): string {
  const timesOf = (name: string) => outcomes.filter((one) => one === name).length;
  return outcomes.reduce((best, name) => (timesOf(name) >= timesOf(best) ? name : best));
}
