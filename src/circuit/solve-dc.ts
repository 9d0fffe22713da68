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
import { type Element, type Netlist, nodesOf } from './netlist.ts';
import { floatingIslands, orderNodes } from './order-nodes.ts';
import { wrightOmega } from './wright-omega.ts';

/** Ties a part of the circuit that has no path at all to ground; far above any instrument's resistance. */
const ISLAND_TIE_SIEMENS = 1e-10;
/**
 * Newton stops when no voltage moves more than this many volts plus its relative share. Rounding moves a part of the
 * circuit that hangs on megohms by some nanovolts; the error left is the square of the last move.
 */
const SETTLED_VOLTS = 1e-7;
const SETTLED_SHARE = 1e-11;
const NEWTON_STEPS_MAX = 60;
/** A pivot smaller than this, against the largest entry of its column at the start, means that no equation is left. */
const PIVOT_RATIO_MIN = 1e-15;
/** Continuation: first tie in siemens, and the factor by which it shrinks or, after a failure, grows. */
const TIE_FIRST_SIEMENS = 1;
const TIE_LAST_SIEMENS = 1e-9;
const TIE_SHRINK = 0.1;
/** An element changes its region only when it is this many volts, or this share of its current, past the corner. */
const CORNER_MARGIN = 2e-8;
/** Where a diode is first made linear: at this current. */
const DIODE_FIRST_AMPS = 1e-3;

/** What went wrong, for people who develop a circuit; a loaded circuit never gets here. */
export interface SolveFailure {
  readonly reason: 'no-solution' | 'not-settled';
  readonly node: string;
  readonly words: string;
}

export interface DcSolver {
  readonly netlist: Netlist;
  /** Voltage of each node, ground first; valid after `solve`. */
  readonly volts: Float64Array;
  /** Newton steps of the last solve. */
  steps: number;
  /** Puts an element of the same kind and nodes with other values in place of element `index`. */
  replace(index: number, element: Element): void;
  /** Null when `volts` hold the solution. */
  solve(): SolveFailure | null;
  /** Current through element `index` at the solution, in at its first node and out at its second. */
  current(index: number): number;
}

const RESISTOR = 0;
const EMF = 1;
const IDEAL = 2;
const CURRENT = 3;
const REGULATOR = 4;
const SINK = 5;
const GATED = 6;
const DIODE = 7;
const LAMP = 8;
/** Kinds from here on depend on the voltages. */
const FIRST_CURVED = REGULATOR;
/** Values per element. */
const P = 5;

/** Compiles a netlist. */
export function createSolver(netlist: Netlist): DcSolver {
  return new Solver(netlist);
}

class Solver implements DcSolver {
  readonly netlist: Netlist;
  readonly volts: Float64Array;
  steps = 0;
  private readonly count: number;
  private readonly kinds: Uint8Array;
  private readonly values: Float64Array;
  /** Unknown of each end (up to four an element), -1 for ground. */
  private readonly ends: Int32Array;
  /** Region of each element with corners. */
  private readonly regions: Int8Array;
  private readonly unknownOfNode: Int32Array;
  private readonly size: number;
  private readonly width: number;
  private readonly matrix: Float64Array;
  private readonly base: Float64Array;
  private readonly x: Float64Array;
  private readonly last: Float64Array;
  private readonly columns: Int32Array;
  private readonly rowAt: Int32Array;
  private readonly next: Float64Array;
  private readonly tied: Uint8Array;
  private readonly nonlinear: Int32Array;
  private failedAt = -1;
  /** True while no step has been made since the regions were reset. */
  private fresh = true;
  /** Some element has changed its region, or wants to. */
  private moved = false;
  /** What `evaluate` and `lineariseAt` find: the current at the given voltages, and its slopes. */
  private flow = 0;
  private slope = 0;
  private feedSlope = 0;

  constructor(netlist: Netlist) {
    this.netlist = netlist;
    const { nodes, elements } = netlist;
    const ideal = elements.filter((e) => e.kind === 'emf' && e.ohms === 0).length;
    this.count = elements.length;
    this.size = nodes.length - 1 + ideal;
    this.width = this.size + 1;
    this.volts = new Float64Array(nodes.length);
    this.kinds = new Uint8Array(this.count);
    this.values = new Float64Array(this.count * P);
    this.ends = new Int32Array(this.count * 4).fill(-1);
    this.regions = new Int8Array(this.count);
    this.matrix = new Float64Array(this.size * this.width);
    this.base = new Float64Array(this.size * this.width);
    this.x = new Float64Array(this.size);
    this.last = new Float64Array(this.size);
    this.columns = new Int32Array(this.width);
    this.rowAt = new Int32Array(this.size);
    this.next = new Float64Array(this.size);
    this.unknownOfNode = orderNodes(netlist);
    this.tied = new Uint8Array(nodes.length);
    for (const node of floatingIslands(netlist)) this.tied[node] = 1;
    let branch = nodes.length - 1;
    const curved: number[] = [];
    elements.forEach((element, index) => {
      this.replace(index, element);
      nodesOf(element).forEach((node, end) => {
        this.ends[index * 4 + end] = this.unknownOfNode[node]!;
      });
      if (this.kinds[index] === IDEAL) {
        this.ends[index * 4 + 2] = branch;
        branch += 1;
      }
      if (this.kinds[index]! >= FIRST_CURVED) curved.push(index);
    });
    this.nonlinear = Int32Array.from(curved);
  }

  replace(index: number, element: Element): void {
    const { values } = this;
    const at = index * P;
    switch (element.kind) {
      case 'resistor':
        this.kinds[index] = RESISTOR;
        values[at] = 1 / element.ohms;
        return;
      case 'emf':
        this.kinds[index] = element.ohms === 0 ? IDEAL : EMF;
        values[at] = element.volts;
        values[at + 1] = element.ohms === 0 ? 0 : 1 / element.ohms;
        return;
      case 'current':
        this.kinds[index] = CURRENT;
        values[at] = element.amps;
        return;
      case 'regulator':
        this.kinds[index] = REGULATOR;
        values[at] = element.volts;
        values[at + 1] = 1 / element.ohms;
        values[at + 2] = element.limitAmps;
        return;
      case 'sink':
        this.kinds[index] = SINK;
        values[at] = element.amps;
        values[at + 1] = element.minVolts;
        values[at + 2] = 1 / element.reverseOhms;
        return;
      case 'gated-output':
        this.kinds[index] = GATED;
        values[at] = element.onSiemens;
        values[at + 1] = element.offSiemens;
        values[at + 2] = element.minVolts;
        values[at + 3] = element.limitAmps;
        return;
      case 'diode':
        this.kinds[index] = DIODE;
        values[at] = element.saturationAmps;
        values[at + 1] = element.emissionVolts;
        values[at + 2] = element.ohms;
        values[at + 3] = 1 / element.leakOhms;
        return;
      case 'lamp':
        this.kinds[index] = LAMP;
        values[at] = element.coldOhms;
        values[at + 1] = element.risePerRootVolt;
    }
  }

  solve(): SolveFailure | null {
    this.stampLinear();
    this.x.fill(0);
    if (this.nonlinear.length === 0) {
      this.steps = 1;
      this.matrix.set(this.base);
      if (!this.eliminate()) return this.failure('no-solution');
      this.x.set(this.next);
      return this.finish();
    }
    this.resetRegions();
    if (this.newton(0) || this.continuation()) return this.finish();
    return this.failure('not-settled');
  }

  current(index: number): number {
    const { values, ends } = this;
    const at = index * P;
    const kind = this.kinds[index]!;
    const va = this.at(ends[index * 4]!);
    const vb = this.at(ends[index * 4 + 1]!);
    const v = va - vb;
    if (kind === RESISTOR) return v * values[at]!;
    if (kind === EMF) return (v - values[at]!) * values[at + 1]!;
    if (kind === IDEAL) return this.x[ends[index * 4 + 2]!]!;
    if (kind === CURRENT) return values[at]!;
    this.evaluate(index);
    return this.flow;
  }

  private at(unknown: number): number {
    return unknown < 0 ? 0 : this.x[unknown]!;
  }

  private finish(): null {
    for (let node = 1; node < this.volts.length; node += 1)
      this.volts[node] = this.x[this.unknownOfNode[node]!]!;
    return null;
  }

  private failure(reason: SolveFailure['reason']): SolveFailure {
    const node =
      this.netlist.nodes.find((_, n) => n > 0 && this.unknownOfNode[n] === this.failedAt) ?? '?';
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
      const a = ends[index * 4]!;
      const b = ends[index * 4 + 1]!;
      const value = values[index * P]!;
      if (kind === RESISTOR) this.stampSiemens(base, a, b, value);
      else if (kind === EMF) {
        const g = values[index * P + 1]!;
        this.stampSiemens(base, a, b, g);
        this.stampAmps(base, a, b, -value * g);
      } else if (kind === CURRENT) this.stampAmps(base, a, b, value);
      else {
        const row = ends[index * 4 + 2]!;
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
    for (let step = 1; step <= NEWTON_STEPS_MAX; step += 1) {
      this.steps = step;
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
      if (!this.eliminate()) return false;
      let settled = !this.moved && !first;
      for (let u = 0; u < size; u += 1) {
        const change = Math.abs(next[u]! - x[u]!);
        if (!(change <= SETTLED_VOLTS + SETTLED_SHARE * Math.abs(next[u]!))) {
          settled = false;
          this.failedAt = u;
        }
        x[u] = next[u]!;
      }
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
      const vb = this.at(ends[index * 4 + 1]!);
      const v = this.at(ends[index * 4]!) - vb;
      const wanted =
        kind === GATED
          ? this.gatedRegion(index, v, this.at(ends[index * 4 + 2]!) - vb)
          : this.cornerRegion(index, v);
      if (wanted !== regions[index]) return false;
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
    for (let stage = 0; stage < 200; stage += 1) {
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
        tie *= 4;
        shrink = Math.min(0.7, Math.sqrt(shrink));
        if (tie > 1e6) return false;
      }
    }
    return false;
  }

  private resetRegions(): void {
    for (let k = 0; k < this.nonlinear.length; k += 1) {
      const index = this.nonlinear[k]!;
      const kind = this.kinds[index]!;
      // Regulators start on their slope, supplies below their least voltage, outputs switched on and not limited.
      this.regions[index] = kind === GATED ? 4 : 1;
      this.values[index * P + 4] = 0;
    }
    this.fresh = true;
  }

  /** Adds element `index`, made linear at `x`, to the matrix. */
  private stampCurve(index: number): void {
    const { matrix, width, size, ends } = this;
    const a = ends[index * 4]!;
    const b = ends[index * 4 + 1]!;
    const feed = ends[index * 4 + 2]!;
    const va = this.at(a);
    const vb = this.at(b);
    const kind = this.kinds[index]!;
    let v = va - vb;
    let vf = 0;
    if (kind === GATED) {
      vf = this.at(feed) - vb;
      if (!this.fresh) this.step(index, this.gatedRegion(index, v, vf));
      const least = this.values[index * P + 2]!;
      vf = Math.min(least, Math.max(0.9 * least, vf));
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

  /** Moves the element one region towards `wanted`. */
  private step(index: number, wanted: number): void {
    const now = this.regions[index]!;
    if (wanted === now) return;
    this.moved = true;
    if (this.kinds[index] !== GATED) {
      this.regions[index] = now + Math.sign(wanted - now);
      return;
    }
    const ramp = now >> 1;
    this.regions[index] = ((ramp + Math.sign((wanted >> 1) - ramp)) << 1) | (wanted & 1);
  }

  /** Region of a regulator (0 off, 1 slope, 2 limit) or a sink (0 backwards, 1 slope, 2 full) at `v`. */
  private cornerRegion(index: number, v: number): number {
    const { values } = this;
    const at = index * P;
    const now = this.regions[index]!;
    let low = 0;
    let high = values[at + 1]!;
    if (this.kinds[index] === REGULATOR) {
      low = -values[at]!;
      high = low + values[at + 2]! / values[at + 1]!;
    }
    if (v < low - (now === 1 ? CORNER_MARGIN : 0)) return 0;
    return v > high + (now === 1 ? CORNER_MARGIN : 0) ? 2 : 1;
  }

  /** Current at zero volts and slope of a regulator or a sink in its present region. */
  private corner(index: number): void {
    const { values } = this;
    const at = index * P;
    const region = this.regions[index]!;
    this.feedSlope = 0;
    this.slope = 0;
    this.flow = 0;
    if (this.kinds[index] === REGULATOR) {
      if (region === 2) this.flow = values[at + 2]!;
      else if (region === 1) {
        this.slope = values[at + 1]!;
        this.flow = values[at]! * values[at + 1]!;
      }
    } else if (region === 2) this.flow = values[at]!;
    else this.slope = region === 1 ? values[at]! / values[at + 1]! : values[at + 2]!;
  }

  /** Twice the part of the ramp (0 below, 1 on it, 2 above), plus 1 when the output limits its current. */
  private gatedRegion(index: number, v: number, feedVolts: number): number {
    const { values } = this;
    const at = index * P;
    const now = this.regions[index]! >> 1;
    const least = values[at + 2]!;
    const margin = now === 1 ? CORNER_MARGIN : 0;
    const ramp = feedVolts < 0.9 * least - margin ? 0 : feedVolts > least + margin ? 2 : 1;
    const past = (this.regions[index]! & 1) === 0 ? CORNER_MARGIN : 0;
    const limited = v * this.gatedSiemens(index, feedVolts) > values[at + 3]! * (1 + past);
    return (ramp << 1) | (limited ? 1 : 0);
  }

  private gatedSiemens(index: number, feedVolts: number): number {
    const at = index * P;
    const least = this.values[at + 2]!;
    const share = Math.min(1, Math.max(0, (feedVolts - 0.9 * least) / (0.1 * least)));
    return this.values[at + 1]! + (this.values[at]! - this.values[at + 1]!) * share;
  }

  /** A switched output in its present region; `feedVolts` lies on the ramp. */
  private gated(index: number, v: number, feedVolts: number): void {
    const { values } = this;
    const at = index * P;
    const region = this.regions[index]!;
    const least = values[at + 2]!;
    this.feedSlope = 0;
    if ((region & 1) === 1) {
      this.slope = 0;
      this.flow = values[at + 3]!;
      return;
    }
    const ramp = region >> 1;
    const siemens =
      ramp === 0 ? values[at + 1]! : ramp === 2 ? values[at]! : this.gatedSiemens(index, feedVolts);
    this.slope = siemens;
    this.flow = siemens * v;
    if (ramp === 1) this.feedSlope = (v * (values[at]! - values[at + 1]!)) / (0.1 * least);
  }

  /** Where a diode is made linear: at `v`, except at the first step and, without series resistance, too far up. */
  private diodePoint(index: number, v: number): number {
    const { values } = this;
    const at = index * P;
    const emission = values[at + 1]!;
    if (this.fresh) {
      const junction = emission * Math.log(DIODE_FIRST_AMPS / values[at]!);
      values[at + 4] = junction;
      return junction + DIODE_FIRST_AMPS * values[at + 2]!;
    }
    if (values[at + 2] !== 0) return v;
    // Junction limiting as in SPICE (Nagel, 1975): above the critical voltage follow the logarithm.
    const last = values[at + 4]!;
    const critical = emission * Math.log(emission / (Math.SQRT2 * values[at]!));
    let point = v;
    if (v > critical && Math.abs(v - last) > 2 * emission) {
      const rise = last > 0 ? 1 + (v - last) / emission : 0;
      point =
        last > 0
          ? rise > 0
            ? last + emission * Math.log(rise)
            : critical
          : emission * Math.log(v / emission);
      this.moved = true;
    }
    values[at + 4] = point;
    return point;
  }

  private diode(index: number, v: number): void {
    const { values } = this;
    const at = index * P;
    const saturation = values[at]!;
    const emission = values[at + 1]!;
    const ohms = values[at + 2]!;
    const leak = values[at + 3]!;
    this.feedSlope = 0;
    if (ohms === 0) {
      const rise = Math.exp(v / emission);
      this.flow = saturation * (rise - 1) + leak * v;
      this.slope = (saturation * rise) / emission + leak;
      return;
    }
    const scale = emission / ohms;
    const omega = wrightOmega((v + saturation * ohms) / emission + Math.log(saturation / scale));
    this.flow = scale * omega - saturation + leak * v;
    this.slope = omega / (1 + omega) / ohms + leak;
  }

  private lamp(index: number, v: number): void {
    const at = index * P;
    const rise = this.values[at + 1]! * Math.sqrt(Math.abs(v));
    const ohms = this.values[at]! + rise;
    this.feedSlope = 0;
    this.flow = v / ohms;
    this.slope = (this.values[at]! + rise / 2) / (ohms * ohms);
  }

  /** Current of a voltage-dependent element at `x`, in `flow`. */
  private evaluate(index: number): void {
    const { values, ends } = this;
    const at = index * P;
    const vb = this.at(ends[index * 4 + 1]!);
    const v = this.at(ends[index * 4]!) - vb;
    const kind = this.kinds[index]!;
    if (kind === DIODE) this.diode(index, v);
    else if (kind === LAMP) this.lamp(index, v);
    else if (kind === GATED) {
      const siemens = this.gatedSiemens(index, this.at(ends[index * 4 + 2]!) - vb);
      this.flow = Math.min(values[at + 3]!, v * siemens);
    } else if (kind === REGULATOR)
      this.flow = Math.max(0, Math.min(values[at + 2]!, (values[at]! + v) * values[at + 1]!));
    else this.flow = v < 0 ? v * values[at + 2]! : values[at]! * Math.min(1, v / values[at + 1]!);
  }

  /** Gaussian elimination with partial pivoting of `matrix` into `next`. False when an equation is missing. */
  private eliminate(): boolean {
    const { matrix: m, size: n, width, columns, rowAt, next } = this;
    let peak = 0;
    for (let i = 0; i < n; i += 1) {
      rowAt[i] = i * width;
      const diagonal = Math.abs(m[i * width + i]!);
      if (diagonal > peak) peak = diagonal;
    }
    const least = PIVOT_RATIO_MIN * Math.max(peak, 1e-6);
    for (let k = 0; k < n; k += 1) {
      let best = k;
      let size = Math.abs(m[rowAt[k]! + k]!);
      for (let i = k + 1; i < n; i += 1) {
        const candidate = Math.abs(m[rowAt[i]! + k]!);
        if (candidate > size) {
          size = candidate;
          best = i;
        }
      }
      if (!(size > least)) {
        this.failedAt = k;
        return false;
      }
      const pivotRow = rowAt[best]!;
      rowAt[best] = rowAt[k]!;
      rowAt[k] = pivotRow;
      let filled = 0;
      for (let j = k + 1; j < width; j += 1)
        if (m[pivotRow + j] !== 0) {
          columns[filled] = j;
          filled += 1;
        }
      const inverse = 1 / m[pivotRow + k]!;
      for (let i = k + 1; i < n; i += 1) {
        const row = rowAt[i]!;
        const lead = m[row + k]!;
        if (lead === 0) continue;
        const factor = lead * inverse;
        for (let c = 0; c < filled; c += 1) {
          const j = columns[c]!;
          m[row + j]! -= factor * m[pivotRow + j]!;
        }
      }
    }
    for (let k = n - 1; k >= 0; k -= 1) {
      const row = rowAt[k]!;
      let sum = m[row + n]!;
      for (let j = k + 1; j < n; j += 1) {
        const entry = m[row + j]!;
        if (entry !== 0) sum -= entry * next[j]!;
      }
      next[k] = sum / m[row + k]!;
    }
    return true;
  }
}
