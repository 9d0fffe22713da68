/** What a run was worth. */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import { HEALTHY } from '../../../src/suspects/prediction-table.ts';
import type { DrawnCar } from './draw-car.ts';
import type { SessionEnd } from './session-run.ts';

export interface Scored {
  /**
   * The repair mends the car, or one of a group of at most three does; a whole car is left alone, or "nothing wrong" leads
   * such a group. Of two faults at once it mends one, which is faulty as told; the test after the repair finds the other.
   */
  readonly right: boolean;
  readonly rightAlone: boolean;
  readonly wrong: boolean;
  readonly wrongSure: boolean;
  readonly provenRight: boolean;
  readonly provenWrong: boolean;
  readonly healthyRepaired: boolean;
  readonly unended: boolean;
  /** Repairs that were told. */
  readonly repairs: readonly string[];
  /** Chances stated for the leading repair, and whether it was the right one; `after` 0 is at the end. */
  readonly stated: readonly {
    readonly after: number;
    readonly chance: number;
    readonly right: boolean;
  }[];
}

const GROUP_MAX = 3;
const SURE_ABOVE = 0.8;

export function scoreOf({ car }: DrawnCar, end: SessionEnd, circuit: Circuit): Scored {
  const repairs = end.group ?? repairsOf(end.faults ?? [], circuit);
  const isWhole = car.faults.length === 0;
  const mends = (repair: string) => car.faults.some((fault) => fault.mends.includes(repair));
  const ended = end.faults !== null;
  const isLeftAlone = repairs.length === 0 || repairs[0] === HEALTHY;
  const holds = isWhole ? isLeftAlone : repairs.some(mends);
  const right = ended && holds && repairs.length <= GROUP_MAX;
  const chance = repairs.reduce((sum, repair) => sum + (end.chances[repair] ?? 0), 0);
  const wrong = ended && !right;
  const known = new Set(circuit.faults.map(({ repair }) => repair));
  return {
    right,
    rightAlone: right && repairs.length <= 1,
    wrong,
    wrongSure: wrong && repairs.length > 0 && chance > SURE_ABOVE,
    provenRight: right && end.proven,
    provenWrong: wrong && end.proven,
    healthyRepaired: ended && isWhole && !isLeftAlone,
    unended: !ended,
    repairs,
    stated: end.stated.map(({ after, repair, chance: stated }) => ({
      after,
      chance: stated,
      right: isWhole ? !known.has(repair) : mends(repair),
    })),
  };
}

function repairsOf(faults: readonly string[], circuit: Circuit): string[] {
  const found = faults.flatMap((id) => circuit.faults.find((one) => one.id === id)?.repair ?? []);
  return [...new Set(found)];
}
