/** A compiled circuit with its instrument: takes one car after another, and each at one instant of its sensor after another. */
import type { Span } from './circuit.ts';
import { atNodes, GROUND, type Netlist, nodesOf } from './netlist.ts';
import type { Draw, Instant, MakeElement, PlanValue } from './plan.ts';
import { type DrawnCar, type Samples, valueIn } from './samples.ts';
import { createSolver, type DcSolver, type SolveFailure } from './solve-dc.ts';
import { isLinear } from './solver-plan.ts';

/** What a rig is made of: its nodes, its elements and where the leads go. */
export interface RigParts {
  readonly nodes: readonly string[];
  readonly makers: readonly MakeElement[];
  /** Nodes of the leads. */
  readonly plus: number;
  readonly minus: number;
  /** Number of the instrument's element, or -1. */
  readonly instrument: number;
  /** The sensor of the nominal car. */
  readonly still: Instant;
  /** Each car is looked at in more than one instant. */
  readonly moves: boolean;
  /** Further nodes whose voltages are asked for. */
  readonly watched: readonly number[];
  /** Knows the cars. */
  readonly draws: Pick<Samples, 'placeOf'>;
}

/** A resistor whose resistance is one value of the car. */
interface PlainElement {
  readonly index: number;
  readonly key: string;
  readonly place: number;
  readonly nominal: number;
  readonly times: number;
  readonly isWarm: boolean;
  readonly more: Span | null;
}

/** What a fault adds to a resistance, which is one value of the car. */
export interface Worse {
  /** Of the value. */
  readonly key: string;
  readonly more: Span;
}

/** One circuit, setup and instrument, with what a fault has made of the circuit. */
export class Rig implements Draw {
  on = false;
  swing = 0;
  travel = 0;
  onSpot = false;
  private readonly makers: readonly MakeElement[];
  private readonly instrument: number;
  private readonly solver: DcSolver;
  /** Nodes of the leads and of what else is asked for, as the solver counts them. */
  private readonly plus: number;
  private readonly minus: number;
  private readonly watched: readonly number[];
  /** What is one value of the car: its element, the value's place, and by what it is multiplied. */
  private readonly plainAt: Int32Array;
  private readonly plainPlace: Int32Array;
  private readonly plainTimes: Float64Array;
  private readonly plainNominal: Float64Array;
  /** 1 where it is copper, which is warm. */
  private readonly plainWarm: Uint8Array;
  /** Those to which a fault adds some. */
  private readonly plainMore: readonly PlainElement[];
  private readonly plain: readonly PlainElement[];
  /** Made when a fault first makes something worse. */
  private plainByKey: ReadonlyMap<string, PlainElement> | null = null;
  /** Of all copper of the circuit. */
  private readonly warmth: ((draw: Draw) => number) | null;
  /** Elements that have to be made anew for each car, and for each instant. */
  private readonly steady: readonly number[];
  private readonly moving: readonly number[];
  /** Whether the next instant of a car leaves everything that was reduced as it is. */
  private readonly staysReduced: boolean;
  private readonly sizePlace: number;
  private car: DrawnCar | null = null;
  private share = 0.5;
  private isReduced = false;

  constructor(parts: RigParts) {
    const { nodes, makers, plus, minus, instrument, still, moves, watched, draws } = parts;
    this.makers = makers;
    this.instrument = instrument;
    this.sizePlace = draws.placeOf('fault.size');
    this.setInstant(still);
    const elements = makers.map((make) => make(this));
    const probe = new InstantProbe(this);
    const { moving, steady, plain, warmth } = sorted(makers, probe);
    const linear = moving.filter((index) => isLinear(elements[index]!));
    this.staysReduced = moves || linear.length === 0;
    this.moving = moving;
    this.steady = steady;
    this.plain = plain;
    this.warmth = warmth;
    const count = plain.length;
    this.plainAt = new Int32Array(count);
    this.plainPlace = new Int32Array(count);
    this.plainTimes = new Float64Array(count);
    this.plainNominal = new Float64Array(count);
    this.plainWarm = new Uint8Array(count);
    for (let k = 0; k < count; k += 1) {
      const { index, place, times, nominal, isWarm } = plain[k]!;
      this.plainAt[k] = index;
      this.plainPlace[k] = place;
      this.plainTimes[k] = times;
      this.plainNominal[k] = nominal;
      this.plainWarm[k] = isWarm ? 1 : 0;
    }
    this.plainMore = plain.filter(({ more }) => more !== null);
    const varying = moves ? linear : [];
    const small = withoutOthers({ nodes, elements }, [plus, minus, ...watched]);
    [this.plus = GROUND, this.minus = GROUND, ...this.watched] = small.wanted;
    this.solver = createSolver(small.netlist, { watched: small.wanted, varying });
    // A guess that hangs on the circuit alone, so that no answer hangs on what was asked before.
    if (this.solver.solve() === null) this.solver.beginHere();
  }

  /** Takes a car, null for the nominal one, in which some resistances are `worse`. */
  take(car: DrawnCar | null, worse: readonly Worse[]): void {
    this.car = car;
    this.share = car === null ? 0.5 : car.point[this.sizePlace]!;
    this.isReduced = false;
    const { plainAt, plainPlace, plainTimes, plainWarm, plainMore } = this;
    const { makers, steady, solver, warmth } = this;
    const warm = warmth === null ? 1 : warmth(this);
    const values = car === null ? null : car.values;
    for (let k = 0; k < plainAt.length; k += 1) {
      const value = values === null ? this.plainNominal[k]! : values[plainPlace[k]!]!;
      solver.setOhms(plainAt[k]!, (plainWarm[k] === 1 ? warm : 1) * plainTimes[k]! * value);
    }
    for (let k = 0; k < plainMore.length; k += 1)
      solver.setOhms(plainMore[k]!.index, this.ohmsOf(plainMore[k]!, warm));
    for (let k = 0; k < worse.length; k += 1) {
      // A plug that is apart, or a part that is out, has nothing that could be worse.
      const element = this.plainOf(worse[k]!.key);
      if (element)
        solver.setOhms(element.index, this.ohmsOf(element, warm) + this.size(worse[k]!.more));
    }
    for (let k = 0; k < steady.length; k += 1)
      solver.replace(steady[k]!, makers[steady[k]!]!(this));
  }

  /** Solves the car at an instant; null when `volts` and `amps` hold. */
  solve(instant: Instant): SolveFailure | null {
    const { makers, solver, moving, isReduced } = this;
    this.setInstant(instant);
    for (let k = 0; k < moving.length; k += 1)
      solver.replace(moving[k]!, makers[moving[k]!]!(this));
    this.isReduced = this.staysReduced;
    return isReduced ? solver.solveAgain() : solver.solve();
  }

  /** Between the leads, in volts. */
  volts(): number {
    const { volts } = this.solver;
    return volts[this.plus]! - volts[this.minus]!;
  }

  /** Of the watched nodes against battery negative, in volts. */
  watchedVolts(): number[] {
    return this.watched.map((node) => this.solver.volts[node]!);
  }

  /** Through the instrument, in amperes; none where there is none. */
  amps(): number {
    const { instrument } = this;
    return instrument < 0 ? 0 : this.solver.current(instrument);
  }

  value(value: PlanValue): number {
    return valueIn(this.car, value);
  }

  size({ low, high }: Span): number {
    return low === high ? low : low * (high / low) ** this.share;
  }

  private plainOf(key: string): PlainElement | undefined {
    this.plainByKey ??= new Map(this.plain.map((element) => [element.key, element]));
    return this.plainByKey.get(key);
  }

  private ohmsOf({ place, nominal, times, isWarm, more }: PlainElement, warm: number): number {
    const { car } = this;
    const ohms = (isWarm ? warm : 1) * times * (car === null ? nominal : car.values[place]!);
    return more === null ? ohms : ohms + this.size(more);
  }

  private setInstant({ on, swing, travel, onSpot }: Instant): void {
    this.on = on;
    this.swing = swing;
    this.travel = travel;
    this.onSpot = onSpot;
  }
}

/** The netlist with the nodes that something ends at or that are wanted, in their order; an element's number stays. */
function withoutOthers(
  { nodes, elements }: Netlist,
  wanted: readonly number[],
): { netlist: Netlist; wanted: number[] } {
  const place = new Int32Array(nodes.length);
  place[GROUND] = 1;
  for (const node of wanted) place[node] = 1;
  for (const element of elements) {
    // Nearly all are resistors; of these no list is made.
    if (element.kind === 'resistor') {
      place[element.a] = 1;
      place[element.b] = 1;
    } else for (const node of nodesOf(element)) place[node] = 1;
  }
  const kept: string[] = [];
  for (let node = 0; node < place.length; node += 1) {
    if (place[node] === 0) continue;
    place[node] = kept.length;
    kept.push(nodes[node]!);
  }
  const at = (node: number) => place[node]!;
  return {
    netlist: { nodes: kept, elements: elements.map((element) => atNodes(element, at)) },
    wanted: wanted.map(at),
  };
}

/** Makers by what has to be done for a car and for an instant of it; nothing for those that are fixed. */
function sorted(makers: readonly MakeElement[], probe: InstantProbe) {
  const moving: number[] = [];
  const steady: number[] = [];
  const plain: PlainElement[] = [];
  let warmth: ((draw: Draw) => number) | null = null;
  for (let index = 0; index < makers.length; index += 1) {
    const make = makers[index]!;
    warmth ??= make.plain?.warmth ?? null;
    if (make.fixed) continue;
    if (make.plain) plain.push(plainElement(make.plain, index));
    else if (probe.isAsked(make)) moving.push(index);
    else steady.push(index);
  }
  return { moving, steady, plain, warmth };
}

/** A draw that notices when it is asked for the instant. */
class InstantProbe implements Draw {
  private readonly draw: Draw;
  private asked = false;

  constructor(draw: Draw) {
    this.draw = draw;
  }

  /** Whether what an element is made of hangs on the instant. Which values it asks for hangs on its circuit alone. */
  isAsked(make: MakeElement): boolean {
    this.asked = false;
    make(this);
    return this.asked;
  }

  value(value: PlanValue): number {
    return this.draw.value(value);
  }

  size(of: Span): number {
    return this.draw.size(of);
  }

  get on(): boolean {
    this.asked = true;
    return this.draw.on;
  }

  get swing(): number {
    this.asked = true;
    return this.draw.swing;
  }

  get travel(): number {
    this.asked = true;
    return this.draw.travel;
  }

  get onSpot(): boolean {
    this.asked = true;
    return this.draw.onSpot;
  }
}

function plainElement(
  { value, times, warmth, more }: NonNullable<MakeElement['plain']>,
  index: number,
): PlainElement {
  const { key, place } = value;
  return { index, key, place, nominal: value.of.nominal, times, isWarm: warmth !== null, more };
}
