/**
 * Conductances between a few nodes and to ground, all of them positive or zero, and currents put in: solved by working out
 * one node after the other as a star, without ever subtracting (see `reduce.ts`).
 */

/** A voltage behind a resistance, as it looks from two nodes. */
export interface Behind {
  volts: number;
  ohms: number;
}

/** Room for `size` nodes; number -1 is ground. */
export class Mesh {
  readonly size: number;
  /** `row * size + column` with row below column. */
  readonly pairs: Float64Array;
  readonly toGround: Float64Array;
  readonly inflow: Float64Array;
  private readonly sums: Float64Array;
  /** Neighbours of the node that is worked out. */
  private readonly arms: Int32Array;

  constructor(size: number) {
    this.size = size;
    this.pairs = new Float64Array(size * size);
    this.toGround = new Float64Array(size);
    this.inflow = new Float64Array(size);
    this.sums = new Float64Array(size);
    this.arms = new Int32Array(size);
  }

  /** Takes over the first `size` places of a reduction, or another mesh. */
  load(from: Pick<Mesh, 'pairs' | 'toGround' | 'inflow'>): void {
    const { size, pairs, toGround, inflow } = this;
    for (let at = 0; at < size * size; at += 1) pairs[at] = from.pairs[at]!;
    for (let k = 0; k < size; k += 1) {
      toGround[k] = from.toGround[k]!;
      inflow[k] = from.inflow[k]!;
    }
  }

  addSiemens(a: number, b: number, siemens: number): void {
    if (a < 0) {
      if (b >= 0) this.toGround[b]! += siemens;
    } else if (b < 0) this.toGround[a]! += siemens;
    else if (a < b) this.pairs[a * this.size + b]! += siemens;
    else if (b < a) this.pairs[b * this.size + a]! += siemens;
  }

  /** `amps` leave node a and enter node b. */
  addAmps(a: number, b: number, amps: number): void {
    if (a >= 0) this.inflow[a]! -= amps;
    if (b >= 0) this.inflow[b]! += amps;
  }

  /** Works out nodes `from` to `to` - 1 after those before them; false if one of them is joined to nothing. */
  workOut(from: number, to: number): boolean {
    const { size, pairs, toGround, inflow, sums, arms } = this;
    for (let k = from; k < to; k += 1) {
      const row = k * size;
      let sum = toGround[k]!;
      let count = 0;
      for (let j = k + 1; j < size; j += 1) {
        const siemens = pairs[row + j]!;
        if (siemens === 0) continue;
        sum += siemens;
        arms[count] = j;
        count += 1;
      }
      if (!(sum > 0)) return false;
      sums[k] = sum;
      const own = toGround[k]! / sum;
      const amps = inflow[k]! / sum;
      for (let m = 0; m < count; m += 1) {
        const i = arms[m]!;
        const siemens = pairs[row + i]!;
        toGround[i]! += siemens * own;
        inflow[i]! += siemens * amps;
        const share = siemens / sum;
        for (let n = m + 1; n < count; n += 1) {
          const j = arms[n]!;
          pairs[i * size + j]! += share * pairs[row + j]!;
        }
      }
    }
    return true;
  }

  /** What the last two nodes see between them, or the last one and ground, all others worked out; false if nothing holds them. */
  lookBehind(grounded: boolean, into: Behind): boolean {
    const { size, pairs, toGround, inflow } = this;
    const last = size - 1;
    const siemens = toGround[last]!;
    if (grounded) {
      into.volts = inflow[last]! / siemens;
      into.ohms = 1 / siemens;
      return siemens > 0;
    }
    const first = last - 1;
    const own = toGround[first]!;
    const both = own * siemens + pairs[first * size + last]! * (own + siemens);
    into.volts = (inflow[first]! * siemens - inflow[last]! * own) / both;
    into.ohms = (own + siemens) / both;
    return both > 0;
  }

  /** Voltages of all nodes, when all are worked out. */
  volts(x: Float64Array): void {
    const { size, pairs, inflow, sums } = this;
    for (let k = size - 1; k >= 0; k -= 1) {
      let amps = inflow[k]!;
      for (let j = k + 1; j < size; j += 1) amps += pairs[k * size + j]! * x[j]!;
      x[k] = amps / sums[k]!;
    }
  }
}
