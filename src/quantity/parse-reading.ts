/** What a person typed as a reading: read, unfinished, asked back about, or refused with its reason. */
import type { Quantity, Unit } from './quantity.ts';
import { type ScannedNumber, scanNumber } from './scan-number.ts';
import {
  conceivable,
  type ExpectedReading,
  impossible,
  isUsual,
  NEVER_NEGATIVE,
  type ReadingChoice,
  readingChoice,
  type Typed,
  typedText,
} from './typed-reading.ts';
import {
  bare,
  beginsUnit,
  PREFIX_POWERS,
  spokenUnit,
  takesPrefix,
  type UnitWord,
} from './unit-words.ts';

export type { ExpectedReading, ReadingChoice };

/** Why what was typed is no reading. */
export type ReadingRefusal =
  | 'too-long'
  | 'not-a-reading'
  | 'two-numbers'
  | 'number-marks'
  | 'wrong-unit'
  | 'wrong-dimension'
  | 'wrong-current'
  | 'over-limit-elsewhere'
  | 'impossible-value';

/** What was typed as far as it can be understood; `doubt` asks which of several was meant. */
export type ReadingParse =
  | {
      readonly status: 'read';
      readonly quantity: Quantity;
      /** One unit of the last typed digit, in the quantity's unit; 0 for an over-limit, which has no digits. */
      readonly resolution: number;
      /** The reading in one normal form, every typed digit kept: `4.97 V`, `2.2 kΩ`, `OL`. */
      readonly text: string;
    }
  | { readonly status: 'unfinished' }
  | { readonly status: 'doubt'; readonly choices: readonly ReadingChoice[]; readonly words: string }
  | {
      readonly status: 'refused';
      readonly code: ReadingRefusal;
      readonly words: string;
      readonly fix?: string;
      /** Of a value that can be, but not in this vehicle. */
      readonly beyond?: Quantity;
    };

/** Longer than any reading; keeps every later step small. */
const MAX_CHARACTERS = 100;

const UNIT_NAMES: Readonly<Record<Unit, string>> = {
  V: 'volts',
  A: 'amperes',
  ohm: 'ohms',
  Hz: 'hertz',
  rpm: 'rpm',
  '%': 'per cent',
  s: 'seconds',
  m: 'metres',
  m2: 'square millimetres',
  degC: 'degrees Celsius',
  deg: 'degrees of angle',
  F: 'farads',
  W: 'watts',
  '1': 'a plain number',
};
const EXAMPLES: Readonly<Record<Unit, string>> = {
  V: '4.97 V or 18 mV',
  A: '32 mA',
  ohm: '0.3, 2.2k or OL',
  Hz: '800 Hz',
  rpm: '800 rpm',
  '%': '45 %',
  s: '1.5 ms',
  m: '3 m',
  m2: '0.5 mm2',
  degC: '20 degC',
  deg: '12 deg',
  F: '100 nF',
  W: '5 W',
  '1': '58',
};

/** Reads `typed` where `expected` is asked for. Never throws, whatever the text. */
export function parseReading(typed: string, expected: ExpectedReading): ReadingParse {
  const { unit } = expected;
  if (typed.length > MAX_CHARACTERS)
    return refused('too-long', `a reading has at most ${MAX_CHARACTERS} characters`);
  const text = normalise(typed);
  const over = overLimit(text, unit);
  if (over) return over;
  const scan = scanNumber(text);
  const fix = `enter ${UNIT_NAMES[unit]}, for example ${EXAMPLES[unit]}`;
  if (scan.status === 'open') return { status: 'unfinished' };
  if (scan.status === 'two-numbers')
    return refused('two-numbers', 'there is more than one number here', 'enter one reading');
  if (scan.status === 'marks')
    return refused('number-marks', 'the points and commas here do not make a number', fix);
  if (scan.status !== 'number')
    return refused('not-a-reading', `"${shown(text)}" is not a reading`, fix);
  if (scan.unfinished && scan.rest === '') return { status: 'unfinished' };
  return withUnit(scan, expected, fix);
}

function withUnit(scan: ScannedNumber, expected: ExpectedReading, fix: string): ReadingParse {
  const { unit } = expected;
  const { rest, dc } = splitCurrent(scan.rest);
  if (dc !== null && expected.dc !== undefined && dc !== expected.dc)
    return refused(
      'wrong-current',
      `this step asks for ${expected.dc ? 'direct (DC)' : 'alternating (AC)'} ${UNIT_NAMES[unit]}`,
      `set the meter to ${expected.dc ? 'DC' : 'AC'} and read again`,
    );
  const found = unitOf(scan, rest, unit);
  if (found === null) {
    if (scan.letter === '' && beginsUnit(rest)) return { status: 'unfinished' };
    return refused(
      'wrong-unit',
      `"${shown(rest || scan.letter)}" is not a unit for this reading`,
      fix,
    );
  }
  const { word, caseCounts } = found;
  if (word.unit !== unit)
    return refused(
      'wrong-dimension',
      `this step asks for ${UNIT_NAMES[unit]}, and "${shown(scan.rest || scan.letter)}" is ${UNIT_NAMES[word.unit]}`,
      fix,
    );
  const readings = [{ digits: scan.digits, lastPower: scan.lastPower, word }];
  if (scan.grouped !== undefined) readings.push({ digits: scan.grouped, lastPower: 0, word });
  const choices = readings.map(readingChoice);
  if (choices.length > 1)
    return groupDoubt(
      choices,
      expected,
      readings.map((it) => typedText(it)),
    );
  const doubt = caseCounts ? caseDoubt(readings[0]!, expected) : null;
  return doubt ?? checked(choices[0]!, typedText(readings[0]!), expected);
}

/** The unit meant by the letter inside the number and the text behind it. */
function unitOf(
  scan: ScannedNumber,
  rest: string,
  unit: Unit,
): { word: UnitWord; caseCounts: boolean } | null {
  if (scan.letter === '') {
    if (rest === '') return { word: bare(unit), caseCounts: false };
    const word = spokenUnit(rest, unit);
    return word && { word, caseCounts: !word.spelled && isMilliOrMega(word.prefix) };
  }
  const base = spokenUnit(rest, unit);
  if (rest !== '' && (base === null || base.prefix !== '')) return null;
  if (scan.letter === 'V') return { word: bare('V'), caseCounts: false };
  if (scan.letter === 'R' || scan.letter === 'r') return { word: bare('ohm'), caseCounts: false };
  const prefix = scan.letter === 'K' ? 'k' : scan.letter === '\u03bc' ? 'u' : scan.letter;
  if (!takesPrefix(base?.unit ?? unit, prefix)) return null;
  // A letter inside the digits is how resistors are marked; elsewhere it has to be a prefix of the unit.
  const word = { ...bare(base?.unit ?? unit), power: PREFIX_POWERS[prefix] ?? 0, prefix };
  return { word, caseCounts: isMilliOrMega(prefix) };
}

const isMilliOrMega = (prefix: string) => prefix === 'm' || prefix === 'M';

/** Asks when the letter's other case is a reading too, or is the only one that is. */
function caseDoubt(typed: Typed, expected: ExpectedReading): ReadingParse | null {
  const { word } = typed;
  const otherPrefix = word.prefix === 'm' ? 'M' : 'm';
  const swap = PREFIX_POWERS[otherPrefix]! - PREFIX_POWERS[word.prefix]!;
  const other = { ...typed, word: { ...word, prefix: otherPrefix, power: word.power + swap } };
  const meant = readingChoice(typed);
  const exchanged = readingChoice(other);
  if (meant.quantity.value === 0) return null;
  const meantCan = conceivable(meant.quantity);
  const exchangedCan = conceivable(exchanged.quantity);
  if (meantCan && !exchangedCan) return null;
  if (meantCan && isUsual(meant, expected) && !isUsual(exchanged, expected)) return null;
  const plain = readingChoice({ ...typed, word: bare(word.unit) });
  const choices = meantCan
    ? [meant, exchanged]
    : [exchangedCan ? exchanged : null, conceivable(plain.quantity) ? plain : null].filter(
        (choice) => choice !== null,
      );
  const possible = choices.filter((choice) => !impossible(choice.quantity, expected));
  if (possible.length === 0) return null;
  return {
    status: 'doubt',
    choices: possible,
    words: 'm is milli (a thousandth) and M is mega (a million): which does the meter show?',
  };
}

function groupDoubt(
  choices: readonly ReadingChoice[],
  expected: ExpectedReading,
  texts: readonly string[],
): ReadingParse {
  const can = choices.map((it) => conceivable(it.quantity) && !impossible(it.quantity, expected));
  const only = can.filter(Boolean).length === 1 ? can.indexOf(true) : -1;
  if (only >= 0) return checked(choices[only]!, texts[only]!, expected);
  return {
    status: 'doubt',
    choices,
    words: 'the comma can be a decimal or a thousands separator: which is it?',
  };
}

function checked(choice: ReadingChoice, text: string, expected: ExpectedReading): ReadingParse {
  const { quantity, resolution } = choice;
  const words = impossible(quantity, expected);
  if (words === null) return { status: 'read', quantity, resolution, text };
  const answer = refused('impossible-value', words, 'look at the display and its unit again');
  const { limit: _, ...anywhere } = expected;
  return impossible(quantity, anywhere) === null ? { ...answer, beyond: quantity } : answer;
}

/** Units in which OL is a reading, and why it is none with a minus sign. */
const BELOW_RANGE: Partial<
  Readonly<Record<Unit, { readonly words: string; readonly fix: string }>>
> = {
  V: {
    words: 'the meter is over range with the leads swapped',
    fix: 'choose a higher range and read again',
  },
  ohm: { words: NEVER_NEGATIVE.ohm!, fix: 'check that the circuit is dead' },
};

/** `OL` in its spellings, with or without a unit behind it; null when the text is something else. */
function overLimit(text: string, unit: Unit): ReadingParse | null {
  const match = /^([+>-]?) ?([o0]\.?l\.?|∞|inf|infinite|overload) ?(\S{0,8})$/i.exec(text);
  if (!match) return /^[o>]\.?$/i.test(text) ? { status: 'unfinished' } : null;
  const behind = match[3]!;
  const word = behind === '' ? bare(unit) : spokenUnit(behind, unit);
  if (!word) return beginsUnit(behind) ? { status: 'unfinished' } : null;
  if (word.unit !== unit)
    return refused(
      'wrong-dimension',
      `this step asks for ${UNIT_NAMES[unit]}, and "${behind}" is ${UNIT_NAMES[word.unit]}`,
    );
  const below = BELOW_RANGE[unit];
  if (!below)
    return refused(
      'over-limit-elsewhere',
      `OL is not a reading in ${UNIT_NAMES[unit]}: the meter is over range`,
      'choose a higher range and read again',
    );
  if (match[1] === '-') return refused('impossible-value', below.words, below.fix);
  const quantity = { value: Number.POSITIVE_INFINITY, unit };
  return { status: 'read', quantity, resolution: 0, text: 'OL' };
}

/** Takes `dc` or `ac` (and meters' `rms`) off a unit: `Vdc`, `V AC`. */
function splitCurrent(rest: string): { rest: string; dc: boolean | null } {
  const match = /^(.{0,20}?) ?(dc|ac|acrms|rms)$/i.exec(rest);
  if (!match || !/(?:v|volts?|a|amps?|^)$/i.test(match[1]!)) return { rest, dc: null };
  return { rest: match[1]!, dc: match[2]!.toLowerCase() === 'dc' };
}

/** One form for what keyboards, meters and copied text produce. */
function normalise(typed: string): string {
  return typed
    .normalize('NFKC')
    .replace(/[\u2010-\u2015\u2212\ufe58\ufe63]/g, '-')
    .replace(/\s+/g, ' ')
    .trim();
}

function shown(text: string): string {
  return text.replace(/[\p{C}]/gu, '?').slice(0, 20);
}

function refused(
  code: ReadingRefusal,
  words: string,
  fix?: string,
): Extract<ReadingParse, { status: 'refused' }> {
  return { status: 'refused', code, words, ...(fix === undefined ? {} : { fix }) };
}
