/**
 * Whether a group of repairs could have been made smaller: another car that needs another repair of the group, and that
 * answers all tests made as this one does, is looked for; then a test that the two answer differently.
 */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import type { Test } from '../../../src/circuit/test.ts';
import { testKey } from '../../../src/circuit/test-key.ts';
import type { Car, CarFault } from './car.ts';
import type { DrawnCar } from './draw-car.ts';
import { drawingOf } from './drawing.ts';
import type { Engine } from './engine.ts';
import { faultsToDraw } from './faults-to-draw.ts';
import { APART, isNear, readingOf, readingsOf, SAME } from './near.ts';
import { seeded } from './seeded.ts';
import { type Shows, Vehicle } from './vehicle.ts';

export interface GroupAsk {
  readonly drawn: DrawnCar;
  readonly circuit: Circuit;
  readonly engine: Engine;
  readonly made: readonly Test[];
  readonly repairs: readonly string[];
  /** What the program could ask for and the person can do here. */
  readonly tests: readonly Test[];
}

/** Sizes that are tried of each other fault. */
const SIZES = 6;

/** A test that tells a member of the group apart from the true one, by its key, or `none`. */
export async function couldBeSmaller(ask: GroupAsk): Promise<string | 'none'> {
  const { drawn, made } = ask;
  const own = new Vehicle(drawn.car, ask.engine);
  const readings = await readingsOf(own, made);
  const options = ask.tests.filter(({ probe }) => probe.kind !== 'inspect');
  const truth = await readingsOf(own, options);
  const others = ask.repairs.filter(
    (repair) => !drawn.car.faults.some(({ mends }) => mends.includes(repair)),
  );
  for (const repair of others) {
    const twins = await twinsOf(ask, repair, readings);
    for (const [index, test] of options.entries()) {
      if (twins.length === 0) break;
      const shown = truth[index];
      const apart = await Promise.all(
        twins.map(async (twin) => !isNear(await readingOf(twin, test), shown ?? null, APART)),
      );
      if (!apart.includes(false)) return testKey(test);
    }
  }
  return 'none';
}

/** Cars that need the other repair and have answered the same so far. */
async function twinsOf(
  { drawn, circuit, engine, made }: GroupAsk,
  repair: string,
  readings: readonly (Shows | null)[],
): Promise<Vehicle[]> {
  const known = faultsToDraw(drawingOf(circuit.name), circuit);
  const random = seeded(`twins ${repair}`);
  const found: Vehicle[] = [];
  for (const { weight, trouble, ...rest } of known.filter(({ mends }) => mends[0] === repair))
    for (let size = 0; size < SIZES; size += 1) {
      const fault: CarFault = { ...rest, trouble: trouble(random) };
      const car: Car = { ...drawn.car, faults: [fault] };
      const twin = new Vehicle(await new Vehicle(car, engine).afterKeyOn(), engine);
      if (await answersAlike(twin, made, readings)) {
        found.push(twin);
        break;
      }
    }
  return found;
}

async function answersAlike(
  twin: Vehicle,
  made: readonly Test[],
  readings: readonly (Shows | null)[],
): Promise<boolean> {
  for (const [index, test] of made.entries())
    if (!isNear(await readingOf(twin, test), readings[index] ?? null, SAME)) return false;
  return true;
}
