/**
 * Opens files that are plain files. A pipe without a writer would stop the program, past every signal, and the mere
 * opening of a device can do something; so what a name stands for is known before it is opened, and looked at again
 * after, since it may have changed in between.
 */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';

/** Windows has none of these flags and no pipes in folders. */
const WITHOUT_WAITING = (constants.O_NONBLOCK ?? 0) | (constants.O_NOCTTY ?? 0);

/** Code of the error for what is neither file nor folder: a pipe, a socket, a device. */
export const NOT_A_FILE = 'not-a-file';

/** A handle on the plain file at `path`, links followed unless `flags` say otherwise; else a system error or `NOT_A_FILE`. */
export function openPlainFile(path: string, flags: number = constants.O_RDONLY): number {
  expectPlain(statSync(path));
  const file = openSync(path, flags | WITHOUT_WAITING);
  try {
    expectPlain(fstatSync(file));
  } catch (error) {
    closeSync(file);
    throw error;
  }
  return file;
}

/** The bytes of the plain file at `path`, `limit` of them at most. */
export function readPlainFile(path: string, limit = Number.POSITIVE_INFINITY): Buffer {
  const file = openPlainFile(path);
  try {
    const bytes = Buffer.alloc(Math.min(limit, fstatSync(file).size + 1));
    return bytes.subarray(0, readInto(file, bytes));
  } finally {
    closeSync(file);
  }
}

/** What of the file is there, up to the length of `bytes`. */
function readInto(file: number, bytes: Buffer): number {
  let length = 0;
  while (length < bytes.length) {
    const count = readSync(file, bytes, length, bytes.length - length, length);
    if (count === 0) break;
    length += count;
  }
  return length;
}

function expectPlain(stats: Stats): void {
  if (stats.isFile()) return;
  const code = stats.isDirectory() ? 'EISDIR' : NOT_A_FILE;
  throw Object.assign(new Error(code), { code });
}
