/**
 * The electrical half of the model: circuit, fault, setup and instrument compiled together, solved for one tolerance sample
 * at one instant of the sensor.
 */

import { Unworkable } from '../source/unworkable.ts';
import { bridgeElement } from './bridge-element.ts';
import { valuesOf } from './car-quantities.ts';
import {
  type Circuit,
  effectsOf,
  type Fault,
  type FusePart,
  type RelayPart,
  sensorOf,
} from './circuit.ts';
import { canBlow, isTarget, NOTHING_WORSE, worseOf } from './fault-electrics.ts';
import { INSTRUMENTS } from './instruments.ts';
import type { Element } from './netlist.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import {
  type Draw,
  fixedElement,
  type Instant,
  onFrom,
  type Plan,
  type PlanValue,
} from './plan.ts';
import { addBridges, planNetlist } from './plan-netlist.ts';
import { isRelayClosed, reachesCoil } from './relay-coil.ts';
import { Rig } from './rig.ts';
import { FREE_POINT, NOMINAL, type Samples, valueIn } from './samples.ts';
import { FUSE_BLOWS_AT } from './supply-limits.ts';
import type { LeadKind, Meter, Probe, Setup, TerminalId } from './test.ts';

/** Chance that too wide a gap stops a switch altogether; otherwise teeth are missed. Common practice, no source. */
const GAP_STOPS_CHANCE = 0.6;
/** A coil before too wide a gap gives this share of its voltage, smallest and largest. Common practice, no source. */
const GAP_SWING = { low: 0.08, high: 0.4 };
/** Compiled circuits kept for the next sample, by the elements of all together; each takes some 0.5 kB. */
const KEPT_ELEMENTS_MAX = 400_000;

/** Circuits without an instrument that are kept for the next one. */
const PLANS_KEPT = 512;

/** Places of one setup that are found without making a key. */
const SHELVES_MAX = 256;

/** Which instrument sits between the leads. */
type Between = LeadKind | 'none';

/** A rig as long as it is kept. */
interface Kept {
  readonly rig: Rig;
  isKept: boolean;
}

/** The rigs of one setup with the instrument at one place. */
interface Shelf {
  readonly plus: TerminalId;
  readonly minus: TerminalId;
  readonly instrument: Between;
  readonly blown: readonly string[];
  readonly watched: readonly TerminalId[];
  /** By fault; null also for a fault that only makes resistances worse: its rig is the sound circuit's. */
  readonly rigs: Map<Fault | null, Kept>;
}

/**
 * The solver found no operating point. A loaded circuit has been tried with every fault and hardly gets here; one in a
 * session file may have values that no vehicle has.
 */
export class UnsolvedCircuit extends Unworkable {
  constructor(words: string) {
    super(words, 'look for a value that is far from usual');
  }
}

/** Solves samples of one circuit; keeps what it compiled for the next one. */
export class SampleSolver {
  private readonly circuit: Circuit;
  private readonly meter: Meter;
  private readonly draws: Samples;
  private readonly rigs = new Map<string, Kept>();
  /** The same rigs, found without making a key: by setup, the last asked for first. */
  private readonly shelves = new WeakMap<Setup, Shelf[]>();
  private readonly plans = new Map<string, Plan>();
  private readonly keptElementsMax: number;
  /** Elements of all of them. */
  private keptElements = 0;
  private readonly blown = new Map<string, readonly string[]>();
  /** The same of the point that was taken last, and which relays then pull in. */
  private readonly point = {
    taken: 0,
    blown: new Map<string, readonly string[]>(),
    pulled: new Map<string, boolean>(),
  };
  /** Resistance of a fuse, volts that a relay pulls in at. */
  private readonly ownValue: ReadonlyMap<FusePart | RelayPart, PlanValue>;
  private readonly setupKeys = new WeakMap<Setup, string>();
  private readonly blownLists = new Map<string, readonly string[]>();
  private readonly fuses: readonly FusePart[];
  private readonly relays: readonly RelayPart[];
  private readonly starved = new WeakMap<Fault, readonly RelayPart[]>();
  private readonly closed = new WeakMap<Setup, readonly RelayPart[]>();
  /** The same setup as the key is turned. */
  private readonly keyOn = new WeakMap<Setup, Setup>();
  private readonly stillPlace: number;
  private readonly gapPlace: number;
  /** Part of a turn that a switched output is on, where the circuit leaves that open. */
  private readonly dutyValue: PlanValue | null;

  constructor(
    circuit: Circuit,
    meter: Meter,
    draws: Samples,
    keptElementsMax: number = KEPT_ELEMENTS_MAX,
  ) {
    this.keptElementsMax = keptElementsMax;
    this.circuit = circuit;
    this.meter = meter;
    this.draws = draws;
    this.fuses = circuit.parts.filter((part) => part.kind === 'fuse');
    this.relays = circuit.parts.filter((part) => part.kind === 'relay').filter(({ coil }) => coil);
    const valueAs = valuesOf(circuit);
    this.ownValue = new Map<FusePart | RelayPart, PlanValue>([
      ...this.fuses.map((fuse) => [fuse, valueAs(`${fuse.name}.ohms`, fuse.ohms)] as const),
      ...this.relays.map(
        (relay) => [relay, valueAs(`${relay.name}.pulls-in`, relay.coil!.pullsIn)] as const,
      ),
    ]);
    this.stillPlace = draws.placeOf('target.still');
    this.gapPlace = draws.placeOf('target.gap');
    const { duty } = circuit.target ?? {};
    this.dutyValue = duty ? valueAs('target.duty', duty) : null;
  }

  /**
   * What an instrument settles at: volts between its leads, and amperes through it. Of a still target the present instant,
   * of a moving one the mean of its ends.
   */
  settled(
    fault: Fault | null,
    setup: Setup,
    { kind, plus, minus }: Extract<Probe, { plus: TerminalId }>,
    sample: number,
  ): { volts: number; amps: number } {
    const rig = this.rig(fault, setup, plus, minus, kind, this.openBy(fault, setup, sample));
    rig.take(this.draws.carOf(sample), worseOf(fault));
    const read = (instant: Instant) => {
      const volts = this.voltsNow(rig, fault, instant);
      return { volts, amps: rig.amps() };
    };
    if (setup.target === 'still') return read(this.still(fault, sample));
    const [first, second] = this.ends(fault, setup, sample);
    // A wiper that is moved is read where it ends: fully moved.
    if (sensorOf(this.circuit).kind === 'potentiometer') return read(second);
    const share = this.duty(sample);
    const [one, other] = [read(first), read(second)];
    return {
      volts: share * one.volts + (1 - share) * other.volts,
      amps: share * one.amps + (1 - share) * other.amps,
    };
  }

  /** The sensor with the target at rest. */
  still(fault: Fault | null, sample: number): Instant {
    const on = this.unit(this.stillPlace, sample) < this.duty(sample);
    const isSeen = !isTarget(fault, 'missing') && !this.gapStops(fault, sample);
    return on && isSeen ? RESTS_ON : RESTS_OFF;
  }

  /** Part of a turn that a switched output is on. */
  private duty(sample: number): number {
    const { dutyValue } = this;
    if (dutyValue !== null) return valueIn(this.draws.carOf(sample), dutyValue);
    return this.circuit.target?.onChance ?? 0.5;
  }

  private unit(place: number, sample: number): number {
    return this.draws.carOf(sample)?.point[place] ?? 0.5;
  }

  /** The two ends of what the sensor does while the target moves: on and off, peak and trough, rest and full travel. */
  private ends(fault: Fault | null, setup: Setup, sample: number): readonly [Instant, Instant] {
    if (setup.target === 'still') {
      const still = this.still(fault, sample);
      return [still, still];
    }
    if (isTarget(fault, 'missing')) return [RESTS_OFF, RESTS_OFF];
    const stops = this.gapStops(fault, sample);
    const share = isTarget(fault, 'gap-wide')
      ? GAP_SWING.low + (GAP_SWING.high - GAP_SWING.low) * this.unit(this.gapPlace, sample)
      : 1;
    return [
      { on: !stops, swing: share, travel: 0, onSpot: false },
      { on: false, swing: -share, travel: 1, onSpot: false },
    ];
  }

  private gapStops(fault: Fault | null, sample: number): boolean {
    return isTarget(fault, 'gap-wide') && this.unit(this.gapPlace, sample) < GAP_STOPS_CHANCE;
  }

  /** The two ends of the signal between two terminals while the target moves, in volts; both the same while it is still. */
  levelsAt(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Between,
    sample: number,
  ): { low: number; high: number } {
    const rig = this.rig(fault, setup, plus, minus, instrument, this.openBy(fault, setup, sample));
    const [first, second] = this.ends(fault, setup, sample);
    rig.take(this.draws.carOf(sample), worseOf(fault));
    const a = this.voltsNow(rig, fault, first);
    const b = second === first ? a : this.voltsNow(rig, fault, second);
    return { low: Math.min(a, b), high: Math.max(a, b) };
  }

  /** Voltage between the leads of a rig at one instant of a sample. */
  volts(rig: Rig, fault: Fault | null, instant: Instant, sample: number): number {
    rig.take(this.draws.carOf(sample), worseOf(fault));
    return this.voltsNow(rig, fault, instant);
  }

  private voltsNow(rig: Rig, fault: Fault | null, instant: Instant): number {
    const failure = rig.solve(instant);
    if (failure)
      throw new UnsolvedCircuit(
        `the circuit cannot be computed with ${fault?.id ?? 'nothing wrong'}: ${failure.words}`,
      );
    return rig.volts();
  }

  /** Voltages of several terminals against battery negative at one instant, without any instrument. */
  voltsOf(
    fault: Fault | null,
    setup: Setup,
    terminals: readonly TerminalId[],
    instant: Instant,
    sample: number,
  ): number[] {
    const blown = this.openBy(fault, setup, sample);
    const rig = this.rig(fault, setup, terminals[0]!, 'battery.negative', 'none', blown, terminals);
    this.volts(rig, fault, instant, sample);
    return rig.watchedVolts();
  }

  /** How often the loose point has been another one. */
  taken(): number {
    return this.draws.taken();
  }

  /** The value of each quantity in a sample. */
  valueOf(sample: number): Draw['value'] {
    const car = this.draws.carOf(sample);
    return (value) => valueIn(car, value);
  }

  /** Fuses that this fault blows as soon as the key is on. */
  blownBy(fault: Fault | null, sample: number): readonly string[] {
    const { fuses } = this;
    if (fuses.length === 0 || !canBlow(fault)) return NONE;
    const key = sample === FREE_POINT ? fault.id : `${fault.id}|${sample}`;
    const cars = sample === FREE_POINT ? this.ofPoint().blown : this.blown;
    const known = cars.get(key);
    if (known) return known;
    const names = fuses.flatMap((fuse) => (this.blows(fault, fuse, sample) ? [fuse.name] : []));
    const blown = this.sameBlown(names);
    cars.set(key, blown);
    return blown;
  }

  /** Parts that this fault keeps open in a setup: fuses that it has blown, relays whose coil gets too little. */
  openBy(fault: Fault | null, setup: Setup, sample: number): readonly string[] {
    const blown = this.blownBy(fault, sample);
    if (fault === null) return blown;
    const starved = this.starvedBy(fault);
    if (starved.length === 0) return blown;
    const closed = this.closedIn(setup);
    const released = starved.filter(
      (relay) => closed.includes(relay) && !this.pullsIn(fault, setup, relay, sample),
    );
    if (released.length === 0) return blown;
    return this.sameBlown([...blown, ...released.map(({ name }) => name)]);
  }

  /** What is known of the point that was taken last. */
  private ofPoint(): SampleSolver['point'] {
    const { point } = this;
    const taken = this.draws.taken();
    if (point.taken !== taken) {
      point.taken = taken;
      if (point.blown.size > 0) point.blown.clear();
      if (point.pulled.size > 0) point.pulled.clear();
    }
    return point;
  }

  /** Relays whose coil a fault may leave with too little. */
  private starvedBy(fault: Fault): readonly RelayPart[] {
    const known = this.starved.get(fault);
    if (known) return known;
    const made = this.relays.filter((relay) => reachesCoil(this.circuit, fault, relay));
    this.starved.set(fault, made);
    return made;
  }

  /** Relays that are closed in a setup of the healthy circuit. */
  private closedIn(setup: Setup): readonly RelayPart[] {
    const known = this.closed.get(setup);
    if (known) return known;
    const made = this.relays.filter((relay) => isRelayClosed(this.circuit, setup, relay));
    this.closed.set(setup, made);
    return made;
  }

  /** A relay closes as the key is turned, if it does at all, and then holds while the engine is cranked. */
  private pullsIn(fault: Fault, setup: Setup, relay: RelayPart, sample: number): boolean {
    if (sample !== FREE_POINT) return this.pullsInNow(fault, setup, relay, sample);
    const { pulled } = this.ofPoint();
    const key = `${fault.id}|${relay.name}|${this.setupKey(this.keyOnSetup(setup))}`;
    const known = pulled.get(key);
    if (known !== undefined) return known;
    const made = this.pullsInNow(fault, setup, relay, sample);
    pulled.set(key, made);
    return made;
  }

  private pullsInNow(fault: Fault, setup: Setup, relay: RelayPart, sample: number): boolean {
    const { name } = relay;
    const isBroken = effectsOf(fault).some(
      (one) => one.kind === 'part' && one.part === name && one.mode === 'coil-open',
    );
    if (isBroken) return false;
    const keyOn = this.keyOnSetup(setup);
    const rig = this.rig(fault, keyOn, `${name}.86.pin`, `${name}.85.pin`, 'none', NONE);
    const volts = this.volts(rig, fault, RESTS_OFF, sample);
    return volts >= valueIn(this.draws.carOf(sample), this.ownValue.get(relay)!);
  }

  private keyOnSetup(setup: Setup): Setup {
    if (setup.state === 'key-off') return setup;
    const known = this.keyOn.get(setup) ?? { ...setup, state: 'key-on', target: 'still' };
    this.keyOn.set(setup, known);
    return known;
  }

  private blows(fault: Fault, fuse: FusePart, sample: number): boolean {
    const { name } = fuse;
    if (effectsOf(fault).some((one) => one.kind === 'part' && one.part === name)) return false;
    const rig = this.rig(fault, PLAIN_SETUP, `${name}.in.pin`, `${name}.out.pin`, 'none', NONE);
    const volts = this.volts(rig, fault, this.still(fault, sample), sample);
    const ohms = valueIn(this.draws.carOf(sample), this.ownValue.get(fuse)!);
    return Math.abs(volts) / ohms > FUSE_BLOWS_AT * fuse.amps;
  }

  /** One list for the same names, so that rigs are found by it. */
  private sameBlown(names: readonly string[]): readonly string[] {
    if (names.length === 0) return NONE;
    const key = names.join();
    const known = this.blownLists.get(key) ?? names;
    this.blownLists.set(key, known);
    return known;
  }

  /** The compiled circuit for a fault, a setup and an instrument between two terminals; kept for the next sample. */
  rig(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Between,
    blown: readonly string[],
    watched: readonly TerminalId[] = NONE,
  ): Rig {
    const built = worseOf(fault) === NOTHING_WORSE ? fault : null;
    const shelf = this.shelf(setup, plus, minus, instrument, blown, watched);
    const shelved = shelf.rigs.get(built);
    if (shelved?.isKept) return shelved.rig;
    const key = `${built?.id ?? ''}|${this.setupKey(setup)}|${plus}|${minus}|${instrument}|${blown.join()}|${watched.join()}`;
    const kept =
      this.rigs.get(key) ??
      this.keep(key, this.newRig(built, setup, plus, minus, instrument, blown, watched));
    shelf.rigs.set(built, kept);
    return kept.rig;
  }

  private shelf(
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Between,
    blown: readonly string[],
    watched: readonly TerminalId[],
  ): Shelf {
    const known = this.shelves.get(setup);
    const shelves = known ?? [];
    if (!known) this.shelves.set(setup, shelves);
    for (let at = 0; at < shelves.length; at += 1) {
      const shelf = shelves[at]!;
      if (
        shelf.plus === plus &&
        shelf.minus === minus &&
        shelf.instrument === instrument &&
        shelf.blown === blown &&
        shelf.watched === watched
      ) {
        if (at > 0) {
          shelves[at] = shelves[at - 1]!;
          shelves[at - 1] = shelf;
        }
        return shelf;
      }
    }
    const made = { plus, minus, instrument, blown, watched, rigs: new Map<Fault | null, Kept>() };
    shelves.unshift(made);
    if (shelves.length > SHELVES_MAX) shelves.pop();
    return made;
  }

  private keep(key: string, rig: Rig): Kept {
    this.keptElements += rig.elements;
    for (const [old, kept] of this.rigs) {
      if (this.keptElements <= this.keptElementsMax) break;
      this.rigs.delete(old);
      kept.isKept = false;
      this.keptElements -= kept.rig.elements;
    }
    const kept = { rig, isKept: true };
    this.rigs.set(key, kept);
    return kept;
  }

  private newRig(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Between,
    blown: readonly string[],
    watched: readonly TerminalId[],
  ): Rig {
    const plan = onFrom(this.planOf(fault, setup, blown));
    const a = plan.node(plus);
    const b = plan.node(minus);
    const element = this.instrumentElement(instrument, a, b);
    const at = element && a !== b ? plan.makers.length : -1;
    if (element && a !== b) plan.makers.push(fixedElement(element));
    return new Rig({
      nodes: plan.nodes,
      makers: plan.makers,
      plus: a,
      minus: b,
      instrument: at,
      watched: watched.map((terminal) => plan.node(terminal)),
      still: this.still(fault, NOMINAL),
      // A wiper is mostly read at one end only.
      moves: setup.target !== 'still' && sensorOf(this.circuit).kind !== 'potentiometer',
      draws: this.draws,
    });
  }

  /** The circuit without any instrument; many are put to the same one. */
  private planOf(fault: Fault | null, setup: Setup, blown: readonly string[]): Plan {
    const key = `${fault?.id ?? ''}|${this.setupKey(setup)}|${blown.join()}`;
    const known = this.plans.get(key);
    if (known) return known;
    const made = planNetlist(this.circuit, setup, effectsOf(fault), blown);
    addBridges(made, setup, bridgeElement);
    this.plans.set(key, made);
    const [oldest] = this.plans.keys();
    if (this.plans.size > PLANS_KEPT && oldest !== undefined) this.plans.delete(oldest);
    return made;
  }

  private instrumentElement(between: Between, a: number, b: number): Element | null {
    return between === 'none' ? null : (INSTRUMENTS[between].element?.(a, b, this.meter) ?? null);
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

const RESTS_OFF: Instant = { on: false, swing: 0, travel: 0, onSpot: false };
const RESTS_ON: Instant = { ...RESTS_OFF, on: true };
