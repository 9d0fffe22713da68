import { describe, expect, it } from 'vitest';
import { glyphsOf } from '../../src/records/pdf/glyphs.ts';
import { transliterate } from '../../src/records/pdf/transliterate.ts';
import { pdfOf } from '../../src/records/pdf.ts';
import type { Report, Table } from '../../src/records/report-form.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';

function reportWith(...blocks: Report['sections'][number]['blocks']): Report {
  return {
    title: 'Report',
    subtitle: [],
    warnings: [],
    sections: [{ heading: 'Words', blocks }],
    origin: 'a test',
    id: 'lab-1',
    head: 'f'.repeat(64),
  };
}

/** All words of the file, by column. */
function wordsOf(report: Report): string {
  return readPdfStrictly(pdfOf(report))
    .pages.flatMap((page) => [...page.columns.values()])
    .join('\n');
}

describe('words', () => {
  it('no sign has a code that the encoding leaves out', () => {
    // Windows-1252 defines nothing at these.
    const LEFT_OUT = ['81', '8D', '8F', '90', '9D'];
    for (let point = 0; point <= 0x2fff; point += 1)
      for (const { font, codes } of glyphsOf(String.fromCodePoint(point)))
        if (font === 'F1' || font === 'F4')
          for (const code of codes.match(/../g) ?? [])
            expect(LEFT_OUT, `U+${point.toString(16)}`).not.toContain(code);
  });

  it.each([
    ['windows-1252', 'Ærøskøbing — “naïve” façade, 5 €, ½ · 20 °C ± 3 µV²'],
    ['Central Europe and the Baltic', 'Łódź, Győr, Čačak, Şişli, Țepeș, Žatec, Ķegums, İzmir'],
    ['measuring', '4.7 kΩ ≤ R ≤ ∞, ΔU ≈ 3 V, α→β ≠ π'],
  ])('%s is written as it is, with no spelling help', (_, text) => {
    const report = reportWith({ kind: 'text', text });
    expect(wordsOf(report)).toContain(text.replace(/\s/g, ''));
    expect(pdfOf(report)).not.toContain('ActualText');
  });

  it.each([
    ['Ελένη', 'Greek with its accents, plain letters to see'],
    ['Иванов Пётр', 'Cyrillic'],
    ['שלום', 'Hebrew'],
    ['أحمد', 'Arabic'],
    ['ひらがな カタカナ', 'kana'],
    ['한국어', 'Korean'],
    ['漢字', 'Chinese characters'],
    ['Nguyễn', 'Vietnamese'],
    ['ไทย', 'Thai'],
    ['🚗', 'a picture'],
  ])('%s (%s) can be copied as it was written, and a note says what italics mean', (text) => {
    const report = reportWith({ kind: 'text', text });
    expect(wordsOf(report).normalize('NFC')).toContain(text.replace(/\s/g, '').normalize('NFC'));
    expect(wordsOf(report)).toContain('Wordsinitalics');
  });

  it.each([
    ['щ', 'shch'],
    ['Щ', 'Shch'],
    ['ש', 'sh'],
    ['ق', 'q'],
    ['シ', 'shi'],
    ['한', 'han'],
    ['글', 'geul'],
    ['ễ', 'e'],
    ['字', null],
    ['ก', null],
  ])('%s is spelled %s', (sign, spelled) => {
    expect(transliterate(sign)).toBe(spelled);
  });
});

describe('pages', () => {
  const table: Table = {
    kind: 'table',
    caption: 'Many',
    heads: ['No.', 'What'],
    widths: [1, 3],
    rows: Array.from({ length: 200 }, (_, i) => [
      { parts: [`${i}`] },
      { parts: [`row ${i}`, 'below'], tone: 'bad', gauge: { low: 1, high: null, value: i } },
    ]),
  };
  const { pages } = readPdfStrictly(pdfOf(reportWith(table)));
  const linesOf = (page: (typeof pages)[number]) => page.lines.map(({ text }) => text);

  it('repeats the head of a table on every page it runs over', () => {
    expect(pages.length).toBeGreaterThan(5);
    for (const page of pages) expect(linesOf(page)).toContain('What');
  });

  it('has number, session and head at the foot of each', () => {
    for (const [i, page] of pages.entries()) {
      expect(linesOf(page)).toContain(`Page ${i + 1} of ${pages.length}`);
      expect(linesOf(page)).toContain('Session lab-1');
      expect(linesOf(page)).toContain(`Head ${'f'.repeat(64)}`);
    }
  });

  it('loses no row and breaks none in two', () => {
    const rows = pages.flatMap((page, number) =>
      page.lines
        .filter(({ text }) => text.startsWith('row '))
        .map(({ text, y }) => ({ text, y, number })),
    );
    expect(rows.map(({ text }) => text)).toEqual(table.rows.map((_, i) => `row ${i}`));
    for (const page of pages) {
      const below = linesOf(page).filter((text) => text === 'below').length;
      expect(below).toBe(linesOf(page).filter((text) => text.startsWith('row ')).length);
    }
  });

  it('goes on with a cell taller than a page under a repeated head, and loses no line', () => {
    const tall = Array.from({ length: 150 }, (_, i) => `line ${i}`);
    const file = pdfOf(reportWith({ ...table, rows: [[{ parts: ['1'] }, { parts: tall }]] }));
    const read = readPdfStrictly(file).pages;
    expect(read.length).toBeGreaterThan(1);
    for (const page of read) expect(linesOf(page)).toContain('What');
    const lines = read.flatMap(linesOf).filter((text) => text.startsWith('line '));
    expect(lines).toEqual(tall);
  });

  it('stays on the paper, however long a word or a name is', () => {
    const long = 'x'.repeat(3000);
    const file = pdfOf({
      ...reportWith(
        { kind: 'facts', rows: [[long, long]] },
        { kind: 'text', text: long },
        { kind: 'list', items: [long] },
        {
          kind: 'table',
          caption: long,
          heads: ['a', 'b'],
          widths: [1, 9],
          rows: [[{ parts: [long] }, { parts: [] }]],
        },
        { kind: 'sign', labels: ['Name'] },
      ),
      id: long,
    });
    for (const page of readPdfStrictly(file).pages)
      for (const { x, y, text, size } of page.lines) {
        expect(y).toBeGreaterThan(20);
        expect(y).toBeLessThan(841);
        // An x is half the size wide in every weight but the bold one (from memory: 500 and 556 thousandths).
        const width = /^x+…?$/.test(text) ? text.length * 0.5 * size : 0;
        expect(x + width).toBeLessThan(595.28 - 30);
      }
  });

  it('an empty report is one page', () => {
    expect(readPdfStrictly(pdfOf(reportWith())).pages).toHaveLength(1);
  });

  it('the same report gives the same bytes', () => {
    expect(pdfOf(reportWith(table))).toBe(pdfOf(reportWith(table)));
  });
});
