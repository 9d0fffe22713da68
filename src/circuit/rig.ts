/** A compiled circuit with its instrument: takes one car after another, and each at one instant of its sensor after another. */
import type { Toleranced } from '../quantity/quantity.ts';
import { valueAt } from '../quantity/value-at.ts';
import type { Span } from './circuit.ts';
import type { Draw, Instant, MakeElement } from './plan.ts';
import { createSolver, type DcSolver, type SolveFailure } from './solve-dc.ts';
import { isLinear } from './solver-plan.ts';

/** What a rig is made of. */
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
  /** Where the value of a key stands in a point. */
  readonly placeOf: (key: string) => number;
}

/** A resistor whose resistance is one value between two ends, with what it takes to draw it. */
interface EvenOhms {
  readonly index: number;
  readonly place: number;
  readonly nominal: number;
  readonly low: number;
  /** Up to the high end: what is added, or how many times more where it is even in the logarithm. */
  readonly spread: number;
  readonly isLog: boolean;
  readonly times: number;
  readonly isWarm: boolean;
  readonly more: Span | null;
}

/** One circuit, fault, setup and instrument. */
export class Rig implements Draw {
  on = false;
  swing = 0;
  travel = 0;
  onSpot = false;
  private readonly parts: RigParts;
  private readonly solver: DcSolver;
  private readonly even: readonly EvenOhms[];
  /** Of all copper of the circuit. */
  private readonly warmth: ((draw: Draw) => number) | null;
  /** Elements that have to be made anew for each car, and for each instant. */
  private readonly steady: readonly number[];
  private readonly moving: readonly number[];
  /** Whether the next instant of a car leaves everything that was reduced as it is. */
  private readonly staysReduced: boolean;
  private readonly sizePlace: number;
  private point: Float64Array | null = null;
  private share = 0.5;
  private isReduced = false;

  constructor(parts: RigParts) {
    this.parts = parts;
    const { nodes, makers, plus, minus, still, moves, watched, placeOf } = parts;
    this.sizePlace = placeOf('fault.size');
    this.setInstant(still);
    const elements = makers.map((make) => make(this));
    const probe = new InstantProbe(this);
    const moving = [...makers.keys()].filter((index) => probe.isAsked(makers[index]!));
    const linear = moving.filter((index) => isLinear(elements[index]!));
    this.staysReduced = moves || linear.length === 0;
    this.moving = moving;
    this.warmth = makers.find(({ plain }) => plain?.warmth)?.plain?.warmth ?? null;
    this.even = makers.flatMap((make, index) => evenOhms(make, index, placeOf));
    const done = new Set([...moving, ...this.even.map(({ index }) => index)]);
    this.steady = [...makers.keys()].filter((index) => !done.has(index) && !makers[index]!.fixed);
    const varying = moves ? linear : [];
    this.solver = createSolver(
      { nodes, elements },
      { watched: [plus, minus, ...watched], varying },
    );
    // A guess that hangs on the circuit alone, so that no answer hangs on what was asked before.
    if (this.solver.solve() === null) this.solver.beginHere();
  }

  /** Takes the car at a point of the unit cube; null is the nominal one. */
  take(point: Float64Array | null): void {
    this.point = point;
    this.share = point === null ? 0.5 : point[this.sizePlace]!;
    this.isReduced = false;
    const { even, steady, solver, warmth } = this;
    const { makers } = this.parts;
    const warm = warmth === null ? 1 : warmth(this);
    for (let k = 0; k < even.length; k += 1) {
      const { index, place, nominal, low, spread, isLog, times, isWarm, more } = even[k]!;
      const at = point === null ? 0 : point[place]!;
      const value = point === null ? nominal : isLog ? low * spread ** at : low + spread * at;
      const ohms = (isWarm ? warm : 1) * times * value;
      solver.setOhms(index, ohms + (more === null ? 0 : this.size(more)));
    }
    for (let k = 0; k < steady.length; k += 1)
      solver.replace(steady[k]!, makers[steady[k]!]!(this));
  }

  /** Solves the car at an instant; null when `volts` and `amps` hold. */
  solve(instant: Instant): SolveFailure | null {
    const { solver, moving, isReduced } = this;
    const { makers } = this.parts;
    this.setInstant(instant);
    for (let k = 0; k < moving.length; k += 1)
      solver.replace(moving[k]!, makers[moving[k]!]!(this));
    this.isReduced = this.staysReduced;
    return isReduced ? solver.solveAgain() : solver.solve();
  }

  /** Between the leads, in volts. */
  volts(): number {
    const { volts } = this.solver;
    return volts[this.parts.plus]! - volts[this.parts.minus]!;
  }

  /** Of the watched nodes against battery negative, in volts. */
  watchedVolts(): number[] {
    return this.parts.watched.map((node) => this.solver.volts[node]!);
  }

  /** Through the instrument, in amperes. */
  amps(): number {
    return this.solver.current(this.parts.instrument);
  }

  value(key: string, of: Toleranced): number {
    if (this.point === null) return of.nominal;
    return of.low === of.high ? of.low : valueAt(of, this.point[this.parts.placeOf(key)]!);
  }

  size({ low, high }: Span): number {
    return low === high ? low : low * (high / low) ** this.share;
  }

  private setInstant({ on, swing, travel, onSpot }: Instant): void {
    this.on = on;
    this.swing = swing;
    this.travel = travel;
    this.onSpot = onSpot;
  }
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
    if (make.fixed || make.plain) return false;
    this.asked = false;
    make(this);
    return this.asked;
  }

  value(key: string, of: Toleranced): number {
    return this.draw.value(key, of);
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

function evenOhms(
  { plain, fixed }: MakeElement,
  index: number,
  placeOf: RigParts['placeOf'],
): EvenOhms[] {
  if (!plain || fixed || plain.of.oneOf) return [];
  const { nominal, low, high } = plain.of;
  const { times, more } = plain;
  const isLog = plain.of.spread === 'log';
  const spread = isLog ? high / low : high - low;
  const isWarm = plain.warmth !== null;
  const place = placeOf(plain.key);
  return [{ index, place, nominal, low, spread, isLog, times, isWarm, more }];
}
