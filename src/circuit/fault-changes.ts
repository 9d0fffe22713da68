/** An author's changes to the faults that follow from a circuit: other words, weights and sizes, or ruled out. */
import type { YamlSource } from '../source/yaml-source.ts';
import type { Fault, PartMode } from './circuit.ts';
import type { CircuitDraft } from './generated/circuit.mjs';
import { ValueReader } from './value-reader.ts';

type Changes = NonNullable<CircuitDraft['faults']>;

/** Failures of a part whose size is in ohms. */
const SIZED_IN_OHMS: readonly PartMode[] = [
  'weak-pull-down',
  'shorted',
  'coil-resistive',
  'contact-resistive',
];

/** The key `faults` of a circuit file. */
export class FaultChanges extends ValueReader {
  private readonly changes: Changes;

  constructor(source: YamlSource, changes: Changes) {
    super(source);
    this.changes = changes;
  }

  /** `telling`, those of the `derived` faults that show, as the author wants them. What is wrong stands in `issues`. */
  applied(derived: readonly Fault[], discriminating: readonly Fault[]): Fault[] {
    this.checkNames(derived, discriminating);
    return this.changed(discriminating);
  }

  /** Changes must name faults that follow from the circuit and that the module can notice. */
  private checkNames(derived: readonly Fault[], discriminating: readonly Fault[]): void {
    const ids = derived.map((fault) => fault.id);
    for (const id of Object.keys(this.changes))
      if (!ids.includes(id))
        this.unknown(
          'unknown-fault',
          `no fault "${id}" follows from this circuit`,
          id,
          ids,
          ['faults', id],
          'key',
        );
      else if (!discriminating.some((fault) => fault.id === id))
        this.issue(
          'fault-without-symptom',
          `the fault "${id}" changes nothing that the module sees, so it is left out anyway`,
          ['faults', id],
        );
  }

  private changed(faults: readonly Fault[]): Fault[] {
    return faults.flatMap((fault) => {
      const change = this.changes[fault.id];
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
      return [change.ohms === undefined ? repaired : this.resized(repaired, change.ohms)];
    });
  }

  private resized(fault: Fault, text: string): Fault {
    const path = ['faults', fault.id, 'ohms'];
    const { low, high } = this.positive(text, '', path);
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
    this.issue(
      'no-size',
      `the fault "${fault.id}" has no size in ohms`,
      path,
      isNeighbour ? 'write it as "shorted" of the part' : undefined,
    );
    return fault;
  }
}
