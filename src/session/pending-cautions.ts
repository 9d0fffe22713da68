/** Which cautions stand before a step, and before a test that no step asks for. What was read of them: `read-cautions.ts`. */
import type { Probe, Test } from '../circuit/test.ts';
import { MARKS } from '../circuit/timing-marks.ts';
import { cautionsFor, OPENING_CAUTION, TURNING_CAUTION } from '../procedure/cautions.ts';
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
export function testCautions({ opened }: Session, { setup, probe }: Test): readonly Caution[] {
  const { cautionRules, circuit, job } = opened;
  return cautionsFor(
    cautionRules,
    { drive: job.vehicle.drive, setup, probes: [probe], circuit },
    handsOnly(probe),
  );
}

/** Cautions of what eyes and fingers do by themselves; a step of a tree names them itself. */
function handsOnly(probe: Probe): readonly string[] {
  if (probe.kind !== 'inspect') return [];
  if (probe.of === MARKS) return [TURNING_CAUTION];
  // To look into a connector it is opened.
  return probe.of.startsWith('connector.') ? [OPENING_CAUTION] : [];
}

/** Those of them that must still be acknowledged. */
export function pendingTestCautions(session: Session, test: Test): readonly Caution[] {
  return unreadCautions(session, test.setup.state, testCautions(session, test));
}

/** The same of a test that no step asks for. */
export function testCautionsInShort(session: Session, test: Test): CautionInShort[] {
  return cautionsInShort(session, test.setup.state, testCautions(session, test));
}
