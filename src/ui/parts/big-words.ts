/** Signal words five rows tall, from blocks of our own. */

/** Rows of each letter, `#` where it is filled. Only the letters of the signal words. */
const LETTERS: Readonly<Record<string, readonly string[]>> = {
  A: [' ### ', '#   #', '#####', '#   #', '#   #'],
  C: [' ####', '#    ', '#    ', '#    ', ' ####'],
  D: ['#### ', '#   #', '#   #', '#   #', '#### '],
  E: ['#####', '#    ', '###  ', '#    ', '#####'],
  G: [' ####', '#    ', '#  ##', '#   #', ' ####'],
  I: ['###', ' # ', ' # ', ' # ', '###'],
  N: ['#   #', '##  #', '# # #', '#  ##', '#   #'],
  O: [' ### ', '#   #', '#   #', '#   #', ' ### '],
  R: ['#### ', '#   #', '#### ', '#  # ', '#   #'],
  T: ['#####', '  #  ', '  #  ', '  #  ', '  #  '],
  U: ['#   #', '#   #', '#   #', '#   #', ' ### '],
  W: ['#   #', '#   #', '# # #', '## ##', '#   #'],
};

export const BIG_ROWS = 5;

/** The five lines of a word; a letter without blocks stands as it is in the middle row. */
export function bigWords(word: string, ascii: boolean): string[] {
  return Array.from({ length: BIG_ROWS }, (_, row) => {
    const line = [...word.toUpperCase()]
      .map((letter) => LETTERS[letter]?.[row] ?? (row === 2 ? letter : ' '))
      .join('  ');
    return (ascii ? line : line.replaceAll('#', '█')).trimEnd();
  });
}
