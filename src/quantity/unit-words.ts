/**
 * How units are spelt: the one table behind strict quantities in files and tolerant readings from people.
 *
 * A spelling leads to a unit of `UNITS`, a power of ten (kept as an integer so that `4970 mV` becomes exactly
 * the number `4.97`), and rarely a factor that is no power of ten (foot, inch, minute).
 */
import type { Unit } from './quantity.ts';

/** What a unit as written does to the digits before it: value = digits x 10^power x factor + offset. */
export interface UnitWord {
  readonly unit: Unit;
  readonly power: number;
  readonly factor: number;
  readonly offset: number;
  /** The prefix as a sign: '', 'm', 'k', 'M' ... */
  readonly prefix: string;
}

/** SI prefixes in use on a bench, with their power of ten. BIPM, The International System of Units, 9th ed., table 7. */
export const PREFIX_POWERS: Readonly<Record<string, number>> = {
  p: -12,
  n: -9,
  u: -6,
  m: -3,
  c: -2,
  d: -1,
  k: 3,
  M: 6,
  G: 9,
};

interface Spelling {
  readonly unit: Unit;
  readonly prefixes: string;
  readonly power?: number;
  readonly factor?: number;
  readonly offset?: number;
}

/** The spellings files may use. Case counts. */
const STRICT: Readonly<Record<string, Spelling>> = {
  V: { unit: 'V', prefixes: 'numkM' },
  A: { unit: 'A', prefixes: 'pnumk' },
  ohm: { unit: 'ohm', prefixes: 'umkMG' },
  Ohm: { unit: 'ohm', prefixes: 'umkMG' },
  ohms: { unit: 'ohm', prefixes: 'umkMG' },
  Ω: { unit: 'ohm', prefixes: 'umkMG' },
  Hz: { unit: 'Hz', prefixes: 'mkMG' },
  rpm: { unit: 'rpm', prefixes: '' },
  '%': { unit: '%', prefixes: '' },
  s: { unit: 's', prefixes: 'pnum' },
  min: { unit: 's', prefixes: '', factor: 60 },
  m: { unit: 'm', prefixes: 'numcdk' },
  ft: { unit: 'm', prefixes: '', factor: 0.3048 },
  m2: { unit: 'm2', prefixes: '' },
  cm2: { unit: 'm2', prefixes: '', power: -4 },
  mm2: { unit: 'm2', prefixes: '', power: -6 },
  degC: { unit: 'degC', prefixes: '' },
  '°C': { unit: 'degC', prefixes: '' },
  deg: { unit: 'deg', prefixes: '' },
  '°': { unit: 'deg', prefixes: '' },
  F: { unit: 'F', prefixes: 'pnum' },
  W: { unit: 'W', prefixes: 'numkM' },
};

/** Further spellings of people, in lower case. `dc` and `ac` behind volts and amperes are taken off before. */
const SPOKEN: Readonly<Record<string, Spelling>> = {
  v: { unit: 'V', prefixes: 'numkM' },
  volt: { unit: 'V', prefixes: 'numkM' },
  volts: { unit: 'V', prefixes: 'numkM' },
  a: { unit: 'A', prefixes: 'pnumk' },
  amp: { unit: 'A', prefixes: 'pnumk' },
  amps: { unit: 'A', prefixes: 'pnumk' },
  ampere: { unit: 'A', prefixes: 'pnumk' },
  amperes: { unit: 'A', prefixes: 'pnumk' },
  ohm: { unit: 'ohm', prefixes: 'umkMG' },
  ohms: { unit: 'ohm', prefixes: 'umkMG' },
  ω: { unit: 'ohm', prefixes: 'umkMG' },
  r: { unit: 'ohm', prefixes: '' },
  hz: { unit: 'Hz', prefixes: 'mkMG' },
  hertz: { unit: 'Hz', prefixes: 'mkMG' },
  rpm: { unit: 'rpm', prefixes: '' },
  'r/min': { unit: 'rpm', prefixes: '' },
  '1/min': { unit: 'rpm', prefixes: '' },
  '/min': { unit: 'rpm', prefixes: '' },
  percent: { unit: '%', prefixes: '' },
  pct: { unit: '%', prefixes: '' },
  s: { unit: 's', prefixes: 'pnum' },
  sec: { unit: 's', prefixes: 'num' },
  secs: { unit: 's', prefixes: 'num' },
  second: { unit: 's', prefixes: 'num' },
  seconds: { unit: 's', prefixes: 'num' },
  minutes: { unit: 's', prefixes: '', factor: 60 },
  m: { unit: 'm', prefixes: 'mck' },
  metre: { unit: 'm', prefixes: 'mck' },
  metres: { unit: 'm', prefixes: 'mck' },
  meter: { unit: 'm', prefixes: 'mck' },
  meters: { unit: 'm', prefixes: 'mck' },
  feet: { unit: 'm', prefixes: '', factor: 0.3048 },
  in: { unit: 'm', prefixes: '', factor: 0.0254 },
  sqmm: { unit: 'm2', prefixes: '', power: -6 },
  'mm^2': { unit: 'm2', prefixes: '', power: -6 },
  c: { unit: 'degC', prefixes: '' },
  '°c': { unit: 'degC', prefixes: '' },
  degc: { unit: 'degC', prefixes: '' },
  '°f': { unit: 'degC', prefixes: '', factor: 5 / 9, offset: -160 / 9 },
  degf: { unit: 'degC', prefixes: '', factor: 5 / 9, offset: -160 / 9 },
  degree: { unit: 'deg', prefixes: '' },
  degrees: { unit: 'deg', prefixes: '' },
  farad: { unit: 'F', prefixes: 'pnum' },
  watt: { unit: 'W', prefixes: 'mk' },
  watts: { unit: 'W', prefixes: 'mk' },
};

const PREFIX_WORDS: Readonly<Record<string, string>> = {
  micro: 'u',
  milli: 'm',
  kilo: 'k',
  mega: 'M',
  meg: 'M',
};

/** A unit as files spell it, or null. `Ω` and `µ` in their composed or compatible forms are welcome. */
export function strictUnit(text: string): UnitWord | null {
  return strictWord(text.normalize('NFKC').replace('μ', 'u'));
}

/**
 * A unit as people type it, or null; `spelled` is true when the prefix was a word, so that no case of a letter is
 * in question. A prefix alone goes with `unit`.
 */
export function spokenUnit(text: string, unit: Unit): (UnitWord & { spelled: boolean }) | null {
  const plain = text.replace('μ', 'u').replace('µ', 'u');
  const strict = strictWord(plain);
  // A bare letter that is a unit of its own (m, F, A) belongs to the expected unit first when it is also a prefix.
  const prefixAlone = plain === 'K' ? 'k' : plain;
  const power = PREFIX_POWERS[prefixAlone];
  if (power !== undefined && takesPrefix(unit, prefixAlone) && unit !== 'm')
    return { ...bare(unit), power, prefix: prefixAlone, spelled: false };
  if (strict) return { ...strict, spelled: false };
  const lower = plain.toLowerCase();
  const word = spellingIn(SPOKEN, lower);
  if (word) return { ...toWord(word, '', 0), spelled: false };
  for (const [name, prefix] of Object.entries(PREFIX_WORDS)) {
    if (!lower.startsWith(name)) continue;
    const rest = lower.slice(name.length).trim();
    const base =
      rest === ''
        ? spellingOf(unit)
        : spellingIn(SPOKEN, rest === 'hm' || rest === 'hms' ? 'ohm' : rest);
    if (base?.prefixes.includes(prefix))
      return { ...toWord(base, prefix, PREFIX_POWERS[prefix]!), spelled: true };
  }
  const first = plain[0] === 'K' ? 'k' : plain.charAt(0);
  const base = spellingIn(SPOKEN, lower.slice(1).trim());
  // A capital M before volts or amperes is kept, so that the reader can ask whether milli was meant.
  if (!base || !mayCarry(base, first)) return null;
  return { ...toWord(base, first, PREFIX_POWERS[first]!), spelled: false };
}

/** True when `text` is the beginning of some spelling: the person is still typing. */
export function beginsUnit(text: string): boolean {
  const lower = text.toLowerCase();
  if (lower === '') return false;
  const rests = [lower, ...(PREFIX_POWERS[lower[0]!] === undefined ? [] : [lower.slice(1)])];
  const words = [...Object.keys(SPOKEN), ...Object.keys(STRICT).map((word) => word.toLowerCase())];
  return (
    rests.some((rest) => rest !== '' && words.some((word) => word.startsWith(rest))) ||
    Object.keys(PREFIX_WORDS).some(
      (prefix) =>
        prefix.startsWith(lower) ||
        (lower.startsWith(prefix) &&
          words.some((word) => word.startsWith(lower.slice(prefix.length).trim()))),
    )
  );
}

/** The unit without prefix as a word to multiply by. */
export function bare(unit: Unit): UnitWord {
  return { unit, power: 0, factor: 1, offset: 0, prefix: '' };
}

/** `digits` (a plain decimal number as text) in the unit `word`, rounded once. */
export function toSi(digits: string, word: UnitWord): number {
  return Number(shifted(digits, word.power)) * word.factor + word.offset;
}

/** `12.5` or `1.25e1` with its exponent moved by `power`, still as text. */
function shifted(digits: string, power: number): string {
  const [mantissa, exponent] = digits.split('e');
  return `${mantissa}e${Number(exponent ?? 0) + power}`;
}

/** True when `unit` is used with `prefix`; a capital M counts wherever milli does, to be asked about. */
export function takesPrefix(unit: Unit, prefix: string): boolean {
  return mayCarry(spellingOf(unit), prefix);
}

function mayCarry({ prefixes }: Spelling, prefix: string): boolean {
  return prefixes.includes(prefix) || (prefix === 'M' && prefixes.includes('m'));
}

function spellingOf(unit: Unit): Spelling {
  return STRICT[unit] ?? { unit, prefixes: '' };
}

function strictWord(text: string): UnitWord | null {
  const whole = spellingIn(STRICT, text);
  if (whole) return toWord(whole, '', 0);
  const prefix = text.charAt(0);
  const base = spellingIn(STRICT, text.slice(1));
  return base?.prefixes.includes(prefix) ? toWord(base, prefix, PREFIX_POWERS[prefix]!) : null;
}

/** The table's own entry only: `constructor` is no unit. */
function spellingIn(table: Readonly<Record<string, Spelling>>, text: string): Spelling | undefined {
  return Object.hasOwn(table, text) ? table[text] : undefined;
}

function toWord(spelling: Spelling, prefix: string, prefixPower: number): UnitWord {
  return {
    unit: spelling.unit,
    power: prefixPower + (spelling.power ?? 0),
    factor: spelling.factor ?? 1,
    offset: spelling.offset ?? 0,
    prefix,
  };
}
