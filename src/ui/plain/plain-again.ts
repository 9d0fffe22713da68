/** A conclusion that rests on one reading, in the dialogue of lines: it is asked for again before it is accepted. */
import type { Weighed } from '../../session/advisor.ts';

export const AGAIN_OR_ACCEPT = 'Type yes to make it again, or accept to conclude all the same: ';

/** What a line asks for where a conclusion may be accepted; null for anything else. */
export function askedFor(
  line: string,
  weighed: Pick<Weighed, 'again'> | null,
): 'again' | 'accept' | null {
  const word = line.trim().toLowerCase();
  if (word === 'yes') return weighed?.again ? 'again' : 'accept';
  return word === 'accept' ? 'accept' : null;
}
