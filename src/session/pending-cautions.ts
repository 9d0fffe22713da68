/** Which cautions stand before a step, and before a test that no step asks for. What was read of them: `read-cautions.ts`. */
import { type Circuit, sensorOf } from '../circuit/circuit.ts';
import type { Test } from '../circuit/test.ts';
import {
  cautionsFor,
  OPENING_CAUTION,
  RAISED_CAUTION,
  THROTTLE_CAUTION,
  TIMING_OFF_CAUTION,
  TURNING_CAUTION,
} from '../procedure/cautions.ts';
import {
  type Caution,
  type Conclusion,
  isTask,
  SIGNAL_WORDS,
  type Step,
} from '../procedure/procedure.ts';
import { type CautionInShort, cautionsInShort, unreadCautions } from './read-cautions.ts';
import { presentStep, type Session } from './session.ts';
import { isTimingOff, turnsEngine } from './timing-off.ts';

/**
 * Cautions that must be acknowledged before a step is worked on; the present step unless another is given. After a
 * conclusion the repair lies between: what was read before it is read again.
 */
export function pendingCautions(
  session: Session,
  step: Step | null = presentStep(session),
): readonly Caution[] {
  if (!step || !isTask(step)) return [];
  return unreadCautions(session, step.setup.state, stepCautions(session, step));
}

/** All cautions of a step, gravest first: those of the tree, and of what the session has found. */
export function stepCautions(
  session: Session,
  step: Exclude<Step, Conclusion>,
): readonly Caution[] {
  const had = new Set(step.cautions.map(({ id }) => id));
  const found = ofTiming(session, step).filter((id) => !had.has(id));
  if (found.length === 0) return step.cautions;
  const added = session.opened.cautionRules.filter(({ id }) => found.includes(id));
  return [
    ...step.cautions,
    ...added.map(({ id, word, say, hazards }) => ({ id, word, say, hazards })),
  ].sort((a, b) => SIGNAL_WORDS.indexOf(a.word) - SIGNAL_WORDS.indexOf(b.word));
}

/** The cautions of a step that were read in full before, and are shown in one line; none at a conclusion. */
export function stepCautionsInShort(session: Session, step: Step): CautionInShort[] {
  return isTask(step)
    ? cautionsInShort(session, step.setup.state, stepCautions(session, step))
    : [];
}

/** All cautions of a test that no step asks for, gravest first. */
export function testCautions(session: Session, test: Test): readonly Caution[] {
  const { cautionRules, circuit, job } = session.opened;
  const { setup, probe } = test;
  return cautionsFor(cautionRules, { drive: job.vehicle.drive, setup, probes: [probe], circuit }, [
    ...ofHands(circuit, test),
    ...ofTiming(session, test),
  ]);
}

/** Of an engine that is to turn although its timing may be off. */
function ofTiming(session: Session, test: Pick<Test, 'setup'>): readonly string[] {
  return turnsEngine(test) && isTimingOff(session) ? [TIMING_OFF_CAUTION] : [];
}

/** Cautions of what hands open, move and turn; a step of a tree names them itself. */
function ofHands(circuit: Circuit | null, { setup, probe }: Test): readonly string[] {
  // To look into a connector it is opened.
  if (probe.kind === 'inspect' && probe.of.startsWith('connector.')) return [OPENING_CAUTION];
  const isLookedAt = probe.kind === 'inspect' && probe.of.startsWith('target');
  const isMoved =
    setup.target === 'moving' && (setup.state === 'key-on' || setup.state === 'key-off');
  if (!isLookedAt && !isMoved) return [];
  if (circuit?.target?.at.endsWith('wheel')) return [RAISED_CAUTION];
  // A wheel of the engine is seen all round, or its marks are met, only while somebody turns it.
  if (isLookedAt) return [TURNING_CAUTION];
  return circuit && sensorOf(circuit).kind === 'potentiometer' ? [THROTTLE_CAUTION] : [];
}

/** Those of them that must still be acknowledged. */
export function pendingTestCautions(session: Session, test: Test): readonly Caution[] {
  return unreadCautions(session, test.setup.state, testCautions(session, test));
}

/** The same of a test that no step asks for. */
export function testCautionsInShort(session: Session, test: Test): CautionInShort[] {
  return cautionsInShort(session, test.setup.state, testCautions(session, test));
}
