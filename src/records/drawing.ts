/** Lines of characters as one small picture, so that they keep their columns in any font the reader has. */
import signColumns from '../source/sign-columns.ts';
import { textLines } from './text-lines.ts';

/** Words from right to left. What stands behind them would be drawn before them, up to the next words that run so. */
const RIGHT_TO_LEFT =
  /(?:[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]+ ?)+/gu;
/** A mark without width that runs from left to right (U+200E). */
const LEFT_AGAIN = '&#8206;';

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
  const columns = Math.max(0, ...safe.map((line) => signColumns(line)));
  const width = Math.ceil(columns * COLUMN) + 8;
  const height = safe.length * LINE + 8;
  const texts = safe.map(
    (line, index) =>
      `<text x="4" y="${(index + 1) * LINE}" xml:space="preserve" textLength="${(signColumns(line) * COLUMN).toFixed(1)}" lengthAdjust="spacingAndGlyphs">${safeFor(line).replace(RIGHT_TO_LEFT, `$&${LEFT_AGAIN}`)}</text>`,
  );
  return `<svg viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${safeFor(title)}" font-family="monospace" font-size="${SIZE}" fill="currentColor">${texts.join('')}</svg>\n`;
}
