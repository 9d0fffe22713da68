/**
 * The ranking of suspects after some readings, from their clouds of cars (`posterior.ts`), and what each reading says
 * given those before it: a car that they have found out about is asked, and not any car. Multiplied, that is what all of
 * them say (Dawid, 1984, calls it prequential), so that nothing is counted twice.
 */
import { normalCdf } from '../quantity/normal.ts';
import type { Cloud } from './cloud.ts';
import type { Posterior } from './cloud-steps.ts';
import { type ErrorModel, joinedWidth, modelWidth } from './error-model.ts';
import { type Fact, misreadChance, type Way } from './fact.ts';
import type { Reading, ReadingFit } from './likelihood.ts';
import { type Pair, pairsAfter } from './pair-search.ts';
import type { Posteriors } from './posterior.ts';
import { DOUBLE_FAULT_CHANCE, type PairShows, type PairSuspect } from './rank-pairs.ts';
import { entropyBits, type Ranking, suspectsOf } from './rank-suspects.ts';
import type { Slices } from './slices.ts';

/** A fact is a slip under a suspect when that is likelier than not. */
const SLIP_CHANCE = 0.5;
/** Suspects with this share of the leader's chance are asked as well whether they explain every reading. */
const LEADING_SHARE = 0.1;

/** Ranks the candidates after `readings`. */
export function* rankByClouds(
  posteriors: Posteriors,
  readings: readonly Reading[],
): Slices<Ranking> {
  const seen = yield* lookAt(posteriors, readings);
  const { posterior, single, slips, misfitsOf, explained, fits } = seen;
  const { candidates, sampler } = posteriors.ask;
  const { facts, clouds, chances, misfit } = posterior;
  const table = readings.length === 0 ? posteriors.table : posteriors.tableAfter(posterior);
  const pairs = chancesOf(posteriors, posterior, yield* pairsOf(posteriors, readings));
  const total = pairs.reduce((sum, pair) => sum + pair.chance, 1);
  const { suspects, repairs } = suspectsOf(candidates, chances, total);
  const spared = new Map<number, Float64Array>();
  function* without(reading: number, likely: Float64Array): Slices<Float64Array> {
    const made = spared.get(reading) ?? (yield* posteriors.without(readings, reading, likely));
    spared.set(reading, made);
    return made;
  }
  const showsPair: PairShows = (first, second, test) =>
    posteriors.pairShows(posterior, first, second, test);
  return {
    ...{ suspects, repairs, chances, explained, table, fits, misfit },
    without,
    showsPair: sampler.pair ? showsPair : undefined,
    pairs: pairs
      .map((pair) => ({ ...pair, chance: pair.chance / total }))
      .sort((a, b) => b.chance - a.chance),
    sampleShares: new Float64Array(clouds.length * table.samples).fill(1 / table.samples),
    disagrees: explained ? null : disagreement(facts, chances, slips),
    misfitsOf: (candidate) => misfitsOf(candidate).flatMap((fact) => fact.readings),
    entropyBits: entropyBits(single.repairs.map(({ chance }) => chance)),
  };
}

/** What a ranking is made of before pairs are looked at. */
interface BeforePairs {
  readonly posterior: Posterior;
  readonly single: ReturnType<typeof suspectsOf>;
  /** By candidate and fact, the chance that it is a slip. */
  readonly slips: readonly (readonly number[])[];
  readonly misfitsOf: (candidate: number) => readonly Fact[];
  readonly explained: boolean;
  readonly fits: readonly ReadingFit[];
}

const looks = new WeakMap<Posterior, BeforePairs>();

function* lookAt(posteriors: Posteriors, readings: readonly Reading[]): Slices<BeforePairs> {
  const posterior = yield* posteriors.inSlices(readings);
  const known = looks.get(posterior);
  if (known) return known;
  const { candidates, errorModel } = posteriors.ask;
  const { facts, clouds, chances } = posterior;
  const single = suspectsOf(candidates, chances);
  const states = [...readings.keys()].map((count) => posteriors.after(readings.slice(0, count)));
  const gains = gainsOf([...states, posterior], readings);
  const slips = clouds.map((cloud) => facts.map((fact, at) => slipOf(cloud, fact, at, errorModel)));
  const misfitsOf = (candidate: number) =>
    facts.filter((_, at) => slips[candidate]![at]! > SLIP_CHANCE);
  const [leader] = single.suspects;
  const leading = single.suspects.filter(({ chance }) => chance >= LEADING_SHARE * leader!.chance);
  const explained = leading.some(({ index }) => misfitsOf(index).length === 0);
  const fits = readings.map((_, reading): ReadingFit => {
    const at = facts.findIndex((one) => one.readings.includes(reading));
    const fact = facts[at]!;
    return {
      perRow: gains[reading]!,
      blind: fact.blind,
      tail: (row) =>
        tailOf(
          states[reading]!.clouds[row]!,
          fact,
          posteriors.shown(row, states[reading]!, fact.test),
          errorModel,
        ),
    };
  });
  const made = { posterior, single, slips, misfitsOf, explained, fits };
  looks.set(posterior, made);
  return made;
}

const pairsKept = new WeakMap<Posterior, readonly Pair[]>();

/** Pairs of faults after `readings`; none while a single fault explains them. */
function* pairsOf(posteriors: Posteriors, readings: readonly Reading[]): Slices<readonly Pair[]> {
  const { posterior, explained, fits } = yield* lookAt(posteriors, readings);
  const known = pairsKept.get(posterior);
  if (known) return known;
  const isAsked = !explained && posteriors.ask.sampler.pair && readings.length > 0;
  const made = isAsked
    ? yield* pairsAfter(
        posteriors,
        posterior,
        fits,
        yield* pairsOf(posteriors, readings.slice(0, -1)),
      )
    : [];
  pairsKept.set(posterior, made);
  return made;
}

/** Pairs with their chances in parts of all single ones together. */
function chancesOf(
  { ask: { candidates, prior } }: Posteriors,
  { clouds }: Posterior,
  pairs: readonly Pair[],
): PairSuspect[] {
  const weights = pairs.map(({ first, second }) => prior[first]! * prior[second]!);
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const logs = clouds.map(({ logEvidence }, at) => logEvidence + Math.log(prior[at]!));
  const most = Math.max(...logs);
  const singles = most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
  return pairs.map(({ first, second, cloud }, at) => {
    const [one, two] = [candidates[first]!, candidates[second]!];
    const log = cloud.logEvidence + Math.log(weights[at]!);
    return {
      ids: [one.id, two.id],
      repairs: [one.repair, two.repair],
      chance: (DOUBLE_FAULT_CHANCE / all) * Math.exp(log - singles),
    };
  });
}

/** By reading and candidate, how likely it is after those before it; of a test that was read again, all its readings. */
function gainsOf(states: readonly Posterior[], readings: readonly Reading[]): Float64Array[] {
  const logs = readings.map(({ test }) => {
    const sum = new Float64Array(states[0]!.clouds.length);
    readings.forEach((other, place) => {
      if (other.test !== test) return;
      const before = states[place]!.clouds;
      states[place + 1]!.clouds.forEach(({ logEvidence }, row) => {
        sum[row]! += logEvidence - before[row]!.logEvidence;
      });
    });
    return sum;
  });
  return logs.map((sum) => sum.map((log) => Math.exp(log)));
}

/** Chance that a fact is not what its test showed, if the suspect is right. */
function slipOf({ weights, logs }: Cloud, fact: Fact, at: number, errorModel: ErrorModel): number {
  const of = logs[at]!;
  return weights.reduce(
    (sum, weight, car) => sum + weight * misreadChance(fact, of[car]!, errorModel),
    0,
  );
}

/** As `ReadingFit.tail` has it, over the cars that the readings before it leave. */
function tailOf(
  { weights }: Cloud,
  { shown: read, uncertainty }: Fact,
  ways: readonly (readonly Way[])[],
  errorModel: ErrorModel,
): number {
  let same = 0;
  let below = 0;
  let above = 0;
  weights.forEach((weight, car) => {
    for (const { shown, share } of ways[car]!) {
      const part = weight * share;
      if (shown.kind === 'look' || read.kind === 'look') {
        if (
          shown.kind === read.kind &&
          'look' in shown &&
          'look' in read &&
          shown.look === read.look
        )
          same += part;
      } else if (shown.value === Infinity || read.value === Infinity) {
        if (shown.value === read.value) same += part;
        else if (shown.value === Infinity) below += 0;
      } else {
        const width = joinedWidth(uncertainty, modelWidth(read.unit, shown.value, errorModel));
        const z = (read.value - shown.value) / width;
        below += part * normalCdf(z);
        above += part * normalCdf(-z);
      }
    }
  });
  return Math.min(1, same + 2 * Math.min(below, above));
}

/** The fact that is likeliest a slip, whoever is right. */
function disagreement(
  facts: readonly Fact[],
  chances: Float64Array,
  slips: readonly (readonly number[])[],
): Ranking['disagrees'] {
  let worst: Ranking['disagrees'] = null;
  facts.forEach((fact, at) => {
    const slip = chances.reduce((sum, chance, row) => sum + chance * slips[row]![at]!, 0);
    const gain = slip / Math.max(1 - slip, 1e-9);
    if (!worst || gain > worst.gain)
      worst = { reading: fact.readings.at(-1)!, test: fact.test, gain };
  });
  return worst;
}
