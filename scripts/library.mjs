/**
 * Writes docs/library.md from the shipped library: where each fault of each tree ends, minutes beside the cheapest
 * strategy, and the pictures of trees and circuits. `node scripts/library.mjs samples` writes the sample sessions
 * anew instead, with the built program. Takes a minute or two.
 */
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const SESSIONS = 'sessions';
/** Sample sessions on the simulated vehicle, beside those with an answers file. */
const BENCH_SAMPLES = [
  { name: 'spinning-wheel', procedure: 'wheel-speed-current', fault: 'sensor.stuck-high', seed: 5 },
  { name: 'nothing-now', procedure: 'throttle-position', fault: 'healthy', seed: 2 },
];

const work = mkdtempSync(join(tmpdir(), 'ohmward-library-'));
try {
  if (process.argv[2] === 'samples') writeSamples();
  else writeFileSync('docs/library.md', await pages());
} finally {
  rmSync(work, { recursive: true, force: true });
}

/** The text of docs/library.md, put together by TypeScript that needs bundling first. */
async function pages() {
  const bundled = join(work, 'pages.mjs');
  await build({
    entryPoints: ['tests/library/library-pages.ts'],
    outfile: bundled,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    logLevel: 'warning',
    banner: {
      js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
    },
  });
  const { libraryPages } = await import(pathToFileURL(bundled).href);
  return libraryPages();
}

function writeSamples() {
  const answered = readdirSync(SESSIONS)
    .filter((name) => name.startsWith('sample-') && name.endsWith('.answers.yaml'))
    .map((name) => name.slice('sample-'.length, -'.answers.yaml'.length));
  for (const name of answered)
    writeSample(name, [
      ...['--job', `procedures/jobs/${name}.yaml`],
      ...['--answers', join(SESSIONS, `sample-${name}.answers.yaml`)],
    ]);
  for (const { name, procedure, fault, seed } of BENCH_SAMPLES)
    writeSample(name, [procedure, '--bench', fault, '--vehicle', String(seed), '--unattended']);
}

function writeSample(name, args) {
  const folder = mkdtempSync(join(work, 'session-'));
  execFileSync(process.execPath, ['dist/ohmward.mjs', 'run', ...args, '--sessions', folder], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  for (const file of readdirSync(folder)) {
    const ending = file.slice(file.lastIndexOf('.'));
    copyFileSync(join(folder, file), join(SESSIONS, `sample-${name}${ending}`));
  }
}
