/** What every instrument has to say of itself. One file each stands in `instruments/`, all of them in `instruments.ts`. */
import type { Circuit, Fault } from './circuit.ts';
import type { Element } from './netlist.ts';
import type { Bridge, LOOKS, Meter, Probe, Setup, Shown, TerminalId } from './test.ts';
import type { TestRefusal } from './test-refusal.ts';
import type { Need } from './tools.ts';

/** One fault in one car, null for the sound circuit, and how everything is arranged. */
export interface CarAsked {
  readonly fault: Fault | null;
  readonly setup: Setup;
  /** Number of the car. */
  readonly sample: number;
}

/** What an instrument is read with: the circuit solved, and what the module and the eyes make of it. */
export interface ReadingBench {
  readonly meter: Meter;
  /** What the element of an instrument with leads settles at. */
  readonly settled: (
    asked: CarAsked,
    probe: Extract<Probe, { plus: TerminalId }>,
  ) => { readonly volts: number; readonly amps: number };
  /** How the signal looks on a scope. */
  readonly pattern: (
    asked: CarAsked,
    plus: TerminalId,
    minus: TerminalId,
  ) => (typeof LOOKS.pattern)[number];
  /** Whether the module follows the sensor at an input. */
  readonly follows: (asked: CarAsked, input: TerminalId) => boolean;
  /** Whether eyes and fingers find the fault at a thing. */
  readonly isFound: (asked: CarAsked, thing: string) => boolean;
}

/** An instrument whose probe is `P`. */
export interface Instrument<P extends Probe = Probe> {
  /** What it is between its leads, red lead at a; null where it has none. */
  readonly element: ((a: number, b: number, meter: Meter) => Element) | null;
  /** What it shows. */
  readonly read: (bench: ReadingBench, probe: P, asked: CarAsked) => Shown;
  /** Why it must not or cannot be used so, beyond what holds of its leads; null where it can. */
  readonly refusal: (circuit: Circuit, setup: Setup, probe: P) => TestRefusal | null;
  /** It joins the places of its leads as this clipped in would; null where it takes next to nothing. */
  readonly joinsAs: Bridge['through'] | null;
  /** What has to be at hand. */
  readonly need: Need;
  /** Of the reading itself, as the standard tests have it; common practice, no source. */
  readonly minutes: number;
  /** At a target that stands still it reads one of the two ends, whichever it stopped at. */
  readonly isReadStill: boolean;
  /** It says nothing before the target moves. */
  readonly needsMotion: boolean;
  /** It is read with the key off unless a file says otherwise. */
  readonly isForDeadCircuit: boolean;
  /** A lead put one pin farther on is read all the same, as a number that misleads. */
  readonly canBeMisplaced: boolean;
  readonly words: {
    /** `voltmeter` */
    readonly name: string;
    /** What is held in the hand: `meter`. */
    readonly tool: string;
    /** Where the leads go, in a line: `volts, red at X, black at Y`. */
    readonly line: (probe: P) => string;
    /** The same as sentences, `at` naming a place. */
    readonly say: (probe: P, at: (place: TerminalId) => string) => string;
  };
}

/** Red and black in a line. */
export function inALine(what: string) {
  return ({ plus, minus }: Extract<Probe, { plus: TerminalId }>): string =>
    `${what}, red at ${plus}, black at ${minus}`;
}

/** Nothing speaks against it. */
export const NEVER_REFUSED = (): null => null;
