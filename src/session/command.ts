/** What can be asked of a session, and what the model adds to a conclusion. `decide.ts` says what comes of it. */
import type { Look, Meter, Test } from '../circuit/test.ts';
import type {
  Concluded,
  EvidenceLine,
  ExpectedShown,
  ExtraReading,
  SessionClosed,
  StepCapture,
} from './events.ts';

/** What a person (or an answers file) can ask for. Values in SI units; `Infinity` is the meter's OL. */
export type Command =
  /** Of the present step, or of the step named (a retest). */
  | { readonly type: 'acknowledge-cautions'; readonly step?: string }
  /** With a capture the value is the one measured of it. */
  | {
      readonly type: 'record-reading';
      readonly typed: string;
      readonly value: number;
      readonly capture?: StepCapture;
    }
  | {
      readonly type: 'choose-outcome';
      readonly outcome: string;
      readonly look?: Look;
      readonly capture?: StepCapture;
    }
  | { readonly type: 'mark-done' }
  | { readonly type: 'cannot-do'; readonly reason: string }
  /** Takes back the answer of the trail position, or the last one. */
  | { readonly type: 'go-back'; readonly to?: number }
  | { readonly type: 'add-note'; readonly text: string }
  | {
      readonly type: 'change-instruments';
      readonly instruments: readonly string[];
      readonly meter: Meter;
    }
  | {
      readonly type: 'record-extra';
      readonly test: Test;
      readonly words: string;
      readonly typed: string;
      readonly shown: ExtraReading['shown'];
      readonly expected?: ExpectedShown;
      readonly capture?: StepCapture;
    }
  | { readonly type: 'pause' }
  | { readonly type: 'resume'; readonly program: string }
  /** Accepts the tree's conclusion, or names one's own faults and repair. */
  | {
      readonly type: 'conclude';
      readonly own?: {
        readonly title: string;
        readonly faults: readonly string[];
        readonly repair: string;
      };
      readonly weighed?: WeighedConclusion;
    }
  | {
      readonly type: 'record-retest';
      readonly step: string;
      readonly typed: string;
      readonly value: number | null;
      readonly look: Look | null;
      readonly outcome: string;
      readonly capture?: StepCapture;
    }
  | { readonly type: 'cannot-retest'; readonly step: string; readonly reason: string }
  | { readonly type: 'close'; readonly verdict: SessionClosed['verdict']; readonly words: string };

/** What the circuit model says of a conclusion, from `weigh-conclusion.ts`. */
export interface WeighedConclusion {
  readonly evidence: readonly EvidenceLine[];
  readonly ruledOut: Concluded['ruledOut'];
  readonly proven: boolean;
}
