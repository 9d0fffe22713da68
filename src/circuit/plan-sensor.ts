/** The sensor as elements at its own pins, whole or with its own failure, fitted or a good spare. */
import type { Toleranced } from '../quantity/quantity.ts';
import type { SensorPart } from './circuit.ts';
import type { Warmth } from './copper-warmth.ts';
import type { Draw, PartEffect, Plan } from './plan.ts';
import { sensorKindOf } from './sensors.ts';
import type { Setup } from './test.ts';

/** Adds the sensor at its own pins. `own` is its failure; a spare has average values and none. */
export function addSensor(
  { plan, setup, warmth }: { readonly plan: Plan; readonly setup: Setup; readonly warmth: Warmth },
  sensor: SensorPart,
  own: PartEffect | null,
  spare: boolean,
): void {
  const built = (name: string, of: Toleranced) => {
    const value = plan.value(`${sensor.name}.${name}`, of);
    return (draw: Pick<Draw, 'value'>): number => draw.value(value);
  };
  sensorKindOf(sensor).add({
    ...{ sensor, plan, setup, own, built },
    pin: (name: string): number => plan.node(`${sensor.name}.${name}.pin`),
    // A known-good spare is an average one.
    reader: (name: string, of: Toleranced) => (spare ? () => of.nominal : built(name, of)),
    warmth: spare ? () => 1 : warmth,
  });
}
