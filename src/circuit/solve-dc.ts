/**
 * Node voltages at DC: modified nodal analysis (Ho, Ruehli and Brennan, 1975) with damped Newton.
 *
 * The topology is compiled once into offsets of a dense matrix; solving then only adds numbers, so thousands
 * of tolerance samples cost no allocation. Unknowns are ordered by least degree, and elimination visits
 * only the entries of a row that are not zero, which makes dense LU as quick as sparse at 10 to 30 nodes.
 * Elements with corners (current limits) move at most one region a step, which keeps Newton from jumping to and
 * fro between far regions. If plain Newton fails, each node is tied to its last voltage by a conductance that
 * is then taken away step by step (pseudo-transient continuation).
 */

import {
  CURRENT,
  DIODE,
  ElementCurves,
  EMF,
  FIRST_CURVED,
  GATED,
  IDEAL,
  LAMP,
  RESISTOR,
  STRIDE,
} from './element-curves.ts';
import { createElimination, type Elimination, eliminate, SOLVED } from './eliminate.ts';
import { type Element, type Netlist, nodesOf } from './netlist.ts';
import { floatingIslands, orderNodes } from './order-nodes.ts';

/** Ties a part of the circuit that has no path at all to ground; far above any instrument's resistance. */
const ISLAND_TIE_SIEMENS = 1e-10;
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
/** Places kept for the ends of each element: the most have three. */
const ENDS = 3;
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

export interface DcSolver {
  /** Voltage of each node, ground first; valid after `solve`. */
  readonly volts: Float64Array;
  /** Puts an element of the same kind and nodes with other values in place of element `index`. */
  replace(index: number, element: Element): void;
  /** Null when `volts` hold the solution. */
  solve(): SolveFailure | null;
  /** Current through element `index` at the solution, in at its first node and out at its second. */
  current(index: number): number;
}

/** Compiles a netlist. */
export function createSolver(netlist: Netlist): DcSolver {
  return new Solver(netlist);
}

class Solver extends ElementCurves implements DcSolver {
  private readonly netlist: Netlist;
  readonly volts: Float64Array;
  private readonly isSmooth: boolean;
  private readonly count: number;
  /** Unknown of each end of each element, -1 for ground or no such end; of an ideal source the third is its current. */
  private readonly ends: Int32Array;
  private readonly unknownOfNode: Int32Array;
  private readonly size: number;
  private readonly width: number;
  private readonly matrix: Float64Array;
  private readonly base: Float64Array;
  private readonly x: Float64Array;
  private readonly last: Float64Array;
  private readonly next: Float64Array;
  private readonly work: Elimination;
  private readonly tied: Uint8Array;
  private readonly nonlinear: Int32Array;
  /** The unknown at which elimination or Newton gave up last. */
  private failedAt = -1;
  constructor(netlist: Netlist) {
    super(netlist.elements.length);
    this.netlist = netlist;
    const { nodes, elements } = netlist;
    const ideal = elements.filter((e) => e.kind === 'emf' && e.ohms === 0).length;
    this.count = elements.length;
    this.size = nodes.length - 1 + ideal;
    this.width = this.size + 1;
    this.volts = new Float64Array(nodes.length);
    this.ends = new Int32Array(this.count * ENDS).fill(-1);
    this.work = createElimination(this.size);
    this.matrix = this.work.matrix;
    this.next = this.work.next;
    this.base = new Float64Array(this.size * this.width);
    this.x = new Float64Array(this.size);
    this.last = new Float64Array(this.size);
    this.unknownOfNode = orderNodes(netlist);
    this.tied = new Uint8Array(nodes.length);
    for (const node of floatingIslands(netlist)) this.tied[node] = 1;
    let branch = nodes.length - 1;
    const curved: number[] = [];
    elements.forEach((element, index) => {
      this.replace(index, element);
      nodesOf(element).forEach((node, end) => {
        this.ends[index * ENDS + end] = this.unknownOfNode[node]!;
      });
      if (this.kinds[index] === IDEAL) {
        this.ends[index * ENDS + 2] = branch;
        branch += 1;
      }
      if (this.kinds[index]! >= FIRST_CURVED) curved.push(index);
    });
    this.nonlinear = Int32Array.from(curved);
    // A lamp's curve has a root at zero, other elements have corners.
    this.isSmooth = curved.every((index) => this.kinds[index] === DIODE);
  }

  solve(): SolveFailure | null {
    this.stampLinear();
    this.x.fill(0);
    if (this.nonlinear.length === 0) {
      this.matrix.set(this.base);
      if (!this.eliminated()) return this.failure('no-solution');
      this.x.set(this.next);
      return this.finish();
    }
    this.resetRegions();
    if (this.newton(0) || this.continuation()) return this.finish();
    return this.failure('not-settled');
  }

  current(index: number): number {
    const { values, ends } = this;
    const at = index * STRIDE;
    const kind = this.kinds[index]!;
    const va = this.at(ends[index * ENDS]!);
    const vb = this.at(ends[index * ENDS + 1]!);
    const v = va - vb;
    if (kind === RESISTOR) return v * values[at]!;
    if (kind === EMF) return (v - values[at]!) * values[at + 1]!;
    if (kind === IDEAL) return this.x[ends[index * ENDS + 2]!]!;
    if (kind === CURRENT) return values[at]!;
    return this.currentAt(index, v, this.at(ends[index * ENDS + 2]!) - vb);
  }

  private at(unknown: number): number {
    return unknown < 0 ? 0 : this.x[unknown]!;
  }

  private finish(): null {
    for (let node = 1; node < this.volts.length; node += 1)
      this.volts[node] = this.x[this.unknownOfNode[node]!]!;
    return null;
  }

  /** The node where the last try failed; of a source without resistance one of its ends, not ground. */
  private failedNode(): number {
    const own = this.unknownOfNode.indexOf(this.failedAt);
    if (own > 0) return own;
    const source = this.netlist.elements.find(
      (_, index) => this.ends[index * ENDS + 2] === this.failedAt,
    )!;
    return Math.max(...nodesOf(source));
  }

  private failure(reason: SolveFailure['reason']): SolveFailure {
    const node = this.netlist.nodes[this.failedNode()]!;
    const words =
      reason === 'no-solution'
        ? `sources without resistance contradict each other near "${node}"`
        : `the voltages near "${node}" do not settle`;
    return { reason, node, words };
  }

  /** Everything that does not depend on the voltages. */
  private stampLinear(): void {
    const { base, width, values, ends, kinds } = this;
    base.fill(0);
    for (let node = 1; node < this.tied.length; node += 1)
      if (this.tied[node] === 1) {
        const u = this.unknownOfNode[node]!;
        base[u * width + u]! += ISLAND_TIE_SIEMENS;
      }
    for (let index = 0; index < this.count; index += 1) {
      const kind = kinds[index]!;
      if (kind >= FIRST_CURVED) continue;
      const a = ends[index * ENDS]!;
      const b = ends[index * ENDS + 1]!;
      const value = values[index * STRIDE]!;
      if (kind === RESISTOR) this.stampSiemens(base, a, b, value);
      else if (kind === EMF) {
        const g = values[index * STRIDE + 1]!;
        this.stampSiemens(base, a, b, g);
        this.stampAmps(base, a, b, -value * g);
      } else if (kind === CURRENT) this.stampAmps(base, a, b, value);
      else {
        const row = ends[index * ENDS + 2]!;
        if (a >= 0) {
          base[a * width + row]! += 1;
          base[row * width + a]! += 1;
        }
        if (b >= 0) {
          base[b * width + row]! -= 1;
          base[row * width + b]! -= 1;
        }
        base[row * width + this.size]! += value;
      }
    }
  }

  private stampSiemens(m: Float64Array, a: number, b: number, g: number): void {
    const { width } = this;
    if (a >= 0) m[a * width + a]! += g;
    if (b >= 0) m[b * width + b]! += g;
    if (a >= 0 && b >= 0) {
      m[a * width + b]! -= g;
      m[b * width + a]! -= g;
    }
  }

  /** `amps` leave node a and enter node b. */
  private stampAmps(m: Float64Array, a: number, b: number, amps: number): void {
    const { width, size } = this;
    if (a >= 0) m[a * width + size]! -= amps;
    if (b >= 0) m[b * width + size]! += amps;
  }

  /** Newton from `x`; `tie` holds each unknown near `last`. True when settled. */
  private newton(tie: number): boolean {
    const { matrix, size, width, x, next } = this;
    let before = 0;
    for (let step = 1; step <= NEWTON_STEPS_MAX; step += 1) {
      matrix.set(this.base);
      this.moved = false;
      for (let k = 0; k < this.nonlinear.length; k += 1) this.stampCurve(this.nonlinear[k]!);
      const first = this.fresh;
      this.fresh = false;
      if (tie > 0)
        for (let u = 0; u < size; u += 1) {
          matrix[u * width + u]! += tie;
          matrix[u * width + size]! += tie * this.last[u]!;
        }
      if (!this.eliminated()) return false;
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
    const { ends, kinds, regions } = this;
    for (let k = 0; k < this.nonlinear.length; k += 1) {
      const index = this.nonlinear[k]!;
      const kind = kinds[index]!;
      if (kind === DIODE || kind === LAMP) continue;
      const vb = this.at(ends[index * ENDS + 1]!);
      const v = this.at(ends[index * ENDS]!) - vb;
      const wanted =
        kind === GATED
          ? this.gatedRegion(index, v, this.at(ends[index * ENDS + 2]!) - vb)
          : this.cornerRegion(index, v);
      if (wanted !== regions[index]) {
        this.failedAt = Math.max(ends[index * ENDS]!, ends[index * ENDS + 1]!);
        return false;
      }
    }
    return true;
  }

  /** Pseudo-transient continuation: strong ties to the last voltages, weakened while each stage settles. */
  private continuation(): boolean {
    this.x.fill(0);
    this.last.fill(0);
    this.resetRegions();
    let tie = TIE_FIRST_SIEMENS;
    let shrink = TIE_SHRINK;
    for (let stage = 0; stage < STAGES_MAX; stage += 1) {
      if (this.newton(tie)) {
        let change = 0;
        for (let u = 0; u < this.size; u += 1)
          change = Math.max(change, Math.abs(this.x[u]! - this.last[u]!));
        this.last.set(this.x);
        if (tie <= TIE_LAST_SIEMENS || change < SETTLED_VOLTS) {
          if (this.newton(0)) return true;
          this.x.set(this.last);
          if (tie <= TIE_LAST_SIEMENS) return false;
        }
        tie *= shrink;
      } else {
        this.x.set(this.last);
        tie *= TIE_GROW;
        shrink = Math.min(TIE_SHRINK_SLOWEST, Math.sqrt(shrink));
        if (tie > TIE_FIRMEST_SIEMENS) return false;
      }
    }
    return false;
  }

  private eliminated(): boolean {
    const result = eliminate(this.work);
    if (result !== SOLVED) this.failedAt = result;
    return result === SOLVED;
  }

  private resetRegions(): void {
    for (let k = 0; k < this.nonlinear.length; k += 1) this.startRegion(this.nonlinear[k]!);
    this.fresh = true;
  }

  /** Adds element `index`, made linear at `x`, to the matrix. */
  private stampCurve(index: number): void {
    const { matrix, width, size, ends } = this;
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
