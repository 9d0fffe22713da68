/** Which faults go which way through a proved tree, in words for a drawing. */
import { HEALTHY } from '../suspects/prediction-table.ts';
import { sharePercent } from './proof-words.ts';
import type { TreeWay } from './walk-faults.ts';

/** Shares closer to all than this are all. */
const WHOLE = 1 - 1e-9;

/** Looks up what leaves a step by an outcome: `wire.feed.open`, `sensor.dead 40 %`, `a healthy circuit`. */
export function passingOf(ways: readonly TreeWay[]): (step: string, outcome: string) => string[] {
  const shares = new Map<string, Map<string, number>>();
  for (const { fault, share, visits } of ways) {
    const seen = new Set<string>();
    for (const { step, outcome } of visits) {
      const key = `${step} ${outcome ?? ''}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const byFault = shares.get(key) ?? new Map<string, number>();
      shares.set(key, byFault.set(fault, (byFault.get(fault) ?? 0) + share));
    }
  }
  return (step, outcome) =>
    [...(shares.get(`${step} ${outcome}`) ?? [])].map(([fault, share]) => {
      const name = fault === HEALTHY ? 'a healthy circuit' : fault;
      return share >= WHOLE ? name : `${name} ${sharePercent(share)}`;
    });
}
