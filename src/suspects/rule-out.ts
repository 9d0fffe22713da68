/**
 * Which repairs the readings themselves rule out, and by which of them.
 *
 * That a repair is unlikely is no reason that can be told: with a broken signal wire the sensor is unlikely because the
 * wire explains everything, and yet no reading may have tested the sensor. A reading rules a fault out when it could not
 * have come out as it did with that fault there as well, beside what was found: it fits the conclusion at least three
 * times better than the conclusion and the fault together. A repair is ruled out when each of its faults is.
 *
 * Of faults that come and go nobody knows what two show together. What the conclusion shows and a sound circuit does not, it
 * shows with another fault beside it as well, so that such a reading rules nothing out: a plug that drops out when it is
 * moved says nothing of the module.
 */
import type { ErrorModel } from './error-model.ts';
import { EVIDENCE_RATIO } from './evidence-ratio.ts';
import type { RepairRow } from './hypothesis-groups.ts';
import { fitReading, type Reading, type ReadingFit, uncertaintyOf } from './likelihood.ts';
import { fillColumn, HEALTHY, type PredictionTable } from './prediction-table.ts';
import type { PairShows } from './rank-pairs.ts';

/** A repair that the readings themselves exclude. */
export interface RuledOut {
  readonly repair: string;
  readonly chance: number;
  /** Places of the readings that rule its faults out together, the most telling first. */
  readonly readings: readonly number[];
}

/** What the readings are held against. */
export interface RuleOutAsk {
  readonly table: PredictionTable;
  readonly readings: readonly Reading[];
  readonly fits: readonly ReadingFit[];
  /** The likeliest of the faults that the conclusion names. */
  readonly concluded: number;
  /** Chances before any reading. */
  readonly prior: Float64Array;
  /** Without it the fault is held against the conclusion by itself, by readings that a sound circuit shows. */
  readonly showsPair: PairShows | undefined;
  readonly errorModel: ErrorModel;
}

/** What rules the repair of `row` out; null when one of its faults has passed every reading. */
export function ruleOut(ask: RuleOutAsk, row: RepairRow): RuledOut | null {
  let left = row.members.filter((member) => ask.prior[member]! > 0);
  if (left.length === 0) return null;
  const against = new Map(left.map((member) => [member, readingsAgainst(ask, member)]));
  const readings: number[] = [];
  while (left.length > 0) {
    const next = mostTelling(ask, left, against);
    if (next === null) return null;
    readings.push(next);
    left = left.filter((member) => !against.get(member)!.has(next));
  }
  return { repair: row.repair, chance: row.chance, readings };
}

/**
 * The reading that rules out most of the weight of the faults left. One that came out as in a sound circuit goes first:
 * it is the reason a person would give. Not of faults that come and go, which read as sound while they are not there.
 */
function mostTelling(
  { fits, table, concluded, prior, showsPair }: RuleOutAsk,
  left: readonly number[],
  against: ReadonlyMap<number, ReadonlyMap<number, number>>,
): number | null {
  const healthy = healthyOf(table);
  const worth = fits.map(({ perRow }, reading) => {
    const told = left.filter((member) => against.get(member)!.has(reading));
    return {
      reading,
      isSound:
        showsPair !== undefined && healthy >= 0 && isSoundFor({ concluded }, perRow, healthy),
      weight: told.reduce((sum, member) => sum + prior[member]!, 0),
      ratio: told.reduce((product, member) => product * against.get(member)!.get(reading)!, 1),
    };
  });
  const [best] = worth
    .filter(({ weight }) => weight > 0)
    .sort(
      (a, b) => Number(b.isSound) - Number(a.isSound) || b.weight - a.weight || b.ratio - a.ratio,
    );
  return best?.reading ?? null;
}

function healthyOf({ candidates }: PredictionTable): number {
  return candidates.findIndex(({ id }) => id === HEALTHY);
}

/** Whether a reading came out as in a sound circuit, as far as the conclusion tells the two apart. */
function isSoundFor(
  { concluded }: Pick<RuleOutAsk, 'concluded'>,
  perRow: Float64Array,
  healthy: number,
): boolean {
  return perRow[concluded]! < EVIDENCE_RATIO * perRow[healthy]!;
}

/** The readings that rule a fault out beside the conclusion, each with how clearly. */
function readingsAgainst(ask: RuleOutAsk, member: number): Map<number, number> {
  const found = new Map<number, number>();
  const healthy = healthyOf(ask.table);
  for (const [reading, { perRow }] of ask.fits.entries()) {
    if (!ask.showsPair && healthy >= 0 && !isSoundFor(ask, perRow, healthy)) continue;
    // What fits the fault alone as well as the conclusion says nothing against it.
    if (!(perRow[ask.concluded]! >= EVIDENCE_RATIO * perRow[member]!)) continue;
    const ratio = ratioBeside(ask, reading, member);
    if (ratio >= EVIDENCE_RATIO) found.set(reading, ratio);
  }
  return found;
}

/** How many times better the reading fits the conclusion than the conclusion with the fault beside it. */
function ratioBeside(ask: RuleOutAsk, reading: number, member: number): number {
  const { table, concluded, showsPair } = ask;
  const { perRow } = ask.fits[reading]!;
  const own = table.candidates[concluded]!.id;
  if (own === HEALTHY || !showsPair) return perRow[concluded]! / perRow[member]!;
  const asked = ask.readings[reading]!;
  const shown = showsPair(own, table.candidates[member]!.id, asked.test);
  const both = fitReading(
    fillColumn(1, table.samples, (_, sample) => shown[sample]!),
    1,
    table.samples,
    asked.shown,
    uncertaintyOf(table, asked),
    ask.errorModel,
    ask.fits[reading]!.blind,
  );
  return perRow[concluded]! / both.perRow[0]!;
}
