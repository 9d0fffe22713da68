/** Bundles the program into dist/: one entry, lazily loaded chunks, nothing needed at run time but Node. */
import { chmodSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';
import { quickFrames, quickStart, withoutDevtools } from './bundle-plugins.mjs';
import { bundledPackages, licenceText } from './licences.mjs';

/** Steps of the shared database's tables, carried in the bundle as text. */
const migrations = readdirSync('src/records/shared/migrations')
  .filter((name) => name.endsWith('.sql'))
  .sort()
  .map((name) => [name, readFileSync(`src/records/shared/migrations/${name}`, 'utf8')]);
const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
/** Made beside the old one and put in its place when whole, so that a running program never misses a part. */
const fresh = `dist.${process.pid}`;

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
  plugins: [withoutDevtools, quickStart, quickFrames, signalsAtOnce],
  logLevel: 'warning',
});
writeFileSync(`${fresh}/THIRD-PARTY.txt`, licenceText(bundledPackages(fresh)));
chmodSync(`${fresh}/ohmward.mjs`, 0o755);
rmSync('dist', { recursive: true, force: true });
renameSync(fresh, 'dist');
