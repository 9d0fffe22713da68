/**
 * The disk as the session file sees it: few operations, synchronous, each able to fail with a system error.
 *
 * Everything that saves goes through this interface, so that tests can put a disk beneath it that fills up,
 * breaks at the n-th operation or loses power. A failing operation throws an error with a `code` such as ENOSPC.
 */

import { systemCode } from '../files/error-code.ts';

/** What a name or an open file stands for. `identity` differs for different files, even under one name. */
export interface FileFacts {
  readonly identity: string;
  readonly bytes: number;
}

/** All that is ever asked of the disk when a session is saved. */
export interface Disk {
  /** Opens a file that must not exist yet, for appending, 0600, never through a link. */
  readonly openNew: (path: string) => number;
  /** Opens an existing file for appending, never through a link; a pipe or a device is `not-a-file` and is not opened. */
  readonly openAppend: (path: string) => number;
  /** Writes some of the bytes at the end and says how many. */
  readonly write: (file: number, bytes: Uint8Array) => number;
  /** Returns when the contents are on the medium (fdatasync). */
  readonly syncData: (file: number) => void;
  /** Returns when the names in the folder are on the medium (fsync of the folder). */
  readonly syncFolder: (folder: string) => void;
  readonly truncate: (file: number, bytes: number) => void;
  readonly factsOpen: (file: number) => FileFacts;
  /** Facts of the file under this name, null when there is none. */
  readonly facts: (path: string) => FileFacts | null;
  readonly rename: (from: string, to: string) => void;
  readonly remove: (path: string) => void;
  /** Everything in a file; a pipe or a device is `not-a-file` and is not opened. */
  readonly read: (path: string) => Uint8Array;
  /** Everything in an open file, even when no name leads to it any more. */
  readonly readOpen: (file: number) => Uint8Array;
  /** Names in the folder, in any order. */
  readonly list: (folder: string) => readonly string[];
  readonly close: (file: number) => void;
  /** Lets other programs have their turn for so long. */
  readonly rest: (ms: number) => void;
  /** Makes the folder and those above it, 0700, durable; no error when it is there. */
  readonly makeFolder: (folder: string) => void;
}

/** A signal may interrupt a write again and again, but not for ever. */
const MAX_INTERRUPTS = 100;

/** Writes all the bytes, however little the disk takes at a time. A write that takes nothing fails with `no-progress`. */
export function writeAll(disk: Disk, file: number, bytes: Uint8Array): void {
  let done = 0;
  let interrupts = 0;
  while (done < bytes.length) {
    let count: number;
    try {
      count = disk.write(file, done === 0 ? bytes : bytes.subarray(done));
    } catch (error) {
      interrupts += 1;
      if (errorCode(error) === 'EINTR' && interrupts < MAX_INTERRUPTS) continue;
      throw error;
    }
    if (count <= 0) throw Object.assign(new Error('write took nothing'), { code: 'no-progress' });
    done += count;
  }
}

/** The system's name for an error (`ENOSPC`). An error without one is a bug of ours and is thrown on. */
export function errorCode(error: unknown): string {
  const code = systemCode(error);
  if (code === null) throw error;
  return code;
}

/** Closes what is being given up; it already failed, or everything in it is synced, so an error adds nothing. */
export function closeQuietly(disk: Disk, file: number): void {
  attempt(() => disk.close(file));
}

/** Runs a clean-up step whose failure changes nothing for the caller; true when it worked. */
export function attempt(step: () => void): boolean {
  try {
    step();
    return true;
  } catch (error) {
    errorCode(error);
    return false;
  }
}
