/**
 * Runs the benches of tests/bench, each side by side with its yardstick in the same process:
 * `npm run bench [NAME...] [-- OPTIONS]`. A bench reads its options from the command line itself.
 * Speed is told as a ratio; it is never a test.
 */
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { bundledTo } from './bundled.mjs';

const words = process.argv.slice(2);
const options = words.findIndex((word) => word.startsWith('--'));
const wanted = options < 0 ? words : words.slice(0, options);
for (const file of readdirSync('tests/bench').filter((name) => name.endsWith('-bench.ts'))) {
  const name = file.replace('-bench.ts', '');
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const bench = await bundledTo(
    resolve(`node_modules/.cache/bench/${name}.mjs`),
    join('tests/bench', file),
  );
  console.log(`\n== ${name} ==`);
  for (const [exported, run] of Object.entries(bench)) {
    if (exported.startsWith('bench') && typeof run === 'function') await run();
  }
}
