/**
 * The yardstick: the plan with the fewest expected minutes, followed on the very vehicle the student had. Where a
 * reading falls beside the plan, and where the plan ends before one repair leads, the most telling test goes on.
 */
import type { Shown, Test } from '../circuit/test.ts';
import type { SuspectSpace } from '../session/suspect-space.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { AT_THE_START } from '../suspects/optimum.ts';
import { outcomeShown } from '../suspects/outcomes.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import type { Strategy } from '../suspects/strategy.ts';
import { ALL_MEANS, COSTS, situationAfter, testCost } from '../suspects/test-cost.ts';
import { WORTH_DOING_BITS } from '../suspects/verdict.ts';
import type { HiddenVehicle } from './drill-vehicle.ts';

/** One test of the plan as it went on this vehicle. */
export interface YardstickStep {
  readonly test: Test;
  readonly words: string;
  readonly found: string;
  readonly minutes: number;
}

/** How the best plan fared on the student's own vehicle. */
export interface Yardstick {
  readonly steps: readonly YardstickStep[];
  readonly minutes: number;
  /** The repair it ends with. */
  readonly repair: string;
  readonly chance: number;
  /** That repair, and those that no test left tells from it on this vehicle. */
  readonly group: readonly string[];
  /** Minutes that the plan takes on average over all faults. */
  readonly expectedMinutes: number;
}

/** Surer than this the job is done; short of it another test follows while one tells something. */
export const SURE_ENOUGH = 0.95;
/** More tests than any circuit has ways to be wrong. */
const STEPS_MAX = 30;
/** So that a circuit that looks healthy all over is no division by nothing. */
const TINY = 1e-9;

/** Follows the best plan to its end. */
export function followYardstick(space: SuspectSpace, vehicle: HiddenVehicle): Yardstick {
  const plan = space.plan();
  let at: Strategy | null = plan.strategy;
  let now = AT_THE_START;
  const readings: Reading[] = [];
  const steps: YardstickStep[] = [];
  for (;;) {
    const ranking = space.rank(readings);
    const leader = leaderOf(ranking);
    const sure = leader.chance >= SURE_ENOUGH && ranking.explained;
    const planned: number | null = at?.kind === 'test' ? at.test : null;
    const verdict = () => space.verdict({ readings, ranking, means: ALL_MEANS });
    const place =
      sure || steps.length >= STEPS_MAX || (planned === null && verdict().settled)
        ? null
        : (planned ?? mostTelling(space, { readings, ranking, now, means: ALL_MEANS }));
    const entry = place === null ? null : space.testAt(place);
    if (place === null || !entry || entry.test === null) {
      const minutes = steps.reduce((sum, step) => sum + step.minutes, 0);
      return { steps, minutes, ...leader, group: verdict().group, expectedMinutes: plan.minutes };
    }
    const { test, words } = entry;
    const answer = vehicle.answers(test, readings.length);
    const { minutes } = testCost(entry, now, COSTS, ALL_MEANS.helper);
    steps.push({ test, words, found: answer.words, minutes });
    now = situationAfter(entry, now);
    readings.push({ test: place, shown: answer.shown });
    at = at?.kind === 'test' && planned !== null ? branchOf(at, space, answer.shown) : null;
  }
}

/** The leading repair, and its chance in a vehicle in which something is surely wrong. */
function leaderOf({ repairs }: Ranking): { readonly repair: string; readonly chance: number } {
  const leader = repairs.find(({ repair }) => repair !== HEALTHY);
  const healthy = repairs.find(({ repair }) => repair === HEALTHY)?.chance ?? 0;
  return {
    repair: leader?.repair ?? '',
    chance: (leader?.chance ?? 0) / Math.max(1 - healthy, TINY),
  };
}

function mostTelling(
  space: SuspectSpace,
  standing: Parameters<SuspectSpace['propose']>[0],
): number | null {
  const best = space.propose(standing).best.find(({ bits }) => bits >= WORTH_DOING_BITS);
  return best?.test ?? null;
}

function branchOf(
  at: Extract<Strategy, { kind: 'test' }>,
  space: SuspectSpace,
  shown: Shown,
): Strategy | null {
  const outcome = outcomeShown(space.outcomes()(at.test).specs, shown);
  return at.branches.find((branch) => branch.outcome === outcome?.id)?.next ?? null;
}
