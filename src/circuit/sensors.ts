/** The kinds of sensor. What each is stands in its own file. */
import type { SensorPart } from './circuit.ts';
import type { SensorKind } from './sensor-kind.ts';
import { currentSwitch } from './sensors/current-switch.ts';
import { hallSwitch } from './sensors/hall-switch.ts';
import { potentiometer } from './sensors/potentiometer.ts';
import { reluctor } from './sensors/reluctor.ts';

/** By the kind of their part. */
export const SENSORS: {
  readonly [K in SensorPart['kind']]: SensorKind<Extract<SensorPart, { kind: K }>>;
} = {
  'hall-switch': hallSwitch,
  reluctor,
  potentiometer,
  'current-switch': currentSwitch,
};

/** What the program knows of sensors of this kind. */
export function sensorKindOf<P extends SensorPart>({ kind }: P): SensorKind<P> {
  // The table has for each kind of part the kind of sensor that it is.
  return SENSORS[kind] as unknown as SensorKind<P>;
}
