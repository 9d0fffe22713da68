/** Chance from a seed: the same on every machine, in whole numbers only. */

/** An even number from 0 up to 1 that belongs to a seed and a few words (FNV-1a, then the finaliser of MurmurHash3). */
export function chanceOf(seed: number, words: string): number {
  let hash = 0x811c9dc5 ^ seed;
  for (const letter of words) hash = Math.imul(hash ^ letter.codePointAt(0)!, 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return ((hash ^ (hash >>> 16)) >>> 0) / 0x1_0000_0000;
}

/** One of `list` by weight; `at` is from 0 up to 1. */
export function pickByWeight<T>(list: readonly T[], weightOf: (one: T) => number, at: number): T {
  const total = list.reduce((sum, one) => sum + weightOf(one), 0);
  let left = at * total;
  for (const one of list) {
    left -= weightOf(one);
    if (left < 0) return one;
  }
  const last = list[list.length - 1];
  if (last === undefined) throw new Error('chance: nothing to pick from');
  return last;
}
