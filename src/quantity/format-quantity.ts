/** Values as a technician writes them: an engineering prefix, few digits, no digit before the point lost. */
import type { Quantity, Unit } from './quantity.ts';
import { PREFIX_POWERS } from './unit-words.ts';

/** Prefixes a unit is shown with, largest first. Squared and whole units take none. */
const SHOWN_PREFIXES: Readonly<Record<Unit, readonly string[]>> = {
  V: ['k', '', 'm', 'u'],
  A: ['', 'm', 'u'],
  ohm: ['M', 'k', '', 'm'],
  Hz: ['M', 'k', ''],
  rpm: [''],
  '%': [''],
  s: ['', 'm', 'u', 'n'],
  m: ['k', '', 'm'],
  m2: [''],
  degC: [''],
  deg: [''],
  F: ['m', 'u', 'n', 'p'],
  W: ['k', '', 'm'],
  '1': [''],
};
const POWERS: Readonly<Record<string, number>> = { ...PREFIX_POWERS, '': 0 };

/** The trade says 0.3 V and 0.5 ohm, not 300 mV: these keep the plain unit down to a tenth. */
const PLAIN_TO_A_TENTH: ReadonlySet<Unit> = new Set<Unit>(['V', 'ohm']);

const DEFAULT_DIGITS = 3;
/** Digits of a double that are always true; ends of a range that still agree are the same number. */
const MOST_DIGITS = 15;

/** How many digits are kept, and which signs may be used. */
export interface FormatOptions {
  /** Significant digits at least before rounding, default 3; digits before the point are never lost. */
  readonly digits?: number;
  /** `ohm`, `u` and `deg` instead of the signs. */
  readonly ascii?: boolean;
}

/** `4.97 V`, `2.2 kΩ`, `18.3 mV`, `800 rpm`, `0.5 mm²`, and `OL` for an over-limit. */
export function formatQuantity(quantity: Quantity, options: FormatOptions = {}): string {
  const { value, unit } = quantity;
  if (!Number.isFinite(value)) return value < 0 ? '-OL' : 'OL';
  const digits = options.digits ?? DEFAULT_DIGITS;
  const prefix = prefixFor(Math.abs(value), unit, digits);
  return joined(scaledDigits(value, unit, prefix, digits), prefix, unit, options.ascii === true);
}

/** What a person types for a number with or without its unit; a longer one comes from no meter. */
const TYPED =
  /^([+-]?\d{1,7}(?:[.,]\d{1,7})?)\s{0,4}(?:([munkMµμ]?)(?:V|v|A|ohm|ohms|Ω)?|%|Hz|rpm)$/;
/** Two ways to the same number differ by no more than this share. */
const SAME_NUMBER = 1e-9;

/**
 * A reading as it was typed, with its unit: `5.0 V`, `0.1 mV`. What was typed in another way has as many digits as were
 * typed, within 3 and 6: `12.68 V`.
 */
export function formatTyped(quantity: Quantity, typed: string): string {
  const [, digits = '', sign = ''] = TYPED.exec(typed.trim()) ?? [];
  const prefix = sign === 'µ' || sign === 'μ' ? 'u' : sign;
  const number = digits.replace(',', '.').replace('+', '');
  const meant = Number(number) * 10 ** (POWERS[prefix] ?? 0);
  const isMeant = Math.abs(meant - quantity.value) <= SAME_NUMBER * Math.abs(quantity.value);
  if (digits !== '' && isMeant && SHOWN_PREFIXES[quantity.unit].includes(prefix))
    return joined(number, prefix, quantity.unit, false);
  const significant = typed.replace(/^[^1-9]{0,40}/, '').replace(/[^0-9]/g, '').length;
  return formatQuantity(quantity, { digits: Math.min(6, Math.max(DEFAULT_DIGITS, significant)) });
}

/** Ends of a range of which one is so many times the other have a prefix each, but volts: a meter shows 0.002 V as well. */
const FAR_APART = 1000;

/**
 * `4.88 to 5.12 V` with one prefix and enough digits that two different ends look different, `0.3 Ω to 10 kΩ` where
 * they lie far apart; `above 10 kΩ` and `below 4.75 V` where an end is infinite; a single value where they are equal.
 */
export function formatRange(
  low: number,
  high: number,
  unit: Unit,
  options: FormatOptions = {},
): string {
  if (!Number.isFinite(low) && !Number.isFinite(high)) return low === high ? 'OL' : 'anything';
  if (!Number.isFinite(high)) return `above ${formatQuantity({ value: low, unit }, options)}`;
  if (!Number.isFinite(low)) return `below ${formatQuantity({ value: high, unit }, options)}`;
  if (low === high) return formatQuantity({ value: low, unit }, options);
  let digits = options.digits ?? DEFAULT_DIGITS;
  const [small, large] = [Math.abs(low), Math.abs(high)].sort((a, b) => a - b);
  if (unit !== 'V' && small! > 0 && large! / small! >= FAR_APART)
    return [low, high].map((value) => formatQuantity({ value, unit }, options)).join(' to ');
  const prefix = prefixFor(large!, unit, digits);
  const write = (value: number) => scaledDigits(value, unit, prefix, digits);
  while (digits < MOST_DIGITS && write(low) === write(high)) digits += 1;
  return `${write(low)} to ${joined(write(high), prefix, unit, options.ascii === true)}`;
}

/**
 * A value and the range it lies in, with one prefix: `0.557 mV  (0.129 to 3.22 mV)`, and the value alone where the range
 * is no wider. Ends that lie far apart have a prefix each, and then the value has its own.
 */
export function formatMiddle(
  { value, unit }: Quantity,
  low: number,
  high: number,
  options: FormatOptions = {},
): string {
  const alone = formatQuantity({ value, unit }, options);
  if (low === high) return alone;
  const range = formatRange(low, high, unit, options);
  const isOnePrefix = /^\S+ to /.test(range) && Number.isFinite(value);
  if (!isOnePrefix) return `${alone}  (${range})`;
  const digits = options.digits ?? DEFAULT_DIGITS;
  const prefix = prefixFor(Math.max(Math.abs(low), Math.abs(high)), unit, digits);
  const middle = joined(scaledDigits(value, unit, prefix, digits), prefix, unit, !!options.ascii);
  return `${middle}  (${range})`;
}

/** Less than this is nothing at a vehicle: leads and posts drop and leak as much by themselves. Common practice, no source. */
const NOTHING: Partial<Readonly<Record<Unit, number>>> = { V: 1e-3, A: 1e-6 };

/** A reading that is expected, without digits that no meter shows: less than a millivolt is 0 V. */
export function withoutNoise(value: number, unit: Unit): number {
  return Math.abs(value) < (NOTHING[unit] ?? 0) ? 0 : value;
}

/** The range of readings, as `formatRange` writes one. */
export function formatReadings(
  low: number,
  high: number,
  unit: Unit,
  options: FormatOptions = {},
): string {
  return formatRange(withoutNoise(low, unit), withoutNoise(high, unit), unit, options);
}

/** The unit as a sign for people: `Ω`, `mm²`, `°C`, or their ASCII spelling. */
export function unitSign(unit: Unit, ascii = false): string {
  const signs = SIGNS[unit];
  return signs ? signs[ascii ? 1 : 0] : unit;
}

/** Units that are written otherwise than they are called: the sign, and its ASCII spelling. */
const SIGNS: Partial<Readonly<Record<Unit, readonly [string, string]>>> = {
  ohm: ['Ω', 'ohm'],
  m2: ['mm²', 'mm2'],
  degC: ['°C', 'degC'],
  deg: ['°', 'deg'],
  '1': ['', ''],
};

function prefixFor(magnitude: number, unit: Unit, digits: number): string {
  const prefixes = SHOWN_PREFIXES[unit];
  if (magnitude === 0) return prefixes.includes('') ? '' : prefixes[0]!;
  for (const prefix of prefixes) {
    const least = prefix === '' && PLAIN_TO_A_TENTH.has(unit) ? 0.1 : 1;
    // Rounding first: 999.6 mV is shown as 1 V, not as 1000 mV.
    if (Number((magnitude / 10 ** POWERS[prefix]!).toPrecision(digits)) >= least) return prefix;
  }
  return prefixes.at(-1)!;
}

function scaledDigits(value: number, unit: Unit, prefix: string, digits: number): string {
  const power = unit === 'm2' ? -6 : POWERS[prefix]!;
  const scaled = power < 0 ? value * 10 ** -power : value / 10 ** power;
  const magnitude = Math.abs(scaled);
  const before = Math.floor(Math.log10(magnitude)) + 1;
  const decimals = Math.min(100, Math.max(0, digits - before));
  const text = scaled.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/0{1,100}$/, '').replace(/\.$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** A number as written, with the signs of its prefix and unit. */
export function joined(digits: string, prefix: string, unit: Unit, ascii: boolean): string {
  const sign = unitSign(unit, ascii);
  if (sign === '') return digits;
  if (unit === 'deg' && !ascii) return `${digits}${sign}`;
  return `${digits} ${prefix === 'u' && !ascii ? 'µ' : prefix}${sign}`;
}
