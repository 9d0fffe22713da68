/** A number of things as people say it. */

/** `1 reading`, `2 readings`; for nouns whose plural only takes an s. */
export function countWords(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
