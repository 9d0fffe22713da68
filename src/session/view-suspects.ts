/** The suspects as a person sees them: repairs by chance, what the last reading changed, what it left unexplained or together. */
import { thingOfRepair } from '../procedure/test-words.ts';
import { whatChanged } from '../suspects/what-changed.ts';
import type { SuspectView } from './advisor.ts';
import { type Basis, disagreeing, twoAtOnce, unexplained } from './basis.ts';
import { inOneSentence } from './conclusion-words.ts';
import { repairWords, suspectRows } from './suspect-rows.ts';
import type { SuspectSpace } from './suspect-space.ts';

/** The view of one state; `group` are the repairs that no test tells apart. */
export function viewSuspects(
  basis: Basis,
  group: readonly string[],
  isIntermittent: boolean,
): SuspectView {
  const { space, readings, standing, model } = basis;
  const { circuit } = model;
  const { ranking } = standing;
  const before = readings.length > 0 ? space.rank(readings.slice(0, -1)) : null;
  return {
    rows: suspectRows(circuit, space, ranking),
    intermittent: isIntermittent,
    changed: before
      ? whatChanged(before, ranking, (repair) => thingOfRepair(repair, circuit))
      : null,
    unexplained: unexplained(basis),
    unexplainedBy: ranking.explained
      ? null
      : { reading: disagreeing(basis)?.event ?? null, pair: twoAtOnce(basis) },
    group: group.length === 0 ? null : groupWords(space, group),
    groupRepairs: group,
  };
}

function groupWords(space: SuspectSpace, repairs: readonly string[]): string {
  const words = repairs.map((repair) => repairWords(space, repair));
  return `No test here can tell these apart: ${inOneSentence(words, '; ').replace(/\.$/, '')}.`;
}
