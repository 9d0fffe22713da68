/**
 * Whether the tests at hand can tell one repair: each other fault that the module would notice, and the whole car, stand in
 * the place of the true one in this same car, and for each a test is looked for that the two answer differently. The other
 * values of the car are known here, as they are to nobody in a shop, so rather too many cars count as told than too few.
 * Of what eyes find only the maker's marks tell: any other look errs too often (3 in 100, docs/maths.md) for a proof by it
 * alone.
 */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import type { Test } from '../../../src/circuit/test.ts';
import { MARKS } from '../../../src/circuit/timing-marks.ts';
import { type Car, type CarFault, healthyTwin, type Trouble } from './car.ts';
import type { DrawnCar } from './draw-car.ts';
import { drawingOf } from './drawing.ts';
import type { Engine } from './engine.ts';
import { type FaultToDraw, faultsToDraw } from './faults-to-draw.ts';
import { moduleSees } from './module-sees.ts';
import { APART, isNear, readingOf } from './near.ts';
import { seeded } from './seeded.ts';
import { type Shows, Unsolved, Vehicle } from './vehicle.ts';

export interface ToldAsk {
  readonly drawn: DrawnCar;
  readonly circuit: Circuit;
  readonly engine: Engine;
  /** What the program could ask for and the person can do here. */
  readonly tests: readonly Test[];
}

/** Sizes drawn of each other fault that cannot be as large as the true one; one beside that where it can. */
const SIZES = 3;
/** What a whole car is called among those that no test tells apart. */
const WHOLE = 'nothing wrong';

/**
 * Another fault that no test at hand tells from the true one, or `none`. Null where there is no one repair to be told: of
 * a whole car, of two faults, and of one that comes and goes, which is told by more than readings at rest.
 */
export async function takenFor(ask: ToldAsk): Promise<string | 'none' | null> {
  const { car } = ask.drawn;
  const [own, second] = car.faults;
  if (!own || second || car.fleeting) return null;
  const hand = new TestsAtHand(ask);
  if (await hand.isAlike(healthyTwin(car))) return WHOLE;
  const random = seeded(`others ${ask.circuit.name}`);
  for (const other of faultsToDraw(drawingOf(ask.circuit.name), ask.circuit)) {
    if (other.mends.some((repair) => own.mends.includes(repair))) continue;
    for (const fault of ofEverySize(other, own, random))
      if (await hand.isAlike({ ...car, faults: [fault] }, true)) return other.id;
  }
  return 'none';
}

/** The other fault in some sizes, and with the ohms of the true one: that one is the hardest to tell from it. */
function ofEverySize(
  { weight, trouble, ...rest }: FaultToDraw,
  own: CarFault,
  random: () => number,
): CarFault[] {
  const first = trouble(random);
  const isSized = 'ohms' in first || 'size' in first;
  const sizes: Trouble[] =
    'ohms' in first && 'ohms' in own.trouble
      ? [{ ...first, ohms: own.trouble.ohms }, first]
      : [first, ...Array.from({ length: isSized ? SIZES - 1 : 0 }, () => trouble(random))];
  return sizes.map((one) => ({ ...rest, trouble: one }));
}

/** The tests that can be made here, with what the true car shows in each. */
class TestsAtHand {
  private readonly ask: ToldAsk;
  private readonly truth: Vehicle;
  /** Those first that have told others apart. */
  private readonly tests: Test[];
  private readonly shown = new Map<Test, Promise<Shows | null>>();

  constructor(ask: ToldAsk) {
    this.ask = ask;
    this.truth = new Vehicle(ask.drawn.car, ask.engine);
    this.tests = ask.tests.filter(({ probe }) => probe.kind !== 'inspect' || probe.of === MARKS);
  }

  /** Whether no test tells this car from the true one; `noticed` asks the module, too, of a car whose fault it may not notice. */
  async isAlike(car: Car, noticed = false): Promise<boolean> {
    const { engine } = this.ask;
    try {
      const other = new Vehicle(await new Vehicle(car, engine).afterKeyOn(), engine);
      for (const [place, test] of this.tests.entries()) {
        if (!(await this.tells(test, other))) continue;
        this.tests.splice(place, 1);
        this.tests.unshift(test);
        return false;
      }
      return !noticed || (await moduleSees(other)) !== 'good';
    } catch (error) {
      if (error instanceof Unsolved) return false;
      throw error;
    }
  }

  private async tells(test: Test, other: Vehicle): Promise<boolean> {
    const { probe } = test;
    if (probe.kind === 'inspect') return isMoved(this.truth.car) !== isMoved(other.car);
    const own = this.shown.get(test) ?? readingOf(this.truth, test);
    this.shown.set(test, own);
    return !isNear(await own, await readingOf(other, test), APART);
  }
}

/** What the marks show: that the wheel stands where it should not. */
function isMoved({ faults }: Car): boolean {
  return faults.some(({ trouble }) => trouble.kind === 'wheel' && trouble.mode === 'displaced');
}
