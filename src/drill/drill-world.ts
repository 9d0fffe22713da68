/** What is hidden in a drill: the vehicle, and the suspects that it is judged by. Made when first needed. */
import { judgingSuspects } from '../session/choose-suspects.ts';
import type { SessionOpened } from '../session/events.ts';
import { modelFor } from '../session/session-model.ts';
import type { SuspectSpace } from '../session/suspect-space.ts';
import { createVehicle, type HiddenVehicle } from './drill-vehicle.ts';
import type { Hash } from './hidden-fault.ts';

/** Both sides of a drill: what answers, and what judges. */
export interface DrillWorld {
  readonly vehicle: HiddenVehicle;
  /** The suspects of its session, with what is wrong surely among them. */
  readonly judge: () => SuspectSpace;
}

/**
 * The world of a drill; null for a session that is none, and when its circuit has no fault for its level. It is judged
 * over the model that its session thinks with, so what was worked out there is not worked out again.
 */
export function createWorld(opened: SessionOpened, hash: Hash): DrillWorld | null {
  const { circuit, meter } = opened;
  if (opened.vehicle.kind !== 'drill' || !circuit) return null;
  const { level, seed } = opened.vehicle;
  const vehicle = createVehicle({ circuit, meter, level, seed }, hash);
  if (!vehicle) return null;
  let judge: SuspectSpace | undefined;
  return {
    vehicle,
    judge: () => {
      judge ??= judgingSuspects(modelFor(circuit, meter), opened, vehicle.hidden.answer.faults);
      return judge;
    },
  };
}
