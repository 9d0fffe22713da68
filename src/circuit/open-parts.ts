/**
 * Parts that a fault keeps open in a setup: fuses that it blows as the key is turned, and relays whose coil it leaves with
 * too little to pull in.
 */
import { valuesOf } from './car-quantities.ts';
import { type Circuit, effectsOf, type Fault, type FusePart, type RelayPart } from './circuit.ts';
import { canBlow } from './fault-electrics.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import type { Instant, PlanValue } from './plan.ts';
import { isRelayClosed, reachesCoil } from './relay-coil.ts';
import type { Rig } from './rig.ts';
import type { RigStore } from './rig-store.ts';
import { FREE_POINT, type Samples, valueIn } from './samples.ts';
import { RESTS_OFF, type SensorMoments } from './sensor-moments.ts';
import { FUSE_BLOWS_AT } from './supply-limits.ts';
import type { Setup, TerminalId } from './test.ts';

/** What it takes to find out what a part gets. */
export interface OpenPartsAsk {
  readonly circuit: Circuit;
  readonly draws: Samples;
  readonly rigs: RigStore;
  readonly moments: SensorMoments;
  /** Voltage between the leads of a rig at one instant of a sample. */
  readonly volts: (rig: Rig, fault: Fault | null, instant: Instant, sample: number) => number;
}

/** Ends of parts: those of the first, and those of the others two by two, one list for good. */
interface PartEnds {
  readonly first: readonly [TerminalId, TerminalId];
  readonly rest: readonly TerminalId[];
}

/** Knows what was found for the samples of one circuit; of the loose point only while it stays. */
export class OpenParts {
  private readonly ask: OpenPartsAsk;
  private readonly circuit: Circuit;
  private readonly draws: Samples;
  private readonly blown = new Map<string, readonly string[]>();
  /** The same of the point that was taken last, and which relays then pull in. */
  private readonly point = {
    taken: 0,
    blown: new Map<string, readonly string[]>(),
    pulled: new Map<string, readonly RelayPart[]>(),
  };
  /** Resistance of a fuse, volts that a relay pulls in at. */
  private readonly ownValue: ReadonlyMap<FusePart | RelayPart, PlanValue>;
  private readonly blownLists = new Map<string, readonly string[]>();
  private readonly fuses: readonly FusePart[];
  private readonly fuseEnds: PartEnds;
  private readonly coilEnds: PartEnds;
  private readonly relays: readonly RelayPart[];
  private readonly starved = new WeakMap<Fault, readonly RelayPart[]>();
  private readonly closed = new WeakMap<Setup, readonly RelayPart[]>();
  /** The same setup as the key is turned. */
  private readonly keyOn = new WeakMap<Setup, Setup>();

  constructor(ask: OpenPartsAsk) {
    const { circuit, draws } = ask;
    this.ask = ask;
    this.circuit = circuit;
    this.draws = draws;
    this.fuses = circuit.parts.filter((part) => part.kind === 'fuse');
    this.relays = circuit.parts.filter((part) => part.kind === 'relay').filter(({ coil }) => coil);
    this.fuseEnds = endsOf(this.fuses, 'in', 'out');
    this.coilEnds = endsOf(this.relays, '86', '85');
    const valueAs = valuesOf(circuit);
    this.ownValue = new Map<FusePart | RelayPart, PlanValue>([
      ...this.fuses.map((fuse) => [fuse, valueAs(`${fuse.name}.ohms`, fuse.ohms)] as const),
      ...this.relays.map(
        (relay) => [relay, valueAs(`${relay.name}.pulls-in`, relay.coil!.pullsIn)] as const,
      ),
    ]);
  }

  /** Parts that this fault keeps open in a setup: fuses that it has blown, relays whose coil gets too little. */
  in(fault: Fault | null, setup: Setup, sample: number): readonly string[] {
    const blown = this.blownBy(fault, sample);
    if (fault === null) return blown;
    const starved = this.starvedBy(fault);
    if (starved.length === 0) return blown;
    const closed = this.closedIn(setup);
    const asked = starved.filter((relay) => closed.includes(relay));
    if (asked.length === 0) return blown;
    const pulled = this.pulledIn(fault, setup, sample);
    const released = asked.filter((relay) => !pulled.includes(relay));
    if (released.length === 0) return blown;
    return this.sameBlown([...blown, ...released.map(({ name }) => name)]);
  }

  /** Fuses that this fault blows as soon as the key is on. */
  private blownBy(fault: Fault | null, sample: number): readonly string[] {
    const { fuses } = this;
    if (fuses.length === 0 || !canBlow(fault)) return NONE_OPEN;
    const key = sample === FREE_POINT ? fault.id : `${fault.id}|${sample}`;
    const cars = sample === FREE_POINT ? this.ofPoint().blown : this.blown;
    const known = cars.get(key);
    if (known) return known;
    const blown = this.sameBlown(this.blowing(fault, sample).map(({ name }) => name));
    cars.set(key, blown);
    return blown;
  }

  /** What is known of the point that was taken last. */
  private ofPoint(): OpenParts['point'] {
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
  private pulledIn(fault: Fault, setup: Setup, sample: number): readonly RelayPart[] {
    if (sample !== FREE_POINT) return this.pulledInNow(fault, setup, sample);
    const { pulled } = this.ofPoint();
    const key = `${fault.id}|${this.ask.rigs.setupKey(this.keyOnSetup(setup))}`;
    const known = pulled.get(key);
    if (known !== undefined) return known;
    const made = this.pulledInNow(fault, setup, sample);
    pulled.set(key, made);
    return made;
  }

  private pulledInNow(fault: Fault, setup: Setup, sample: number): readonly RelayPart[] {
    const across = this.voltsAcross(
      this.coilEnds,
      fault,
      this.keyOnSetup(setup),
      RESTS_OFF,
      sample,
    );
    const car = this.draws.carOf(sample);
    const isBroken = ({ name }: RelayPart) =>
      effectsOf(fault).some(
        (one) => one.kind === 'part' && one.part === name && one.mode === 'coil-open',
      );
    return this.relays.filter(
      (relay, at) => !isBroken(relay) && across[at]! >= valueIn(car, this.ownValue.get(relay)!),
    );
  }

  private keyOnSetup(setup: Setup): Setup {
    if (setup.state === 'key-off') return setup;
    const known = this.keyOn.get(setup) ?? { ...setup, state: 'key-on', target: 'still' };
    this.keyOn.set(setup, known);
    return known;
  }

  private blowing(fault: Fault, sample: number): readonly FusePart[] {
    const isOwn = ({ name }: FusePart) =>
      effectsOf(fault).some((one) => one.kind === 'part' && one.part === name);
    if (this.fuses.every(isOwn)) return [];
    const still = this.ask.moments.still(fault, sample);
    const across = this.voltsAcross(this.fuseEnds, fault, PLAIN_SETUP, still, sample);
    const car = this.draws.carOf(sample);
    return this.fuses.filter((fuse, at) => {
      const ohms = valueIn(car, this.ownValue.get(fuse)!);
      return !isOwn(fuse) && Math.abs(across[at]!) / ohms > FUSE_BLOWS_AT * fuse.amps;
    });
  }

  /** Volts between the two ends of each part, all of one solution: a rig for each would be as many as parts times faults. */
  private voltsAcross(
    { first, rest }: PartEnds,
    fault: Fault,
    setup: Setup,
    instant: Instant,
    sample: number,
  ): number[] {
    const { rigs, volts } = this.ask;
    const rig = rigs.rig(fault, setup, first[0], first[1], 'none', NONE_OPEN, rest);
    const across = [volts(rig, fault, instant, sample)];
    const at = rig.watchedVolts();
    for (let k = 0; k < at.length; k += 2) across.push(at[k]! - at[k + 1]!);
    return across;
  }

  /** One list for the same names, so that rigs are found by it. */
  private sameBlown(names: readonly string[]): readonly string[] {
    if (names.length === 0) return NONE_OPEN;
    const key = names.join();
    const known = this.blownLists.get(key) ?? names;
    this.blownLists.set(key, known);
    return known;
  }
}

function endsOf(parts: readonly { readonly name: string }[], one: string, other: string): PartEnds {
  const [first = '', second = '', ...rest] = parts.flatMap(({ name }) => [
    `${name}.${one}.pin`,
    `${name}.${other}.pin`,
  ]);
  return { first: [first, second], rest };
}

const NONE_OPEN: readonly string[] = [];
