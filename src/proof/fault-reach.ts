/** What the cars of one fault can come to in a tree: which of them reach each step, by any way with these steps passed over. */
import {
  type AskOutcome,
  type AskStep,
  type LookStep,
  type MeasureStep,
  type RangeOutcome,
  type Step,
  stepOf,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { CARS_BESIDE, type CarExits } from './car-exits.ts';
import type { ProofVisit, TreeWay } from './walk-faults.ts';
import type { Lacking, WayTree } from './way-tree.ts';

/** Steps that could not be done on one way at most. */
export const SKIPS_MAX = 2;

/** A way that ends at a conclusion, and the steps on it that could not be done. */
export interface OtherWay extends TreeWay {
  readonly skipped: readonly string[];
  /** The fault slept on the way: it comes and goes, and all was read as in a healthy circuit. */
  readonly sleeping: boolean;
}

/** The cars of a fault that come to an end, of `of` that were sent. */
export interface Arrival {
  readonly fault: string;
  readonly end: string;
  readonly sleeping: boolean;
  readonly samples: readonly number[];
  readonly of: number;
  /** One of the ways, for some of the samples, those on it. */
  readonly example: (sample: number) => OtherWay;
}

/** The cars of a fault that come to a step by any way, of those that were sent. */
export interface Coming {
  readonly fault: string;
  readonly step: string;
  readonly samples: readonly number[];
}

/** A step, and what was passed over on the way to it. */
interface Node {
  readonly step: string;
  readonly lacking: Lacking;
  /** Cars that come here. */
  cars: number;
  /** The first to come, each with the way they took. */
  readonly from: {
    readonly cars: number;
    readonly node: Node;
    readonly outcome: string | null;
    readonly skipped: boolean;
  }[];
}

/** Walked when it is made. */
export class FaultReach {
  private readonly tree: WayTree;
  private readonly exits: CarExits;
  private readonly fault: string;
  private readonly sleeping: boolean;
  /** Steps that are not made on the ways that are looked for. */
  private readonly unmade: ReadonlySet<string>;
  private readonly nodes = new Map<Lacking, Map<string, Node>>();
  private readonly queue: Node[] = [];

  constructor(
    tree: WayTree,
    exits: CarExits,
    fault: string,
    sleeping: boolean,
    unmade: ReadonlySet<string> = new Set(),
  ) {
    this.tree = tree;
    this.unmade = unmade;
    this.exits = exits;
    this.fault = fault;
    this.sleeping = sleeping;
    const all = exits.cars === 32 ? -1 : (1 << exits.cars) - 1;
    this.come(tree.procedure.start, tree.lackingNothing(), all, null);
    for (let node = this.queue.pop(); node; node = this.queue.pop()) this.leave(node);
  }

  report(hear: (arrival: Arrival) => void): void {
    const ends = new Map<string, { cars: number; readonly nodes: Node[] }>();
    for (const node of [...this.nodes.values()].flatMap((ofStep) => [...ofStep.values()])) {
      if (this.step(node.step).kind !== 'conclude') continue;
      const end = this.tree.standing(node.step, node.lacking);
      const found = ends.get(end) ?? { cars: 0, nodes: [] };
      ends.set(end, found);
      found.cars |= node.cars;
      found.nodes.push(node);
    }
    for (const [end, { cars, nodes }] of ends) {
      // The ways with the fewest steps passed over are told first.
      nodes.sort((a, b) => a.lacking.skips - b.lacking.skips);
      hear({
        fault: this.fault,
        end,
        sleeping: this.sleeping,
        samples: samplesOf(cars),
        of: this.exits.cars,
        example: (sample) =>
          this.wayTo(nodes.find((one) => one.cars & (1 << sample))!, sample, end),
      });
    }
  }

  tellComing(hear: (coming: Coming) => void): void {
    const comes = new Map<string, number>();
    for (const ofStep of this.nodes.values())
      for (const [step, { cars }] of ofStep) comes.set(step, (comes.get(step) ?? 0) | cars);
    for (const [step, cars] of comes)
      if (this.step(step).kind === 'measure')
        hear({ fault: this.fault, step, samples: samplesOf(cars) });
  }

  private come(
    step: string,
    lacking: Lacking,
    cars: number,
    from: Omit<Node['from'][number], 'cars'> | null,
  ): void {
    const ofStep = this.nodes.get(lacking) ?? new Map<string, Node>();
    if (ofStep.size === 0) this.nodes.set(lacking, ofStep);
    let node = ofStep.get(step);
    if (!node) {
      node = { step, lacking, cars: 0, from: [] };
      ofStep.set(step, node);
    }
    const fresh = cars & ~node.cars;
    if (fresh === 0) return;
    if (from) node.from.push({ ...from, cars: fresh });
    node.cars |= fresh;
    this.queue.push(node);
  }

  private leave(node: Node): void {
    const step = this.step(node.step);
    if (step.kind === 'conclude') return;
    const { lacking, cars } = node;
    const on = (go: string, outcome: string | null, some: number) =>
      this.come(go, lacking, some, { node, outcome, skipped: false });
    if (step.cannot !== null && lacking.skips < SKIPS_MAX)
      this.come(step.cannot, this.tree.without(lacking, step.id), cars, {
        node,
        outcome: null,
        skipped: true,
      });
    if (this.unmade.has(step.id)) return;
    if (step.kind === 'act') {
      on(step.go, null, cars);
      return;
    }
    if (step.kind === 'ask' || testOf(step) === null) {
      for (const { name, go } of this.answers(step)) on(go, name, cars);
      return;
    }
    const shown = this.sleeping ? HEALTHY : this.fault;
    for (const [outcome, some] of this.exits.of(shown, step, cars).byOutcome)
      if (some & cars)
        on(step.outcomes.find(({ name }) => name === outcome)!.go, outcome, some & cars);
  }

  /** What can be said to a question under this fault, or read where the circuit knows nothing of the number. */
  private answers(step: AskStep | MeasureStep | LookStep): readonly { name: string; go: string }[] {
    if (step.kind === 'look') return step.outcomes;
    const said: readonly (AskOutcome | RangeOutcome)[] = step.outcomes;
    return said.filter(({ under }) => under?.includes(this.fault) ?? true);
  }

  private step(id: string): Step {
    return stepOf(this.tree.procedure, id);
  }

  private wayTo(end: Node, sample: number, conclusion: string): OtherWay {
    const bit = 1 << sample;
    const visits: ProofVisit[] = [];
    const skipped: string[] = [];
    let cars = end.cars;
    for (let node = end; node.from.length > 0; ) {
      const came = node.from.find((one) => one.cars & bit);
      if (!came) break;
      cars &= came.cars;
      if (came.skipped) skipped.unshift(came.node.step);
      visits.unshift({ step: came.node.step, outcome: came.skipped ? null : came.outcome });
      node = came.node;
    }
    const samples = samplesOf(cars);
    return {
      fault: this.fault,
      samples,
      share: samples.length / this.exits.cars,
      visits,
      end: { kind: 'concluded', step: conclusion },
      skipped,
      sleeping: this.sleeping,
    };
  }
}

function samplesOf(cars: number): number[] {
  return Array.from({ length: CARS_BESIDE }, (_, sample) => sample).filter(
    (sample) => cars & (1 << sample),
  );
}
