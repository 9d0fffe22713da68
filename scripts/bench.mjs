/**
 * Runs the benches of tests/bench, each side by side with its yardstick in the same process:
 * `npm run bench [NAME...] [-- OPTIONS]`. A bench reads its options from the command line itself.
 * Speed is told as a ratio; it is never a test.
 */
import { mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const words = process.argv.slice(2);
const options = words.findIndex((word) => word.startsWith('--'));
const wanted = options < 0 ? words : words.slice(0, options);
const out = resolve('node_modules/.cache/bench');
mkdirSync(out, { recursive: true });
for (const file of readdirSync('tests/bench').filter((name) => name.endsWith('-bench.ts'))) {
  const name = file.replace('-bench.ts', '');
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const outfile = join(out, `${name}.mjs`);
  await build({
    entryPoints: [join('tests/bench', file)],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    logLevel: 'warning',
  });
  console.log(`\n== ${name} ==`);
  for (const [exported, run] of Object.entries(await import(pathToFileURL(outfile).href))) {
    if (exported.startsWith('bench') && typeof run === 'function') await run();
  }
}
