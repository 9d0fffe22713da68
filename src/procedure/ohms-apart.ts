/**
 * The tree for a car on which somebody has named what shares feed or ground: an ohms step of its author's has those parts
 * off as well that the meter's current would meet on this car, in its setup and in what the hands are told.
 */
import type { Circuit } from '../circuit/circuit.ts';
import { apartForOhms } from '../circuit/met-by-ohms.ts';
import type { Procedure, Step } from './procedure.ts';
import { setupSay } from './setup-say.ts';

/** The same tree where no step meets more than its author knew of. */
export function withOhmsApart<P extends Procedure | null>(procedure: P, circuit: Circuit): P {
  if (procedure === null) return procedure;
  const steps = Object.entries(procedure.steps).map(([id, step]) => [id, apart(step, circuit)]);
  return { ...procedure, steps: Object.fromEntries(steps) };
}

function apart(step: Step, circuit: Circuit): Step {
  if (step.kind !== 'measure' || step.probe?.kind !== 'ohms') return step;
  const { probe } = step;
  const setup = apartForOhms(circuit, step.setup, [probe.plus, probe.minus]);
  if (setup === step.setup) return step;
  const [before, after] = [step.setup, setup].map((one) => setupSay(one, probe, circuit));
  return { ...step, setup, say: step.say.replace(before!, after!) };
}
