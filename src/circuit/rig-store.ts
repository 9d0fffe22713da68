/** Compiled circuits with their instrument, kept for the next sample that is asked the same; the oldest go first. */
import { bridgeElement } from './bridge-element.ts';
import { type Circuit, effectsOf, type Fault, sensorOf } from './circuit.ts';
import { NOTHING_WORSE, worseOf } from './fault-electrics.ts';
import { INSTRUMENTS } from './instruments.ts';
import { NearLeads } from './near-leads.ts';
import type { Element } from './netlist.ts';
import { fixedElement, onFrom, type Plan } from './plan.ts';
import { addBridges, planNetlist } from './plan-netlist.ts';
import { Rig } from './rig.ts';
import { NOMINAL, type Samples } from './samples.ts';
import type { SensorMoments } from './sensor-moments.ts';
import type { LeadKind, Meter, Setup, TerminalId } from './test.ts';

/**
 * Compiled circuits kept for the next sample, by the elements of the whole circuits together: what is left of one still holds
 * the circuit that it was made of. Each takes some 0.5 kB.
 */
const KEPT_ELEMENTS_MAX = 400_000;

/** Circuits without an instrument that are kept for the next one; no more elements in all than of the compiled ones. */
const PLANS_KEPT = 512;

/** Places of one setup that are found without making a key. */
const SHELVES_MAX = 256;

/** Which instrument sits between the leads. */
export type Between = LeadKind | 'none';

/** A rig as long as it is kept; shelves still point here when it has gone, and must not hold it. */
interface KeptRig {
  rig: Rig | null;
  /** Of the circuit it was made of. */
  readonly elements: number;
}

/** A circuit without an instrument, and what of it is joined to which place. */
interface KeptPlan {
  readonly plan: Plan;
  readonly near: NearLeads;
}

/** The rigs of one setup with the instrument at one place. */
interface Shelf {
  readonly plus: TerminalId;
  readonly minus: TerminalId;
  readonly instrument: Between;
  readonly blown: readonly string[];
  readonly watched: readonly TerminalId[];
  /** By fault; null also for a fault that only makes resistances worse: its rig is the sound circuit's. */
  readonly rigs: Map<Fault | null, KeptRig>;
}

/** What all rigs of one circuit are made with. */
export interface RigStoreAsk {
  readonly circuit: Circuit;
  readonly meter: Meter;
  readonly draws: Samples;
  readonly moments: SensorMoments;
  readonly keptElementsMax?: number | undefined;
}

/** The rigs of one circuit. A list of names is known by its identity: ask with the same list for the same names. */
export class RigStore {
  private readonly ask: RigStoreAsk;
  private readonly circuit: Circuit;
  private readonly rigs = new Map<string, KeptRig>();
  /** The same rigs, found without making a key: by setup, the last asked for first. */
  private readonly shelves = new WeakMap<Setup, Shelf[]>();
  private readonly plans = new Map<string, KeptPlan>();
  private readonly keptElementsMax: number;
  /** Elements of all of them. */
  private keptElements = 0;
  private planElements = 0;
  private readonly setupKeys = new WeakMap<Setup, string>();

  constructor(ask: RigStoreAsk) {
    this.ask = ask;
    this.circuit = ask.circuit;
    this.keptElementsMax = ask.keptElementsMax ?? KEPT_ELEMENTS_MAX;
  }

  /** The compiled circuit for a fault, a setup and an instrument between two terminals; kept for the next sample. */
  rig(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Between,
    blown: readonly string[],
    watched: readonly TerminalId[] = NONE_WATCHED,
  ): Rig {
    const built = worseOf(fault) === NOTHING_WORSE ? fault : null;
    const shelf = this.shelf(setup, plus, minus, instrument, blown, watched);
    const shelved = shelf.rigs.get(built)?.rig;
    if (shelved) return shelved;
    const key = `${built?.id ?? ''}|${this.setupKey(setup)}|${plus}|${minus}|${instrument}|${blown.join()}|${watched.join()}`;
    const known = this.rigs.get(key);
    if (known?.rig) {
      shelf.rigs.set(built, known);
      return known.rig;
    }
    const plan = this.planOf(built, setup, blown);
    const rig = this.newRig(plan, built, setup, { plus, minus, instrument, watched });
    shelf.rigs.set(built, this.keep(key, rig, plan.plan.makers.length));
    return rig;
  }

  /** One word for a setup, for keys of what is kept. */
  setupKey(setup: Setup): string {
    const known = this.setupKeys.get(setup);
    if (known !== undefined) return known;
    const key = JSON.stringify(setup);
    this.setupKeys.set(setup, key);
    return key;
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
    const made = {
      plus,
      minus,
      instrument,
      blown,
      watched,
      rigs: new Map<Fault | null, KeptRig>(),
    };
    shelves.unshift(made);
    if (shelves.length > SHELVES_MAX) shelves.pop();
    return made;
  }

  private keep(key: string, rig: Rig, elements: number): KeptRig {
    this.keptElements += elements;
    for (const [old, kept] of this.rigs) {
      if (this.keptElements <= this.keptElementsMax) break;
      this.rigs.delete(old);
      this.keptElements -= kept.elements;
      kept.rig = null;
    }
    const kept = { rig, elements };
    this.rigs.set(key, kept);
    return kept;
  }

  private newRig(
    { plan, near }: KeptPlan,
    fault: Fault | null,
    setup: Setup,
    { plus, minus, instrument, watched }: Omit<Shelf, 'blown' | 'rigs'>,
  ): Rig {
    const { nodes, node } = onFrom(plan);
    const a = node(plus);
    const b = node(minus);
    const others = watched.map(node);
    const makers = near.around([a, b, ...others]);
    const element = this.instrumentElement(instrument, a, b);
    const at = element && a !== b ? makers.length : -1;
    if (element && a !== b) makers.push(fixedElement(element));
    return new Rig({
      nodes,
      makers,
      plus: a,
      minus: b,
      instrument: at,
      watched: others,
      still: this.ask.moments.still(fault, NOMINAL),
      // A wiper is mostly read at one end only.
      moves: setup.target !== 'still' && sensorOf(this.circuit).kind !== 'potentiometer',
      draws: this.ask.draws,
    });
  }

  /** The circuit without any instrument; many are put to the same one. */
  private planOf(fault: Fault | null, setup: Setup, blown: readonly string[]): KeptPlan {
    const key = `${fault?.id ?? ''}|${this.setupKey(setup)}|${blown.join()}`;
    const known = this.plans.get(key);
    if (known) return known;
    const plan = planNetlist(this.circuit, setup, effectsOf(fault), blown);
    addBridges(plan, setup, bridgeElement);
    const made = { plan, near: new NearLeads(plan) };
    this.planElements += plan.makers.length;
    for (const [old, kept] of this.plans) {
      if (this.plans.size < PLANS_KEPT && this.planElements <= this.keptElementsMax) break;
      this.plans.delete(old);
      this.planElements -= kept.plan.makers.length;
    }
    this.plans.set(key, made);
    return made;
  }

  private instrumentElement(between: Between, a: number, b: number): Element | null {
    return between === 'none'
      ? null
      : (INSTRUMENTS[between].element?.(a, b, this.ask.meter) ?? null);
  }
}

const NONE_WATCHED: readonly TerminalId[] = [];
