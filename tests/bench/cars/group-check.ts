/**
 * Whether a group of repairs could have been made smaller: another car that needs another repair of the group, and that
 * answers all tests made as this one does, is looked for; then a test that the two answer differently.
 */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import { standardTests } from '../../../src/circuit/standard-tests.ts';
import type { Test } from '../../../src/circuit/test.ts';
import type { Car, CarFault } from './car.ts';
import type { DrawnCar } from './draw-car.ts';
import { drawingOf } from './drawing.ts';
import type { Engine } from './engine.ts';
import { faultsToDraw } from './faults-to-draw.ts';
import type { Means } from './means.ts';
import { seeded } from './seeded.ts';
import { type Shows, Unsolved, Vehicle } from './vehicle.ts';

export interface GroupAsk {
  readonly drawn: DrawnCar;
  readonly circuit: Circuit;
  readonly engine: Engine;
  readonly made: readonly Test[];
  readonly repairs: readonly string[];
  readonly means: Means;
}

/** Sizes that are tried of each other fault. */
const SIZES = 6;
/** Readings this near are the same; those this far apart tell two cars apart. */
const SAME = { volts: 0.02, ohms: 2, share: 0.03 };
const APART = { volts: 0.06, ohms: 6, share: 0.08 };

/** The id of a test that tells a member of the group apart from the true one, or `none`. */
export async function couldBeSmaller(ask: GroupAsk): Promise<string | 'none'> {
  const { drawn, circuit, made } = ask;
  const own = new Vehicle(drawn.car, ask.engine);
  const readings = await readingsOf(own, made);
  const options = standardTests(circuit).filter(
    ({ test }) => test.probe.kind !== 'inspect' && ask.means.cannot(test) === null,
  );
  const truth = await readingsOf(
    own,
    options.map(({ test }) => test),
  );
  const others = ask.repairs.filter(
    (repair) => !drawn.car.faults.some(({ mends }) => mends.includes(repair)),
  );
  for (const repair of others) {
    const twins = await twinsOf(ask, repair, readings);
    for (const [index, { id, test }] of options.entries()) {
      if (twins.length === 0) break;
      const shown = truth[index];
      const apart = await Promise.all(
        twins.map(async (twin) => !isNear(await reading(twin, test), shown ?? null, APART)),
      );
      if (!apart.includes(false)) return id;
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
    if (!isNear(await reading(twin, test), readings[index] ?? null, SAME)) return false;
  return true;
}

async function readingsOf(vehicle: Vehicle, tests: readonly Test[]): Promise<(Shows | null)[]> {
  const found: (Shows | null)[] = [];
  for (const test of tests) found.push(await reading(vehicle, test));
  return found;
}

async function reading(vehicle: Vehicle, test: Test): Promise<Shows | null> {
  try {
    return await vehicle.shows(test);
  } catch (error) {
    if (error instanceof Unsolved) return null;
    throw error;
  }
}

/** What could not be solved tells nothing. */
function isNear(one: Shows | null, other: Shows | null, limits: typeof SAME): boolean {
  if (!one || !other) return true;
  if (one.kind === 'look' || other.kind === 'look')
    return one.kind === 'look' && other.kind === 'look' && one.look === other.look;
  if (one.value === other.value) return true;
  const least = one.unit === 'V' ? limits.volts : limits.ohms;
  const off = Math.abs(one.value - other.value);
  return off <= least + limits.share * Math.max(Math.abs(one.value), Math.abs(other.value));
}
