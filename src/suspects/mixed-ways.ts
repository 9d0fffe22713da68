/** What a car shows on which something is there by chance, and on which else the sound circuit is seen. */
import type { Shown } from '../circuit/test.ts';
import type { Way } from './fact.ts';
import { pick } from './stand-in.ts';

/** The two that are mixed; each is asked for only where it counts. */
export interface Mixed {
  /** Of its being there, 0 to 1. */
  readonly chance: number;
  readonly there: () => readonly Way[];
  readonly sound: () => readonly Way[];
}

/** All ways, those of what is there first. */
export function mixedWays({ chance, there, sound }: Mixed): readonly Way[] {
  if (chance === 1) return there();
  if (chance === 0) return sound();
  return [...scaled(there(), chance), ...scaled(sound(), 1 - chance)];
}

/** The way at the share `at` of them all, 0 to 1: only that part is worked out. */
export function pickMixed({ chance, there, sound }: Mixed, at: number): Shown {
  const way =
    at < chance ? pick(there(), at / chance) : pick(sound(), (at - chance) / (1 - chance));
  return way.shown;
}

function scaled(ways: readonly Way[], by: number): Way[] {
  return ways.map(({ shown, share }) => ({ shown, share: by * share }));
}
