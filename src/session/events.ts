/** What can happen in a session: past facts, each plain JSON, in the order they were saved. */

import type { Circuit } from '../circuit/circuit.ts';
import type { Judgement } from '../circuit/judge.ts';
import type { KeptShown } from '../circuit/shown-of.ts';
import type { Look, Meter, Test } from '../circuit/test.ts';
import type { Job } from '../procedure/job.ts';
import type { MeasureUnit, Procedure } from '../procedure/procedure.ts';
import type { Envelope } from '../waveform/envelope.ts';
import type { SignalKind } from '../waveform/measure-channel.ts';

export const SESSION_FORMAT = 1;

/** When: wall clock in RFC 3339 with offset, and monotonic milliseconds since the session was opened or resumed. */
export interface When {
  readonly at: string;
  readonly elapsed: number;
}

/** The first event. It holds everything needed to read the session without any other file. */
export interface SessionOpened extends When {
  readonly type: 'session-opened';
  readonly format: typeof SESSION_FORMAT;
  readonly program: string;
  readonly id: string;
  readonly person: string;
  readonly shop: string;
  readonly instruments: readonly string[];
  readonly meter: Meter;
  readonly job: Job;
  readonly procedure: Procedure;
  readonly circuit: Circuit | null;
  /** Where readings come from: a real vehicle, or a simulated one with this fault and sample. */
  readonly vehicle: SessionVehicle;
  /** Step at which the walk began when it is not the start of the procedure: on a simulated vehicle only. */
  readonly from?: string;
}
export type SessionVehicle =
  | { readonly kind: 'real' }
  | {
      readonly kind: 'bench';
      readonly fault: string;
      readonly seed: number;
      /** Healthy to every test, until the harness is moved; absent for a fault that stays. */
      readonly intermittent?: true;
    }
  /** A simulated vehicle whose fault is hidden; `commitment` is a salted hash of it. */
  | { readonly kind: 'drill'; readonly commitment: string };

export interface CautionAcknowledged extends When {
  readonly type: 'caution-acknowledged';
  readonly step: string;
  readonly state: string;
  /** Id and the text that was shown. */
  readonly cautions: readonly {
    readonly id: string;
    readonly word: string;
    readonly text: string;
  }[];
}

/** A number, as typed and as understood. */
export interface ReadingRecorded extends When {
  readonly type: 'reading-recorded';
  readonly step: string;
  readonly typed: string;
  /** SI value; null stands for the meter's OL, since JSON has no infinity. */
  readonly value: number | null;
  readonly unit: MeasureUnit;
  readonly instrument: string;
  readonly judgement: Judgement | null;
  readonly outcome: string;
  readonly go: string;
  /** The capture it was taken from; absent when it was typed. */
  readonly capture?: StepCapture;
}

/** A look or an answer: the outcome chosen. `look` is set when an instrument or eyes gave it. */
export interface LookRecorded extends When {
  readonly type: 'look-recorded';
  readonly step: string;
  readonly look: Look | null;
  readonly outcome: string;
  readonly go: string;
  /** The capture that gave it; absent when it was chosen by eye. */
  readonly capture?: StepCapture;
}

/** A capture that answered a step: which file, what was measured, and enough of it for a small picture. */
export interface StepCapture {
  /** Name of the file, without its folder. */
  readonly name: string;
  /** SHA-256 of the file, lower-case hex: the file itself stays where it is. */
  readonly sha256: string;
  /** `bench`: made by the simulated vehicle. */
  readonly from: 'file' | 'bench';
  /** Which channel was judged, from 1; absent where there is only one. */
  readonly channel?: number;
  readonly measures: CaptureMeasured;
  /** What is against the signal, a sentence each; empty when nothing is. */
  readonly words: readonly string[];
  /** Where the edges of one channel stand in the turn of another, a line for each pair; absent where no two turn together. */
  readonly pairs?: readonly string[];
  readonly channels: readonly Envelope[];
}

/** What was measured of the channel that is judged, in SI units; null where the signal has no such thing. */
export interface CaptureMeasured {
  readonly kind: SignalKind;
  readonly unit: Envelope['unit'];
  readonly samples: number;
  readonly seconds: number;
  /** The two levels of a switched signal; else its least and most; the same twice for a flat line. */
  readonly low: number;
  readonly high: number;
  /** Mean, as a DC meter shows it, and root mean square without it, as an AC meter does; absent in captures of early versions. */
  readonly mean?: number;
  readonly ac?: number;
  readonly hertz: number | null;
  /** Per cent of the time at the high level. */
  readonly duty: number | null;
  /** Of the crankshaft where the target turns with it, else of the target. */
  readonly rpm: number | null;
}

export interface StepDone extends When {
  readonly type: 'step-done';
  readonly step: string;
  readonly go: string;
}

export interface StepImpossible extends When {
  readonly type: 'step-impossible';
  readonly step: string;
  readonly reason: string;
  readonly go: string;
}

/** The answer of this step is taken back; it stays in the file as superseded. */
export interface StepReopened extends When {
  readonly type: 'step-reopened';
  readonly step: string;
  /** Position of the superseded answer among all answers of the session, from 0. */
  readonly answer: number;
}

/** A test outside the tree, proposed by the program or chosen by the person. */
export interface ExtraReading extends When {
  readonly type: 'extra-reading';
  readonly test: Test;
  readonly words: string;
  readonly typed: string;
  readonly shown: KeptShown;
  /** What a sound circuit shows there, as it stood beside the prompt; absent in sessions of early versions. */
  readonly expected?: ExpectedShown;
  /** Of a number that was typed, where something is expected. */
  readonly judgement?: Judgement;
  /** The capture that gave it; absent when it was typed or seen. */
  readonly capture?: StepCapture;
}

/** Ends of a range of which null is an open one, or looks. */
export type ExpectedShown =
  | { readonly kind: 'number'; readonly low: number | null; readonly high: number | null }
  | { readonly kind: 'look'; readonly looks: readonly Look[] };

export interface NoteAdded extends When {
  readonly type: 'note-added';
  readonly step: string;
  readonly text: string;
}

export interface InstrumentsChanged extends When {
  readonly type: 'instruments-changed';
  readonly instruments: readonly string[];
  readonly meter: Meter;
}

export interface SessionPaused extends When {
  readonly type: 'session-paused';
}
export interface SessionResumed extends When {
  readonly type: 'session-resumed';
  readonly program: string;
}

/** The person accepts a conclusion: the tree's own, or one of their own with the repairs it names. */
export interface Concluded extends When {
  readonly type: 'concluded';
  readonly conclusion: string | null;
  readonly title: string;
  readonly faults: readonly string[];
  readonly repair: string;
  readonly evidence: readonly EvidenceLine[];
  readonly ruledOut: readonly { readonly words: string; readonly by: string }[];
  /** Independent pieces of evidence; three make it proven. Null when there is no circuit to weigh it with. */
  readonly proven: boolean | null;
}
export interface EvidenceLine {
  readonly test: string;
  readonly where: string;
  readonly found: string;
  readonly pointsTo: string;
  /** False where it carries the conclusion and is no independent piece; absent where it is one. */
  readonly counted?: false;
}

/** How many of them are independent pieces. */
export function piecesAmong(evidence: readonly EvidenceLine[]): number {
  return evidence.filter(({ counted }) => counted !== false).length;
}

/** After the repair: one of the tests that must pass, before beside after. */
export interface RetestRecorded extends When {
  readonly type: 'retest-recorded';
  readonly step: string;
  readonly typed: string;
  readonly value: number | null;
  readonly look: Look | null;
  readonly outcome: string;
  readonly passed: boolean;
  /** The capture that gave it; absent when it was typed or seen. */
  readonly capture?: StepCapture;
}
/** After the repair: a test that must pass could not be made, so it shows nothing. */
export interface RetestImpossible extends When {
  readonly type: 'retest-impossible';
  readonly step: string;
  readonly reason: string;
}
export type Retest = RetestRecorded | RetestImpossible;

export const REPAIR_VERDICTS = ['cured', 'not-cured', 'changed', 'not-shown', 'no-retest'] as const;
/** What the tests after the repair say. `not-shown`: one could not be made, and the others pass. */
export type RepairVerdict = (typeof REPAIR_VERDICTS)[number];
export interface SessionClosed extends When {
  readonly type: 'session-closed';
  readonly verdict: RepairVerdict;
  readonly words: string;
}

/** Events that the log itself writes. */
export interface Recovered extends When {
  readonly type: 'recovered';
}
export interface SegmentContinued extends When {
  readonly type: 'segment-continued';
}

export type SessionEvent =
  | SessionOpened
  | CautionAcknowledged
  | ReadingRecorded
  | LookRecorded
  | StepDone
  | StepImpossible
  | StepReopened
  | ExtraReading
  | NoteAdded
  | InstrumentsChanged
  | SessionPaused
  | SessionResumed
  | Concluded
  | RetestRecorded
  | RetestImpossible
  | SessionClosed
  | Recovered
  | SegmentContinued;

/** Events that answer a step of the tree. */
export type Answer = ReadingRecorded | LookRecorded | StepDone | StepImpossible;

export function isAnswer(event: SessionEvent): event is Answer {
  return (
    event.type === 'reading-recorded' ||
    event.type === 'look-recorded' ||
    event.type === 'step-done' ||
    event.type === 'step-impossible'
  );
}
