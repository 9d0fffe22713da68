/**
 * The electrical half of the model: circuit, fault, setup and instrument compiled together, solved for one tolerance sample
 * at one instant of the sensor.
 */
import { valueAt } from '../quantity/value-at.ts';
import { type Circuit, effectsOf, type Fault, type FaultEffect, sensorOf } from './circuit.ts';
import {
  bridgeElement,
  lampElement,
  lightElement,
  meterElement,
  ohmsElement,
} from './instruments.ts';
import type { Element } from './netlist.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import type { Draw, MakeElement, Plan } from './plan.ts';
import { addBridges, planNetlist } from './plan-netlist.ts';
import { FREE_POINT, NOMINAL, type Samples } from './samples.ts';
import { createSolver, type DcSolver } from './solve-dc.ts';
import type { Meter, Setup, TerminalId } from './test.ts';

/** A fuse blows for certain at this times its rating (common practice: 1.35 within minutes). */
const FUSE_BLOWS_AT = 1.35;
/** Chance that too wide a gap stops a switch altogether; otherwise teeth are missed. Common practice, no source. */
const GAP_STOPS_CHANCE = 0.6;
/** A coil before too wide a gap gives this share of its voltage, smallest and largest. Common practice, no source. */
const GAP_SWING = { low: 0.08, high: 0.4 };
/** Compiled circuits kept for the next sample. */
const RIGS_MAX = 256;

/** A compiled circuit and the solver of its present sample. */
interface Rig {
  readonly makers: readonly MakeElement[];
  readonly solver: DcSolver;
  /** Number of the node of a terminal of the circuit. */
  readonly node: Plan['node'];
  readonly plus: number;
  readonly minus: number;
  /** Number of the instrument's element, or -1. */
  readonly instrument: number;
}

/** What sits between the leads. */
type Instrument = 'meter' | 'ohms' | 'light' | 'lamp' | 'none';

/** The sensor at one instant. */
export interface Instant {
  readonly on: boolean;
  readonly swing: number;
  readonly travel: number;
  readonly onSpot: boolean;
}

/** The solver found no operating point. A loaded circuit has been tried with every fault and does not get here. */
export class UnsolvedCircuit extends Error {}

/** Solves samples of one circuit; keeps what it compiled for the next one. */
export class SampleSolver {
  private readonly circuit: Circuit;
  private readonly meter: Meter;
  private readonly draws: Samples;
  private readonly rigs = new Map<string, Rig>();
  private readonly blown = new Map<string, readonly string[]>();
  private readonly setupKeys = new WeakMap<Setup, string>();

  constructor(circuit: Circuit, meter: Meter, draws: Samples) {
    this.circuit = circuit;
    this.meter = meter;
    this.draws = draws;
  }

  /**
   * What an instrument settles at, in volts between its leads, or for the light in amperes through it: the present
   * instant of a still target, or the mean of the ends of a moving one.
   */
  mean(
    fault: Fault | null,
    setup: Setup,
    { plus, minus }: { readonly plus: TerminalId; readonly minus: TerminalId },
    instrument: Instrument,
    sample: number,
  ): number {
    const rig = this.rig(fault, setup, plus, minus, instrument, this.blownBy(fault, sample));
    const read = (instant: Instant): number => {
      const volts = this.volts(rig, fault, instant, sample);
      return instrument === 'light' ? rig.solver.current(rig.instrument) : volts;
    };
    if (setup.target === 'still') return read(this.still(fault, sample));
    const [first, second] = this.ends(fault, setup, sample);
    // A wiper that is moved is read where it ends: fully moved.
    const share = sensorOf(this.circuit).kind === 'potentiometer' ? 0 : this.duty(sample);
    return share * read(first) + (1 - share) * read(second);
  }

  /** The sensor with the target at rest. */
  still(fault: Fault | null, sample: number): Instant {
    const on = this.draws.unit('target.still', sample) < this.duty(sample);
    return { on: on && !this.gapStops(fault, sample), swing: 0, travel: 0, onSpot: false };
  }

  /** Part of a turn that a switched output is on. */
  private duty(sample: number): number {
    const { duty, onChance = 0.5 } = this.circuit.target ?? {};
    return duty ? this.valueOf(sample)('target.duty', duty) : onChance;
  }

  /** The two ends of what the sensor does while the target moves: on and off, peak and trough, rest and full travel. */
  private ends(fault: Fault | null, setup: Setup, sample: number): readonly [Instant, Instant] {
    if (setup.target === 'still') {
      const still = this.still(fault, sample);
      return [still, still];
    }
    const gap = isTarget(fault, 'gap-wide');
    const stops = this.gapStops(fault, sample);
    const share = gap
      ? GAP_SWING.low + (GAP_SWING.high - GAP_SWING.low) * this.draws.unit('target.gap', sample)
      : 1;
    return [
      { on: !stops, swing: share, travel: 0, onSpot: false },
      { on: false, swing: -share, travel: 1, onSpot: false },
    ];
  }

  private gapStops(fault: Fault | null, sample: number): boolean {
    return isTarget(fault, 'gap-wide') && this.draws.unit('target.gap', sample) < GAP_STOPS_CHANCE;
  }

  /** The two ends of the signal between two terminals while the target moves, in volts; both the same while it is still. */
  levelsAt(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Instrument,
    sample: number,
  ): { low: number; high: number } {
    const rig = this.rig(fault, setup, plus, minus, instrument, this.blownBy(fault, sample));
    const [first, second] = this.ends(fault, setup, sample);
    const a = this.volts(rig, fault, first, sample);
    const b = this.volts(rig, fault, second, sample);
    return { low: Math.min(a, b), high: Math.max(a, b) };
  }

  /** Voltage between the leads of a rig at one instant of a sample. */
  volts(rig: Rig, fault: Fault | null, instant: Instant, sample: number): number {
    const draw: Draw = { ...instant, value: this.valueOf(sample), size: this.sizeOf(sample) };
    for (let index = 0; index < rig.makers.length; index += 1)
      rig.solver.replace(index, rig.makers[index]!(draw));
    const failure = rig.solver.solve();
    if (failure) throw new UnsolvedCircuit(`with ${fault?.id ?? 'healthy'}, ${failure.words}`);
    return rig.solver.volts[rig.plus]! - rig.solver.volts[rig.minus]!;
  }

  /** Voltages of several terminals against battery negative at one instant, without any instrument. */
  voltsOf(
    fault: Fault | null,
    setup: Setup,
    terminals: readonly TerminalId[],
    instant: Instant,
    sample: number,
  ): number[] {
    const blown = this.blownBy(fault, sample);
    const rig = this.rig(fault, setup, terminals[0]!, 'battery.negative', 'none', blown);
    this.volts(rig, fault, instant, sample);
    return terminals.map((terminal) => rig.solver.volts[rig.node(terminal)]!);
  }

  /** The value of each quantity in a sample. */
  valueOf(sample: number): Draw['value'] {
    if (sample === NOMINAL) return (_key, of) => of.nominal;
    return (key, of) => (of.low === of.high ? of.low : valueAt(of, this.draws.unit(key, sample)));
  }

  private sizeOf(sample: number): Draw['size'] {
    const share = this.draws.unit('fault.size', sample);
    return ({ low, high }) => (low === high ? low : low * (high / low) ** share);
  }

  /** Fuses that this fault blows as soon as the key is on. */
  blownBy(fault: Fault | null, sample: number): readonly string[] {
    const fuses = this.circuit.parts.filter((part) => part.kind === 'fuse');
    if (fault === null || fuses.length === 0 || !effectsOf(fault).some(canBlow)) return NONE;
    const key = `${fault.id}|${sample}`;
    const known = sample === FREE_POINT ? undefined : this.blown.get(key);
    if (known) return known;
    const blown = fuses.flatMap((fuse) => {
      const rig = this.rig(
        fault,
        PLAIN_SETUP,
        `${fuse.name}.in.pin`,
        `${fuse.name}.out.pin`,
        'none',
        NONE,
      );
      const volts = this.volts(rig, fault, this.still(fault, sample), sample);
      const ohms = this.valueOf(sample)(`${fuse.name}.ohms`, fuse.ohms);
      const whole = !effectsOf(fault).some((one) => one.kind === 'part' && one.part === fuse.name);
      return whole && Math.abs(volts) / ohms > FUSE_BLOWS_AT * fuse.amps ? [fuse.name] : [];
    });
    if (sample !== FREE_POINT) this.blown.set(key, blown);
    return blown;
  }

  /** The compiled circuit for a fault, a setup and an instrument between two terminals; kept for the next sample. */
  rig(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Instrument,
    blown: readonly string[],
  ): Rig {
    const key = `${fault?.id ?? ''}|${this.setupKey(setup)}|${plus}|${minus}|${instrument}|${blown.join()}`;
    const known = this.rigs.get(key);
    if (known) return known;
    const plan = planNetlist(this.circuit, setup, effectsOf(fault), blown);
    addBridges(plan, setup, bridgeElement);
    const a = plan.node(plus);
    const b = plan.node(minus);
    const element = this.instrumentElement(instrument, a, b);
    const at = element && a !== b ? plan.makers.length : -1;
    if (element && a !== b) plan.makers.push(() => element);
    const draw: Draw = {
      ...this.still(fault, NOMINAL),
      value: this.valueOf(NOMINAL),
      size: this.sizeOf(NOMINAL),
    };
    const solver = createSolver({
      nodes: plan.nodes,
      elements: plan.makers.map((make) => make(draw)),
    });
    const rig: Rig = {
      makers: plan.makers,
      solver,
      node: plan.node,
      plus: a,
      minus: b,
      instrument: at,
    };
    if (this.rigs.size >= RIGS_MAX) this.rigs.delete(this.rigs.keys().next().value!);
    this.rigs.set(key, rig);
    return rig;
  }

  private instrumentElement(instrument: Instrument, a: number, b: number): Element | null {
    switch (instrument) {
      case 'meter':
        return meterElement(a, b, this.meter);
      case 'ohms':
        return ohmsElement(a, b);
      case 'light':
        return lightElement(a, b);
      case 'lamp':
        return lampElement(a, b);
      case 'none':
        return null;
    }
  }

  private setupKey(setup: Setup): string {
    const known = this.setupKeys.get(setup);
    if (known !== undefined) return known;
    const key = JSON.stringify(setup);
    this.setupKeys.set(setup, key);
    return key;
  }
}

const NONE: readonly string[] = [];

/** More current than in a healthy circuit flows only where something touches or is shorted. */
function canBlow({ kind }: FaultEffect): boolean {
  return kind === 'wire-short' || kind === 'wires-swapped' || kind === 'part';
}

/** The fault is this one of the target. */
export function isTarget(fault: Fault | null, mode: 'damaged' | 'displaced' | 'gap-wide'): boolean {
  return effectsOf(fault).some((one) => one.kind === 'target' && one.mode === mode);
}
