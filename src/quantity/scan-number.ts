/**
 * The number at the start of what a person typed, with either decimal mark, digit groups, an exponent, or a letter in
 * place of the decimal mark (IEC 60062: `2k2`, `4R7`). One pass over the characters, no backtracking.
 */

/** A number as it was written, with how else it could be read. */
export interface ScannedNumber {
  readonly status: 'number';
  /** A plain decimal number, `-4970.25` or `1.2e-3`. */
  readonly digits: string;
  /** Another way to read the same characters: `1,234` as 1234. */
  readonly grouped?: string;
  /** The letter that stood in place of the decimal mark, or ''. */
  readonly letter: string;
  /** The last digit's power of ten: -2 in 4.97. */
  readonly lastPower: number;
  /** Something is still missing if nothing follows: `4.`, `5e`. */
  readonly unfinished: boolean;
  /** What stands behind the number, trimmed. */
  readonly rest: string;
}

/** A number, or why there is none at the start of the text. */
export type Scan = ScannedNumber | { readonly status: 'open' | 'none' | 'two-numbers' | 'marks' };

const isDigit = (sign: string | undefined) => sign !== undefined && sign >= '0' && sign <= '9';
/** Letters of IEC 60062 that mean a decimal mark, and V for zener voltages; the micro sign in its NFKC form. */
const MARK_LETTERS = 'RrkKMmGVu\u03bc';

/** `text` is normalised (NFKC, ASCII minus) and trimmed. */
export function scanNumber(text: string): Scan {
  let at = 0;
  const sign = text[0] === '-' || text[0] === '+' ? text[0] : '';
  if (sign !== '') at = 1;
  while (text[at] === ' ') at += 1;
  const start = at;
  while (isDigit(text[at]) || isMark(text, at)) at += 1;
  const body = text.slice(start, at);
  if (!/\d/.test(body)) return leadingLetter(text, sign, start, body);
  const split = splitMarks(body);
  if (split === null) return { status: /^[\d ]*$/.test(body) ? 'two-numbers' : 'marks' };
  const minus = sign === '-' ? '-' : '';
  let { whole, fraction } = split;
  let letter = '';
  if (!split.marked && MARK_LETTERS.includes(text[at] ?? ' ') && isDigit(text[at + 1])) {
    letter = text[at]!;
    const from = at + 1;
    at = from;
    while (isDigit(text[at])) at += 1;
    fraction = text.slice(from, at);
    whole = split.whole;
  }
  let exponent = 0;
  let open = split.open;
  const after = /^[eE]([+-]?)(\d{0,3})/.exec(text.slice(at));
  if (after && letter === '' && (after[2] !== '' || text.length === at + after[0].length)) {
    open = after[2] === '';
    exponent = open ? 0 : Number(`${after[1]}${after[2]}`);
    at += after[0].length;
  }
  const rest = text.slice(at).trim();
  if (isDigit(rest[0])) return { status: 'two-numbers' };
  const suffix = exponent === 0 ? '' : `e${exponent}`;
  return {
    status: 'number',
    digits: `${minus}${whole === '' ? '0' : whole}${fraction === '' ? '' : `.${fraction}`}${suffix}`,
    ...(split.grouped === undefined ? {} : { grouped: `${minus}${split.grouped}${suffix}` }),
    letter,
    lastPower: exponent - fraction.length,
    unfinished: open,
    rest,
  };
}

/** A decimal or grouping mark; a blank or apostrophe only counts between digits. */
function isMark(text: string, at: number): boolean {
  const sign = text[at];
  if (sign === '.' || sign === ',') return true;
  return (sign === ' ' || sign === "'") && isDigit(text[at - 1]) && isDigit(text[at + 1]);
}

function leadingLetter(text: string, sign: string, start: number, body: string): Scan {
  if (text[start] === 'R' && isDigit(text[start + 1]))
    return scanNumber(`${sign}0${text.slice(start)}`);
  return { status: start + body.length >= text.length && body.length <= 1 ? 'open' : 'none' };
}

interface Split {
  readonly whole: string;
  readonly fraction: string;
  readonly grouped?: string;
  readonly marked: boolean;
  readonly open: boolean;
}

/** Whole and fraction from digits with marks, or null when the marks make no number. */
function splitMarks(body: string): Split | null {
  const plain = joinGroups(body, /[ ']/);
  if (plain === null) return null;
  const points = plain.split('.').length - 1;
  const commas = plain.split(',').length - 1;
  if (points + commas === 0)
    return { whole: plain, fraction: '', marked: plain !== body, open: false };
  if (points > 0 && commas > 0) {
    const mark = plain.lastIndexOf('.') > plain.lastIndexOf(',') ? '.' : ',';
    if ((mark === '.' ? points : commas) > 1) return null;
    const at = plain.lastIndexOf(mark);
    const whole = joinGroups(plain.slice(0, at), mark === '.' ? /,/ : /\./);
    return whole === null ? null : decimal(whole, plain.slice(at + 1));
  }
  if (points + commas > 1) {
    const whole = joinGroups(plain, /[.,]/);
    return whole === null ? null : { whole, fraction: '', marked: true, open: false };
  }
  const at = plain.search(/[.,]/);
  const split = decimal(plain.slice(0, at), plain.slice(at + 1));
  // A lone comma before exactly three digits is a decimal comma to some and a thousands mark to others.
  const grouped = commas === 1 && plain[0] !== '0' ? joinGroups(plain, /,/) : null;
  return grouped === null ? split : { ...split, grouped };
}

function decimal(whole: string, fraction: string): Split {
  return { whole, fraction, marked: true, open: fraction === '' };
}

/** `1 234 567` as `1234567`; the text itself when it has no such mark; null when the groups are not of three. */
function joinGroups(text: string, mark: RegExp): string | null {
  const groups = text.split(mark);
  if (groups.length === 1) return text;
  const first = /^\d{1,3}$/.test(groups[0]!);
  const middle = groups.slice(1, -1).every((group) => /^\d{3}$/.test(group));
  const last = /^\d{3}(?:[.,]\d{0,40})?$/.test(groups.at(-1)!);
  return first && middle && last ? groups.join('') : null;
}
