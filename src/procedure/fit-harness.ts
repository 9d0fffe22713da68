/** Circuit and tree for the harness of one car: sections and joints in the circuit, and conclusions that stand for them. */
import type { Circuit } from '../circuit/circuit.ts';
import { type Harness, withHarness } from '../circuit/with-harness.ts';
import type { Procedure, Step } from './procedure.ts';

/**
 * The same with the harness put in. What a conclusion says of a whole wire, it says of each of its sections and of the
 * contacts on its way, so that a tree that knows nothing of them ends right.
 */
export function fitHarness<C extends Circuit | null, P extends Procedure | null>(
  harness: Harness,
  { circuit, procedure }: { readonly circuit: C; readonly procedure: P },
): { readonly circuit: C; readonly procedure: P } {
  const isEmpty = harness.joints.length === 0 && harness.wires.length === 0;
  if (!circuit || isEmpty) return { circuit, procedure };
  const { circuit: made, becomes } = withHarness(circuit, harness);
  const now = (faults: readonly string[]) => [
    ...new Set(faults.flatMap((id) => becomes.get(id) ?? [id])),
  ];
  const fitted = (step: Step): Step => {
    if (step.kind === 'conclude') return { ...step, faults: now(step.faults) };
    if (step.kind !== 'measure') return step;
    const outcomes = step.outcomes.map((one) =>
      one.under ? { ...one, under: now(one.under) } : one,
    );
    return { ...step, outcomes };
  };
  return {
    circuit: made as C,
    procedure:
      procedure === null
        ? procedure
        : {
            ...procedure,
            steps: Object.fromEntries(
              Object.entries(procedure.steps).map(([id, step]) => [id, fitted(step)]),
            ),
          },
  };
}
