/** What a conclusion is to be corroborated with. */
import type { ErrorModel } from './error-model.ts';
import type { Reading } from './likelihood.ts';
import type { Outcomes } from './outcomes.ts';
import type { Ranking } from './rank-suspects.ts';
import type { CostModel, Means, Situation } from './test-cost.ts';

/** A conclusion with the readings and the means at hand. */
export interface CorroborationAsk {
  /** Ids of the faults that the conclusion stands for. */
  readonly concluded: readonly string[];
  readonly readings: readonly Reading[];
  readonly ranking: Ranking;
  /** Chances before any reading, as the ranking had them. */
  readonly prior?: Float64Array;
  readonly outcomes: (test: number) => Outcomes;
  readonly now: Situation;
  readonly means: Means;
  /** Tests that are not to be offered. */
  readonly without?: readonly number[];
  readonly costs?: CostModel;
  readonly errorModel?: ErrorModel;
}
