/** What came of keeping captures as known-good ones, a line each. */
import { isProblem, type Problem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import type { KeptGood } from '../app-services.ts';

/** Where they are kept, and why others are not. */
export function keptWords(done: KeptGood | Problem): string[] {
  if (isProblem(done)) return [`Nothing was kept: ${done.problem}; ${done.fix}.`];
  return [
    ...done.kept.map(
      (path) => `Kept as known-good for "${safeText(done.vehicle)}": ${safeText(path)}`,
    ),
    ...done.left.map((why) => `Not kept: ${why}.`),
  ];
}
