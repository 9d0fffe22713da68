/** Which of several ways stands for a car when tests are planned, evenly over all cars. */
import type { Way } from './fact.ts';

/** Even over 0 to 1, whatever the order of the samples means (golden ratio; Richtmyer, 1951). */
export function evenShare(sample: number): number {
  return ((sample + 1) * 0.6180339887498949) % 1;
}

/** The way at the share `at` of them all, 0 to 1. */
export function pick(ways: readonly Way[], at: number): Way {
  let left = at;
  for (const way of ways) {
    left -= way.share;
    if (left < 0) return way;
  }
  return ways.at(-1)!;
}
