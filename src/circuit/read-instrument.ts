/** What an instrument shows under one fault in one tolerance sample: digits, a light, the picture of a signal, what the module makes of it. */
import {
  type Circuit,
  effectsOf,
  type Fault,
  moduleOf,
  type SensorPart,
  sensorOf,
} from './circuit.ts';
import { isTarget } from './fault-electrics.ts';
import { hangsOnTheCar, type InputLevels, type LevelsIn, levelsIn } from './input-levels.ts';
import type { ReadingBench } from './instrument.ts';
import { instrumentOf } from './instruments.ts';
import { inputOn } from './nets.ts';
import { PLAIN_SETUP, plainSetup } from './plain-setup.ts';
import { isPlausible, type ReadTrack, readTracks } from './position-tracks.ts';
import type { SampleSolver } from './sample-solver.ts';
import { FREE_POINT, NOMINAL, type Samples } from './samples.ts';
import type { Meter, Setup, Shown, TerminalId, Test } from './test.ts';
import { MARKS } from './timing-marks.ts';

/** A signal that moves less than this share of the healthy swing, or less than this voltage, is flat. */
export const FLAT_SHARE = 0.05;
export const FLAT_VOLTS = 0.02;
/** A flat line in the lowest quarter of the healthy swing is low, in the highest high. */
export const FLAT_QUARTER = 0.25;
/** Below this share of the healthy swing a signal without thresholds of its own is weak. */
export const WEAK_SHARE = 0.55;
/** A drop-out is seen when it is this share of the healthy swing. */
const DROP_OUT_SHARE = 0.1;
/** Half-way travel this far from half-way voltage, as a share of the swing, is a jump. */
const JUMP_SHARE = 0.25;

/** The two ends of a signal, in volts. */
interface SignalEnds {
  readonly low: number;
  readonly high: number;
}

/** Reads any instrument in the cars of one circuit, whole or with a fault; keeps what was solved. */
export class InstrumentReader implements ReadingBench {
  private readonly circuit: Circuit;
  private readonly solver: SampleSolver;
  readonly meter: Meter;
  private readonly draws: Samples;
  private readonly tracks: readonly ReadTrack[];
  private readonly inputs = new Map<TerminalId, TerminalId | null>();
  /** By input and state. */
  private readonly levels = new Map<string, LevelsIn | null>();
  /** Levels of the healthy signal, which every sample of a pattern is held against. */
  private readonly good = new Map<string, SignalEnds>();
  /** The same object for a setup, since rigs are found by it. */
  private readonly plain = new WeakMap<Setup, Setup>();

  constructor(circuit: Circuit, solver: SampleSolver, meter: Meter, draws: Samples) {
    this.circuit = circuit;
    this.solver = solver;
    this.tracks = readTracks(circuit);
    this.meter = meter;
    this.draws = draws;
  }

  /** `fault` null is the healthy circuit, `sample` -1 the nominal one. */
  read(fault: Fault | null, { setup, probe }: Test, sample: number): Shown {
    return instrumentOf(probe).read(this, probe, { fault, setup, sample });
  }

  readonly settled: ReadingBench['settled'] = ({ fault, setup, sample }, probe) =>
    this.solver.settled(fault, setup, probe, sample);

  readonly follows: ReadingBench['follows'] = ({ fault, setup, sample }, input) =>
    this.counts(fault, setup, input, sample);

  readonly isFound: ReadingBench['isFound'] = ({ fault, sample }, thing) =>
    fault?.subject.includes(thing) === true &&
    // Who has turned the engine to its marks sees that a wheel stands wrong; else it shows on some cars only.
    (thing === MARKS || this.draws.unit('fault.visible', sample) < fault.visibleChance);

  /** How the signal looks on the scope. */
  readonly pattern: ReadingBench['pattern'] = ({ fault, setup, sample }, plus, minus) => {
    const { low, high } = this.solver.levelsAt(fault, setup, plus, minus, 'volts', sample);
    const at = this.inputAt(plus);
    // Levels that hang on the car are held against what is healthy in this car.
    const own = at !== null && hangsOnTheCar(this.circuit, at);
    const good = this.goodLevels(setup, plus, minus, own ? sample : NOMINAL);
    const swing = Math.max(good.high - good.low, FLAT_VOLTS);
    if (high - low < Math.max(FLAT_SHARE * swing, FLAT_VOLTS)) {
      const middle = ((low + high) / 2 - good.low) / swing;
      return middle < FLAT_QUARTER
        ? 'flat-low'
        : middle > 1 - FLAT_QUARTER
          ? 'flat-high'
          : 'flat-middle';
    }
    const levels = at === null ? null : this.levelsOf(at, setup, sample);
    const full =
      levels && good.low < levels.lowBelow && good.high > levels.highAbove
        ? low < levels.lowBelow && high > levels.highAbove
        : high - low >= WEAK_SHARE * swing;
    if (!full) return 'weak';
    const middle = (low + high) / 2;
    return this.isUneven(fault, setup, plus, minus, sample, { middle, swing }) ? 'uneven' : 'full';
  };

  private goodLevels(
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    sample: number,
  ): SignalEnds {
    if (sample === FREE_POINT) return this.healthyLevels(setup, plus, minus, sample);
    const key = `${setup.state}|${plus}|${minus}|${sample}`;
    const made = this.good.get(key) ?? this.healthyLevels(setup, plus, minus, sample);
    this.good.set(key, made);
    return made;
  }

  private healthyLevels(
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    sample: number,
  ): SignalEnds {
    const plain = this.plain.get(setup) ?? plainSetup(setup);
    this.plain.set(setup, plain);
    return this.solver.levelsAt(null, plain, plus, minus, 'volts', sample);
  }

  private isUneven(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    sample: number,
    { middle, swing }: { readonly middle: number; readonly swing: number },
  ): boolean {
    const { kind } = sensorOf(this.circuit);
    if (missesTeeth(fault, kind)) return true;
    if (isTarget(fault, 'gap-wide')) return false;
    if (kind !== 'potentiometer' || fault === null) return false;
    const rig = this.solver.rig(
      fault,
      setup,
      plus,
      minus,
      'volts',
      this.solver.openBy(fault, setup, sample),
    );
    const there = { on: false, swing: 0, travel: 0.5, onSpot: false };
    const good = this.solver.volts(rig, fault, there, sample);
    const worn = this.solver.volts(rig, fault, { ...there, onSpot: true }, sample);
    // A broken track jumps instead of rising; a worn spot drops out.
    return (
      Math.abs(good - middle) > JUMP_SHARE * swing || Math.abs(good - worn) > DROP_OUT_SHARE * swing
    );
  }

  /** Where the module's input on the same wire as a terminal is. */
  private inputAt(terminal: TerminalId): TerminalId | null {
    const known = this.inputs.get(terminal);
    if (known !== undefined) return known;
    const input = inputOn(this.circuit, PLAIN_SETUP, terminal)?.terminal ?? null;
    this.inputs.set(terminal, input);
    return input;
  }

  private levelsOf(input: TerminalId, setup: Setup, sample: number): InputLevels | null {
    const key = `${input}|${setup.state}`;
    const known = this.levels.get(key);
    const made = known === undefined ? levelsIn(this.circuit, input, setup.state) : known;
    this.levels.set(key, made);
    return made?.(this.solver.valueOf(sample)) ?? null;
  }

  /** Whether the module follows the sensor at an input, and does not go on with a substitute value. */
  private counts(fault: Fault | null, setup: Setup, terminal: TerminalId, sample: number): boolean {
    const module = moduleOf(this.circuit);
    const pin = module.inside.find((one) => `${module.name}.${one.name}` === terminal);
    const input = pin?.input;
    if (!pin || !input || setup.unplugged.includes(module.name) || setup.state === 'key-off')
      return false;
    if (isInputDead(fault, pin.name)) return false;
    const minus =
      input.kind === 'swing' ? `${module.name}.${input.against}.pin` : 'battery.negative';
    const { low, high } = this.solver.levelsAt(
      fault,
      setup,
      `${terminal}.pin`,
      minus,
      'none',
      sample,
    );
    if (input.kind === 'swing') return high - low >= input.swing;
    const levels = this.levelsOf(terminal, setup, sample);
    if (levels === null || low >= levels.lowBelow || high <= levels.highAbove) return false;
    const track = this.tracks.find((one) => one.input === terminal);
    if (!track) return true;
    const reference = track.volts(this.solver.valueOf(sample));
    return isPlausible(low, reference) && isPlausible(high, reference);
  }
}

/** The module no longer reads its input at this pin. */
export function isInputDead(fault: Fault | null, pin: string): boolean {
  return effectsOf(fault).some(
    (one) => one.kind === 'part' && one.mode === 'input-dead' && one.at === pin,
  );
}

/** Teeth are missing from the signal of a sensor that still gives one; a coil sees them weakly before a wide gap. */
export function missesTeeth(fault: Fault | null, kind: SensorPart['kind']): boolean {
  return isTarget(fault, 'damaged') || (isTarget(fault, 'gap-wide') && kind !== 'reluctor');
}
