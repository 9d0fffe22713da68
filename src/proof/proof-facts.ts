/** What is known of a tree once each of its ways was walked: what the findings of the proof are made of. */
import type { Model } from '../circuit/model.ts';
import type { LinkedProcedure } from '../procedure/link-procedure.ts';
import type { discriminatingTests } from './discriminating-tests.ts';
import type { JudgedWay, judgeOf } from './judge-ways.ts';
import type { CarTeller } from './lost-cars.ts';

/** What the finders of issues look at. */
export interface ProofFacts {
  readonly linked: LinkedProcedure;
  readonly model: Model;
  readonly ways: readonly JudgedWay[];
  readonly judge: ReturnType<typeof judgeOf>;
  readonly discriminating: ReturnType<typeof discriminatingTests>;
  readonly teller: CarTeller;
}
