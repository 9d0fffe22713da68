/** What an instrument showed, out of a record and back into what is computed with. */
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
