/** What a bundle of the screens does otherwise than its libraries. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

/**
 * Two costs before the first frame that a bundle can spare. Yoga fetches its own code from a data address, which loads
 * Node's whole HTTP client; without a `fetch` it decodes the text itself. And text is measured the short way first.
 */
export const quickStart = {
  name: 'quick-start',
  setup(b) {
    b.onLoad({ filter: /yoga-wasm-base64-esm\.js$/ }, ({ path }) => ({
      contents: `const fetch = undefined;\n${readFileSync(path, 'utf8')}`,
    }));
    b.onResolve({ filter: /^string-width$/ }, ({ importer }) =>
      importer.endsWith('sign-columns.ts') ? null : { path: resolve('src/source/sign-columns.ts') },
    );
  },
};

/** Ink imports its developer tools only when asked to; the bundle never asks. */
export const withoutDevtools = {
  name: 'without-devtools',
  setup(b) {
    b.onResolve({ filter: /^react-devtools-core$/ }, () => ({ path: 'none', namespace: 'none' }));
    b.onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'export default {}' }));
  },
};

/**
 * Ink takes each frame apart into signs and puts it together again, the lines that stand as they were too: the larger part of
 * what a key costs. Lines that were taken apart are kept for the next frame, signs of one style share it, and of two such
 * signs in a row nothing is asked. What is drawn stays the same (`tests/ui/term/quick-frames.test.ts`).
 */
export const quickFrames = {
  name: 'quick-frames',
  setup(b) {
    b.onLoad({ filter: /[\\/]ink[\\/]build[\\/]output\.js$/ }, ({ path }) => ({
      contents: `${changed(path, [
        ['caches = new OutputCaches();', 'caches = keptCaches;'],
        [
          'this.styledChars.set(line, cached);',
          `if (this.styledChars.size >= ${LINES_KEPT}) this.styledChars.clear();\nthis.styledChars.set(line, cached);`,
        ],
        [
          'this.widths.set(text, cached);',
          `if (this.widths.size >= ${LINES_KEPT}) this.widths.clear();\nthis.widths.set(text, cached);`,
        ],
        [
          'this.blockWidths.set(text, cached);',
          `if (this.blockWidths.size >= ${LINES_KEPT}) this.blockWidths.clear();\nthis.blockWidths.set(text, cached);`,
        ],
        [/row\.push\(\{[^}]*\}\)/, 'row.push(blankSign)'],
      ])}
const keptCaches = new OutputCaches();
const blankSign = { type: 'char', value: ' ', fullWidth: false, styles: [] };
`,
    }));
    b.onLoad({ filter: /ansi-tokenize[\\/]build[\\/]styledChars\.js$/ }, ({ path }) => ({
      contents: changed(path, [
        ['styles: [...codes],', 'styles: codes,'],
        [
          '        else {\n            ret += ansiCodesToString(diff',
          '        else if (chars[i - 1].styles !== char.styles && (chars[i - 1].styles.length > 0 || char.styles.length > 0)) {\n            ret += ansiCodesToString(diff',
        ],
      ]),
    }));
  },
};

/** Lines of text that are kept taken apart; a screen has some 60. */
const LINES_KEPT = 512;

/** The text of a file with each piece replaced; a piece that is not there means that the library is another one. */
function changed(path, pieces) {
  let text = readFileSync(path, 'utf8');
  for (const [from, to] of pieces) {
    const next = text.replace(from, to);
    if (next === text) throw new Error(`${path} has no ${from}`);
    text = next;
  }
  return text;
}
