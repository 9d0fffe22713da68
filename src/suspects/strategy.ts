/** A strategy: which test to do, and what next after each outcome, down to what is then known. */
import type { Cases } from './cases.ts';
import type { Node } from './strategy-search.ts';

/** A test with what follows each of its outcomes, or the conclusion that ends it. */
export type Strategy =
  | {
      readonly kind: 'test';
      /** Number of the test in the table. */
      readonly test: number;
      /** Minutes of this test at this point, with all that it takes to get there. */
      readonly minutes: number;
      readonly branches: readonly { readonly outcome: string; readonly next: Strategy }[];
    }
  | {
      readonly kind: 'conclude';
      /** Chance of ending here, among all ways through. */
      readonly chance: number;
      /** Repairs that remain, likeliest first; more than one when no test separates them. */
      readonly repairs: readonly { readonly repair: string; readonly chance: number }[];
      /** Candidates that remain, by number. */
      readonly candidates: readonly number[];
    };

/** The best strategy found below a node of a search. */
export function readStrategy(node: Node, cases: Cases): Strategy {
  if (!node.best) return readConclusion(node, cases);
  const { test, minutes, outcomes, children } = node.best;
  return {
    kind: 'test',
    test: cases.tests[test]!,
    minutes,
    branches: children.map((child, index) => ({
      outcome: cases.outcomes[test]!.specs[outcomes[index]!]!.id,
      next: readStrategy(child, cases),
    })),
  };
}

function readConclusion(node: Node, cases: Cases): Strategy {
  const byRepair = new Map<string, number>();
  const candidates = new Set<number>();
  for (const one of node.cases) {
    const repair = cases.repairs[cases.repairOf[one]!]!;
    byRepair.set(repair, (byRepair.get(repair) ?? 0) + cases.weight[one]! / node.weight);
    for (const candidate of cases.candidates[one]!) candidates.add(candidate);
  }
  const repairs = [...byRepair]
    .map(([repair, chance]) => ({ repair, chance }))
    .sort((a, b) => b.chance - a.chance);
  return {
    kind: 'conclude',
    chance: node.weight / cases.mass,
    repairs,
    candidates: [...candidates].sort((a, b) => a - b),
  };
}

/** Expected minutes of a strategy: each end's minutes times its chance. */
export function expectedMinutes(strategy: Strategy): number {
  let total = 0;
  let chances = 0;
  const walk = (at: Strategy, minutes: number): void => {
    if (at.kind === 'conclude') {
      total += at.chance * minutes;
      chances += at.chance;
    } else for (const { next } of at.branches) walk(next, minutes + at.minutes);
  };
  walk(strategy, 0);
  return chances > 0 ? total / chances : 0;
}
