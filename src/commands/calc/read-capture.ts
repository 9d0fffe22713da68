/** A capture file from the disk: text in chunks, sound files whole. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { sha256 } from '../../log/hash.ts';
import { CsvReader, type ReadResult } from '../../waveform/read-csv.ts';
import { isWav, readWav } from '../../waveform/read-wav.ts';

/** Four channels of five million samples of eight bytes, and their heading. */
const WAV_BYTES_MAX = 170_000_000;
const CHUNK_BYTES = 1 << 18;

/** What was read, and the SHA-256 of the file's bytes; empty where the file could not be read to its end. */
export type ReadCapture = ReadResult & { readonly sha256: string };

/** Reads `file`, relative to `cwd`. What the disk refuses comes back as an issue, like any other mistake. */
export async function readCapture(
  file: string,
  cwd: string,
  options: { readonly rateHz?: number; readonly fullScaleVolts?: number },
): Promise<ReadCapture> {
  const path = resolve(cwd, file);
  try {
    const about = await stat(path);
    if (!about.isFile())
      return problem(file, 'not-a-file', 'this is not a file', 'name a capture file');
    const reader = new CsvReader({ ...options, file });
    const digest = createHash('sha256');
    let first = true;
    for await (const chunk of createReadStream(path, { highWaterMark: CHUNK_BYTES })) {
      const bytes = chunk as Uint8Array;
      if (first && isWav(bytes)) {
        if (about.size > WAV_BYTES_MAX)
          return problem(file, 'file-too-large', 'this sound file is too large', 'cut it shorter');
        const whole = await readFile(path);
        return { ...readWav(whole, { ...options, file }), sha256: sha256(whole) };
      }
      first = false;
      digest.update(bytes);
      if (!reader.push(bytes)) return { ...reader.end(), sha256: '' };
    }
    return { ...reader.end(), sha256: digest.digest('hex') };
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code;
    if (code === undefined) throw fault;
    const words =
      code === 'ENOENT' ? 'there is no such file' : `this file cannot be read (${code})`;
    return problem(file, 'cannot-read', words, 'check the name and the rights');
  }
}

function problem(file: string, code: string, words: string, fix: string): ReadCapture {
  const at = { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
  return { capture: null, issues: [{ code, severity: 'error', at, words, fix }], sha256: '' };
}
