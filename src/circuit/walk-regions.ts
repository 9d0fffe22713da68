/**
 * The operating point of a reduced circuit where it can be had without Newton's method.
 *
 * While every element with corners keeps its region the circuit is linear, but for lights and lamps. If those all sit
 * between the same two nodes, the rest is a voltage behind a resistance for them (Thevenin), and one equation in one
 * unknown is left, for a single diode in closed form. Then each element looks whether its region was the right one.
 */
import { DIODE, ElementCurves, EMF, GATED, LAMP, RESISTOR, STRIDE } from './element-curves.ts';
import { type Behind, Mesh } from './mesh.ts';
import { Reduction } from './reduce.ts';
import { ENDS, type SolverPlan } from './solver-plan.ts';
import { wrightOmega } from './wright-omega.ts';

/** Regions are found in two or three steps; some more where a feed stands on a ramp. */
const WALK_STEPS_MAX = 24;
/** An output on the ramp of its feed has settled when its conductance moves by less than this share. */
const RAMP_SETTLED_SHARE = 1e-13;
/** Lights and lamps between two nodes: their voltage is found when it moves by less than this share, or as many volts. */
const CURVE_SETTLED_SHARE = 1e-14;
/** Newton on one curve that only rises; more steps mean that it goes to and fro by a rounding. */
const CURVE_STEPS_MAX = 50;

/** Region of a switched output that is on the ramp of its feed and does not limit. */
const ON_RAMP = 1 << 1;

/** A reduced circuit whose elements with corners are walked to their regions. */
export class WalkedRegions extends ElementCurves {
  protected readonly plan: SolverPlan;
  protected readonly reduction: Reduction;
  /** Voltages of the kept nodes, then currents of sources without resistance. */
  protected readonly x: Float64Array;
  /** The circuit between the kept nodes at this instant, without what depends on voltages. */
  protected readonly mesh: Mesh;
  private readonly regionMesh: Mesh;
  /** Conductance that each switched output was taken for. */
  private readonly rampSiemens: Float64Array;
  private readonly behind: Behind = { volts: 0, ohms: 0 };
  /** Where the walk begins, when it has been told. */
  private begin: Int8Array | null = null;

  constructor(plan: SolverPlan) {
    super(plan.netlist.elements.length);
    this.plan = plan;
    this.reduction = new Reduction(plan.reduction);
    this.x = new Float64Array(plan.size);
    this.mesh = new Mesh(plan.kept.length);
    this.rampSiemens = new Float64Array(plan.netlist.elements.length);
    this.regionMesh = new Mesh(plan.kept.length);
  }

  /** Begins each later walk in the regions of the present solution. */
  beginHere(): void {
    this.begin = Int8Array.from(this.regions);
  }

  protected at(unknown: number): number {
    return unknown < 0 ? 0 : this.x[unknown]!;
  }

  /** Puts the reduced circuit and the varying elements into the mesh. */
  protected loadMesh(): void {
    const { mesh, values, kinds } = this;
    const { varying, ends } = this.plan;
    mesh.load(this.reduction);
    for (let k = 0; k < varying.length; k += 1) {
      const index = varying[k]!;
      const a = ends[index * ENDS]!;
      const b = ends[index * ENDS + 1]!;
      const value = values[index * STRIDE]!;
      if (kinds[index] === RESISTOR) mesh.addSiemens(a, b, 1 / value);
      else if (kinds[index] === EMF) {
        const siemens = values[index * STRIDE + 1]!;
        mesh.addSiemens(a, b, siemens);
        mesh.addAmps(a, b, -value * siemens);
      } else mesh.addAmps(a, b, value);
    }
  }

  /** True when `x` holds the solution; else it has to be found by Newton's method. */
  protected walk(): boolean {
    const { plan, regions, begin } = this;
    if (plan.ideal.length > 0 || (plan.lights.length > 0 && !plan.lightsTogether)) return false;
    const { corners } = plan;
    // An output that begins on its ramp must not begin where an earlier solution ended.
    this.x.fill(0);
    for (let k = 0; k < corners.length; k += 1) {
      const index = corners[k]!;
      if (begin) regions[index] = begin[index]!;
      else this.startRegion(index);
    }
    for (let step = 0; step < WALK_STEPS_MAX; step += 1) {
      if (!this.solveInRegions()) return false;
      if (!this.moveRegions()) return true;
    }
    return false;
  }

  /** Solves for `x` with every element in its region; false where that is no circuit of conductances. */
  private solveInRegions(): boolean {
    const { regionMesh: work, plan } = this;
    const { corners, lights, ends } = plan;
    work.load(this.mesh);
    for (let k = 0; k < corners.length; k += 1) {
      const index = corners[k]!;
      const a = ends[index * ENDS]!;
      const b = ends[index * ENDS + 1]!;
      if (this.kinds[index] === GATED) {
        this.gated(index, 0, this.feedVolts(index));
        this.rampSiemens[index] = this.slope;
      } else this.corner(index);
      if (this.slope !== 0) work.addSiemens(a, b, this.slope);
      if (this.flow !== 0) work.addAmps(a, b, this.flow);
    }
    if (lights.length === 0) {
      if (!work.workOut(0, work.size)) return false;
    } else if (!this.solveLights()) return false;
    work.volts(this.x);
    return true;
  }

  /**
   * Moves each element towards the region it wants at `x`; false when none wants another. On the ramp of its feed an output
   * multiplies two voltages; it is taken for a resistor, which is right once the feed moves it no more.
   */
  private moveRegions(): boolean {
    const { corners, ends } = this.plan;
    this.moved = false;
    for (let k = 0; k < corners.length; k += 1) {
      const index = corners[k]!;
      this.step(index, this.wantedRegion(index, ends));
      if (this.regions[index] !== ON_RAMP || this.kinds[index] !== GATED || this.moved) continue;
      const siemens = this.gatedSiemens(index, this.feedVolts(index));
      const change = Math.abs(siemens - this.rampSiemens[index]!);
      if (!(change <= RAMP_SETTLED_SHARE * siemens)) this.moved = true;
    }
    return this.moved;
  }

  /** The feed of a switched output, against its ground end. */
  private feedVolts(index: number): number {
    const { ends } = this.plan;
    return this.at(ends[index * ENDS + 2]!) - this.at(ends[index * ENDS + 1]!);
  }

  protected wantedRegion(index: number, ends: Int32Array): number {
    const vb = this.at(ends[index * ENDS + 1]!);
    const v = this.at(ends[index * ENDS]!) - vb;
    return this.kinds[index] === GATED
      ? this.gatedRegion(index, v, this.at(ends[index * ENDS + 2]!) - vb)
      : this.cornerRegion(index, v);
  }

  /** Works out all nodes with the current that the lights take. */
  private solveLights(): boolean {
    const { regionMesh: work, plan, behind } = this;
    const { lights, ends } = plan;
    const first = lights[0]!;
    const a = ends[first * ENDS]!;
    const b = ends[first * ENDS + 1]!;
    const grounded = a < 0 || b < 0;
    for (let k = 0; k < lights.length; k += 1) {
      const at = lights[k]! * STRIDE;
      if (this.kinds[lights[k]!] !== DIODE) continue;
      if (!(this.values[at + 2]! > 0)) return false;
      work.addSiemens(a, b, this.values[at + 3]!);
    }
    const rest = work.size - (grounded ? 1 : 2);
    if (!work.workOut(0, rest) || !work.lookBehind(grounded, behind)) return false;
    // Seen from the last two nodes the first of them is positive; seen from one and ground, that one.
    const upper = grounded ? work.size - 1 : rest;
    const lower = grounded ? -1 : rest + 1;
    const amps = this.lightAmps(upper, behind);
    if (!Number.isFinite(amps)) return false;
    work.addAmps(upper, lower, amps);
    return work.workOut(rest, work.size);
  }

  /** The current of all lights, in at unknown `upper`, from a voltage behind a resistance; leaks are not in it. */
  private lightAmps(upper: number, { volts, ohms }: Behind): number {
    const { lights, ends } = this.plan;
    let guess = volts;
    for (let k = 0; k < lights.length; k += 1) {
      const index = lights[k]!;
      const way = ends[index * ENDS] === upper ? 1 : -1;
      if (this.kinds[index] !== DIODE || (lights.length > 1 && way * volts < 0)) continue;
      const amps = way * this.diodeBehind(index, way * volts, ohms);
      if (lights.length === 1) return amps;
      guess = volts - amps * ohms;
    }
    let v = guess;
    for (let step = 0; step < CURVE_STEPS_MAX; step += 1) {
      let flow = 0;
      let slope = 0;
      for (let k = 0; k < lights.length; k += 1) {
        const index = lights[k]!;
        const way = ends[index * ENDS] === upper ? 1 : -1;
        if (this.kinds[index] === LAMP) this.lamp(index, way * v);
        else {
          this.diode(index, way * v);
          const leak = this.values[index * STRIDE + 3]!;
          this.flow -= leak * way * v;
          this.slope -= leak;
        }
        flow += way * this.flow;
        slope += this.slope;
      }
      const change = (volts - v - ohms * flow) / (1 + ohms * slope);
      if (Math.abs(change) <= CURVE_SETTLED_SHARE * Math.max(1, Math.abs(v))) return flow;
      v += change;
    }
    return (volts - v) / ohms;
  }

  /** Current of a diode with its resistor, without its leak, from a voltage behind a resistance (see `wrightOmega`). */
  private diodeBehind(index: number, volts: number, ohms: number): number {
    const at = index * STRIDE;
    const saturation = this.values[at]!;
    const emission = this.values[at + 1]!;
    const all = ohms + this.values[at + 2]!;
    const scale = emission / all;
    const x = (volts + saturation * all) / emission + Math.log(saturation / scale);
    return scale * wrightOmega(x) - saturation;
  }
}
