/** What every kind of sensor has to say of itself. One file each stands in `sensors/`, all of them in `sensors.ts`. */
import type { Fault, SensorPart } from './circuit.ts';
import type { Warmth } from './copper-warmth.ts';
import type { PartEffect, Plan } from './plan.ts';
import type { Probe, Setup } from './test.ts';
import type { Lead } from './test-list.ts';
import type { Need } from './tools.ts';
import type { SensorValue } from './track-ends.ts';

/** A value that every sensor of a kind has. */
export interface PlainValue {
  /** What it is: `supply current`. */
  readonly said: string;
  readonly unit: 'V' | 'A' | 'ohm';
  /** What holds where a file does not say it. */
  readonly usual: string;
  /** Its key in a file, where that is another one. */
  readonly key?: string;
}

/** A sensor that is being added to a plan. */
export interface Adding<P extends SensorPart> {
  readonly sensor: P;
  readonly plan: Plan;
  readonly setup: Setup;
  /** The sensor's failure, null for none. */
  readonly own: PartEffect | null;
  /** Its ground is lost, or at another pin: it may stand above what the output stands at. */
  readonly isLifted: boolean;
  /** Node of one of the sensor's own pins. */
  readonly pin: (name: string) => number;
  /** How a value of the sensor is read from a draw, by the name it has in `car-quantities.ts`; a spare that fits is alike. */
  readonly reader: SensorValue;
  /** Of its copper. A spare comes from the shelf and is as warm as its data say. */
  readonly warmth: Warmth;
}

/** A test at the sensor itself, with what stands beside it. */
export interface OwnTest {
  readonly id: string;
  readonly words: string;
  readonly minutes: number;
  readonly probe: Probe;
  readonly needs: readonly Need[];
  readonly setup: Partial<Setup>;
}

/** All that the program has to know of one kind of sensor: pins, values, failures, elements and tests. */
export interface SensorKind<P extends SensorPart = SensorPart> {
  /** Its pins; null where its file names them. */
  readonly pins: readonly string[] | null;
  /** In the order in which a car has them; null where its file has values of its own. */
  readonly values: Readonly<Record<string, PlainValue>> | null;
  /** It is fed, and ohms at its pins say nothing and can damage it. */
  readonly hasElectronics: boolean;
  /** Its output is on or off, wherever the target stops. */
  readonly isSwitched: boolean;
  /** Its own failures. */
  readonly faults: (sensor: P) => Fault[];
  /** What it is to the solver. */
  readonly add: (adding: Adding<P>) => void;
  /** Tests at the sensor itself; `leads` are its wires, `module` what they lead to. */
  readonly tests: (
    sensor: P,
    at: { readonly leads: readonly Lead[]; readonly module: string },
  ) => readonly OwnTest[];
  /** Nominal current, for sums about its wires. */
  readonly amps: (sensor: P) => number;
}
