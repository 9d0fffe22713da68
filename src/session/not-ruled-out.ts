/** Repairs that stay possible beside a conclusion: no reading of the session speaks against them, or not far enough. */
import { type Circuit, partName } from '../circuit/circuit.ts';
import type { Job } from '../procedure/job.ts';
import type { RuledOutLine } from './events.ts';
import { isFeedTold, saysNothing } from './told.ts';

/** Their words, in the order of the circuit; `faults` are those of the conclusion. */
export function notRuledOut(
  circuit: Circuit,
  faults: readonly string[],
  ruledOut: readonly RuledOutLine[],
  { shares }: Pick<Job, 'shares'>,
): string[] {
  const out = new Set(ruledOut.flatMap((line) => ('repair' in line ? [line.repair] : [])));
  // Of two wires that touch both are mended, whichever the repair is named after.
  for (const { id, repair, subject } of circuit.faults)
    if (faults.includes(id)) for (const one of [repair, ...subject]) out.add(one);
  // Where it was told what shares the feed of this car, the file's own neighbour is none.
  const isNone = (repair: string) => isFeedTold(shares) && isAssumedNeighbour(circuit, repair);
  const left = circuit.faults.filter(({ repair }) => !out.has(repair) && !isNone(repair));
  return [...new Set(left.map(({ repairWords }) => repairWords))];
}

/** The repair is of a neighbour that nobody has named on this car, or of a wire that leads to none but it. */
function isAssumedNeighbour(circuit: Circuit | null, repair: string): boolean {
  const { parts = [], wires = [] } = circuit ?? {};
  const names = parts.flatMap((part) =>
    part.kind === 'neighbour' && !part.told ? [part.name] : [],
  );
  return (
    names.some((name) => repair === `${name}.replace`) ||
    wires.some(
      ({ name, from, to }) =>
        repair === `wire.${name}` && [from, to].some((end) => names.includes(partName(end))),
    )
  );
}

/**
 * The repair is of something that nobody had under suspicion on this car: a neighbour that was not named, or wires that change
 * places only where somebody had a plug apart.
 */
export function isFarFetched(circuit: Circuit | null, job: Job, repair: string): boolean {
  if (repair === 'leads.swap') return !wasWorkedOn(job);
  return isAssumedNeighbour(circuit, repair);
}

function wasWorkedOn({ earlierRepairs, circumstances }: Job): boolean {
  const { recentWork = '' } = circumstances ?? {};
  return earlierRepairs.length > 0 || (recentWork !== '' && !saysNothing(recentWork));
}
