/** Bundles the program into dist/: one entry, lazily loaded chunks, nothing needed at run time but Node. */
import { chmodSync, readFileSync, rmSync } from 'node:fs';
import { build } from 'esbuild';

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
rmSync('dist', { recursive: true, force: true });

/** Ink imports its developer tools only when asked to; the bundle never asks. */
const withoutDevtools = {
  name: 'without-devtools',
  setup(b) {
    b.onResolve({ filter: /^react-devtools-core$/ }, () => ({ path: 'none', namespace: 'none' }));
    b.onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'export default {}' }));
  },
};

await build({
  entryPoints: { ohmward: 'src/cli.ts' },
  outdir: 'dist',
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
  },
  banner: {
    js: "#!/usr/bin/env node\nimport { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
  },
  plugins: [withoutDevtools],
  logLevel: 'warning',
});
chmodSync('dist/ohmward.mjs', 0o755);
