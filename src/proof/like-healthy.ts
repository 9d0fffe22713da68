/** Faults that end at "no fault found" because no instrument tells them from a healthy circuit, as a finding. */
import type { Issue } from '../source/issue.ts';
import { provedFault } from './lost-cars.ts';
import type { ProofFacts } from './proof-facts.ts';
import { listed, sharePercent } from './proof-words.ts';
import { sourceLocation } from './source-location.ts';

/** Less of a fault than this is its mildest form, which no tolerance leaves room to see. Our choice. */
const LIKE_HEALTHY_MIN = 0.05;

/** One warning for each conclusion that says nothing was found, with the faults that come to it unseen. */
export function likeHealthyIssues({ linked, ways }: ProofFacts): Issue[] {
  const byEnd = new Map<string, Map<string, number>>();
  for (const { fault, share, verdict, end } of ways) {
    if (verdict !== 'inseparable') continue;
    const shares = byEnd.get(end.step) ?? new Map<string, number>();
    byEnd.set(end.step, shares.set(fault, share + (shares.get(fault) ?? 0)));
  }
  return [...byEnd].flatMap(([end, shares]): Issue[] => {
    const told = [...shares].filter(([, share]) => share >= LIKE_HEALTHY_MIN);
    if (told.length === 0) return [];
    const all = told.map(([fault, share]) => `${provedFault(fault)} (${sharePercent(share)})`);
    return [
      {
        code: 'like-healthy',
        severity: 'warning',
        at: sourceLocation(linked, end, ['conclude']),
        words: `no instrument tells ${listed(all)} from a healthy circuit, so "${end}" is where ${told.length === 1 ? 'it ends' : 'they end'}`,
        fix: 'let the text there say what may still be wrong, or give the fault a size that is measurable',
        notes: told.length > 3 ? all : [],
      },
    ];
  });
}
