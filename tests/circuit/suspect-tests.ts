/** Shorthand for tests on a car that stands or turns. */
import type { Probe, Setup, Test } from '../../src/circuit/test.ts';
import { testOf } from './shipped.ts';

/** Ready for an ohmmeter. */
export const KEYED_OFF: Partial<Setup> = { state: 'key-off', unplugged: ['module', 'sensor'] };

/** The live count at an input while the target moves. */
export function counts(input: string): Test {
  return testOf({ kind: 'counts', input }, { target: 'moving' });
}

/** The scope at a terminal. */
export function patternAt(plus: string): Probe {
  return { kind: 'pattern', plus, minus: 'battery.negative' };
}
