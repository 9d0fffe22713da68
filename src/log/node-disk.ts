/** The real disk: `Disk` over node:fs, synchronous on purpose, since an answer counts only once it is saved. */
import * as fs from 'node:fs';
import { dirname } from 'node:path';
import { systemCode } from '../files/error-code.ts';
import { makeFolders } from '../files/make-folders.ts';
import { openPlainFile, readPlainFile } from '../files/plain-file.ts';
import type { Disk, FileFacts } from './disk.ts';

const { O_RDWR, O_APPEND, O_CREAT, O_EXCL } = fs.constants;
/** Windows has no such flag; there a link needs rights an attacker would not have. */
const O_NOFOLLOW = fs.constants.O_NOFOLLOW ?? 0;
/** Windows cannot open a folder to sync it; its file system keeps names in a journal. */
const FOLDERS_SYNC = process.platform !== 'win32';
const NEVER_WOKEN = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));

export const nodeDisk: Disk = {
  openNew: (path) => fs.openSync(path, O_RDWR | O_APPEND | O_CREAT | O_EXCL | O_NOFOLLOW, 0o600),
  openAppend: (path) => openPlainFile(path, O_RDWR | O_APPEND | O_NOFOLLOW),
  write: (file, bytes) => fs.writeSync(file, bytes),
  syncData: (file) => fs.fdatasyncSync(file),
  syncFolder,
  truncate: (file, bytes) => fs.ftruncateSync(file, bytes),
  factsOpen: (file) => factsFrom(fs.fstatSync(file, { bigint: true })),
  facts,
  rename: (from, to) => fs.renameSync(from, to),
  remove: (path) => fs.unlinkSync(path),
  read: readPlainFile,
  readOpen,
  list: (folder) => fs.readdirSync(folder),
  close: (file) => fs.closeSync(file),
  rest: (ms) => void Atomics.wait(NEVER_WOKEN, 0, 0, ms),
  makeFolder,
};

function facts(path: string): FileFacts | null {
  try {
    return factsFrom(fs.lstatSync(path, { bigint: true }));
  } catch (error) {
    // Where a file stands in the place of the folder there is no name either.
    if (['ENOENT', 'ENOTDIR'].includes(systemCode(error) ?? '')) return null;
    throw error;
  }
}

function factsFrom(stat: fs.BigIntStats): FileFacts {
  return { identity: `${stat.dev}:${stat.ino}`, bytes: Number(stat.size) };
}

function readOpen(file: number): Uint8Array {
  const bytes = Buffer.alloc(fs.fstatSync(file).size);
  for (let done = 0; done < bytes.length; ) {
    const count = fs.readSync(file, bytes, done, bytes.length - done, done);
    if (count === 0) return bytes.subarray(0, done);
    done += count;
  }
  return bytes;
}

function syncFolder(folder: string): void {
  if (!FOLDERS_SYNC) return;
  // A pipe that has come in its place is refused, not waited for.
  const handle = fs.openSync(folder, fs.constants.O_RDONLY | fs.constants.O_DIRECTORY);
  try {
    fs.fsyncSync(handle);
  } finally {
    fs.closeSync(handle);
  }
}

/** A new folder's name lives in its parent: the parent of each that was made is synced, the innermost first. */
function makeFolder(folder: string): void {
  for (const made of makeFolders(folder, 0o700).reverse()) syncFolder(dirname(made));
}
