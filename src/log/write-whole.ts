/**
 * Writes a file as a whole, for transcripts and exports: the old file or the new one, never half of either.
 *
 * Temporary file in the same folder, synced, renamed over, folder synced. Our own, since the usual packages ignore
 * how many bytes a write took and put a truncated file in the place of a good one when the disk is full.
 */
import { randomBytes } from 'node:crypto';
import { dirname, join } from 'node:path';
import { attempt, closeQuietly, type Disk, errorCode, writeAll } from './disk.ts';
import { done, failed, type Tried } from './write-problem.ts';

/** Puts `text` under `path`, replacing what was there; after a failure the old file or the new one is there, whole. */
export function writeWholeFile(
  disk: Disk,
  path: string,
  text: string | Uint8Array,
): Tried<{ readonly bytes: number }> {
  const bytes = typeof text === 'string' ? Buffer.from(text) : text;
  const folder = dirname(path);
  const draft = join(folder, `.ohmward-${randomBytes(6).toString('hex')}.tmp`);
  let file: number | null = null;
  let renamed = false;
  try {
    disk.makeFolder(folder);
    file = disk.openNew(draft);
    writeAll(disk, file, bytes);
    disk.syncData(file);
    const facts = disk.factsOpen(file);
    if (facts.bytes !== bytes.length) throw Object.assign(new Error(), { code: 'no-progress' });
    disk.rename(draft, path);
    renamed = true;
    disk.syncFolder(folder);
    return done({ bytes: bytes.length });
  } catch (error) {
    const code = errorCode(error);
    if (file !== null && !renamed) attempt(() => disk.remove(draft));
    const next = ', or choose another folder, and write it again';
    return failed({ code, path, safeEvents: 0, canRetry: true, whole: true, next });
  } finally {
    if (file !== null) closeQuietly(disk, file);
  }
}
