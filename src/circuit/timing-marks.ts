/** The maker's marks: the engine is turned by hand until they stand, and it is looked whether shaft and wheel stand there too. */
import type { Circuit } from './circuit.ts';

/** What is looked at then, beside the other things of a target. */
export const MARKS = 'target.marks';

/** Whether the target sits on a shaft of the engine, which has such marks; a wheel bearing and a track have none. */
export function hasMarks({ target }: Pick<Circuit, 'target'>): boolean {
  return target !== null && target.turns > 0 && target.ring === undefined;
}
