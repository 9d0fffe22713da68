/**
 * How likely each suspect is before any reading: its weight, shifted by what was already replaced and by the trouble
 * codes. The factors are our assumptions from the trade's habits, with no published count behind them.
 */
import type { CodeKind } from '../identify/describe-code.ts';
import { type Candidate, HEALTHY } from './prediction-table.ts';

/**
 * A new part can be dead on arrival or killed by the same cause, so its faults stay possible: a tenth of before.
 */
export const REPLACED_FACTOR = 0.1;
/** Connectors that were just off and on again are a little likelier to have a bent or half-seated terminal. */
export const DISTURBED_FACTOR = 1.5;
/** Wires change places where somebody had a plug apart: rare otherwise. */
export const REWIRED_FACTOR = 5;
/** What mends wires that have changed places. */
const SWAP_BACK = 'leads.swap';
/** A complaint came back after a repair, or a code stands: "nothing is wrong" is less likely than weights say. */
const HEALTHY_WITH_CODE_FACTOR = 0.3;
/** No code likelihood rules a fault out: modules see a fault late, or name it differently from what one expects. */
const CODE_FLOOR = 0.05;

/** Share of all weight that the healthy circuit has before any reading: a complaint mostly has a cause. */
const HEALTHY_SHARE = 0.05;

/** What the job sheet tells that moves chances before any reading. */
export interface PriorFacts {
  /** Names of what was replaced or repaired before: parts (`sensor`), wires (`wire.signal`), repairs (`sensor.replace`). */
  readonly replaced?: readonly string[];
  /** Kinds of the trouble codes that stand for this circuit. */
  readonly codes?: readonly CodeKind[];
  /** How much of what a kind says counts, 0 to 1, by kind; all of it where that is left out. */
  readonly codeShares?: Readonly<Partial<Record<CodeKind, number>>>;
  /** Chance, 0 to 1, that the module sets a code of this kind when the candidate is there. */
  readonly codeChance?: (candidateId: string, kind: CodeKind) => number;
  /** Times its weight, by what else was told before any reading. */
  readonly told?: (candidateId: string) => number;
}

/** The faults and, as one more suspect, no fault. */
export function withHealthy(faults: readonly Candidate[]): Candidate[] {
  const total = faults.reduce((sum, { weight }) => sum + weight, 0);
  return [
    ...faults,
    {
      id: HEALTHY,
      words: 'nothing wrong now',
      repair: HEALTHY,
      repairWords: 'nothing to repair now',
      weight: (total * HEALTHY_SHARE) / (1 - HEALTHY_SHARE),
      subject: [],
    },
  ];
}

/** Chances before any reading, one per candidate, summing to 1. Candidates of weight 0 stay at 0. */
export function priorFor(candidates: readonly Candidate[], facts: PriorFacts = {}): Float64Array {
  const chances = Float64Array.from(candidates, (candidate) => {
    if (!(candidate.weight >= 0)) throw new Error(`prior: weight of ${candidate.id}`);
    const told = facts.told?.(candidate.id) ?? 1;
    return candidate.weight * repairFactor(candidate, facts) * codeFactor(candidate, facts) * told;
  });
  return normalised(chances);
}

function repairFactor(candidate: Candidate, { replaced }: PriorFacts): number {
  let factor = candidate.repair === SWAP_BACK && replaced?.length ? REWIRED_FACTOR : 1;
  for (const name of new Set(replaced)) {
    if (isRepairOf(candidate.repair, name)) factor *= REPLACED_FACTOR;
    else if (candidate.repair === `connector.${partOf(name)}`) factor *= DISTURBED_FACTOR;
  }
  return factor;
}

/** Of a whole wire that was replaced, those of its sections too. */
function isRepairOf(repair: string, name: string): boolean {
  if (repair === name || repair === `${name}.replace`) return true;
  return name.startsWith('wire.') && repair.startsWith(`${name}.`);
}

/** `sensor` of `sensor` and of `sensor.replace`. */
function partOf(name: string): string {
  return name.endsWith('.replace') ? name.slice(0, -'.replace'.length) : name;
}

function codeFactor(candidate: Candidate, facts: PriorFacts): number {
  const kinds = new Set(facts.codes);
  if (kinds.size === 0) return 1;
  const { codeChance, codeShares = {} } = facts;
  const shareOf = (kind: CodeKind) => codeShares[kind] ?? 1;
  if (candidate.id === HEALTHY)
    return HEALTHY_WITH_CODE_FACTOR ** Math.max(...[...kinds].map(shareOf));
  if (!codeChance) return 1;
  let factor = 1;
  for (const kind of kinds)
    factor *= (CODE_FLOOR + (1 - CODE_FLOOR) * codeChance(candidate.id, kind)) ** shareOf(kind);
  return factor;
}

/** `weights` scaled to sum to 1. */
export function normalised(weights: Float64Array): Float64Array {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  if (!(sum > 0)) throw new Error('prior: no candidate has any weight');
  return weights.map((weight) => weight / sum);
}
