/** Proposed tests by words that differ. A procedure may give one title to two tests; then each says where and how it looks. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Job } from '../procedure/job.ts';
import { instrumentWords, setupWords, whereWords } from '../procedure/test-words.ts';
import type { Proposal } from './advisor.ts';

/** The proposals in their order; those that share their words with another say more. */
export function toldApart(proposals: readonly Proposal[], job: Job, circuit: Circuit): Proposal[] {
  return proposals.map((one) => {
    const isTwin = proposals.some((other) => other !== one && other.words === one.words);
    if (!isTwin) return one;
    const { probe, setup } = one.test;
    const where = whereWords(probe, job, circuit);
    const standing = setupWords(setup, job, circuit);
    return { ...one, words: `${one.words}: ${where}, ${instrumentWords(probe)} (${standing})` };
  });
}
