/** The suspects as people read them: by repair, with the faults behind each, in words. */
import type { Circuit } from '../circuit/circuit.ts';
import { withHealthy } from '../suspects/prior.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import type { SuspectRow } from './advisor.ts';
import type { SuspectSpace } from './suspect-space.ts';

/** One row a repair, likeliest first, as the ranking has them. */
export function suspectRows(
  circuit: Circuit,
  space: SuspectSpace,
  { suspects, repairs }: Ranking,
): SuspectRow[] {
  return repairs.map(({ repair, chance }) => {
    const faults = new Map<string, SuspectRow['faults'][number]>();
    for (const suspect of suspects) {
      if (suspect.repair !== repair) continue;
      const own = space.faultsOf(suspect.id);
      for (const id of own.length === 0 ? [suspect.id] : own) {
        const known = faults.get(id);
        const words = known?.words ?? (own.length > 1 ? faultWords(circuit, id) : suspect.words);
        faults.set(id, { id, words, chance: suspect.chance + (known?.chance ?? 0) });
      }
    }
    return {
      repair,
      words: repairWords(space, repair),
      chance,
      faults: [...faults.values()].sort((a, b) => b.chance - a.chance),
    };
  });
}

/** Words of a repair; its id where no candidate has it. */
export function repairWords({ table }: SuspectSpace, repair: string): string {
  return table.candidates.find((one) => one.repair === repair)?.repairWords ?? repair;
}

/** Words of a fault; its id where the circuit does not have it. */
export function faultWords({ faults }: Circuit, fault: string): string {
  return withHealthy(faults).find(({ id }) => id === fault)?.words ?? fault;
}
