/** One vehicle of the bench: its values, and what is wrong with it. */
import type { Drawing } from './drawing.ts';

/** What an input is pulled to. */
export type PullTo = 'reference' | 'own' | 'battery' | 'ground' | 'none';

/** What is wrong, with its size in ohms or as a share. */
export type Trouble =
  | { readonly kind: 'wire-open'; readonly wire: string }
  | { readonly kind: 'wire-resistive'; readonly wire: string; readonly ohms: number }
  /** `to` is `mass` (the body), `battery`, or another wire by its name. */
  | {
      readonly kind: 'wire-short';
      readonly wire: string;
      readonly to: string;
      readonly ohms: number;
    }
  /** Two wires end in each other's place at the sensor. */
  | { readonly kind: 'wires-swapped'; readonly wires: readonly [string, string] }
  | { readonly kind: 'contact-open'; readonly terminal: string }
  | { readonly kind: 'contact-resistive'; readonly terminal: string; readonly ohms: number }
  | {
      readonly kind: 'sensor';
      readonly mode: SensorMode;
      readonly track: string;
      readonly size: number;
    }
  | {
      readonly kind: 'module';
      readonly mode: ModuleMode;
      readonly pin: string;
      readonly size: number;
    }
  | {
      readonly kind: 'part';
      readonly part: string;
      readonly mode: 'open' | 'resistive' | 'shorted';
      readonly ohms: number;
    }
  | {
      readonly kind: 'wheel';
      readonly mode: 'damaged' | 'displaced' | 'gap-wide' | 'missing';
      /** Of a wide gap: share of the swing that is left; under 0.5 a switch stops, above it misses teeth. */
      readonly size: number;
    };

export type SensorMode =
  | 'dead'
  | 'stuck-low'
  | 'stuck-high'
  | 'weak-pull-down'
  | 'shorted'
  | 'coil-open'
  | 'shorted-turns'
  | 'coil-resistive'
  | 'leads-swapped'
  | 'track-open'
  | 'wiper-open'
  | 'worn-spot';
export type ModuleMode =
  | 'driver-dead'
  | 'reference-dead'
  | 'reference-low'
  | 'pull-missing'
  | 'input-dead'
  | 'ground-open';

/** A fault of a vehicle. */
export interface CarFault {
  readonly id: string;
  readonly trouble: Trouble;
  /** Any of these repairs mends it. */
  readonly mends: readonly string[];
  /** Whether the circuit file has a fault of this id. */
  readonly inFile: boolean;
  /** What can be looked at to see it, and the chance that it is seen. */
  readonly subject: readonly string[];
  readonly visibleChance: number;
}

/** Comes and goes; null for a fault that is always there. */
export interface Fleeting {
  /** Chance that it is there at a look. */
  readonly present: number;
  /** Chance that moving or warming the right thing wakes it. */
  readonly woken: number;
}

export interface Car {
  readonly drawing: Drawing;
  /** SI values by name, e.g. `signal.pull`. */
  readonly values: Readonly<Record<string, number>>;
  /** What each input is pulled to, by pin. */
  readonly pulls: Readonly<Record<string, PullTo>>;
  /** The module feeds battery voltage through a switch, instead of a voltage of its own. */
  readonly feedsBattery: boolean;
  readonly faults: readonly CarFault[];
  readonly fleeting: Fleeting | null;
  /** Fuses that the fault has blown. */
  readonly isFuseBlown: boolean;
  /** The relay did not close as the key was turned. */
  readonly isRelayReleased: boolean;
}

/** A value that every car of this circuit has. */
export function valueIn(
  { values, drawing }: Pick<Car, 'values' | 'drawing'>,
  name: string,
): number {
  const value = values[name];
  if (value === undefined) throw new Error(`cars: ${drawing.circuit} has no value "${name}"`);
  return value;
}

/** The same car with nothing wrong. */
export function healthyTwin(car: Car): Car {
  return { ...car, faults: [], fleeting: null, isFuseBlown: false, isRelayReleased: false };
}
