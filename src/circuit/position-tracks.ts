/** The tracks that a module reads as positions, and which voltages it takes for one. */
import { valuesOf } from './car-quantities.ts';
import { type Circuit, moduleOf, sensorOf } from './circuit.ts';
import { inputOn, joinedTo } from './nets.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import type { Draw } from './plan.ts';
import { referenceVolts } from './reference-volts.ts';
import type { TerminalId } from './test.ts';
import { type SensorValue, type TrackEnds, trackEnds } from './track-ends.ts';

/** A module takes a voltage outside these shares of its reference for a fault: 0.2 V and 4.8 V of 5 V. Common practice, no source. */
const WINDOW_LOW = 0.04;
const WINDOW_HIGH = 0.96;
/** What stands for the reference where the track's feed is no reference of the module. */
const USUAL_REFERENCE_VOLTS = 5;

/** A track whose voltage the module reads, with the reference it is read against. */
export interface ReadTrack {
  /** The module's own pin. */
  readonly pin: TerminalId;
  readonly pinName: string;
  readonly input: TerminalId;
  /** What the module holds as its reference in one draw of the car's values. */
  readonly volts: (value: Draw['value']) => number;
  /** Where its wiper stands in one draw. */
  readonly ends: (value: Draw['value']) => TrackEnds;
}

/** The tracks of a circuit, in the order of its sensor; none where the sensor has none. */
export function readTracks(circuit: Circuit): ReadTrack[] {
  const sensor = sensorOf(circuit);
  if (sensor.kind !== 'potentiometer') return [];
  const module = moduleOf(circuit);
  const drawn = valuesOf(circuit);
  const inCar: SensorValue = (name, of) => {
    const key = drawn(`${sensor.name}.${name}`, of);
    return ({ value }) => value(key);
  };
  return sensor.tracks.flatMap((track) => {
    const { signal, feed } = track;
    const ends = trackEnds(sensor, track, inCar);
    const found = inputOn(circuit, PLAIN_SETUP, `${sensor.name}.${signal}.pin`);
    if (found?.input.kind !== 'levels') return [];
    const fed = joinedTo(circuit, PLAIN_SETUP, `${sensor.name}.${feed}.pin`);
    const reference = module.inside
      .filter((pin) => pin.reference !== null && pin.reference.volts !== 'battery')
      .map((pin) => `${module.name}.${pin.name}.pin`)
      .find((pin) => fed.has(pin));
    return [
      {
        pin: `${found.terminal}.pin`,
        pinName: found.terminal.slice(module.name.length + 1),
        input: found.terminal,
        volts: trackVolts(circuit, reference ?? null),
        ends: (value) => ends({ value }),
      },
    ];
  });
}

/** The module takes these volts for a position; any other it takes for a fault, and goes on with a substitute value. */
export function isPlausible(volts: number, referenceVolts: number): boolean {
  return volts >= WINDOW_LOW * referenceVolts && volts <= WINDOW_HIGH * referenceVolts;
}

/** By the pin of the module's reference that feeds the track, null where it is fed by something else. */
function trackVolts(
  circuit: Circuit,
  reference: TerminalId | null,
): (value: Draw['value']) => number {
  if (reference === null) return () => USUAL_REFERENCE_VOLTS;
  const pin = reference.slice(moduleOf(circuit).name.length + 1, -'.pin'.length);
  const volts = referenceVolts(circuit, pin);
  return (value) => volts(value) ?? USUAL_REFERENCE_VOLTS;
}
