/** Repairs that belong together as one sentence, so that a pair is not read as two rivals. */
export function repairsWords(repairs: readonly string[]): string {
  const [first = '', ...others] = repairs;
  return others.reduce((all, one) => `${all.replace(/\.$/, '')}, and ${begunSmall(one)}`, first);
}

/** A name that begins with several capitals keeps them. */
function begunSmall(sentence: string): string {
  return /^\p{Lu}\p{Lu}/u.test(sentence)
    ? sentence
    : `${sentence.slice(0, 1).toLowerCase()}${sentence.slice(1)}`;
}
