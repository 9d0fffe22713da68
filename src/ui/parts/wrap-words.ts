/**
 * Text to lines of a width, in terminal columns. Ours because Ink's wrapping can show the wrong text
 * (ink#998: its cache mixes up text and width) and cannot tell how many lines there will be.
 */
import signColumns from '../../source/sign-columns.ts';

const GRAPHEMES = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/** The columns a line of text takes. */
export function columnsOf(text: string): number {
  return signColumns(text);
}

/** The visible signs of a text, base and marks together. */
export function graphemesOf(text: string): string[] {
  if (PLAIN.test(text)) return text.split('');
  const signs: string[] = [];
  let size = PIECE;
  for (let from = 0; from < text.length; ) {
    const found = Array.from(
      GRAPHEMES.segment(text.slice(from, from + size)),
      (part) => part.segment,
    );
    // The last sign of a piece may go on in the next one.
    if (from + size < text.length) found.pop();
    for (const sign of found) {
      signs.push(sign);
      from += sign.length;
    }
    size = found.length === 0 ? 2 * size : PIECE;
  }
  return signs;
}
/** Signs that never join. */
const PLAIN = /^[ -~]*$/;
/** Text is taken apart in pieces of so many units: the segmenter's time grows with the square of the length. Our choice. */
const PIECE = 1000;

/**
 * Lines no wider than `width`, broken between words, inside a word only where it is wider than a line.
 * A line's own indent is kept on the lines that continue it, plus `hang` columns. At least one line.
 */
export function wrapWords(text: string, width: number, options: { hang?: number } = {}): string[] {
  return text.split('\n').flatMap((line) => wrapLine(line, Math.max(1, width), options.hang ?? 0));
}

function wrapLine(line: string, width: number, hang: number): string[] {
  if (columnsOf(line) <= width) return [line];
  const indent = /^ */.exec(line)?.[0] ?? '';
  // An indent that leaves no room for words is no indent.
  const lead = (columns: number) => (columns < width / 2 ? ' '.repeat(columns) : '');
  const first = lead(indent.length);
  const next = lead(indent.length + hang);
  const lines: string[] = [];
  let current = first;
  let empty = true;
  for (const word of line.trim().split(/ +/)) {
    const joined = empty ? current + word : `${current} ${word}`;
    if (columnsOf(joined) <= width) {
      current = joined;
      empty = false;
      continue;
    }
    if (!empty) {
      lines.push(current);
      current = next;
    }
    const pieces = chop(word, width - columnsOf(current), width - columnsOf(next));
    for (const piece of pieces.slice(0, -1)) {
      lines.push(current + piece);
      current = next;
    }
    current += pieces.at(-1) ?? '';
    empty = false;
  }
  lines.push(current);
  return lines;
}

/** A word in pieces that fit: the first into `firstWidth`, the others into `width`. A sign wider than the line stands alone. */
function chop(word: string, firstWidth: number, width: number): string[] {
  const pieces: string[] = [];
  let piece = '';
  let used = 0;
  for (const sign of graphemesOf(word)) {
    const columns = columnsOf(sign);
    if (piece !== '' && used + columns > (pieces.length === 0 ? firstWidth : width)) {
      pieces.push(piece);
      piece = '';
      used = 0;
    }
    piece += sign;
    used += columns;
  }
  pieces.push(piece);
  return pieces;
}

/** `text` in at most `width` columns, its end replaced by `mark` where it is cut. */
export function cutWords(text: string, width: number, mark = '…'): string {
  if (columnsOf(text) <= width) return text;
  const end = columnsOf(mark) <= width ? mark : '';
  return `${takeColumns(text, width - columnsOf(end))}${end}`;
}

/** Exactly `width` columns: cut or filled with spaces. */
export function padWords(text: string, width: number, mark = '…'): string {
  const cut = cutWords(text, width, mark);
  return cut + ' '.repeat(Math.max(0, width - columnsOf(cut)));
}

/** At most `width` columns, cut in the middle: for names of one list that differ only at their ends. */
export function cutMiddle(text: string, width: number, mark = '…'): string {
  if (columnsOf(text) <= width) return text;
  const begin = takeColumns(text, Math.floor((width - columnsOf(mark)) / 3));
  const room = width - columnsOf(begin) - columnsOf(mark);
  const end = takeColumns(graphemesOf(text).reverse().join(''), room);
  return `${begin.trimEnd()}${mark}${graphemesOf(end).reverse().join('').trimStart()}`;
}

/** Lines of one list in at most `width` columns each: those that cut at the end would look the same are cut in the middle. */
export function toldApart(lines: readonly string[], width: number, mark = '…'): string[] {
  const cut = lines.map((line) => cutWords(line, width, mark));
  return cut.map((line, at) => {
    const isTwin = line !== lines[at] && cut.some((other, place) => place !== at && other === line);
    return isTwin ? cutMiddle(lines[at]!, width, mark) : line;
  });
}

/** The beginning of `text` that fits into `width` columns. */
export function takeColumns(text: string, width: number): string {
  let taken = '';
  let used = 0;
  for (const sign of graphemesOf(text)) {
    used += columnsOf(sign);
    if (used > width) break;
    taken += sign;
  }
  return taken;
}
