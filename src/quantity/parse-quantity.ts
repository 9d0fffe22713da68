/** Quantities as files write them: strict, case-sensitive, one spelling of a number. */
import type { Quantity, Toleranced } from './quantity.ts';
import { saysOneOf, splitChoices } from './split-choices.ts';
import { strictUnit, toSi } from './unit-words.ts';
import { oneOfSeveral, unknownBetween } from './value-at.ts';
import { awgAreaM2 } from './wire.ts';

/** Longer than any quantity that a person writes. */
const MAX_CHARACTERS = 100;
/** Longer than any list of choices. */
const MAX_LIST_CHARACTERS = 400;

// Bounded pieces that cannot match the same characters twice: linear.
const NUMBER = /^([+-]?(?:\d{1,15}(?:\.\d{1,15})?|\.\d{1,15})(?:e[+-]?\d{1,2})?)/;
const PLUS_MINUS = /\+\/-|±/;
const BETWEEN = /\.\.|\sto\s/;

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
 * A value and what is known of it, in one of three kinds. Known within a tolerance: `5 V +/- 2 %`, `5 V ± 0.25 V`, or a
 * plain value. Unknown within a range: `1 kohm to 22 kohm`, also written `1 kohm .. 22 kohm`. One of several:
 * `one of: 5 V 70 %, 8 V +/- 3 % 30 %`. Null when it is none of these, the ends are exchanged, or the units differ.
 * A tolerance in per cent is of the value, but of a value in per cent it is points: `50 % +/- 5 %` is 45 to 55.
 */
export function parseToleranced(text: string): Toleranced | null {
  if (!saysOneOf(text)) return parseOne(text);
  if (text.length > MAX_LIST_CHARACTERS) return null;
  const split = splitChoices(text, (one) => parseOne(one) !== null);
  if (!split.ok) return null;
  const alternatives = split.choices.flatMap(({ text: one, chance }) => {
    const value = parseOne(one);
    return value ? [{ chance, value }] : [];
  });
  const [first] = alternatives;
  const alike = alternatives.every(({ value }) => value.unit === first?.value.unit);
  return alike && alternatives.length === split.choices.length ? oneOfSeveral(alternatives) : null;
}

function parseOne(text: string): Toleranced | null {
  if (text.length > MAX_CHARACTERS) return null;
  const range = text.split(BETWEEN);
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
  return unknownBetween(low.value, high.value, low.unit);
}

function gauge(number: number): Quantity | null {
  if (!Number.isInteger(number) || number < 0 || number > 40) return null;
  return { value: awgAreaM2(number), unit: 'm2' };
}
