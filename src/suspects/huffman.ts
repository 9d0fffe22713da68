/** Lower bounds on how many tests it takes to tell things of given chances apart. */

/**
 * Expected length of the best code words over `ways` letters for things of these weights (D. A. Huffman, 1952). With
 * tests of at most `ways` outcomes no strategy that tells all things apart needs fewer tests on average. Weights need
 * not sum to 1; the result is then scaled alike.
 */
export function huffmanLength(weights: readonly number[], ways = 2): number {
  if (!(ways >= 2)) throw new Error('huffman: a test has at least two outcomes');
  const sorted = weights.filter((weight) => weight > 0).sort((a, b) => a - b);
  // Things of no weight fill up, so that each merge can take as many as there are letters.
  const missing = (ways - 1 - ((sorted.length - 1) % (ways - 1))) % (ways - 1);
  const merged: number[] = [];
  let left = 0;
  let taken = 0;
  let length = 0;
  let alive = sorted.length;
  let take = ways - missing;
  while (alive > 1) {
    let sum = 0;
    for (let k = 0; k < take; k += 1) {
      const fromLeaves = sorted[left] ?? Infinity;
      const fromMerged = merged[taken] ?? Infinity;
      if (fromLeaves <= fromMerged) {
        sum += fromLeaves;
        left += 1;
      } else {
        sum += fromMerged;
        taken += 1;
      }
    }
    merged.push(sum);
    length += sum;
    alive -= take - 1;
    take = ways;
  }
  return length;
}
