/**
 * PDF as our reports may hold it, read through its cross-reference table: only the names, operators and string forms
 * we use; anything else throws. Texts come back by column, so that a cell that runs over lines is in one piece.
 */

const NAMES = new Set(
  (
    'Type Catalog Pages Lang ViewerPreferences DisplayDocTitle Kids Count MediaBox Resources Font Title Producer ' +
    'Subtype Type1 BaseFont Helvetica Helvetica-Bold Helvetica-Oblique Symbol Encoding WinAnsiEncoding BaseEncoding ' +
    'Differences Page Parent Contents Length Size Root Info F1 F2 F3 F4 F5 F6 Span ActualText'
  ).split(' '),
);
const OPERATORS = new Set('BT ET Tm Tf Tj BDC EMC q Q g rg G w m l S re f'.split(' '));

interface PdfPage {
  /** Text by the place where its lines begin, in thousandths of a point from the left; blanks left out. */
  readonly columns: ReadonlyMap<string, string>;
  readonly lines: readonly { x: number; y: number; size: number; text: string }[];
}
interface PdfContent {
  readonly title: string;
  readonly pages: readonly PdfPage[];
}

/** Reads a file; codes become signs by windows-1252, the Differences of the font, or our table of Symbol. */
export function readPdfStrictly(file: string): PdfContent {
  if (!/^[\n\x20-\x7e]*$/.test(file)) throw new Error('PDF: not plain ASCII');
  const objects = readObjects(file);
  const glyphNames = [...(objects.get(8) ?? '').matchAll(/\/([A-Za-z]+)/g)].map(
    (match) => match[1]!,
  );
  const extended = glyphNames.slice(glyphNames.indexOf('Differences') + 1);
  const pageIds = [
    ...(/\/Kids \[([^\]]*)\]/.exec(objects.get(2) ?? '')?.[1] ?? '').matchAll(/(\d+) 0 R/g),
  ];
  const pages = pageIds.map((match) => {
    const contents = /\/Contents (\d+) 0 R/.exec(objects.get(Number(match[1])) ?? '')?.[1];
    const stream = /^<< \/Length (\d+) >>\nstream\n([\s\S]*)\nendstream$/.exec(
      objects.get(Number(contents)) ?? '',
    );
    if (!stream || stream[2]!.length !== Number(stream[1]))
      throw new Error('PDF: a stream of another length');
    return readPage(stream[2]!, extended);
  });
  const title = /\/Title <FEFF([0-9A-F]*)>/.exec(objects.get(3) ?? '')?.[1];
  if (title === undefined) throw new Error('PDF: no title');
  return { title: utf16(title), pages };
}

function readObjects(file: string): Map<number, string> {
  const start = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(file)?.[1]);
  const table = /^xref\n0 (\d+)\n0000000000 65535 f \n((?:\d{10} 00000 n \n)*)trailer\n/.exec(
    file.slice(start),
  );
  if (!table) throw new Error('PDF: no cross-reference table where it should be');
  const offsets = [...table[2]!.matchAll(/(\d{10}) 00000 n \n/g)].map((match) => Number(match[1]));
  if (offsets.length !== Number(table[1]) - 1) throw new Error('PDF: the table has another length');
  const objects = new Map<number, string>();
  let end = '%PDF-1.7\n'.length;
  for (const [i, offset] of offsets.entries()) {
    if (offset !== end) throw new Error(`PDF: something stands before object ${i + 1}`);
    const next = offsets[i + 1] ?? start;
    const body = file.slice(offset, next);
    const head = `${i + 1} 0 obj\n`;
    if (!body.startsWith(head) || !body.endsWith('\nendobj\n'))
      throw new Error('PDF: no object there');
    const content = body.slice(head.length, -'\nendobj\n'.length);
    objects.set(i + 1, content);
    end = next;
    const isFont = content.includes('/Differences');
    for (const [, name = ''] of content.matchAll(/\/([A-Za-z0-9.-]+)/g))
      if (!NAMES.has(name) && !(isFont && /^[A-Za-z]+$/.test(name)))
        throw new Error(`PDF: name /${name}`);
  }
  return objects;
}

function readPage(stream: string, extended: readonly string[]): PdfPage {
  const lines: { x: number; y: number; size: number; text: string }[] = [];
  let operands: string[] = [];
  let line: { x: number; y: number; size: number; text: string } | null = null;
  let font = '';
  let instead: string | null = null;
  const tokens =
    stream.match(/<<|>>|<[0-9A-F]*>|\/[A-Za-z0-9]+|-?\d+(?:\.\d+)?|[A-Za-z]+|\S/g) ?? [];
  for (const token of tokens) {
    if (!/^[A-Za-z]/.test(token)) {
      if (!/^(?:<<|>>|<[0-9A-F]*>|\/[A-Za-z0-9]+|-?\d+(?:\.\d+)?)$/.test(token))
        throw new Error(`PDF: operand ${token}`);
      operands.push(token);
      continue;
    }
    if (!OPERATORS.has(token)) throw new Error(`PDF: operator ${token}`);
    if (token === 'Tm')
      line = { x: Number(operands[4]), y: Number(operands[5]), size: 0, text: '' };
    if (token === 'Tf') {
      font = operands[0]!.slice(1);
      if (line) line.size = Number(operands[1]);
    }
    if (token === 'BDC') instead = utf16(operands[3]!.slice(5, -1));
    if (token === 'Tj' && line)
      line.text += instead ?? decode(operands[0]!.slice(1, -1), font, extended);
    if (token === 'EMC') instead = null;
    if (token === 'ET' && line) {
      lines.push(line);
      line = null;
    }
    operands = [];
  }
  const columns = new Map<string, string>();
  for (const { x, text } of lines)
    columns.set(String(x), (columns.get(String(x)) ?? '') + text.replace(/\s/g, ''));
  return { columns, lines };
}

function utf16(hex: string): string {
  const units = hex.match(/[0-9A-F]{4}/g) ?? [];
  return String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16)));
}

/** Code points of 0x80 to 0x9F in windows-1252 (WHATWG Encoding Standard, index-windows-1252). */
const WINDOWS_1252 =
  '20AC 0081 201A 0192 201E 2026 2020 2021 02C6 2030 0160 2039 0152 008D 017D 008F 0090 2018 2019 201C 201D 2022 2013 2014 02DC 2122 0161 203A 0153 009D 017E 0178'
    .split(' ')
    .map((point) => Number.parseInt(point, 16));
const ACCENTS: Readonly<Record<string, string>> = {
  acute: '\u0301',
  breve: '\u0306',
  caron: '\u030c',
  cedilla: '\u0327',
  commaaccent: '\u0326',
  dotaccent: '\u0307',
  hungarumlaut: '\u030b',
  macron: '\u0304',
  ogonek: '\u0328',
  ring: '\u030a',
};
const NAMED: Readonly<Record<string, string>> = {
  Dcroat: 'Đ',
  dcroat: 'đ',
  Lslash: 'Ł',
  lslash: 'ł',
  dotlessi: 'ı',
};

function decode(hex: string, font: string, extended: readonly string[]): string {
  const codes = (hex.match(/[0-9A-F]{2}/g) ?? []).map((code) => Number.parseInt(code, 16));
  if (font === 'F5' || font === 'F6')
    return codes.map((code) => letter(extended[code - 33] ?? '')).join('');
  if (font === 'F3') return codes.map((code) => SYMBOL[code] ?? '?').join('');
  return String.fromCodePoint(...codes.map((code) => WINDOWS_1252[code - 0x80] ?? code));
}

function letter(name: string): string {
  const known = NAMED[name];
  if (known !== undefined) return known;
  // Unicode calls the comma below G, K, L, N and R a cedilla.
  const below = /^[GKLNRgklnr]commaaccent$/.test(name);
  const accent = below ? ACCENTS['cedilla'] : ACCENTS[name.slice(1)];
  if (accent === undefined) throw new Error(`PDF: glyph ${name}`);
  return `${name[0]}${accent}`.normalize('NFC');
}

/** Codes of the Symbol font (ISO 32000-1, annex D.5; from memory). */
const SYMBOL: Readonly<Record<number, string>> = {
  45: '−',
  163: '≤',
  165: '∞',
  174: '→',
  179: '≥',
  185: '≠',
  187: '≈',
  ...run(65, 'ΑΒΧΔΕΦΓΗΙϑΚΛΜΝΟΠΘΡΣΤΥςΩΞΨΖ'),
  ...run(97, 'αβχδεφγηιϕκλμνοπθρστυϖωξψζ'),
};

function run(first: number, signs: string): Record<number, string> {
  return Object.fromEntries([...signs].map((sign, i) => [first + i, sign]));
}
