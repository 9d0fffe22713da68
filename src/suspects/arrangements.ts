/** How things can stand at the vehicle, numbered, and what each test costs from each: worked out once, then looked up. */
import type { Moves } from './case-measures.ts';
import type { TableTest } from './prediction-table.ts';
import { type CostModel, type Situation, situationAfter, testCost } from './test-cost.ts';

/** The moves among arrangements for a search, by place in `tests`; `start` is number 0. From -1 only the reading counts. */
export function arrangements(
  tests: readonly TableTest[],
  start: Situation,
  costs: CostModel,
  helper: boolean,
): Moves {
  const situations: Situation[] = [start];
  const numbers = new Map<string, number>([[keyOf(start), 0]]);
  const moves: { place: number; minutes: number }[][] = [];
  return (place, test) => {
    const asked = tests[test]!;
    if (place < 0) return { place, minutes: asked.minutes };
    moves[place] ??= [];
    const row = moves[place]!;
    const known = row[test];
    if (known) return known;
    const now = situations[place]!;
    const after = situationAfter(asked, now);
    const key = keyOf(after);
    let number = numbers.get(key);
    if (number === undefined) {
      number = situations.push(after) - 1;
      numbers.set(key, number);
    }
    const move = { place: number, minutes: testCost(asked, now, costs, helper).minutes };
    row[test] = move;
    return move;
  };
}

function keyOf({ state, unplugged, reached, arrangement }: Situation): string {
  return JSON.stringify([state, [...unplugged].sort(), [...reached].sort(), arrangement]);
}
