/**
 * Whether the valve timing may be off: an answer said that shaft or wheel has moved, the maker's marks were off when they
 * were looked at last, or they were to be looked at and were not, or nobody looked and the signal is shifted. The starter
 * may then break what is still whole, so that nothing is proposed which turns the engine. Whoever wants such a test all the
 * same reads before it what can break.
 */
import { PLAIN_SETUP } from '../circuit/plain-setup.ts';
import type { Look, Test } from '../circuit/test.ts';
import { MARKS } from '../circuit/timing-marks.ts';
import { TIMING_HAZARD } from '../procedure/cautions.ts';
import type { Step } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { SessionEvent } from './events.ts';
import { rulesInForce, type Session, standingAnswers } from './session.ts';

/** Rules that first held back what turns the engine once the signal was shifted; files of earlier ones are not held to it. */
const SHIFTED_RULES = 16;

/**
 * By what was said or seen of it last, also after a repair; false where nothing was. Marks tell more than the signal: where
 * they are right a shift is one of the sensor's own wheel, which breaks nothing.
 */
export function isTimingOff(session: Session): boolean {
  const standing = new Set<SessionEvent>(standingAnswers(session));
  let position: TimingSign | null = rulesInForce(session) < SHIFTED_RULES ? 'in-step' : null;
  for (const event of [...session.events].reverse()) {
    const seen = seenOf(session, event, standing);
    if (seen === 'off' || seen === 'right') return seen === 'off';
    position ??= seen;
  }
  return position === 'shifted';
}

/** Whether the engine turns in a test, by the starter or by itself. */
export function turnsEngine({ setup }: Pick<Test, 'setup'>): boolean {
  return ['cranking', 'running', 'driving'].includes(setup.state);
}

/** The timing by marks and answers, or the signal's position against the known-good one. */
type TimingSign = 'off' | 'right' | 'shifted' | 'in-step';

/** Null where an event says nothing of the timing. */
function seenOf(
  { opened }: Session,
  event: SessionEvent,
  standing: ReadonlySet<SessionEvent>,
): TimingSign | null {
  if (event.type === 'test-recorded')
    return event.shown.kind === 'look' ? byLook(event.test, event.shown.look) : null;
  if (event.type !== 'look-recorded' && event.type !== 'step-impossible') return null;
  const step = standing.has(event) ? opened.procedure?.steps[event.step] : undefined;
  if (!step || step.kind === 'conclude') return null;
  const moved = movedOutcomes(step);
  const isLook = isMarks(testOf(step)) || (moved.length > 0 && warnsOfTiming(step));
  if (event.type === 'step-impossible') return isLook ? 'off' : null;
  if (moved.includes(event.outcome)) return 'off';
  const seen = event.look === null ? null : byLook(testOf(step), event.look);
  return seen ?? (isLook ? 'right' : null);
}

function isMarks(test: Test | null): boolean {
  return test?.probe.kind === 'inspect' && test.probe.of === MARKS;
}

function byLook(test: Test | null, look: Look): TimingSign | null {
  if (isMarks(test)) return look === 'faulty' ? 'off' : 'right';
  return test?.probe.kind === 'timing' && (look === 'shifted' || look === 'in-step') ? look : null;
}

/** The look that tells whether they are. */
export const MARKS_LOOK: Test = {
  setup: { ...PLAIN_SETUP, state: 'key-off' },
  probe: { kind: 'inspect', of: MARKS },
};

/** Answers of a question that nothing gives but a shaft or wheel out of place. */
export function movedOutcomes(step: Step): string[] {
  if (step.kind !== 'ask') return [];
  return step.outcomes.flatMap(({ name, under }) =>
    under !== undefined && under.length > 0 && under.every((id) => id === DISPLACED) ? [name] : [],
  );
}

const DISPLACED = 'target.displaced';

/** It is looked at with the engine at rest, before the starter turns it. */
function warnsOfTiming(step: Exclude<Step, { kind: 'conclude' }>): boolean {
  return !turnsEngine(step) && step.cautions.some(({ hazards }) => hazards.includes(TIMING_HAZARD));
}
