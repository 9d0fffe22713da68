/** A free text as harmless lines: the one way words reach a report. */
import { safeText } from '../source/safe-text.ts';

/** The text by lines, each through `safeText`; blank lines at the ends are dropped, an empty text has no line. */
export function textLines(text: string): string[] {
  const lines = safeText(text, { lines: true }).split('\n');
  while (lines.length > 0 && lines[0]!.trim() === '') lines.shift();
  while (lines.length > 0 && lines.at(-1)!.trim() === '') lines.pop();
  return lines;
}
