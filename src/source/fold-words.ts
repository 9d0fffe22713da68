/** Text to lines of drawings. What reaches the terminal by itself goes through the screen's own. */
import signColumns from './sign-columns.ts';

/** How much room a text takes: the columns of a terminal, or what a paper makes of its signs. */
export type TextColumns = (text: string) => number;

const SIGNS = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/**
 * Lines of at most `columns`, those after the first of at most `next`, broken at blanks; a word longer than a line is cut,
 * a sign wider than it stands alone. At least one line.
 */
export function foldWords(
  text: string,
  columns: number,
  next = columns,
  columnsOf: TextColumns = signColumns,
): string[] {
  const longest = Math.max(1, Math.min(columns, next));
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((one) => piecesOf(one, longest, columnsOf))) {
    const room = lines.length === 0 ? columns : next;
    if (line !== '' && columnsOf(line) + 1 + columnsOf(word) > room) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

function piecesOf(word: string, longest: number, columnsOf: TextColumns): string[] {
  if (columnsOf(word) <= longest) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const { segment } of SIGNS.segment(word)) {
    if (piece !== '' && columnsOf(piece) + columnsOf(segment) > longest) {
      pieces.push(piece);
      piece = '';
    }
    piece += segment;
  }
  return [...pieces, piece];
}
