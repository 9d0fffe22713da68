/**
 * What values a vehicle's sensor circuit can have, asked of circuit files as they are read and of circuits that stand in
 * session files; beyond them numbers lose their digits and the solver its footing.
 */
import type { Toleranced, Unit } from '../quantity/quantity.ts';

/** No vehicle has values outside these, in the unit without prefix. Zero is judged elsewhere. */
const LARGEST: Partial<Record<Unit, number>> = {
  V: 60,
  A: 1000,
  ohm: 1e9,
  m: 1000,
  m2: 1e-3,
  degC: 300,
  '1': 1,
};
const SMALLEST: Partial<Record<Unit, number>> = { ohm: 1e-3, A: 1e-7, V: 1e-4, m: 1e-3, m2: 1e-9 };

/** Whether a value can be that of a vehicle, with its whole tolerance. */
export function withinReason({ low, high, unit }: Omit<Toleranced, 'nominal'>): boolean {
  const largest = LARGEST[unit] ?? Number.POSITIVE_INFINITY;
  const smallest = SMALLEST[unit] ?? 0;
  const size = Math.min(Math.abs(low), Math.abs(high));
  return Math.max(Math.abs(low), Math.abs(high)) <= largest && (size >= smallest || low <= 0);
}
