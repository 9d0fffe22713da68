/** One run of the bench: a car drawn, a session on it, its score, as one line of the results. */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import { turnsEngine } from '../../../src/session/timing-off.ts';
import { beginClient, testsOn } from './client.ts';
import { drawCar } from './draw-car.ts';
import { drawingOf } from './drawing.ts';
import { type Engine, sharedEngine } from './engine.ts';
import { couldBeSmaller } from './group-check.ts';
import { type MeansName, meansOf } from './means.ts';
import { takenFor } from './one-told.ts';
import { Person, type PersonName } from './person.ts';
import { type Scored, scoreOf } from './score.ts';
import { seeded } from './seeded.ts';
import { SessionRun } from './session-run.ts';
import type { Stratum } from './strata.ts';
import { Vehicle } from './vehicle.ts';
import { World } from './world.ts';

export type Mode = 'tree' | 'free';

export interface RunWish {
  readonly circuit: Circuit;
  readonly stratum: Stratum;
  readonly mode: Mode;
  readonly person: PersonName;
  readonly means: MeansName;
  readonly number: number;
  readonly weights: 'file' | 'even';
  /** Every so many-th run is asked whether one repair can be told. */
  readonly toldEvery: number;
}

/** A line of the results. */
export interface RunLine extends Scored {
  readonly circuit: string;
  readonly stratum: string;
  readonly mode: Mode;
  readonly person: PersonName;
  readonly means: MeansName;
  readonly number: number;
  /** What was wrong with the car; none for a whole one. */
  readonly faults: readonly string[];
  readonly inFile: boolean;
  readonly sees: string;
  readonly misfit: boolean;
  readonly proven: boolean;
  readonly provenBefore: boolean;
  readonly minutes: number;
  readonly tests: number;
  readonly slips: number;
  readonly slipsMade: number;
  /** Whether one step back from a wrong end with a slip ends right; null where that was not tried. */
  readonly backRight: boolean | null;
  /** A test that would make the named group smaller, `none`, or null where it was not looked for. */
  readonly smallerBy: string | null;
  /** Another fault that no test at hand tells from the true one, `none`, or null where there is no one repair, or where it was not asked. */
  readonly takenFor: string | null;
  readonly why: string;
  /** Questions that the bench could not answer truthfully. */
  readonly unknown: readonly string[];
  readonly triedValues: number;
  readonly triedFaults: number;
  readonly unsolved: number;
  /** Milliseconds: drawing the car, ngspice in all, the program, everything. */
  readonly drawMs: number;
  readonly spiceMs: number;
  readonly programMs: number;
  readonly ms: number;
}

/** Named groups of which a test is looked for that would make them smaller. */
const CHECKED_SHARE = 1 / 20;

export async function runCar(wish: RunWish): Promise<RunLine> {
  const { circuit, stratum, mode, person, means, number } = wish;
  const engine: Engine = await sharedEngine();
  const start = performance.now();
  const spice = engine.spent.ms;
  const drawn = await drawCar({ circuit, stratum, number, engine, weights: wish.weights });
  const drawMs = performance.now() - start;
  const words = `${circuit.name} ${stratum.name} ${number} ${mode} ${person} ${means}`;
  const random = seeded(`person ${words}`);
  // A test resistor is within 5 % of what is printed on it.
  const vehicle = new Vehicle(drawn.car, engine, 0.95 + 0.1 * random());
  const world = new World(
    drawn.car,
    drawn.sees,
    seeded(`world ${circuit.name} ${stratum.name} ${number}`),
  );
  const subject = mode === 'tree' ? drawingOf(circuit.name).procedure : circuit.name;
  const client = await beginClient(subject);
  const hand = meansOf(means, random);
  const run = new SessionRun({
    client,
    vehicle,
    person: new Person(random, person),
    world,
    means: hand,
  });
  const end = mode === 'tree' ? await run.tree() : await run.free();
  const { car, tries } = drawn;
  const scored = scoreOf(drawn, end, circuit);
  const tests = (await testsOn(subject)).filter(
    (test) => hand.cannot(test) === null && !(world.isTimingOff && turnsEngine(test)),
  );
  // What comes and goes is not told apart by one reading, nor are two faults at once by cars with one of them.
  const isChecked =
    car.fleeting === null &&
    car.faults.length < 2 &&
    scored.right &&
    scored.repairs.length > 1 &&
    random() < CHECKED_SHARE;
  const smallerBy = isChecked
    ? await couldBeSmaller({
        drawn,
        circuit,
        engine,
        made: run.made,
        repairs: scored.repairs,
        tests,
      })
    : null;
  const back = mode === 'tree' && end.slips > 0 && scored.wrong ? await run.oneStepBack() : null;
  return {
    ...scored,
    // A group that could be smaller is wrong.
    ...(smallerBy !== null && smallerBy !== 'none' ? { right: false, wrong: true } : {}),
    smallerBy,
    takenFor:
      number % wish.toldEvery === 0 ? await takenFor({ drawn, circuit, engine, tests }) : null,
    backRight: back && scoreOf(drawn, back, circuit).right,
    slipsMade: end.slipsMade,
    circuit: circuit.name,
    stratum: stratum.name,
    mode,
    person,
    means,
    number,
    faults: car.faults.map(({ id }) => id),
    inFile: car.faults.every(({ inFile }) => inFile),
    sees: drawn.sees,
    misfit: end.misfit,
    proven: end.proven,
    provenBefore: end.provenBefore,
    minutes: end.minutes,
    tests: end.tests,
    slips: end.slips,
    why: end.why,
    unknown: world.unknown,
    triedValues: tries.values,
    triedFaults: tries.faults,
    unsolved: tries.unsolved,
    drawMs: Math.round(drawMs),
    spiceMs: Math.round(engine.spent.ms - spice),
    programMs: Math.round(client.spentMs()),
    ms: Math.round(performance.now() - start),
  };
}
