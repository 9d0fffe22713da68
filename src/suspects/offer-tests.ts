/** Tests that would speak for a conclusion against a rival, if the conclusion is right. */

import type { CorroborationAsk } from './corroboration-ask.ts';
import { ERROR_MODEL } from './error-model.ts';
import { EVIDENCE_RATIO } from './evidence-ratio.ts';
import { type Group, likeliestOf, memberChance } from './hypothesis-groups.ts';
import type { Reading } from './likelihood.ts';
import type { Outcomes } from './outcomes.ts';
import type { PredictionTable } from './prediction-table.ts';
import type { Ranking } from './rank-suspects.ts';
import { COSTS, canDo, testCost } from './test-cost.ts';

/** A test that could bring the next piece of evidence. */
export interface Offer {
  readonly test: number;
  readonly minutes: number;
  /** Chance that it yields evidence, if the conclusion is right. */
  readonly chance: number;
}

/** A test is offered when the conclusion, if right, would more likely than not yield evidence. */
const WORTH_OFFERING = 0.5;
const OFFERS_MAX = 5;

/**
 * The cheapest first, for its chance to yield evidence. `brings` says whether the reading of a test would indeed add a
 * piece to those there are.
 */
export function offerTests(
  table: PredictionTable,
  ask: CorroborationAsk,
  {
    concluded,
    rival,
    brings,
  }: {
    readonly concluded: Group;
    readonly rival: Group;
    readonly brings: (reading: Reading) => boolean;
  },
): Offer[] {
  const done = new Set([...ask.readings.map(({ test }) => test), ...(ask.without ?? [])]);
  const offers: Offer[] = [];
  table.tests.forEach((test, index) => {
    if (done.has(index) || !canDo(test, ask.means).can) return;
    const chance = evidenceChance(table, ask, index, concluded, rival);
    if (chance < WORTH_OFFERING) return;
    const { minutes } = testCost(test, ask.now, ask.costs ?? COSTS, ask.means.helper);
    offers.push({ test: index, minutes, chance });
  });
  const ordered = offers.sort((a, b) => a.minutes / a.chance - b.minutes / b.chance);
  const kept: Offer[] = [];
  for (const offer of ordered) {
    if (kept.length === OFFERS_MAX) break;
    if (brings(likeliestReading(table, ask.ranking, offer.test, concluded))) kept.push(offer);
  }
  return kept;
}

/**
 * Readings made once that must be wrong if the rival is right, and need not be if the conclusion is, by their tests, the
 * cheapest first. Made again and the same, they leave the rival hardly a chance: the same slip seldom comes twice.
 */
export function offerAgain(ask: CorroborationAsk, concluded: Group, rival: Group): Offer[] {
  const { ranking, readings } = ask;
  const { table, chances, misfitsOf } = ranking;
  const odd = misfitsOf(likeliestOf(concluded, chances));
  const once = misfitsOf(likeliestOf(rival, chances))
    .filter((place) => !odd.includes(place))
    .map((place) => readings[place]!.test)
    .filter((test) => readings.filter((one) => one.test === test).length === 1);
  return once
    .filter((test) => !ask.without?.includes(test) && canDo(table.tests[test]!, ask.means).can)
    .map((test) => {
      const cost = testCost(table.tests[test]!, ask.now, ask.costs ?? COSTS, ask.means.helper);
      return { test, minutes: cost.minutes, chance: 1 };
    })
    .sort((a, b) => a.minutes - b.minutes);
}

/** What the test would show if the conclusion is right: of its likeliest fault, in the likeliest of its samples. */
function likeliestReading(
  table: PredictionTable,
  { chances, sampleShares }: Ranking,
  test: number,
  concluded: Group,
): Reading {
  const fault = likeliestOf(concluded, chances);
  const shares = sampleShares.subarray(fault * table.samples, (fault + 1) * table.samples);
  const sample = shares.reduce((best, share, at) => (share > shares[best]! ? at : best), 0);
  return { test, shown: table.shown(test, fault)[sample]! };
}

/** Chance, if the conclusion is right, of an outcome that is at least three times likelier under it. */
function evidenceChance(
  table: PredictionTable,
  ask: CorroborationAsk,
  test: number,
  concluded: Group,
  rival: Group,
): number {
  const outcomes = ask.outcomes(test);
  const { wrongReading } = ask.errorModel ?? ERROR_MODEL;
  const under = (group: Group) => outcomeShares(table, ask.ranking, outcomes, group);
  const ours = under(concluded);
  const theirs = under(rival);
  const even = wrongReading / outcomes.specs.length;
  return ours.reduce((sum, share, outcome) => {
    const ratio =
      ((1 - wrongReading) * share + even) / ((1 - wrongReading) * theirs[outcome]! + even);
    return ratio >= EVIDENCE_RATIO ? sum + share : sum;
  }, 0);
}

function outcomeShares(
  table: PredictionTable,
  ranking: Ranking,
  outcomes: Outcomes,
  { members }: Group,
): number[] {
  const shares = outcomes.specs.map(() => 0);
  let mass = 0;
  for (const one of members) {
    const chance = memberChance(ranking.chances, one);
    mass += chance;
    for (let sample = 0; sample < table.samples; sample += 1) {
      const at = one * table.samples + sample;
      shares[outcomes.ofSample[at]!]! += chance * ranking.sampleShares[at]!;
    }
  }
  return shares.map((share) => share / mass);
}
