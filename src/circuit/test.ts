/**
 * One test as the circuit model understands it: how the vehicle and the leads are arranged, and which
 * instrument looks at what. Procedures write it in YAML, drills choose it by hand, the solver answers it.
 */

/** States in which an instrument is read. */
export const TEST_STATES = ['key-off', 'key-on', 'cranking', 'running'] as const;
/** Who drives reads nothing, so a road test has no leads and no probe. */
export const VEHICLE_STATES = [...TEST_STATES, 'driving'] as const;
export type VehicleState = (typeof VEHICLE_STATES)[number];

/** A place for a lead, `part.pin`: the harness side of a connector, `sensor.feed`. `sensor.feed.pin` is the part's own pin. */
export type TerminalId = string;

/** Something clipped between two terminals for the length of a test. */
export interface Bridge {
  readonly from: TerminalId;
  readonly to: TerminalId;
  /** A plain lead, the LED test light, the filament test lamp, or a resistor of so many ohms. */
  readonly through: 'lead' | 'test-light' | 'lamp' | { readonly ohms: number };
}

/** How everything is arranged before the instrument is read. */
export interface Setup {
  readonly state: VehicleState;
  /** Names of parts whose connector is off: `sensor`, `module`, a neighbour. Sorted, no repeats. */
  readonly unplugged: readonly string[];
  readonly bridges: readonly Bridge[];
  /** Which sensor is plugged in: the vehicle's own, or one known to be good. */
  readonly sensor: 'fitted' | 'spare';
  /** The target passes the sensor (by cranking, running, by hand or with a magnet), or it stands still. */
  readonly target: 'still' | 'moving';
}

/** Instruments with digits, and the unit each shows: a meter by its functions. */
export const UNIT_OF = { volts: 'V', ohms: 'ohm', amps: 'A' } as const;
export type NumberKind = keyof typeof UNIT_OF;
export type MeterUnit = (typeof UNIT_OF)[NumberKind];

/** What an instrument without digits shows. One list per kind of probe, from best to worst. */
export const LOOKS = {
  light: ['lit', 'dim', 'dark'],
  lamp: ['lit', 'dim', 'dark'],
  pattern: ['full', 'weak', 'uneven', 'flat-high', 'flat-middle', 'flat-low'],
  counts: ['follows', 'still'],
  timing: ['in-step', 'shifted', 'no-signal'],
  inspect: ['sound', 'faulty'],
} as const;
export type LookProbe = keyof typeof LOOKS;
export type Look = (typeof LOOKS)[LookProbe][number];

/** Instruments with a red and a black lead: a meter, a light, a lamp, a scope. */
export type LeadKind = NumberKind | Exclude<LookProbe, 'counts' | 'inspect'>;

/** What is read. Lead order is red (plus), black (minus). */
export type Probe =
  | {
      [K in LeadKind]: { readonly kind: K; readonly plus: TerminalId; readonly minus: TerminalId };
    }[LeadKind]
  /** Whether the module's own live data follows the signal at this input. */
  | { readonly kind: 'counts'; readonly input: TerminalId }
  /** Eyes and fingers on a thing: a part, a connector, a wire, the target. */
  | { readonly kind: 'inspect'; readonly of: string };
/** A probe whose instrument has digits: volts, ohms or amperes. */
export type NumberProbe = Extract<Probe, { kind: NumberKind }>;

/** One test: how things stand, and what looks where. */
export interface Test {
  readonly setup: Setup;
  readonly probe: Probe;
  /** Harness and connectors are moved while the instrument is watched; absent where they are left alone. */
  readonly wiggle?: true;
}

/** What an instrument shows: a number in the unit of a meter (`Infinity` is its OL), or a look. */
export type Shown =
  | { readonly kind: 'number'; readonly value: number; readonly unit: MeterUnit }
  | { readonly kind: 'look'; readonly look: Look };

/** A meter's stated accuracy: +/-(fraction of reading + counts of the last digit), with its ranges. */
export interface Meter {
  readonly name: string;
  readonly inputOhms: number;
  readonly volts: MeterFunction;
  readonly ohms: MeterFunction;
  /** Left out where nothing is known of it: then it is an ordinary one (`meter-units.ts`). */
  readonly amps?: MeterFunction;
}

/** One function of a meter as its specification states it. */
export interface MeterFunction {
  /** Full scale of each range in the function's unit, rising; above the last the meter shows OL. */
  readonly ranges: readonly number[];
  /** Counts of the display at full scale, e.g. 6000. */
  readonly counts: number;
  /** Fraction of the reading, e.g. 0.005. */
  readonly ofReading: number;
  /** Counts of the last digit, e.g. 3. */
  readonly digits: number;
}
