/** The job sheet: one vehicle with one complaint. Everything but the complaint may be missing. */

/** `not-stated` until somebody says it: no drive is assumed. */
export const DRIVES = ['combustion', 'hybrid', 'electric', 'not-stated'] as const;
export type Drive = (typeof DRIVES)[number];

/** How a module keeps a trouble code: it stands now, was seen once and waits to be seen again, or stood some time ago. */
export const CODE_STATES = ['stored', 'pending', 'history'] as const;
export type CodeState = (typeof CODE_STATES)[number];

/** When a fault shows. */
export const HAPPENS = ['always', 'cold', 'hot', 'wet', 'bumps', 'cranking'] as const;
export type Happens = (typeof HAPPENS)[number];

/** What was fitted for a part: a new one by its maker's number, one from another vehicle, one of another make. */
export const FITTED = ['new', 'second-hand', 'other-make'] as const;
export type Fitted = (typeof FITTED)[number];

/** What earlier work changed of the complaint. */
export const EFFECTS = ['nothing', 'for-a-while', 'cured'] as const;
export type RepairEffect = (typeof EFFECTS)[number];

/** One vehicle with one complaint, as the person wrote it down before the first test. */
export interface Job {
  readonly name: string;
  readonly complaint: string;
  readonly codes: readonly string[];
  /** How the module keeps each of the codes, by code; absent where nobody said it of any. */
  readonly codeStates?: Readonly<Record<string, CodeState>>;
  readonly vehicle: {
    readonly words: string;
    readonly vin: string;
    readonly plate: string;
    readonly odometer: string;
    readonly drive: Drive;
  };
  /** Where the sensor sits, as it is written: `exhaust camshaft bank 2`, `right rear wheel`; absent where the codes say it. */
  readonly position?: string;
  /** Where the maker states that the edges stand in the turn of the other signal, as it is written; absent where nobody said it. */
  readonly stands?: string;
  readonly order: string;
  readonly customer: string;
  readonly earlierRepairs: readonly EarlierRepair[];
  /** What was told and seen before anything was touched; absent where nothing was. */
  readonly circumstances?: Circumstances;
  /** Pins and wire colours of this vehicle, by terminal. */
  readonly terminals: Readonly<Record<string, JobTerminal>>;
  /** What is known about this car, as it is written; absent where nothing is. */
  readonly known?: readonly KnownSaid[];
  /** Connectors, splices and wires of this car's harness, as they are written; absent where nothing is. */
  readonly harness?: readonly HarnessSaid[];
  /** What shares feed, ground or plug with the sensor; empty where nothing does, absent where nobody said it. */
  readonly shares?: readonly ShareSaid[];
  readonly notes: string;
}

/**
 * One thing of the harness: a `connector` or `splice` by where it is ("at the bulkhead"), which wires pass it, how far along
 * from the sensor's connector, and the minutes to get at it; or a `wire` by its name, with its length and size.
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

/** What a neighbour and the sensor can both have; `reference` is a feed by the name that makers use for 5 V. */
export const SHARED = ['feed', 'reference', 'ground', 'plug'] as const;
export type Shared = (typeof SHARED)[number];
/** What is told of whether it works. */
export const SHARE_WORKS = ['works', 'fails', 'not-known'] as const;
export type ShareWorks = (typeof SHARE_WORKS)[number];

/** A neighbour on this car, as it is written; `how` it is known whether it works, and the open level of a `sister`'s signal. */
export interface ShareSaid {
  readonly name: string;
  readonly shares: readonly Shared[];
  readonly works?: ShareWorks;
  readonly how?: string;
  readonly sister?: string;
}

/** `battery at rest`, `12.4 V`, `measured`: see `known-values.ts` and `known-words.ts`. */
export interface KnownSaid {
  readonly what: string;
  readonly is: string;
  readonly from: string;
}

/** Work done before, in words; `part` when a part of the circuit was replaced, e.g. `sensor`. What nobody said is absent. */
export interface EarlierRepair {
  readonly words: string;
  readonly part: string | null;
  readonly fitted?: Fitted;
  readonly changed?: RepairEffect;
}

/** Each answer is absent where it was not given. */
export interface Circumstances {
  readonly happens?: readonly Happens[];
  /** What else does not work since then, in words; `nothing` where all else does. */
  readonly failsWithIt?: string;
  /** Work on the vehicle before the complaint began: a bearing, a belt, the engine out, an accident. */
  readonly recentWork?: string;
  /** What eyes find without touching anything. */
  readonly seen?: string;
  /** What the module kept of the moment, line by line. */
  readonly freezeFrame?: readonly string[];
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
