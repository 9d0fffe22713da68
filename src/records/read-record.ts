/** Reads a session file into its record. A damaged one gives the record of what stands before the damage. */
import type { Disk } from '../log/disk.ts';
import { type FileFlaw, readSessionFile, type SessionFile } from '../log/read-session-file.ts';
import type { SessionRecord } from './record-form.ts';
import { recordOf } from './session-record.ts';

/** The record of a file, as far as it can be believed, or why there is none. */
export type ReadRecord =
  | ({
      readonly ok: true;
      readonly record: SessionRecord;
      readonly state: 'whole' | 'torn-tail' | 'damaged';
      /** What is wrong, without a full stop; null for a whole session. */
      readonly words: string | null;
      /** Where a damaged one cannot be believed any more. */
      readonly flaw: FileFlaw | null;
    } & SessionFile)
  | { readonly ok: false; readonly words: string; readonly fix: string };

/** Reads the session that ends in the file `path`. */
export function readRecord(disk: Disk, path: string): ReadRecord {
  const read = readSessionFile(disk, path);
  if (read.ok) return recordFrom(read, null);
  if (read.stands) return recordFrom(read.stands, read.flaw);
  const { problem, fix } = read.problem;
  return { ok: false, words: `no session can be read from it: ${problem}`, fix };
}

function recordFrom(file: SessionFile, flaw: FileFlaw | null): ReadRecord {
  const { session, head, log } = file;
  return {
    ...file,
    ok: true,
    record: recordOf(session, head, file.judgedOtherwise),
    state: flaw ? 'damaged' : log.verdict,
    words: flaw?.words ?? log.words ?? null,
    flaw,
  };
}
