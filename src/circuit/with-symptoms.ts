/** Leaves out faults that nobody would come to the shop for, and of the others the sizes that nobody would come for. */
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
  /** Breaks that no car comes with: then none comes with some ohms at that place either. */
  const quietBreaks = new Set<string>();
  return circuit.faults.filter(withinReach(circuit)).flatMap((fault) => {
    if (quietBreaks.has(placeOf(fault))) return [];
    if (sizesOf(fault) !== null) return sized(fault, model, cars);
    if (cars.some((car, at) => model.complains(fault.id, car, at))) return [fault];
    if (isBreak(fault)) quietBreaks.add(placeOf(fault));
    return [];
  });
}

/** A wire or contact that is open, or that could be. */
function placeOf({ effect }: Fault): string {
  if (effect.kind === 'wire-open' || effect.kind === 'wire-resistive') return `wire ${effect.wire}`;
  if (effect.kind === 'contact-open' || effect.kind === 'contact-resistive')
    return `contact ${effect.terminal}`;
  return '';
}

function isBreak({ effect }: Fault): boolean {
  return effect.kind === 'wire-open' || effect.kind === 'contact-open';
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
