/** A capture as comma-separated text with a heading and a time column: what `read-csv.ts` reads back. */
import type { Capture } from './capture.ts';

/** Times to a tenth of a microsecond, values to a tenth of a millivolt or milliampere. */
const TIME_DIGITS = 7;
const VALUE_DIGITS = 4;

/** The text, a line for each sample. */
export function csvOfCapture({ rateHz, startSeconds, channels }: Capture): string {
  const head = ['time (s)', ...channels.map(({ name, unit }) => `${name} (${unit})`)].join(',');
  const count = channels[0]?.samples.length ?? 0;
  const rows = Array.from({ length: count }, (_, i) =>
    [
      (startSeconds + i / rateHz).toFixed(TIME_DIGITS),
      ...channels.map(({ samples }) => samples[i]!.toFixed(VALUE_DIGITS)),
    ].join(','),
  );
  return `${head}\n${rows.join('\n')}\n`;
}
