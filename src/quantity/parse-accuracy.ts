/** A meter's accuracy as data sheets print it. */

/** `0.5 % + 3`, `±(0.5% + 3 digits)`, `0.08 % rdg + 2 dgt`, `1 %`; null for anything else. */
export function parseAccuracy(text: string): { ofReading: number; digits: number } | null {
  if (text.length > 60) return null;
  const plain = text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/\+\/-|[±()]/g, ' ')
    .replace(/\b(?:of|reading|rdg|counts?|digits?|dgts?|d|c)\b/g, ' ')
    .replace(/\s+/g, '')
    .replace(/,/g, '.');
  const match = /^(\d{1,3}(?:\.\d{1,6})?)%(?:\+(\d{1,4}))?$/.exec(plain);
  if (!match) return null;
  return { ofReading: Number(match[1]) / 100, digits: Number(match[2] ?? 0) };
}
