/** Outcomes on the number line: each value must lead to exactly one. Comparison of the limits themselves is exact. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import { NEVER_NEGATIVE } from '../quantity/typed-reading.ts';
import type { MeasureUnit, RangeOutcome } from './procedure.ts';

/** A value that leads to no outcome or to two, or an outcome that no value leads to. */
export interface RangeFault {
  readonly kind: 'empty' | 'overlap' | 'gap';
  /** The outcome it is shown at. */
  readonly outcome: string;
  readonly words: string;
}

/** Lowest value a quantity can have: ohms and frequencies know no less than zero. */
function lowestOf(unit: MeasureUnit): number {
  return NEVER_NEGATIVE[unit] === undefined ? Number.NEGATIVE_INFINITY : 0;
}

/** What is wrong with the outcomes of a number. */
export function checkRanges(outcomes: readonly RangeOutcome[], unit: MeasureUnit): RangeFault[] {
  const faults: RangeFault[] = [];
  const show = (value: number) => formatQuantity({ value, unit }, { digits: 6 });
  const spans = outcomes.map(({ name, from, to }) => ({
    name,
    from: from ?? Number.NEGATIVE_INFINITY,
    to: to ?? Number.POSITIVE_INFINITY,
  }));
  for (const { name, from, to } of spans) {
    if (from >= to)
      faults.push({
        kind: 'empty',
        outcome: name,
        words: `"${name}" covers no value: ${show(from)} is not below ${show(to)}`,
      });
  }
  const sorted = spans
    .filter(({ from, to }) => from < to)
    .sort((a, b) => a.from - b.from || a.to - b.to);
  let reached = lowestOf(unit);
  let before: string | null = null;
  for (const { name, from, to } of sorted) {
    if (from > reached)
      faults.push({
        kind: 'gap',
        outcome: name,
        words:
          reached === Number.NEGATIVE_INFINITY
            ? `no outcome covers values below ${show(from)}`
            : `no outcome covers values from ${show(reached)} to ${show(from)}`,
      });
    else if (before !== null && from < reached)
      faults.push({
        kind: 'overlap',
        outcome: name,
        words: `"${name}" and "${before}" both cover values ${spanWords(from, Math.min(to, reached), show)}`,
      });
    if (to >= reached) {
      reached = to;
      before = name;
    }
  }
  const last = sorted[sorted.length - 1];
  if (last && reached < Number.POSITIVE_INFINITY)
    faults.push({
      kind: 'gap',
      outcome: before ?? last.name,
      words: `no outcome covers values from ${show(reached)} up`,
    });
  return faults;
}

function spanWords(from: number, to: number, show: (value: number) => string): string {
  if (!Number.isFinite(from)) return Number.isFinite(to) ? `below ${show(to)}` : 'of any size';
  return Number.isFinite(to) ? `from ${show(from)} to ${show(to)}` : `from ${show(from)} up`;
}
