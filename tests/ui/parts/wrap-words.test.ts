import { describe, expect, it } from 'vitest';
import {
  columnsOf,
  cutMiddle,
  cutWords,
  graphemesOf,
  padWords,
  toldApart,
  wrapWords,
} from '../../../src/ui/parts/wrap-words.ts';
import fc from '../../seeded-check.ts';

describe('wrapWords', () => {
  it.each([
    // text                       width hang  lines, by hand
    ['', 10, 0, ['']],
    ['red lead on pin 1', 8, 0, ['red lead', 'on pin 1']],
    ['red lead on pin 1', 7, 0, ['red', 'lead on', 'pin 1']],
    ['a\n\nb', 5, 0, ['a', '', 'b']],
    ['abcdefgh', 3, 0, ['abc', 'def', 'gh']],
    ['to abcdefgh', 4, 0, ['to', 'abcd', 'efgh']],
    ['  two words', 6, 0, ['  two', '  words'.slice(0, 6), '  s']],
    ['1. long words here', 8, 3, ['1. long', '   words', '   here']],
    ['中中中', 4, 0, ['中中', '中']],
    ['中', 1, 0, ['中']],
  ])('%j at %d columns, hang %d', (text, width, hang, lines) => {
    expect(wrapWords(text, width, { hang })).toEqual(lines);
  });

  it('no line is too wide and no sign is lost, whatever the text', () => {
    const sign = fc.constantFrom('a', 'b', ' ', ' ', '\n', 'Ω', '中', 'e\u0301', '12.4');
    const text = fc.array(sign, { maxLength: 60 }).map((signs) => signs.join(''));
    fc.assert(
      fc.property(text, fc.integer({ min: 2, max: 30 }), fc.nat(4), (words, width, hang) => {
        const lines = wrapWords(words, width, { hang });
        expect(Math.max(...lines.map(columnsOf))).toBeLessThanOrEqual(width);
        expect(lines.join('').replaceAll(' ', '')).toBe(words.replace(/[ \n]/g, ''));
      }),
      { numRuns: 5_000 },
    );
  });
});

describe('cutting and filling', () => {
  it.each([
    ['abc', 3, 'abc'],
    ['abcd', 3, 'ab…'],
    ['中中', 3, '中…'],
    ['abcd', 1, '…'],
    ['abcd', 0, ''],
  ])('%j in %d columns is %j', (text, width, cut) => {
    expect(cutWords(text, width)).toBe(cut);
  });

  it('padWords is exactly as wide as asked', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('a', '中', 'Ω') }),
        fc.nat(20),
        (text, width) => {
          expect(columnsOf(padWords(text, width))).toBe(width);
        },
      ),
    );
  });

  it('a base and its marks are one sign', () => {
    expect(graphemesOf('e\u0301x')).toEqual(['e\u0301', 'x']);
  });

  it('the signs of a long text are those of the text as a whole', () => {
    const whole = new Intl.Segmenter(undefined, { granularity: 'grapheme' });
    const unit = fc.constantFrom(
      ...[
        'a',
        '中',
        'e\u0301',
        '\u0301',
        '👩\u200d👩\u200d👧',
        '🇪🇺',
        '🇪',
        '\u200d',
        '한',
        '\ud83d',
      ],
      'e'.padEnd(600, '\u0301'),
    );
    fc.assert(
      fc.property(fc.array(unit, { minLength: 300, maxLength: 900, size: 'max' }), (units) => {
        const text = units.join('');
        expect(graphemesOf(text)).toEqual(Array.from(whole.segment(text), (one) => one.segment));
      }),
    );
    expect(graphemesOf('e'.padEnd(5000, '\u0301'))).toHaveLength(1);
  });
});

describe('cutMiddle', () => {
  it('keeps both ends, and never takes more than its columns', () => {
    expect(cutMiddle('refit the plug of the module', 40)).toBe('refit the plug of the module');
    expect(cutMiddle('refit the plug of the module', 16)).toBe('refit…the module');
    const sign = fc.constantFrom('a', ' ', 'Ω', '中', 'e\u0301');
    fc.assert(
      fc.property(
        fc.array(sign, { maxLength: 40 }),
        fc.integer({ min: 4, max: 30 }),
        (signs, width) => {
          expect(columnsOf(cutMiddle(signs.join(''), width))).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});

it('lines of a list that would be cut to the same words keep their ends instead', () => {
  const lines = [
    'Clean the plug of the sensor.',
    'Clean the plug of the module.',
    'Mend the wire of it.',
  ];
  // By hand, 16 columns: a third of the room before the mark, the rest after it.
  expect(toldApart(lines, 16)).toEqual([
    'Clean…he sensor.',
    'Clean…he module.',
    'Mend the wire o…',
  ]);
  expect(toldApart(lines, 40)).toEqual(lines);
});
