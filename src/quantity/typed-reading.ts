/** A reading on its way to being understood: its value, its normal form, and whether it can be at all. */
import { formatQuantity, joined } from './format-quantity.ts';
import type { Quantity, Unit } from './quantity.ts';
import { toSi, type UnitWord } from './unit-words.ts';

/** What a reading is asked for as: the unit, and which values can be. */
export interface ExpectedReading {
  readonly unit: Unit;
  /** Where readings usually lie, in the unit itself; decides between m and M. */
  readonly usual?: { readonly low: number; readonly high: number };
  /** What cannot be in this vehicle, and why, in words: `this vehicle has a 12 V system`. */
  readonly limit?: { readonly low?: number; readonly high?: number; readonly because?: string };
  /** True where the step asks for direct voltage or current, false for alternating. */
  readonly dc?: boolean;
}

/** One way to understand a doubtful reading, with the words to choose it by. */
export interface ReadingChoice {
  readonly quantity: Quantity;
  readonly resolution: number;
  readonly words: string;
}

/** What a hand-held meter or scope can show, least and most, apart from zero. Common practice, no source. */
const CONCEIVABLE: Partial<Record<Unit, readonly [number, number]>> = {
  V: [1e-5, 2e3],
  A: [1e-7, 2e3],
  ohm: [0.01, 1e8],
  Hz: [0.01, 5e7],
  s: [1e-9, 1e5],
  m: [1e-4, 1e3],
  F: [1e-13, 1],
  W: [1e-4, 1e5],
};
/** How far outside its usual range a reading still counts as usual when m and M are weighed. */
const USUAL_SLACK = 100;

/** Units that have no negative values, with the reason in words. */
export const NEVER_NEGATIVE: Partial<Record<Unit, string>> = {
  ohm: 'a resistance cannot be negative; a meter that shows one sees voltage in the circuit, or was zeroed with something between its leads',
  Hz: 'a frequency cannot be negative',
  rpm: 'a speed in rpm is entered without a sign',
  '%': 'a duty or a percentage here lies between 0 and 100',
  s: 'a time here cannot be negative',
  m: 'a length cannot be negative',
  m2: 'an area cannot be negative',
  F: 'a capacitance cannot be negative',
};

/** A number as typed, and the unit it was typed in. */
export interface Typed {
  readonly digits: string;
  readonly lastPower: number;
  readonly word: UnitWord;
}

/** The value, its last digit and its words. */
export function readingChoice({ digits, lastPower, word }: Typed): ReadingChoice {
  const quantity = { value: toSi(digits, word), unit: word.unit };
  const resolution = Number(`1e${lastPower + word.power}`) * word.factor;
  return { quantity, resolution, words: formatQuantity(quantity, { digits: 6 }) };
}

/** Every typed digit with the prefix and unit as signs. */
export function typedText({ digits, word }: Typed): string {
  if (word.factor !== 1 || word.unit === 'm2')
    return formatQuantity({ value: toSi(digits, word), unit: word.unit }, { digits: 6 });
  return joined(digits, word.prefix, word.unit, false);
}

/** True when an instrument could show this. */
export function conceivable({ value, unit }: Quantity): boolean {
  const range = CONCEIVABLE[unit];
  const size = Math.abs(value);
  return !range || size === 0 || (size >= range[0] && size <= range[1]);
}

/** True when the value lies somewhere near its usual range, or none is known. */
export function isUsual({ quantity }: ReadingChoice, { usual }: ExpectedReading): boolean {
  if (!usual) return true;
  const size = Math.abs(quantity.value);
  const low = Math.min(Math.abs(usual.low), Math.abs(usual.high));
  const high = Math.max(Math.abs(usual.low), Math.abs(usual.high));
  return size >= low / USUAL_SLACK && size <= high * USUAL_SLACK;
}

/** Why this value cannot be, or null. */
export function impossible(quantity: Quantity, { limit }: ExpectedReading): string | null {
  const { value, unit } = quantity;
  const written = formatQuantity(quantity);
  if (!Number.isFinite(value)) return 'this number is too large for any instrument';
  const never = NEVER_NEGATIVE[unit];
  if (never !== undefined && value < 0) return never;
  if (unit === '%' && value > 100) return `${written}: ${NEVER_NEGATIVE['%']}`;
  if (unit === 'degC' && value < -273.15) return `${written} is below absolute zero`;
  const because = limit?.because === undefined ? '' : `: ${limit.because}`;
  if (limit?.high !== undefined && value > limit.high)
    return `${written} is more than is possible here${because}`;
  if (limit?.low !== undefined && value < limit.low)
    return `${written} is less than is possible here${because}`;
  if (conceivable(quantity) || Math.abs(value) < 1) return null;
  return `${written} is more than a hand-held instrument can show`;
}
