/** A conclusion that the readings do not bear out yet, in the dialogue of lines: what is to be done before it is accepted. */
import { isMadeAgain, type Weighed } from '../../session/advisor.ts';

/** The question where something is better than to accept. */
export function firstOrAccept(weighed: Pick<Weighed, 'hangsOn' | 'first'>): string {
  const yes = weighed.first
    ? isMadeAgain(weighed)
      ? 'make it again'
      : 'make that test'
    : 'conclude that instead';
  return `Type yes to ${yes}, or accept to conclude all the same: `;
}

/** What a line asks for where a conclusion may be accepted; null for anything else. */
export function askedFor(
  line: string,
  weighed: Pick<Weighed, 'first' | 'instead'> | null,
): 'first' | 'instead' | 'accept' | null {
  const word = line.trim().toLowerCase();
  if (word === 'yes') return weighed?.first ? 'first' : weighed?.instead ? 'instead' : 'accept';
  return word === 'accept' ? 'accept' : null;
}
