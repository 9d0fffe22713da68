/** The instruments, by the kind of their probe. What each is stands in its own file. */
import type { Instrument } from './instrument.ts';
import { eyes } from './instruments/eyes.ts';
import { filamentLamp } from './instruments/filament-lamp.ts';
import { ledLight } from './instruments/led-light.ts';
import { liveData } from './instruments/live-data.ts';
import { milliammeter } from './instruments/milliammeter.ts';
import { ohmmeter } from './instruments/ohmmeter.ts';
import { scope } from './instruments/scope.ts';
import { scopeBeside } from './instruments/scope-beside.ts';
import { voltmeter } from './instruments/voltmeter.ts';
import type { Probe } from './test.ts';

/** In the order in which they are offered. */
export const INSTRUMENTS: {
  readonly [K in Probe['kind']]: Instrument<Extract<Probe, { kind: K }>>;
} = {
  volts: voltmeter,
  ohms: ohmmeter,
  light: ledLight,
  lamp: filamentLamp,
  pattern: scope,
  timing: scopeBeside,
  amps: milliammeter,
  counts: liveData,
  inspect: eyes,
};

/** All kinds of probe, in that order. */
export const PROBE_KINDS = Object.keys(INSTRUMENTS) as readonly Probe['kind'][];

/** The instrument of a probe: how it is solved, read, refused and worded. */
export function instrumentOf<P extends Probe>({ kind }: P): Instrument<P> {
  // The table has for each kind the instrument of that kind.
  return INSTRUMENTS[kind] as unknown as Instrument<P>;
}
