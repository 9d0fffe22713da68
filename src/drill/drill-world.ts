/** What is hidden in a drill: the vehicle, and the suspects that it is judged by. Made when first needed. */
import type { Circuit } from '../circuit/circuit.ts';
import { createModel, type Model } from '../circuit/model.ts';
import type { Meter } from '../circuit/test.ts';
import { judgingSuspects } from '../session/choose-suspects.ts';
import type { SessionOpened } from '../session/events.ts';
import type { SuspectSpace } from '../session/suspect-space.ts';
import { createVehicle, type HiddenVehicle } from './drill-vehicle.ts';
import type { Hash } from './hidden-fault.ts';

export interface DrillWorld {
  readonly vehicle: HiddenVehicle;
  /** The suspects of its session, with what is wrong surely among them. */
  readonly judge: () => SuspectSpace;
}

/** Models of circuits, so that the drills of a class share them and what was worked out over them. */
export type WorldStore = Map<string, Model>;

/** As a session has them, so that both think the same: of more samples none is looked at. */
const SAMPLES = 32;
const SEED = 1;

/** The world of a drill; null for a session that is none, and when its circuit has no fault for its level. */
export function createWorld(
  opened: SessionOpened,
  hash: Hash,
  store: WorldStore = new Map(),
): DrillWorld | null {
  const { circuit, meter } = opened;
  if (opened.vehicle.kind !== 'drill' || !circuit) return null;
  const { level, seed } = opened.vehicle;
  const vehicle = createVehicle({ circuit, meter, level, seed }, hash);
  if (!vehicle) return null;
  let judge: SuspectSpace | undefined;
  return {
    vehicle,
    judge: () => {
      judge ??= judgingSuspects(modelOf(circuit, meter), opened, vehicle.hidden.answer.faults);
      return judge;
    },
  };

  function modelOf(of: Circuit, by: Meter): Model {
    const name = hash(JSON.stringify([of, by]));
    const model = store.get(name) ?? createModel(of, { samples: SAMPLES, seed: SEED, meter: by });
    store.set(name, model);
    return model;
  }
}
