/** What Markdown, HTML and PDF have in common: a report as plain blocks of text, for one kind of reader. */
import { customerSections } from './customer-sections.ts';
import { type Audience, recordFor } from './record-for.ts';
import type { SessionRecord } from './record-form.ts';
import type { Report } from './report-form.ts';
import { dateWords, HAND_WARNINGS } from './report-words.ts';
import { shopSections } from './shop-sections.ts';

/** The report for a reader, of what that reader may see. */
export function reportOf(whole: SessionRecord, audience: Audience): Report {
  const record = recordFor(whole, audience);
  const vehicle = record.job.vehicle.words || record.job.vehicle.plate || record.title;
  return {
    title: titleOf(record, audience),
    subtitle: [vehicle, dateWords(record.startedAt)].filter((words) => words !== ''),
    warnings: warningsOf(record),
    sections: audience === 'customer' ? customerSections(record) : shopSections(record),
    origin: record.origin,
    id: record.id,
    head: record.head.hash,
  };
}

function titleOf({ vehicle }: SessionRecord, audience: Audience): string {
  if (audience === 'customer') return 'Diagnosis of your vehicle';
  return vehicle === 'drill' ? 'Drill record' : 'Diagnosis record';
}

function warningsOf(record: SessionRecord): string[] {
  const warnings: string[] = [];
  if (record.vehicle !== 'real')
    warnings.push('Practice: these readings come from a simulated vehicle, not from a real one.');
  warnings.push(...record.by.flatMap((hand) => HAND_WARNINGS[hand] ?? []));
  if (record.conclusion === null) warnings.push('This diagnosis is not finished.');
  return warnings;
}
