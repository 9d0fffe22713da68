/** What a script takes from the TypeScript of this repository: a file is bundled, its libraries left outside, and imported. */
import { mkdirSync, rmSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** The exports of a TypeScript file. */
export async function bundled(entry) {
  // Below node_modules, where it finds the libraries.
  const outfile = resolve(
    `node_modules/.cache/bundled/${basename(entry, '.ts')}-${process.pid}.mjs`,
  );
  try {
    return await bundledTo(outfile, entry);
  } finally {
    rmSync(outfile);
  }
}

/** The same from a file that is kept, for what starts workers of it. */
export async function bundledTo(outfile, entry) {
  mkdirSync(dirname(outfile), { recursive: true });
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    jsx: 'automatic',
    packages: 'external',
    logLevel: 'warning',
  });
  return import(pathToFileURL(outfile).href);
}
