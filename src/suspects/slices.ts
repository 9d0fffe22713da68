/**
 * Long work in slices: it stops where somebody else may have a turn, such as a person who types. How it is cut changes
 * nothing in what it makes.
 */

/** Work that goes on each time it is asked for the next slice, until it has made what it makes. */
export type Slices<Made> = Generator<undefined, Made>;

/** Does sliced work to its end without a pause, and gives its result. */
export function atOnce<Made>(work: Slices<Made>): Made {
  let slice = work.next();
  while (!slice.done) slice = work.next();
  return slice.value;
}
