/**
 * The form of a record: one plain view of a session, nothing but JSON, that every export, list and comparison shares.
 *
 * Values are in the unit beside them; `null` with `overLimit` is the meter's OL. Texts are as people wrote them: each
 * export makes them harmless in its own way. The same form stands in docs/schema/record.schema.json.
 */
import type { Verdict } from '../circuit/judge.ts';
import type { MeasureUnit } from '../procedure/procedure.ts';
import type { RepairVerdict, StepCapture } from '../session/events.ts';
import type { SessionStatus } from '../session/session.ts';

export const RECORD_FORMAT = 1;

export interface SessionRecord {
  readonly format: typeof RECORD_FORMAT;
  readonly id: string;
  readonly program: string;
  readonly status: SessionStatus;
  readonly procedure: { readonly name: string; readonly title: string };
  readonly circuit: string | null;
  /** The wiring as lines of characters, with the pins of this vehicle; none without a circuit. */
  readonly wiring: readonly string[];
  /** Readings of a simulated vehicle must never pass for those of a real one. */
  readonly vehicle: 'real' | 'simulated' | 'drill';
  readonly person: string;
  readonly shop: string;
  readonly instruments: readonly string[];
  readonly meter: string;
  readonly startedAt: string;
  readonly endedAt: string;
  /** Time with the session open, pauses left out. */
  readonly workedMs: number;
  readonly complaint: string;
  /** Title of the conclusion, empty while there is none. */
  readonly cause: string;
  /** The repair, empty while there is no conclusion. */
  readonly correction: string;
  readonly job: RecordJob;
  /** Every answer of the session in the order it was given, those taken back as well. */
  readonly lines: readonly RecordLine[];
  readonly extras: readonly RecordExtra[];
  readonly cautions: readonly RecordCaution[];
  readonly notes: readonly (Moment & { readonly step: string; readonly text: string })[];
  readonly corrections: readonly RecordCorrection[];
  readonly interruptions: readonly (Moment & { readonly words: string })[];
  readonly conclusion: RecordConclusion | null;
  readonly retest: RecordRetest;
  /** Number and SHA-256 of the last event: the whole session file hangs on it. */
  readonly head: Head;
  readonly howToVerify: string;
}

export interface Head {
  readonly seq: number;
  readonly hash: string;
}

/** Wall clock as written, and milliseconds of work since the session began. */
export interface Moment {
  readonly at: string;
  readonly workedMs: number;
}

export interface RecordJob {
  readonly name: string;
  readonly order: string;
  readonly customer: string;
  readonly codes: readonly string[];
  readonly vehicle: {
    readonly words: string;
    readonly vin: string;
    readonly plate: string;
    readonly odometer: string;
    readonly drive: string;
  };
  readonly earlierRepairs: readonly { readonly words: string; readonly part: string }[];
  readonly terminals: readonly {
    readonly id: string;
    readonly words: string;
    readonly pin: string;
    readonly colour: string;
  }[];
  readonly notes: string;
}

/** A number that was read or expected: SI value or null for OL, and in words. */
export interface Reading {
  readonly typed: string;
  readonly value: number | null;
  readonly overLimit: boolean;
  readonly unit: MeasureUnit;
}

/** What a healthy circuit shows, and who says so; null is an open end. */
export interface RecordRange {
  readonly low: number | null;
  readonly high: number | null;
  readonly from: 'circuit' | 'author';
}

/** One answer. `verdict` says how it compares with what a healthy circuit shows; null where nothing is expected. */
export interface RecordLine extends Moment {
  /** Counts the answers from 1. */
  readonly number: number;
  readonly kind: 'reading' | 'look' | 'answer' | 'done' | 'impossible';
  readonly step: string;
  readonly title: string;
  readonly family: string;
  readonly where: string;
  readonly setup: string;
  readonly instrument: string;
  readonly expected: string;
  readonly expectedRange: RecordRange | null;
  readonly found: string;
  readonly reading: Reading | null;
  readonly verdict: Verdict | 'as expected' | 'not as expected' | null;
  readonly judgement: string;
  readonly outcome: string;
  /** Why it could not be done; empty otherwise. */
  readonly reason: string;
  /** Taken back by the person, or not on the way to the conclusion any more. */
  readonly standing: 'standing' | 'taken back' | 'off the way';
  /** The capture that gave it; absent when it was typed or seen. */
  readonly capture?: RecordCapture;
}

/** A capture that answered a step; `found` is what was measured, in one line. */
export interface RecordCapture extends Omit<StepCapture, 'findings' | 'phases'> {
  readonly found: string;
  /** What is against the signal, a sentence each; empty when nothing is. */
  readonly words: readonly string[];
  /** Where the edges of one channel stand in the turn of another, a line for each pair. */
  readonly pairs?: readonly string[];
}

export interface RecordExtra extends Moment {
  /** The capture that gave it; absent when it was typed or seen. */
  readonly capture?: RecordCapture;
  readonly words: string;
  readonly where: string;
  readonly setup: string;
  readonly instrument: string;
  /** What a sound circuit shows there; empty in sessions of early versions, which did not keep it. */
  readonly expected: string;
  readonly expectedRange: RecordRange | null;
  readonly found: string;
  readonly reading: Reading | null;
  readonly verdict: RecordLine['verdict'];
  readonly judgement: string;
}

export interface RecordCaution extends Moment {
  readonly step: string;
  readonly id: string;
  readonly word: string;
  readonly text: string;
}

export interface RecordCorrection extends Moment {
  readonly step: string;
  /** Number of the line that was taken back. */
  readonly line: number;
  readonly found: string;
}

export interface RecordConclusion extends Moment {
  readonly title: string;
  /** True when the person named it and not the procedure. */
  readonly own: boolean;
  readonly faults: readonly { readonly id: string; readonly words: string }[];
  readonly repair: string;
  /** Plain words for the customer; empty when the procedure has none. */
  readonly customer: string;
  /** Three independent pieces of evidence; null when there was no circuit to weigh them with. */
  readonly proven: boolean | null;
  readonly evidence: readonly {
    readonly test: string;
    readonly where: string;
    readonly found: string;
    readonly pointsTo: string;
    /** False where it carries the conclusion and is no independent piece; absent where it is one. */
    readonly counted?: false;
  }[];
  readonly ruledOut: readonly { readonly words: string; readonly by: string }[];
}

export interface RecordRetest {
  readonly rows: readonly RetestRow[];
  /** Steps that must pass after the repair and were not repeated. */
  readonly missing: readonly string[];
  readonly verdict: RepairVerdict | null;
  readonly words: string;
}

export interface RetestRow extends Moment {
  readonly step: string;
  readonly title: string;
  readonly where: string;
  readonly expected: string;
  readonly expectedRange: RecordRange | null;
  /** What the same step showed before the repair; empty when it was not taken. */
  readonly before: string;
  readonly after: string;
  readonly reading: Reading | null;
  /** Null when the test could not be made. */
  readonly passed: boolean | null;
  /** The capture that gave it, and the one of the same step before the repair; absent without one. */
  readonly capture?: RecordCapture;
  readonly captureBefore?: RecordCapture;
}
