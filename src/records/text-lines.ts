/** A free text as harmless lines: the one way words reach a report. */
import { safeText } from '../source/safe-text.ts';

/** The text by lines, each through `safeText`; blank lines at the ends are dropped, an empty text has no line. */
export function textLines(text: string): string[] {
  const lines = safeText(text, { lines: true }).split('\n');
  const isFilled = (line: string) => line.trim() !== '';
  return lines.slice(Math.max(0, lines.findIndex(isFilled)), lines.findLastIndex(isFilled) + 1);
}
