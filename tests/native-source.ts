/**
 * The source as the runner's tests load it: compiled file by file, by the bundler of the program, and loaded by Node
 * itself. The runner's own way takes 3 s more of processor for each process, and a tenth more for all that is computed,
 * since every import is looked up each time it is used.
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
} from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { build } from 'esbuild';
import type { Plugin } from 'vitest/config';

const CODE = /\.tsx?$/;
const IMPORT = /^\.\.?\/.*\.(tsx?|mjs)$/;
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
      if (compiled === '' || !importer || !IMPORT.test(id)) return null;
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
  for (const name of [...files.map((file) => join(source, file)), import.meta.filename])
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
