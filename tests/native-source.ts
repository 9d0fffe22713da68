/**
 * The source as the runner's tests load it: compiled file by file, by the bundler of the program, and loaded by Node
 * itself. The runner's own way takes 3 s more of processor for each process, and a tenth more for all that is computed,
 * since every import is looked up each time it is used. What draws the screens is bundled beside it as it ships: React for
 * its developers takes three times as long, and Ink without our changes twice.
 */
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative, resolve } from 'node:path';
import { build } from 'esbuild';
import type { Plugin } from 'vitest/config';
import { quickFrames, quickStart, withoutDevtools } from '../scripts/bundle-plugins.mjs';

const CODE = /\.tsx?$/;
const IMPORT = /^\.\.?\/.*\.(tsx?|mjs)$/;
const BUNDLER = resolve(import.meta.dirname, '../scripts/bundle-plugins.mjs');
/** What draws, each with what it gives; the names of what was written for Node's older modules cannot be seen from outside. */
const DRAWING: Readonly<Record<string, string>> = {
  // It colours what Ink draws, as far as the screen is told to.
  chalk: "export * from 'chalk'; export { default } from 'chalk';",
  ink: "export * from 'ink';",
  'ink-testing-library': "export * from 'ink-testing-library';",
  react: namesOf('react'),
  'react/jsx-runtime': namesOf('react/jsx-runtime'),
  // What the runner writes for a tag of a test.
  'react/jsx-dev-runtime':
    "import { Fragment, jsx } from 'react/jsx-runtime'; export { Fragment }; export const jsxDEV = (type, props, key) => jsx(type, props, key);",
};
/** As deep as the source, whose library is looked for above it. */
const PLACE = 'dist.source';
/** Those of the last sources; a run that began before may still load its own. */
const KEPT = 16;

/** Compiles the source, where that was not done, and leads imports of tests to it. Off while watching: Node loads once. */
export function nativeSource(root: string, isWatching: boolean): Plugin {
  const source = resolve(root, 'src');
  let compiled = '';
  return {
    name: 'native-source',
    enforce: 'pre',
    async buildStart() {
      if (!isWatching) compiled = await compile(root, source);
    },
    resolveId(id, importer) {
      if (compiled === '' || !importer) return null;
      if (Object.hasOwn(DRAWING, id)) return join(compiled, drawing(id));
      if (!IMPORT.test(id)) return null;
      const name = relative(source, resolve(dirname(importer), id));
      return name.startsWith('..') ? null : join(compiled, asNode(name));
    },
  };
}

/** The folder that holds the compiled source, named by what is in it. */
async function compile(root: string, source: string): Promise<string> {
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
    .filter((name) => !name.endsWith('.d.mts') && statSync(join(source, name)).isFile())
    .sort();
  const sum = createHash('sha256').update(readFileSync(join(root, 'package-lock.json')));
  for (const name of [...files.map((file) => join(source, file)), import.meta.filename, BUNDLER])
    sum.update(`\n${name}\n`).update(readFileSync(name));
  const place = resolve(root, PLACE);
  const folder = join(place, sum.digest('hex').slice(0, 32));
  if (existsSync(folder)) return folder;
  mkdirSync(place, { recursive: true });
  const age = (name: string) => -statSync(name).mtimeMs;
  const made = readdirSync(place).map((name) => join(place, name));
  for (const old of made.sort((one, other) => age(one) - age(other)).slice(KEPT))
    rmSync(old, { recursive: true, force: true });
  const fresh = `${folder}.${process.pid}`;
  await build({
    entryPoints: files.filter((name) => CODE.test(name)).map((name) => join(source, name)),
    outdir: fresh,
    outbase: source,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    jsx: 'automatic',
    sourcemap: 'inline',
    plugins: [eachByItself],
    logLevel: 'warning',
  });
  await bundleDrawing(fresh);
  for (const name of files.filter((one) => !CODE.test(one))) {
    mkdirSync(dirname(join(fresh, name)), { recursive: true });
    copyFileSync(join(source, name), join(fresh, name));
  }
  try {
    renameSync(fresh, folder);
  } catch (error) {
    // Another run was quicker.
    rmSync(fresh, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

/** Puts what draws where Node looks for a package first, all of it over one React. */
async function bundleDrawing(folder: string): Promise<void> {
  const names = Object.keys(DRAWING);
  await build({
    entryPoints: names.map((name) => ({ in: name, out: drawing(name).replace(/\.mjs$/, '') })),
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    chunkNames: 'node_modules/[name]-[hash]',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    banner: {
      js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
    },
    plugins: [entries, withoutDevtools, quickStart, quickFrames],
    logLevel: 'warning',
  });
  for (const name of names.filter((one) => !one.includes('/'))) {
    const within = names.filter((one) => one === name || one.startsWith(`${name}/`));
    const exports = Object.fromEntries(
      within.map((one) => [
        one.replace(name, '.'),
        `./${relative(join('node_modules', name), drawing(one))}`,
      ]),
    );
    writeFileSync(
      join(folder, 'node_modules', name, 'package.json'),
      JSON.stringify({ name, type: 'module', exports }),
    );
  }
}

/** Where it lies in the folder of the source. */
function drawing(name: string): string {
  return join('node_modules', name.includes('/') ? name : `${name}/index`).concat('.mjs');
}

const entries: NonNullable<Parameters<typeof build>[0]['plugins']>[number] = {
  name: 'entries',
  setup(b) {
    b.onResolve({ filter: /.*/ }, ({ kind, path }) =>
      kind === 'entry-point' ? { path, namespace: 'entries' } : null,
    );
    b.onLoad({ filter: /.*/, namespace: 'entries' }, ({ path }) => ({
      contents: DRAWING[path]!,
      resolveDir: import.meta.dirname,
    }));
  },
};

function namesOf(name: string): string {
  const names = Object.keys(createRequire(import.meta.url)(name) as object);
  return `import all from '${name}'; export default all; export const { ${names} } = all;`;
}

/** Every import stays one, of the compiled file. */
const eachByItself: NonNullable<Parameters<typeof build>[0]['plugins']>[number] = {
  name: 'each-by-itself',
  setup(b) {
    b.onResolve({ filter: /.*/ }, ({ kind, path }) =>
      kind === 'entry-point' ? null : { path: asNode(path), external: true },
    );
  },
};

function asNode(path: string): string {
  return path.replace(CODE, '.mjs');
}
