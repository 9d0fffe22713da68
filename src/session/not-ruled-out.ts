/** Repairs that stay possible beside a conclusion: no reading of the session speaks against them, or not far enough. */
import type { Circuit } from '../circuit/circuit.ts';
import type { RuledOutLine } from './events.ts';

/** Their words, in the order of the circuit; `faults` are those of the conclusion. */
export function notRuledOut(
  { faults: all }: Circuit,
  faults: readonly string[],
  ruledOut: readonly RuledOutLine[],
): string[] {
  const out = new Set(ruledOut.flatMap((line) => ('repair' in line ? [line.repair] : [])));
  // Of two wires that touch both are mended, whichever the repair is named after.
  for (const { id, repair, subject } of all)
    if (faults.includes(id)) for (const one of [repair, ...subject]) out.add(one);
  const left = all.filter(({ repair }) => !out.has(repair));
  return [...new Set(left.map(({ repairWords }) => repairWords))];
}
