/** How warm the copper of a car is, which nobody measures: a cold start or an engine bay after a long climb. */
import type { Toleranced } from '../quantity/quantity.ts';
import { copperRise } from '../quantity/wire.ts';
import type { Draw } from './plan.ts';

/** Coldest and hottest copper that a car comes with, in degC. Common practice, no source. */
const COLDEST = -20;
const HOTTEST = 110;

/** How many times its resistance at the file's temperature copper has in a draw; 1 in the nominal one. */
export type Warmth = (draw: Draw) => number;

/** Wires and coil are taken to be equally warm. `celsius` is the temperature that the circuit file names. */
export function copperWarmth(celsius: number): Warmth {
  const range = temperatureAround(celsius);
  return (draw) => copperRise(celsius, draw.value('temperature', range));
}

/** Colder than the file says as often as hotter, each evenly. */
export function temperatureAround(celsius: number): Toleranced {
  const low = Math.min(COLDEST, celsius);
  const high = Math.max(HOTTEST, celsius);
  const between = (from: number, to: number): Toleranced => ({
    nominal: (from + to) / 2,
    low: from,
    high: to,
    unit: 'degC',
  });
  return {
    ...{ nominal: celsius, low, high, unit: 'degC' },
    oneOf: [
      { chance: 0.5, value: between(low, celsius) },
      { chance: 0.5, value: between(celsius, high) },
    ],
  };
}
