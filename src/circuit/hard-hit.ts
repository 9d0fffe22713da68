/**
 * Cars that a bridge, a light or a lamp would hit hardest: what of a circuit is left open is set to the worse end, each
 * choice is tried, and the healthy circuit is solved with its output off and on.
 */
import { bridgeElement } from './bridge-element.ts';
import type { CarQuantity } from './car-quantities.ts';
import { type Circuit, moduleOf, sensorOf } from './circuit.ts';
import type { Element } from './netlist.ts';
import { feedChoice } from './open-values.ts';
import { type Draw, NOMINAL_DRAW, type Plan, type PlanValue } from './plan.ts';
import { addBridges, planNetlist } from './plan-netlist.ts';
import { createSolver, type DcSolver } from './solve-dc.ts';
import type { Setup } from './test.ts';

/** A car that is hit hard, at one instant. */
export interface HardHit {
  /** Which of the choices that the circuit leaves open it has. */
  readonly choice: number;
  /** Its pull resistors are the small or the large ones. */
  readonly pull: 'low' | 'high';
  /** The output is on, the wiper at its far end. */
  readonly on: boolean;
  /** Values of which it has the smallest. */
  readonly least: ReadonlySet<string>;
  /** Values of which it has the largest. */
  readonly most: ReadonlySet<string>;
}

/** What the solver makes of one car; currents hold until the next one. */
export interface Solved {
  readonly volts: (name: string) => number;
  readonly amps: (kind: Element['kind']) => number;
}

/** All of them that can differ for a circuit. */
export function hardHits(circuit: Circuit): HardHit[] {
  const sensor = sensorOf(circuit);
  const tracks = sensor.kind === 'potentiometer' ? sensor.tracks : [];
  const least = new Set([
    `${sensor.name}.limit`,
    // What it draws keeps a supply down that is fed backwards.
    `${sensor.name}.draws`,
    ...tracks.map(({ name }) => `${sensor.name}.${name}.ohms`),
  ]);
  const neighbours = circuit.parts.filter(({ kind }) => kind === 'neighbour');
  const most = new Set([
    ...['rest', 'cranking', 'running'].map((state) => `battery.${state}`),
    ...neighbours.map(({ name }) => `${name}.ohms`),
  ]);
  const choices = moduleOf(circuit).inside.map(({ pull, reference }) =>
    Math.max(
      pull?.to.kind === 'one-of' ? pull.to.ends.length : 1,
      reference && feedChoice(reference) ? 2 : 1,
    ),
  );
  return Array.from({ length: Math.max(...choices) }, (_, choice) => choice).flatMap((choice) =>
    (['low', 'high'] as const).flatMap((pull) =>
      [false, true].map((on) => ({ choice, pull, on, least, most })),
    ),
  );
}

/** The healthy circuit in one arrangement, compiled once for all cars. */
export class HitSetup {
  private readonly plan: Plan;
  private solver: DcSolver | null = null;

  constructor(circuit: Circuit, setup: Setup) {
    this.plan = planNetlist(circuit, setup, []);
    addBridges(this.plan, setup, bridgeElement);
  }

  /** Null where the solver finds nothing. */
  solved(car: HardHit): Solved | null {
    const draw: Draw = {
      ...NOMINAL_DRAW,
      on: car.on,
      swing: 0,
      travel: car.on ? 1 : 0,
      value: (value) => hitValue(car, value),
    };
    const elements = this.plan.makers.map((make) => make(draw));
    const solver = this.solverOf(elements);
    if (solver.solve() !== null) return null;
    const found = Float64Array.from(solver.volts);
    return {
      volts: (name) => found[this.plan.nodes.indexOf(name)] ?? 0,
      amps: (kind) => {
        const index = elements.findIndex((one) => one.kind === kind);
        return index < 0 ? 0 : solver.current(index);
      },
    };
  }

  private solverOf(elements: readonly Element[]): DcSolver {
    const { solver } = this;
    if (solver === null) {
      this.solver = createSolver({ nodes: this.plan.nodes, elements });
      return this.solver;
    }
    elements.forEach((element, index) => {
      solver.replace(index, element);
    });
    return solver;
  }
}

/** The battery is strong, a supply of the module's own and what a sensor's output bears are small; the rest is usual. */
export function hitValue(
  { choice, pull, least, most }: HardHit,
  { key, of }: Pick<PlanValue, 'key' | 'of'>,
): number {
  if (of.oneOf && isChoice(key)) return of.oneOf[choice % of.oneOf.length]!.value.nominal;
  if (most.has(key)) return of.high;
  if (key.endsWith('.bias') || least.has(key)) return of.low;
  return key.endsWith('.pull') ? of[pull] : of.nominal;
}

function isChoice(key: CarQuantity['key']): boolean {
  return key.endsWith('.pull-to') || key.endsWith('.feed');
}
