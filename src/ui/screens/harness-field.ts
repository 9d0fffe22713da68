/** The field of the job sheet for the harness of the car: several lines with ; between. No React. */
import type { Circuit } from '../../circuit/circuit.ts';
import { withHarness } from '../../circuit/with-harness.ts';
import { harnessSaid, readHarness } from '../../procedure/read-harness.ts';
import { sentence } from '../parts/sentence.ts';

/** What was understood, or what is wrong with the first line that is. */
export function harnessRemark(text: string, circuit: Circuit): string {
  const { harness, problems } = readHarness(circuit, harnessSaid(text));
  const [problem] = problems;
  if (problem) return `${sentence(problem.words)} ${sentence(problem.fix)}`;
  const { wires } = withHarness(circuit, harness).circuit;
  const sections = wires.filter(({ of }) => of !== undefined).length;
  const joints = harness.joints.map(
    ({ words, metres }) => `${words}${metres === null ? '' : `, ${metres} m from the sensor`}`,
  );
  return joints.length === 0
    ? `Understood: what is known of ${harness.wires.length === 1 ? 'a wire' : `${harness.wires.length} wires`}.`
    : `Understood: ${joints.join('; ')}. ${sections} sections of wire are suspects of their own.`;
}

/** Why the field cannot be taken as it stands, or null. */
export function harnessWrong(text: string, circuit: Circuit): string | null {
  const [problem] = readHarness(circuit, harnessSaid(text)).problems;
  return problem ? `${sentence(problem.words)} ${sentence(problem.fix)}` : null;
}
