/** Lines of characters as one small picture, so that they keep their columns in any font the reader has. */
import { textLines } from './text-lines.ts';

const SIZE = 12;
const COLUMN = 7.3;
const LINE = 15;

/** `safeFor` makes a text fit for markup. */
export function drawingSvg(
  title: string,
  lines: readonly string[],
  safeFor: (text: string) => string,
): string {
  const safe = lines.map((line) => textLines(line).join(' '));
  const columns = Math.max(0, ...safe.map((line) => [...line].length));
  const width = Math.ceil(columns * COLUMN) + 8;
  const height = safe.length * LINE + 8;
  const texts = safe.map(
    (line, index) =>
      `<text x="4" y="${(index + 1) * LINE}" xml:space="preserve" textLength="${([...line].length * COLUMN).toFixed(1)}" lengthAdjust="spacingAndGlyphs">${safeFor(line)}</text>`,
  );
  return `<svg viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${safeFor(title)}" font-family="monospace" font-size="${SIZE}" fill="currentColor">${texts.join('')}</svg>\n`;
}
