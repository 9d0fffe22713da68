/** What Markdown, HTML and PDF have in common: a report as plain blocks of text, for one kind of reader. */
import type { Envelope } from '../waveform/envelope.ts';
import { customerSections } from './customer-sections.ts';
import { type Audience, recordFor } from './record-for.ts';
import type { RecordPicture, SessionRecord } from './record-form.ts';
import { dateWords, HAND_WARNINGS } from './report-words.ts';
import { shopSections } from './shop-sections.ts';
import type { ShownReading } from './wiring-shapes.ts';

export interface Report {
  readonly title: string;
  readonly subtitle: string;
  /** Stands above everything: what a reader must know before using it. */
  readonly warnings: readonly string[];
  readonly sections: readonly Section[];
  /** Where it comes from, id of the session and hash of its last event, for the foot of every page. */
  readonly origin: string;
  readonly id: string;
  readonly head: string;
}

export interface Section {
  readonly heading: string;
  readonly blocks: readonly Block[];
}

export type Block =
  | { readonly kind: 'facts'; readonly rows: readonly (readonly [label: string, text: string])[] }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | Table
  /** Pictures only where a report can show them; the words beside it say the same. */
  | {
      readonly kind: 'picture';
      readonly title: string;
      readonly channels: readonly Envelope[];
      /** The least that the axis covers by channel, in its unit. */
      readonly spansLeast: readonly number[];
    }
  /** The wiring with readings at their places; the tables beside it say the same. */
  | {
      readonly kind: 'wiring';
      readonly title: string;
      readonly picture: RecordPicture;
      readonly readings: readonly ShownReading[];
      readonly proven: boolean;
    }
  /** Characters in columns, only where a report can keep them in place. */
  | { readonly kind: 'drawing'; readonly title: string; readonly lines: readonly string[] }
  /** Lines to be filled in by hand. */
  | { readonly kind: 'sign'; readonly labels: readonly string[] };

export interface Table {
  readonly kind: 'table';
  readonly caption: string;
  readonly heads: readonly string[];
  /** Relative widths of the columns. */
  readonly widths: readonly number[];
  readonly rows: readonly (readonly Cell[])[];
}

/** A cell: one or more short texts, one below the other. */
export interface Cell {
  readonly parts: readonly string[];
  /** `struck`: taken back. Never the only carrier of a meaning: the words say it too. */
  readonly tone?: 'good' | 'bad' | 'unsure' | 'struck';
  readonly gauge?: Gauge;
}

/** A picture of a reading beside its expected range: an end that is null is open, a `value` that is null is OL. */
export interface Gauge {
  readonly low: number | null;
  readonly high: number | null;
  readonly value: number | null;
}

/** The report for a reader, of what that reader may see. */
export function reportOf(whole: SessionRecord, audience: Audience): Report {
  const record = recordFor(whole, audience);
  const vehicle = record.job.vehicle.words || record.job.vehicle.plate || record.title;
  return {
    title: titleOf(record, audience),
    subtitle: [vehicle, dateWords(record.startedAt)].filter((words) => words !== '').join(', '),
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
