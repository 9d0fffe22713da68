/** Reads every hostile file in turn and prints the most memory this process ever held, in megabytes. */
import { readFileSync } from 'node:fs';
import { BYTES_ATTACKS } from './bytes-attacks.ts';
import { GOOD } from './good-files.ts';
import { readAs, YAML_KINDS } from './readers.ts';
import { attacksOn } from './yaml-attacks.ts';

let count = 0;
for (const { kind, bytes } of BYTES_ATTACKS) {
  readAs(kind, bytes);
  count += 1;
}
for (const kind of YAML_KINDS)
  for (const { text } of attacksOn(kind)) {
    readAs(kind, text(GOOD[kind]));
    count += 1;
  }
process.stdout.write(JSON.stringify({ count, mostMb: mostKb() / 1024 }));

/**
 * The most memory of this program, in kilobytes. On Linux the system's own `ru_maxrss` would do for nobody: across `exec`
 * it keeps what the parent held at the fork (getrusage(2)), here a test runner of several hundred megabytes.
 */
function mostKb(): number {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS;
  const line = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'));
  if (line === null) throw new Error('/proc/self/status has no VmHWM');
  return Number(line[1]);
}
