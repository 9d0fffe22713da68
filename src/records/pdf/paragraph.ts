/** Texts on the canvas, wrapped, over pages if they must be. */

import { textLines } from '../text-lines.ts';
import { BODY_WIDTH, type Canvas, need, PAGE, putGlyphs } from './canvas.ts';
import { type Glyph, glyphsOf, wrapGlyphs } from './glyphs.ts';

/** Size of texts in tables, in points. */
export const SMALL = 8;
/** Line height for a font size. */
export const LEAD = 1.28;

/** How a text is set; the whole width when nothing is said. */
export interface TextStyle {
  readonly size: number;
  readonly bold?: boolean;
  readonly x?: number;
  readonly width?: number;
}

/** A text as rows of glyphs that fit the width; by default that of the page body. */
export function wrappedLines(
  text: string,
  { size, bold = false, width = BODY_WIDTH }: TextStyle,
): Glyph[][] {
  return textLines(text).flatMap((line) => wrapGlyphs(glyphsOf(line, bold), size, width));
}

/** A text, over pages if it must be. */
export function paragraph(canvas: Canvas, text: string, style: TextStyle): void {
  const lead = style.size * LEAD;
  for (const line of wrappedLines(text, style)) {
    need(canvas, lead);
    putGlyphs(canvas, line, {
      x: style.x ?? PAGE.left,
      y: canvas.y + style.size,
      size: style.size,
    });
    canvas.y += lead;
  }
}
