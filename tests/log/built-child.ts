/** Children for the hard tests: TypeScript bundled to a file in a folder of its own, run by Node. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';

/** A fresh folder and the way to be rid of it. */
export function scratchFolder(): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'ohmward-test-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

/** Bundles `source` (a path from the project's root) into `folder` and returns the program's path. */
export async function bundleChild(source: string, folder: string): Promise<string> {
  const outfile = join(folder, 'child.mjs');
  await build({
    entryPoints: [source],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    // Libraries of the older module kind ask for Node's own modules by `require`.
    banner: {
      js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
    },
    logLevel: 'error',
  });
  return outfile;
}
