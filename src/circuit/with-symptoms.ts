/** Leaves out faults that nobody would come to the shop for, and of the others the sizes that nobody would come for. */
import type { Circuit, Fault } from './circuit.ts';
import { createModel, type Model } from './model.ts';
import { complainingSizes, sizesOf, withSizes } from './size-faults.ts';
import type { Meter } from './test.ts';

/** Cars looked at: a fault that none of them comes with, less than about one in sixteen, is left out. */
const CARS = 16;
const SEED = 1;
/** A module's own converter, as a meter that takes no current to speak of. */
const CONVERTER: Meter = {
  name: 'module',
  inputOhms: 1e8,
  volts: { ranges: [20], counts: 4096, ofReading: 0.01, digits: 1 },
  ohms: { ranges: [1e7], counts: 4096, ofReading: 0.01, digits: 1 },
};

/** The faults of a circuit that its module notices, each with the sizes at which it does. */
export function withSymptoms(circuit: Circuit): Fault[] {
  const model = createModel(circuit, { samples: CARS, seed: SEED, meter: CONVERTER });
  const cars = Array.from({ length: CARS }, (_, sample) => model.pointOf(sample));
  return circuit.faults.flatMap((fault) => {
    if (sizesOf(fault) === null)
      return cars.some((car, at) => model.complains(fault.id, car, at)) ? [fault] : [];
    return sized(fault, model, cars);
  });
}

function sized(fault: Fault, model: Model, cars: readonly Float64Array[]): Fault[] {
  const place = model.quantities.findIndex(({ key }) => key === 'fault.size');
  const complains = (car: number, share: number): boolean => {
    const point = Float64Array.from(cars[car]!);
    point[place] = share;
    return model.complains(fault.id, point, car);
  };
  const shares = complainingSizes(cars.length, complains);
  if (shares === null) return [];
  const { from, to } = shares;
  const comes = cars.some((car, at) => complains(at, from + (to - from) * car[place]!));
  return comes ? [withSizes(fault, from, to)] : [];
}
