/** Which cautions stand before a step, and before a test that no step asks for. What was read of them: `read-cautions.ts`. */
import type { Test } from '../circuit/test.ts';
import { cautionsFor, OPENING_CAUTION } from '../procedure/cautions.ts';
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
  // To look into a connector it is opened; a step of a tree says so itself.
  const opens = probe.kind === 'inspect' && probe.of.startsWith('connector.');
  const named = opens ? [OPENING_CAUTION] : [];
  const { cautionRules, circuit, job } = opened;
  return cautionsFor(
    cautionRules,
    { drive: job.vehicle.drive, setup, probes: [probe], circuit },
    named,
  );
}

/** Those of them that must still be acknowledged. */
export function pendingTestCautions(session: Session, test: Test): readonly Caution[] {
  return unreadCautions(session, test.setup.state, testCautions(session, test));
}

/** The same of a test that no step asks for. */
export function testCautionsInShort(session: Session, test: Test): CautionInShort[] {
  return cautionsInShort(session, test.setup.state, testCautions(session, test));
}
