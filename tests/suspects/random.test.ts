/**
 * The random numbers. Expected ones come from a separate implementation in Python: the published step of xoshiro128**
 * (Blackman and Vigna, 2018), which from the state 1, 2, 3, 4 gave 11520, 0, 5927040, 70819200 as the test vector of
 * another library has it (from memory), and the finaliser of MurmurHash3, which turns 1 into 0x514e28b7.
 */
import { describe, expect, test } from 'vitest';
import { randomOf } from '../../src/suspects/random.ts';

const WORD = 2 ** 32;
const words = (count: number, ...seeds: number[]) => {
  const random = randomOf(...seeds);
  return Array.from({ length: count }, () => random.unit() * WORD);
};

describe('random numbers', () => {
  test.each<[number[], number[]]>([
    [[], [1292791899, 1284423797, 2013314966, 3703690653]],
    [[1], [827157198, 3014995183, 810536009, 2625213254]],
    [
      [1, 2],
      [3690420848, 2205507920, 585111908, 1228052427],
    ],
    [
      [2, 1],
      [3166972848, 2802676329, 1534671221, 3950728199],
    ],
    [[-7], [3113168190, 2403726792, 1826790415, 1624441648]],
  ])('of the seeds %j begin with %j', (seeds, expected) => {
    expect(words(4, ...seeds)).toEqual(expected);
  });

  test('are even: as many in each of 16 parts as chance gives', () => {
    const random = randomOf(5);
    const counts = new Array<number>(16).fill(0);
    for (let i = 0; i < 16_000; i += 1) counts[random.below(16)]! += 1;
    // Pearson's test with 15 degrees of freedom: above 37.7 in one case of a thousand (chi-squared tables)
    const chiSquared = counts.reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0);
    expect(chiSquared).toBeLessThan(37.7);
  });

  test('do not follow each other: neighbours, and those of neighbouring seeds, are uncorrelated', () => {
    const correlation = (one: readonly number[], other: readonly number[]) =>
      one.reduce((sum, x, at) => sum + (x / WORD - 0.5) * (other[at]! / WORD - 0.5), 0) /
      (one.length / 12);
    const [list, next] = [words(10_001, 3), words(10_000, 4)];
    // By chance a normal with a deviation of 1 / sqrt(10,000); four of them
    expect(Math.abs(correlation(list.slice(1), list.slice(0, -1)))).toBeLessThan(0.04);
    expect(Math.abs(correlation(next, list.slice(0, -1)))).toBeLessThan(0.04);
  });
});
