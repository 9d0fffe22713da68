/** Parts of sentences as sentences. */

/** With a capital at its beginning. */
export function sentenceStart(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

/** With a capital and an end. */
export function sentence(words: string): string {
  return `${sentenceStart(words)}${/[.?!]["']?$/.test(words) ? '' : '.'}`;
}

/** Why something was not done, and the way out where there is one, as sentences. */
export function refusalSentences({
  words,
  fix,
}: {
  readonly words: string;
  readonly fix: string;
}): string {
  return [words, fix]
    .filter((part) => part !== '')
    .map(sentence)
    .join(' ');
}
