/**
 * What can be said of a set of cases without searching: how much the tests could still tell about the repair, how much
 * each tells at once, and what no strategy can do without.
 */
import type { Cases } from './cases.ts';
import { huffmanLength } from './huffman.ts';

/** Where a test leads from an arrangement, and its minutes from there. Places are the caller's numbers. */
export type Moves = (
  place: number,
  test: number,
) => { readonly place: number; readonly minutes: number };

/** Cases that may still be there, with the sum of their weights, and how things stand. */
export interface CaseSet {
  readonly cases: Uint16Array;
  readonly place: number;
  readonly weight: number;
}

/** What a test tells about the repair, in bits (not weighted), and what it takes. */
export interface TestValue {
  readonly test: number;
  readonly bits: number;
  readonly minutes: number;
  /** Bits per minute; telling cases of one repair apart counts a little. */
  readonly score: number;
}

/** Outcomes seen at a state are bits of a 32-bit number. */
const OUTCOMES_MAX = 31;
/** Telling cases apart without telling repairs apart counts this little, but breaks ties. */
const CASE_GAIN_SHARE = 1e-6;

/** Measures of sets of the cases given. */
export class CaseMeasures {
  readonly #cases: Cases;
  readonly #moves: Moves;
  /** Sums while a set is looked at; zero in between. */
  readonly #sums: Float64Array;
  readonly #byOutcome = new Float64Array(OUTCOMES_MAX);
  readonly #byRepair: Float64Array;
  readonly #bySignature: Float64Array;

  constructor(cases: Cases, moves: Moves) {
    this.#cases = cases;
    this.#moves = moves;
    this.#sums = new Float64Array(OUTCOMES_MAX * Math.max(1, cases.repairs.length));
    this.#byRepair = new Float64Array(Math.max(1, cases.repairs.length));
    this.#bySignature = new Float64Array(cases.count);
    if (cases.outcomeOf.some((outcome) => outcome >= OUTCOMES_MAX))
      throw new Error(`strategy: a test has more than ${OUTCOMES_MAX} outcomes`);
  }

  /** What all tests together could still say about the repair, in bits times weight. */
  information(cases: Uint16Array): number {
    const { repairOf, signatureOf, weight } = this.#cases;
    const first = repairOf[cases[0]!]!;
    if (cases.every((one) => repairOf[one] === first)) return 0;
    const repairs = this.#byRepair;
    const signatures = this.#bySignature;
    let total = 0;
    let logs = 0;
    for (const one of cases) {
      total += weight[one]!;
      repairs[repairOf[one]!]! += weight[one]!;
      signatures[signatureOf[one]!]! += weight[one]!;
      // Each case is the only one of its repair and signature.
      logs += xlog2(weight[one]!);
    }
    for (const one of cases) {
      logs -= xlog2(repairs[repairOf[one]!]!) + xlog2(signatures[signatureOf[one]!]!);
      repairs[repairOf[one]!] = 0;
      signatures[signatureOf[one]!] = 0;
    }
    return xlog2(total) + logs;
  }

  /**
   * Readings: the greater of two bounds, the tests of the best code for the repairs (those that no test separates are
   * one) times the cheapest useful test, and the information needed over the most that a minute can bring. To this
   * comes the least that it takes to get from here to any useful test.
   */
  lowerBound(node: CaseSet, information: number): number {
    const { count, outcomeOf, tests } = this.#cases;
    let cheapestMinutes = Infinity;
    let cheapestMove = Infinity;
    let ways = 2;
    let bitsPerMinute = 0;
    for (let test = 0; test < tests.length; test += 1) {
      const first = test * count;
      let seen = 0;
      for (let at = 0; at < node.cases.length; at += 1)
        seen |= 1 << outcomeOf[first + node.cases[at]!]!;
      const size = bitCount(seen);
      if (size < 2) continue;
      const { minutes } = this.#moves(node.place, test);
      const reading = this.#moves(-1, test).minutes;
      cheapestMinutes = Math.min(cheapestMinutes, reading);
      cheapestMove = Math.min(cheapestMove, minutes - reading);
      ways = Math.max(ways, size);
      bitsPerMinute = Math.max(bitsPerMinute, Math.log2(size) / reading);
    }
    const lengths = huffmanLength(this.#repairWeights(node.cases), ways);
    const readings = Math.max(cheapestMinutes * lengths, information / bitsPerMinute);
    return cheapestMove * node.weight + readings;
  }

  /** Weights of the repairs in a state, those joined by a common signature being one. */
  #repairWeights(cases: Uint16Array): number[] {
    const { repairOf, signatureOf, weight } = this.#cases;
    const parent = new Map<number, number>();
    const find = (repair: number): number => {
      let at = repair;
      for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
      return at;
    };
    const owner = new Map<number, number>();
    for (const one of cases) {
      const repair = find(repairOf[one]!);
      const other = owner.get(signatureOf[one]!);
      if (other === undefined) owner.set(signatureOf[one]!, repair);
      else if (find(other) !== repair) parent.set(repair, find(other));
    }
    const sums = new Map<number, number>();
    for (const one of cases) add(sums, find(repairOf[one]!), weight[one]!);
    return [...sums.values()];
  }

  #repairLogs(cases: Uint16Array): number {
    const { repairOf, weight } = this.#cases;
    const sums = this.#byRepair;
    let logs = 0;
    for (const one of cases) sums[repairOf[one]!]! += weight[one]!;
    for (const one of cases) {
      logs += xlog2(sums[repairOf[one]!]!);
      sums[repairOf[one]!] = 0;
    }
    return logs;
  }

  /** Tests that split a state, by information about the repair per minute, best first. Bits are not weighted. */
  rankTests(node: CaseSet): TestValue[] {
    const { count, outcomeOf, repairOf, repairs, tests, weight } = this.#cases;
    const ranked: TestValue[] = [];
    const { cases } = node;
    const joint = this.#sums;
    const byOutcome = this.#byOutcome;
    const whole = xlog2(node.weight);
    const before = this.#repairLogs(cases);
    for (let test = 0; test < tests.length; test += 1) {
      const first = test * count;
      let seen = 0;
      for (let at = 0; at < cases.length; at += 1) {
        const one = cases[at]!;
        const outcome = outcomeOf[first + one]!;
        seen |= 1 << outcome;
        byOutcome[outcome]! += weight[one]!;
        joint[outcome * repairs.length + repairOf[one]!]! += weight[one]!;
      }
      let logs = 0;
      let outcomes = 0;
      for (let at = 0; at < cases.length; at += 1) {
        const one = cases[at]!;
        const outcome = outcomeOf[first + one]!;
        const cell = outcome * repairs.length + repairOf[one]!;
        logs += xlog2(joint[cell]!);
        outcomes += xlog2(byOutcome[outcome]!);
        joint[cell] = 0;
        byOutcome[outcome] = 0;
      }
      if (bitCount(seen) < 2) continue;
      const bits = Math.max(0, (whole - before - outcomes + logs) / node.weight);
      const { minutes } = this.#moves(node.place, test);
      const caseBits = (whole - outcomes) / node.weight;
      const score = (bits + CASE_GAIN_SHARE * caseBits) / minutes;
      ranked.push({ test, bits, minutes, score });
    }
    return ranked.sort((a, b) => b.score - a.score);
  }
}

function bitCount(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count += 1;
  return count;
}

function add(sums: Map<number, number>, key: number, mass: number): void {
  sums.set(key, (sums.get(key) ?? 0) + mass);
}

function xlog2(x: number): number {
  return x > 0 ? x * Math.log2(x) : 0;
}
