/** A caution that was read, in short. */
import type { Caution } from './procedure.ts';

/** Its signal word and its first sentence. */
export function inShort(caution: Pick<Caution, 'word' | 'say'>): string {
  return `${caution.word}: ${firstSentence(caution)}`;
}

/** The first sentence of a caution; all of it where it is only one. */
export function firstSentence({ say }: Pick<Caution, 'say'>): string {
  return /^.*?[.!?](?=\s|$)/s.exec(say)?.[0] ?? say;
}
