import xterm from '@xterm/headless';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import signColumns from '../../src/source/sign-columns.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';

/** The Thai and Lao sign AM, of which the library does not count the column. */
const AM = ['\u0e33', '\u0eb3'];

/** From first to last: ideographs, Korean syllables, signs of one's own. */
const ALIKE = [
  [0x4e00, 0x9fff],
  [0xac00, 0xd7a3],
  [0xe000, 0xf8ff],
] as const;

// The measure is the library that is passed by: string-width, Unicode's East Asian Width and grapheme clusters.
describe('the short way to measure text', () => {
  it('gives the library’s columns for every sign of the first plane, alone and beside a letter', () => {
    const different: string[] = [];
    for (let point = 0; point < 0x10000; point += 1) {
      // Of the long blocks of one kind it takes one in seven as well.
      if (!LONG && point % 7 > 0 && ALIKE.some(([from, to]) => point > from && point < to))
        continue;
      const sign = String.fromCharCode(point);
      // Beside a letter the ordinary run takes one sign in seven.
      const looks = (LONG || point % 7 === 0) && !AM.includes(sign);
      const beside = looks ? [`a${sign}`, `${sign}─`] : [];
      for (const text of [sign, ...beside])
        if (signColumns(text) !== stringWidth(text)) different.push(point.toString(16));
    }
    expect(different).toEqual([]);
  });

  it('gives the library’s columns for words of such signs, marks and emoji', () => {
    const sign = fc.oneof(
      fc.constantFrom('a', '─', '│', '█', '⠿', '→', '°', 'é', '–', '“'),
      fc.constantFrom(
        '\u0301',
        '\ufe0f',
        '\u200d',
        '👩',
        '漢',
        '☃',
        '한',
        '\u20e3',
        '1',
        '\u001b[1m',
      ),
    );
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 12 }), (signs) => {
        const text = signs.join('');
        expect(signColumns(text)).toBe(stringWidth(text));
      }),
      { numRuns: 2000 },
    );
  });

  it('leaves a wish about ambiguous signs to the library', () => {
    expect(signColumns('─', { ambiguousIsNarrow: false })).toBe(2);
  });
});

/** What a terminal takes for it: the column its cursor stands in afterwards. */
async function terminalColumns(text: string): Promise<number> {
  const terminal = new xterm.Terminal({ cols: 80, rows: 2, allowProposedApi: true });
  await new Promise<void>((done) => terminal.write(text, done));
  return terminal.buffer.active.cursorX;
}

it.each(
  AM.flatMap((am) => [
    am,
    `\u0e01${am}`,
    `\u0e19\u0e49${am}`,
    `\u0e99\u0ec9${am}b`,
    `語${am}`,
    `a${am}${am}`,
  ]),
)('the sign AM takes a column of its own, as on a terminal: %j', async (text) => {
  expect(signColumns(text)).toBe(await terminalColumns(text));
});
