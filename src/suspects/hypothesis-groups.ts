/** Hypotheses gathered into groups: those of the conclusion, and those of each other repair. */
import { type PredictionTable, repairsOf } from './prediction-table.ts';

/** A fault that is all but out still counts this much within its repair, so that a repair never has no mass. */
const OUT_CHANCE = 1e-15;

/** Suspects that belong together, by their places among the candidates. */
export interface Group {
  readonly members: readonly number[];
}

/** All suspects with one repair, and their chance. */
export interface RepairRow extends Group {
  readonly repair: string;
  readonly chance: number;
}

/** The conclusion, and the other repairs, likeliest first. */
export function groupRows(
  table: PredictionTable,
  own: ReadonlySet<string>,
  chances: Float64Array,
): {
  readonly concluded: Group & { readonly chance: number };
  readonly others: readonly RepairRow[];
} {
  const { repairs, repairOf } = repairsOf(table.candidates);
  const members = repairs.map((): number[] => []);
  repairOf.forEach((repair, candidate) => {
    members[repair]!.push(candidate);
  });
  const group = (list: readonly number[]) => ({
    members: list,
    chance: list.reduce((sum, one) => sum + chances[one]!, 0),
  });
  const mine = repairs.flatMap((repair, index) => (own.has(repair) ? members[index]! : []));
  const others = repairs
    .map((repair, index) => ({ repair, ...group(members[index]!) }))
    .filter(({ repair }) => !own.has(repair))
    .sort((a, b) => b.chance - a.chance);
  return { concluded: group(mine), others };
}

/** The faults that the conclusion names; others with the same repair are not what it says. */
export function namedGroup({ candidates }: PredictionTable, concluded: readonly string[]): Group {
  const members = candidates.flatMap(({ id }, index) => (concluded.includes(id) ? [index] : []));
  return { members };
}

/** The member of a group with the greatest chance. */
export function likeliestOf({ members }: Group, chances: Float64Array): number {
  return members.reduce((a, b) => (chances[b]! > chances[a]! ? b : a));
}

/** Likelihood under a group of suspects: the mean over its members, by their present chance; 0 without any. */
export function meanOver(perRow: Float64Array, { members }: Group, chances: Float64Array): number {
  let sum = 0;
  let mass = 0;
  for (const one of members) {
    const chance = memberChance(chances, one);
    sum += chance * perRow[one]!;
    mass += chance;
  }
  return mass > 0 ? sum / mass : 0;
}

/** A member's chance as it counts among the members. */
export function memberChance(chances: Float64Array, member: number): number {
  return chances[member]! + OUT_CHANCE;
}
