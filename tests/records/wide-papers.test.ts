/**
 * Wide, marked and right-to-left signs in every field of a session, on every paper: no words lie over others or beyond the
 * page, no line loses its columns, and no text turns what stands beside it around.
 */
import { describe, expect, it } from 'vitest';
import { classTable } from '../../src/commands/drill/class-table.ts';
import type { ClassSummary } from '../../src/drill/class-summary.ts';
import { compareRecords } from '../../src/records/compare-records.ts';
import { drawingSvg } from '../../src/records/drawing.ts';
import { exportRecord } from '../../src/records/export-record.ts';
import { htmlOf } from '../../src/records/html.ts';
import { glyphsOf, pdfColumns, widthOf } from '../../src/records/pdf/glyphs.ts';
import type { RecordPicture } from '../../src/records/record-form.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { textLines } from '../../src/records/text-lines.ts';
import { wiringShapes } from '../../src/records/wiring-shapes.ts';
import signColumns from '../../src/source/sign-columns.ts';
import { fullWalk } from './full-walk.ts';
import { readCsvStrictly } from './readers/read-csv-strictly.ts';
import { readHtmlStrictly } from './readers/read-html-strictly.ts';
import { readMarkdownStrictly } from './readers/read-markdown-strictly.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { fileOf } from './sample-session.ts';
import { overlaps } from './wiring-overlaps.ts';

const TEXTS: Readonly<Record<string, string>> = {
  'two columns a sign': '点火线圈断路'.repeat(12),
  'two columns a sign, in words': '曲軸位置 感知器 '.repeat(9),
  'half-width syllables': 'ｶﾞｿﾘﾝ'.repeat(14),
  syllables: '크랭크 센서 '.repeat(12),
  'signs of several points': '👩‍🔧🚗'.repeat(20),
  'right to left, Hebrew': 'חיישן גל ארכובה '.repeat(8),
  'right to left, Arabic with numbers': 'مستشعر 4.98 V (دوران) '.repeat(8),
  'marks on letters': 'e\u0301n\u0303o\u0308'.repeat(40),
  'overrides and marks that turn a line around': 'V 0.5\u202e89.4\u202c \u2066x\u2069\u200f'.repeat(
    6,
  ),
  'letters from left to right, long': 'bulkhead '.repeat(20),
};
/** What turns the reading of a line, or hides in it. */
const TURNS = /[\u061c\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff]/;
const READERS = ['shop', 'customer'] as const;
const A4_RIGHT = 595.28 - 30;

describe.each(Object.entries(TEXTS))('%s', (_, text) => {
  const walk = fullWalk(() => text);
  const record = recordOf(walk.session, fileOf(walk).head);

  it('stands on no page beyond its edge, and in every form as a whole', () => {
    for (const reader of READERS) {
      for (const { lines } of readPdfStrictly(exportRecord(record, 'pdf', reader)).pages)
        for (const { x, size, text: line } of lines)
          expect(x + widthOf(glyphsOf(line), size), line).toBeLessThanOrEqual(A4_RIGHT);
      const html = exportRecord(record, 'html', reader);
      readHtmlStrictly(html);
      const markdown = exportRecord(record, 'markdown', reader);
      readMarkdownStrictly(markdown);
      expect([html, markdown].filter((paper) => TURNS.test(paper))).toEqual([]);
      // Each row of a table has its columns.
      for (const table of markdown.split('\n\n').filter((part) => part.startsWith('| ')))
        expect(new Set(table.trimEnd().split('\n').map(bars)).size).toBe(1);
    }
    const csv = exportRecord(record, 'csv', 'shop');
    expect(new Set(readCsvStrictly(csv).map((row) => row.length)).size).toBe(1);
    expect(csv).not.toMatch(TURNS);
    readHtmlStrictly(htmlOf(compareRecords(record, record)));
  });

  it('keeps what stands beside it in its place: in one line with it each text is on its own', () => {
    const html = exportRecord(record, 'html', 'customer');
    const [below] = /(?<=<\/h1>\n)<p.*?<\/p>/s.exec(html)!;
    expect(below).toMatch(/^<p><bdi>[^<]+<\/bdi>, <bdi>2026-03-04 08:30 [^<]*<\/bdi><\/p>$/s);
  });

  it('lies over nothing in the picture of the wiring, in HTML and PDF', () => {
    const places = (['left', 'along', 'right'] as const).map((at) => ({ wire: 0, at }));
    const readings = [
      ...places,
      { wire: null, at: 'left' as const },
      { wire: null, at: 'right' as const },
      { wire: null, at: 'elsewhere' as const },
    ].map((place, at) => ({ ...place, reading: at + 1, against: text.slice(0, 40) }));
    const picture: RecordPicture = {
      left: text,
      right: text,
      wires: [{ words: 'signal wire', left: text, right: text, module: true }],
      readings,
      faults: [{ wire: null, at: 'left', words: text, touches: null }],
    };
    const shown = readings.map(({ reading }) => ({
      number: reading,
      reading,
      test: text,
      found: text.slice(0, 40),
      expected: '4.9 to 5.1 V',
      after: '',
    }));
    const inHtml = wiringShapes(picture, shown, true);
    expect(overlaps(inHtml.shapes, (line) => signColumns(safe(line)))).toEqual([]);
    const inPdf = wiringShapes(picture, shown, true, pdfColumns);
    expect(overlaps(inPdf.shapes, (line) => pdfColumns(safe(line)))).toEqual([]);
  });

  it('moves no edge of a drawing', () => {
    const pin = [...text].slice(0, 8).join('');
    const svg = drawingSvg('Wiring', [`| ${pin} |`, '| feed |'], (line) => line);
    const [wide, plain] = [...svg.matchAll(/textLength="([\d.]+)"/g)].map(([, width]) =>
      Number(width),
    );
    const drawn = textLines(`| ${pin} |`).join(' ');
    expect(wide! / plain!).toBeCloseTo(signColumns(drawn) / '| feed |'.length, 1);
    expect(Number(/viewBox="0 0 (\d+)/.exec(svg)![1])).toBeGreaterThanOrEqual(wide!);
  });

  it('moves no column of the table of a class', () => {
    const row = { procedure: text, level: 'novice', points: 80, right: true, minutes: 12 };
    const rows = ['Ada', text].map((student) => ({ ...row, student, yardstickMinutes: 9 }));
    const none = { students: 2, finished: 2, meanPoints: null, medianPoints: null, misses: [] };
    const summary = { ...none, rows } as unknown as ClassSummary;
    const [, ada, other] = classTable(summary, []).split('\n');
    const columnOfLevel = (line: string) => signColumns(line.slice(0, line.indexOf('novice')));
    expect(columnOfLevel(other!)).toBe(columnOfLevel(ada!));
    expect(signColumns(other!)).toBeLessThanOrEqual(80);
  });
});

it('two pins from right to left on one line of a drawing stay on their sides', () => {
  const svg = drawingSvg('Wiring', ['| אדום כהה |---| שחור |'], (line) => line);
  expect(svg).toContain('| אדום כהה &#8206;|---| שחור &#8206;|');
});

function bars(row: string): number {
  return row.replace(/\\\|/g, '').split('|').length;
}

function safe(text: string): string {
  return textLines(text).join(' ');
}
