/** Text as it is searched: no case, no accents, wide forms as narrow ones. */

const ASCII = /^[\x00-\x7f]*$/;

/** Lower case without marks; one line. */
export function foldText(text: string): string {
  const plain = ASCII.test(text) ? text : text.normalize('NFKD').replace(/\p{M}/gu, '');
  return plain.toLowerCase().replace(/\s+/g, ' ').trim();
}

/** Letters and digits only, for plates and numbers that everyone spaces differently. */
export function foldSigns(text: string): string {
  return foldText(text).replace(/[^\p{L}\p{N}]/gu, '');
}

/** The words of a folded text. */
export function wordsOf(folded: string): string[] {
  return folded.match(/[\p{L}\p{N}]+/gu) ?? [];
}
