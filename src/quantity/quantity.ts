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

/**
 * A value that is not known to the last digit, and how it is spread; `valueAt` draws from it. All in `unit`,
 * `low <= nominal <= high`. Nominal is the middle of what it is spread over, of several the likeliest.
 */
export interface Toleranced {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
  readonly unit: Unit;
  /** Even in the logarithm between the ends; without it even in the value. */
  readonly spread?: 'log';
  /** It is one of these, each with its chance; the chances come to 1, low and high are the outermost ends. */
  readonly oneOf?: readonly Alternative[];
}

/** One of several values, and the chance that it is this one, 0 to 1. */
export interface Alternative {
  readonly chance: number;
  readonly value: Toleranced;
}
