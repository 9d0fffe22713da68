/** What the readings are worth for a conclusion, what would prove it, and what is to be made before it is accepted. */
import { BORNE_OUT, type Corroboration, EVIDENCE_NEEDED } from '../suspects/corroborate.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import { WORTH_DOING_BITS } from '../suspects/verdict.ts';
import {
  type Better,
  firstTest,
  type Proposal,
  type Support,
  type SuspectRow,
  type Weighed,
} from './advisor.ts';
import { type Basis, unexplained } from './basis.ts';
import type { EvidenceLine } from './events.ts';
import { DEPENDS, leaningOn, madeAgain, oddReading, type Repeat, restsOn } from './made-again.ts';
import type { Overturned } from './overturned.ts';
import { isUnplaced } from './place-words.ts';
import type { ProposedTests } from './proposed-tests.ts';
import type { SuspectSpace } from './suspect-space.ts';

/** A conclusion that leaves more repairs than these names none: it is no group to repair by, and nothing is proven by it. Our choice. */
const REPAIRS_MOST = 3;
/** Of repairs that no test tells apart the next one is named as well while those before it have less than this together. Our choice. */
const NAMED_ENOUGH = 0.95;
/** One with less chance than this is not worth its name among them. Our choice. */
const NAMED_LEAST = 0.02;
/** A fault that the readings moved by less than this part of what they moved another of the same conclusion is excluded. Our choice, as for repairs. */
const EXCLUDED_PART = 0.02;

/** What else is known when a conclusion is weighed: the other repairs, the next tests, a contradicted answer. */
export interface WeighedBeside {
  /** The repairs in their present order. */
  readonly rows: () => readonly SuspectRow[];
  /** The tests that tell most. */
  readonly proposed: ProposedTests;
  /** The answer that led to the conclusion and does not hold. */
  readonly overturned: Overturned | null;
  /** Faults that come and go are weighed. */
  readonly isIntermittent: boolean;
  /** The end of a search for one that did not come; null where it is not searched for, or some reading shows a fault. */
  readonly nothingFound: SuspectRow | null;
}

/** The weight of a conclusion with `faults`. */
export function weighConclusion(
  faults: readonly string[],
  basis: Basis,
  beside: WeighedBeside,
): Weighed {
  const { proposed } = beside;
  const { space, readings, standing, model } = basis;
  const weighed = space.weigh(space.namedBy(faults), standing);
  if (!weighed) return nothingFor(faults, basis);
  const eventAt = (at: number) => readings[at]!.event;
  const { hangsOn, chance } = weighed;
  const again = hangsOn === null ? null : madeAgain(hangsOn, DEPENDS, basis, proposed);
  const rests = again && restsOn(again, weighed, basis, proposed);
  const left = leftStanding(space, standing.ranking, faults);
  const support = supportOf(chance, repairsOf(left, basis));
  const odd = oddReading(support === 'borne-out' ? faults : null, basis, proposed);
  const proven = weighed.proven && support !== 'too-many';
  const isVague = repairsOf(faults, basis).length > REPAIRS_MOST;
  const isOfSeveral = repairsOf(left, basis).length > 1;
  const leans = proven ? null : leaningOn(weighed, basis, proposed);
  const held = heldUpBy({ faults, support, isVague, isOfSeveral, rests, odd, leans }, beside);
  let wouldProve: readonly Proposal[] | undefined;
  return {
    evidence: evidenceLines(weighed, eventAt),
    chance,
    // A list of repairs: that something is wrong, the conclusion itself says.
    ruledOut: weighed.ruledOut
      .filter(({ repair }) => repair !== HEALTHY)
      .map(({ repair, readings: by }) => ({ repair, by: [...new Set(by.map(eventAt))] })),
    proven,
    left,
    support,
    unexplained: unexplained(basis),
    missing: weighed.missing,
    hangsOn: hangsOn === null ? null : eventAt(hangsOn),
    get better(): Better {
      const [proposal] = held || proven ? [] : this.wouldProve;
      if (held || !proposal) return held ?? ACCEPT;
      const isAgain = readings.some(({ test }) => space.testAt(test).id === proposal.id);
      return { kind: 'prove', proposal, isAgain };
    },
    get wouldPlace() {
      return isUnplaced(model.circuit, left) ? proposed.nextTests : [];
    },
    get wouldProve() {
      // What nobody has shown is proven by nothing.
      const offers = support === 'too-many' && beside.nothingFound ? [] : weighed.offers;
      wouldProve ??= provingTests(
        { offers, hangsOn: weighed.hangsOn },
        { held, again },
        basis,
        proposed,
      );
      return wouldProve;
    },
  };
}

const ACCEPT: Better = { kind: 'accept' };

function supportOf(chance: number, repairs: readonly string[]): Support {
  if (repairs.length > REPAIRS_MOST) return 'too-many';
  return chance >= BORNE_OUT ? 'borne-out' : 'unlikely';
}

/**
 * What holds a conclusion up, in this order: the answer that led to it does not hold; it is borne out and hangs on one
 * reading; one reading does not fit what leads; the readings speak for another, or for less than it leaves; a test tells
 * more; where none is left, the few that lead, or the reading that it hangs on once more. One that is borne out and leaves
 * several repairs is kept back by a test that may leave fewer, and by a reading without which it would not be. Null for
 * nothing.
 */
function heldUpBy(
  concluded: ConcludedOn,
  { rows, proposed, overturned, isIntermittent, nothingFound }: WeighedBeside,
): Better | null {
  const { support, isVague, isOfSeveral, rests, odd, leans } = concluded;
  const isBorneOut = support === 'borne-out';
  if (overturned && !isBorneOut) return { kind: 'take-back', overturned };
  // With hardly more than half of the chance it hangs on nearly every reading: then the best test tells more than one of them again.
  if (rests && isBorneOut) return rests;
  if (odd) return odd;
  const leader = isBorneOut && !isVague ? null : leaderInstead(rows(), concluded);
  if (leader) return { kind: 'instead', row: leader };
  if (isBorneOut) return (isOfSeveral && narrowedBy(proposed)) || leans;
  if (nothingFound)
    return proposed.showing
      ? { kind: 'first', proposal: proposed.showing }
      : { kind: 'instead', row: nothingFound };
  const group = groupInstead(rows());
  // Of a fault that comes and goes every place can be looked at, and each look tells next to nothing.
  const least = group && isIntermittent ? WORTH_DOING_BITS : 0;
  const proposal = proposed.nextTests.find(({ bits }) => (bits ?? 0) >= least);
  if (proposal) return { kind: 'first', proposal };
  return group ? { kind: 'instead', row: group } : rests;
}

/** A test that can be expected to tell less than this does not keep a conclusion back that stands. Our choice. */
const NARROWS_BITS = 0.2;

/** The test that may leave fewer repairs: the best one that tells enough; null where none does. */
function narrowedBy({ nextTests }: ProposedTests): Better | null {
  const proposal = nextTests.find(({ bits }) => (bits ?? 0) >= NARROWS_BITS);
  return proposal ? { kind: 'narrow', proposal } : null;
}

/** A conclusion beside which something better is looked for. */
interface ConcludedOn {
  readonly faults: readonly string[];
  readonly support: Support;
  /** It stands for more repairs than anyone would try, whatever the readings leave of them. */
  readonly isVague: boolean;
  /** What the readings leave of it takes more than one repair. */
  readonly isOfSeveral: boolean;
  /** The test of the reading that it hangs on once more, or a cheaper one that would show the same. */
  readonly rests: Better | null;
  /** The test of a reading that does not fit what leads, once more. */
  readonly odd: Better | null;
  /** The test of the reading without which nothing would be borne out, once more, where nothing else is left to confirm it. */
  readonly leans: Better | null;
}

/** Repairs of these faults, each once. */
function repairsOf(faults: readonly string[], { space }: Basis): readonly string[] {
  const { candidates } = space.table;
  const named = candidates.filter(({ id }) =>
    space.faultsOf(id).some((fault) => faults.includes(fault)),
  );
  return [...new Set(named.map(({ repair }) => repair))];
}

/** Of a conclusion that names no suspect. */
function nothingFor(faults: readonly string[], basis: Basis): Weighed {
  return {
    ...{ evidence: [], ruledOut: [], proven: false, hangsOn: null, better: ACCEPT },
    ...{ wouldProve: [], wouldPlace: [], left: faults, support: 'unlikely', chance: 0 },
    missing: EVIDENCE_NEEDED,
    unexplained: unexplained(basis),
  };
}

/**
 * Those of `faults`, in their order, that the readings leave standing. What counts is how far the readings alone moved
 * each, beside the one that they moved most: a rare fault is not excluded by being rare.
 */
function leftStanding(
  space: SuspectSpace,
  { chances }: Ranking,
  faults: readonly string[],
): readonly string[] {
  const moved = new Map<string, number>();
  for (const [at, { id }] of space.table.candidates.entries()) {
    const ratio = chances[at]! / space.prior[at]!;
    if (Number.isNaN(ratio)) continue;
    for (const fault of space.faultsOf(id))
      if (faults.includes(fault)) moved.set(fault, Math.max(ratio, moved.get(fault) ?? 0));
  }
  const most = Math.max(...moved.values());
  return faults.filter((id) => (moved.get(id) ?? most) >= EXCLUDED_PART * most);
}

function evidenceLines(
  { evidence, carrying }: Corroboration,
  eventAt: (reading: number) => number,
): EvidenceLine[] {
  return [
    ...evidence.map(({ reading }) => ({ counted: true, reading: eventAt(reading) })),
    ...carrying.map((reading) => ({ counted: false, reading: eventAt(reading) })),
  ];
}

/** Tests that would support or break the conclusion, before them the one that is to be made before it is accepted. */
function provingTests(
  { offers, hangsOn }: Pick<Corroboration, 'offers' | 'hangsOn'>,
  { held, again }: { readonly held: Better | null; readonly again: Repeat | null },
  { readings, space }: Basis,
  proposed: ProposedTests,
): Proposal[] {
  const first = firstTest(held);
  const made = again && hangsOn !== null ? readings[hangsOn]!.test : null;
  const others = offers.filter(
    ({ test }) => test !== made && (first === null || space.testAt(test).id !== first.id),
  );
  return proposed.apart([
    ...(first ? [first === again?.proposal ? first : { ...first, shows: [] }] : []),
    ...others.map(({ test, minutes }) =>
      proposed.proposal(test, minutes, {
        shows: [],
        why: readings.some((one) => one.test === test)
          ? 'anything else is possible only if this reading was wrong: repeat it'
          : 'would confirm or refute this conclusion',
        bits: null,
      }),
    ),
  ]);
}

/** The leading repair that the readings bear out; one of the conclusion's own where that stands for too many. */
function leaderInstead(
  [leader]: readonly SuspectRow[],
  { faults: concluded, isVague }: ConcludedOn,
): SuspectRow | null {
  if (!leader || leader.chance < BORNE_OUT) return null;
  const isOwn = leader.faults.some(({ id }) => concluded.includes(id));
  return isOwn && !isVague ? null : leader;
}

/** The few leading repairs that no test tells apart and the readings bear out together, as one row; null where it takes more. */
function groupInstead(rows: readonly SuspectRow[]): SuspectRow | null {
  const few = rows.slice(0, REPAIRS_MOST).filter(({ chance }) => chance >= NAMED_LEAST);
  const chanceOf = (group: readonly SuspectRow[]) =>
    group.reduce((sum, { chance }) => sum + chance, 0);
  if (chanceOf(few) < BORNE_OUT) return null;
  const last = few.findIndex((_, at) => chanceOf(few.slice(0, at + 1)) >= NAMED_ENOUGH);
  const group = last < 0 ? few : few.slice(0, last + 1);
  const [leader] = group;
  return leader
    ? {
        repair: leader.repair,
        words: group.map(({ words }) => words).join(' Or: '),
        faults: group.flatMap(({ faults }) => faults),
        chance: chanceOf(group),
      }
    : null;
}
