/** The signs we use, in ASCII, for terminals and fonts that cannot be trusted with more. */

const SPELLING: Readonly<Record<string, string>> = {
  Ω: 'ohm', // U+03A9
  '\u2126': 'ohm',
  µ: 'u',
  μ: 'u',
  '°': 'deg',
  '±': '+/-',
  '×': 'x',
  '·': '.',
  '÷': '/',
  '…': '...',
  '→': '->',
  '←': '<-',
  '↑': '^',
  '↓': 'v',
  '≥': '>=',
  '≤': '<=',
  '≈': '~',
  '−': '-',
  '–': '-',
  '—': '-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '‹': '<',
  '›': '>',
  '²': '2',
  '³': '3',
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '✓': 'ok',
  '✔': 'ok',
  '✗': 'x',
  '●': '*',
  '○': 'o',
  '▲': '^',
  '▼': 'v',
  '▶': '>',
  '◀': '<',
  '█': '#',
  '▌': '-',
  '▏': '|',
  '░': '.',
  '▒': ':',
  '▓': '#',
  '─': '-',
  '│': '|',
  '┌': '+',
  '┐': '+',
  '└': '+',
  '┘': '+',
  '├': '+',
  '┤': '+',
  '┬': '+',
  '┴': '+',
  '┼': '+',
  '\u00a0': ' ',
};

/** `text` in printable ASCII (and line feeds): known signs spelled out, accents dropped, the rest as `?`. */
export function asciiText(text: string): string {
  if (/^[\x0a\x20-\x7e]*$/.test(text)) return text;
  return text
    .replace(/[^\x0a\x20-\x7e]/gu, (sign) => SPELLING[sign] ?? sign)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\x0a\x20-\x7e]/gu, (sign) => SPELLING[sign] ?? '?');
}
