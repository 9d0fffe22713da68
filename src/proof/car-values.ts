/** The values of the cars of a fault, as numbers a person can read: what the circuit file leaves open, and the fault's size. */
import type { CarQuantity } from '../circuit/car-quantities.ts';
import type { Fault, PartMode } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import { sizesOf } from '../circuit/size-faults.ts';
import type { Unit } from '../quantity/quantity.ts';
import { valueAt } from '../quantity/value-at.ts';

/** One quantity over all cars of a fault. */
export interface CarValues {
  readonly key: string;
  /** For people: `pull-up of the module's signal input`. */
  readonly words: string;
  readonly unit: Unit;
  /** Names of the ways where the quantity is one of several; the values are then numbers of this list, from 0. */
  readonly ways: readonly string[] | null;
  /** One for each sample, in SI units. */
  readonly values: Float64Array;
}

/** All quantities in which the cars of a fault, or of the healthy circuit, really differ. */
export function carValues(model: Model, faultId: string): CarValues[] {
  const fault = model.circuit.faults.find(({ id }) => id === faultId);
  const sizes = fault ? sizesOf(fault) : null;
  const points = Array.from({ length: model.samples }, (_, sample) =>
    model.pointOf(sample, faultId),
  );
  return model.quantities.flatMap((quantity, place): CarValues[] => {
    const { key, words, ways = null } = quantity;
    const at = key === 'fault.size' && sizes ? logBetween(sizes.low, sizes.high) : spread(quantity);
    if (at === null) return [];
    const unit = key === 'fault.size' && fault && isInOhms(fault) ? 'ohm' : quantity.unit;
    return [
      { key, words, unit, ways, values: Float64Array.from(points, (one) => at(one[place]!)) },
    ];
  });
}

function logBetween(low: number, high: number): (u: number) => number {
  return (u) => low * (high / low) ** u;
}

/** Null where all cars have the same, and for what is a matter of chance. */
function spread({ value }: CarQuantity): ((u: number) => number) | null {
  if (value === null || value.low === value.high) return null;
  return (u) => valueAt(value, u);
}

/** Modes of a part whose size is a share of it (turns, track, volts) and no resistance. */
const SHARES: readonly PartMode[] = ['shorted-turns', 'track-open', 'reference-low'];

function isInOhms({ effect }: Fault): boolean {
  return effect.kind !== 'part' || !SHARES.includes(effect.mode);
}
