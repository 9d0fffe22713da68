/** Any text at all, in every field, through every export; OHMWARD_LONG=1 for many more. */

import { expect, it } from 'vitest';
import { exportRecord } from '../../src/records/export-record.ts';
import { markdownText } from '../../src/records/markdown.ts';
import { csvField } from '../../src/records/readings-csv.ts';
import { harmlessJson } from '../../src/records/record-json.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { safeText } from '../../src/source/safe-text.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';
import { fullWalk } from './full-walk.ts';
import { PAYLOADS } from './payloads.ts';
import { readCsvStrictly } from './readers/read-csv-strictly.ts';
import { readHtmlStrictly } from './readers/read-html-strictly.ts';
import { readMarkdownStrictly } from './readers/read-markdown-strictly.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { fileOf } from './sample-session.ts';

const ACTIVE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/u;

/** Any signs, and pieces of payloads put together. */
const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.string({
    unit: fc.constantFrom(...'=+-@;|\t\r\n "\'<>&\\`*_[]()#~$:/.1a\u202e\u001b\u0301'),
    maxLength: 30,
  }),
  fc
    .array(fc.constantFrom(...PAYLOADS), { minLength: 1, maxLength: 3 })
    .map((parts) => parts.join('')),
);

it('every export of a session full of any text is read by the strict readers', {
  timeout: LONG ? 600_000 : 30_000,
}, () => {
  fc.assert(
    fc.property(fc.array(anyText, { minLength: 5, maxLength: 20 }), (texts) => {
      let next = 0;
      // The mark keeps required fields from being empty.
      const walk = fullWalk(() => `${texts[next++ % texts.length]}x`);
      const record = recordOf(walk.session, fileOf(walk).head);
      expect(JSON.parse(exportRecord(record, 'json', 'shop'))).toEqual(record);
      readCsvStrictly(exportRecord(record, 'csv', 'shop'));
      for (const audience of ['shop', 'customer', 'class'] as const) {
        readHtmlStrictly(exportRecord(record, 'html', audience));
        readMarkdownStrictly(exportRecord(record, 'markdown', audience));
        readPdfStrictly(exportRecord(record, 'pdf', audience));
      }
    }),
    { numRuns: LONG ? 1000 : 25 },
  );
});

it('a cell never begins a formula, in whatever program, and can be read back', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const [[cell] = []] = readCsvStrictly(`${csvField(text)}\r\n`);
      const value = cell?.value ?? '';
      if (/^-?\d+(\.\d+)?$/.test(value)) return;
      for (const part of value.split(/[;\t\n|]/)) expect(part).not.toMatch(/^\s*[=+\-@＝＋－＠]/);
      const plain = (words: string) => safeText(words, { lines: true }).replace(/['\s◌]/g, '');
      expect(plain(value)).toBe(plain(text));
    }),
    { numRuns: LONG ? 100_000 : 2_000 },
  );
});

it('Markdown of any text is that text, on one line', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const source = markdownText(text);
      expect(source).not.toMatch(/\n/);
      const plain = (words: string) => words.replace(/[\s·◌]/g, '').normalize('NFD');
      const read = source === '' ? '' : readMarkdownStrictly(`- ${source}`).join('');
      expect(plain(read)).toBe(plain(safeText(text, { lines: true })));
    }),
    { numRuns: LONG ? 100_000 : 2_000 },
  );
});

it('JSON of any text is that text, and nothing in it can be obeyed', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const json = harmlessJson({ [text]: text });
      expect(JSON.parse(json)).toEqual({ [text]: text });
      expect(json.replace(/\n/g, '')).not.toMatch(ACTIVE);
    }),
    { numRuns: LONG ? 100_000 : 2_000 },
  );
});
