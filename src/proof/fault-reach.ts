/** What the cars of one fault can come to in a tree: which of them reach each step, by any way with these steps passed over. */
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

/** Which ways are looked for. */
export interface ReachOptions {
  /** The fault sleeps: all reads as in a healthy circuit. */
  readonly sleeping: boolean;
  /** Steps that are not made. */
  readonly unmade?: ReadonlySet<string>;
  /** Decisions that are not taken. */
  readonly cut?: ReadonlySet<string>;
}

/** A step, and what was passed over on the way to it. */
interface ReachNode {
  readonly place: TreePlace;
  readonly lacking: Lacking;
  /** Cars that come here, and those of them that have not gone on yet. */
  cars: number;
  waiting: number;
  /** The first to come, each with the way they took; kept where a way is to be told. */
  readonly from: Came[];
}

/** Cars that have come from a node. */
interface Came {
  readonly cars: number;
  readonly node: ReachNode;
  readonly outcome: string | null;
  readonly skipped: boolean;
}

/** Cars at an end. */
interface EndCars {
  readonly end: string;
  readonly seen: boolean;
  cars: number;
  /** With the fewest steps passed over first. */
  readonly nodes: ReachNode[];
}

/** Walked when it is made. Its nodes are those of the tree, which the next walk takes again, so no more than sums are kept. */
export class FaultReach {
  private readonly tree: WayTree;
  private readonly exits: CarExits;
  private readonly fault: string;
  private readonly options: ReachOptions;
  private readonly ended: readonly Omit<EndCars, 'nodes'>[];
  private readonly comes: ReadonlyMap<TreePlace, number>;

  constructor(tree: WayTree, exits: CarExits, fault: string, options: ReachOptions) {
    this.tree = tree;
    this.exits = exits;
    this.fault = fault;
    this.options = options;
    const walk = new ReachWalk(tree, exits, fault, options);
    this.ended = walk.ended().map(({ end, seen, cars }) => ({ end, seen, cars }));
    this.comes = walk.comes();
    walk.clear();
  }

  /** `fault`: another one that goes the same ways, asleep. */
  report(hear: (arrival: Arrival) => void, fault = this.fault): void {
    for (const { end, seen, cars } of this.ended) {
      let walk: ReachWalk | null = null;
      const example = (sample: number) => {
        walk ??= new ReachWalk(this.tree, this.exits, this.fault, this.options, true);
        return { ...walk.wayTo(end, seen, sample), fault };
      };
      hear({
        fault,
        end,
        sleeping: this.options.sleeping,
        seen,
        samples: samplesOf(cars),
        of: this.exits.cars,
        example,
        ways: (samples) => this.waysTo(end, seen, samples, example(samples[0]!)),
      });
    }
  }

  tellComing(hear: (coming: Coming) => void): void {
    for (const [{ step }, cars] of this.comes)
      hear({ fault: this.fault, step: step.id, samples: samplesOf(cars) });
  }

  /** The last decision of each way is cut off, and another way looked for, until there is none. */
  private waysTo(
    end: string,
    seen: boolean,
    samples: readonly number[],
    first: OtherWay,
  ): OtherWay[] {
    const found = [first];
    const cut = new Set(this.options.cut);
    for (let way: OtherWay | null = first; way !== null && found.length < WAYS_TOLD_MAX; ) {
      const last: ProofVisit | undefined = way.visits.at(-1);
      if (way.skipped.length > 0 || last === undefined) break;
      cut.add(decisionOf(last));
      way = null;
      const { tree, exits, options } = this;
      new FaultReach(tree, exits, first.fault, { ...options, cut }).report((arrival) => {
        if (arrival.end !== end || arrival.seen !== seen) return;
        const sample = samples.find((one) => arrival.samples.includes(one));
        if (sample !== undefined) way = arrival.example(sample);
      });
      if (way !== null && (way as OtherWay).skipped.length === 0) found.push(way);
    }
    return found;
  }
}

/** The nodes of a tree: by the number of what is lacking, then of the place. Made once, and taken anew by each walk. */
const NODES = new WeakMap<WayTree, ReachNode[][]>();

/** One walk; with `traced` it knows the ways, and has nodes of its own. */
class ReachWalk {
  private readonly tree: WayTree;
  private readonly exits: CarExits;
  private readonly fault: string;
  private readonly shown: string;
  private readonly options: ReachOptions;
  private readonly traced: boolean;
  private readonly nodes: ReachNode[][];
  /** What was come to: by what is lacking, in the order in which it was come to. */
  private readonly levels: ReachNode[][] = [];
  private readonly levelOf: ReachNode[][] = [];
  private readonly queue: ReachNode[] = [];

  constructor(
    tree: WayTree,
    exits: CarExits,
    fault: string,
    options: ReachOptions,
    traced = false,
  ) {
    this.tree = tree;
    this.exits = exits;
    this.fault = fault;
    this.shown = options.sleeping ? HEALTHY : fault;
    this.options = options;
    this.traced = traced;
    this.nodes = traced ? [] : (NODES.get(tree) ?? []);
    if (!traced) NODES.set(tree, this.nodes);
    const all = exits.cars === 32 ? -1 : (1 << exits.cars) - 1;
    this.come(tree.start, tree.lackingNothing(), all, null, null, false);
    for (let node = this.queue.pop(); node; node = this.queue.pop()) this.leave(node);
  }

  ended(): EndCars[] {
    const ends = new Map<string, EndCars>();
    for (const nodes of this.levels)
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
    // The ways with the fewest steps passed over are told first.
    for (const { nodes } of ends.values()) nodes.sort((a, b) => a.lacking.skips - b.lacking.skips);
    return [...ends.values()];
  }

  comes(): Map<TreePlace, number> {
    const comes = new Map<TreePlace, number>();
    for (const nodes of this.levels)
      for (const { place, cars } of nodes)
        if (place.step.kind === 'measure') comes.set(place, (comes.get(place) ?? 0) | cars);
    return comes;
  }

  wayTo(conclusion: string, seen: boolean, sample: number): OtherWay {
    const bit = 1 << sample;
    const { nodes } = this.ended().find((one) => one.end === conclusion && one.seen === seen)!;
    const end = nodes.find((one) => one.cars & bit)!;
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
      sleeping: this.options.sleeping,
    };
  }

  private come(
    place: TreePlace,
    lacking: Lacking,
    cars: number,
    from: ReachNode | null,
    outcome: string | null,
    skipped: boolean,
  ): void {
    const node = this.nodeAt(place, lacking);
    const fresh = cars & ~node.cars;
    if (fresh === 0) return;
    if (node.cars === 0) this.levelAt(lacking).push(node);
    if (from && this.traced) node.from.push({ cars: fresh, node: from, outcome, skipped });
    node.cars |= fresh;
    // One with cars waiting stands in the queue already, and is moved to its end.
    node.waiting |= fresh;
    this.queue.push(node);
  }

  private nodeAt(place: TreePlace, lacking: Lacking): ReachNode {
    const ofLacking = this.nodes[lacking.number] ?? [];
    this.nodes[lacking.number] = ofLacking;
    const known = ofLacking[place.number];
    if (known) return known;
    const made: ReachNode = { place, lacking, cars: 0, waiting: 0, from: [] };
    ofLacking[place.number] = made;
    return made;
  }

  private levelAt({ number }: Lacking): ReachNode[] {
    const known = this.levelOf[number];
    if (known) return known;
    const level: ReachNode[] = [];
    this.levels.push(level);
    this.levelOf[number] = level;
    return level;
  }

  private leave(node: ReachNode): void {
    const { place, lacking, waiting } = node;
    const { step, cannot, ways } = place;
    // Those that went on before have come to all that follows.
    if (waiting === 0 || step.kind === 'conclude') return;
    node.waiting = 0;
    const { sleeping, unmade } = this.options;
    if (cannot !== null && lacking.skips < SKIPS_MAX)
      this.come(cannot, this.tree.without(lacking, step.id), waiting, node, null, true);
    if (unmade?.has(step.id)) return;
    if (place.read === null) {
      for (const { name, to, under } of ways) {
        if (step.kind !== 'look' && under?.includes(this.fault) === false) continue;
        if (this.isCut(step.id, name)) continue;
        const isSeen = sleeping && seesFault(step, under, this.fault);
        const after = isSeen ? this.tree.withSeen(lacking) : lacking;
        this.come(to, after, waiting, node, name, false);
      }
      return;
    }
    for (const { name, to, cars } of this.exits.of(this.shown, place, waiting)) {
      const some = cars & waiting;
      if (some !== 0 && !this.isCut(step.id, name)) this.come(to, lacking, some, node, name, false);
    }
  }

  private isCut(step: string, outcome: string | null): boolean {
    const { cut } = this.options;
    return cut !== undefined && cut.size > 0 && cut.has(decisionOf({ step, outcome }));
  }

  /** Leaves the nodes of the tree as it found them. */
  clear(): void {
    for (const nodes of this.levels) for (const node of nodes) node.cars = 0;
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
