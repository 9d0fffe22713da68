/**
 * The ways beside the usual ones: every answer of every question that a fault can give, and up to two steps that could
 * not be done. Not way by way, of which there are millions, but as what can be come to: which cars of a fault reach a
 * step by any way with these steps passed over. That is exact, since a car reads the same at a step however it came
 * there, and a conclusion asks for no more of the way than which steps it requires were passed over.
 */
import type { Model } from '../circuit/model.ts';
import {
  type AskOutcome,
  type AskStep,
  type Conclusion,
  isRequired,
  type LookStep,
  type MeasureStep,
  type Procedure,
  type RangeOutcome,
  type Step,
  standingConclusion,
  stepOf,
  WAKING,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { ProofVisit, TreeWay } from './walk-faults.ts';
import { outcomeOf } from './walk-faults.ts';

/** Steps that could not be done on one way at most. */
export const SKIPS_MAX = 2;
/** Cars a fault on ways on which a step could not be done: each a bit of a number. */
export const CARS_BESIDE = 32;

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

/**
 * What every fault, and the healthy circuit, can come to. `report` hears of each end once a fault and number of skips,
 * `come` of each step that is read, while the fault is awake.
 */
export function otherWays(
  procedure: Procedure,
  model: Model,
  report: (arrival: Arrival) => void,
  come: (coming: Coming) => void = () => {},
): void {
  const tree = new Tree(procedure);
  const faults = [HEALTHY, ...model.circuit.faults.map(({ id }) => id)];
  const reader = new Reader(procedure, model);
  for (const fault of faults) {
    for (const sleeping of tree.canWake(fault) ? [false, true] : [false]) {
      const reach = new Reach(tree, reader, fault, sleeping);
      reach.report(report);
      if (!sleeping) reach.tellComing(come);
    }
    reader.forget(fault);
  }
}

/**
 * Looks for a way to an end on which no step of `shown` is made: passed over, or not come to. The first that one of the
 * faults can take, or null. Exact as `otherWays` is.
 */
export function waysWithout(
  procedure: Procedure,
  model: Model,
): (end: string, faults: readonly string[], shown: ReadonlySet<string>) => OtherWay | null {
  const tree = new Tree(procedure);
  const reader = new Reader(procedure, model);
  return (end, faults, shown) => {
    for (const fault of faults)
      for (const sleeping of tree.canWake(fault) ? [false, true] : [false]) {
        let way: OtherWay | null = null;
        new Reach(tree, reader, fault, sleeping, shown).report((arrival) => {
          if (arrival.end === end) way ??= arrival.example(arrival.samples[0]!);
        });
        if (way) return way;
      }
    return null;
  };
}

/** The tree as far as the ways hang on it. */
class Tree {
  readonly procedure: Procedure;
  /** By step: the conclusions that require it, one set for all steps with the same; null for most. */
  private readonly requiredBy = new Map<string, ReadonlySet<string> | null>();
  private readonly woken: ReadonlySet<string>;
  private readonly lacking: Lacking[] = [];

  constructor(procedure: Procedure) {
    this.procedure = procedure;
    const steps = Object.values(procedure.steps);
    const conclusions = steps.filter((step): step is Conclusion => step.kind === 'conclude');
    const sets = new Map<string, ReadonlySet<string>>();
    for (const { id, kind } of steps) {
      if (kind === 'conclude') continue;
      const by = conclusions.filter((one) => isRequired(one, id)).map((one) => one.id);
      const word = by.join(' ');
      if (by.length > 0 && !sets.has(word)) sets.set(word, new Set(by));
      this.requiredBy.set(id, sets.get(word) ?? null);
    }
    this.woken = new Set(
      steps.flatMap((step) =>
        step.kind === 'ask' && WAKING.includes(step.family)
          ? step.outcomes.flatMap(({ under = [] }) => under)
          : [],
      ),
    );
  }

  /** Whether a fault that comes and goes is woken by some step of the tree. */
  canWake(fault: string): boolean {
    return fault !== HEALTHY && this.woken.has(fault);
  }

  /** What is lacking after one more step was passed over. */
  without(lacking: Lacking, step: string): Lacking {
    const required = this.requiredBy.get(step) ?? null;
    const isNew = required !== null && !lacking.required.includes(required);
    let next = lacking.next.get(isNew ? required : null);
    if (!next) {
      const added = isNew ? [...lacking.required, required] : lacking.required;
      next = this.lackingOf(lacking.skips + 1, added);
      lacking.next.set(isNew ? required : null, next);
    }
    return next;
  }

  /** The conclusion that stands where this much is lacking. */
  standing(id: string, { required }: Lacking): string {
    return standingConclusion(this.procedure, id, (conclusion) =>
      required.some((set) => set.has(conclusion.id)),
    );
  }

  /** Nothing passed over yet. */
  lackingNothing(): Lacking {
    return this.lackingOf(0, []);
  }

  /** One for the same steps in any order. */
  private lackingOf(skips: number, required: readonly ReadonlySet<string>[]): Lacking {
    const same = this.lacking.find(
      (one) =>
        one.skips === skips &&
        one.required.length === required.length &&
        required.every((set) => one.required.includes(set)),
    );
    if (same) return same;
    const made = { skips, required, next: new Map() };
    this.lacking.push(made);
    return made;
  }
}

/** How many steps were passed over, and which conclusions lack one of them. */
interface Lacking {
  readonly skips: number;
  readonly required: readonly ReadonlySet<string>[];
  readonly next: Map<ReadonlySet<string> | null, Lacking>;
}

/** Where the cars of a fault leave a step, kept while the fault is walked; those of a healthy circuit for longer. */
class Reader {
  private readonly procedure: Procedure;
  private readonly model: Model;
  private readonly kept = new Map<string, Map<string, Exits>>();

  constructor(procedure: Procedure, model: Model) {
    this.procedure = procedure;
    this.model = model;
  }

  get cars(): number {
    return Math.min(CARS_BESIDE, this.model.samples);
  }

  forget(fault: string): void {
    if (fault !== HEALTHY) this.kept.delete(fault);
  }

  exits(fault: string, step: MeasureStep | LookStep, wanted: number): Exits {
    const ofFault = this.kept.get(fault) ?? new Map<string, Exits>();
    this.kept.set(fault, ofFault);
    const exits = ofFault.get(step.id) ?? { known: 0, byOutcome: new Map<string, number>() };
    ofFault.set(step.id, exits);
    const test = testOf(step)!;
    for (let sample = 0; sample < this.cars; sample += 1) {
      const bit = 1 << sample;
      if ((wanted & bit) === 0 || (exits.known & bit) !== 0) continue;
      exits.known |= bit;
      const outcome = outcomeOf(step, this.model.shows(fault, test, sample));
      if (outcome === null) continue;
      exits.byOutcome.set(outcome, (exits.byOutcome.get(outcome) ?? 0) | bit);
    }
    return exits;
  }

  step(id: string): Step {
    return stepOf(this.procedure, id);
  }
}
interface Exits {
  /** Cars that were read. */
  known: number;
  readonly byOutcome: Map<string, number>;
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

/** What the cars of one fault can come to. */
class Reach {
  private readonly tree: Tree;
  private readonly reader: Reader;
  private readonly fault: string;
  private readonly sleeping: boolean;
  /** Steps that are not made on the ways that are looked for. */
  private readonly unmade: ReadonlySet<string>;
  private readonly nodes = new Map<Lacking, Map<string, Node>>();
  private readonly queue: Node[] = [];

  constructor(
    tree: Tree,
    reader: Reader,
    fault: string,
    sleeping: boolean,
    unmade: ReadonlySet<string> = new Set(),
  ) {
    this.tree = tree;
    this.unmade = unmade;
    this.reader = reader;
    this.fault = fault;
    this.sleeping = sleeping;
    const all = reader.cars === 32 ? -1 : (1 << reader.cars) - 1;
    this.come(tree.procedure.start, tree.lackingNothing(), all, null);
    for (let node = this.queue.pop(); node; node = this.queue.pop()) this.leave(node);
  }

  report(hear: (arrival: Arrival) => void): void {
    const ends = new Map<string, { cars: number; readonly nodes: Node[] }>();
    for (const node of [...this.nodes.values()].flatMap((ofStep) => [...ofStep.values()])) {
      if (this.reader.step(node.step).kind !== 'conclude') continue;
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
        of: this.reader.cars,
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
      if (this.reader.step(step).kind === 'measure')
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
    const step = this.reader.step(node.step);
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
    for (const [outcome, some] of this.reader.exits(shown, step, cars).byOutcome)
      if (some & cars)
        on(step.outcomes.find(({ name }) => name === outcome)!.go, outcome, some & cars);
  }

  /** What can be said to a question under this fault, or read where the circuit knows nothing of the number. */
  private answers(step: AskStep | MeasureStep | LookStep): readonly { name: string; go: string }[] {
    if (step.kind === 'look') return step.outcomes;
    const said: readonly (AskOutcome | RangeOutcome)[] = step.outcomes;
    return said.filter(({ under }) => under?.includes(this.fault) ?? true);
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
      share: samples.length / this.reader.cars,
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
