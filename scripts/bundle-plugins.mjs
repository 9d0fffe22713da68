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
      importer.endsWith('sign-columns.ts')
        ? null
        : { path: resolve('src/ui/term/sign-columns.ts') },
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
