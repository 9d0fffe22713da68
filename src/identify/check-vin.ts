/**
 * Vehicle identification numbers: seventeen signs and, where it applies, a check digit.
 *
 * ISO 3779 (structure) and 49 CFR 565.15(c) (check digit: transliteration, weights, remainder of 11). The check digit
 * is compulsory for vehicles sold in North America only; elsewhere position 9 is the maker's own, so a mismatch there
 * is no mistake.
 */

/** Why something is no vehicle identification number. */
export type VinRefusal = 'too-short' | 'too-long' | 'sign-not-used';

/** The number in its parts with its check digit, or why it cannot be one. */
export type VinCheck =
  | {
      readonly status: 'read';
      /** The seventeen signs in capitals, without blanks and dashes. */
      readonly vin: string;
      /** World maker identifier, descriptor section and indicator section (ISO 3779). */
      readonly maker: string;
      readonly descriptor: string;
      readonly indicator: string;
      readonly check: {
        /** What position 9 would be by the North American rule, and what it is. */
        readonly expected: string;
        readonly found: string;
        readonly agrees: boolean;
        /** True when the first sign says built in North America, where the rule binds. */
        readonly binding: boolean;
      };
      /** Numbers one commonly confused or exchanged pair away whose check digit agrees; empty when it agrees already. */
      readonly near: readonly string[];
      readonly words: string;
    }
  | {
      readonly status: 'refused';
      readonly code: VinRefusal;
      readonly words: string;
      readonly fix: string;
    };

const LENGTH = 17;
const CHECK_AT = 8;
/** Longest text looked at, before blanks and dashes are taken out. */
const MAX_CHARACTERS = 100;

const LETTER_VALUES: Readonly<Record<string, number>> = {
  ...{ A: 1, B: 2, C: 3, D: 4, E: 5, F: 6, G: 7, H: 8 },
  ...{ J: 1, K: 2, L: 3, M: 4, N: 5, P: 7, R: 9 },
  ...{ S: 2, T: 3, U: 4, V: 5, W: 6, X: 7, Y: 8, Z: 9 },
};
const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const;
const NORTH_AMERICA = '12345';
const LOOKALIKE: Readonly<Record<string, string>> = { I: '1', O: '0', Q: '0' };
/** Pairs that handwriting, worn stampings and windscreens confuse. Common practice, no source. */
const CONFUSED = [
  '5S',
  '8B',
  '2Z',
  '6G',
  '0D',
  '1L',
  '1T',
  '7T',
  'UV',
  'VY',
  '8S',
  '38',
  'EF',
  'PR',
  'MN',
];

/** Reads a VIN as typed: any case, blanks and dashes ignored. */
export function checkVin(typed: string): VinCheck {
  const vin = typed
    .slice(0, MAX_CHARACTERS)
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[\s\-*]/g, '');
  const odd = [...vin].find((sign) => signValue(sign) === null);
  if (odd !== undefined) return refuseSign(odd, [...vin].indexOf(odd) + 1);
  if (vin.length !== LENGTH) {
    const code = vin.length < LENGTH ? 'too-short' : 'too-long';
    const words = `a VIN has 17 characters, this one has ${vin.length}`;
    const fix = 'compare with the plate; before 1981 shorter numbers were used';
    return { status: 'refused', code, words, fix };
  }
  const expected = vinCheckDigit(vin);
  const found = vin[CHECK_AT]!;
  const agrees = expected === found;
  const binding = NORTH_AMERICA.includes(vin[0]!);
  return {
    status: 'read',
    vin,
    maker: vin.slice(0, 3),
    descriptor: vin.slice(3, 9),
    indicator: vin.slice(9),
    check: { expected, found, agrees, binding },
    near: agrees ? [] : nearby(vin),
    words: agrees
      ? 'the check digit agrees'
      : binding
        ? `position 9 should be ${expected} and is ${found}: one character is probably wrong`
        : `position 9 would be ${expected} by the North American rule and is ${found}; other regions do not use the rule, so this need not be a mistake`,
  };
}

/** The check digit that seventeen valid signs should carry at position 9: 0 to 9, or X for ten. */
export function vinCheckDigit(vin: string): string {
  let sum = 0;
  for (let at = 0; at < LENGTH; at += 1) sum += WEIGHTS[at]! * (signValue(vin[at] ?? '0') ?? 0);
  const remainder = sum % 11;
  return remainder === 10 ? 'X' : String(remainder);
}

function signValue(sign: string): number | null {
  if (sign >= '0' && sign <= '9') return Number(sign);
  return LETTER_VALUES[sign] ?? null;
}

function refuseSign(sign: string, position: number): VinCheck {
  const digit = LOOKALIKE[sign];
  const shown = /[\p{L}\p{N}\p{P}\p{S}]/u.test(sign) ? `"${sign}"` : 'an invisible character';
  return {
    status: 'refused',
    code: 'sign-not-used',
    words: `${shown} at position ${position} is not used in a VIN`,
    fix:
      digit === undefined
        ? 'a VIN has the digits and the letters except I, O and Q'
        : `probably ${digit}`,
  };
}

/** Neighbours by one confused sign or one exchanged pair that satisfy the check digit. */
function nearby(vin: string): string[] {
  const found = new Set<string>();
  const consider = (at: number, instead: string) => {
    const other = vin.slice(0, at) + instead + vin.slice(at + instead.length);
    if (other !== vin && vinCheckDigit(other) === other[CHECK_AT]) found.add(other);
  };
  for (let at = 0; at < LENGTH; at += 1) {
    for (const pair of CONFUSED) {
      if (vin[at] === pair[0]) consider(at, pair[1]!);
      if (vin[at] === pair[1]) consider(at, pair[0]!);
    }
    if (at + 1 < LENGTH) consider(at, `${vin[at + 1]}${vin[at]}`);
  }
  return [...found].sort();
}
