/** Draws a car: values by its stratum until the healthy car works, then a fault until the module notices it. */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import { type Car, type CarFault, type Fleeting, valueIn } from './car.ts';
import { drawingOf } from './drawing.ts';
import type { Engine } from './engine.ts';
import { type FaultToDraw, faultsToDraw } from './faults-to-draw.ts';
import { moduleSees, type Sees } from './module-sees.ts';
import { between, byWeight, type Random, seeded } from './seeded.ts';
import { plainValues, type Stratum } from './strata.ts';
import { Unsolved, Vehicle } from './vehicle.ts';

export interface DrawnCar {
  readonly car: Car;
  readonly sees: Sees;
  /** How often values and faults were drawn, the last included. */
  readonly tries: { readonly values: number; readonly faults: number; readonly unsolved: number };
}

/** So many cars of a circuit have nothing wrong now. */
const HEALTHY_SHARE = 0.05;
const TRIES_MAX = 400;
/** A loaded reference stands at this share of its own volts or more. Common practice, no source. */
const CARRIED = 0.9;

export interface CarAsk {
  readonly circuit: Circuit;
  readonly stratum: Stratum;
  readonly number: number;
  readonly engine: Engine;
  /** Faults by the weights of the circuit file, or all alike. */
  readonly weights: 'file' | 'even';
}

/** The car of that number. */
export async function drawCar(ask: CarAsk): Promise<DrawnCar> {
  const { circuit, stratum, number, engine } = ask;
  const random = seeded(`car ${circuit.name} ${stratum.name} ${number}`);
  const tries = { values: 0, faults: 0, unsolved: 0 };
  const whole = await drawHealthy(random, ask, tries);
  if (random() < HEALTHY_SHARE && !stratum.fleeting && stratum.faults === 1)
    return { car: whole, sees: 'good', tries: { ...tries } };
  const all = faultsToDraw(whole.drawing, circuit);
  const faults = stratum.fleeting ? all.filter(canComeAndGo) : all;
  for (let attempt = 0; attempt < TRIES_MAX; attempt += 1) {
    tries.faults += 1;
    const found = Array.from({ length: stratum.faults }, () =>
      drawFault(random, faults, ask.weights),
    );
    if (new Set(found.map(({ mends }) => mends[0])).size < found.length) continue;
    try {
      const plain = { ...whole, faults: found };
      const car = await new Vehicle(plain, engine).afterKeyOn();
      const sees = await moduleSees(new Vehicle(car, engine));
      if (sees === 'good') continue;
      return { car: { ...car, fleeting: fleetingOf(random, stratum) }, sees, tries: { ...tries } };
    } catch (error) {
      if (!(error instanceof Unsolved)) throw error;
      tries.unsolved += 1;
    }
  }
  throw new Error(`cars: no fault of ${circuit.name} in "${stratum.name}" is noticed`);
}

async function drawHealthy(
  random: Random,
  { circuit, stratum, engine }: CarAsk,
  tries: { values: number; unsolved: number },
): Promise<Car> {
  for (let attempt = 0; attempt < TRIES_MAX; attempt += 1) {
    tries.values += 1;
    const of = plainValues(random, circuit.name, stratum.isFree);
    stratum.turn(random, of, circuit.name);
    const car: Car = {
      drawing: drawingOf(circuit.name),
      values: withOutput(of.values, of.pulls['signal'], stratum.isFree),
      pulls: of.pulls,
      feedsBattery: of.feedsBattery,
      faults: [],
      fleeting: null,
      isFuseBlown: false,
      isRelayReleased: false,
    };
    try {
      const vehicle = new Vehicle(car, engine);
      if ((await moduleSees(vehicle)) === 'good' && (await feedsCarry(vehicle))) return car;
    } catch (error) {
      if (!(error instanceof Unsolved)) throw error;
      tries.unsolved += 1;
    }
  }
  throw new Error(`cars: no healthy ${circuit.name} in "${stratum.name}" works`);
}

/** Whether each reference of the module stands with all that hangs at it: one at its limit is no whole car. */
async function feedsCarry(vehicle: Vehicle): Promise<boolean> {
  const { drawing, feedsBattery } = vehicle.car;
  const pins = drawing.module.filter(({ does }) => does === 'feed').map(({ pin }) => pin);
  if (feedsBattery || pins.length === 0) return true;
  const volts = await vehicle.restVolts(pins.map((pin) => `module.${pin}.pin`));
  return pins.every((pin, at) => volts[at]! >= CARRIED * valueIn(vehicle.car, `${pin}.volts`));
}

/** Over all cars the low level is what varies: the output's resistance follows from it and from the pull-up. */
function withOutput(
  values: Readonly<Record<string, number>>,
  pullTo: string | undefined,
  isFree: boolean,
): Readonly<Record<string, number>> {
  const level = values['sensor.low-level'];
  const pull = values['signal.pull'];
  if (!isFree || level === undefined || pull === undefined) return values;
  const supply = pullTo === 'battery' ? 12 : (values['signal.own'] ?? 5);
  return { ...values, 'sensor.on': (level * pull) / (supply - level) };
}

function drawFault(
  random: Random,
  faults: readonly FaultToDraw[],
  weights: 'file' | 'even',
): CarFault {
  const { weight, trouble, ...rest } = byWeight(random, faults, (one) =>
    weights === 'file' ? one.weight : 1,
  );
  return { ...rest, trouble: trouble(random) };
}

/** Contacts, wires and joints do; a wheel, a fuse, a short inside a track or swapped wires do not. */
function canComeAndGo({ id }: FaultToDraw): boolean {
  return !/^(target|fuse|module)\.|swapped|track-\d\.shorted|main\.shorted|shorted-turns/.test(id);
}

/** There in a share of looks; woken by moving, heat or water. */
function fleetingOf(random: Random, { fleeting }: Stratum): Fleeting | null {
  if (!fleeting) return null;
  return { present: between(random, 0.1, 0.4), woken: 0.8 };
}
