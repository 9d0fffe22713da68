/**
 * A test's outcomes: the few things a person can tell apart in what it shows. Either the author's ranges, or found
 * here: over-limit by itself, and cuts of the range of numbers where they tell the suspects apart best. A cut is worth
 * what it says about the suspects through the instrument's and the model's uncertainty, so that none is made where the
 * instrument can't see the difference (supervised cutting by information gain, after Fayyad and Irani, 1993).
 */
import { METER_UNITS } from '../circuit/meter-units.ts';
import type { Look, Shown } from '../circuit/test.ts';
import { normalCdf } from '../quantity/normal.ts';
import { ERROR_MODEL, type ErrorModel, joinedWidth, modelWidth } from './error-model.ts';
import type { Column, PredictionTable } from './prediction-table.ts';

/** One outcome. A range counts its `from` and not its `below`; an infinite `below` includes over-limit. */
export type OutcomeSpec =
  | { readonly kind: 'range'; readonly id: string; readonly from: number; readonly below: number }
  | { readonly kind: 'looks'; readonly id: string; readonly looks: readonly Look[] };

/** The outcomes of one test, and which of them each sample has. */
export interface Outcomes {
  readonly test: number;
  /** The first outcome that holds a value has it. The last is `OUTSIDE` when the author's ranges leave a gap. */
  readonly specs: readonly OutcomeSpec[];
  /** Outcome of each sample, by candidate times samples. */
  readonly ofSample: Uint8Array;
}

/** Id of the outcome for what none of the author's outcomes holds. */
export const OUTSIDE = 'outside';

/** Numbers have at most this many outcomes beside over-limit: what a person would still call different. */
const OUTCOMES_MAX = 6;
/** A cut must tell this much about the suspects, in bits. */
const GAIN_MIN_BITS = 0.05;
/** Gains closer than this are equal but for rounding; of equals the first place is cut. */
const SAME_GAIN_BITS = 1e-12;
/** Places considered for cuts: the widest gaps, and as many at even shares of the pooled samples. */
const CUTS_BY_GAP = 24;
const CUTS_BY_SHARE = 24;
/** Many gaps of the very same width could be more than that; these are enough. */
const PLACES_MAX = 200;
/** Beyond this many deviations a value is surely on its side of a cut (chance of the other side below 3e-5). */
const SURE_DEVIATIONS = 4;

/** Outcomes of test number `test`: the author's `authored`, or found from the predictions. */
export function findOutcomes(
  table: PredictionTable,
  test: number,
  authored?: readonly OutcomeSpec[],
  errorModel: ErrorModel = ERROR_MODEL,
): Outcomes {
  const column = table.column(test);
  const specs = [
    ...(authored ??
      (column.kind === 'look' ? ownLooks(column) : ownRanges(table, test, column, errorModel))),
  ];
  const ofSample = new Uint8Array(column.values.length);
  let outside = false;
  column.values.forEach((value, at) => {
    const found = specs.findIndex((spec) => holds(spec, column, value));
    outside ||= found < 0;
    ofSample[at] = found < 0 ? specs.length : found;
  });
  if (outside) specs.push({ kind: 'looks', id: OUTSIDE, looks: [] });
  return { test, specs, ofSample };
}

/** Outcomes of all tests of a table, each found when first asked for. */
export function outcomesOf(table: PredictionTable): (test: number) => Outcomes {
  const known = new Map<number, Outcomes>();
  return (test) => {
    let outcomes = known.get(test);
    if (!outcomes) {
      outcomes = findOutcomes(table, test);
      known.set(test, outcomes);
    }
    return outcomes;
  };
}

/** The outcome that what was shown is, the first of several; undefined where none is. */
export function outcomeShown(specs: readonly OutcomeSpec[], shown: Shown): OutcomeSpec | undefined {
  return specs.find((spec) => {
    if (spec.kind === 'looks') return shown.kind === 'look' && spec.looks.includes(shown.look);
    return shown.kind === 'number' && isWithin(spec, shown.value);
  });
}

function holds(spec: OutcomeSpec, column: Column, value: number): boolean {
  if (spec.kind === 'looks')
    return column.kind === 'look' && spec.looks.includes(column.looks[value]!);
  return column.kind !== 'look' && isWithin(spec, value);
}

function isWithin(
  { from, below }: Extract<OutcomeSpec, { kind: 'range' }>,
  value: number,
): boolean {
  return value >= from && (value < below || below === Infinity);
}

function ownLooks(column: Column): OutcomeSpec[] {
  return column.looks.map((look) => ({ kind: 'looks', id: look, looks: [look] }));
}

function ownRanges(
  table: PredictionTable,
  test: number,
  column: Column,
  errorModel: ErrorModel,
): OutcomeSpec[] {
  const { samples } = table;
  const planned = table.planned ?? [...table.candidates.keys()];
  const values = planned.flatMap((row) => [
    ...column.values.subarray(row * samples, (row + 1) * samples),
  ]);
  const finite = Float64Array.from(values.filter((value) => value !== Infinity)).sort();
  const specs: OutcomeSpec[] = [];
  if (column.values.includes(Infinity))
    specs.push({ kind: 'range', id: 'OL', from: Infinity, below: Infinity });
  if (finite.length === 0) return specs;
  const uncertainty = table.tests[test]!.standardUncertainty ?? (() => 0);
  const places = cutPlaces(finite, column.unit);
  const below = sharesBelow(values, samples, places, (value) =>
    joinedWidth(uncertainty(value), modelWidth(column.unit, value, errorModel)),
  );
  const cuts = chooseCuts(below, planned.length, places.length).map((index) => places[index]!);
  [-Infinity, ...cuts].forEach((from, index) => {
    specs.push({ kind: 'range', id: `range-${index + 1}`, from, below: cuts[index] ?? Infinity });
  });
  return specs;
}

/** Midpoints of the widest gaps and at even shares. Ohms run over decades: the middle of a gap is its geometric mean. */
function cutPlaces(sorted: Float64Array, unit: Column['unit']): number[] {
  const places = new Set<number>();
  const widths = new Float64Array(sorted.length);
  let even = 1;
  sorted.forEach((high, at) => {
    const low = sorted[at - 1] ?? high; // there is no gap before the first
    const middle = middleOf(low, high, unit);
    if (!(middle > low)) return;
    const decades = runsOverDecades(unit) && low > 0;
    widths[at] = decades ? Math.log(high / low) : high - low;
    if (at * (CUTS_BY_SHARE + 1) < even * sorted.length) return;
    places.add(middle);
    while (at * (CUTS_BY_SHARE + 1) >= even * sorted.length) even += 1;
  });
  const narrowest = Float64Array.from(widths).sort().at(-CUTS_BY_GAP) ?? 0;
  widths.forEach((width, at) => {
    if (width > 0 && width >= narrowest) places.add(middleOf(sorted[at - 1]!, sorted[at]!, unit));
  });
  return [...places].sort((a, b) => a - b).slice(0, PLACES_MAX);
}

function runsOverDecades(unit: Column['unit']): boolean {
  return unit !== null && METER_UNITS[unit].runsOverDecades;
}

function middleOf(low: number, high: number, unit: Column['unit']): number {
  return runsOverDecades(unit) && low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
}

/**
 * `result[cut * candidates + candidate]`: share of the candidate's readings below the cut, as the instrument sees
 * them; two more rows hold none and all of the finite ones.
 */
function sharesBelow(
  values: readonly number[],
  samples: number,
  places: readonly number[],
  width: (value: number) => number,
): Float64Array {
  const count = values.length / samples;
  const steps = new Float64Array((places.length + 2) * count);
  for (let candidate = 0; candidate < count; candidate += 1)
    for (let sample = 0; sample < samples; sample += 1) {
      const value = values[candidate * samples + sample]!;
      if (value === Infinity) continue;
      const deviation = width(value);
      let place = firstAbove(places, value - SURE_DEVIATIONS * deviation);
      let counted = 0;
      for (; place < places.length; place += 1) {
        const z = (places[place]! - value) / deviation;
        if (z > SURE_DEVIATIONS) break;
        const chance = normalCdf(z);
        steps[(place + 1) * count + candidate]! += (chance - counted) / samples;
        counted = chance;
      }
      steps[(place + 1) * count + candidate]! += (1 - counted) / samples;
    }
  // From what each cut adds to what lies below it.
  for (let at = count; at < steps.length; at += 1) steps[at]! += steps[at - count]!;
  return steps;
}

function firstAbove(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! > value) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Greedily the cuts that tell most about the suspects, each suspect counting alike. Indices into the places, rising. */
function chooseCuts(below: Float64Array, count: number, places: number): number[] {
  const cuts = [0, places + 1];
  while (cuts.length - 1 < OUTCOMES_MAX) {
    let best = { gain: GAIN_MIN_BITS, cut: -1 };
    for (let part = 1; part < cuts.length; part += 1) {
      const from = cuts[part - 1]!;
      const to = cuts[part]!;
      for (let cut = from + 1; cut < to; cut += 1) {
        const gain = splitGain(below, count, from, cut, to);
        if (gain > best.gain + SAME_GAIN_BITS) best = { gain, cut };
      }
    }
    if (best.cut < 0) break;
    cuts.push(best.cut);
    cuts.sort((a, b) => a - b);
  }
  return cuts.slice(1, -1).map((cut) => cut - 1);
}

/** Information about the suspect, in bits, from splitting one range in two. */
function splitGain(
  below: Float64Array,
  count: number,
  from: number,
  cut: number,
  to: number,
): number {
  let left = 0;
  let right = 0;
  let gain = 0;
  for (let candidate = 0; candidate < count; candidate += 1) {
    const at = below[cut * count + candidate]!;
    const l = Math.max(0, at - below[from * count + candidate]!);
    const r = Math.max(0, below[to * count + candidate]! - at);
    left += l;
    right += r;
    gain += xlog2(l) + xlog2(r) - xlog2(l + r);
  }
  return (gain - xlog2(left) - xlog2(right) + xlog2(left + right)) / count;
}

function xlog2(x: number): number {
  return x > 0 ? x * Math.log2(x) : 0;
}
