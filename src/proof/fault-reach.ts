/** What the cars of one fault can come to in a tree: which of them reach each step, by any way with these steps passed over. */
import { testOf } from '../procedure/test-of.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { CARS_BESIDE, type CarExits } from './car-exits.ts';
import type { ProofVisit, TreeWay } from './walk-faults.ts';
import { type Lacking, seesFault, type TreePlace, type WayTree } from './way-tree.ts';

/** Steps that could not be done on one way at most. */
export const SKIPS_MAX = 2;

/** Ways to one end that are told at most, each by another last decision. Our choice. */
const WAYS_TOLD_MAX = 8;

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
  /** It has slept on but for a moment, and the answer given then says that it came. */
  readonly seen: boolean;
  readonly samples: readonly number[];
  readonly of: number;
  /** One of the ways, for some of the samples, those on it. */
  readonly example: (sample: number) => OtherWay;
  /** Ways of these samples by each last decision, as far as no step was passed over: every one is a mistake of its own. */
  readonly ways: (samples: readonly number[]) => OtherWay[];
}

/** The cars of a fault that come to a step by any way, of those that were sent. */
export interface Coming {
  readonly fault: string;
  readonly step: string;
  readonly samples: readonly number[];
}

/** A step, and what was passed over on the way to it. */
interface ReachNode {
  readonly place: TreePlace;
  readonly lacking: Lacking;
  /** Cars that come here, and those of them that have not gone on yet. */
  cars: number;
  waiting: number;
  /** The first to come, each with the way they took. */
  readonly from: Came[];
}

/** Cars that have come from a node. */
interface Came {
  readonly cars: number;
  readonly node: ReachNode;
  readonly outcome: string | null;
  readonly skipped: boolean;
}

/** The nodes with the same lacking: in the order in which they are come to, and by the number of their place. */
interface Layer {
  readonly nodes: ReachNode[];
  readonly byPlace: ReachNode[];
}

/** Walked when it is made. */
export class FaultReach {
  private readonly tree: WayTree;
  private readonly exits: CarExits;
  private readonly fault: string;
  private readonly sleeping: boolean;
  /** Steps that are not made on the ways that are looked for. */
  private readonly unmade: ReadonlySet<string>;
  /** Decisions that are not taken on them. */
  private readonly cut: ReadonlySet<string>;
  /** In the order in which they are come to, and by the number of what is lacking. */
  private readonly levels: Layer[] = [];
  private readonly levelOf: Layer[] = [];
  private readonly queue: ReachNode[] = [];

  constructor(
    tree: WayTree,
    exits: CarExits,
    fault: string,
    sleeping: boolean,
    unmade: ReadonlySet<string> = new Set(),
    cut: ReadonlySet<string> = new Set(),
  ) {
    this.tree = tree;
    this.unmade = unmade;
    this.cut = cut;
    this.exits = exits;
    this.fault = fault;
    this.sleeping = sleeping;
    const all = exits.cars === 32 ? -1 : (1 << exits.cars) - 1;
    this.come(tree.start, tree.lackingNothing(), all, null, null, false);
    for (let node = this.queue.pop(); node; node = this.queue.pop()) this.leave(node);
  }

  report(hear: (arrival: Arrival) => void): void {
    const ends = new Map<
      string,
      { end: string; seen: boolean; cars: number; nodes: ReachNode[] }
    >();
    for (const { nodes } of this.levels)
      for (const node of nodes) {
        const { step } = node.place;
        if (step.kind !== 'conclude') continue;
        const end = this.tree.standing(step.id, node.lacking);
        const { seen } = node.lacking;
        const found = ends.get(`${end} ${seen}`) ?? { end, seen, cars: 0, nodes: [] };
        ends.set(`${end} ${seen}`, found);
        found.cars |= node.cars;
        found.nodes.push(node);
      }
    for (const { end, seen, cars, nodes } of ends.values()) {
      // The ways with the fewest steps passed over are told first.
      nodes.sort((a, b) => a.lacking.skips - b.lacking.skips);
      const example = (sample: number) =>
        this.wayTo(nodes.find((one) => one.cars & (1 << sample))!, sample, end);
      hear({
        fault: this.fault,
        end,
        sleeping: this.sleeping,
        seen,
        samples: samplesOf(cars),
        of: this.exits.cars,
        example,
        ways: (samples) => this.waysTo(end, seen, samples, example(samples[0]!)),
      });
    }
  }

  /** The last decision of each way is cut off, and another way looked for, until there is none. */
  private waysTo(
    end: string,
    seen: boolean,
    samples: readonly number[],
    first: OtherWay,
  ): OtherWay[] {
    const found = [first];
    const cut = new Set(this.cut);
    for (let way: OtherWay | null = first; way !== null && found.length < WAYS_TOLD_MAX; ) {
      const last: ProofVisit | undefined = way.visits.at(-1);
      if (way.skipped.length > 0 || last === undefined) break;
      cut.add(decisionOf(last));
      way = null;
      const { tree, exits, fault, sleeping, unmade } = this;
      new FaultReach(tree, exits, fault, sleeping, unmade, cut).report((arrival) => {
        if (arrival.end !== end || arrival.seen !== seen) return;
        const sample = samples.find((one) => arrival.samples.includes(one));
        if (sample !== undefined) way = arrival.example(sample);
      });
      if (way !== null && (way as OtherWay).skipped.length === 0) found.push(way);
    }
    return found;
  }

  tellComing(hear: (coming: Coming) => void): void {
    const comes = new Map<TreePlace, number>();
    for (const { nodes } of this.levels)
      for (const { place, cars } of nodes)
        if (place.step.kind === 'measure') comes.set(place, (comes.get(place) ?? 0) | cars);
    for (const [{ step }, cars] of comes)
      hear({ fault: this.fault, step: step.id, samples: samplesOf(cars) });
  }

  private come(
    place: TreePlace,
    lacking: Lacking,
    cars: number,
    from: ReachNode | null,
    outcome: string | null,
    skipped: boolean,
  ): void {
    const { byPlace, nodes } = this.levelOf[lacking.number] ?? this.newLevel(lacking);
    let node = byPlace[place.number];
    if (!node) {
      node = { place, lacking, cars: 0, waiting: 0, from: [] };
      byPlace[place.number] = node;
      nodes.push(node);
    }
    const fresh = cars & ~node.cars;
    if (fresh === 0) return;
    if (from) node.from.push({ cars: fresh, node: from, outcome, skipped });
    node.cars |= fresh;
    node.waiting |= fresh;
    this.queue.push(node);
  }

  private newLevel(lacking: Lacking): Layer {
    const level: Layer = { nodes: [], byPlace: [] };
    this.levels.push(level);
    this.levelOf[lacking.number] = level;
    return level;
  }

  private leave(node: ReachNode): void {
    const { place, lacking, waiting } = node;
    const { step, cannot, ways } = place;
    // Those that went on before have come to all that follows.
    if (waiting === 0 || step.kind === 'conclude') return;
    node.waiting = 0;
    if (cannot !== null && lacking.skips < SKIPS_MAX)
      this.come(cannot, this.tree.without(lacking, step.id), waiting, node, null, true);
    if (this.unmade.has(step.id)) return;
    if (step.kind === 'act' || step.kind === 'ask' || testOf(step) === null) {
      for (const { name, to, under } of ways) {
        if (step.kind !== 'look' && under?.includes(this.fault) === false) continue;
        if (this.isCut(step.id, name)) continue;
        const isSeen = this.sleeping && seesFault(step, under, this.fault);
        const after = isSeen ? this.tree.withSeen(lacking) : lacking;
        this.come(to, after, waiting, node, name, false);
      }
      return;
    }
    const shown = this.sleeping ? HEALTHY : this.fault;
    for (const [outcome, some] of this.exits.of(shown, step, waiting).byOutcome) {
      const way = (some & waiting) === 0 ? undefined : ways.find(({ name }) => name === outcome);
      if (way && !this.isCut(step.id, outcome))
        this.come(way.to, lacking, some & waiting, node, outcome, false);
    }
  }

  private isCut(step: string, outcome: string | null): boolean {
    return this.cut.size > 0 && this.cut.has(decisionOf({ step, outcome }));
  }

  private wayTo(end: ReachNode, sample: number, conclusion: string): OtherWay {
    const bit = 1 << sample;
    const visits: ProofVisit[] = [];
    const skipped: string[] = [];
    let cars = end.cars;
    for (let node = end; node.from.length > 0; ) {
      const came = node.from.find((one) => one.cars & bit);
      if (!came) break;
      cars &= came.cars;
      if (came.skipped) skipped.unshift(came.node.place.step.id);
      visits.unshift({
        step: came.node.place.step.id,
        outcome: came.skipped ? null : came.outcome,
      });
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

function decisionOf({ step, outcome }: ProofVisit): string {
  return `${step} ${outcome}`;
}

function samplesOf(cars: number): number[] {
  return Array.from({ length: CARS_BESIDE }, (_, sample) => sample).filter(
    (sample) => cars & (1 << sample),
  );
}
