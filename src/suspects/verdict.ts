/**
 * Where the readings have led: to one repair, to a few that no test left here tells apart, or nowhere yet. The guidance ends
 * on the first two, so that nobody is sent for tests that can change nothing.
 */
import type { Outcomes } from './outcomes.ts';
import { type PredictionTable, repairsOf } from './prediction-table.ts';
import type { Ranking } from './rank-suspects.ts';
import type { Slices } from './slices.ts';
import { canDo, type Means } from './test-cost.ts';

/** What the person has at hand, and which tests are no longer to be counted on. */
export interface VerdictAsk {
  readonly means: Means;
  readonly outcomes: (test: number) => Outcomes;
  /** Tests already done. */
  readonly without: readonly number[];
}

/** The repairs that are left together, and whether the job can end with them. */
export interface ConclusionVerdict {
  /** The leading repair, and behind it those that may be there as well and that no remaining test parts from it. */
  readonly group: readonly string[];
  /** Chance of all that is not in the group. */
  readonly rest: number;
  /** Whether the rest is so unlikely that the job can end with the group. */
  readonly settled: boolean;
}

/** Repairs with less than this share of the leader's chance are out of the question for now. Our choice. */
const LEAST_SHARE = 0.05;
/** The job can end when all repairs outside the group have less chance than this together. Our choice. */
const REST_MAX = 0.05;
/** As the job can end without the rest, the look ahead need not plan for all of it. Our choice. */
export const PLANNED_MASS = 0.97;
/** A test parts two repairs when it shows the same under both with at most this chance: more often than not it tells. */
const SAME_MAX = 0.5;

/** A test that can be expected to tell less than this about the repair is not worth the walk. Our choice. */
export const WORTH_DOING_BITS = 0.05;

/** The verdict after `ranking`; a slice a test. */
export function* verdictOf(
  table: PredictionTable,
  ranking: Ranking,
  ask: VerdictAsk,
): Slices<ConclusionVerdict> {
  const least = LEAST_SHARE * ranking.repairs[0]!.chance;
  const [leader, ...others] = ranking.repairs
    .filter(({ chance }) => chance >= least)
    .map(({ repair }) => repair);
  const left = [...table.tests.keys()].filter(
    (test) => !ask.without.includes(test) && canDo(table.tests[test]!, ask.means).can,
  );
  const open = new Set(others);
  for (const test of left) {
    if (open.size === 0) break;
    const shares = outcomeShares(table, ranking, ask.outcomes(test), [leader!, ...open]);
    for (const other of open)
      if (overlap(shares.get(leader!)!, shares.get(other)!) <= SAME_MAX) open.delete(other);
    yield;
  }
  const group = [leader!, ...others.filter((repair) => open.has(repair))];
  const rest = ranking.repairs.reduce(
    (sum, { repair, chance }) => (group.includes(repair) ? sum : sum + chance),
    0,
  );
  return { group, rest, settled: rest <= REST_MAX };
}

/** How each repair's chance is spread over the outcomes of a test, each row summing to 1. */
function outcomeShares(
  table: PredictionTable,
  { chances, sampleShares }: Ranking,
  { ofSample, specs }: Outcomes,
  wanted: readonly string[],
): Map<string, Float64Array> {
  const { repairs, repairOf } = repairsOf(table.candidates);
  const shares = new Map(wanted.map((repair) => [repair, new Float64Array(specs.length)]));
  chances.forEach((chance, candidate) => {
    const row = shares.get(repairs[repairOf[candidate]!]!);
    if (!row) return;
    for (let sample = 0; sample < table.samples; sample += 1) {
      const at = candidate * table.samples + sample;
      row[ofSample[at]!]! += chance * sampleShares[at]!;
    }
  });
  for (const row of shares.values()) {
    const sum = row.reduce((a, b) => a + b, 0);
    row.set(row.map((share) => share / sum));
  }
  return shares;
}

function overlap(one: Float64Array, other: Float64Array): number {
  return one.reduce((sum, share, outcome) => sum + Math.min(share, other[outcome]!), 0);
}
