/** The field of the job sheet for what shares feed, ground or plug with the sensor: several lines with ; between. No React. */
import type { Circuit } from '../../circuit/circuit.ts';
import { fitNeighbours, neighbourOf, sharesSaid } from '../../procedure/read-neighbours.ts';
import { movedWords, toldBy } from '../../session/told.ts';
import { sentence } from '../parts/sentence.ts';

/** What was understood and what it moves, or what is wrong with the first line that is. */
export function sharesRemark(text: string, circuit: Circuit): string {
  const wrong = sharesWrong(text, circuit);
  if (wrong !== null) return wrong;
  const shares = sharesSaid(text) ?? [];
  const names = shares.map(({ name }) => neighbourOf(circuit, name).words);
  const moved = movedWords(
    toldBy({ earlierRepairs: [], shares }).map(({ key }) => key),
    circuit,
  );
  const what = names.length === 0 ? 'nothing shares its wiring' : names.join(', ');
  return `Understood: ${what}${moved === '' ? '' : `; ${moved}`}.`;
}

/** Why the field cannot be taken as it stands, or null. */
export function sharesWrong(text: string, circuit: Circuit): string | null {
  const { problem } = fitNeighbours(circuit, sharesSaid(text) ?? []);
  return problem ? `${sentence(problem.words)} ${sentence(problem.fix)}` : null;
}
