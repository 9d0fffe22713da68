/** Joins the circuit's model and the ranking of suspects to what a session needs of them. */
import type { Model } from '../circuit/model.ts';
import type { Thinker } from './thinker.ts';

/** A thinker over `model`. */
export function createThinker(_model: Model): Thinker {
  return {
    suspects: () => ({ rows: [], changed: null, unexplained: null }),
    nextTests: () => [],
    weigh: () => ({ evidence: [], ruledOut: [], proven: false, missing: 3, wouldProve: [] }),
  };
}
