/** Text to lines of drawings; all by hand. */
import { describe, expect, test } from 'vitest';
import { foldWords } from '../../src/source/fold-words.ts';

describe('a text is folded', () => {
  test.each<[string, string, number, number | undefined, string[]]>([
    ['not where it fits to the last sign', 'red on feed', 11, undefined, ['red on feed']],
    ['at the blank before', 'red on feed', 10, undefined, ['red on', 'feed']],
    ['with less room after the first line', 'red on the feed', 10, 4, ['red on the', 'feed']],
    ['with more room after the first line', 'feed of the sensor', 6, 20, ['feed', 'of the sensor']],
    ['inside a word that no line holds', 'abcdefgh ij', 3, undefined, ['abc', 'def', 'gh', 'ij']],
    ['between whole signs', '\u{1F697}\u{1F697}', 2, undefined, ['\u{1F697}', '\u{1F697}']],
    ['to one empty line when it is empty', '', 5, undefined, ['']],
    ['by the columns of a terminal', '曲軸 感知器', 8, undefined, ['曲軸', '感知器']],
    ['inside a word of two columns a sign', '曲軸感知器', 5, undefined, ['曲軸', '感知', '器']],
    [
      'with a mark on its letter',
      'e\u0301e\u0301 e\u0301',
      2,
      undefined,
      ['e\u0301e\u0301', 'e\u0301'],
    ],
  ])('%s', (_, text, columns, next, lines) => {
    expect(foldWords(text, columns, next)).toEqual(lines);
  });
});
