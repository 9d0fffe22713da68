/** The form of a report: sections of blocks, whatever prints them. */
import type { Envelope } from '../waveform/envelope.ts';
import type { RecordPicture } from './record-form.ts';
import type { ShownReading } from './wiring-shapes.ts';

/** One report, ready to be printed in any form. */
export interface Report {
  readonly title: string;
  /** Short texts side by side; one of them may be written from right to left. */
  readonly subtitle: readonly string[];
  /** Stands above everything: what a reader must know before using it. */
  readonly warnings: readonly string[];
  readonly sections: readonly Section[];
  /** Where it comes from, id of the session and hash of its last event, for the foot of every page. */
  readonly origin: string;
  readonly id: string;
  readonly head: string;
}

/** A part of a report under its heading. */
export interface Section {
  readonly heading: string;
  readonly blocks: readonly Block[];
}

/** What a section is made of, told apart by its `kind`. */
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

/** A table of cells, its columns as wide as they are told. */
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
