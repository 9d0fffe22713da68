/**
 * Writes the pages of the guide that are made from the library and a sample session: docs/families.md, docs/reading.md.
 * `node scripts/guide.mjs`; a test compares the pages.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const work = mkdtempSync(join(tmpdir(), 'ohmward-guide-'));
try {
  const outfile = join(work, 'pages.mjs');
  await build({
    entryPoints: ['tests/library/guide-pages.ts'],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    logLevel: 'warning',
    banner: {
      js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
    },
  });
  const { familiesPage, readingPage } = await import(pathToFileURL(outfile).href);
  writeFileSync('docs/families.md', familiesPage());
  writeFileSync('docs/reading.md', readingPage());
} finally {
  rmSync(work, { recursive: true, force: true });
}
