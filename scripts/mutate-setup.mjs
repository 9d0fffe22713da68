/** A mutant must be noticed in every run or in none, and the smallest example of it helps nobody. */
import fc from 'fast-check';

fc.configureGlobal({ seed: 7, endOnFailure: true });
