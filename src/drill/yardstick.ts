/**
 * The yardstick: the plan with the fewest expected minutes, followed on the very vehicle the student had. Where a
 * reading falls beside the plan, and where the plan ends before one repair leads, the most telling test goes on.
 */
import type { Shown } from '../circuit/test.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { AT_THE_START } from '../suspects/optimum.ts';
import type { OutcomeSpec } from '../suspects/outcomes.ts';
import type { Strategy } from '../suspects/strategy.ts';
import { COSTS, type Situation, situationAfter, testCost } from '../suspects/test-cost.ts';
import type { DrillMind } from './drill-mind.ts';
import type { DrillVehicle } from './drill-vehicle.ts';

export interface YardstickStep {
  readonly words: string;
  readonly found: string;
  readonly minutes: number;
}

export interface Yardstick {
  readonly steps: readonly YardstickStep[];
  readonly minutes: number;
  /** The repair it ends with. */
  readonly repair: string;
  readonly chance: number;
  /** Minutes that the plan takes on average over all faults. */
  readonly expectedMinutes: number;
}

/** Surer than this the job is done; short of it another test follows while one tells something. */
export const SURE_ENOUGH = 0.95;
/** More tests than any circuit has ways to be wrong. */
const STEPS_MAX = 30;
/** A test that tells less than this, in bits, is not worth its minutes. */
const WORTH_BITS = 0.01;

/** Follows the best plan to its end. */
export function followYardstick(
  mind: DrillMind,
  vehicle: DrillVehicle,
  earlierRepair: string | null,
): Yardstick {
  const plan = mind.plan(earlierRepair);
  let at: Strategy | null = plan.strategy;
  let now: Situation = AT_THE_START;
  const readings: Reading[] = [];
  const steps: YardstickStep[] = [];
  for (;;) {
    const ranking = mind.rank(readings, earlierRepair);
    const [leader] = ranking.repairs;
    const sure = leader !== undefined && leader.chance >= SURE_ENOUGH && ranking.explained;
    const planned: number | null = at?.kind === 'test' ? at.test : null;
    const test =
      sure || steps.length >= STEPS_MAX
        ? null
        : (planned ?? mostTelling(mind, readings, ranking, now));
    if (test === null) {
      const minutes = steps.reduce((sum, step) => sum + step.minutes, 0);
      return {
        steps,
        minutes,
        repair: leader?.repair ?? '',
        chance: leader?.chance ?? 0,
        expectedMinutes: plan.minutes,
      };
    }
    const known = mind.tests[test]!;
    const { shown, words } = vehicle.answers(known.test, readings.length);
    steps.push({
      words: known.words,
      found: words,
      minutes: testCost(known, now, COSTS, false).minutes,
    });
    now = situationAfter(known, now);
    readings.push({ test, shown });
    at = at?.kind === 'test' && planned !== null ? branchOf(at, mind, shown) : null;
  }
}

function mostTelling(
  mind: DrillMind,
  readings: readonly Reading[],
  ranking: ReturnType<DrillMind['rank']>,
  now: Situation,
): number | null {
  const best = mind.propose(readings, ranking, now).best.find(({ bits }) => bits >= WORTH_BITS);
  return best?.test ?? null;
}

function branchOf(
  at: Extract<Strategy, { kind: 'test' }>,
  mind: DrillMind,
  shown: Shown,
): Strategy | null {
  const spec = mind.outcomes(at.test).specs.find((one) => holds(one, shown));
  return at.branches.find(({ outcome }) => outcome === spec?.id)?.next ?? null;
}

function holds(spec: OutcomeSpec, shown: Shown): boolean {
  if (spec.kind === 'looks') return shown.kind === 'look' && spec.looks.includes(shown.look);
  if (shown.kind === 'look') return false;
  return shown.value >= spec.from && (shown.value < spec.below || spec.below === Infinity);
}
