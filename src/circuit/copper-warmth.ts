/** How warm the copper of a car is, which nobody measures: a cold start or an engine bay after a long climb. */
import { copperRise } from '../quantity/wire.ts';
import { temperatureAround } from './open-values.ts';
import type { Draw, Plan } from './plan.ts';

/** How many times its resistance at the file's temperature copper has in a draw; 1 in the nominal one. */
export type Warmth = (draw: Draw) => number;

/** Wires and coil are taken to be equally warm. `celsius` is the temperature that the circuit file names. */
export function copperWarmth(plan: Pick<Plan, 'value'>, celsius: number): Warmth {
  const temperature = plan.value('temperature', temperatureAround(celsius));
  return (draw) => copperRise(celsius, draw.value(temperature));
}
