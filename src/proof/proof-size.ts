/**
 * How much work the proof of a tree is, and what is done of it: a circuit of many parts under a tree of many tests would keep
 * a computer busy for minutes and take gigabytes. Whoever asks for a number of cars gets it.
 */
import { testKey } from '../circuit/test-key.ts';
import type { LinkedProcedure } from '../procedure/link-procedure.ts';
import { stepOf } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { Issue } from '../source/issue.ts';
import { sourceLocation } from './source-location.ts';

/**
 * Each fault is read in each test, and the circuit with its wires and contacts is compiled for it. So many of these take all
 * cars: twice the largest shipped tree. Our choice.
 */
const READINGS_MAX = 250_000;
/** Beyond this compiling alone takes too long, however few the cars. Our choice. */
const COMPILED_MAX = 600_000;

/** The cars that are sent through the tree with each fault, none where it is not proved, and what the author is told. */
export interface ProofSize {
  readonly cars: number;
  readonly issues: readonly Issue[];
}

/** Of `cars` as many as the tree can be proved with. */
export function proofSize(linked: LinkedProcedure, cars: number): ProofSize {
  const { circuit, procedure } = linked;
  if (!circuit) return { cars, issues: [] };
  const faults = circuit.faults.length;
  const pins = circuit.parts.reduce((sum, part) => sum + part.pins.length, 0);
  const places = circuit.wires.length + pins;
  const tests = testsOf(linked);
  const work = faults * places * tests;
  if (work <= READINGS_MAX) return { cars, issues: [] };
  const large = `the circuit has ${faults} faults over ${places} wires and contacts, and the tree ${tests} tests`;
  const at = sourceLocation(linked, procedure.start);
  if (work > COMPILED_MAX)
    return {
      cars: 0,
      issues: [
        {
          code: 'not-proved',
          severity: 'error',
          at,
          words: `the tree is not proved: ${large}`,
          fix: 'leave out of the circuit what the tree does not test, or try a few cars of each fault with --cars 4',
        },
      ],
    };
  const fewer = Math.floor((cars * READINGS_MAX) / work);
  return {
    cars: fewer,
    issues: [
      {
        code: 'fewer-cars',
        severity: 'warning',
        at,
        words: `the tree is proved with ${fewer} cars of each fault instead of ${cars}: ${large}`,
        fix: `where that is too few, --cars ${cars} takes all of them`,
      },
    ],
  };
}

/** Tests that the tree reads, each once. */
function testsOf({ procedure }: LinkedProcedure): number {
  const keys = Object.keys(procedure.steps).flatMap((id) => {
    const step = stepOf(procedure, id);
    const test = step.kind === 'measure' || step.kind === 'look' ? testOf(step) : null;
    return test ? [testKey(test)] : [];
  });
  return new Set(keys).size;
}
