/** What can happen in a session: past facts, each plain JSON, in the order they were saved. */

import type { Circuit } from '../circuit/circuit.ts';
import type { Judgement } from '../circuit/judge.ts';
import type { KnownValue } from '../circuit/known-values.ts';
import type { KnownFrom } from '../circuit/known-words.ts';
import type { KeptShown } from '../circuit/shown-of.ts';
import type { Look, Meter, MeterUnit, Test, VehicleState } from '../circuit/test.ts';
import type { CautionRule } from '../procedure/cautions.ts';
import type { Job } from '../procedure/job.ts';
import type { MeasureUnit, Procedure } from '../procedure/procedure.ts';
import type { PlaceOnWire } from '../quantity/place-on-wire.ts';
import type { Envelope } from '../waveform/envelope.ts';
import type { Drops } from '../waveform/find-drops.ts';
import type { Finding } from '../waveform/finding.ts';
import type { SignalKind } from '../waveform/measure-channel.ts';
import type { Phase } from '../waveform/measure-phase.ts';
import type { ShortDrops, ShortStretch } from './place-short.ts';

/** Version of the form of the events. Files of earlier ones are read through `log/upgrade-events.ts`. */
export const SESSION_FORMAT = 2;
/**
 * Version of the rules that judge: which verdict a reading has, which outcome a value falls into, what a conclusion
 * rests on, which tests are refused, which hazards a step must warn of. It moves when the same answers would give another
 * result.
 */
export const RULES = 18;
/**
 * Who gives the answers, as the program could tell: a person at a terminal, a file of answers, another program, whatever
 * feeds its standard input. Files of the first version do not state it.
 */
export const HANDS = ['person', 'answers-file', 'program', 'pipe', 'not-stated'] as const;
export type Hand = (typeof HANDS)[number];

/** When: wall clock in RFC 3339 with offset, and monotonic milliseconds since the session was opened or resumed. */
export interface When {
  readonly at: string;
  readonly elapsed: number;
}

/** The first event. It holds everything needed to read the session without any other file. */
export interface SessionOpened extends When {
  readonly type: 'session-opened';
  readonly format: typeof SESSION_FORMAT;
  readonly rules: number;
  readonly program: string;
  readonly by: Hand;
  readonly id: string;
  readonly person: string;
  readonly shop: string;
  readonly instruments: readonly string[];
  readonly meter: Meter;
  readonly job: Job;
  /** Null in free order: any test, and a conclusion of one's own. */
  readonly procedure: Procedure | null;
  readonly circuit: Circuit | null;
  /** What the job sheet says is known of this car, as read with the circuit; absent where it says nothing. */
  readonly known?: readonly SetValue[];
  /** Which cautions stand before a test that no step asks for; empty in files of early versions. */
  readonly cautionRules: readonly CautionRule[];
  /** Where readings come from: a real vehicle, or a simulated one with this fault and sample. */
  readonly vehicle: SessionVehicle;
  /** Step at which the walk began when it is not the start of the procedure: on a simulated vehicle only. */
  readonly from?: string;
}

/** The vehicle that answers: a real one, a simulated one with a known fault, or that of a drill. */
export type SessionVehicle =
  | { readonly kind: 'real' }
  | {
      readonly kind: 'bench';
      readonly fault: string;
      readonly seed: number;
      /** Healthy to every test, until the harness is moved; absent for a fault that stays. */
      readonly intermittent?: true;
    }
  | DrillVehicle;

/** A simulated vehicle whose fault is hidden. */
export interface DrillVehicle {
  readonly kind: 'drill';
  readonly level: LevelName;
  readonly seed: number;
  /** Salted hash of the answer. */
  readonly commitment: string;
  /** Repair that the work order says was done before, by its id; null when it says nothing. */
  readonly earlierRepair: string | null;
  readonly assignment: AssignmentNote | null;
}
/** How hard a drill is; what each level hides is in `drill/levels.ts`. */
export const LEVEL_NAMES = [
  'named',
  'unnamed',
  'blind',
  'intermittent',
  'double',
  'misled',
] as const;
export type LevelName = (typeof LEVEL_NAMES)[number];
/** Which line of which assignment a drill belongs to. */
export interface AssignmentNote {
  readonly name: string;
  /** Position in the assignment's list, from 1. */
  readonly part: number;
  /** Minutes on the clock, or null without limit. */
  readonly limitMinutes: number | null;
}

/** Cautions were read before a step or a test. */
export interface CautionAcknowledged extends When {
  readonly type: 'caution-acknowledged';
  /** Null for a test that no step asks for. */
  readonly step: string | null;
  readonly state: VehicleState;
  /** The person whom a program names as having read them; absent where the person pressed the key here. */
  readonly readBy?: string;
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
  /** The test of the session that answered it: nothing was made again. Absent when it was made at the step. */
  readonly by?: EventNumber;
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
  /** Of a step that moved or warmed something in vain: what it was worth. Absent where nothing speaks of a fault that comes and goes. */
  readonly vain?: WakingVain;
  /** As of a reading. */
  readonly by?: EventNumber;
}

/** The chance that the fault is in what was moved or warmed, 0 to 1, before and after, and the minutes that it took. */
export interface WakingVain {
  readonly minutes: number;
  readonly before: number;
  readonly after: number;
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
  /** What is against the judged signal; empty when nothing is. */
  readonly findings: readonly (Finding | Said)[];
  /** Where the edges of one channel stand in the turn of another; absent where no two turn together. */
  readonly phases?: readonly (CapturedPhase | Said)[];
  readonly channels: readonly Envelope[];
  /** The file of the other channels of the same crank, where the scope saved two. */
  readonly second?: { readonly name: string; readonly sha256: string };
  /** What it was held against; absent where it was against nothing but the circuit. */
  readonly against?: CaptureAgainst;
  /** Degrees by which the edges come later than there, of a position; earlier below zero. */
  readonly shiftDegrees?: number;
  /** Stretches in which the signal was lost, of a long capture while something was moved. */
  readonly drops?: Drops;
}

/** Where the edges should stand, as the papers or the job sheet state it; or a capture of a good engine. */
export type CaptureAgainst =
  | { readonly kind: 'stated'; readonly typed: string }
  | ({ readonly kind: 'good' } & KnownGood);

/** A known-good capture as it was measured: of the same signal, with a file of its own. */
export type KnownGood = Pick<
  StepCapture,
  'name' | 'sha256' | 'from' | 'channel' | 'measures' | 'phases' | 'channels'
>;

/** In words, as an early version wrote it down. */
export interface Said {
  readonly said: string;
}

/** How one channel of a kept capture stands to another. */
export interface CapturedPhase {
  /** Numbers of the two channels, from 1. */
  readonly reference: number;
  readonly channel: number;
  readonly cycleDegrees: Phase['cycleDegrees'];
  readonly edges: Phase['edges'];
  /** So many more edges than are listed; absent where all are. */
  readonly more?: number;
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

/** The work that a step asks for was done. */
export interface StepDone extends When {
  readonly type: 'step-done';
  readonly step: string;
  readonly go: string;
}

/** A step could not be done here; the tree goes its own way from it. */
export interface StepImpossible extends When {
  readonly type: 'step-impossible';
  readonly step: string;
  readonly reason: string;
  readonly go: string;
  /** The event that said its connector out of reach: the program went round it. Absent where the person said it of the step. */
  readonly by?: EventNumber;
}

/** The answer of this step is taken back; it stays in the file as superseded. */
export interface StepReopened extends When {
  readonly type: 'step-reopened';
  readonly step: string;
  /** Position of the superseded answer among all answers of the session, from 0. */
  readonly answer: number;
}

/** A test that no step asked for, at any time: proposed by the program or chosen by the person. */
export interface TestRecorded extends When {
  readonly type: 'test-recorded';
  readonly test: Test;
  /** As typed; empty for a look. */
  readonly typed: string;
  readonly shown: KeptShown;
  /** What a sound circuit shows there, as it stood beside the prompt; null where nothing is known of it. */
  readonly expected: ExpectedShown | null;
  /** Of a number that was typed, where something is expected. */
  readonly judgement: Judgement | null;
  /** The capture that gave it; absent when it was typed or seen. */
  readonly capture?: StepCapture;
  /** When it was made, of one that is only written down here; absent of one that was made when it was recorded. */
  readonly made?: TestMade;
  /** In the person's words; absent where there are none. */
  readonly note?: string;
}

/** Before the job began, or at a time of the clock, `14:05`. */
export type TestMade = string;
export const BEFORE_THE_JOB = 'before the job';

/** This person cannot make a test, so that it is proposed no more; or can after all. */
export interface TestSetAside extends When {
  readonly type: 'test-set-aside';
  readonly test: Test;
  readonly aside: boolean;
}

/**
 * The connector of a part cannot be reached, so that no test is proposed that needs a lead or a hand there, and steps that
 * need one are gone round; or can be after all.
 */
export interface ConnectorSetAside extends When {
  readonly type: 'connector-set-aside';
  readonly part: string;
  readonly aside: boolean;
  /** In words, which steps that are gone round then give; empty where it can be reached after all. */
  readonly reason: string;
}

/** Ends of a range of which null is an open one, or looks. */
export type ExpectedShown =
  | { readonly kind: 'number'; readonly low: number | null; readonly high: number | null }
  | { readonly kind: 'look'; readonly looks: readonly Look[] };

/** Vehicle states that it can be said cannot be had: with the key off every vehicle can be tested. */
export const STATES_ASIDE = ['key-on', 'cranking', 'running'] as const;
export type StateAside = (typeof STATES_ASIDE)[number];

/**
 * The vehicle cannot be had in a state, or must not be: nothing is proposed that needs it or one that is reached through
 * it, and steps that do are gone round; or can be after all.
 */
export interface StateSetAside extends When {
  readonly type: 'state-set-aside';
  readonly state: StateAside;
  readonly aside: boolean;
  /** As of a connector. */
  readonly reason: string;
}

/** A value of this car: as typed, as understood, and from where it is known. */
export interface SetValue extends KnownValue {
  readonly typed: string;
  readonly from: KnownFrom;
}

/** The person knows a value of this car, or says that it is not known after all. All readings are weighed anew with it. */
export interface ValueSet extends When, SetValue {
  readonly type: 'value-set';
}

/** What was set last is taken back; it stays in the file. */
export interface ValueTakenBack extends When {
  readonly type: 'value-taken-back';
  /** The event that set it. */
  readonly set: EventNumber;
}

/** Location of a short within a stretch of wire, by the drops along it: what was read, and what it comes to. */
export interface ShortPlaced extends When {
  readonly type: 'short-placed';
  readonly stretch: ShortStretch;
  /** Everything that was off. */
  readonly unplugged: readonly string[];
  readonly typed: string;
  readonly drops: ShortDrops;
  /** Distance from the near end of the stretch. */
  readonly place: PlaceOnWire;
}

/** One round of moving or warming at a step that wakes a fault, and what was seen meanwhile. */
export interface WakingWatched extends When {
  readonly type: 'waking-watched';
  readonly step: string;
  /** The answer of the step that is named after the place; null where all of it was moved or nobody said which. */
  readonly place: string | null;
  /** As typed; empty where a capture says it. */
  readonly typed: string;
  /** Of the least and the most that the instrument showed; null where only drops were counted. */
  readonly unit: MeterUnit | null;
  /** Null with a unit is the meter's OL. */
  readonly least: number | null;
  readonly most: number | null;
  readonly drops: number;
  readonly minutes: number | null;
  /** The long capture that gave it. */
  readonly capture?: StepCapture;
}

/** The person wrote something down. */
export interface NoteAdded extends When {
  readonly type: 'note-added';
  /** Step at which it was written; null in free order. */
  readonly step: string | null;
  readonly text: string;
}

/** From here on these instruments are at hand. */
export interface InstrumentsChanged extends When {
  readonly type: 'instruments-changed';
  readonly instruments: readonly string[];
  readonly meter: Meter;
}

/** The person left the session to go on with it later. */
export interface SessionPaused extends When {
  readonly type: 'session-paused';
}

/** Somebody goes on with it, perhaps with another version of the program. */
export interface SessionResumed extends When {
  readonly type: 'session-resumed';
  readonly program: string;
  /** Form and rules of the events from here on: another version of the program may go on with a session. */
  readonly format: typeof SESSION_FORMAT;
  readonly rules: number;
  readonly by: Hand;
}

/** The person accepts a conclusion: the tree's own, or one of their own with the faults it names. */
export interface Concluded extends When {
  readonly type: 'concluded';
  /** The tree's conclusion; null for one of the person's own. */
  readonly conclusion: string | null;
  /** What the person wrote, for a conclusion in their own words; null where faults or the tree say it. */
  readonly ownWords: string | null;
  readonly faults: readonly string[];
  readonly evidence: readonly EvidenceLine[];
  readonly ruledOut: readonly RuledOutLine[];
  /** Independent pieces of evidence; three make it proven. Null when there is no circuit to weigh it with. */
  readonly proven: boolean | null;
  /** The one reading that it rests on, made once and accepted all the same; absent where it rests on none alone. */
  readonly restsOn?: EventNumber;
}

/** A reading that speaks for the conclusion. */
export type EvidenceLine = {
  /** False where it carries the conclusion and is no independent piece. */
  readonly counted: boolean;
} & (
  | { readonly reading: EventNumber }
  /** As an early version wrote it down. */
  | {
      readonly said: {
        readonly test: string;
        readonly where: string;
        readonly found: string;
        readonly pointsTo: string;
      };
    }
);
/** A repair that readings rule out. */
export type RuledOutLine =
  | { readonly repair: string; readonly by: readonly EventNumber[] }
  | { readonly said: { readonly words: string; readonly by: string } };
/** Number of an event in its session, from 1: `seq` in the file. */
export type EventNumber = number;

/** Pieces that prove a conclusion, under every version of the rules. */
export const PIECES_NEEDED = 3;

/** How many of them are independent pieces. */
export function piecesAmong(evidence: readonly EvidenceLine[]): number {
  return evidence.filter(({ counted }) => counted).length;
}

/** On a drill: the bench stopped a test that does damage or hurts. */
export interface TestStopped extends When {
  readonly type: 'test-stopped';
  readonly test: Test;
  readonly hazard: TestHazard;
}
export const TEST_HAZARDS = ['ohms-on-live', 'lamp-on-module', 'clipped-in'] as const;

/** What a stopped test would have harmed. */
export type TestHazard = (typeof TEST_HAZARDS)[number];

/** On a drill: a test was asked for before its cautions were acknowledged; their ids. */
export interface CautionPassedOver extends When {
  readonly type: 'caution-passed-over';
  readonly cautions: readonly string[];
}

/** The last event of a drill: what was wrong, and what the answer earned. */
export interface AnswerRevealed extends When {
  readonly type: 'answer-revealed';
  readonly faults: readonly string[];
  readonly repairs: readonly string[];
  readonly salt: string;
  readonly right: boolean;
  readonly score: readonly ScorePart[];
  readonly points: number;
  readonly minutes: number;
  readonly yardstickMinutes: number;
  /** Over the assignment's time limit on the clock. */
  readonly late: boolean;
}

/** One part of a drill's score and the most that it could have been. */
export interface ScorePart {
  readonly name: 'diagnosis' | 'evidence' | 'time' | 'safety' | 'danger';
  readonly points: number;
  readonly most: number;
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

/** What came of a test that was made again after the repair. */
export type Retest = RetestRecorded | RetestImpossible;

export const REPAIR_VERDICTS = ['cured', 'not-cured', 'changed', 'not-shown', 'no-retest'] as const;
/** What the tests after the repair say. `not-shown`: one could not be made, and the others pass. */
export type RepairVerdict = (typeof REPAIR_VERDICTS)[number];

/** The repair is judged, and the session ends. */
export interface SessionClosed extends When {
  readonly type: 'session-closed';
  readonly verdict: RepairVerdict;
}

/** What became of the trouble codes once the vehicle was driven. */
export const DRIVEN_CODES = ['stayed-away', 'came-back'] as const;
export type DrivenCode = (typeof DRIVEN_CODES)[number];
/** The last word, often days after the repair: the vehicle was driven, and the trouble codes stayed away or came back. */
export interface DriveReported extends When {
  readonly type: 'drive-reported';
  readonly code: DrivenCode;
  /** How it was driven, and what else was seen; may be empty. */
  readonly words: string;
}

/** What the customer said about the work that the conclusion asks for. */
export const WORK_ANSWERS = ['authorised', 'declined'] as const;
export type WorkAnswer = (typeof WORK_ANSWERS)[number];
/** Somebody has authorised or declined the work; the last word counts. */
export interface WorkAnswered extends When {
  readonly type: 'work-answered';
  readonly answer: WorkAnswer;
  readonly by: string;
  /** How, and up to what it may cost; may be empty. */
  readonly words: string;
}

/** Written by the log: what a crash left of a last line was cut off, and is kept in `file` with these bytes and hash. */
export interface Recovered extends When {
  readonly type: 'recovered';
  readonly bytes: number;
  readonly hash: string;
  readonly file: string;
}
/** Written by the log: the first event of a later part, which goes on from the line of this hash in `file`. */
export interface SegmentContinued extends When {
  readonly type: 'segment-continued';
  readonly continues: string;
  readonly file: string;
}

/** Every fact that a session file can hold, told apart by its `type`. */
export type SessionEvent =
  | SessionOpened
  | CautionAcknowledged
  | ReadingRecorded
  | LookRecorded
  | StepDone
  | StepImpossible
  | StepReopened
  | TestRecorded
  | TestSetAside
  | ConnectorSetAside
  | StateSetAside
  | ValueSet
  | ValueTakenBack
  | ShortPlaced
  | WakingWatched
  | NoteAdded
  | InstrumentsChanged
  | SessionPaused
  | SessionResumed
  | Concluded
  | RetestRecorded
  | RetestImpossible
  | SessionClosed
  | DriveReported
  | WorkAnswered
  | TestStopped
  | CautionPassedOver
  | AnswerRevealed
  | Recovered
  | SegmentContinued;

/** Events that answer a step of the tree. */
export type Answer = ReadingRecorded | LookRecorded | StepDone | StepImpossible;

/** Whether an event answers a step of the tree. */
export function isAnswer(event: SessionEvent): event is Answer {
  return (
    event.type === 'reading-recorded' ||
    event.type === 'look-recorded' ||
    event.type === 'step-done' ||
    event.type === 'step-impossible'
  );
}
