/**
 * Columns that text takes, with a short way for the signs screens are made of.
 *
 * The library's own way compiles the pattern of all emoji at its first use, a fifth of the time to the first frame.
 * The bundle gives this function to every library in it that measures text (`scripts/build.mjs`), Ink among them.
 */
import stringWidth, { type Options } from 'string-width';

/**
 * One column each, whatever stands beside them: printable ASCII and Latin letters, dashes and quotes, arrows,
 * box drawing, blocks, braille. None is an emoji, joins another or is joined (Unicode 15: East_Asian_Width narrow,
 * neutral or ambiguous, no Extended_Pictographic, no Mark).
 */
const ONE_COLUMN =
  /^[ -~\u00a1-\u00a8\u00aa-\u00ac\u00af-\u02ff\u2010-\u2027\u2190-\u2193\u2500-\u259f\u2800-\u28ff]*$/;

/**
 * The Thai and Lao sign AM: terminals give it a column of its own, though it joins the sign before it and the library counts
 * only that one.
 */
const AM = /[\u0e33\u0eb3]/g;

/** Columns of `text` on a terminal; ambiguous signs are narrow unless `options` say otherwise. */
export default function signColumns(text: string, options?: Options): number {
  if (options === undefined && ONE_COLUMN.test(text)) return text.length;
  return stringWidth(text.replace(AM, 'm'), options);
}
