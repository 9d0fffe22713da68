/** What the circuit model adds to a session: suspects, the next test, and the weight of a conclusion. */
import type { Look, Shown, Test } from '../circuit/test.ts';
import type { WeighedConclusion } from './command.ts';
import type { ExpectedShown } from './events.ts';
import type { Session } from './session.ts';

export interface Advisor {
  /** Repairs by present chance, best first, after all standing answers and extra readings. */
  readonly suspects: (session: Session) => SuspectView;
  /** The three tests that would tell most now, best first; empty when nothing would. */
  readonly nextTests: (session: Session) => readonly Proposal[];
  /** Evidence for and against a conclusion with these faults (empty for "no fault found"). */
  readonly weigh: (
    session: Session,
    faults: readonly string[],
  ) => WeighedConclusion & {
    /** Independent pieces of evidence still missing for "proven", 0 to 3. */
    readonly missing: number;
    /** Set when no single fault explains the readings, as in `SuspectView`. */
    readonly unexplained: string | null;
    /** Cheap tests that would give them. */
    readonly wouldProve: readonly Proposal[];
  };
}

export interface SuspectView {
  readonly rows: readonly SuspectRow[];
  /** One sentence on what the last reading changed, or null before the first. */
  readonly changed: string | null;
  /** Whether they are weighed as faults that come and go: then a good reading rules none of them out. */
  readonly intermittent: boolean;
  /** Set when no suspect explains the readings: which reading disagrees most and what to look at. */
  readonly unexplained: string | null;
  /** One sentence naming the repairs left that no test at hand tells apart; null while a test could, or one is left. */
  readonly group: string | null;
}

export interface SuspectRow {
  readonly repair: string;
  /** Plain words of the repair, e.g. "mend the signal wire". */
  readonly words: string;
  /** Faults behind it, likeliest first. */
  readonly faults: readonly {
    readonly id: string;
    readonly words: string;
    readonly chance: number;
  }[];
  /** 0 to 1; all rows together 1. */
  readonly chance: number;
}

export interface Proposal {
  readonly id: string;
  readonly words: string;
  readonly test: Test;
  readonly minutes: number;
  /** Instruments it takes. */
  readonly needs: readonly string[];
  /** What the leading suspects would show there. */
  readonly shows: readonly { readonly suspect: string; readonly shown: string }[];
  readonly why: string;
  /** For looks: what can be seen. For numbers: the healthy range in words. */
  readonly healthy: string;
  readonly kind: 'number' | 'look';
  /** The same as `healthy`, to be kept with the reading. */
  readonly expected: ExpectedShown;
  readonly looks: readonly Look[];
  readonly likely: Shown | null;
}
