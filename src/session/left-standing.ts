/**
 * Which of the faults that a conclusion names the readings leave standing. What counts is how far the readings alone moved
 * each, beside the one that they moved most: a rare fault is not excluded by being rare.
 */
import type { Ranking } from '../suspects/rank-suspects.ts';
import type { SuspectSpace } from './suspect-space.ts';

/** A fault that the readings moved by less than this part of what they moved another of the same conclusion is excluded. Our choice, as for repairs. */
const EXCLUDED_PART = 0.02;

/** Those of `faults`, in their order. */
export function leftStanding(
  space: SuspectSpace,
  { chances }: Ranking,
  faults: readonly string[],
): readonly string[] {
  const moved = new Map<string, number>();
  for (const [at, { id }] of space.table.candidates.entries()) {
    const ratio = chances[at]! / space.prior[at]!;
    if (Number.isNaN(ratio)) continue;
    for (const fault of space.faultsOf(id))
      if (faults.includes(fault)) moved.set(fault, Math.max(ratio, moved.get(fault) ?? 0));
  }
  const most = Math.max(...moved.values());
  return faults.filter((id) => (moved.get(id) ?? most) >= EXCLUDED_PART * most);
}
