/** Text of plain signs to lines, for drawings. What reaches the terminal by itself goes through the screen's own. */

/**
 * Lines of at most `columns` signs, those after the first of at most `next`, broken at blanks; a word longer than a line
 * is cut. At least one line.
 */
export function foldWords(text: string, columns: number, next = columns): string[] {
  const longest = Math.max(1, Math.min(columns, next));
  const words = text
    .split(' ')
    .flatMap((word) => word.match(new RegExp(`.{1,${longest}}`, 'gsu')) ?? ['']);
  const lines: string[] = [];
  let line = '';
  for (const word of words) {
    const room = lines.length === 0 ? columns : next;
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
