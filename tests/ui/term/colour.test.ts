import { describe, expect, it } from 'vitest';
import { asciiText } from '../../../src/ui/term/ascii-text.ts';
import { decideAscii, decideColour, decideFrontEnd } from '../../../src/ui/term/colour.ts';

describe('decideColour', () => {
  it.each([
    // environment                                     tty    wish      colour
    [{}, true, 'auto', true],
    [{}, false, 'auto', false],
    [{ NO_COLOR: '1' }, true, 'auto', false],
    [{ NO_COLOR: '' }, true, 'auto', true], // no-color.org: only when not empty
    [{ NO_COLOR: '1', FORCE_COLOR: '1' }, true, 'auto', false],
    [{ NO_COLOR: '1' }, true, 'always', true],
    [{ FORCE_COLOR: '1' }, false, 'auto', true],
    [{ FORCE_COLOR: '' }, false, 'auto', true],
    [{ FORCE_COLOR: '0' }, true, 'auto', false],
    [{ FORCE_COLOR: 'false' }, true, 'auto', false],
    [{ FORCE_COLOR: '1' }, true, 'never', false],
    [{ TERM: 'dumb' }, true, 'auto', false],
    [{ TERM: 'dumb', FORCE_COLOR: '1' }, true, 'auto', true],
    [{}, false, 'always', true],
  ] as const)('%j, terminal %s, --color=%s: %s', (env, isTTY, wish, colour) => {
    expect(decideColour(env, isTTY, wish)).toBe(colour);
  });
});

describe('decideAscii', () => {
  it.each([
    [{ LANG: 'de_DE.UTF-8' }, {}, 'linux', false],
    [{ LANG: 'C.utf8' }, {}, 'linux', false],
    [{ LANG: 'C' }, {}, 'linux', true],
    [{}, {}, 'linux', true], // POSIX: no locale set is the C locale
    [{}, {}, 'win32', false],
    [{ LANG: 'en_GB.UTF-8', LC_ALL: 'C' }, {}, 'linux', true],
    [{ LANG: 'C', LC_CTYPE: 'en_GB.UTF-8' }, {}, 'linux', false],
    [{ LANG: 'en_GB.UTF-8', OHMWARD_ASCII: '1' }, {}, 'linux', true],
    [{ LANG: 'C', OHMWARD_ASCII: '0' }, {}, 'linux', false],
    [{ LANG: 'en_GB.UTF-8' }, { ascii: true }, 'linux', true],
    [{ OHMWARD_ASCII: '1' }, { ascii: false }, 'linux', false],
  ])('%j, flags %j, %s: %s', (env, flags, platform, ascii) => {
    expect(decideAscii(env, flags, platform)).toBe(ascii);
  });
});

describe('decideFrontEnd', () => {
  const tty = { isTTY: true };
  it.each([
    [{}, tty, tty, {}, 'screen'],
    [{}, {}, tty, {}, 'plain'],
    [{}, tty, {}, {}, 'plain'],
    [{ TERM: 'dumb' }, tty, tty, { screen: true }, 'plain'],
    [{}, tty, tty, { plain: true }, 'plain'],
    [{ CI: 'true' }, tty, tty, {}, 'plain'],
    [{ CI: '' }, tty, tty, {}, 'plain'],
    [{ CI: '0' }, tty, tty, {}, 'screen'],
    [{ CI: 'false' }, tty, tty, {}, 'screen'],
    [{ CONTINUOUS_INTEGRATION: '1' }, tty, tty, {}, 'plain'],
    [{ CI: 'true' }, tty, tty, { screen: true }, 'screen'],
  ] as const)('%j, stdin %j, stdout %j, flags %j: %s', (env, stdin, stdout, flags, end) => {
    expect(decideFrontEnd(env, stdin, stdout, flags)).toBe(end);
  });
});

describe('asciiText', () => {
  it.each([
    ['← → ↑ ↓', '<- -> ^ v'],
    ['4,7 kΩ ±5 %', '4,7 kohm +/-5 %'],
    ['\u2126 \u03a9 \u00b5 \u03bc', 'ohm ohm u u'],
    ['≥ 4.75 V → OK ✓', '>= 4.75 V -> OK ok'],
    ['Würth é', 'Wurth e'],
    ['┌─┐│└┘├┤', '+-+|++++'],
    ['␛[2J ‹U+202E› ⚡ 中', '?[2J <U+202E> ? ?'],
    ['a\nb', 'a\nb'],
    // These would come apart into signs that ASCII has not.
    ['½ ¼ ¾ … ² ³', '1/2 1/4 3/4 ... 2 3'],
  ])('%j is %j', (text, ascii) => {
    expect(asciiText(text)).toBe(ascii);
  });
});
