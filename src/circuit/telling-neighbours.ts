/** Of the faults that told neighbours bring along, those that the module notices. It takes the model, so it stands alone. */
import type { Circuit } from './circuit.ts';
import { withSymptoms } from './with-symptoms.ts';

/** The circuit `made` of `before`, without what nobody would come to the shop for. */
export function tellingNeighbours(before: Circuit, made: Circuit): Circuit {
  const had = new Set(before.faults.map(({ id }) => id));
  const added = made.faults.filter(({ id }) => !had.has(id));
  if (added.length === 0) return made;
  return { ...made, faults: [...before.faults, ...withSymptoms({ ...made, faults: added })] };
}
