/** A capture as a file, for tests of reading. */
import type { Capture } from '../../src/waveform/capture.ts';
import { CsvReader, type ReadOptions, type ReadResult } from '../../src/waveform/read-csv.ts';

/** Comma-separated text with a heading and a time column. */
export function csvOf(capture: Capture, digits = 4): string {
  const names = capture.channels.map(({ name, unit }) => `${name} (${unit})`);
  const count = capture.channels[0]?.samples.length ?? 0;
  const rows = Array.from({ length: count }, (_, i) => {
    const time = capture.startSeconds + i / capture.rateHz;
    return [time.toFixed(7), ...capture.channels.map((it) => it.samples[i]!.toFixed(digits))].join(
      ',',
    );
  });
  return `${['time (s)', ...names].join(',')}\n${rows.join('\n')}\n`;
}

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
