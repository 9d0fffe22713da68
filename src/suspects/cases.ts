/**
 * Suspects split into cases. A fault whose samples fall into different outcomes of some test (a wire of a few ohms or
 * of many) is split into as many smaller faults, each of which has exactly one outcome in every test. Planning over
 * cases is then exact where planning over faults would have to pretend that a fault forgets its size between tests.
 */
import type { Outcomes } from './outcomes.ts';
import { type PredictionTable, repairsOf } from './prediction-table.ts';

/** The cases with their chances, and what each shows in every test. */
export interface Cases {
  /** Tests, as numbers of the table, that the cases are told apart by. */
  readonly tests: readonly number[];
  /** Chance of each case; they sum to `mass`. */
  readonly weight: Float64Array;
  /** Number of each case's repair in `repairs`. */
  readonly repairOf: Uint16Array;
  readonly repairs: readonly string[];
  /** `outcomeOf[test place * count + case]` */
  readonly outcomeOf: Uint8Array;
  readonly outcomes: readonly Outcomes[];
  /** Cases with the same outcome in every test share a number here. */
  readonly signatureOf: Uint16Array;
  /** Candidates in each case. */
  readonly candidates: readonly (readonly number[])[];
  readonly count: number;
  /** Sum of the weights; below 1 when the unlikeliest were left out. */
  readonly mass: number;
}

/** How many cases are kept, and how chance lies over the samples. */
export interface CaseOptions {
  /** How each candidate's chance is spread over its samples (evenly without it). */
  readonly sampleShares?: Float64Array;
  /** The likeliest cases that together have this much of the chance (1: all of them). */
  readonly massKept?: number;
  /** Never more cases than this; those that are kept then stand for the others of their repair. */
  readonly casesMax?: number;
}

interface CaseDraft {
  weight: number;
  readonly repair: number;
  readonly signature: Uint8Array;
  readonly candidates: Set<number>;
}

/** Candidates with less chance than this don't enter a plan at all. */
const CHANCE_MIN = 1e-9;

/** Cases for the candidates with these `chances`, told apart by `tests`. */
export function splitIntoCases(
  table: PredictionTable,
  tests: readonly number[],
  outcomesOf: (test: number) => Outcomes,
  chances: Float64Array,
  options: CaseOptions = {},
): Cases {
  const outcomes = tests.map(outcomesOf);
  const { repairs, repairOf } = repairsOf(table.candidates);
  const drafts = draftCases(table, outcomes, repairOf, chances, options);
  const kept = keepLikeliest(drafts, options.massKept ?? 1, options.casesMax ?? Infinity);
  const count = kept.length;
  const outcomeOf = new Uint8Array(tests.length * count);
  const signatures = new Map<string, number>();
  const signatureOf = Uint16Array.from(kept, ({ signature }, index) => {
    signature.forEach((outcome, test) => {
      outcomeOf[test * count + index] = outcome;
    });
    const name = signature.join(' ');
    const known = signatures.get(name) ?? signatures.size;
    signatures.set(name, known);
    return known;
  });
  const weight = Float64Array.from(kept, (draft) => draft.weight);
  return {
    tests,
    weight,
    repairOf: Uint16Array.from(kept, ({ repair }) => repair),
    repairs,
    outcomeOf,
    outcomes,
    signatureOf,
    candidates: kept.map((draft) => [...draft.candidates]),
    count,
    mass: weight.reduce((sum, one) => sum + one, 0),
  };
}

function draftCases(
  table: PredictionTable,
  outcomes: readonly Outcomes[],
  repairOf: Uint16Array,
  chances: Float64Array,
  options: CaseOptions,
): CaseDraft[] {
  const { samples } = table;
  const drafts: CaseDraft[] = [];
  const buckets = new Map<number, CaseDraft[]>();
  const columns = outcomes.map(({ ofSample }) => ofSample);
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  table.candidates.forEach((_, candidate) => {
    const chance = chances[candidate]! / total;
    if (!(chance > CHANCE_MIN)) return;
    const repair = repairOf[candidate]!;
    for (let sample = 0; sample < samples; sample += 1) {
      const at = candidate * samples + sample;
      const weight = chance * (options.sampleShares?.[at] ?? 1 / samples);
      if (!(weight > 0)) continue;
      // FNV-1a; drafts with the same hash are compared outcome by outcome. Each step can be undone, so that with the same
      // outcomes only the same repair has the same hash.
      let hash = (0x811c9dc5 ^ repair) | 0;
      for (const column of columns) hash = Math.imul(hash ^ column[at]!, 0x01000193);
      let bucket = buckets.get(hash);
      if (!bucket) {
        bucket = [];
        buckets.set(hash, bucket);
      }
      const known = bucket.find((draft) => sameOutcomes(draft, columns, at));
      if (known) {
        known.weight += weight;
        known.candidates.add(candidate);
      } else {
        const signature = Uint8Array.from(columns, (column) => column[at]!);
        const draft = { weight, repair, signature, candidates: new Set([candidate]) };
        bucket.push(draft);
        drafts.push(draft);
      }
    }
  });
  return drafts;
}

function sameOutcomes(draft: CaseDraft, columns: readonly Uint8Array[], at: number): boolean {
  return columns.every((column, test) => column[at] === draft.signature[test]);
}

function keepLikeliest(drafts: CaseDraft[], massKept: number, casesMax: number): CaseDraft[] {
  if (massKept >= 1 && drafts.length <= casesMax) return drafts;
  const sorted = [...drafts].sort((a, b) => b.weight - a.weight);
  let mass = 0;
  const likely = sorted.filter((draft, place) => {
    if (mass >= massKept && place > 1) return false;
    mass += draft.weight;
    return true;
  });
  const weights =
    likely.length > casesMax
      ? standingForAll(likely, casesMax)
      : new Map(likely.map((draft) => [draft, draft.weight]));
  return drafts.flatMap((draft) => {
    const weight = weights.get(draft);
    return weight === undefined ? [] : [{ ...draft, weight }];
  });
}

/**
 * So many cases that stand for all: of each repair as many of the likeliest as its chance calls for (by D'Hondt), and the
 * others counted in them. Else a fault whose chance is spread over many cases would be planned for as if it were not there.
 */
function standingForAll(sorted: readonly CaseDraft[], casesMax: number): Map<CaseDraft, number> {
  const shares = new Map<number, { mass: number; kept: number; readonly own: CaseDraft[] }>();
  for (const draft of sorted) {
    const share = shares.get(draft.repair) ?? { mass: 0, kept: 0, own: [] };
    shares.set(draft.repair, share);
    share.mass += draft.weight;
    share.own.push(draft);
  }
  for (let seat = 0; seat < casesMax; seat += 1) {
    const [next] = [...shares.values()]
      .filter(({ kept, own }) => kept < own.length)
      .sort((a, b) => b.mass / (b.kept + 1) - a.mass / (a.kept + 1));
    next!.kept += 1;
  }
  const weights = new Map<CaseDraft, number>();
  for (const { mass, kept, own } of shares.values()) {
    const standing = own.slice(0, kept);
    const known = standing.reduce((sum, { weight }) => sum + weight, 0);
    for (const draft of standing) weights.set(draft, (draft.weight * mass) / known);
  }
  return weights;
}
