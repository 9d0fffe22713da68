/** What happens in a drill, as it is kept in the file. The last event alone holds the answer. */

import type { Circuit } from '../circuit/circuit.ts';
import type { KeptShown } from '../circuit/shown-of.ts';
import type { Meter } from '../circuit/test.ts';
import type { Procedure, SignalWord } from '../procedure/procedure.ts';
import type { StepCapture, When } from '../session/events.ts';
import type { DrillTest } from './drill-test.ts';
import type { LevelName } from './levels.ts';

export const DRILL_FORMAT = 1;

/** The first event: everything needed to play the drill again. */
export interface DrillOpened extends When {
  readonly type: 'drill-opened';
  readonly format: typeof DRILL_FORMAT;
  readonly program: string;
  readonly id: string;
  readonly student: string;
  readonly level: LevelName;
  readonly seed: number;
  /** Salted hash of the answer. */
  readonly commitment: string;
  readonly complaint: string;
  /** Repair that the work order says was done before. */
  readonly earlierRepair: string | null;
  readonly circuit: Circuit;
  /** To be followed if the student wants to; null for a drill on a circuit alone. */
  readonly procedure: Procedure | null;
  readonly meter: Meter;
  readonly assignment: AssignmentNote | null;
  /** It was begun with a file of actions. Files from before this was kept do not say. */
  readonly fromActions?: boolean;
}
/** Which line of which assignment this drill belongs to. */
export interface AssignmentNote {
  readonly name: string;
  /** Position in the assignment's list, from 1. */
  readonly part: number;
  /** Minutes on the clock, or null without limit. */
  readonly limitMinutes: number | null;
}

export interface CautionsRead extends When {
  readonly type: 'drill-cautions-read';
  readonly state: string;
  readonly cautions: readonly {
    readonly id: string;
    readonly word: SignalWord;
    readonly text: string;
  }[];
}
/** A test was asked for before its cautions were acknowledged. */
export interface CautionPassedOver extends When {
  readonly type: 'drill-caution-passed-over';
  readonly cautions: readonly string[];
}

/** A number as the meter shows it (null is OL), or a look. */
export type DrillShown = KeptShown;

export interface DrillMeasured extends When {
  readonly type: 'drill-measured';
  readonly test: DrillTest;
  readonly words: string;
  /** As the instrument shows it, in words. */
  readonly found: string;
  readonly shown: DrillShown;
  readonly minutes: number;
  /** Step of the procedure that asked for it, and where it led. */
  readonly step: string | null;
  readonly go: string | null;
  /** What the scope saved, when it did; then `shown` is the look that was measured of it. */
  readonly capture?: StepCapture;
}

/** The bench stopped a test that does damage or hurts. */
export interface TestStopped extends When {
  readonly type: 'drill-test-stopped';
  readonly test: DrillTest;
  readonly hazard: Hazard;
  readonly reason: string;
  /** What would have happened. */
  readonly would: string;
}
const HAZARDS = ['ohms-on-live', 'lamp-on-module', 'clipped-in'] as const;
export type Hazard = (typeof HAZARDS)[number];

/** A step of the procedure without a reading: something done or asked. */
export interface StepFollowed extends When {
  readonly type: 'drill-step-followed';
  readonly step: string;
  readonly words: string;
  readonly minutes: number;
  readonly go: string;
}
export interface DrillNoted extends When {
  readonly type: 'drill-noted';
  readonly text: string;
}
export interface DrillResumed extends When {
  readonly type: 'drill-resumed';
  readonly program: string;
  /** A file of actions went on with it. */
  readonly fromActions?: boolean;
}
/** The student's answer: repairs; none when the drill is given up. */
export interface DrillDiagnosed extends When {
  readonly type: 'drill-diagnosed';
  readonly repairs: readonly string[];
}

/** The last event. */
export interface DrillRevealed extends When {
  readonly type: 'drill-revealed';
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
export interface ScorePart {
  readonly name: 'diagnosis' | 'evidence' | 'time' | 'safety';
  readonly points: number;
  readonly most: number;
  readonly why: string;
}

/** Written by the log itself. */
export interface LogNote extends When {
  readonly type: 'recovered' | 'segment-continued';
}

export type DrillEvent =
  | DrillOpened
  | CautionsRead
  | CautionPassedOver
  | DrillMeasured
  | TestStopped
  | StepFollowed
  | DrillNoted
  | DrillResumed
  | DrillDiagnosed
  | DrillRevealed
  | LogNote;
