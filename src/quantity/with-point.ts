/** A decimal comma, as much of the world types it; values in files have a point. */

/** What begins like a number with digits behind a comma, but not groups of three: `1,000` may be a thousand. */
const DECIMAL_COMMA = /(\d),(?!\d{3}(?!\d))(?=\d)/g;

/** `4,5 V` as `4.5 V`; null for a text that has no such comma. */
export function withPoint(text: string): string | null {
  const pointed = text.replace(DECIMAL_COMMA, '$1.');
  return pointed === text ? null : pointed;
}
