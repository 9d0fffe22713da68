/** What a reading is worth as evidence: how many times likelier it is under one group than under another, and what is one piece. */
import type { Shown } from '../circuit/test.ts';
import { type Group, meanOver } from './hypothesis-groups.ts';
import type { TableTest } from './prediction-table.ts';

/** A reading counts from here on: "substantial" on Jeffreys' scale begins at 10^0.5 = 3.16; we take 3. */
export const EVIDENCE_RATIO = 3;

/** What makes two readings the same piece of news: kind of test, place and vehicle state. */
export function evidenceKey(test: TableTest): string {
  return JSON.stringify([test.family, test.state, [...(test.parts ?? test.reaches)].sort()]);
}

/**
 * Whether two readings are the same piece of news. Of the same kind, place and state they are, unless they show different
 * things: then what was taken off or put on between them made the difference, and no lead in the wrong place.
 */
export function sameNews(
  one: TableTest,
  other: TableTest,
  shown: Shown,
  otherShown: Shown,
): boolean {
  return evidenceKey(one) === evidenceKey(other) && areAlike(shown, otherShown);
}

function areAlike(one: Shown, other: Shown): boolean {
  if (one.kind === 'look' || other.kind === 'look')
    return one.kind === other.kind && JSON.stringify(one) === JSON.stringify(other);
  if (one.value === other.value) return true;
  const larger = Math.max(Math.abs(one.value), Math.abs(other.value));
  return Math.abs(one.value - other.value) < ALIKE_SHARE * larger;
}
/** Two numbers this part of the larger apart show different things. Our choice. */
const ALIKE_SHARE = 0.5;

/** Whether both are read at the same terminals, or look at the same thing: a mistake about the place shows in both. */
export function samePlace(one: TableTest, other: TableTest): boolean {
  return (
    one.reads !== undefined &&
    one.reads.length > 0 &&
    JSON.stringify(one.reads) === JSON.stringify(other.reads)
  );
}

/** How many times likelier a reading is under one group of suspects than under another; 1 when neither can show it. */
export function ratioOf(
  perRow: Float64Array,
  one: Group,
  other: Group,
  chances: Float64Array,
): number {
  const ratio = meanOver(perRow, one, chances) / meanOver(perRow, other, chances);
  return Number.isNaN(ratio) ? 1 : ratio;
}
