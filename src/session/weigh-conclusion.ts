/** What the readings are worth for a conclusion, what would prove it, and what is to be made before it is accepted. */
import { type Corroboration, EVIDENCE_NEEDED } from '../suspects/corroborate.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import { COSTS, testCost } from '../suspects/test-cost.ts';
import type { Proposal, SuspectRow, Weighed } from './advisor.ts';
import { type Basis, unexplained } from './basis.ts';
import type { EvidenceLine } from './events.ts';
import { isUnplaced } from './place-words.ts';
import type { ProposedTests } from './proposed-tests.ts';
import type { SuspectSpace } from './suspect-space.ts';

/** A conclusion with less chance than this is not accepted without a word: the readings do not bear it out. Our choice. */
const BORNE_OUT = 0.8;
const MORE_LIKELY_THAN_NOT = 0.5;
/** A fault that the readings moved by less than this part of what they moved another of the same conclusion is excluded. Our choice, as for repairs. */
const EXCLUDED_PART = 0.02;

/** The weight of a conclusion with `faults`, beside the repairs in their present order and the tests that tell most. */
export function weighConclusion(
  faults: readonly string[],
  basis: Basis,
  rows: () => readonly SuspectRow[],
  proposed: ProposedTests,
): Weighed {
  const { space, readings, standing, model } = basis;
  const weighed = space.weigh(space.namedBy(faults), standing);
  if (!weighed) return nothingFor(faults, basis);
  const eventAt = (at: number) => readings[at]!.event;
  const { hangsOn, chance } = weighed;
  const again = hangsOn === null ? null : madeAgain(hangsOn, basis, proposed);
  const isBorneOut = chance >= BORNE_OUT;
  const first = again ?? (isBorneOut ? null : (proposed.nextTests[0] ?? null));
  const left = leftStanding(space, standing.ranking, faults);
  let wouldProve: readonly Proposal[] | undefined;
  return {
    evidence: evidenceLines(weighed, eventAt),
    chance,
    first,
    instead: first === null && !isBorneOut ? leaderInstead(rows(), chance, faults) : null,
    // A list of repairs: that something is wrong, the conclusion itself says.
    ruledOut: weighed.ruledOut
      .filter(({ repair }) => repair !== HEALTHY)
      .map(({ repair, readings: by }) => ({ repair, by: [...new Set(by.map(eventAt))] })),
    proven: weighed.proven,
    left,
    unexplained: unexplained(basis),
    missing: weighed.missing,
    hangsOn: hangsOn === null ? null : eventAt(hangsOn),
    get wouldPlace() {
      return isUnplaced(model.circuit, left) ? proposed.nextTests : [];
    },
    get wouldProve() {
      wouldProve ??= provingTests(weighed, again, basis, proposed);
      return wouldProve;
    },
  };
}

/** Of a conclusion that names no suspect. */
function nothingFor(faults: readonly string[], basis: Basis): Weighed {
  return {
    ...{ evidence: [], ruledOut: [], proven: false, hangsOn: null, first: null },
    ...{ wouldProve: [], wouldPlace: [], left: faults, chance: 0, instead: null },
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

/** Tests that would support or break the conclusion, the one to make again first. */
function provingTests(
  { offers, hangsOn }: Corroboration,
  again: Proposal | null,
  { readings }: Basis,
  proposed: ProposedTests,
): Proposal[] {
  const made = again && hangsOn !== null ? readings[hangsOn]!.test : null;
  const others = offers.filter(({ test }) => test !== made);
  return proposed.apart([
    ...(again ? [again] : []),
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

/** The leading repair, where it is likelier than not and than the conclusion, and none of its own. */
function leaderInstead(
  [leader]: readonly SuspectRow[],
  chance: number,
  concluded: readonly string[],
): SuspectRow | null {
  if (!leader || leader.chance < MORE_LIKELY_THAN_NOT || leader.chance <= chance) return null;
  const faults = leader.faults.map(({ id }) => id);
  return faults.some((id) => concluded.includes(id)) ? null : leader;
}

/** The test of a reading once more; null where only a step of the tree can make it. */
function madeAgain(
  reading: number,
  { readings, space, standing }: Basis,
  proposed: ProposedTests,
): Proposal | null {
  const { test } = readings[reading]!;
  const { now, means, aside } = standing;
  if (space.testAt(test).test === null || aside?.includes(test)) return null;
  const { minutes } = testCost(space.testAt(test), now, COSTS, means.helper);
  const why = 'the conclusion depends on this one reading: repeat it';
  return proposed.proposal(test, minutes, { shows: [], why, bits: null });
}
