/** Bundles the program into dist/: one entry, lazily loaded chunks, nothing needed at run time but Node. */
import { chmodSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { build } from 'esbuild';
import { bundledPackages, licenceText } from './licences.mjs';

/** Steps of the shared database's tables, carried in the bundle as text. */
const migrations = readdirSync('src/records/shared/migrations')
  .filter((name) => name.endsWith('.sql'))
  .sort()
  .map((name) => [name, readFileSync(`src/records/shared/migrations/${name}`, 'utf8')]);
const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
/** Made beside the old one and put in its place when whole, so that a running program never misses a part. */
const fresh = `dist.${process.pid}`;

/** Ink imports its developer tools only when asked to; the bundle never asks. */
const withoutDevtools = {
  name: 'without-devtools',
  setup(b) {
    b.onResolve({ filter: /^react-devtools-core$/ }, () => ({ path: 'none', namespace: 'none' }));
    b.onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'export default {}' }));
  },
};

/**
 * Two costs before the first frame that a bundle can spare. Yoga fetches its own code from a data address, which loads
 * Node's whole HTTP client; without a `fetch` it decodes the text itself. And text is measured the short way first.
 */
const quickStart = {
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

/**
 * The package that writes the settings has another one listen for every signal, to tidy up after it. What listens is
 * heard only once nothing is computed: a signal would take seconds to end the program. Without it the system's way holds.
 */
const signalsAtOnce = {
  name: 'signals-at-once',
  setup(b) {
    b.onResolve({ filter: /^when-exit$/ }, () => ({ path: 'when-exit', namespace: 'signals' }));
    b.onLoad({ filter: /.*/, namespace: 'signals' }, () => ({
      contents: 'export default () => () => {}',
    }));
  },
};

await build({
  entryPoints: { ohmward: 'src/cli.ts' },
  outdir: fresh,
  outExtension: { '.js': '.mjs' },
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  jsx: 'automatic',
  sourcemap: true,
  minifySyntax: true,
  legalComments: 'linked',
  chunkNames: 'parts/[name]-[hash]',
  define: {
    'process.env.NODE_ENV': '"production"',
    'process.env.DEV': '"false"',
    OHMWARD_VERSION: JSON.stringify(version),
    OHMWARD_MIGRATIONS: JSON.stringify(migrations),
  },
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
  },
  // An optional native client that is never asked for.
  external: ['pg-native'],
  plugins: [withoutDevtools, quickStart, signalsAtOnce],
  logLevel: 'warning',
});
writeFileSync(`${fresh}/THIRD-PARTY.txt`, licenceText(bundledPackages(fresh)));
chmodSync(`${fresh}/ohmward.mjs`, 0o755);
rmSync('dist', { recursive: true, force: true });
renameSync(fresh, 'dist');
