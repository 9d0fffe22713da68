/** Everything the screens are given: files, sessions, the model and the clock come in as functions. */
import type { ReactNode } from 'react';
import type { Circuit } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import type { Test } from '../circuit/test.ts';
import type { DrillDesk } from '../drill/drill-desk.ts';
import type { CaptureFolder } from '../files/list-captures.ts';
import type { Settings } from '../files/settings.ts';
import type { Job } from '../procedure/job.ts';
import type { MeasureStep, Step } from '../procedure/procedure.ts';
import type { Replaceable } from '../procedure/read-repair.ts';
import type { ExpectedReading } from '../quantity/parse-reading.ts';
import type { Advisor } from '../session/advisor.ts';
import type { CaptureAnswer, CaptureAsk } from '../session/capture-step.ts';
import type { SessionDriver, VehicleAnswer } from '../session/driver.ts';
import type { Problem } from '../source/problem.ts';

/** The rooms below, as far as screens need them. */
export interface AppServices {
  readonly listProcedures: () => readonly ProcedureEntry[];
  /** Ready-made job sheets for the simulated vehicle. */
  readonly listDemoJobs: () => readonly DemoJob[];
  /** Newest first; each is read when it is asked for. */
  readonly listSessions: () => readonly (() => SavedSession)[];
  /** The newest of them and how many there are: enough for the start menu, however many there are. */
  readonly newestSessions: () => {
    readonly sessions: readonly SavedSession[];
    readonly count: number;
  };
  /** Places for leads in the procedure's circuit, for the pins and colours of the job sheet. */
  readonly terminalsOf: (procedureFile: string) => readonly { id: string; words: string }[];
  /** What of the procedure's circuit can have been replaced before. */
  readonly replaceablesOf: (procedureFile: string) => readonly Replaceable[];
  /** Its circuit, of whose values some can be known; null for a procedure without one. */
  readonly circuitOf: (procedureFile: string) => Circuit | null;
  /** What the simulated vehicle can have; `healthy` too. */
  readonly benchFaults: (procedureFile: string) => readonly { id: string; words: string }[];
  readonly open: (choice: SessionChoice) => Promise<OpenedSession | Problem>;
  /** Goes on where it stopped; the session is open again when this resolves. */
  readonly resume: (path: string) => Promise<OpenedSession | Problem>;
  readonly settings: SettingsAccess;
  /** Monotonic milliseconds, to tell a deliberate key from one typed ahead. */
  readonly clock: () => number;
  /** Further lines of the start menu: practice, records. */
  readonly more: readonly MenuExtra[];
}

/** A procedure by what a list of them shows. */
export interface ProcedureEntry {
  readonly file: string;
  readonly title: string;
  readonly about: string;
  readonly codes: readonly string[];
  readonly circuit: string | null;
}

/** A job sheet to practise with, and the fault that its vehicle has. */
export interface DemoJob {
  readonly file: string;
  readonly words: string;
  readonly complaint: string;
  /** The sensor that its circuit is about, in words; empty when there is no circuit. */
  readonly sensor: string;
  /** File of the procedure that goes with it. */
  readonly procedure: string;
  readonly job: Job;
  /** What this vehicle has; null when the job does not say. */
  readonly fault: string | null;
  /** The fault shows only to who moves the harness. */
  readonly intermittent: boolean;
}

/** A session to go on with or to read, as a line of the menu. */
export interface SavedSession {
  readonly path: string;
  readonly words: string;
  readonly when: string;
  readonly status: 'open' | 'paused' | 'concluded' | 'closed' | 'damaged';
  /** On a simulated vehicle: practice. */
  readonly simulated: boolean;
  /** False when it was opened and left without an answer or a note. */
  readonly begun: boolean;
}

/** What a new session is begun with. */
export interface SessionChoice {
  readonly procedureFile: string;
  readonly job: Job;
  readonly vehicle:
    | { readonly kind: 'real' }
    | { readonly kind: 'bench'; readonly fault: string; readonly intermittent: boolean };
}

/** The settings as a screen reads and changes them. */
export interface SettingsAccess {
  readonly values: () => Settings;
  /** The reason when it is refused or cannot be saved; then nothing has changed. */
  readonly set: <K extends keyof Settings>(key: K, value: Settings[K]) => string | null;
  readonly path: string;
}

/** Words of a line of the start menu, and what stands below it when it is marked. */
export interface MenuWords {
  readonly words: string;
  readonly about: string;
}

/** A line of the start menu that another room fills. */
export interface MenuExtra extends MenuWords {
  /** The whole screen; `leave` returns to the start. */
  readonly screen: (leave: () => void) => ReactNode;
}

/** A session on the screen, with the words and drawings that its vehicle needs. */
export interface OpenedSession {
  readonly driver: SessionDriver;
  /** Kept in memory only: nothing is left when the program ends. */
  readonly preview?: boolean;
  /** Whether the conclusion in force was read from a file, so that nobody has recomputed what it rests on. */
  readonly isAsFiled: () => boolean;
  /** Said before the first page: what the last check found wrong in a tree of one's own, or that there was none. */
  readonly notice?: string;
  /** What a later command finds it by: see `Desk.nameOf`. */
  readonly name: () => string;
  /** Null for a procedure without a circuit. */
  readonly advisor: Advisor | null;
  /** The wiring with the leads of a test on it; no lines when there is no circuit. */
  readonly sketch: (test: Test | null, columns: number, besides?: boolean) => readonly string[];
  /** Text with its `{terminal}` places filled for this vehicle. */
  readonly bind: (text: string) => string;
  readonly terminalWords: (id: string) => string;
  /** What cannot be read in this unit in this vehicle, with the reason; null when anything can. */
  readonly limits: (
    asked: Pick<MeasureStep, 'unit'>,
  ) => NonNullable<ExpectedReading['limit']> | null;
  /** The circuit as everybody knows it; null for a procedure without a circuit. */
  readonly model: Model | null;
  /** What a student does at a vehicle whose fault is hidden; null for a session that is no drill. */
  readonly drill: DrillDesk | null;
  /** The simulated vehicle's answer to a test that no step asks for; null with a real vehicle. */
  readonly benchShows: (test: Test) => VehicleAnswer | null;
  /**
   * Measures a capture file as the answer of `ask`; null asks the simulated vehicle for one of its own, which has
   * `fault` after a repair.
   */
  readonly measureCapture: (
    ask: CaptureAsk,
    path: string | null,
    beside?: CaptureBeside,
  ) => Promise<CaptureAnswer>;
  readonly captures: CaptureFiles;
  /** What the customer is told on the telephone: three sentences and prices; none before a conclusion, and on a drill. */
  readonly call: () => {
    readonly sentences: readonly string[];
    readonly prices: readonly string[];
  };
  /** What the repair costs with the testing, of the hours and price lines that a text names; null where it names none. */
  readonly estimate: (said: string) => string | null;
  readonly goodCaptures: GoodCaptures;
  /** The simulated vehicle after the repair; null with a real one. */
  readonly repaired: RepairedVehicle | null;
  /** How a scope is set for this test, as a line; null for other instruments and where nothing is known. */
  readonly scopeLine: (test: Test) => string | null;
  /** The small sums that fit a step, done with its own values. */
  readonly sums: (step: Step) => readonly StepSum[];
  /** One sum as typed, `wire --size 0.5 --length 3`: its lines, or why it cannot be done. */
  readonly calculate: (line: string, step: Step) => Promise<readonly string[]>;
}

/** What a simulated vehicle has after the repair, and what it shows then. */
export interface RepairedVehicle {
  readonly fault: string;
  readonly answers: (step: Step) => VehicleAnswer | null;
}

/** Known-good captures that are kept by vehicle. */
export interface GoodCaptures {
  /** One of what is asked, of a vehicle like this; null where none is kept. A capture is held against it. */
  readonly offered: (ask: CaptureAsk) => KeptCapture | null;
  /** Whether captures of this session can be kept as known-good. */
  readonly canKeep: () => boolean;
  /** Keeps those that passed after the repair. */
  readonly keep: () => Promise<KeptGood | Problem>;
}

/** A known-good capture that was kept from another vehicle. */
export interface KeptCapture {
  readonly path: string;
  /** The vehicle in the words of its folder. */
  readonly vehicle: string;
}

/** What became of the captures that were to be kept as known-good. */
export interface KeptGood {
  readonly vehicle: string;
  /** Paths under which they are kept. */
  readonly kept: readonly string[];
  /** Why others were not, a sentence each. */
  readonly left: readonly string[];
}

/** What belongs to a capture that is to be measured, or is held against it. */
export interface CaptureBeside {
  /** What a simulated vehicle has after the repair. */
  readonly fault?: string;
  /** File of the other channels of the same crank. */
  readonly second?: string;
  /** A known-good capture, by its file; or where the edges should stand, as `stated-edges` reads it. */
  readonly against?: string;
}

/** A walk through folders to a capture file. */
export interface CaptureFiles {
  /** Where the choice begins: the current folder if captures lie there, else where the last one was read. */
  readonly begin: () => CaptureFolder;
  /** What a name leads to that was chosen or typed in `folder`: what is in another folder, or a file, which need not exist. */
  readonly follow: (folder: string, typed: string) => CaptureFolder | { readonly file: string };
}

/** One of the small sums, filled in and done. */
export interface StepSum {
  /** Its name for `calc`. */
  readonly name: string;
  readonly title: string;
  readonly lines: readonly (readonly [label: string, value: string])[];
  /** How to do it again with other values, after `calc`. */
  readonly typed: string;
}
