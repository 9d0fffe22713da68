/**
 * A text as glyphs of the fonts every PDF reader has: Helvetica in two encodings, Symbol for Greek and Ω.
 *
 * No font is embedded. What these fonts lack is spelled in Latin letters in italics, with the original kept behind it
 * for searching and copying, or shown by its number when there is no spelling.
 */
import { helveticaWidth } from './helvetica-widths.ts';
import { transliterate } from './transliterate.ts';

/** F1 Helvetica, F2 bold, F3 Symbol, F4 oblique, F5 and F6 Helvetica and bold with the letters of Latin Extended-A. */
export type FontName = 'F1' | 'F2' | 'F3' | 'F4' | 'F5' | 'F6';

/** One sign in one of the fonts. */
export interface Glyph {
  readonly font: FontName;
  /** Codes in the font's encoding, as hex digits. */
  readonly codes: string;
  /** In thousandths of the font size. */
  readonly width: number;
  /** The sign it stands for when it is not that sign itself. */
  readonly instead: string | null;
  /** A line may break after it. */
  readonly breaks: boolean;
}

/** Windows code page 1252 from 0x80 on; blanks are not defined there. */
const WIN_ANSI_HIGH = '€\u0000‚ƒ„…†‡ˆ‰Š‹Œ\u0000Ž\u0000\u0000‘’“”•–—˜™š›œ\u0000žŸ';

/** Letters of F5 and F6 with the names of their glyphs, from code 33 on. */
export const EXTENDED: readonly (readonly [letter: string, glyph: string])[] = [
  ...accented('macron', 'AaEeIiOoUu', 'ĀāĒēĪīŌōŪū'),
  ...accented('breve', 'AaGg', 'ĂăĞğ'),
  ...accented('ogonek', 'AaEeIiUu', 'ĄąĘęĮįŲų'),
  ...accented('acute', 'CcLlNnRrSsZz', 'ĆćĹĺŃńŔŕŚśŹź'),
  ...accented('caron', 'CcDdEeLlNnRrTt', 'ČčĎďĚěĽľŇňŘřŤť'),
  ...accented('dotaccent', 'EeIZz', 'ĖėİŻż'),
  ...accented('commaaccent', 'GgKkLlNnRrSsTt', 'ĢģĶķĻļŅņŖŗȘșȚț'),
  ...accented('commaaccent', 'Tt', 'Ţţ'),
  ...accented('cedilla', 'Ss', 'Şş'),
  ...accented('hungarumlaut', 'OoUu', 'ŐőŰű'),
  ...accented('ring', 'Uu', 'Ůů'),
  ['Đ', 'Dcroat'],
  ['đ', 'dcroat'],
  ['Ł', 'Lslash'],
  ['ł', 'lslash'],
  ['ı', 'dotlessi'],
];
const EXTENDED_FIRST = 33;
const extendedCode = new Map(EXTENDED.map(([letter], i) => [letter, EXTENDED_FIRST + i]));

function accented(accent: string, bases: string, letters: string): [string, string][] {
  return [...letters].map((letter, i) => [letter, `${bases[i]}${accent}`]);
}

/** Symbol's own encoding: sign, code, width. */
const SYMBOL = new Map<string, readonly [code: number, width: number]>();
for (const [first, signs, widths] of [
  [
    0x41,
    'ΑΒΧΔΕΦΓΗΙϑΚΛΜΝΟΠΘΡΣΤΥςΩΞΨΖ',
    '722 667 722 612 611 763 603 722 333 631 722 686 889 722 722 768 741 556 592 611 690 439 768 645 795 611',
  ],
  [
    0x61,
    'αβχδεφγηιϕκλμνοπθρστυϖωξψζ',
    '631 549 549 494 439 521 411 603 329 603 549 549 576 521 549 549 521 549 603 439 576 713 686 493 686 494',
  ],
  [0x2d, '−', '549'],
  [0xa3, '≤', '549'],
  [0xa5, '∞', '713'],
  [0xab, '↔←↑→↓', '1042 987 603 987 603'],
  [0xb3, '≥', '549'],
  [0xb9, '≠≡≈', '549 549 549'],
  [0xc6, '∅', '823'],
  [0xd0, '∠', '768'],
  [0xd6, '√', '549'],
] as const) {
  const list = widths.split(' ').map(Number);
  for (const [i, sign] of [...signs].entries()) SYMBOL.set(sign, [first + i, list[i] ?? 549]);
}

/** Several spellings of one sign. */
const SAME: Readonly<Record<string, string>> = {
  '\u2126': 'Ω',
  '\u2206': 'Δ',
  '\u202f': '\u00a0',
  '\u2009': ' ',
  '\u2010': '-',
  '\u2011': '-',
  '\u2032': "'",
};

/** Glyphs of a text on one line; it must have gone through `safeText`. */
export function glyphsOf(text: string, bold = false): Glyph[] {
  return [...text.normalize('NFC')].flatMap((sign) => glyphOf(SAME[sign] ?? sign, sign, bold));
}

function glyphOf(sign: string, original: string, bold: boolean): Glyph[] {
  const code = winAnsiCode(sign);
  if (code !== null)
    return [glyph(bold ? 'F2' : 'F1', code, helveticaWidth(sign, bold), ' -/,;'.includes(sign))];
  const extended = extendedCode.get(sign);
  if (extended !== undefined)
    return [glyph(bold ? 'F6' : 'F5', extended, helveticaWidth(sign, bold), false)];
  const symbol = SYMBOL.get(sign);
  if (symbol) return [glyph('F3', symbol[0], symbol[1], false)];
  const greek = sign.normalize('NFD').charAt(0);
  const bare = SYMBOL.get(greek);
  if (bare) return [{ ...glyph('F3', bare[0], bare[1], false), instead: original }];
  const point = sign.codePointAt(0) ?? 0;
  const spelled = transliterate(sign) ?? pictureName(point);
  return [
    {
      font: 'F4',
      codes: [...spelled].map((one) => hex(winAnsiCode(one) ?? 0x3f)).join(''),
      width: [...spelled].reduce((sum, one) => sum + helveticaWidth(one, false), 0),
      instead: original,
      breaks: spelled.startsWith('‹'),
    },
  ];
}

/** Pictures of control characters show the number of the control itself. */
function pictureName(point: number): string {
  const control = point >= 0x2400 && point <= 0x241f ? point - 0x2400 : point;
  return `‹U+${control.toString(16).toUpperCase().padStart(4, '0')}›`;
}

function glyph(font: FontName, code: number, width: number, breaks: boolean): Glyph {
  return { font, codes: hex(code), width, instead: null, breaks };
}

function winAnsiCode(sign: string): number | null {
  const point = sign.codePointAt(0) ?? 0;
  if ((point >= 0x20 && point < 0x7f) || (point >= 0xa0 && point <= 0xff)) return point;
  const high = point === 0 ? -1 : WIN_ANSI_HIGH.indexOf(sign);
  return high < 0 ? null : 0x80 + high;
}

function hex(byte: number): string {
  return byte.toString(16).padStart(2, '0').toUpperCase();
}

/** Letters that a text becomes: a sign that is spelled, or shown by its number, takes several. */
export function pdfColumns(text: string): number {
  return glyphsOf(text).reduce((sum, { codes }) => sum + codes.length / 2, 0);
}

/** The width of glyphs at a font size, in points. */
export function widthOf(glyphs: readonly Glyph[], size: number): number {
  return (glyphs.reduce((sum, one) => sum + one.width, 0) * size) / 1000;
}

/** Lines that are at most `width` points wide, broken at blanks and joints, inside words only when it must be. */
export function wrapGlyphs(glyphs: readonly Glyph[], size: number, width: number): Glyph[][] {
  const most = (width * 1000) / size;
  const lines: Glyph[][] = [];
  let line: Glyph[] = [];
  let used = 0;
  let lastBreak = 0;
  for (const one of glyphs) {
    if (used + one.width > most && line.length > 0 && !isBlank(one)) {
      const cut = lastBreak > 0 ? lastBreak : line.length;
      lines.push(line.slice(0, cut));
      line = line.slice(cut);
      used = line.reduce((sum, glyph) => sum + glyph.width, 0);
      lastBreak = 0;
    }
    line.push(one);
    used += one.width;
    if (one.breaks) lastBreak = line.length;
  }
  lines.push(line);
  return lines;
}

function isBlank({ codes, font }: Glyph): boolean {
  return codes === '20' && font !== 'F3';
}
