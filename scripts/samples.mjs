/**
 * Writes the sample sessions anew with the built program: `node scripts/samples.mjs`. Each demo job from its answers
 * file, and two sessions in which a simulated vehicle answered.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const FOLDER = 'sessions';
/** Where a simulated vehicle answers: procedure, fault, seed. */
const BENCH = {
  'spinning-wheel': ['wheel-speed-current', 'sensor.stuck-high', '5'],
  'nothing-now': ['throttle-position', 'healthy', '2'],
};

const place = mkdtempSync(join(tmpdir(), 'ohmward-samples-'));
const env = { ...process.env, XDG_CONFIG_HOME: place, HOME: place };

function written(name, args) {
  const sessions = join(place, name);
  execFileSync(process.execPath, ['dist/ohmward.mjs', 'run', ...args, '--sessions', sessions], {
    env,
  });
  for (const file of readdirSync(sessions)) {
    const ending = /\.(jsonl|md)$/.exec(file)?.[0];
    if (ending) renameSync(join(sessions, file), join(FOLDER, `sample-${name}${ending}`));
  }
}

try {
  for (const file of readdirSync('procedures/jobs')) {
    const name = file.replace(/\.yaml$/, '');
    const answers = join(FOLDER, `sample-${name}.answers.yaml`);
    written(name, ['--job', join('procedures/jobs', file), '--answers', answers]);
  }
  for (const [name, [procedure, fault, seed]] of Object.entries(BENCH))
    written(name, [procedure, '--bench', fault, '--vehicle', seed, '--unattended']);
} finally {
  rmSync(place, { recursive: true, force: true });
}
