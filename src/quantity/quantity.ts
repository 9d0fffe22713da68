/** What a number means: a value in the SI unit of its dimension. */

/** The units a value is kept in. Prefixes (milli, kilo …) exist only in what people type and read. */
export const UNITS = [
  'V',
  'A',
  'ohm',
  'Hz',
  'rpm',
  '%',
  's',
  'm',
  'm2',
  'degC',
  'deg',
  'F',
  'W',
  '1',
] as const;
export type Unit = (typeof UNITS)[number];

/** One value. `value` is finite, or `Infinity` for an ohmmeter's over-limit (`OL`). */
export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
}

/** A value with its tolerance: `low <= nominal <= high`, all in `unit`. */
export interface Toleranced {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
}
