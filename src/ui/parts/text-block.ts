/** Paragraphs to lines of a width, so that a screen knows how many rows its text takes. */
import type { DrawingStyle } from '../term/colour.ts';
import { shownText } from '../term/use-look.ts';
import type { Colour } from './safe-words.tsx';
import { wrapWords } from './wrap-words.ts';

/** A text before it is broken into lines. */
export interface Paragraph {
  readonly text: string;
  readonly bold?: boolean;
  readonly colour?: Colour;
  /** Extra indent of continued lines. */
  readonly hang?: number;
  /** A drawing: lines are cut and not wrapped. */
  readonly drawn?: boolean;
}

/** One line after that, no wider than the screen. */
export interface TextLine {
  readonly text: string;
  readonly bold: boolean;
  readonly colour: Colour | undefined;
}

/** The lines of a text, each fitting the width. */
export function textBlock(
  paragraphs: readonly (Paragraph | string)[],
  width: number,
  look: DrawingStyle,
): TextLine[] {
  return paragraphs.flatMap((paragraph) => {
    const { text, bold, colour, hang, drawn }: Paragraph =
      typeof paragraph === 'string' ? { text: paragraph } : paragraph;
    const shown = shownText(text, look, { lines: true });
    const lines = drawn ? shown.split('\n') : wrapWords(shown, width, { hang: hang ?? 0 });
    return lines.map((line) => ({ text: line, bold: bold ?? false, colour }));
  });
}
