/**
 * What any instrument shows at any two terminals under any fault: the circuit, the fault, the setup and the instrument
 * solved together, for tolerance samples that all faults share.
 */
import {
  type Circuit,
  effectsOf,
  type Fault,
  type ModuleInput,
  moduleOf,
  sensorOf,
} from './circuit.ts';
import { lampLook, lightLook, ohmsFrom } from './instruments.ts';
import { joinedTo } from './nets.ts';
import { leads, refuseTest } from './refuse-test.ts';
import { isTarget, PLAIN, SampleSolver } from './sample-solver.ts';
import { createSamples, type Samples } from './samples.ts';
import type { LOOKS, Look, Meter, Setup, Shown, TerminalId, Test } from './test.ts';
import { testKey } from './test-key.ts';

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

/** A signal that moves less than this share of the healthy swing, or less than this voltage, is flat. */
export const FLAT_SHARE = 0.05;
export const FLAT_VOLTS = 0.02;
/** Below this share of the healthy swing a signal without thresholds of its own is weak. */
export const WEAK_SHARE = 0.55;
/** A drop-out is seen when it is this share of the healthy swing. */
const DROP_OUT_SHARE = 0.1;
/** Half-way travel this far from half-way voltage, as a share of the swing, is a jump. */
const JUMP_SHARE = 0.25;
/** Between the two ids of a pair; no id holds it. */
const PAIR_MARK = '+';

/**
 * The id under which a model shows two faults at once, in any order; null for two that sit in the same thing. Both
 * have the size of the same share of their spans, and the chance to be seen is the first one's.
 */
export function pairId(first: Fault, second: Fault): string | null {
  const shared = first.subject.some((name) => name !== 'harness' && second.subject.includes(name));
  return shared ? null : [first.id, second.id].sort().join(PAIR_MARK);
}

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
  private readonly shown = new Map<string, (Shown | undefined)[]>();
  private readonly keys = new WeakMap<Test, string>();
  private readonly solver: SampleSolver;
  private readonly pulls = new Map<string, PullDown | null>();
  private readonly inputs = new Map<TerminalId, ModuleInput | null>();

  constructor(circuit: Circuit, { samples, seed, meter }: ModelOptions) {
    this.circuit = circuit;
    this.samples = samples;
    this.meter = meter;
    this.draws = createSamples(circuit, seed);
    this.solver = new SampleSolver(circuit, meter, this.draws);
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
    return this.solver.levelsAt(
      this.faultOf(faultId),
      test.setup,
      plus!,
      minus ?? 'battery.negative',
      'meter',
      sample,
    );
  };

  readonly pullsLow = (test: Test): PullDown | null => {
    const key = this.keyOf(test);
    const known = this.pulls.get(key);
    if (known !== undefined) return known;
    const made = this.workOutPull(test);
    this.pulls.set(key, made);
    return made;
  };

  private workOutPull(test: Test): PullDown | null {
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
    const rig = this.solver.rig(null, test.setup, `${input}.pin`, 'battery.negative', 'none', []);
    const volts = (sample: number) =>
      this.solver.volts(rig, null, this.solver.still(null, sample), sample);
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
  }

  private keyOf(test: Test): string {
    const known = this.keys.get(test);
    if (known !== undefined) return known;
    const key = testKey(test);
    this.keys.set(test, key);
    return key;
  }

  private faultOf(id: string): Fault | null {
    if (id === 'healthy') return null;
    const fault = this.faults.get(id) ?? this.pairOf(id);
    if (!fault) throw new Error(`model: the circuit "${this.circuit.name}" has no fault "${id}"`);
    return fault;
  }

  /** Both faults of a `pairId` as one. */
  private pairOf(id: string): Fault | undefined {
    const [first, second] = id.split(PAIR_MARK).map((one) => this.faults.get(one));
    if (!first || !second) return undefined;
    return { ...first, id, subject: [...first.subject, ...second.subject], also: second.effect };
  }

  private look(fault: Fault | null, test: Test, sample: number): Shown {
    const { setup, probe } = test;
    switch (probe.kind) {
      case 'volts':
        return {
          kind: 'number',
          value: this.solver.mean(
            fault,
            setup,
            probe.plus,
            probe.minus,
            'meter',
            sample,
            this.solver.readVolts,
          ),
          unit: 'V',
        };
      case 'ohms': {
        const volts = this.solver.mean(
          fault,
          setup,
          probe.plus,
          probe.minus,
          'ohms',
          sample,
          this.solver.readVolts,
        );
        return { kind: 'number', value: ohmsFrom(volts, this.meter), unit: 'ohm' };
      }
      case 'light':
        return {
          kind: 'look',
          look: lightLook(
            this.solver.mean(
              fault,
              setup,
              probe.plus,
              probe.minus,
              'light',
              sample,
              this.solver.readAmps,
            ),
          ),
        };
      case 'lamp':
        return {
          kind: 'look',
          look: lampLook(
            this.solver.mean(
              fault,
              setup,
              probe.plus,
              probe.minus,
              'lamp',
              sample,
              this.solver.readVolts,
            ),
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

  /** How the signal looks on the scope. */
  private pattern(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    sample: number,
  ): (typeof LOOKS.pattern)[number] {
    const { low, high } = this.solver.levelsAt(fault, setup, plus, minus, 'meter', sample);
    const plain: Setup = {
      ...setup,
      unplugged: [],
      bridges: [],
      sensor: 'fitted',
      target: 'moving',
    };
    const good = this.solver.levelsAt(null, plain, plus, minus, 'meter', -1);
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
    const middle = (low + high) / 2;
    return this.isUneven(fault, setup, plus, minus, sample, { middle, swing }) ? 'uneven' : 'full';
  }

  private isUneven(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    sample: number,
    { middle, swing }: { readonly middle: number; readonly swing: number },
  ): boolean {
    if (isTarget(fault, 'damaged')) return true;
    const { kind } = sensorOf(this.circuit);
    if (isTarget(fault, 'gap-wide')) return kind !== 'reluctor';
    if (kind !== 'potentiometer' || fault === null) return false;
    const rig = this.solver.rig(
      fault,
      setup,
      plus,
      minus,
      'meter',
      this.solver.blownBy(fault, sample),
    );
    const there = { on: false, swing: 0, travel: 0.5, onSpot: false };
    const good = this.solver.volts(rig, fault, there, sample);
    const worn = this.solver.volts(rig, fault, { ...there, onSpot: true }, sample);
    // A broken track jumps instead of rising; a worn spot drops out.
    return (
      Math.abs(good - middle) > JUMP_SHARE * swing || Math.abs(good - worn) > DROP_OUT_SHARE * swing
    );
  }

  /** The module's input on the same wire as a terminal. */
  private inputOf(terminal: TerminalId): ModuleInput | null {
    const known = this.inputs.get(terminal);
    if (known !== undefined) return known;
    const module = moduleOf(this.circuit);
    const net = joinedTo(this.circuit, PLAIN, terminal);
    const pin = module.inside.find(
      (one) => one.input !== null && net.has(`${module.name}.${one.name}.pin`),
    );
    const input = pin?.input ?? null;
    this.inputs.set(terminal, input);
    return input;
  }

  /** Whether the module follows the sensor at an input. */
  private counts(fault: Fault | null, setup: Setup, terminal: TerminalId, sample: number): boolean {
    const module = moduleOf(this.circuit);
    const pin = module.inside.find((one) => `${module.name}.${one.name}` === terminal);
    const input = pin?.input;
    if (!pin || !input || setup.unplugged.includes(module.name) || setup.state === 'key-off')
      return false;
    const dead = effectsOf(fault).some(
      (one) => one.kind === 'part' && one.mode === 'input-dead' && one.at === pin.name,
    );
    if (dead) return false;
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
    return input.kind === 'swing'
      ? high - low >= input.swing
      : low < input.lowBelow && high > input.highAbove;
  }
}

function shiftsTiming(fault: Fault | null): boolean {
  return (
    isTarget(fault, 'displaced') ||
    effectsOf(fault).some((one) => one.kind === 'part' && one.mode === 'leads-swapped')
  );
}
