/** Which cautions stand before a step, and before a test that no step asks for. What was read of them: `read-cautions.ts`. */
import { type Circuit, sensorOf } from '../circuit/circuit.ts';
import type { Test } from '../circuit/test.ts';
import {
  cautionsFor,
  OPENING_CAUTION,
  RAISED_CAUTION,
  THROTTLE_CAUTION,
  TURNING_CAUTION,
} from '../procedure/cautions.ts';
import { type Caution, isTask, type Step } from '../procedure/procedure.ts';
import { type CautionInShort, cautionsInShort, unreadCautions } from './read-cautions.ts';
import { presentStep, type Session } from './session.ts';

/**
 * Cautions that must be acknowledged before a step is worked on; the present step unless another is given. After a
 * conclusion the repair lies between: what was read before it is read again.
 */
export function pendingCautions(
  session: Session,
  step: Step | null = presentStep(session),
): readonly Caution[] {
  if (!step || !isTask(step)) return [];
  return unreadCautions(session, step.setup.state, step.cautions);
}

/** All cautions of a test that no step asks for, gravest first. */
export function testCautions({ opened }: Session, test: Test): readonly Caution[] {
  const { cautionRules, circuit, job } = opened;
  const { setup, probe } = test;
  return cautionsFor(
    cautionRules,
    { drive: job.vehicle.drive, setup, probes: [probe], circuit },
    ofHands(circuit, test),
  );
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
