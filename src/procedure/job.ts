/** The job sheet: one vehicle with one complaint. Everything but the complaint may be missing. */

/** `not-stated` until somebody says it: no drive is assumed. */
export const DRIVES = ['combustion', 'hybrid', 'electric', 'not-stated'] as const;
export type Drive = (typeof DRIVES)[number];

export interface Job {
  readonly name: string;
  readonly complaint: string;
  readonly codes: readonly string[];
  readonly vehicle: {
    readonly words: string;
    readonly vin: string;
    readonly plate: string;
    readonly odometer: string;
    readonly drive: Drive;
  };
  /** Where the sensor sits, as it is written: `exhaust camshaft bank 2`, `right rear wheel`; absent where the codes say it. */
  readonly position?: string;
  readonly order: string;
  readonly customer: string;
  readonly earlierRepairs: readonly EarlierRepair[];
  /** Pins and wire colours of this vehicle, by terminal. */
  readonly terminals: Readonly<Record<string, JobTerminal>>;
  /** What is known of this car, as it is written; absent where nothing is. */
  readonly known?: readonly KnownSaid[];
  /** Connectors, splices and wires of this car's harness, as they are written; absent where nothing is. */
  readonly harness?: readonly HarnessSaid[];
  readonly notes: string;
}

/**
 * One thing of the harness: a `connector` or `splice` by where it is ("at the bulkhead"), which wires pass it, how far along
 * from the sensor's plug, and the minutes to get at it; or a `wire` by its name, with its length and size.
 */
export interface HarnessSaid {
  readonly connector?: string;
  readonly splice?: string;
  readonly wire?: string;
  readonly wires?: readonly string[];
  readonly at?: string;
  readonly minutes?: number;
  readonly length?: string;
  readonly size?: string;
}

/** `battery at rest`, `12.4 V`, `measured`: see `known-values.ts` and `known-words.ts`. */
export interface KnownSaid {
  readonly what: string;
  readonly is: string;
  readonly from: string;
}

/** Work done before, in words; `part` when a part of the circuit was replaced, e.g. `sensor`. */
export interface EarlierRepair {
  readonly words: string;
  readonly part: string | null;
}

/** `colour` in the letters of IEC 60757, base colour first: `RD/BU`. */
export interface JobTerminal {
  readonly pin: string;
  readonly colour: string;
}

/** A job with nothing but a complaint. */
export function emptyJob(complaint: string): Job {
  return {
    name: '',
    complaint,
    codes: [],
    vehicle: { words: '', vin: '', plate: '', odometer: '', drive: 'not-stated' },
    order: '',
    customer: '',
    earlierRepairs: [],
    terminals: {},
    notes: '',
  };
}
