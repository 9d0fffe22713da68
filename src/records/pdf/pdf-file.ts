/**
 * A PDF 1.7 file from finished pages: plain ASCII, uncompressed, the same bytes for the same report.
 *
 * Texts stand in it only as hexadecimal strings, so that no text can end a string or begin an object. There are no
 * links, actions, attachments or scripts.
 */
import { EXTENDED } from './glyphs.ts';

/** Pages of one size, in points, with the title of the document. */
export interface PdfPages {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** Content streams, one a page. */
  readonly pages: readonly string[];
}

/** The file as text; every sign of it is one byte. */
export function pdfFile({ title, width, height, pages }: PdfPages): string {
  const names = EXTENDED.map(([, glyph]) => `/${glyph}`).join(' ');
  const extended = (base: string) =>
    `<< /Type /Font /Subtype /Type1 /BaseFont /${base} /Encoding << /Type /Encoding /BaseEncoding /WinAnsiEncoding /Differences [33 ${names}] >> >>`;
  const winAnsi = (base: string) =>
    `<< /Type /Font /Subtype /Type1 /BaseFont /${base} /Encoding /WinAnsiEncoding >>`;
  const FIRST_PAGE = 10;
  const kids = pages.map((_, i) => `${FIRST_PAGE + 2 * i} 0 R`);
  const fonts = [1, 2, 3, 4, 5, 6].map((n) => `/F${n} ${n + 3} 0 R`).join(' ');
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R /Lang (en) /ViewerPreferences << /DisplayDocTitle true >> >>',
    `<< /Type /Pages /Kids [${kids.join(' ')}] /Count ${pages.length} /MediaBox [0 0 ${width} ${height}] /Resources << /Font << ${fonts} >> >> >>`,
    `<< /Title ${unicodeText(title)} /Producer (Ohmward) >>`,
    winAnsi('Helvetica'),
    winAnsi('Helvetica-Bold'),
    '<< /Type /Font /Subtype /Type1 /BaseFont /Symbol >>',
    winAnsi('Helvetica-Oblique'),
    extended('Helvetica'),
    extended('Helvetica-Bold'),
    ...pages.flatMap((content, i) => [
      `<< /Type /Page /Parent 2 0 R /Contents ${FIRST_PAGE + 1 + 2 * i} 0 R >>`,
      `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
    ]),
  ];
  let file = '%PDF-1.7\n';
  const offsets = objects.map((object, i) => {
    const offset = file.length;
    file += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return offset;
  });
  const start = file.length;
  const entries = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`);
  file += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${entries.join('')}`;
  file += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R /Info 3 0 R >>\nstartxref\n${start}\n%%EOF\n`;
  return file;
}

/** A text string in UTF-16 with its byte-order mark, as hex. */
export function unicodeText(text: string): string {
  const units = [...Array(text.length).keys()].map((i) =>
    text.charCodeAt(i).toString(16).padStart(4, '0').toUpperCase(),
  );
  return `<FEFF${units.join('')}>`;
}
