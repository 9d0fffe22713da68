/** A record in one of the forms it can leave the program in. */
import { htmlOf } from './html.ts';
import { markdownOf } from './markdown.ts';
import { pdfOf } from './pdf.ts';
import { readingsCsv } from './readings-csv.ts';
import { type Audience, recordFor } from './record-for.ts';
import type { SessionRecord } from './record-form.ts';
import { recordJson } from './record-json.ts';
import { reportOf } from './report.ts';
import type { Report } from './report-form.ts';

export const FORMS = ['markdown', 'html', 'pdf', 'csv', 'json'] as const;

/** A form in which a record can be printed or sent. */
export type PaperForm = (typeof FORMS)[number];

/** Endings of file names. */
export const ENDINGS: Readonly<Record<PaperForm, string>> = {
  markdown: '.md',
  html: '.html',
  pdf: '.pdf',
  csv: '.csv',
  json: '.json',
};

/** The record for a reader, as text; a PDF is plain ASCII. Every form holds what that reader may see, and no more. */
export function exportRecord(
  record: SessionRecord,
  form: PaperForm,
  audience: Audience,
  options: { readonly bom?: boolean } = {},
): string {
  switch (form) {
    case 'csv':
      return readingsCsv(recordFor(record, audience), options);
    case 'json':
      return recordJson(recordFor(record, audience));
    case 'markdown':
    case 'html':
    case 'pdf':
      return writeReport(reportOf(record, audience), form);
  }
}

/** A report in one of the forms made for reading. */
export function writeReport(report: Report, form: Exclude<PaperForm, 'csv' | 'json'>): string {
  switch (form) {
    case 'markdown':
      return markdownOf(report);
    case 'html':
      return htmlOf(report);
    case 'pdf':
      return pdfOf(report);
  }
}
