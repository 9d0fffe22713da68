/** Numbers for the bench that are the same on every machine: they belong to a few words. */

/** Even numbers from 0 up to 1, one a call. */
export type Random = () => number;

/** The numbers that belong to `words` (xmur3 and mulberry32, both public domain, from memory). */
export function seeded(words: string): Random {
  let hash = 1779033703 ^ words.length;
  for (let index = 0; index < words.length; index += 1) {
    hash = Math.imul(hash ^ words.charCodeAt(index), 3432918353);
    hash = (hash << 13) | (hash >>> 19);
  }
  let state = hash >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Evenly between the two. */
export function between(random: Random, low: number, high: number): number {
  return low + (high - low) * random();
}

/** Evenly in the logarithm; both ends positive. */
export function logBetween(random: Random, low: number, high: number): number {
  return low * (high / low) ** random();
}

/** One of a list, each as likely as the other. */
export function oneOf<T>(random: Random, list: readonly T[]): T {
  const found = list[Math.floor(random() * list.length)];
  if (found === undefined) throw new Error('seeded: nothing to choose from');
  return found;
}

/** One of a list by weight. */
export function byWeight<T>(random: Random, list: readonly T[], weightOf: (one: T) => number): T {
  let left = random() * list.reduce((sum, one) => sum + weightOf(one), 0);
  for (const one of list) {
    left -= weightOf(one);
    if (left < 0) return one;
  }
  const last = list.at(-1);
  if (last === undefined) throw new Error('seeded: nothing to choose from');
  return last;
}
