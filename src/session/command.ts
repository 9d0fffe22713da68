/** What can be asked of a session, and what the model adds to a conclusion. `decide.ts` says what comes of it. */
import type { KnownValue } from '../circuit/known-values.ts';
import type { KnownFrom } from '../circuit/known-words.ts';
import type { KeptShown } from '../circuit/shown-of.ts';
import type { Look, Meter, Test } from '../circuit/test.ts';
import type {
  AnswerRevealed,
  DrivenCode,
  EventNumber,
  EvidenceLine,
  ExpectedShown,
  Hand,
  RuledOutLine,
  SessionClosed,
  StateAside,
  StepCapture,
  TestHazard,
  TestMade,
  WakingVain,
  WakingWatched,
  When,
  WorkAnswer,
} from './events.ts';
import type { ShortDrops, ShortStretch } from './place-short.ts';

/** What a person, an answers file or another program can ask for. Values in SI units; `Infinity` is the meter's OL. */
export type Command =
  /**
   * Of the present step, of the step named (a retest), or of a test that no step asks for: all that are pending, or only
   * those of `ids`. `readBy` is the person whom a program names as having read them.
   */
  | {
      readonly type: 'acknowledge-cautions';
      readonly step?: string;
      readonly test?: Test;
      readonly ids?: readonly string[];
      readonly readBy?: string;
    }
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
      readonly vain?: WakingVain;
      /** It stands in a file, which an earlier version of the program took although the rounds of its step contradict it. */
      readonly saved?: true;
    }
  | { readonly type: 'mark-done' }
  | { readonly type: 'cannot-do'; readonly reason: string }
  /** What a value of this car is; null for not known after all. Until the conclusion, and not on a drill. */
  | ({
      readonly type: 'set-value';
      readonly typed: string;
      readonly from: KnownFrom;
    } & KnownValue)
  /** Takes back the answer of the trail position, or what was done last: an answer, or a value that was set. */
  | { readonly type: 'go-back'; readonly to?: number }
  | { readonly type: 'add-note'; readonly text: string }
  | {
      readonly type: 'change-instruments';
      readonly instruments: readonly string[];
      readonly meter: Meter;
    }
  /** Any test, at any time: inside a tree, in free order, at the conclusion, after the repair. */
  | {
      readonly type: 'record-test';
      readonly test: Test;
      readonly typed: string;
      readonly shown: KeptShown;
      readonly expected: ExpectedShown | null;
      readonly capture?: StepCapture;
      readonly made?: TestMade;
      readonly note?: string;
    }
  /** Where along a stretch of wire a short sits, by the drops along it. Until the conclusion, and not on a drill. */
  | {
      readonly type: 'place-short';
      readonly stretch: ShortStretch;
      readonly unplugged: readonly string[];
      readonly typed: string;
      readonly drops: ShortDrops;
    }
  /**
   * What was seen in one round of moving or warming, which answers nothing: at the present step, or at a step that is
   * made again after the repair.
   */
  | ({ readonly type: 'watch-waking'; readonly step?: string } & Omit<
      WakingWatched,
      'type' | 'step' | keyof When
    >)
  /** The present step is answered by a test of the session: see `answering-test.ts`. */
  | { readonly type: 'answer-by-test'; readonly by: EventNumber }
  /** The person cannot make a test, which is proposed no more, or can after all. */
  | { readonly type: 'set-test-aside'; readonly test: Test; readonly aside: boolean }
  /** The connector of a part cannot be reached, with the reason, or can be after all. Not on a drill. */
  | {
      readonly type: 'set-connector-aside';
      readonly part: string;
      readonly aside: boolean;
      readonly reason: string;
    }
  /** The vehicle cannot be had in this state, with the reason, or can be after all. Not on a drill. */
  | {
      readonly type: 'set-state-aside';
      readonly state: StateAside;
      readonly aside: boolean;
      readonly reason: string;
    }
  /** The present step needs a connector or a state that was said out of reach in event `by`: see `out-of-reach.ts`. */
  | { readonly type: 'go-round'; readonly by: EventNumber }
  | { readonly type: 'pause' }
  | { readonly type: 'resume'; readonly program: string; readonly by: Hand }
  /** Accepts the tree's conclusion, or names one's own: faults of the circuit, or words where there are none. */
  | {
      readonly type: 'conclude';
      readonly own?: { readonly words: string | null; readonly faults: readonly string[] };
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
  /** After the repair the vehicle was driven; also once the record is closed. */
  | { readonly type: 'report-drive'; readonly code: DrivenCode; readonly words: string }
  /** What the customer said about the work, after a conclusion and until the record is closed. */
  | {
      readonly type: 'answer-work';
      readonly answer: WorkAnswer;
      readonly by: string;
      readonly words: string;
    }
  | { readonly type: 'close'; readonly verdict: SessionClosed['verdict'] }
  /** On a drill only: what its bench says of a test or of the answer. */
  | { readonly type: 'stop-test'; readonly test: Test; readonly hazard: TestHazard }
  | { readonly type: 'pass-over'; readonly cautions: readonly string[] }
  | { readonly type: 'reveal'; readonly answer: RevealedAnswer };

/** What a drill reveals, without when. */
export type RevealedAnswer = Omit<AnswerRevealed, 'type' | keyof When>;

/** What the circuit model says of a conclusion; from the advisor. */
export interface WeighedConclusion {
  readonly evidence: readonly EvidenceLine[];
  readonly ruledOut: readonly RuledOutLine[];
  readonly proven: boolean;
  /** Of the faults that the conclusion stands for, those that the readings leave standing; absent where nobody asked. */
  readonly left?: readonly string[];
  /** The reading without which it would be less likely than not; none where it hangs on none alone. */
  readonly hangsOn?: EventNumber | null;
}
