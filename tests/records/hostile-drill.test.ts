/** What people name in a drill or conclude in their own words can do nothing in a report, and is read back from it. */
import { expect, it } from 'vitest';
import { exportRecord } from '../../src/records/export-record.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { safeText } from '../../src/source/safe-text.ts';
import { PAYLOADS } from './payloads.ts';
import { readHtmlStrictly } from './readers/read-html-strictly.ts';
import { readMarkdownStrictly } from './readers/read-markdown-strictly.ts';
import { readPdfStrictly } from './readers/read-pdf-strictly.ts';
import { openDrillWalk } from './sample-drill.ts';
import { CRANKING_CAUTION, fileOf } from './sample-session.ts';

function squeezed(text: string): string {
  return safeText(text, { lines: true }).replace(/[\s◌]/g, '').normalize('NFD');
}

it.each(PAYLOADS.map((payload) => [JSON.stringify(payload), payload] as const))(
  '%s',
  (_, payload) => {
    const put = ['assignment', 'caution', 'conclusion'].map((field) => `${payload} q${field}q`);
    const [name = '', say = '', words = ''] = put;
    const walk = openDrillWalk(
      { assignment: { name, part: 1, limitMinutes: null } },
      { cautionRules: [{ ...CRANKING_CAUTION, say }] },
    ).do({ type: 'conclude', own: { words, faults: [] } });
    const record = recordOf(walk.session, fileOf(walk).head);
    const html = readHtmlStrictly(exportRecord(record, 'html', 'shop'));
    const markdown = readMarkdownStrictly(exportRecord(record, 'markdown', 'shop'));
    readPdfStrictly(exportRecord(record, 'pdf', 'shop'));
    const texts = [html.map(({ text }) => text).join(''), markdown.join('').replace(/ · /g, '')];
    for (const text of texts.map(squeezed))
      for (const field of put) expect(text).toContain(squeezed(field.trim()));
  },
);
