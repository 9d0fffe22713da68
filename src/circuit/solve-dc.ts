/**
 * Node voltages at DC: modified nodal analysis (Ho, Ruehli and Brennan, 1975), most of it done once.
 *
 * The wiring is compiled once into a list of steps that work out every node where only resistors and sources end
 * (`reduce.ts`), so thousands of tolerance samples cost neither a search nor an allocation. A few nodes are left; where
 * elements have corners only, or lights sit between two nodes, their voltages are found without iteration of digits
 * (`walk-regions.ts`). What is left over goes the long way, here: damped Newton. Elements with corners (current limits)
 * move at most one region a step, which keeps Newton from jumping to and fro between far regions. If plain Newton fails,
 * each node is tied to its last voltage by a conductance that is then taken away step by step (pseudo-transient
 * continuation).
 */

import { CURRENT, DIODE, EMF, GATED, IDEAL, LAMP, RESISTOR, STRIDE } from './element-curves.ts';
import { createElimination, type Elimination, eliminate, SOLVED } from './eliminate.ts';
import { type Element, GROUND, type Netlist, nodesOf } from './netlist.ts';
import { REDUCED } from './reduce.ts';
import { ENDS, planSolver, type SolverOptions, type SolverPlan } from './solver-plan.ts';
import { WalkedRegions } from './walk-regions.ts';

/**
 * Newton stops when no voltage moves more than this many volts plus its relative share. Rounding moves a part of the
 * circuit that hangs on megohms by some nanovolts; the error left is the square of the last move.
 */
const SETTLED_VOLTS = 1e-7;
const SETTLED_SHARE = 1e-11;
/** Within so small a change the curves are smooth enough that the size of the next one can be told, ... */
const SLOPE_RANGE_VOLTS = 0.01;
/** ... and it must come out this many times smaller than what counts as settled. */
const FORECAST_MARGIN = 100;
/** Newton settles within a dozen steps or hardly ever; then the continuation is tried. */
const NEWTON_STEPS_MAX = 60;
/** Continuation: the tie of each node to its last voltage begins firm and ends where no circuit feels it. */
const TIE_FIRST_SIEMENS = 1;
const TIE_LAST_SIEMENS = 1e-9;
/** A tie that has to grow past this holds every node still: the circuit has no rest near where it is. */
const TIE_FIRMEST_SIEMENS = 1e6;
/** Factors of the tie after a stage that settled (slower after each failure, up to the second) and after one that did not. */
const TIE_SHRINK = 0.1;
const TIE_SHRINK_SLOWEST = 0.7;
const TIE_GROW = 4;
/** From the first tie to the last at the slowest shrink takes 58 stages; the rest is for setbacks. */
const STAGES_MAX = 200;

/** What went wrong, for people who develop a circuit; a loaded circuit never gets here. */
export interface SolveFailure {
  readonly reason: 'no-solution' | 'not-settled';
  readonly node: string;
  readonly words: string;
}

/** One compiled netlist; its elements take new values, its wiring stays. */
export interface DcSolver {
  /** Voltage of each node, ground first; valid after `solve`, for watched nodes only if some were named. */
  readonly volts: Float64Array;
  /** Puts an element of the same kind and nodes with other values in place of element `index`. */
  replace(index: number, element: Element): void;
  /** Gives resistor `index` another resistance, above 0. */
  setOhms(index: number, ohms: number): void;
  /** Null when `volts` hold the solution. */
  solve(): SolveFailure | null;
  /** The same after nothing but elements with curves, corners or named as varying was replaced. */
  solveAgain(): SolveFailure | null;
  /** Lets later solutions begin in the regions of this one. */
  beginHere(): void;
  /** Current through element `index` at the solution, in at its first node and out at its second. */
  current(index: number): number;
}

/** Compiles a netlist. */
export function createSolver(netlist: Netlist, options: SolverOptions = {}): DcSolver {
  return new Solver(planSolver(netlist, options));
}

/** The equations of one step of Newton's method, and what is kept between steps. */
interface Room {
  readonly work: Elimination;
  readonly base: Float64Array;
  readonly last: Float64Array;
}

class Solver extends WalkedRegions implements DcSolver {
  readonly volts: Float64Array;
  private readonly isSmooth: boolean;
  private readonly size: number;
  private readonly width: number;
  /** Room for Newton's method, made when it is first needed: few circuits ever do. */
  private room: Room | null = null;
  /** The unknown at which elimination or Newton gave up last. */
  private failedAt = -1;
  constructor(plan: SolverPlan) {
    super(plan);
    const { nodes, elements } = plan.netlist;
    this.size = plan.size;
    this.width = this.size + 1;
    this.volts = new Float64Array(nodes.length);
    elements.forEach((element, index) => {
      this.replace(index, element);
    });
    // A lamp's curve has a root at zero, other elements have corners.
    this.isSmooth = plan.curved.every((index) => this.kinds[index] === DIODE);
  }

  solve(): SolveFailure | null {
    const alone = this.reduction.run(this.values);
    if (alone !== REDUCED) return this.failure('no-solution', alone);
    return this.solveAgain();
  }

  solveAgain(): SolveFailure | null {
    this.loadMesh();
    if (this.walk()) return this.finish();
    const room = this.roomForNewton();
    this.stampMesh(room.base);
    this.x.fill(0);
    if (this.plan.curved.length === 0) {
      room.work.matrix.set(room.base);
      if (!this.eliminated(room.work)) return this.failure('no-solution');
      this.x.set(room.work.next);
      return this.finish();
    }
    this.resetRegions();
    if (this.newton(room, 0) || this.continuation(room)) return this.finish();
    return this.failure('not-settled');
  }

  private roomForNewton(): Room {
    const { size, width } = this;
    this.room ??= {
      work: createElimination(size),
      base: new Float64Array(size * width),
      last: new Float64Array(size),
    };
    return this.room;
  }

  current(index: number): number {
    const { values, volts } = this;
    const { nodes, ends } = this.plan;
    const at = index * STRIDE;
    const kind = this.kinds[index]!;
    const vb = volts[nodes[index * ENDS + 1]!]!;
    const v = volts[nodes[index * ENDS]!]! - vb;
    if (kind === RESISTOR) return v / values[at]!;
    if (kind === EMF) return (v - values[at]!) * values[at + 1]!;
    if (kind === IDEAL) return this.x[ends[index * ENDS + 2]!]!;
    if (kind === CURRENT) return values[at]!;
    return this.currentAt(index, v, volts[nodes[index * ENDS + 2]!]! - vb);
  }

  private finish(): null {
    const { kept, keptOnly } = this.plan;
    if (keptOnly) for (let k = 0; k < kept.length; k += 1) this.volts[kept[k]!] = this.x[k]!;
    else this.reduction.restore(this.x, this.volts);
    return null;
  }

  /** The node where the last try failed; of a source without resistance one of its ends, not ground. */
  private failedNode(): number {
    const { kept, ideal, netlist } = this.plan;
    if (this.failedAt < kept.length) return kept[this.failedAt] ?? GROUND;
    return Math.max(...nodesOf(netlist.elements[ideal[this.failedAt - kept.length]!]!));
  }

  private failure(reason: SolveFailure['reason'], at: number = this.failedNode()): SolveFailure {
    const node = this.plan.netlist.nodes[at]!;
    const words =
      reason === 'no-solution'
        ? `sources without resistance contradict each other near "${node}"`
        : `the voltages near "${node}" do not converge`;
    return { reason, node, words };
  }

  /** Everything that does not depend on the voltages, as equations. */
  private stampMesh(base: Float64Array): void {
    const { width, values, size, mesh } = this;
    const { ends, ideal } = this.plan;
    base.fill(0);
    for (let a = 0; a < mesh.size; a += 1) {
      base[a * width + a]! += mesh.toGround[a]!;
      base[a * width + size] = mesh.inflow[a]!;
      for (let b = a + 1; b < mesh.size; b += 1) {
        const siemens = mesh.pairs[a * mesh.size + b]!;
        base[a * width + a]! += siemens;
        base[b * width + b]! += siemens;
        base[a * width + b] = -siemens;
        base[b * width + a] = -siemens;
      }
    }
    for (let k = 0; k < ideal.length; k += 1) {
      const index = ideal[k]!;
      const row = ends[index * ENDS + 2]!;
      for (const [end, sign] of [
        [0, 1],
        [1, -1],
      ] as const) {
        const at = ends[index * ENDS + end]!;
        if (at < 0) continue;
        base[at * width + row]! += sign;
        base[row * width + at]! += sign;
      }
      base[row * width + size]! += values[index * STRIDE]!;
    }
  }

  /** Newton from `x`; `tie` holds each unknown near `last`. True when settled. */
  private newton({ work, base, last }: Room, tie: number): boolean {
    const { size, width, x } = this;
    const { matrix, next } = work;
    const { curved } = this.plan;
    let before = 0;
    for (let step = 1; step <= NEWTON_STEPS_MAX; step += 1) {
      matrix.set(base);
      this.moved = false;
      for (let k = 0; k < curved.length; k += 1) this.stampCurve(matrix, curved[k]!);
      const first = this.fresh;
      this.fresh = false;
      if (tie > 0)
        for (let u = 0; u < size; u += 1) {
          matrix[u * width + u]! += tie;
          matrix[u * width + size]! += tie * last[u]!;
        }
      if (!this.eliminated(work)) return false;
      let largest = 0;
      let settled = !this.moved && !first;
      const steady = settled;
      for (let u = 0; u < size; u += 1) {
        const change = Math.abs(next[u]! - x[u]!);
        if (!(change <= SETTLED_VOLTS + SETTLED_SHARE * Math.abs(next[u]!))) {
          settled = false;
          this.failedAt = u;
        }
        if (!(change <= largest)) largest = change;
        x[u] = next[u]!;
      }
      // On smooth curves Newton doubles the digits each step: after changes c and d comes about d * d * d / (c * c).
      const comes = (largest / before) ** 2 * largest;
      const told = this.isSmooth && steady && largest < SLOPE_RANGE_VOLTS;
      if (told && comes * FORECAST_MARGIN <= SETTLED_VOLTS) settled = true;
      before = steady ? largest : 0;
      if (settled && this.regionsHold()) return true;
    }
    return false;
  }

  /** True when no element with corners wants another region at the new voltages. */
  private regionsHold(): boolean {
    const { corners, ends } = this.plan;
    for (let k = 0; k < corners.length; k += 1) {
      const index = corners[k]!;
      if (this.wantedRegion(index, ends) !== this.regions[index]) {
        this.failedAt = Math.max(ends[index * ENDS]!, ends[index * ENDS + 1]!);
        return false;
      }
    }
    return true;
  }

  /** Pseudo-transient continuation: strong ties to the last voltages, weakened while each stage settles. */
  private continuation(room: Room): boolean {
    const { last } = room;
    this.x.fill(0);
    last.fill(0);
    this.resetRegions();
    let tie = TIE_FIRST_SIEMENS;
    let shrink = TIE_SHRINK;
    for (let stage = 0; stage < STAGES_MAX; stage += 1) {
      if (this.newton(room, tie)) {
        let change = 0;
        for (let u = 0; u < this.size; u += 1)
          change = Math.max(change, Math.abs(this.x[u]! - last[u]!));
        last.set(this.x);
        if (tie <= TIE_LAST_SIEMENS || change < SETTLED_VOLTS) {
          if (this.newton(room, 0)) return true;
          this.x.set(last);
          if (tie <= TIE_LAST_SIEMENS) return false;
        }
        tie *= shrink;
      } else {
        this.x.set(last);
        tie *= TIE_GROW;
        shrink = Math.min(TIE_SHRINK_SLOWEST, Math.sqrt(shrink));
        if (tie > TIE_FIRMEST_SIEMENS) return false;
      }
    }
    return false;
  }

  private eliminated(work: Elimination): boolean {
    const result = eliminate(work);
    if (result !== SOLVED) this.failedAt = result;
    return result === SOLVED;
  }

  private resetRegions(): void {
    const { curved } = this.plan;
    for (let k = 0; k < curved.length; k += 1) this.startRegion(curved[k]!);
    this.fresh = true;
  }

  /** Adds element `index`, made linear at `x`, to the matrix. */
  private stampCurve(matrix: Float64Array, index: number): void {
    const { width, size } = this;
    const { ends } = this.plan;
    const a = ends[index * ENDS]!;
    const b = ends[index * ENDS + 1]!;
    const feed = ends[index * ENDS + 2]!;
    const va = this.at(a);
    const vb = this.at(b);
    const kind = this.kinds[index]!;
    let v = va - vb;
    let vf = 0;
    if (kind === GATED) {
      vf = this.at(feed) - vb;
      if (!this.fresh) this.step(index, this.gatedRegion(index, v, vf));
      vf = this.rampVolts(index, vf);
      this.gated(index, v, vf);
    } else if (kind === DIODE) {
      v = this.diodePoint(index, v);
      this.diode(index, v);
    } else if (kind === LAMP) this.lamp(index, v);
    else {
      if (!this.fresh) this.step(index, this.cornerRegion(index, v));
      v = 0;
      this.corner(index);
    }
    const g = this.slope;
    const gf = this.feedSlope;
    const amps = this.flow - g * v - gf * vf;
    if (a >= 0) {
      matrix[a * width + a]! += g;
      if (b >= 0) matrix[a * width + b]! -= g + gf;
      if (gf !== 0 && feed >= 0) matrix[a * width + feed]! += gf;
      matrix[a * width + size]! -= amps;
    }
    if (b >= 0) {
      matrix[b * width + b]! += g + gf;
      if (a >= 0) matrix[b * width + a]! -= g;
      if (gf !== 0 && feed >= 0) matrix[b * width + feed]! -= gf;
      matrix[b * width + size]! += amps;
    }
  }
}
