/**
 * What the circuit model adds to a session, a drill or not: suspects, the next test, and the weight of a conclusion.
 * Words are for a person; the ids, numbers and tests beside them for a program.
 */
import type { Look, MeterUnit, Shown, Test } from '../circuit/test.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Slices } from '../suspects/slices.ts';
import type { CarView } from './car-view.ts';
import type { WeighedConclusion } from './command.ts';
import type { EventNumber, ExpectedShown } from './events.ts';
import type { GoodHere } from './good-here.ts';
import type { Overturned } from './overturned.ts';
import type { PossibleValues } from './possible-values.ts';
import type { Session } from './session.ts';

/** What the model has to say of any state of one session. */
export interface Advisor {
  /**
   * The diagnosis at this state of a session. Worked out when it is first asked for, part by part, and once: the same
   * state gets the same object.
   */
  readonly diagnosis: (session: Session) => Diagnosis;
  /** Whether the suspects and the car of a diagnosis are worked out, so that asking for them takes no time. */
  readonly isReady: (session: Session) => boolean;
  /** Works them out in slices. Who needs them sooner asks for them; nothing hangs on how far this has come. */
  readonly prepare: (session: Session) => Slices<void>;
  /** The same for the weight of a conclusion. */
  readonly prepareWeigh: (session: Session, faults: readonly string[]) => Slices<void>;
  /** The suspects of its diagnosis. */
  readonly suspects: (session: Session) => SuspectView;
  /** The next tests of its diagnosis. */
  readonly nextTests: (session: Session) => readonly Proposal[];
  /** The weight of a conclusion in its diagnosis. */
  readonly weigh: (session: Session, faults: readonly string[]) => Weighed;
}

/** All tests that are proposed at a state, best first. */
export function allTests(advisor: Advisor, session: Session): readonly Proposal[] {
  const { nextTests, furtherTests } = advisor.diagnosis(session);
  return [...nextTests, ...furtherTests];
}

/** What can be known after the readings of a session, up to its conclusion where it has come to one. */
export interface Diagnosis {
  /** Repairs by present chance, best first, after all standing answers and tests of no step. */
  readonly suspects: SuspectView;
  /** The three tests that would tell most now, best first; empty when nothing would. */
  readonly nextTests: readonly Proposal[];
  /** A few more, in the same order. Neither has a test that was set aside. */
  readonly furtherTests: readonly Proposal[];
  /** How a search goes on for a fault that comes and goes and did not come when it was moved; null where there is none. */
  readonly asleep: Asleep | null;
  /** Points of cars, as the model has them, that the readings leave; null where unknown values are not weighed. */
  readonly carsLeft: readonly Float64Array[] | null;
  /** What the readings have shown of this car; null where its unknown values are not weighed. */
  readonly car: CarView | null;
  /** What is good for this car in a test that shows a number; null for others, and where cars are not weighed. */
  readonly goodHere: (test: Test) => GoodHere | null;
  /** What is good in a test: for this car where its unknown values are weighed, else in the circuit. */
  readonly expected: (test: Test) => ExpectedShown;
  /** What a test that shows a number can show, whatever is wrong; null for others, and where cars are not weighed. */
  readonly possible: (test: Test) => PossibleValues | null;
  /** Evidence for and against a conclusion with these faults (empty for "no fault found"). */
  readonly weigh: (faults: readonly string[]) => Weighed;
}

/** A search for a fault that does not come. */
export interface Asleep {
  /** The test that is likeliest to show it for its minutes; null once none is worth them. */
  readonly first: Proposal | null;
  /** The end, once no test is worth its minutes, no step of the tree that moves or warms something neither; else null. */
  readonly end: SuspectRow | null;
}

/** What the readings are worth for a conclusion, and what is better done before it is accepted. */
export interface Weighed extends WeighedConclusion {
  readonly left: readonly string[];
  readonly support: Support;
  /** After all readings, 0 to 1. */
  readonly chance: number;
  /** Independent pieces of evidence still missing for "proven", 0 to 3. */
  readonly missing: number;
  /** Set when no single fault explains the readings, as in `SuspectView`. */
  readonly unexplained: string | null;
  readonly hangsOn: EventNumber | null;
  readonly better: Better;
  /** Cheap tests that would give them, the one to make again first. */
  readonly wouldProve: readonly Proposal[];
  /** Tests that would tell where along its wire the fault is; empty where that is told, or no question. */
  readonly wouldPlace: readonly Proposal[];
}

/**
 * Whether the readings bear a conclusion out; `too-many` where what they leave of it takes more repairs than anybody would
 * make to try: then it names none.
 */
export type Support = 'borne-out' | 'too-many' | 'unlikely';

/** The one thing that is better than to accept a conclusion now; weigh-conclusion.ts decides which it is. */
export type Better =
  /** The answer that led the tree here is contradicted by its repeats, and the readings do not bear the conclusion out. */
  | { readonly kind: 'take-back'; readonly overturned: Overturned }
  /** It hangs on one reading, or one does not fit what it stands on (`isOdd`): that one once more. */
  | {
      readonly kind: 'repeat';
      readonly proposal: Proposal;
      readonly reading: EventNumber;
      readonly isOdd: boolean;
    }
  /** The readings do not bear it out: the test that tells most. */
  | { readonly kind: 'first'; readonly proposal: Proposal }
  /** The readings speak for this repair, or for few where the conclusion leaves many. */
  | { readonly kind: 'instead'; readonly row: SuspectRow }
  /** It is borne out and leaves several repairs: the test that may leave fewer. Whoever can live with them may accept. */
  | { readonly kind: 'narrow'; readonly proposal: Proposal }
  /** It is borne out and not proven: the cheapest test that would prove it, `isAgain` one that was made. Whoever asks for no proof may accept. */
  | { readonly kind: 'prove'; readonly proposal: Proposal; readonly isAgain?: boolean }
  /** Nothing: it is proven, or no test at hand would add to it. */
  | { readonly kind: 'accept' };

/** The reading that a conclusion rests on: without it, it would not stand. Null for none. */
export function readingItRestsOn({
  hangsOn,
  better,
}: Pick<Weighed, 'hangsOn' | 'better'>): EventNumber | null {
  return better.kind === 'repeat' && !better.isOdd ? better.reading : hangsOn;
}

/** Whether a conclusion is not to be accepted as it is; that proof is missing, or that it could name less, does not hold it up. */
export function isHeldUp({ better }: Pick<Weighed, 'better'>): boolean {
  switch (better.kind) {
    case 'take-back':
    case 'repeat':
    case 'first':
    case 'instead':
      return true;
    case 'narrow':
    case 'prove':
    case 'accept':
      return false;
  }
}

/** The test that is to be made before a conclusion is accepted, or may be; null for none. One that would only prove it is none. */
export function firstTest(better: Better | null): Proposal | null {
  switch (better?.kind) {
    case 'repeat':
    case 'first':
    case 'narrow':
      return better.proposal;
    case 'take-back':
    case 'instead':
    case 'prove':
    case 'accept':
    case undefined:
      return null;
  }
}

/** What may be wrong, as lists and reports show it. */
export interface SuspectView {
  readonly rows: readonly SuspectRow[];
  /** One sentence on what the last reading changed, or null before the first. */
  readonly changed: string | null;
  /** Whether they are weighed as faults that come and go: then a good reading rules none of them out. */
  readonly intermittent: boolean;
  /** Set when no suspect explains the readings: which reading disagrees most and what to look at. */
  readonly unexplained: string | null;
  /** The same in facts; null as well while the readings are explained. */
  readonly unexplainedBy: {
    readonly reading: EventNumber | null;
    /** Two faults that would explain them. */
    readonly pair: readonly string[] | null;
  } | null;
  /** One sentence naming the repairs left that no test at hand tells apart; null while a test could, or one is left. */
  readonly group: string | null;
  /** Those repairs by their ids; empty without a group. */
  readonly groupRepairs: readonly string[];
}

/** One repair with the faults that it puts right. */
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

/** The conclusion on a row: on its faults, or where nothing is wrong in its words. */
export function concludedOn({ words, faults }: SuspectRow): {
  readonly words: string | null;
  readonly faults: readonly string[];
} {
  const named = faults.map(({ id }) => id).filter((id) => id !== HEALTHY);
  return { words: named.length === 0 ? words : null, faults: named };
}

/** A test that is worth making now, with all that a person needs to choose it. */
export interface Proposal {
  readonly id: string;
  readonly words: string;
  readonly test: Test;
  /** The step of the procedure that asks for it; null when none does. */
  readonly step: string | null;
  readonly minutes: number;
  /** Instruments it takes. */
  readonly needs: readonly string[];
  /** What the leading suspects would show there; `faults` are theirs by id, none for the healthy circuit. */
  readonly shows: readonly {
    readonly faults: readonly string[];
    readonly suspect: string;
    readonly shown: string;
  }[];
  readonly why: string;
  /** Expected drop in the uncertainty about the repair, in bits; null for a test that is to support a conclusion. */
  readonly bits: number | null;
  /** For looks: what can be seen. For numbers: the healthy range in words. */
  readonly healthy: string;
  readonly kind: 'number' | 'look';
  /** Of a number; null for a look. */
  readonly unit: MeterUnit | null;
  /** The same as `healthy`, to be kept with the reading. */
  readonly expected: ExpectedShown;
  readonly looks: readonly Look[];
  readonly likely: Shown | null;
}
