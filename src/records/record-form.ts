/**
 * The form of a record: one plain view of a session, nothing but JSON, that every export, list and comparison shares.
 *
 * Values are in the unit beside them; `null` with `overLimit` is the meter's OL. Texts are as people wrote them: each
 * export makes them harmless in its own way. The same form stands in docs/schema/record.schema.json.
 */
import type { Verdict } from '../circuit/judge.ts';
import type { MeasureUnit } from '../procedure/procedure.ts';
import type {
  AssignmentNote,
  CaptureMeasured,
  DrivenCode,
  Hand,
  LevelName,
  RepairVerdict,
  ScorePart,
  StepCapture,
  TestHazard,
  WorkAnswer,
} from '../session/events.ts';
import type { JudgedOtherwise } from '../session/history.ts';
import type { SessionStatus } from '../session/session.ts';

/** 2: sessions without a procedure, tests at any time, where the answers come from, drills. */
export const RECORD_FORMAT = 2;

/** The record of one session; every export is made of this. */
export interface SessionRecord {
  readonly format: typeof RECORD_FORMAT;
  readonly id: string;
  readonly program: string;
  readonly status: SessionStatus;
  /** What was followed: the procedure's title, or that the tests were free. */
  readonly title: string;
  /** Null in free order. */
  readonly procedure: { readonly name: string; readonly title: string } | null;
  readonly circuit: string | null;
  /** The wiring as lines of characters, with the pins of this vehicle; none without a circuit. */
  readonly wiring: readonly string[];
  /** Where in the wiring the readings of the conclusion were taken, and what is named as the fault; null without them. */
  readonly picture: RecordPicture | null;
  /** Readings of a simulated vehicle must never pass for those of a real one. */
  readonly vehicle: RecordVehicle;
  /** Who gave the answers, in the order they came to it. */
  readonly by: readonly Hand[];
  /** Vehicle and answers in words, as every export shows them. */
  readonly origin: string;
  /** Version of the rules that the session began with. */
  readonly rules: number;
  readonly person: string;
  readonly shop: string;
  readonly instruments: readonly string[];
  readonly meter: string;
  readonly startedAt: string;
  readonly endedAt: string;
  /** Time with the session open, pauses left out. */
  readonly workedMs: number;
  /** Minutes at the vehicle up to the conclusion, estimated by what each test takes; null where they cannot be told. */
  readonly minutes: number | null;
  readonly complaint: string;
  /** What was concluded, empty while there is no conclusion. */
  readonly cause: string;
  /** The repair, empty while there is no conclusion. */
  readonly correction: string;
  readonly job: RecordJob;
  /** Every answer of the session in the order it was given, those taken back as well. */
  readonly lines: readonly RecordLine[];
  /** Tests outside the procedure, in the order they were made. */
  readonly tests: readonly RecordTest[];
  /** Shorts whose place was measured, in the order in which they were. */
  readonly shorts: readonly RecordShort[];
  readonly cautions: readonly RecordCaution[];
  /** What was known of this car, by the job sheet and as it was set, what was taken back or said anew as well. */
  readonly known: readonly RecordKnown[];
  readonly notes: readonly (Moment & { readonly step: string; readonly text: string })[];
  /** Rounds of moving and warming that wake a fault, and what was seen in each; absent where there were none. */
  readonly watched?: readonly RecordWatched[];
  readonly corrections: readonly RecordCorrection[];
  readonly interruptions: readonly (Moment & { readonly words: string })[];
  readonly conclusion: RecordConclusion | null;
  /** What the customer is told on the telephone, in three sentences; none before a conclusion, and on a drill. */
  readonly call: readonly string[];
  /** What the testing costs and the price lines, by the rates that the shop has set; left out where it has none. */
  readonly prices?: readonly string[];
  /** What the customer said about the work, since the present conclusion; the last one counts. */
  readonly work: readonly RecordWork[];
  readonly retest: RecordRetest;
  /** Null where it is none. */
  readonly drill: RecordDrill | null;
  /** Number and SHA-256 of the last event: the whole session file hangs on it. */
  readonly head: Head;
  readonly howToVerify: string;
}

/** The wires between the sensor and what feeds and reads it, with the places of readings and faults. */
export interface RecordPicture {
  /** What stands on the left, what on the right, in words. */
  readonly left: string;
  readonly right: string;
  readonly wires: readonly PictureWire[];
  readonly readings: readonly PictureReading[];
  readonly faults: readonly PictureFault[];
}

/** A wire as a row of the wiring picture, with what stands at its ends. */
export interface PictureWire {
  readonly words: string;
  /** What stands at its ends; `module` says whether the left one is inside the left box. */
  readonly left: string;
  readonly right: string;
  readonly module: boolean;
}
/** `wire` counts the wires from 0; null for the box of that side, or for what is not drawn. */
interface PicturePlace {
  readonly wire: number | null;
  readonly at: 'left' | 'along' | 'right' | 'elsewhere';
}

/** A reading at the place where its lead was. */
export interface PictureReading extends PicturePlace {
  /** Number of the event. */
  readonly reading: number;
  /** What the other lead was on, where that is an end of another wire: `ground`; else empty. */
  readonly against: string;
}

/** The fault at its place, as the conclusion has it. */
export interface PictureFault extends PicturePlace {
  readonly words: string;
  /** The wire that this one touches; null for other faults. */
  readonly touches: number | null;
}

/** What answered the readings: a vehicle, a simulated one, or that of a drill. */
export type RecordVehicle = 'real' | 'simulated' | 'drill';

/** The last event, which the whole chain before it hangs on. */
export interface Head {
  readonly seq: number;
  readonly hash: string;
}

/** Which event, the wall clock as written, and milliseconds of work since the session began. */
export interface Moment {
  /** Number of the event in the session, from 1. */
  readonly event: number;
  readonly at: string;
  readonly workedMs: number;
}

/** The job sheet as it was written. */
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
  /** Connectors, splices and wires of its harness, a line each. */
  readonly harness: readonly string[];
  /** `outcome`: what went in and what it changed, in words; empty where nobody said it. */
  readonly earlierRepairs: readonly {
    readonly words: string;
    readonly part: string;
    readonly outcome: string;
  }[];
  /** What was told and seen before anything was touched, and what it moved; empty words where it moved nothing. */
  readonly told: readonly {
    readonly what: string;
    readonly words: string;
    readonly moved: string;
  }[];
  readonly terminals: readonly {
    readonly id: string;
    readonly words: string;
    readonly pin: string;
    readonly colour: string;
  }[];
  readonly notes: string;
}

/** The line of the job sheet that says how the module keeps its codes: `P0365 stored, P0369 pending`. */
export const KEPT_AS = 'Codes kept as';

/** A number that was read or expected: SI value or null for OL, and in words. */
export interface RecordReading {
  readonly typed: string;
  readonly value: number | null;
  readonly overLimit: boolean;
  readonly unit: MeasureUnit;
  /** By how much the meter in hand may be off there by its specification; absent where that is not known. */
  readonly mayBeOff?: number;
}

/** What a healthy circuit shows, and who says so; null is an open end. */
export interface RecordRange {
  readonly low: number | null;
  readonly high: number | null;
  readonly from: 'circuit' | 'author';
}

/** What today's rules say where earlier ones said otherwise. */
export interface JudgedToday {
  /** Version of the rules that judged it. */
  readonly rules: number;
  /** Of the reading's verdict, of the outcome it fell into, or of the verdict over the repair. */
  readonly of: JudgedOtherwise['of'];
  /** What today's say, in words. */
  readonly words: string;
}

/** What was done and found, at a step or in a test that no step asked for. */
interface RecordMade extends Moment {
  readonly title: string;
  readonly family: string;
  readonly where: string;
  readonly setup: string;
  readonly instrument: string;
  /** What a sound circuit shows there; empty where nothing is known of it. */
  readonly expected: string;
  readonly expectedRange: RecordRange | null;
  readonly found: string;
  readonly reading: RecordReading | null;
  readonly verdict: Verdict | 'as expected' | 'not as expected' | null;
  readonly judgement: string;
}

/** One answer. `verdict` says how it compares with what a healthy circuit shows; null where nothing is expected. */
export interface RecordLine extends RecordMade {
  /** Counts the answers from 1. */
  readonly number: number;
  readonly kind: 'reading' | 'look' | 'answer' | 'done' | 'impossible';
  readonly step: string;
  /** Absent where today's rules say the same. */
  readonly today?: JudgedToday;
  readonly outcome: string;
  /** Why it could not be done, or why it was not made again; empty otherwise. */
  readonly reason: string;
  /** The event of the test that answered it, or that said its connector or state out of reach; absent where the person answered it. */
  readonly by?: number;
  /** Taken back by the person, or not on the way to the conclusion any more. */
  readonly standing: 'standing' | 'taken back' | 'off the way';
  /** The capture that gave it; absent when it was typed or seen. */
  readonly capture?: RecordCapture;
}

/** A capture that gave an answer; `found` is what was measured, in one line. */
export interface RecordCapture extends Pick<StepCapture, 'name' | 'sha256' | 'from' | 'channel'> {
  readonly found: string;
  readonly measures: CaptureMeasured;
  /** What is against the signal, a sentence each. */
  readonly words: readonly string[];
  /** Where the edges of one channel stand in the turn of another, a line for each pair. */
  readonly pairs: readonly string[];
  /** Further files: of the same crank, and the known-good one; absent where there are none. */
  readonly beside?: readonly {
    readonly what: 'second' | 'good';
    readonly name: string;
    readonly sha256: string;
  }[];
  readonly channels: StepCapture['channels'];
}

/** One round of moving or warming. */
export interface RecordWatched extends Moment {
  readonly step: string;
  readonly found: string;
  /** Null where nobody said how long. */
  readonly minutes: number | null;
  readonly drops: number;
  readonly capture?: RecordCapture;
}

/** A test that no step asked for. */
export interface RecordTest extends RecordMade {
  /** Counts these tests from 1. */
  readonly number: number;
  /** Made after the conclusion that stands: it says how the vehicle is since, and is no evidence for the conclusion. */
  readonly afterRepair: boolean;
  /** When it was made, where it was only written down: `before the job`, `14:05`; absent where it was made then. */
  readonly made?: string;
  /** In the person's words; absent where there are none. */
  readonly note?: string;
  /** The capture that gave it; absent when it was typed or seen. */
  readonly capture?: RecordCapture;
  /** Absent where today's rules say the same. */
  readonly today?: JudgedToday;
}

/** Who authorised or declined the work. */
export interface RecordWork extends Moment {
  readonly answer: WorkAnswer;
  readonly by: string;
  /** How, and up to what it may cost; may be empty. */
  readonly words: string;
}

/** One caution that was read, and where. */
export interface RecordCaution extends Moment {
  /** Empty at a test that no step asked for. */
  readonly step: string;
  /** Where it stood in short and was not asked for again: when and at which step it was read. Absent where it was read here. */
  readonly earlier?: Moment & { readonly step: string };
  readonly id: string;
  readonly word: string;
  /** Whole, as it was shown; in short where it was read earlier. */
  readonly text: string;
  /** Whom another program named as having read it; empty where the person pressed the key here. */
  readonly readBy: string;
}

/** A value of the car that somebody knew. */
export interface RecordKnown extends Moment {
  readonly quantity: string;
  readonly words: string;
  /** What it is, in words: `7.76 to 8.24 V`; and as it was typed. */
  readonly is: string;
  readonly typed: string;
  /** From where it is known, in words. */
  readonly from: string;
  readonly of: 'job sheet' | 'session';
  readonly standing: 'standing' | 'taken back' | 'said anew';
}

/** An answer that was taken back. */
export interface RecordCorrection extends Moment {
  readonly step: string;
  /** Number of the line that was taken back. */
  readonly line: number;
  readonly found: string;
}

/** What the session came to, and how far the readings bear it. */
export interface RecordConclusion extends Moment {
  readonly title: string;
  /** True when the person named it and not the procedure. */
  readonly own: boolean;
  readonly faults: readonly { readonly id: string; readonly words: string }[];
  readonly repair: string;
  /** Where along a wire, as in `in the signal wire between ...`; empty where that is not known more narrowly. */
  readonly place: string;
  /** Plain words for the customer; empty when the procedure has none. */
  readonly customer: string;
  /** Three independent pieces of evidence; null when it was not weighed. */
  readonly proven: boolean | null;
  /**
   * Where other rules than this program's judged it, or it is only shown: which, which are today's, whether those came to
   * the same, and what came out otherwise. `not`: nothing was derived again.
   */
  readonly judgedBy?: {
    readonly rules: number;
    readonly today: number;
    readonly again: 'not' | 'same' | 'other';
    readonly differs: readonly string[];
  };
  /** No fault was found: what is ruled out was right when it was tested, and may fail when the fault is there again. */
  readonly nothingFound?: true;
  /** It stands for every fault of the circuit, and so explains nothing: the cause is still open. */
  readonly leavesOpen?: true;
  /** The one reading, made once, that it rests on; null where it rests on none alone. */
  readonly restsOn: { readonly reading: number; readonly words: string } | null;
  readonly evidence: readonly RecordEvidence[];
  readonly ruledOut: readonly RecordRuledOut[];
  /** Other repairs that no test has ruled out, in words; empty where nothing was weighed. */
  readonly notRuledOut: readonly string[];
}

/** A reading that the conclusion rests on. */
export interface RecordEvidence {
  /** Number of the event that recorded the reading; null in sessions of early versions, which kept only words. */
  readonly reading: number | null;
  readonly test: string;
  readonly where: string;
  readonly found: string;
  readonly pointsTo: string;
  /** False where it carries the conclusion and is no independent piece. */
  readonly counted: boolean;
}

/** A short whose place was measured along a stretch of wire. */
export interface RecordShort extends Moment {
  /** `the signal wire between ...`, and what it touches. */
  readonly stretch: string;
  readonly touches: string;
  /** As typed. */
  readonly typed: string;
  /** `0.8 to 1.1 m from the sensor's connector`, or that it cannot be told. */
  readonly found: string;
}

/** A repair that the readings exclude. */
export interface RecordRuledOut {
  readonly words: string;
  /** The readings that rule it out, each with what was found. */
  readonly by: string;
  /** Numbers of the events that recorded them; empty in sessions of early versions, which kept only words. */
  readonly readings: readonly number[];
  /** Nobody had it under suspicion on this car, as a neighbour that was not named or wires that nobody had apart: not for the customer. */
  readonly assumed?: true;
}

/** What the tests and drives after the repair showed. */
export interface RecordRetest {
  readonly rows: readonly RetestRow[];
  /** Steps that must pass after the repair and were not repeated. */
  readonly missing: readonly string[];
  readonly verdict: RepairVerdict | null;
  /** What was reported of driving the vehicle after it, often days later. */
  readonly drives: readonly (Moment & { readonly code: DrivenCode; readonly words: string })[];
  readonly words: string;
  /** Absent where today's rules give the same verdict. */
  readonly today?: JudgedToday;
}

/** One test, before the repair and after it. */
export interface RetestRow extends Moment {
  readonly step: string;
  readonly title: string;
  readonly where: string;
  readonly expected: string;
  readonly expectedRange: RecordRange | null;
  /** What the same step showed before the repair; empty when it was not taken. */
  readonly before: string;
  readonly after: string;
  readonly reading: RecordReading | null;
  /** Null when the test could not be made. */
  readonly passed: boolean | null;
  /** The capture that gave it, and the one of the same step before the repair; absent without one. */
  readonly capture?: RecordCapture;
  readonly captureBefore?: RecordCapture;
}

/** What makes a session a drill. Nothing here tells the answer before it was revealed. */
export interface RecordDrill {
  readonly level: LevelName;
  /** Seed of the vehicle. */
  readonly seed: number;
  /** Salted hash of the answer. */
  readonly commitment: string;
  readonly assignment: AssignmentNote | null;
  /** Tests that do damage or hurt, which the bench stopped. */
  readonly stopped: readonly (Moment & {
    readonly test: string;
    readonly where: string;
    readonly setup: string;
    readonly hazard: TestHazard;
    /** The hazard in words. */
    readonly words: string;
  })[];
  /** Tests asked for before their cautions were acknowledged, with the text of the cautions. */
  readonly passedOver: readonly (Moment & { readonly cautions: readonly string[] })[];
  /** Null until it was revealed. */
  readonly answer: RecordAnswer | null;
  /** Null until the answer was revealed, and where nobody asked for it. */
  readonly debrief: RecordDebrief | null;
}

/** What was wrong in a drill, and the score. */
export interface RecordAnswer extends Moment {
  readonly faults: readonly { readonly id: string; readonly words: string }[];
  readonly repairs: readonly string[];
  readonly salt: string;
  readonly right: boolean;
  readonly points: number;
  readonly score: readonly ScorePart[];
  readonly minutes: number;
  readonly yardstickMinutes: number;
  /** Over the assignment's time limit on the clock. */
  readonly late: boolean;
}

/** What each reading was worth, and the best way beside the one taken. */
export interface RecordDebrief {
  /** The whole debrief as it is read, line by line. */
  readonly lines: readonly string[];
  /** Repairs that no test tells from the true one on this vehicle. */
  readonly alike: readonly string[];
  readonly readings: readonly DebriefReading[];
  /** Of those, what speaks for the true repair, the strongest first. */
  readonly evidence: readonly DebriefEvidence[];
  /** The strongest rival left that no reading speaks against; null when nothing is missing. */
  readonly left: string | null;
  readonly plan: DebriefPlan;
  readonly next: string;
}

/** What one reading of the drill cost and told. */
export interface DebriefReading {
  /** Number of the event in the session. */
  readonly event: number;
  readonly words: string;
  readonly found: string;
  readonly minutes: number;
  /** How far it moved the chances of the repairs. */
  readonly bits: number;
  /** How many times likelier it made the true repair against the rival `against`. */
  readonly ratio: number;
  readonly against: string;
  readonly proves: boolean;
  readonly toldNothing: boolean;
}

/** A reading that proves the true repair. */
export type DebriefEvidence = Pick<
  DebriefReading,
  'event' | 'words' | 'found' | 'ratio' | 'against'
>;

/** The tests of the best plan on this vehicle, and how sure it ends. */
export interface DebriefPlan {
  readonly steps: readonly Pick<DebriefReading, 'words' | 'found' | 'minutes'>[];
  readonly minutes: number;
  /** On average over all faults. */
  readonly expectedMinutes: number;
  readonly chance: number;
}
