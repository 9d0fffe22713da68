/**
 * Where tests write: in memory where there is enough of it, since every event of a session waits for its disk, some
 * milliseconds each. What a disk does is tested with disks of our own (`tests/log`, `tests/hard`).
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { freemem } from 'node:os';
import { join } from 'node:path';

const IN_MEMORY = '/dev/shm';
/** A database server with its programs takes 0.3 GB of it, all else a tenth of that. */
const LEAST_BYTES = 4e9;

/** Before the first test; what is given back ends it. */
export default function setup(): (() => void) | undefined {
  const folder = inMemory();
  if (folder === null) return undefined;
  process.env['TMPDIR'] = folder;
  return () => {
    try {
      rmSync(folder, { recursive: true, force: true });
    } catch (error) {
      // A disk of a test that was stopped may still be mounted there.
      console.warn(`tests: ${folder} is left: ${error}`);
    }
  };
}

/** A new folder in memory from which programs can be started, as a test may want; null where there is none. */
function inMemory(): string | null {
  let folder: string | null = null;
  try {
    const { bavail, bsize } = statfsSync(IN_MEMORY);
    if (Math.min(bavail * bsize, freemem()) < LEAST_BYTES) return null;
    folder = mkdtempSync(join(IN_MEMORY, 'ohmward-'));
    // The database server runs as a user without rights.
    chmodSync(folder, 0o755);
    const program = join(folder, 'program');
    writeFileSync(program, '#!/bin/sh\n', { mode: 0o755 });
    execFileSync(program);
    return folder;
  } catch {
    if (folder !== null) rmSync(folder, { recursive: true, force: true });
    return null;
  }
}
