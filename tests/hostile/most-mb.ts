/** How much memory this process has held. */
import { readFileSync } from 'node:fs';

/**
 * The most memory of this program, in megabytes. On Linux the system's own `ru_maxrss` would do for nobody: across `exec`
 * it keeps what the parent held at the fork (getrusage(2)), here a test runner of several hundred megabytes.
 */
export function mostMb(): number {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS / 1024;
  const line = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'));
  if (line === null) throw new Error('/proc/self/status has no VmHWM');
  return Number(line[1]) / 1024;
}
