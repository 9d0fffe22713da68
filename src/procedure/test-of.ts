/** What a step of a procedure asks of the circuit. */
import type { Test } from '../circuit/test.ts';
import type { Step } from './procedure.ts';

/** The test of a step that reads something; null for a step that the circuit cannot answer. */
export function testOf(step: Step): Test | null {
  if ((step.kind !== 'measure' && step.kind !== 'look') || step.probe === null) return null;
  const { setup, probe, family, wiggle } = step;
  const isMoved = family === 'wiggle' || wiggle === true;
  const test = TESTS.get(step) ?? { setup, probe, ...(isMoved ? MOVED : {}) };
  TESTS.set(step, test);
  return test;
}

const MOVED = { wiggle: true } as const;
/** One test object per step, since the model knows tests by identity. */
const TESTS = new WeakMap<Step, Test>();
