/**
 * The one gate between text we did not write (trees, jobs, typed notes, file names) and a terminal.
 *
 * By Unicode category and not by a list of known sequences: everything that is not a visible sign is
 * replaced by a picture of itself, never deleted, so that a reader sees that something was there.
 * CWE-150; Trojan Source (CVE-2021-42574); Unicode Standard, chapter 4 (general categories).
 */

/** Marks stacked on one base beyond this many are counted instead of drawn; living scripts need at most four. */
const MARKS_MAX = 4;

/** A tab has no width of its own; a fixed one keeps every line's width countable. */
const TAB = '    ';

const PRINTABLE_ASCII = /^[\x20-\x7e]*$/;
const UNSAFE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]/gu;
const LINE_END = /\r\n/g;
const STACKED_MARKS = new RegExp(`(\\p{M}{${MARKS_MAX}})(\\p{M}+)`, 'gu');
const ORPHAN_MARK = /(^|\n)(?=\p{M})/gu;

/**
 * `text` with nothing in it that a terminal could obey or that hides itself: controls as pictures (`␛`),
 * other invisible signs as `‹U+202E›`, tabs as four spaces, at most four combining marks on one base.
 * Line feeds stay only with `lines`. Idempotent: the outcome passes unchanged.
 */
export function safeText(text: string, options: { lines?: boolean } = {}): string {
  if (PRINTABLE_ASCII.test(text)) return text;
  const lines = options.lines === true;
  return (lines ? text.replace(LINE_END, '\n') : text)
    .replace(UNSAFE, (sign) => (sign === '\n' && lines ? sign : picture(sign)))
    .replace(
      STACKED_MARKS,
      (_, kept: string, rest: string) => `${kept}‹+${[...rest].length} marks›`,
    )
    .replace(ORPHAN_MARK, '$1◌');
}

function picture(sign: string): string {
  const point = sign.codePointAt(0) ?? 0;
  if (point === 0x09) return TAB;
  if (point < 0x20) return String.fromCodePoint(0x2400 + point);
  if (point === 0x7f) return '␡';
  return `‹U+${point.toString(16).toUpperCase().padStart(4, '0')}›`;
}
