/** Which volts are impossible in a vehicle, by its battery: what lies beyond is a slip of the fingers. */
import type { Circuit } from '../../circuit/circuit.ts';

/** More than the charging voltage by this factor cannot be in the vehicle; coils of sensors are looked at with a scope. */
const IMPOSSIBLE_FACTOR = 1.5;
/** Batteries are called by whole threes of cells, and hold nine tenths of that even when they are low. Common practice. */
const CELLS_VOLTS = 6;
const LEAST_CHARGE = 0.9;

/** Volts beyond which nothing in a vehicle with this battery can be, and why. */
export function voltageLimits(circuit: Circuit) {
  const high = Math.ceil(circuit.battery.running.high * IMPOSSIBLE_FACTOR);
  return {
    low: -high,
    high,
    because: `this vehicle has a ${systemVolts(circuit)} V system`,
  };
}

/** 6, 12, 24: what the battery is called by. */
function systemVolts({ battery }: Circuit): number {
  return CELLS_VOLTS * Math.max(1, Math.floor(battery.rest.low / (CELLS_VOLTS * LEAST_CHARGE)));
}
