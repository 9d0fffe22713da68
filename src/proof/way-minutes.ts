/** What a way through a tree takes: each test from how the one before it left the vehicle, as anywhere else. */
import { testKey } from '../circuit/test-key.ts';
import { type Procedure, stepOf } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { AT_THE_START } from '../suspects/optimum.ts';
import {
  ALL_MEANS,
  COSTS,
  type Situation,
  situationAfter,
  testCost,
} from '../suspects/test-cost.ts';
import type { TestEntry } from '../suspects/test-entries.ts';
import type { TreeWay } from './walk-faults.ts';

/**
 * Minutes of ways from how things stand at `start`, in the costs of `entries`, the table of tests; of a step that reads
 * nothing, its author's.
 */
export function minutesOfWays(
  procedure: Procedure,
  entries: readonly TestEntry[],
  start: Situation = AT_THE_START,
): (way: Pick<TreeWay, 'visits'>) => number {
  const byKey = new Map(entries.map((entry) => [entry.key, entry]));
  return ({ visits }) => {
    let now = start;
    let minutes = 0;
    for (const { step: id } of visits) {
      const step = stepOf(procedure, id);
      if (step.kind === 'conclude') continue;
      const test = testOf(step);
      const entry = test ? byKey.get(testKey(test)) : undefined;
      if (!entry) {
        minutes += step.minutes;
        continue;
      }
      minutes += testCost(entry, now, COSTS, ALL_MEANS.helper).minutes;
      now = situationAfter(entry, now);
    }
    return minutes;
  };
}
