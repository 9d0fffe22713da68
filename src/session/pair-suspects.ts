/** Suspects for a vehicle that has two faults at once: the likeliest pairs of faults. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Candidate } from '../suspects/prediction-table.ts';
import { type FaultPair, faultPairs } from './fault-pairs.ts';
import { repairsWords } from './repairs-words.ts';

/** Pairs that are looked at, the likeliest first; a circuit has a thousand and more. Our choice. */
const PAIRS_MAX = 300;
/** Joins the repairs of a pair. */
const AND = ' + ';

/** The pairs as suspects, and what each of them is. */
export interface PairSuspects {
  readonly candidates: readonly Candidate[];
  /** The two faults of a suspect, by their ids. */
  readonly faultsOf: (candidate: string) => readonly string[];
}

/** The likeliest pairs of a circuit. `truth` are two faults whose pair must be among them. */
export function pairSuspects(circuit: Circuit, truth: readonly string[]): PairSuspects {
  const isTrue = ({ first, second }: FaultPair) =>
    truth.includes(first.id) && truth.includes(second.id);
  const pairs = faultPairs(circuit)
    .sort((a, b) => Number(isTrue(b)) - Number(isTrue(a)) || b.weight - a.weight)
    .slice(0, PAIRS_MAX);
  const faults = new Map(pairs.map(({ id, first, second }) => [id, [first.id, second.id]]));
  return {
    candidates: pairs.map(candidateOf),
    faultsOf: (candidate) => faults.get(candidate) ?? [],
  };
}

/** The repairs of an answer as one name of the table. */
export function repairName(repairs: readonly string[]): string {
  return [...new Set(repairs)].sort().join(AND);
}

function candidateOf({ id, first, second, weight }: FaultPair): Candidate {
  return {
    id,
    words: `${first.words} and ${second.words}`,
    repair: repairName([first.repair, second.repair]),
    repairWords: repairsWords([first.repairWords, second.repairWords]),
    weight,
    subject: [...first.subject, ...second.subject],
  };
}
