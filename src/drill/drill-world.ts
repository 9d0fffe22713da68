/** Everything that follows from a drill's first event: the vehicle, and what can be known about it. Made when first needed. */
import type { CautionRule } from '../procedure/cautions.ts';
import type { DrillMeasured, DrillOpened } from './drill-events.ts';
import { createMind, type DrillMind } from './drill-mind.ts';
import { createVehicle, type DrillVehicle } from './drill-vehicle.ts';
import type { Hash } from './hidden-fault.ts';

export interface DrillWorld {
  readonly vehicle: DrillVehicle;
  readonly cautions: readonly CautionRule[];
  /** For the ranking while the drill goes on: knows nothing of the answer. */
  readonly mind: (measured: readonly DrillMeasured[]) => DrillMind;
  /** For the debrief: of two faults the true pair is surely among those looked at. */
  readonly judge: (measured: readonly DrillMeasured[]) => DrillMind;
}

/** Minds by circuit, meter and level, so that a class of drills shares one. */
export type MindStore = Map<string, DrillMind>;

/** The world of a drill; null when the circuit has no fault for its level. */
export function createWorld(
  opened: Pick<DrillOpened, 'circuit' | 'meter' | 'level' | 'seed'>,
  hash: Hash,
  cautions: readonly CautionRule[] = [],
  store: MindStore = new Map(),
): DrillWorld | null {
  const vehicle = createVehicle(opened, hash);
  if (!vehicle) return null;
  const { circuit, meter, level } = opened;
  const name = hash(JSON.stringify([circuit, meter, level]));
  const mindWith = (truth: readonly string[]) => {
    const key = [name, ...truth].join(' ');
    const found = store.get(key) ?? createMind(opened, truth);
    store.set(key, found);
    return found;
  };
  const judging = () => {
    const common = mindWith([]);
    const { modelId, answer } = vehicle.hidden;
    const isKnown = common.table.candidates.some(({ id }) => id === modelId);
    return isKnown ? common : mindWith(answer.faults);
  };
  return {
    vehicle,
    cautions,
    mind: (measured) => mindWith([]).knowing(measured),
    judge: (measured) => judging().knowing(measured),
  };
}
