/** Leaves out faults that nobody would come to the shop for, and of the others the sizes that nobody would come for. */
import { rowsOf, stopsCurrent } from './breaks-in-a-row.ts';
import type { Circuit, Fault } from './circuit.ts';
import { createModel, type Model } from './model.ts';
import { complainingSizes, sizesOf, withSizes } from './size-faults.ts';
import type { Meter } from './test.ts';
import { withinReach } from './within-reach.ts';

/** Cars looked at: a fault that none of them comes with, less than about one in sixteen, is left out. */
const CARS = 16;
const SEED = 1;
/** One fault is asked after the other, so what was compiled for one is of no use for the next. Our choice. */
const KEPT_ELEMENTS = 20_000;
/** From the first to the last share of its sizes. */
type SizeShares = NonNullable<ReturnType<typeof complainingSizes>>;

/** A module's own converter, as a meter that takes no current to speak of. */
const CONVERTER: Meter = {
  name: 'module',
  inputOhms: 1e8,
  volts: { ranges: [20], counts: 4096, ofReading: 0.01, digits: 1 },
  ohms: { ranges: [1e7], counts: 4096, ofReading: 0.01, digits: 1 },
};

/** The faults of a circuit that its module notices, each with the sizes at which it does. */
export function withSymptoms(circuit: Circuit): Fault[] {
  const model = createModel(circuit, {
    ...{ samples: CARS, seed: SEED, meter: CONVERTER },
    keptElements: KEPT_ELEMENTS,
  });
  const cars = Array.from({ length: CARS }, (_, sample) => model.pointOf(sample));
  const rowOf = rowsOf(circuit);
  /** Whether some car comes with a break, by the row. */
  const breaks = new Map<string, boolean>();
  /** The shares of its sizes that cars come with, by row and sizes; null for none. */
  const shares = new Map<string, SizeShares | null>();
  return circuit.faults.filter(withinReach(circuit)).flatMap((fault) => {
    const row = rowOf(fault);
    const sizes = sizesOf(fault);
    if (sizes !== null) {
      // With a break that no car comes with, none comes with some ohms at that place either.
      if (row !== null && breaks.get(row) === false) return [];
      const key = `${row}|${sizes.low}|${sizes.high}`;
      const known = row === null ? undefined : shares.get(key);
      const found = known === undefined ? sharesOf(fault, model, cars) : known;
      if (row !== null) shares.set(key, found);
      return found === null ? [] : [withSizes(fault, found.from, found.to)];
    }
    const known = row !== null && stopsCurrent(fault) ? breaks.get(row) : undefined;
    const comes = known ?? cars.some((car, at) => model.complains(fault.id, car, at));
    if (row !== null && stopsCurrent(fault)) breaks.set(row, comes);
    return comes ? [fault] : [];
  });
}

/** The shares of its sizes at which cars come with a fault; null where none does. */
function sharesOf(fault: Fault, model: Model, cars: readonly Float64Array[]): SizeShares | null {
  const place = model.quantities.findIndex(({ key }) => key === 'fault.size');
  const complains = (car: number, share: number): boolean => {
    const point = Float64Array.from(cars[car]!);
    point[place] = share;
    return model.complains(fault.id, point, car);
  };
  const shares = complainingSizes(cars.length, complains);
  if (shares === null) return null;
  const { from, to } = shares;
  const comes = cars.some((car, at) => complains(at, from + (to - from) * car[place]!));
  return comes ? shares : null;
}
