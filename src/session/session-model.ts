/** The model that a session computes with: the same for everybody, so that results can be compared and replayed. */
import type { Circuit } from '../circuit/circuit.ts';
import { createModel, type Model } from '../circuit/model.ts';
import type { Meter } from '../circuit/test.ts';
import { handInModels } from './step-here.ts';

/** Cars of a session's model, as many as a tree is proved over, so that its limits are those that were proved; and their seed. */
export const SESSION_SAMPLES = 256;
export const SESSION_SEED = 1;
/** Models that are kept, the last ones used: the library's circuits and a few cars of which values are known. */
const MODELS_KEPT = 8;

const models = new Map<string, Model>();

/** The model of a circuit under a meter; the same one when asked again soon. */
export function modelFor(circuit: Circuit, meter: Meter): Model {
  const key = keyOf(circuit, meter);
  const model =
    models.get(key) ??
    createModel(circuit, { samples: SESSION_SAMPLES, seed: SESSION_SEED, meter });
  models.delete(key);
  models.set(key, model);
  const [oldest] = models.keys();
  if (models.size > MODELS_KEPT && oldest !== undefined) models.delete(oldest);
  return model;
}

const keys = new WeakMap<Circuit, Map<Meter, string>>();

/** Written out once for the same two objects. */
function keyOf(circuit: Circuit, meter: Meter): string {
  const known = keys.get(circuit) ?? new Map<Meter, string>();
  keys.set(circuit, known);
  const key = known.get(meter) ?? JSON.stringify([circuit, meter]);
  known.set(meter, key);
  return key;
}

handInModels(modelFor);
