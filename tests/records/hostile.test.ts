/** Nothing in a session can do anything in an export, and every word of it can be read back. */
import { describe, expect, it } from 'vitest';
import { exportRecord } from '../../src/records/export-record.ts';
import type { SessionRecord } from '../../src/records/record-form.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { transcriptOf } from '../../src/records/transcript.ts';
import { safeText } from '../../src/source/safe-text.ts';
import { shareOf } from '../campaign.ts';
import { fullWalk } from './full-walk.ts';
import { PAYLOADS } from './payloads.ts';
import { readCsvStrictly } from './readers/read-csv-strictly.ts';
import { readHtmlStrictly } from './readers/read-html-strictly.ts';
import { readMarkdownStrictly } from './readers/read-markdown-strictly.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { fileOf } from './sample-session.ts';

/** What a terminal obeys or hides: no text form of an export may hold it. */
const ACTIVE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/u;

interface Case {
  readonly record: SessionRecord;
  /** The words of each field as they were put in. */
  readonly put: ReadonlyMap<string, string>;
}

/** Each field takes another payload, `shift` places on: over all shifts every field meets every payload. */
function caseOf(shift: number): Case {
  const put = new Map<string, string>();
  const walk = fullWalk((field) => {
    const known = [...put.keys()].indexOf(field);
    const place = known < 0 ? put.size : known;
    const words = `${PAYLOADS[(shift + place) % PAYLOADS.length]} q${place}q`;
    // These are trimmed when they are recorded.
    put.set(field, ['typed', 'reason', 'note'].includes(field) ? words.trim() : words);
    return words;
  });
  return { record: recordOf(walk.session, fileOf(walk).head), put };
}

/** Words without blanks, as a reader must find them, and without the ring that carries a mark at a text's start. */
function squeezed(text: string): string {
  return safeText(text, { lines: true }).replace(/[\s◌]/g, '').normalize('NFD');
}

/** Fields that the CSV holds. */
const CSV_FIELDS = [
  'id',
  'typed',
  'reason',
  'test typed',
  'meter',
  'step title',
  'outcome',
  'terminal',
  'pin',
  'colour',
];

/**
 * A field meets one in so many payloads in the ordinary run, and every payload some six fields: what one field lets through,
 * or one payload gets past all of them with, shows.
 */
const ONE_IN = 7;
const shifts = shareOf([...PAYLOADS.keys()], ONE_IN);

it('there are at least 200 payloads, all different', () => {
  expect(new Set(PAYLOADS).size).toBe(PAYLOADS.length);
  expect(PAYLOADS.length).toBeGreaterThanOrEqual(200);
});

describe('in every text field of a session', () => {
  it.each(shifts)('the payloads from number %i on', (shift) => {
    const { record, put } = caseOf(shift);

    const json = exportRecord(record, 'json', 'shop');
    expect(JSON.parse(json)).toEqual(record);
    expect(json.replace(/\n/g, '')).not.toMatch(ACTIVE);

    const csv = exportRecord(record, 'csv', 'shop');
    const rows = readCsvStrictly(csv);
    expect(csv.replace(/[\r\n]/g, '')).not.toMatch(ACTIVE);
    for (const { value, quoted } of rows.flat()) {
      if (!quoted) expect(value).toMatch(/^(-?\d+(\.\d+)?)?$/);
      for (const part of value.split(/[;\t\n]/)) {
        if (!/^-?\d+(\.\d+)?$/.test(value))
          expect(part).not.toMatch(/^[\s\u00a0\u3000]*[=+\-@＝＋－＠]/);
      }
    }
    const allCsv = bare(
      rows
        .flat()
        .map(({ value }) => value)
        .join(' '),
    );
    for (const field of CSV_FIELDS)
      expect(allCsv).toContain(bare(safeText(put.get(field)!, { lines: true })));
    expect(
      rows.flat().filter(({ value, quoted }) => value === '-0.42' && !quoted),
    ).not.toHaveLength(0);
    expect(rows.flat().filter(({ value, quoted }) => value === '-1.5' && !quoted)).not.toHaveLength(
      0,
    );

    const html = readHtmlStrictly(exportRecord(record, 'html', 'shop'));
    const allHtml = squeezed(html.map(({ text }) => text).join(''));
    const markdown = exportRecord(record, 'markdown', 'shop');
    expect(markdown.replace(/\n/g, '')).not.toMatch(ACTIVE);
    const allMarkdown = squeezed(readMarkdownStrictly(markdown).join('').replace(/ · /g, ''));
    const { pages } = readPdfStrictly(exportRecord(record, 'pdf', 'shop'));
    const columns = new Map<string, string>();
    for (const page of pages)
      for (const [x, text] of page.columns) columns.set(x, (columns.get(x) ?? '') + text);
    const allPdf = [...columns.values()].join('\n').replace(/◌/g, '').normalize('NFD');
    for (const [field, words] of put) {
      if (field === 'customer words') continue; // stands in the customer's report
      const wanted = squeezed(words);
      expect(allHtml, `HTML, ${field}`).toContain(wanted);
      expect(allMarkdown, `Markdown, ${field}`).toContain(wanted);
    }
    for (const [field, words] of put) {
      // Fields whose text is one with its neighbours in a line are cut by other words only where lines end.
      if (field === 'customer words') continue; // stands in the customer's report
      expect(allPdf, `PDF, ${field}`).toContain(pdfForm(words));
    }

    const forCustomer = readHtmlStrictly(exportRecord(record, 'html', 'customer'));
    const allForCustomer = squeezed(forCustomer.map(({ text }) => text).join(''));
    expect(allForCustomer).toContain(squeezed(put.get('customer words')!));
    readMarkdownStrictly(exportRecord(record, 'markdown', 'customer'));
    readPdfStrictly(exportRecord(record, 'pdf', 'customer'));
    readHtmlStrictly(exportRecord(record, 'html', 'class'));
    expect(transcriptOf(record)).toBe(markdown);
  });
});

/** Without blanks, guards, and the ring that carries a mark at the start of a text. */
function bare(text: string): string {
  return text.replace(/[\s'◌]/g, '');
}

/** Spellings that a PDF takes for the same sign. */
function pdfForm(words: string): string {
  return squeezed(words).replace(/[\u2126]/g, 'Ω');
}
