/** What an instrument showed, as a record keeps it and as it is computed with. */
import type { Shown } from './test.ts';

type ShownNumber = Extract<Shown, { kind: 'number' }>;

/** As a record keeps it: over-limit is null there, since JSON has no infinity. */
export type KeptShown =
  | Extract<Shown, { kind: 'look' }>
  | (Omit<ShownNumber, 'value'> & { readonly value: number | null });

/** With OL as infinity. */
export function shownOf(kept: KeptShown): Shown {
  return kept.kind === 'look' ? kept : { ...kept, value: kept.value ?? Number.POSITIVE_INFINITY };
}

/** As it goes into a record. */
export function keptOf(shown: Shown): KeptShown {
  if (shown.kind === 'look') return shown;
  return { ...shown, value: Number.isFinite(shown.value) ? shown.value : null };
}
