/** The readable transcript of a session, kept beside its file. */
import { markdownOf } from './markdown.ts';
import type { SessionRecord } from './record-form.ts';
import { reportOf } from './report.ts';

/** The full report as Markdown. */
export function transcriptOf(record: SessionRecord): string {
  return markdownOf(reportOf(record, 'shop'));
}
