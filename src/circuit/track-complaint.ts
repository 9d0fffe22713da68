/**
 * What a module makes of position tracks: whether every voltage is one that a track can give, whether the position
 * follows, drops out or jumps, and whether two tracks of one sensor tell the same position.
 */
import { type Circuit, effectsOf, type Fault } from './circuit.ts';
import { type InputLevels, type LevelsIn, levelsIn } from './input-levels.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import { isPlausible, type ReadTrack, readTracks } from './position-tracks.ts';
import { isInputDead } from './read-instrument.ts';
import type { SampleSolver } from './sample-solver.ts';
import { FREE_POINT } from './samples.ts';
import type { Setup, TerminalId } from './test.ts';

/** Two tracks further apart than this share of their travel no longer agree. Common practice, no source. */
export const TRACKS_APART = 0.1;
/** A drop-out of this share of the travel is noticed; common practice, no source. */
const DROP_OUT = 0.1;
/** Half-way travel this far from half-way, as a share of the travel, is a jump. */
const JUMP = 0.25;
/** Rest, half-way and fully moved. */
const TRAVELS = [0, 0.5, 1] as const;
/** Cars at points of no sequence are kept below this number, those of the sequence from 0 up. */
const LOOSE_CARS = -10;
/** Healthy cars kept for the next fault. */
const CARS_MAX = 1024;
const MOVING: Setup = { ...PLAIN_SETUP, target: 'moving' };

/** A healthy car: voltages at the inputs of all tracks at rest, half-way and fully moved. */
interface Healthy {
  readonly volts: readonly (readonly number[])[];
  /** Of each track. */
  readonly referenceVolts: readonly number[];
  readonly levels: readonly InputLevels[];
}

/**
 * Whether a module notices a fault by the position tracks of one circuit, compared with the same car's healthy ones.
 */
export class TrackComplaint {
  private readonly solver: SampleSolver;
  private readonly tracks: readonly ReadTrack[];
  private readonly places: readonly TerminalId[];
  private readonly levels: readonly LevelsIn[];
  /** By the number of the car. */
  private readonly healthy = new Map<number, Healthy>();
  private loose: { readonly taken: number; readonly healthy: Healthy } | null = null;

  constructor(circuit: Circuit, solver: SampleSolver) {
    this.solver = solver;
    this.tracks = readTracks(circuit);
    this.places = this.tracks.map(({ pin }) => pin);
    this.levels = this.tracks.map(({ input }) => levelsIn(circuit, input, MOVING.state)!);
  }

  /** How many tracks the module reads; none where the sensor has no tracks. */
  get count(): number {
    return this.tracks.length;
  }

  /** The healthy car's voltages are plausible and its position follows. */
  works(sample: number): boolean {
    const { volts, referenceVolts, levels } = this.healthyOf(sample);
    return this.tracks.every(
      (_, at) =>
        volts.every((each) => isPlausible(each[at]!, referenceVolts[at]!)) &&
        crosses(levels[at]!, volts[0]![at]!, volts[2]![at]!),
    );
  }

  /** The module notices this fault; `car` numbers the healthy car where only the size of the fault is another one. */
  complains(fault: Fault, sample: number, car?: number): boolean {
    if (this.tracks.some(({ pinName }) => isInputDead(fault, pinName))) return true;
    const {
      volts: healthy,
      referenceVolts,
      levels,
    } = this.healthyOf(car === undefined ? sample : LOOSE_CARS - car, sample);
    const spans = this.tracks.map((_, at) => healthy[2]![at]! - healthy[0]![at]!);
    const volts: (readonly number[])[] = [];
    for (const [step, travel] of TRAVELS.entries()) {
      const now = this.voltsAt(fault, travel, false, sample);
      if (now.some((one, at) => !isPlausible(one, referenceVolts[at]!))) return true;
      const off = now.map((one, at) => (one - healthy[step]![at]!) / spans[at]!);
      if (Math.max(...off) - Math.min(...off) > TRACKS_APART) return true;
      volts.push(now);
    }
    // Only a worn spot has the wiper anywhere but on the track.
    const worn = isWorn(fault) ? this.voltsAt(fault, 0.5, true, sample) : volts[1]!;
    return this.tracks.some((_, at) => {
      const [rest, half, moved] = volts.map((each) => each[at]!);
      const span = spans[at]!;
      return (
        !crosses(levels[at]!, rest!, moved!) ||
        // A signal that falls where it should rise.
        (moved! - rest!) / span <= 0 ||
        Math.abs(half! - (rest! + moved!) / 2) > JUMP * Math.abs(span) ||
        Math.abs(half! - worn[at]!) > DROP_OUT * Math.abs(span)
      );
    });
  }

  private healthyOf(car: number, sample = car): Healthy {
    if (car === FREE_POINT) return this.looseHealthy();
    const known = this.healthy.get(car);
    if (known) return known;
    if (this.healthy.size >= CARS_MAX) this.healthy.clear();
    const made = this.look(sample);
    this.healthy.set(car, made);
    return made;
  }

  /** Of the point that was taken last: whether it works and what it shows is asked one after the other. */
  private looseHealthy(): Healthy {
    const taken = this.solver.taken();
    if (this.loose?.taken !== taken) this.loose = { taken, healthy: this.look(FREE_POINT) };
    return this.loose.healthy;
  }

  private look(sample: number): Healthy {
    const value = this.solver.valueOf(sample);
    return {
      volts: TRAVELS.map((travel) => this.voltsAt(null, travel, false, sample)),
      referenceVolts: this.tracks.map(({ volts }) => volts(value)),
      levels: this.levels.map((levels) => levels(value)),
    };
  }

  /** Voltage at the input of each track. */
  private voltsAt(
    fault: Fault | null,
    travel: number,
    onSpot: boolean,
    sample: number,
  ): readonly number[] {
    const instant = { on: false, swing: 0, travel, onSpot };
    return this.solver.voltsOf(fault, MOVING, this.places, instant, sample);
  }
}

function isWorn(fault: Fault): boolean {
  return effectsOf(fault).some((one) => one.kind === 'part' && one.mode === 'worn-spot');
}

function crosses({ lowBelow, highAbove }: InputLevels, rest: number, moved: number): boolean {
  return Math.min(rest, moved) < lowBelow && Math.max(rest, moved) > highAbove;
}
