/**
 * Whether a conclusion is proven. Evidence is a reading that makes the conclusion at least three times likelier against
 * its strongest rival: the likeliest repair, after all readings, that is not the concluded one. Three independent
 * pieces prove it; readings are independent when they come from different kinds of test, or from the same kind at
 * another place or in another vehicle state.
 */
import { ALLOWANCE, type Allowance, fitReading, type Reading } from './likelihood.ts';
import type { Outcomes } from './outcomes.ts';
import { type PredictionTable, type TableTest, repairsOf } from './prediction-table.ts';
import type { Ranking } from './rank-suspects.ts';
import { canDo, COSTS, type CostModel, type Means, type Situation, testCost } from './test-cost.ts';

/** A reading counts from here on: "substantial" on Jeffreys' scale begins at 10^0.5 = 3.16; we take 3. */
export const EVIDENCE_RATIO = 3;
/** Independent pieces that prove a conclusion. */
export const EVIDENCE_NEEDED = 3;
/** A repair this unlikely is ruled out. */
export const RULED_OUT_CHANCE = 0.02;
/** A test is offered when the conclusion, if right, would more likely than not yield evidence. */
const WORTH_OFFERING = 0.5;
const OFFERS_MAX = 5;
/** A fault that is all but out still counts this much within its repair, so that a repair never has no mass. */
const OUT_CHANCE = 1e-15;

export interface Evidence {
  /** Place in the readings. */
  readonly reading: number;
  readonly test: number;
  /** How many times likelier the reading is under the conclusion than under the strongest rival. */
  readonly ratio: number;
  /** Readings with the same key are not independent; only the best of them counts. */
  readonly key: string;
  readonly counts: boolean;
}

export interface RuledOut {
  readonly repair: string;
  readonly chance: number;
  /** The reading that spoke against it most, and how many times likelier it is under the conclusion. */
  readonly reading: number;
  readonly test: number;
  readonly ratio: number;
}

export interface Offer {
  readonly test: number;
  readonly minutes: number;
  /** Chance that it yields evidence, if the conclusion is right. */
  readonly chance: number;
}

export interface Corroboration {
  /** Three pieces, the conclusion leads, and it explains the readings. */
  readonly proven: boolean;
  readonly missing: number;
  /** Chance of the conclusion after all readings. */
  readonly chance: number;
  readonly rival: { readonly repair: string; readonly chance: number } | null;
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
  readonly outcomes: (test: number) => Outcomes;
  readonly now: Situation;
  readonly means: Means;
  readonly costs?: CostModel;
  readonly allowance?: Allowance;
}

/** Weighs a conclusion. Faults outside it with the same repair as all of it are no rivals. */
export function corroborate(table: PredictionTable, ask: CorroborationAsk): Corroboration {
  const { ranking, readings } = ask;
  const rows = groupRows(table, ask.concluded, ranking);
  const fits = readings.map((reading) => fitOf(table, reading, ask.allowance ?? ALLOWANCE));
  const ratioFor = (place: number, row: Row) =>
    ratioOf(fits[place]!.perRow, rows.concluded, row, ranking.chances);
  const [rival] = rows.others;
  const evidence = rival ? independent(gather()) : [];
  const found = evidence.filter(({ counts }) => counts).length;
  const leads = !rival || rows.concluded.chance > rival.chance;
  const missing = Math.max(0, EVIDENCE_NEEDED - found);
  return {
    proven: missing === 0 && leads && ranking.explained,
    missing,
    chance: rows.concluded.chance,
    rival: rival ? { repair: rival.repair, chance: rival.chance } : null,
    evidence,
    ruledOut: rows.others
      .filter(({ chance, prior }) => chance < RULED_OUT_CHANCE && prior > 0)
      .map((row) => worstFor(row))
      .filter((one) => one !== null),
    offers: missing > 0 && rival ? offer(table, ask, rows.concluded, rival, evidence) : [],
  };

  function gather(): Omit<Evidence, 'counts'>[] {
    return readings.flatMap(({ test }, reading) => {
      const ratio = ratioFor(reading, rival!);
      // A reading that the conclusion itself can't explain is no evidence for it, however bad the rival is.
      const fitsWell = meanOver(fits[reading]!.perRow, rows.concluded, ranking.chances) >= fits[reading]!.blind;
      return ratio >= EVIDENCE_RATIO && fitsWell
        ? [{ reading, test, ratio, key: evidenceKey(table.tests[test]!) }]
        : [];
    });
  }

  function worstFor(row: Row): RuledOut | null {
    let worst: RuledOut | null = null;
    readings.forEach(({ test }, reading) => {
      const ratio = ratioFor(reading, row);
      if (ratio > (worst?.ratio ?? 1))
        worst = { repair: row.repair, chance: row.chance, reading, test, ratio };
    });
    return worst;
  }
}

/** What makes two readings the same piece of news: kind of test, place and vehicle state. */
export function evidenceKey(test: TableTest): string {
  return JSON.stringify([test.family, test.state, [...test.reaches].sort()]);
}

interface Row {
  readonly repair: string;
  readonly members: readonly number[];
  readonly chance: number;
  readonly prior: number;
}

/** The conclusion, and the other repairs, likeliest first. */
function groupRows(
  table: PredictionTable,
  concluded: readonly string[],
  ranking: Ranking,
): { readonly concluded: Row; readonly others: readonly Row[] } {
  const wanted = new Set(concluded);
  const own = new Set(table.candidates.filter(({ id }) => wanted.has(id)).map(({ repair }) => repair));
  if (own.size === 0) throw new Error(`corroborate: no such fault: ${concluded.join(', ')}`);
  const { repairs, repairOf } = repairsOf(table.candidates);
  const row = (repair: string, belongs: (candidate: number) => boolean): Row => {
    const members = [...table.candidates.keys()].filter(belongs);
    const total = (value: (candidate: number) => number) => members.reduce((sum, one) => sum + value(one), 0);
    return {
      repair,
      members,
      chance: total((one) => ranking.chances[one]!),
      prior: total((one) => table.candidates[one]!.weight),
    };
  };
  const isOwn = (candidate: number) => own.has(repairs[repairOf[candidate]!]!);
  const others = repairs
    .filter((repair) => !own.has(repair))
    .map((repair) => row(repair, (candidate) => repairs[repairOf[candidate]!] === repair))
    .sort((a, b) => b.chance - a.chance);
  return { concluded: row([...own].join(', '), isOwn), others };
}

function fitOf(table: PredictionTable, reading: Reading, allowance: Allowance) {
  const { test, shown } = reading;
  const number = shown.kind === 'number' && shown.value !== Infinity ? shown.value : null;
  const own = number === null ? 0 : (table.tests[test]?.standardUncertainty?.(number) ?? 0);
  return fitReading(
    table.column(test),
    table.candidates.length,
    table.samples,
    shown,
    reading.standardUncertainty ?? own,
    allowance,
  );
}

/** Likelihood under a group of suspects: the mean over its members, by their present chance. */
function meanOver(perRow: Float64Array, row: Row, chances: Float64Array): number {
  let sum = 0;
  let mass = 0;
  for (const one of row.members) {
    const chance = chances[one]! + OUT_CHANCE;
    sum += chance * perRow[one]!;
    mass += chance;
  }
  return mass > 0 ? sum / mass : 0;
}

function ratioOf(perRow: Float64Array, one: Row, other: Row, chances: Float64Array): number {
  const against = meanOver(perRow, other, chances);
  const for_ = meanOver(perRow, one, chances);
  return against > 0 ? for_ / against : for_ > 0 ? Infinity : 1;
}

/** Of readings with the same key only the one with the greatest ratio counts. */
function independent(found: readonly Omit<Evidence, 'counts'>[]): Evidence[] {
  return found.map((one, place) => {
    const better = found.some(
      (other, at) =>
        other.key === one.key && (other.ratio > one.ratio || (other.ratio === one.ratio && at < place)),
    );
    return { ...one, counts: !better };
  });
}

function offer(
  table: PredictionTable,
  ask: CorroborationAsk,
  concluded: Row,
  rival: Row,
  evidence: readonly Evidence[],
): Offer[] {
  const keys = new Set(evidence.map(({ key }) => key));
  const done = new Set(ask.readings.map(({ test }) => test));
  const offers: Offer[] = [];
  table.tests.forEach((test, index) => {
    if (done.has(index) || keys.has(evidenceKey(test)) || !canDo(test, ask.means).can) return;
    const chance = evidenceChance(table, ask, index, concluded, rival);
    if (chance < WORTH_OFFERING) return;
    const { minutes } = testCost(test, ask.now, ask.costs ?? COSTS, ask.means.helper);
    offers.push({ test: index, minutes, chance });
  });
  return offers
    .sort((a, b) => a.minutes / a.chance - b.minutes / b.chance || a.test - b.test)
    .slice(0, OFFERS_MAX);
}

/** Chance, if the conclusion is right, of an outcome that is at least three times likelier under it. */
function evidenceChance(
  table: PredictionTable,
  ask: CorroborationAsk,
  test: number,
  concluded: Row,
  rival: Row,
): number {
  const outcomes = ask.outcomes(test);
  const { wrongReading } = ask.allowance ?? ALLOWANCE;
  const under = (row: Row) => outcomeShares(table, ask.ranking, outcomes, row);
  const ours = under(concluded);
  const theirs = under(rival);
  const even = wrongReading / outcomes.specs.length;
  return ours.reduce((sum, share, outcome) => {
    const ratio = ((1 - wrongReading) * share + even) / ((1 - wrongReading) * theirs[outcome]! + even || 1e-300);
    return ratio >= EVIDENCE_RATIO ? sum + share : sum;
  }, 0);
}

function outcomeShares(
  table: PredictionTable,
  ranking: Ranking,
  outcomes: Outcomes,
  row: Row,
): number[] {
  const shares = outcomes.specs.map(() => 0);
  let mass = 0;
  for (const one of row.members) {
    const chance = ranking.chances[one]! + OUT_CHANCE;
    mass += chance;
    for (let sample = 0; sample < table.samples; sample += 1) {
      const at = one * table.samples + sample;
      shares[outcomes.ofSample[at]!]! += chance * ranking.sampleShares[at]!;
    }
  }
  return shares.map((share) => (mass > 0 ? share / mass : 0));
}
