/** A conclusion that the readings do not bear out yet, in the dialogue of lines: what is to be done before it is accepted. */
import { betterThanAccepting, isMadeAgain, type Weighed } from '../../session/advisor.ts';

/** The question where something is better than to accept. */
export function firstOrAccept(weighed: Weighed): string {
  const yes = weighed.overturned
    ? 'take it back'
    : betterThanAccepting(weighed)
      ? isMadeAgain(weighed)
        ? 'repeat it'
        : 'do that test'
      : 'conclude that instead';
  return `Type yes to ${yes}, or accept to conclude anyway: `;
}

/** What a line asks for where a conclusion may be accepted; null for anything else. */
export function askedFor(
  line: string,
  weighed: Weighed | null,
): 'take-back' | 'first' | 'instead' | 'accept' | null {
  const word = line.trim().toLowerCase();
  if (word !== 'yes') return word === 'accept' ? 'accept' : null;
  if (weighed?.overturned) return 'take-back';
  if (weighed && betterThanAccepting(weighed)) return 'first';
  return weighed?.instead ? 'instead' : 'accept';
}

/** Whether something is better than to accept. */
export function isBetterKnown(weighed: Weighed | null): weighed is Weighed {
  if (!weighed) return false;
  return Boolean(weighed.overturned ?? weighed.instead ?? betterThanAccepting(weighed));
}
