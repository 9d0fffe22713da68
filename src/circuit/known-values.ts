/** A circuit with what is known of one car put in: read from what a person typed, checked, and applied. */
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { parseReading } from '../quantity/parse-reading.ts';
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import { mapped } from '../quantity/value-at.ts';
import { nameFix } from '../source/nearest-name.ts';
import type { Circuit } from './circuit.ts';
import { type Knowable, type KnownIs, knowablesOf } from './knowable.ts';
import { type ReadValue, readToleranced } from './read-value.ts';
import { withinReason } from './within-reason.ts';

/** Something known: a key of `knowablesOf` and what it is; null for not known any more, as the circuit says. */
export interface KnownValue {
  readonly quantity: string;
  readonly is: KnownIs | null;
}

/** What a person said is known, or which part of it is wrong. */
export type ReadKnown =
  | ({ readonly ok: true; readonly words: string } & KnownValue)
  | {
      readonly ok: false;
      readonly at: 'what' | 'is';
      readonly code: KnownFault;
      readonly words: string;
      readonly fix: string;
    };

/** Why a value that was told of a car cannot be taken. */
export type KnownFault = 'unknown-quantity' | 'bad-value' | 'out-of-reason' | 'not-positive';

/** What a person types to say that something is not known after all. */
export const UNKNOWN = 'unknown';
/** A value without a tolerance is taken within this share. Our choice: a label's rounding, a meter's error. */
const PLAIN_SHARE = 0.02;
/** More quantities than this are not listed in a way out. */
const LISTED_MAX = 6;

/** The circuit with `known` put in, the last word on each quantity counting. Sizes and weights of faults stay as they are. */
export function withKnown(circuit: Circuit, known: readonly KnownValue[]): Circuit {
  const last = new Map(known.map(({ quantity, is }) => [quantity, is]));
  let made = circuit;
  for (const [quantity, is] of last) {
    const one = knowablesOf(made).find(({ key }) => key === quantity);
    if (!one) throw new Error(`known-values: "${circuit.name}" has no quantity "${quantity}"`);
    if (is !== null) made = one.put(is);
  }
  return made;
}

/** Why a stored value is none that a person could have given, as the rest of a sentence; null where it is one. */
export function knownFlaw(circuit: Circuit, { quantity, is }: KnownValue): string | null {
  const one = knowablesOf(circuit).find(({ key }) => key === quantity);
  if (!one) return `knows a quantity that the circuit does not have, "${quantity}"`;
  if (is === null) return null;
  if ('way' in is)
    return one.ways.includes(is.way) ? null : `makes ${quantity} what it cannot be, "${is.way}"`;
  const { value } = is;
  const isRange = value.low <= value.nominal && value.nominal <= value.high;
  const fits = value.unit === one.unit && isRange && wrongIn(one, value) === null;
  return fits ? null : `gives ${quantity} a value that it cannot have`;
}

/**
 * What of the circuit a person means: by key, by words, or by words that only one of them holds; of several the one
 * that alone can be what was said, as in `pull-up`, `4.7 kohm`.
 */
export function knowableNamed(
  knowables: readonly Knowable[],
  typed: string,
  is: string,
): Knowable | { readonly words: string; readonly fix: string } {
  const name = typed.trim().toLowerCase().replace(/^the /, '');
  const named = knowables.find(
    ({ key, also, words }) => key === name || also.includes(name) || words.toLowerCase() === name,
  );
  if (named) return named;
  const parts = name.split(/[\s,]+/).filter(Boolean);
  const held = knowables.filter(({ words }) => {
    const all = words.toLowerCase();
    return parts.every((part) => all.includes(part));
  });
  const fitting = held.filter((one) => {
    const read = readIs(one, is);
    return read !== null && !('code' in read);
  });
  const [only] = held.length === 1 ? held : fitting.length === 1 ? fitting : [];
  if (only) return only;
  if (parts.length > 0 && held.length > 1)
    return {
      words: `"${typed.trim()}" can mean ${held.length} things of this circuit`,
      fix: `say which: ${held
        .slice(0, LISTED_MAX)
        .map(({ words }) => words)
        .join('; ')}${held.length > LISTED_MAX ? '; ...' : ''}`,
    };
  // Words where a word was typed, keys where a key was.
  const isKey = name.includes('.');
  const names = knowables.flatMap(({ key, also, words }) => (isKey ? [key, ...also] : [words]));
  return {
    words: `nothing in this circuit is called "${typed.trim()}"`,
    fix: nameFix(name, names),
  };
}

/** Reads `what` and what it is, as typed: `battery at rest`, `12.4 V`; `pull-up`, `4.7k +/- 5 %`; `reference`, `battery`. */
export function readKnown(circuit: Circuit, what: string, is: string): ReadKnown {
  const one = knowableNamed(knowablesOf(circuit), what, is.trim());
  if (!('key' in one)) return { ok: false, at: 'what', code: 'unknown-quantity', ...one };
  const { key: quantity, words } = one;
  const known = readIs(one, is.trim());
  if (known === null || !('code' in known)) return { ok: true, quantity, words, is: known };
  return { ok: false, at: 'is', ...known };
}

type WrongValue = { readonly code: KnownFault; readonly words: string; readonly fix: string };

/** What a quantity is, as typed; null where it is said to be unknown. */
export function readIs(one: Knowable, typed: string): KnownIs | WrongValue | null {
  const word = typed.toLowerCase().replace(/^the /, '');
  if (word === UNKNOWN) return null;
  const way = one.ways.find((each) => each === word || each.replace(/-/g, ' ') === word);
  if (way !== undefined) return { way };
  if (one.unit === null)
    return {
      code: 'bad-value',
      words: typed === '' ? 'no value is given' : `"${typed}" is not one of its options`,
      fix: nameFix(word, one.ways),
    };
  const read = readValue(one.unit, typed);
  if (!read.ok) {
    const ways = one.ways.length > 0 ? `, or one of: ${one.ways.join(', ')}` : '';
    const words =
      typed === '' ? 'no value is given' : `"${typed}" is not understood: ${read.words}`;
    return { code: 'bad-value', words, fix: `${read.fix}${ways}` };
  }
  const value = withPlain(one.unit === '1' ? mapped(read.value, asShare, '1') : read.value, typed);
  return wrongIn(one, value) ?? { value };
}

/** What files take, and what people type beside it: `4.7k`, `12,4 V`. */
function readValue(unit: Unit, typed: string): ReadValue {
  const due = unit === '1' ? '%' : unit;
  const strict = readToleranced(typed, due);
  if (strict.ok) return strict;
  const spoken = parseReading(typed, { unit: due });
  if (spoken.status !== 'read' || !Number.isFinite(spoken.quantity.value)) return strict;
  const { value } = spoken.quantity;
  return { ok: true, value: { nominal: value, low: value, high: value, unit: due } };
}

function asShare(percent: number): number {
  return percent / 100;
}

/** A single number is never known to the last digit, unless its tolerance says so. */
function withPlain(value: Toleranced, typed: string): Toleranced {
  const isPlain = parseQuantity(typed) !== null || !/\+\/-|±|\.\.|\sto\s|one of/.test(typed);
  if (!isPlain || value.low !== value.high) return value;
  const by = Math.abs(value.nominal) * PLAIN_SHARE;
  const end = (to: number) => Number(to.toPrecision(12));
  return { ...value, low: end(value.nominal - by), high: end(value.nominal + by) };
}

function wrongIn({ unit, signed, words }: Knowable, value: Toleranced): WrongValue | null {
  if (!withinReason(value))
    return {
      code: 'out-of-reason',
      words: `this is not plausible in a vehicle's sensor circuit as ${words}`,
      fix: 'check the prefix of the unit',
    };
  if (unit === '1' && (value.low < 0 || value.high > 1))
    return {
      code: 'out-of-reason',
      words: `${words} must be between 0 % and 100 %`,
      fix: 'tolerance included',
    };
  return signed || value.low > 0 || unit === '1'
    ? null
    : {
        code: 'not-positive',
        words: `${words} must stay above zero`,
        fix: 'write a value that stays above zero over its whole tolerance',
      };
}
