/**
 * What the circuit model adds to a session, a drill or not: suspects, the next test, and the weight of a conclusion.
 * Words are for a person; the ids, numbers and tests beside them for a program.
 */
import type { Look, MeterUnit, Shown, Test } from '../circuit/test.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
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
  /** Whether those need more repairs than anybody would make to try: then it names none. */
  readonly isWide: boolean;
  /** After all readings, 0 to 1. */
  readonly chance: number;
  /** Independent pieces of evidence still missing for "proven", 0 to 3. */
  readonly missing: number;
  /** Set when no single fault explains the readings, as in `SuspectView`. */
  readonly unexplained: string | null;
  readonly hangsOn: EventNumber | null;
  /**
   * What is to be made before the conclusion is accepted: the test of the reading that it hangs on, once more, or where the
   * readings do not bear it out, the test that tells most. Null where neither is, or only a step can.
   */
  readonly first: Proposal | null;
  /** The repair that the readings speak for instead, where they do not bear the conclusion out; else null. */
  readonly instead: SuspectRow | null;
  /**
   * The answer that led the tree here and that its repeats contradict, where the readings do not bear the conclusion out:
   * it is to be taken back, and is answered by its repeat then. Null where there is none.
   */
  readonly overturned: Overturned | null;
  /** Cheap tests that would give them, the one to make again first. */
  readonly wouldProve: readonly Proposal[];
  /** Tests that would tell where along its wire the fault is; empty where that is told, or no question. */
  readonly wouldPlace: readonly Proposal[];
}

/**
 * What is better than to accept a conclusion: the test to make before it, or the cheapest that would prove it. Null where it
 * is proven, where nothing would prove it, or where the readings speak for another.
 */
export function betterThanAccepting(
  weighed: Pick<Weighed, 'first' | 'instead' | 'overturned' | 'proven' | 'wouldProve'>,
): Proposal | null {
  if (weighed.first) return weighed.first;
  const { proven, instead, overturned } = weighed;
  return proven || instead || overturned ? null : (weighed.wouldProve[0] ?? null);
}

/** Whether what is to be made first is the reading that the conclusion hangs on, and not another test. */
export function isMadeAgain({ hangsOn, first }: Pick<Weighed, 'hangsOn' | 'first'>): boolean {
  // A repeat is there to support the conclusion and tells nothing apart.
  return hangsOn !== null && first !== null && first.bits === null;
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
