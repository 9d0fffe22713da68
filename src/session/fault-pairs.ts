/**
 * Pairs of faults for the level with two. Both must be findable: not in the same thing, not with the same repair, and
 * not along the same wire, where the one would hide the other.
 */
import type { Circuit, Fault } from '../circuit/circuit.ts';
import { pairId } from '../circuit/model.ts';

/** Two faults of one vehicle, as one suspect. */
export interface FaultPair {
  /** For the model. */
  readonly id: string;
  readonly first: Fault;
  readonly second: Fault;
  readonly weight: number;
}

/** All pairs of a circuit, in the order of its faults. */
export function faultPairs(circuit: Circuit): FaultPair[] {
  const wires = circuit.faults.map((fault) => wiresOf(circuit, fault));
  return circuit.faults.flatMap((first, index) =>
    circuit.faults.slice(index + 1).flatMap((second, offset): FaultPair[] => {
      const other = wires[index + 1 + offset]!;
      if (first.repair === second.repair || wires[index]!.some((name) => other.includes(name)))
        return [];
      const id = pairId(first, second);
      return id === null ? [] : [{ id, first, second, weight: first.weight * second.weight }];
    }),
  );
}

/** Wires that a fault in a wire, a contact or behind a pin cuts, loads or shorts. */
function wiresOf(circuit: Circuit, { effect }: Fault): string[] {
  switch (effect.kind) {
    case 'wire-open':
    case 'wire-resistive':
      return [effect.wire];
    case 'wire-short':
      return typeof effect.to === 'object' ? [effect.wire, effect.to.wire] : [effect.wire];
    case 'contact-open':
    case 'contact-resistive':
      return wiresAt(circuit, effect.terminal);
    case 'wires-swapped':
      return effect.terminals.flatMap((terminal) => wiresAt(circuit, terminal));
    case 'part':
      return wiresAt(circuit, `${effect.part}.${effect.at}`);
    case 'target':
      return [];
  }
}

function wiresAt(circuit: Circuit, terminal: string): string[] {
  return circuit.wires
    .filter(({ from, to }) => from === terminal || to === terminal)
    .map(({ name }) => name);
}
