/**
 * What any instrument shows at any two terminals under any fault: the circuit, the fault, the setup and the instrument
 * solved together, for tolerance samples that all faults share.
 */
import { type Circuit, type Fault, type ModuleInput, moduleOf, sensorOf } from './circuit.ts';
import {
  bridgeElement,
  lampElement,
  lampLook,
  lightElement,
  lightLook,
  meterElement,
  ohmsElement,
  ohmsFrom,
} from './instruments.ts';
import type { Element } from './netlist.ts';
import { joinedTo } from './nets.ts';
import { addBridges, type Draw, type MakeElement, planNetlist } from './plan-netlist.ts';
import { leads, refuseTest } from './refuse-test.ts';
import { createSamples, type Samples } from './samples.ts';
import { createSolver, type DcSolver } from './solve-dc.ts';
import type { LOOKS, Look, Meter, Setup, Shown, TerminalId, Test } from './test.ts';

export interface ModelOptions {
  /** Tolerance samples, shared by all faults. */
  readonly samples: number;
  readonly seed: number;
  readonly meter: Meter;
}

/** What a circuit shows over its tolerances: a range of numbers, or looks with their chances. */
export type Expected =
  | {
      readonly kind: 'number';
      readonly low: number;
      readonly nominal: number;
      readonly high: number;
      readonly unit: 'V' | 'ohm';
    }
  | {
      readonly kind: 'looks';
      readonly looks: readonly { readonly look: Look; readonly chance: number }[];
    };

/** How low a light or resistor clipped to ground pulls a module's input, against what the module calls low. */
export interface PullDown {
  readonly input: TerminalId;
  readonly pulls: boolean;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  readonly thresholdVolts: number;
}

export interface Model {
  readonly circuit: Circuit;
  readonly samples: number;
  readonly meter: Meter;
  /** What is shown under a fault (`healthy` for none) in sample 0 to samples - 1, or -1 for the middle of all tolerances. */
  readonly shows: (faultId: string, test: Test, sample: number) => Shown;
  /** Why the test must not or cannot be done, or null. */
  readonly refusal: (test: Test) => string | null;
  /** What the circuit shows over all samples, healthy unless a fault is named. */
  readonly expected: (test: Test, faultId?: string) => Expected;
  /** The two ends of the signal at the leads of a test while the target moves. */
  readonly levels: (
    faultId: string,
    test: Test,
    sample: number,
  ) => { readonly low: number; readonly high: number };
  /** For a test with a light or resistor from an input to ground: whether it pulls low enough; null for other tests. */
  readonly pullsLow: (test: Test) => PullDown | null;
}

/** A fuse blows for certain at this times its rating (common practice: 1.35 within minutes). */
const FUSE_BLOWS_AT = 1.35;
/** A signal that moves less than this share of the healthy swing, or less than this voltage, is flat. */
const FLAT_SHARE = 0.05;
const FLAT_VOLTS = 0.02;
/** Below this share of the healthy swing a signal without thresholds of its own is weak. */
const WEAK_SHARE = 0.55;
/** Chance that too wide a gap stops a switch altogether; otherwise teeth are missed. Common practice, no source. */
const GAP_STOPS_CHANCE = 0.6;
/** A coil before too wide a gap gives this share of its voltage, smallest and largest. Common practice, no source. */
const GAP_SWING = { low: 0.08, high: 0.4 };
/** A drop-out is seen when it is this share of the healthy swing. */
const DROP_OUT_SHARE = 0.1;
/** Compiled circuits kept for the next sample. */
const RIGS_MAX = 256;

/** A compiled circuit and the solver of its present sample. */
interface Rig {
  readonly makers: readonly MakeElement[];
  readonly solver: DcSolver;
  readonly plus: number;
  readonly minus: number;
  /** Number of the instrument's element, or -1. */
  readonly instrument: number;
}

/** What sits between the leads. */
type Instrument = 'meter' | 'ohms' | 'light' | 'lamp' | 'none';

/** The sensor at one instant. */
interface Instant {
  readonly on: boolean;
  readonly swing: number;
  readonly travel: number;
  readonly onSpot: boolean;
}

/** The solver found no operating point. A loaded circuit has been tried with every fault and does not get here. */
export class UnsolvedCircuit extends Error {}

/** A model of a loaded circuit. */
export function createModel(circuit: Circuit, options: ModelOptions): Model {
  return new CircuitModel(circuit, options);
}

class CircuitModel implements Model {
  readonly circuit: Circuit;
  readonly samples: number;
  readonly meter: Meter;
  private readonly draws: Samples;
  private readonly faults: ReadonlyMap<string, Fault>;
  private readonly rigs = new Map<string, Rig>();
  private readonly shown = new Map<string, (Shown | undefined)[]>();
  private readonly blown = new Map<string, readonly string[]>();
  private readonly keys = new WeakMap<Test, string>();

  constructor(circuit: Circuit, { samples, seed, meter }: ModelOptions) {
    this.circuit = circuit;
    this.samples = samples;
    this.meter = meter;
    this.draws = createSamples(circuit, seed);
    this.faults = new Map(circuit.faults.map((fault) => [fault.id, fault]));
  }

  readonly shows = (faultId: string, test: Test, sample: number): Shown => {
    const key = `${faultId}|${this.keyOf(test)}`;
    const list = this.shown.get(key) ?? [];
    if (list.length === 0) this.shown.set(key, list);
    list[sample + 1] ??= this.look(this.faultOf(faultId), test, sample);
    return list[sample + 1]!;
  };

  readonly refusal = (test: Test): string | null => refuseTest(this.circuit, test);

  readonly expected = (test: Test, faultId = 'healthy'): Expected => {
    const nominal = this.shows(faultId, test, -1);
    const all = Array.from({ length: this.samples }, (_, sample) =>
      this.shows(faultId, test, sample),
    );
    if (nominal.kind === 'number') {
      const values = [nominal, ...all].map((shown) =>
        shown.kind === 'number' ? shown.value : Number.NaN,
      );
      return {
        kind: 'number',
        low: Math.min(...values),
        nominal: nominal.value,
        high: Math.max(...values),
        unit: nominal.unit,
      };
    }
    const counts = new Map<Look, number>();
    for (const shown of all.length > 0 ? all : [nominal])
      if (shown.kind === 'look') counts.set(shown.look, (counts.get(shown.look) ?? 0) + 1);
    const total = Math.max(1, all.length);
    const looks = [...counts].map(([look, count]) => ({ look, chance: count / total }));
    return { kind: 'looks', looks: looks.sort((a, b) => b.chance - a.chance) };
  };

  readonly levels = (
    faultId: string,
    test: Test,
    sample: number,
  ): { low: number; high: number } => {
    const [plus, minus] = leads(test.probe);
    return this.levelsAt(
      this.faultOf(faultId),
      test.setup,
      plus!,
      minus ?? 'battery.negative',
      'meter',
      sample,
    );
  };

  readonly pullsLow = (test: Test): PullDown | null => {
    const bridge = test.setup.bridges.find(
      ({ from, to, through }) => through !== 'lead' && [from, to].includes('battery.negative'),
    );
    if (!bridge) return null;
    const net = joinedTo(
      this.circuit,
      test.setup,
      bridge.from === 'battery.negative' ? bridge.to : bridge.from,
    );
    const module = moduleOf(this.circuit);
    const pin = module.inside.find(
      (one) => one.input?.kind === 'levels' && net.has(`${module.name}.${one.name}.pin`),
    );
    if (pin?.input?.kind !== 'levels') return null;
    const input = `${module.name}.${pin.name}`;
    const thresholdVolts = pin.input.lowBelow;
    const rig = this.rig(null, test.setup, `${input}.pin`, 'battery.negative', 'none', []);
    const volts = (sample: number) => this.volts(rig, null, this.still(null, sample), sample);
    const values = [-1, ...Array.from({ length: this.samples }, (_, sample) => sample)].map(volts);
    const high = Math.max(...values);
    return {
      input,
      pulls: high < thresholdVolts,
      low: Math.min(...values),
      nominal: values[0]!,
      high,
      thresholdVolts,
    };
  };

  private keyOf(test: Test): string {
    const known = this.keys.get(test);
    if (known !== undefined) return known;
    const key = JSON.stringify([test.setup, test.probe]);
    this.keys.set(test, key);
    return key;
  }

  private faultOf(id: string): Fault | null {
    if (id === 'healthy') return null;
    const fault = this.faults.get(id);
    if (!fault) throw new Error(`model: the circuit "${this.circuit.name}" has no fault "${id}"`);
    return fault;
  }

  private look(fault: Fault | null, test: Test, sample: number): Shown {
    const { setup, probe } = test;
    switch (probe.kind) {
      case 'volts':
        return {
          kind: 'number',
          value: this.mean(fault, setup, probe.plus, probe.minus, 'meter', sample, this.readVolts),
          unit: 'V',
        };
      case 'ohms': {
        const volts = this.mean(
          fault,
          setup,
          probe.plus,
          probe.minus,
          'ohms',
          sample,
          this.readVolts,
        );
        return { kind: 'number', value: ohmsFrom(volts, this.meter), unit: 'ohm' };
      }
      case 'light':
        return {
          kind: 'look',
          look: lightLook(
            this.mean(fault, setup, probe.plus, probe.minus, 'light', sample, this.readAmps),
          ),
        };
      case 'lamp':
        return {
          kind: 'look',
          look: lampLook(
            this.mean(fault, setup, probe.plus, probe.minus, 'lamp', sample, this.readVolts),
          ),
        };
      case 'pattern':
        return { kind: 'look', look: this.pattern(fault, setup, probe.plus, probe.minus, sample) };
      case 'counts':
        return {
          kind: 'look',
          look: this.counts(fault, setup, probe.input, sample) ? 'follows' : 'still',
        };
      case 'timing': {
        const pattern = this.pattern(fault, setup, probe.plus, probe.minus, sample);
        if (pattern.startsWith('flat')) return { kind: 'look', look: 'no-signal' };
        return { kind: 'look', look: shiftsTiming(fault) ? 'shifted' : 'in-step' };
      }
      case 'inspect': {
        const found =
          fault?.subject.includes(probe.of) === true &&
          this.draws.unit('fault.visible', sample) < fault.visibleChance;
        return { kind: 'look', look: found ? 'faulty' : 'sound' };
      }
    }
  }

  private readonly readVolts = (rig: Rig): number =>
    rig.solver.volts[rig.plus]! - rig.solver.volts[rig.minus]!;
  private readonly readAmps = (rig: Rig): number => rig.solver.current(rig.instrument);

  /** What an instrument settles at: the present instant of a still target, or the mean of the ends of a moving one. */
  private mean(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Instrument,
    sample: number,
    read: (rig: Rig) => number,
  ): number {
    const rig = this.rig(fault, setup, plus, minus, instrument, this.blownBy(fault, sample));
    if (setup.target === 'still') {
      this.volts(rig, fault, this.still(fault, sample), sample);
      return read(rig);
    }
    const [first, second] = this.ends(fault, setup, sample);
    // A wiper that is moved is read where it ends: fully moved.
    const share =
      sensorOf(this.circuit).kind === 'potentiometer' ? 0 : (this.circuit.target?.onChance ?? 0.5);
    this.volts(rig, fault, first, sample);
    const a = read(rig);
    this.volts(rig, fault, second, sample);
    return share * a + (1 - share) * read(rig);
  }

  /** The sensor with the target at rest. */
  private still(fault: Fault | null, sample: number): Instant {
    const on = this.draws.unit('target.still', sample) < (this.circuit.target?.onChance ?? 0.5);
    return { on: on && !this.gapStops(fault, sample), swing: 0, travel: 0, onSpot: false };
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

  private levelsAt(
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

  /** How the signal looks on the scope. */
  private pattern(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    sample: number,
  ): (typeof LOOKS.pattern)[number] {
    const { low, high } = this.levelsAt(fault, setup, plus, minus, 'meter', sample);
    const plain: Setup = {
      ...setup,
      unplugged: [],
      bridges: [],
      sensor: 'fitted',
      target: 'moving',
    };
    const good = this.levelsAt(null, plain, plus, minus, 'meter', -1);
    const swing = Math.max(good.high - good.low, FLAT_VOLTS);
    if (high - low < Math.max(FLAT_SHARE * swing, FLAT_VOLTS)) {
      const middle = ((low + high) / 2 - good.low) / swing;
      return middle < 0.25 ? 'flat-low' : middle > 0.75 ? 'flat-high' : 'flat-middle';
    }
    const input = this.inputOf(plus);
    const full =
      input?.kind === 'levels' && good.low < input.lowBelow && good.high > input.highAbove
        ? low < input.lowBelow && high > input.highAbove
        : high - low >= WEAK_SHARE * swing;
    if (!full) return 'weak';
    return this.isUneven(fault, setup, plus, minus, sample, swing) ? 'uneven' : 'full';
  }

  private isUneven(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    sample: number,
    swing: number,
  ): boolean {
    if (isTarget(fault, 'damaged')) return true;
    if (isTarget(fault, 'gap-wide')) return sensorOf(this.circuit).kind !== 'reluctor';
    if (fault?.effect.kind !== 'part' || fault.effect.mode !== 'worn-spot') return false;
    const rig = this.rig(fault, setup, plus, minus, 'meter', this.blownBy(fault, sample));
    const there = { on: false, swing: 0, travel: 0.5, onSpot: false };
    const good = this.volts(rig, fault, there, sample);
    const worn = this.volts(rig, fault, { ...there, onSpot: true }, sample);
    return Math.abs(good - worn) > DROP_OUT_SHARE * swing;
  }

  /** The module's input on the same wire as a terminal. */
  private inputOf(terminal: TerminalId): ModuleInput | null {
    const module = moduleOf(this.circuit);
    const net = joinedTo(this.circuit, PLAIN, terminal);
    return (
      module.inside.find((pin) => pin.input !== null && net.has(`${module.name}.${pin.name}.pin`))
        ?.input ?? null
    );
  }

  /** Whether the module follows the sensor at an input. */
  private counts(fault: Fault | null, setup: Setup, terminal: TerminalId, sample: number): boolean {
    const module = moduleOf(this.circuit);
    const pin = module.inside.find((one) => `${module.name}.${one.name}` === terminal);
    const input = pin?.input;
    if (!pin || !input || setup.unplugged.includes(module.name) || setup.state === 'key-off')
      return false;
    const effect = fault?.effect;
    if (effect?.kind === 'part' && effect.mode === 'input-dead' && effect.at === pin.name)
      return false;
    const minus =
      input.kind === 'swing' ? `${module.name}.${input.against}.pin` : 'battery.negative';
    const { low, high } = this.levelsAt(fault, setup, `${terminal}.pin`, minus, 'none', sample);
    return input.kind === 'swing'
      ? high - low >= input.swing
      : low < input.lowBelow && high > input.highAbove;
  }

  /** Voltage between the leads of a rig at one instant of a sample. */
  private volts(rig: Rig, fault: Fault | null, instant: Instant, sample: number): number {
    const draw: Draw = { ...instant, value: this.valueOf(sample), size: this.sizeOf(sample) };
    for (let index = 0; index < rig.makers.length; index += 1)
      rig.solver.replace(index, rig.makers[index]!(draw));
    const failure = rig.solver.solve();
    if (failure) throw new UnsolvedCircuit(`with ${fault?.id ?? 'healthy'}, ${failure.words}`);
    return this.readVolts(rig);
  }

  private valueOf(sample: number): Draw['value'] {
    if (sample < 0) return (_key, of) => of.nominal;
    return (key, of) =>
      of.low === of.high ? of.low : of.low + (of.high - of.low) * this.draws.unit(key, sample);
  }

  private sizeOf(sample: number): Draw['size'] {
    const share = this.draws.unit('fault.size', sample);
    return ({ low, high }) => (low === high ? low : low * (high / low) ** share);
  }

  /** Fuses that this fault blows as soon as the key is on. */
  private blownBy(fault: Fault | null, sample: number): readonly string[] {
    const fuses = this.circuit.parts.filter((part) => part.kind === 'fuse');
    if (fuses.length === 0 || fault === null) return NONE;
    const key = `${fault.id}|${sample}`;
    const known = this.blown.get(key);
    if (known) return known;
    const blown = fuses.flatMap((fuse) => {
      const rig = this.rig(
        fault,
        PLAIN,
        `${fuse.name}.in.pin`,
        `${fuse.name}.out.pin`,
        'none',
        NONE,
      );
      const volts = this.volts(rig, fault, this.still(fault, sample), sample);
      const ohms = this.valueOf(sample)(`${fuse.name}.ohms`, fuse.ohms);
      const whole = !(fault.effect.kind === 'part' && fault.effect.part === fuse.name);
      return whole && Math.abs(volts) / ohms > FUSE_BLOWS_AT * fuse.amps ? [fuse.name] : [];
    });
    this.blown.set(key, blown);
    return blown;
  }

  private rig(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Instrument,
    blown: readonly string[],
  ): Rig {
    const key = JSON.stringify([fault?.id ?? '', setup, plus, minus, instrument, blown]);
    const known = this.rigs.get(key);
    if (known) return known;
    const plan = planNetlist(this.circuit, setup, fault?.effect ?? null, blown);
    addBridges(plan, setup, bridgeElement);
    const a = plan.node(plus);
    const b = plan.node(minus);
    const element = this.instrumentElement(instrument, a, b);
    const at = element && a !== b ? plan.makers.length : -1;
    if (element && a !== b) plan.makers.push(() => element);
    const draw: Draw = { ...this.still(fault, -1), value: this.valueOf(-1), size: this.sizeOf(-1) };
    const solver = createSolver({
      nodes: plan.nodes,
      elements: plan.makers.map((make) => make(draw)),
    });
    const rig: Rig = { makers: plan.makers, solver, plus: a, minus: b, instrument: at };
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
}

const NONE: readonly string[] = [];
const PLAIN: Setup = {
  state: 'key-on',
  unplugged: [],
  bridges: [],
  sensor: 'fitted',
  target: 'still',
};

function isTarget(fault: Fault | null, mode: 'damaged' | 'displaced' | 'gap-wide'): boolean {
  return fault?.effect.kind === 'target' && fault.effect.mode === mode;
}

function shiftsTiming(fault: Fault | null): boolean {
  return (
    isTarget(fault, 'displaced') ||
    (fault?.effect.kind === 'part' && fault.effect.mode === 'leads-swapped')
  );
}
