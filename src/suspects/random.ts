/**
 * Even random numbers from a seed, the same on every machine: xoshiro128** (Blackman and Vigna, 2018), its state filled
 * by the finaliser of MurmurHash3 (Appleby, public domain). Whole numbers only, so no rounding can differ.
 */

/** A stream of random numbers from one seed. */
export interface Random {
  /** An even number from 0 up to 1. */
  readonly unit: () => number;
  /** A whole number from 0 up to `count`. */
  readonly below: (count: number) => number;
}

/** Numbers that belong to a list of whole numbers: a seed and where in the work they are drawn. */
export function randomOf(...seeds: readonly number[]): Random {
  let mixed = 0x9e3779b9;
  for (const seed of seeds) mixed = finalised(mixed ^ Math.imul(seed | 0, 0x01000193));
  const state = Uint32Array.from({ length: 4 }, (_, place) =>
    finalised(mixed + Math.imul(place + 1, 0x9e3779b9)),
  );
  const next = (): number => {
    const s0 = state[0]!;
    const s1 = state[1]!;
    const s2 = state[2]!;
    const s3 = state[3]!;
    const result = Math.imul(rotated(Math.imul(s1, 5), 7), 9) >>> 0;
    const t = s1 << 9;
    state[2] = s2 ^ s0;
    state[3] = s3 ^ s1;
    state[1] = s1 ^ state[2]!;
    state[0] = s0 ^ state[3]!;
    state[2] = state[2]! ^ t;
    state[3] = rotated(state[3]!, 11);
    return result;
  };
  const unit = () => next() / 0x1_0000_0000;
  return { unit, below: (count) => Math.floor(unit() * count) };
}

function rotated(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

function finalised(word: number): number {
  let h = word >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
