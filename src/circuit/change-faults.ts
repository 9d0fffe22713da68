/** An author's changes to the faults that follow from a circuit: other words, weights and sizes, or ruled out. */
import type { Fault, PartMode } from './circuit.ts';
import type { CircuitDraft } from './generated/circuit.mjs';
import type { ValueReader } from './value-reader.ts';

type Changes = NonNullable<CircuitDraft['faults']>;

/** Failures of a part whose size is in ohms. */
const SIZED_IN_OHMS: readonly PartMode[] = [
  'weak-pull-down',
  'shorted',
  'coil-resistive',
  'contact-resistive',
];

/** The faults as the author wants them: of all `derived` ones those that are `telling`, which the module notices. */
export function changeFaults(
  reader: ValueReader,
  changes: Changes,
  derived: readonly Fault[],
  telling: readonly Fault[],
): Fault[] {
  checkNames(reader, changes, derived, telling);
  return changed(reader, changes, telling);
}

/** Changes must name faults that follow from the circuit and that the module can notice. */
function checkNames(
  reader: ValueReader,
  changes: Changes,
  derived: readonly Fault[],
  discriminating: readonly Fault[],
): void {
  const ids = derived.map((fault) => fault.id);
  for (const id of Object.keys(changes))
    if (!ids.includes(id))
      reader.unknown(
        'unknown-fault',
        `no fault "${id}" follows from this circuit`,
        id,
        ids,
        ['faults', id],
        'key',
      );
    else if (!discriminating.some((fault) => fault.id === id))
      reader.issue(
        'fault-without-symptom',
        `the fault "${id}" changes nothing that the module sees, so it is left out anyway`,
        ['faults', id],
      );
}

function changed(reader: ValueReader, changes: Changes, faults: readonly Fault[]): Fault[] {
  return faults.flatMap((fault) => {
    const change = changes[fault.id];
    const weight = change?.weight ?? fault.weight;
    if (change?.['ruled-out'] !== undefined || weight === 0) return [];
    if (!change) return [fault];
    const repaired = {
      ...fault,
      weight,
      words: change.words ?? fault.words,
      repair: change.repair ?? fault.repair,
      repairWords: change['repair-words'] ?? fault.repairWords,
    };
    return [change.ohms === undefined ? repaired : resized(reader, repaired, change.ohms)];
  });
}

function resized(reader: ValueReader, fault: Fault, text: string): Fault {
  const path = ['faults', fault.id, 'ohms'];
  const { low, high } = reader.positive(text, '', path);
  const { effect } = fault;
  if (
    effect.kind === 'wire-resistive' ||
    effect.kind === 'wire-short' ||
    effect.kind === 'contact-resistive'
  )
    return { ...fault, effect: { ...effect, ohms: { low, high } } };
  const isNeighbour = fault.class === 'neighbour';
  if (effect.kind === 'part' && SIZED_IN_OHMS.includes(effect.mode) && !isNeighbour)
    return { ...fault, effect: { ...effect, size: { low, high } } };
  reader.issue(
    'no-size',
    `the fault "${fault.id}" has no size in ohms`,
    path,
    isNeighbour ? 'write it as "shorted" of the part' : undefined,
  );
  return fault;
}
