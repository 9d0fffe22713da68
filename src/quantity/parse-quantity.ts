/** Quantities as files write them: strict, case-sensitive, one spelling of a number. */
import type { Quantity, Toleranced } from './quantity.ts';
import { strictUnit, toSi } from './unit-words.ts';
import { awgAreaM2 } from './wire.ts';

/** Longer than any quantity that a person writes. */
const MAX_CHARACTERS = 100;

// Bounded pieces that cannot match the same characters twice: linear.
const NUMBER = /^([+-]?(?:\d{1,15}(?:\.\d{1,15})?|\.\d{1,15})(?:e[+-]?\d{1,2})?)/;
const PLUS_MINUS = /\+\/-|±/;

/**
 * `4.75 V`, `0.5 mm2`, `2.2 kohm`, `30 mA`, `800 rpm`, `18 AWG` (its area), `-40 degC`; a number alone is of unit
 * `1`; `OL` is an infinite resistance. Null for anything else. Per cent keep their number: `45 %` is 45.
 */
export function parseQuantity(text: string): Quantity | null {
  if (text.length > MAX_CHARACTERS) return null;
  const trimmed = text.trim();
  if (trimmed === 'OL') return { value: Number.POSITIVE_INFINITY, unit: 'ohm' };
  const number = NUMBER.exec(trimmed)?.[1];
  if (number === undefined) return null;
  const rest = trimmed.slice(number.length).trim();
  if (rest === '') return { value: Number(number), unit: '1' };
  if (rest === 'AWG') return gauge(Number(number));
  const word = strictUnit(rest);
  return word && { value: toSi(number, word), unit: word.unit };
}

/**
 * `5 V +/- 2 %`, `5 V ± 0.25 V`, `1 kohm .. 10 kohm` (nominal half-way), or a plain value without tolerance. Null when
 * it is none of these, the ends are exchanged, or the units differ. A tolerance in per cent is of the value, but of
 * a value in per cent it is points: `50 % +/- 5 %` is 45 to 55.
 */
export function parseToleranced(text: string): Toleranced | null {
  if (text.length > MAX_CHARACTERS) return null;
  const range = text.split('..');
  if (range.length === 2) return between(parseQuantity(range[0]!), parseQuantity(range[1]!));
  const sides = text.split(PLUS_MINUS);
  const value = parseQuantity(sides[0]!);
  if (!value || sides.length > 2) return null;
  if (sides.length === 1) return around(value, 0);
  const tolerance = parseQuantity(sides[1]!);
  if (!tolerance || !Number.isFinite(value.value) || tolerance.value < 0) return null;
  if (tolerance.unit === value.unit) return around(value, tolerance.value);
  if (tolerance.unit !== '%' || value.unit === 'degC') return null;
  return around(value, (Math.abs(value.value) * tolerance.value) / 100);
}

function around({ value, unit }: Quantity, by: number): Toleranced {
  return { nominal: value, low: decimalSum(value, -by), high: decimalSum(value, by), unit };
}

/** The sum of two decimals as people write them: 12.6 - 0.3 is 12.3, not the double next to it. */
function decimalSum(a: number, b: number): number {
  return Number((a + b).toPrecision(15));
}

function between(low: Quantity | null, high: Quantity | null): Toleranced | null {
  if (!low || !high || low.unit !== high.unit || low.value > high.value) return null;
  const nominal = (low.value + high.value) / 2;
  return { nominal, low: low.value, high: high.value, unit: low.unit };
}

function gauge(number: number): Quantity | null {
  if (!Number.isInteger(number) || number < 0 || number > 40) return null;
  return { value: awgAreaM2(number), unit: 'm2' };
}
