/**
 * Two faults at once, where no single one explains the readings: clouds of cars with both, of the faults that explain at
 * least some reading best. From reading to reading they are carried on as those of single faults are.
 */
import { advanceCloud, weighed } from './advance-cloud.ts';
import { type Cloud, effectiveCount } from './cloud.ts';
import type { Posterior } from './cloud-steps.ts';
import { isTakenBack } from './fact.ts';
import type { ReadingFit } from './likelihood.ts';
import type { Posteriors } from './posterior.ts';
import { randomOf } from './random.ts';
import { plausibleSingles } from './rank-pairs.ts';
import type { Slices } from './slices.ts';
import type { SuspectCars } from './suspect-cars.ts';

/** Singles that go into pairs; 6 make 15 clouds. Our choice. */
const PAIRED_MAX = 6;
/** Of two faults at once fewer cars will do. Our choice. */
const PAIR_CARS = 64;
/** A pair with less than this part of the likeliest one's chance is weighed, but its cars are not moved. Our choice. */
const LIVE_SHARE = 1e-3;

/** With fewer that have any weight a cloud starts anew. Our choice. */
const WORN_CARS = 8;

/** Two candidates by their places, and the cars with both of them. */
export interface Pair {
  readonly first: number;
  readonly second: number;
  readonly cloud: Cloud;
}

/** A pair before its cars are moved, and after its facts were weighed. */
interface PairAsked extends Pair {
  readonly cars: SuspectCars;
  readonly left: Cloud;
  /** Logarithm of its chance, roughly, in parts that are the same for all. */
  readonly rough: number;
}

/** The pairs that may explain the facts of a posterior, on from those of the state before it. */
export function* pairsAfter(
  posteriors: Posteriors,
  { facts }: Posterior,
  fits: readonly ReadingFit[],
  before: readonly Pair[],
): Slices<Pair[]> {
  const { candidates, prior } = posteriors.ask;
  const even = fits.map((fit) => ({ ...fit, weight: 1 }));
  const chosen = plausibleSingles(candidates, even, prior, PAIRED_MAX);
  const twos = chosen.flatMap((first, place) =>
    chosen.slice(place + 1).map((second) => ({ first, second })),
  );
  const asked: PairAsked[] = [];
  for (const { first, second } of twos) {
    yield;
    const cars = posteriors.pairCars(candidates[first]!.id, candidates[second]!.id);
    if (!cars) continue;
    const known = before.find((pair) => pair.first === first && pair.second === second)?.cloud;
    const goesOn = known && effectiveCount(known) >= WORN_CARS && !isTakenBack(known.facts, facts);
    const cloud = goesOn ? known : cars.start(PAIR_CARS);
    const { roughly, cloud: left } = weighed(cloud, facts, cars.model);
    asked.push({ first, second, cars, cloud, left, rough: roughly + weightOf(first, second) });
  }
  const most = Math.max(...asked.map(({ rough }) => rough));
  const pairs: Pair[] = [];
  for (const { first, second, cars, cloud, left, rough } of asked) {
    const isLive = rough - most >= Math.log(LIVE_SHARE);
    // The same numbers for every pair, as for every suspect.
    const random = randomOf(facts.length);
    const made = isLive ? yield* advanceCloud(cloud, facts, cars.model, random) : left;
    pairs.push({ first, second, cloud: made });
  }
  return pairs;

  function weightOf(first: number, second: number): number {
    return Math.log(prior[first]! * prior[second]!);
  }
}
