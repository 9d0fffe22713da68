/** Sizes, ages and rows of files. */
import { describe, expect, test } from 'vitest';
import { ageWords, fileRow, sizeWords } from '../../../src/ui/parts/file-words.ts';
import { columnsOf } from '../../../src/ui/parts/wrap-words.ts';

const [SECOND, MINUTE, HOUR, DAY] = [1000, 60_000, 3_600_000, 86_400_000] as const;

test.each([
  [59 * SECOND, 'just now'],
  [MINUTE, '1 min ago'],
  [HOUR - 1, '59 min ago'],
  [5 * HOUR, '5 h ago'],
  [DAY, '1 day ago'],
  [364 * DAY, '364 days ago'],
  [800 * DAY, '2 years ago'],
])('%i ms are %s', (age, words) => expect(ageWords(age)).toBe(words));

test.each([
  [0, '0 B'],
  [999, '999 B'],
  [4_200, '4.2 kB'],
  [163_000, '163 kB'],
  [37_400_000, '37 MB'],
  [2_500_000_000, '2.5 GB'],
])('%i bytes are %s', (bytes, words) => expect(sizeWords(bytes)).toBe(words));

describe('a row', () => {
  test.each([
    ['short.csv', /^short\.csv +1 kB +just now$/],
    [`${'long-'.repeat(40)}0042.csv`, /^long-.*…g-0042\.csv +1 kB +just now$/],
    ['日本語'.repeat(20), /…/],
    ['\u202e\x1b[2J.csv', /^‹U\+202E›␛\[2J\.csv /],
  ])('of %j is as wide as it is told', (name, words) => {
    const row = fileRow({ name, size: '1 kB', age: 'just now' }, 56, '…');
    expect(row).toMatch(words);
    expect(columnsOf(row)).toBe(56);
  });
});
