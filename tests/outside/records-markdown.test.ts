/**
 * Markdown against the examples of CommonMark 0.31.2 and the GFM specification (0.29), by their numbers there, read by
 * micromark, which is not ours.
 */
import { micromark } from 'micromark';
import { gfm, gfmHtml } from 'micromark-extension-gfm';
import { describe, expect, it } from 'vitest';
import { markdownText } from '../../src/records/markdown.ts';

/** The text of a page that has no markup; null where a reader of CommonMark and GFM makes any of it. */
function plainTextOf(markdown: string): string | null {
  const html = micromark(markdown, {
    allowDangerousHtml: true,
    extensions: [gfm()],
    htmlExtensions: [gfmHtml()],
  });
  const text = /^<p>([^<>]*)<\/p>$/.exec(html.trim())?.[1];
  return text?.replace(/&(lt|gt|quot|amp);/g, (_, name) => SIGNS[name]!) ?? null;
}
const SIGNS: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', amp: '&' };

/** What an example needs around it to become markup. */
function completed(text: string): string {
  if (text.startsWith('|')) return `${text}\n| --- | --- |`;
  if (text.startsWith('=')) return `Foo\n${text}`;
  return text.startsWith('[foo]:') ? `${text}\n\n[foo]` : text;
}

describe('examples that make markup, as a text of ours', () => {
  it.each([
    ['CommonMark 43, thematic break', '***'],
    ['CommonMark 43', '---'],
    ['CommonMark 62, heading', '# foo'],
    ['CommonMark 80, setext heading', '==='],
    ['CommonMark 228, quote', '> # Foo'],
    ['CommonMark 281, list', '- foo'],
    ['CommonMark 283, ordered list', '1. foo'],
    ['CommonMark 285, ordered list', '3) baz'],
    ['CommonMark 328, code span', '`foo`'],
    ['CommonMark 350, emphasis', '*foo bar*'],
    ['CommonMark 357, emphasis', '_foo bar_'],
    ['CommonMark 377, strong emphasis', '**foo bar**'],
    ['CommonMark 482, link', '[link](/uri "title")'],
    ['CommonMark 192, reference', '[foo]: /url "title"'],
    ['CommonMark 572, image', '![foo](/url "title")'],
    ['CommonMark 594, autolink', '<http://foo.bar.baz>'],
    ['CommonMark 613, raw HTML', '<a><bab><c2c>'],
    ['CommonMark 25, entity', '&nbsp; &amp; &copy;'],
    ['GFM 198, table', '| foo | bar |'],
    ['GFM 491, strikethrough', '~~Hi~~ Hello, ~there~ world!'],
    ['GFM 622, extended autolink', 'www.commonmark.org'],
    ['GFM 628, extended autolink', 'http://commonmark.org'],
    ['GFM 630, extended autolink', 'foo@bar.baz'],
  ])('%s: %s', (_, text) => {
    expect(plainTextOf(completed(text)), 'as it is').not.toBe(text);
    const source = markdownText(text);
    expect(plainTextOf(source), source).toBe(text);
    // The second line of a paragraph is where a heading or a list could begin as well.
    expect(plainTextOf(`Foo\n${source}`), source).toBe(`Foo\n${text}`);
  });
});

it('ordinary text is left alone', () => {
  for (const text of [
    '4.75 to 5.25 V',
    '-0.3 V',
    'pin 1 (RD/BU), 60-2 wheel',
    '#2 cylinder',
    'at 12.5 %: fine!',
  ])
    expect(markdownText(text)).toBe(text);
});

it('lines of a text stay in one cell', () => {
  expect(markdownText('first\r\nsecond\n\n')).toBe('first · second');
});
