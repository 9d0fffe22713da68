/**
 * Whether a conclusion is proven. Evidence is a reading that makes the conclusion at least three times likelier against
 * its strongest rival: the likeliest other repair that the evidence found so far leaves standing. So each piece knocks
 * down the best remaining alternative, and no rival can hide behind another. The strongest piece is taken first, which
 * makes the result independent of the order of the readings. Three independent pieces prove a conclusion; readings are
 * independent when they come from different kinds of test, or from the same kind at another place or in another state.
 */
import { ALLOWANCE, type Allowance } from './allowance.ts';
import { fitReading, type Reading, type ReadingFit, uncertaintyOf } from './likelihood.ts';
import { type Offer, offerTests } from './offer-tests.ts';
import type { Outcomes } from './outcomes.ts';
import type { PredictionTable } from './prediction-table.ts';
import { normalised, priorFor } from './prior.ts';
import type { Ranking } from './rank-suspects.ts';
import { EVIDENCE_RATIO, evidenceKey, groupRows, meanOver, type Row } from './rivals.ts';
import type { CostModel, Means, Situation } from './test-cost.ts';

/** Independent pieces that prove a conclusion. */
export const EVIDENCE_NEEDED = 3;
/** With less than this chance a rival stands that no piece has knocked down, and at least one more is missing. */
export const PROVEN_CHANCE = 0.9;
/**
 * One piece never weighs more than tenfold in finding the strongest rival left, as any reading may be wrong: a rival
 * that one reading contradicts is stronger than one that two do.
 */
const PIECE_MAX = 10;
/** Ratios that differ by less than this share are equal but for rounding. */
const SAME_RATIO = 1e-9;
/** A repair this unlikely is ruled out, when some reading speaks against it: rare things are not ruled out by being rare. */
export const RULED_OUT_CHANCE = 0.02;

export interface Evidence {
  /** Place in the readings. */
  readonly reading: number;
  readonly test: number;
  /** How many times likelier the reading is under the conclusion than under the rival. */
  readonly ratio: number;
  /** Repair of the strongest rival that was left when this piece was taken. */
  readonly against: string;
}

export interface RuledOut {
  readonly repair: string;
  readonly chance: number;
  /** The reading that spoke against it most, and how many times likelier it is under the conclusion. */
  readonly reading: number;
  readonly test: number;
  readonly ratio: number;
}

export interface Corroboration {
  /** Three pieces, no rival left standing, and nothing unexplained. */
  readonly proven: boolean;
  readonly missing: number;
  /** Chance of the conclusion after all readings. */
  readonly chance: number;
  /** Repair that the next piece must speak against; its chance after all readings. */
  readonly rival: { readonly repair: string; readonly chance: number } | null;
  /** The strongest first. */
  readonly evidence: readonly Evidence[];
  readonly ruledOut: readonly RuledOut[];
  /** Tests that would give what is missing, the cheapest for its chance first; none when nothing is missing. */
  readonly offers: readonly Offer[];
}

export interface CorroborationAsk {
  /** Ids of the faults that the conclusion stands for. */
  readonly concluded: readonly string[];
  readonly readings: readonly Reading[];
  readonly ranking: Ranking;
  /** Chances before any reading, as the ranking had them. */
  readonly prior?: Float64Array;
  readonly outcomes: (test: number) => Outcomes;
  readonly now: Situation;
  readonly means: Means;
  readonly costs?: CostModel;
  readonly allowance?: Allowance;
}

/** Weighs a conclusion. All faults with the same repair as a concluded one belong to it. */
export function corroborate(table: PredictionTable, ask: CorroborationAsk): Corroboration {
  const { ranking, readings } = ask;
  const allowance = ask.allowance ?? ALLOWANCE;
  const fits = readings.map((reading) => fitOf(table, reading, allowance));
  const own = ownRepairs(table, ask.concluded);
  const { evidence, rival } = gather(table, ask, own, fits);
  const now = groupRows(table, own, ranking.chances);
  const [strongest] = now.others;
  const open = now.concluded.chance < PROVEN_CHANCE ? 1 : 0;
  const missing = rival ? Math.max(open, EVIDENCE_NEEDED - evidence.length) : 0;
  // Against a rival that still stands the next piece is needed, else against the strongest that the pieces left.
  const next = open && strongest ? strongest : rival;
  return {
    proven: missing === 0 && ranking.explained,
    missing,
    chance: now.concluded.chance,
    rival: next && {
      repair: next.repair,
      chance: now.others.find(({ repair }) => repair === next.repair)?.chance ?? 0,
    },
    evidence,
    ruledOut: now.others
      .filter(({ chance }) => chance < RULED_OUT_CHANCE)
      .map((row) => ruledOutBy(row, now.concluded, readings, fits, ranking.chances))
      .filter((one) => one !== null),
    offers:
      missing > 0 && next
        ? offerTests(
            table,
            ask,
            now.concluded,
            next,
            evidence.map(({ test }) => test),
          )
        : [],
  };
}

/** Takes the strongest piece against the strongest rival, again and again, until no reading speaks against it. */
function gather(
  table: PredictionTable,
  ask: CorroborationAsk,
  own: ReadonlySet<string>,
  fits: readonly ReadingFit[],
): { readonly evidence: Evidence[]; readonly rival: Row | null } {
  const evidence: Evidence[] = [];
  const keys = new Set<string>();
  const prior = ask.prior ?? priorFor(table.candidates);
  let chances = prior;
  /** Within a repair its faults weigh as the other readings leave them: what a reading says depends on what is known. */
  const given = fits.map((_, left) =>
    normalised(
      prior.map((chance, row) =>
        fits.reduce(
          (product, { perRow }, at) => (at === left ? product : product * (perRow[row]! + 1e-12)),
          chance,
        ),
      ),
    ),
  );
  for (;;) {
    const { concluded, others } = groupRows(table, own, chances);
    const rival = others.find(({ chance }) => chance > 0) ?? null;
    if (!rival) return { evidence, rival };
    let best: Evidence | null = null;
    ask.readings.forEach(({ test }, reading) => {
      const { perRow, even } = fits[reading]!;
      if (keys.has(evidenceKey(table.tests[test]!))) return;
      // A reading that the conclusion itself can't explain is no evidence for it, however bad the rival is.
      if (meanOver(perRow, concluded, given[reading]!) < even) return;
      const ratio = ratioOf(perRow, concluded, rival, given[reading]!);
      if (ratio >= EVIDENCE_RATIO && (!best || isStronger(ratio, test, best)))
        best = { reading, test, ratio, against: rival.repair };
    });
    // The compiler doesn't see that the loop above may have set it.
    const taken = best as Evidence | null;
    if (!taken) return { evidence, rival };
    evidence.push(taken);
    keys.add(evidenceKey(table.tests[taken.test]!));
    const { perRow } = fits[taken.reading]!;
    const ours = meanOver(perRow, concluded, chances);
    chances = normalised(
      chances.map(
        (chance, row) => chance * Math.min(PIECE_MAX, Math.max(1 / PIECE_MAX, perRow[row]! / ours)),
      ),
    );
  }
}

/** Stronger by more than rounding, or as strong and earlier in the table: the order of the readings must not show. */
function isStronger(ratio: number, test: number, than: Evidence): boolean {
  if (Math.abs(ratio - than.ratio) > SAME_RATIO * than.ratio) return ratio > than.ratio;
  return test < than.test;
}

/** The reading that spoke most against a repair; null when none did as clearly as evidence must. */
function ruledOutBy(
  row: Row,
  concluded: Row,
  readings: readonly Reading[],
  fits: readonly ReadingFit[],
  chances: Float64Array,
): RuledOut | null {
  let most: RuledOut | null = null;
  for (const [reading, { test }] of readings.entries()) {
    const ratio = ratioOf(fits[reading]!.perRow, concluded, row, chances);
    if (ratio >= EVIDENCE_RATIO && ratio > (most?.ratio ?? 0))
      most = { repair: row.repair, chance: row.chance, reading, test, ratio };
  }
  return most;
}

function ownRepairs(table: PredictionTable, concluded: readonly string[]): Set<string> {
  const wanted = new Set(concluded);
  const own = new Set(
    table.candidates.filter(({ id }) => wanted.has(id)).map(({ repair }) => repair),
  );
  if (own.size === 0) throw new Error(`corroborate: no such fault: ${concluded.join(', ')}`);
  return own;
}

function fitOf(table: PredictionTable, reading: Reading, allowance: Allowance): ReadingFit {
  return fitReading(
    table.column(reading.test),
    table.candidates.length,
    table.samples,
    reading.shown,
    uncertaintyOf(table, reading),
    allowance,
  );
}

function ratioOf(perRow: Float64Array, one: Row, other: Row, chances: Float64Array): number {
  const against = meanOver(perRow, other, chances);
  const for_ = meanOver(perRow, one, chances);
  return against > 0 ? for_ / against : for_ > 0 ? Infinity : 1;
}
