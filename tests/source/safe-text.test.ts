import { describe, expect, it } from 'vitest';
import { safeText } from '../../src/source/safe-text.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';

/** Written apart from the code under test: what must never reach a terminal from foreign text. */
const FORBIDDEN = /[\p{C}\p{Zl}\p{Zp}]/u;

describe('safeText', () => {
  it('leaves none of the 1,114,112 code points dangerous, and changes nothing it has passed', () => {
    let unsafe = 0;
    let restless = 0;
    // Beyond the planes with signs and those of special use the ordinary run takes one in 31.
    const isSkipped = (point: number) =>
      !LONG && point >= 0x20000 && point < 0xe0000 && point % 31 > 0;
    for (let point = 0; point <= 0x10ffff; point++) {
      if (isSkipped(point)) continue;
      const safe = safeText(`a${String.fromCodePoint(point)}b`);
      if (FORBIDDEN.test(safe) || !safe.startsWith('a') || !safe.endsWith('b') || safe === 'ab')
        unsafe++;
      if (safeText(safe) !== safe) restless++;
    }
    expect({ unsafe, restless }).toEqual({ unsafe: 0, restless: 0 });
  });

  it.each([
    // text                              lines  shown
    ['plain 12.4 V', false, 'plain 12.4 V'],
    ['Ω µ ° ± ≥ → é 中', false, 'Ω µ ° ± ≥ → é 中'],
    ['\x1b[2J', false, '␛[2J'],
    ['\x1b]52;c;AAAA\x07', false, '␛]52;c;AAAA␇'],
    ['\x9b31m', false, '‹U+009B›31m'],
    ['a\x7fb', false, 'a␡b'],
    ['a\u202eb', false, 'a‹U+202E›b'],
    ['a\u200bb\ufeffc', false, 'a‹U+200B›b‹U+FEFF›c'],
    ['\u{e0041}', false, '‹U+E0041›'],
    ['x\ufe0f', false, 'x‹U+FE0F›'],
    ['\ud800', false, '‹U+D800›'],
    ['a\tb', false, 'a    b'],
    ['a\nb', false, 'a␊b'],
    ['a\nb', true, 'a\nb'],
    ['a\r\nb\rc', true, 'a\nb␍c'],
    ['a\u2028b', true, 'a‹U+2028›b'],
    ['e\u0301\u0301\u0301\u0301', false, 'e\u0301\u0301\u0301\u0301'],
    ['e\u0301\u0301\u0301\u0301\u0301\u0301', false, 'e\u0301\u0301\u0301\u0301‹+2 marks›'],
    ['\u0301a', false, '◌\u0301a'],
  ])('%j with lines %s is shown as %j', (text, lines, shown) => {
    expect(safeText(text, { lines })).toBe(shown);
  });

  it('is safe and idempotent, whatever the mixture', () => {
    const nasty = fc.constantFrom(
      '\x1b',
      '\x9b',
      '\u202e',
      '\u0301',
      '\ud800',
      '\udc00',
      '\n',
      '\r',
      '\t',
      'e',
      '[',
    );
    const text = fc.array(fc.oneof(nasty, fc.string({ unit: 'binary', maxLength: 4 })), {
      maxLength: 20,
    });
    fc.assert(
      fc.property(text, fc.boolean(), (parts, lines) => {
        const safe = safeText(parts.join(''), { lines });
        const left = lines ? safe.replaceAll('\n', '') : safe;
        expect(FORBIDDEN.test(left)).toBe(false);
        expect(/\p{M}{5}/u.test(left)).toBe(false);
        expect(safeText(safe, { lines })).toBe(safe);
      }),
      { numRuns: 20_000 },
    );
  });

  it('takes 100,000 stacked marks or escapes in one go', () => {
    expect(safeText(`a${'\u0301'.repeat(100_000)}`)).toBe(`a${'\u0301'.repeat(4)}‹+99996 marks›`);
    expect(safeText('\x1b'.repeat(100_000))).toBe('␛'.repeat(100_000));
  });
});
