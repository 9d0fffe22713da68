/** A meter's accuracy as data sheets print it. */

/**
 * `0.5 % + 3`, `±(0.5% + 3 digits)`, `0.08%rdg+2dgt`, `1 %`; null for anything else. `ofReading` is a fraction of the
 * reading, `digits` counts of the last digit.
 */
export function parseAccuracy(text: string): { ofReading: number; digits: number } | null {
  if (text.length > 60) return null;
  const plain = text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/\+\/-|[±()]/g, ' ')
    .replace(/(?<![a-z])(?:of|reading|rdg|counts?|digits?|dgts?|d|c)(?![a-z])/g, ' ')
    .replace(/\s+/g, '')
    .replace(/,/g, '.');
  const match = /^(\d{1,3}(?:\.\d{1,6})?)%(?:\+(\d{1,4}))?$/.exec(plain);
  if (!match) return null;
  return { ofReading: Number(match[1]) / 100, digits: Number(match[2] ?? 0) };
}
