/** Who gives the answers that come over standard input. */
import type { Hand } from '../../session/events.ts';

/** A person at a terminal; of a pipe nobody can tell who feeds it. */
export function handAtInput(stdin: { readonly isTTY?: boolean } = process.stdin): Hand {
  return stdin.isTTY === true ? 'person' : 'pipe';
}
