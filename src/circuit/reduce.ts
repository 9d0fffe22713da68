/**
 * Works out of a circuit the nodes at which only resistors and sources end, and puts what is felt of them between those
 * that are kept (star-mesh transformation: Rosen, 1924).
 *
 * It only adds, multiplies and divides conductances that are all positive, so no digits are lost between milliohms and
 * megohms, whatever the order: nothing is ever subtracted (as in Grassmann, Taksar and Heyman's elimination, 1985). Sources
 * are turned into currents.
 */
import { STRIDE } from './element-curves.ts';
import { NO_PLACE, NO_SLOT, type ReductionPlan } from './plan-reduction.ts';

/** Ties a part of the circuit that has no path at all to ground; far above any instrument's resistance. */
export const ISLAND_TIE_SIEMENS = 1e-10;
/** Returned by `run` when every node was worked out. */
export const REDUCED = -1;

/** The numbers of one circuit. */
export class Reduction {
  private readonly plan: ReductionPlan;
  private readonly ohms: Float64Array;
  private readonly inverse: Float64Array;
  private readonly placeVolts: Float64Array;
  /** Conductance of every pair of places; kept ones first, `row * keptCount + column` with row below column. */
  readonly pairs: Float64Array;
  /** Conductance of each place to ground. */
  readonly toGround: Float64Array;
  /** Current put into each place. */
  readonly inflow: Float64Array;

  constructor(plan: ReductionPlan) {
    this.plan = plan;
    const places = plan.nodeAt.length;
    this.ohms = new Float64Array(plan.ohmsCount);
    this.inverse = new Float64Array(places);
    this.placeVolts = new Float64Array(places);
    this.pairs = new Float64Array(plan.pairCount);
    this.toGround = new Float64Array(places);
    this.inflow = new Float64Array(places);
  }

  /** With the elements' present values: `REDUCED`, or the node that nothing joins to any other. */
  run(values: Float64Array): number {
    this.gather(values);
    const { pairs, toGround, inflow, inverse } = this;
    const { stars, nodeAt } = this.plan;
    for (let at = 0; at < stars.length; ) {
      const place = stars[at]!;
      const count = stars[at + 1]!;
      const arms = at + 2;
      let two = arms + 2 * count;
      const own = toGround[place]!;
      const amps = inflow[place]!;
      let sum = own;
      for (let arm = arms; arm < two; arm += 2) sum += pairs[stars[arm]!]!;
      if (!(sum > 0)) return nodeAt[place]!;
      const part = 1 / sum;
      inverse[place] = part;
      const end = two;
      for (let arm = arms; arm < end; arm += 2) {
        const share = pairs[stars[arm]!]! * part;
        const to = stars[arm + 1]!;
        toGround[to]! += share * own;
        inflow[to]! += share * amps;
        for (let other = arm + 2; other < end; other += 2) {
          pairs[stars[two]!]! += share * pairs[stars[other]!]!;
          two += 1;
        }
      }
      at = two;
    }
    return REDUCED;
  }

  /** Resistors, chains and sources as conductances and currents. */
  private gather(values: Float64Array): void {
    const { ohms, pairs, toGround, inflow } = this;
    const { resistors, joins, between, grounded, sources, currents, tied } = this.plan;
    pairs.fill(0);
    toGround.fill(0);
    inflow.fill(0);
    for (let k = 0; k < resistors.length; k += 1) ohms[k] = values[resistors[k]! * STRIDE]!;
    for (let k = 0; k < joins.length; k += 3)
      ohms[joins[k + 2]!] = ohms[joins[k]!]! + ohms[joins[k + 1]!]!;
    for (let k = 0; k < between.length; k += 2) pairs[between[k + 1]!]! += 1 / ohms[between[k]!]!;
    for (let k = 0; k < grounded.length; k += 2)
      toGround[grounded[k + 1]!]! += 1 / ohms[grounded[k]!]!;
    for (let k = 0; k < tied.length; k += 1) toGround[tied[k]!]! += ISLAND_TIE_SIEMENS;
    for (let k = 0; k < sources.length; k += 4) {
      const at = sources[k]! * STRIDE;
      const plus = sources[k + 1]!;
      const minus = sources[k + 2]!;
      const siemens = values[at + 1]!;
      const amps = values[at]! * siemens;
      if (sources[k + 3]! !== NO_SLOT) pairs[sources[k + 3]!]! += siemens;
      else toGround[plus === NO_PLACE ? minus : plus]! += siemens;
      if (plus !== NO_PLACE) inflow[plus]! += amps;
      if (minus !== NO_PLACE) inflow[minus]! -= amps;
    }
    for (let k = 0; k < currents.length; k += 3) {
      const amps = values[currents[k]! * STRIDE]!;
      if (currents[k + 1]! !== NO_PLACE) inflow[currents[k + 1]!]! -= amps;
      if (currents[k + 2]! !== NO_PLACE) inflow[currents[k + 2]!]! += amps;
    }
  }

  /** From the voltages of the kept nodes `x` those of all, by node. */
  restore(x: Float64Array, volts: Float64Array): void {
    const { pairs, inflow, inverse, placeVolts, ohms } = this;
    const { stars, starts, links, nodeAt, keptCount } = this.plan;
    for (let place = 0; place < keptCount; place += 1) placeVolts[place] = x[place]!;
    for (let k = starts.length - 1; k >= 0; k -= 1) {
      const at = starts[k]!;
      const place = stars[at]!;
      const end = at + 2 + 2 * stars[at + 1]!;
      let sum = inflow[place]!;
      for (let arm = at + 2; arm < end; arm += 2)
        sum += pairs[stars[arm]!]! * placeVolts[stars[arm + 1]!]!;
      placeVolts[place] = sum * inverse[place]!;
    }
    for (let place = 0; place < nodeAt.length; place += 1)
      volts[nodeAt[place]!] = placeVolts[place]!;
    for (let k = links.length - 5; k >= 0; k -= 5) {
      const a = volts[links[k + 1]!]!;
      const b = volts[links[k + 2]!]!;
      if (links[k + 4]! === NO_SLOT) {
        volts[links[k]!] = a;
        continue;
      }
      const first = ohms[links[k + 3]!]!;
      const second = ohms[links[k + 4]!]!;
      volts[links[k]!] = (a * second + b * first) / (first + second);
    }
  }
}
