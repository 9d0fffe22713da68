/** A file of comma-separated text as the program reads it. */
import { CsvReader, type ReadOptions, type ReadResult } from '../../src/waveform/read-csv.ts';

/** Reads `text` in pieces of `piece` bytes. */
export function readCsv(
  text: string,
  options: Partial<ReadOptions> = {},
  piece = 1 << 16,
): ReadResult {
  const reader = new CsvReader({ file: 'capture.csv', ...options });
  const bytes = new TextEncoder().encode(text);
  for (let from = 0; from < bytes.length; from += piece)
    if (!reader.push(bytes.subarray(from, from + piece))) break;
  return reader.end();
}
