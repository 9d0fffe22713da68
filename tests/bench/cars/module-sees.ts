/** What the module makes of a car: all is well, or what it would store a code for. */
import type { Setup } from '../../../src/circuit/test.ts';
import { type Car, healthyTwin } from './car.ts';
import {
  coversTravel,
  type Ends,
  inputsOf,
  swingOf,
  TRACK_VOLTS,
  withoutSpot,
} from './signal-look.ts';
import type { Vehicle } from './vehicle.ts';

export type Sees = 'good' | 'no-signal' | 'low' | 'high' | 'uneven' | 'shifted' | 'weak';

/** Two tracks may disagree by so much of their way. */
const DISAGREE = 0.1;
const WEAK_SHARE = 0.55;
/** A drop-out inside the travel, as a share of the healthy swing. */
const DROP_OUT = 0.1;
/** A reference of the module this many times as high as its own is fed from outside. Common practice, no source. */
const REFERENCE_HIGH = 1.1;
/** A biased pin at rest outside these is a wire that touches something. Common practice, no source. */
const BIAS_VOLTS = { low: 0.2, high: 4.8 } as const;

/** What the module sees of this car. */
export async function moduleSees(vehicle: Vehicle): Promise<Sees> {
  const { car } = vehicle;
  const { sensor } = car.drawing;
  if (hasDeadInput(car)) return 'no-signal';
  if (await hasReferenceHigh(vehicle)) return 'high';
  if (sensor === 'tracks') return seesTracks(vehicle);
  const bias = sensor === 'coil' ? await seesBias(vehicle) : 'good';
  if (bias !== 'good') return bias;
  const states: Setup['state'][] = sensor === 'current' ? ['key-on'] : ['cranking', 'running'];
  for (const state of states) {
    const sees = await seesWheel(vehicle, state);
    if (sees !== 'good') return sees;
  }
  return 'good';
}

/** A module watches the references that it gives out, since a switch follows its wheel on 13 V as well. */
async function hasReferenceHigh(vehicle: Vehicle): Promise<boolean> {
  const { car } = vehicle;
  const touches = car.faults.some(
    ({ trouble }) => trouble.kind === 'wire-short' && trouble.to === 'battery',
  );
  if (!touches || car.feedsBattery) return false;
  const pins = car.drawing.module
    .filter(({ does }) => does === 'feed')
    .map(({ pin }) => `module.${pin}.pin`);
  const now = await vehicle.restVolts(pins);
  const healthy = await vehicle.restVolts(pins, healthyTwin(car));
  return now.some((volts, index) => volts > REFERENCE_HIGH * (healthy[index] ?? volts));
}

/**
 * One wire of a coil on ground leaves the difference between both pins nearly whole: by hand, of 900 ohm against a bias
 * of 2.5 V behind 10 kohm, 10 / 10.9 of it. Yet the module notices, for the bias is there to hold both pins between the
 * rails of its input, and to tell a wire that touches something from a wheel that stands. With the shorted pin at 0 V
 * the coil takes the other down with it, to 2.5 V times 0.9 / 10.9 = 0.2 V, and every second half-wave goes below the
 * rail, where the input clamps it. A module without bias has nothing to lose and does not notice.
 */
async function seesBias(vehicle: Vehicle): Promise<Sees> {
  const pins = vehicle.car.drawing.module.map(({ pin }) => `module.${pin}.pin`);
  const now = await vehicle.restVolts(pins);
  const healthy = await vehicle.restVolts(pins, healthyTwin(vehicle.car));
  for (const [index, volts] of now.entries()) {
    const good = healthy[index] ?? 0;
    if (good < BIAS_VOLTS.low || good > BIAS_VOLTS.high) continue;
    if (volts < BIAS_VOLTS.low) return 'low';
    if (volts > BIAS_VOLTS.high) return 'high';
  }
  return 'good';
}

async function seesWheel(vehicle: Vehicle, state: Setup['state']): Promise<Sees> {
  const { car } = vehicle;
  const [input] = inputsOf(car.drawing);
  const [ends] = await vehicle.inputEnds(state);
  if (!input || !ends) throw new Error('module-sees: a wheel sensor has one input');
  const look = await vehicle.inputLook(state, 0);
  if (look === 'flat-low') return 'low';
  if (look === 'flat-high') return 'high';
  if (look === 'flat-middle') return 'no-signal';
  const healthy = async () => (await vehicle.inputEnds(state, healthyTwin(car)))[0] ?? ends;
  if (!(await input.follows(car, ends, healthy))) return 'no-signal';
  if (car.drawing.sensor === 'coil' && swingOf(ends) < WEAK_SHARE * swingOf(await healthy()))
    return 'weak';
  if (look === 'weak') return 'weak';
  if (look === 'uneven') return 'uneven';
  return isOutOfStep(car) ? 'shifted' : 'good';
}

async function seesTracks(vehicle: Vehicle): Promise<Sees> {
  const { car } = vehicle;
  const found = await vehicle.inputEnds('key-on');
  const twins = await vehicle.inputEnds('key-on', healthyTwin(car));
  for (const { volts } of found.map(withoutSpot)) {
    if (Math.min(...volts) < TRACK_VOLTS.low) return 'low';
    if (Math.max(...volts) > TRACK_VOLTS.high) return 'high';
  }
  if (found.some((ends, index) => dropsOut(ends, twins[index] ?? ends))) return 'uneven';
  const [first, second] = found;
  const [goodFirst, goodSecond] = twins;
  if (first && second && goodFirst && goodSecond) {
    const one = travelOf(first, goodFirst);
    const other = travelOf(second, goodSecond);
    if (one.some((at, index) => Math.abs(at - (other[index] ?? at)) > DISAGREE)) return 'shifted';
  }
  // A throttle that is half open at rest, or that closes where it should open, cannot be.
  const isOff = found.some((ends, index) => {
    const good = twins[index] ?? ends;
    return (
      !coversTravel(withoutSpot(ends), good) || (travelOf(ends, good)[TRAVELS_LAST] ?? 0) < 0.5
    );
  });
  return isOff ? 'shifted' : 'good';
}

/** Where the module thinks that the sensor stands, from the healthy ends that it has learned. */
function travelOf({ volts }: Ends, good: Ends): number[] {
  const rest = good.volts[0] ?? 0;
  const end = good.volts[TRAVELS_LAST] ?? good.volts.at(-1) ?? 0;
  return volts.map((one) => (one - rest) / (end - rest || 1));
}
const TRAVELS_LAST = 4;

function dropsOut({ volts, instants }: Ends, good: Ends): boolean {
  return instants.some(
    ({ onSpot, travel }, index) =>
      onSpot && Math.abs((volts[index] ?? 0) - straight(volts, travel)) > DROP_OUT * swingOf(good),
  );
}

function straight(volts: readonly number[], travel: number): number {
  const rest = volts[0] ?? 0;
  return rest + travel * ((volts[TRAVELS_LAST] ?? 0) - rest);
}

function hasDeadInput({ faults, drawing }: Car): boolean {
  const inputs = inputsOf(drawing).map(({ plus }) => plus);
  return faults.some(
    ({ trouble }) =>
      trouble.kind === 'module' &&
      trouble.mode === 'input-dead' &&
      inputs.includes(`module.${trouble.pin}`),
  );
}

function isOutOfStep({ faults }: Car): boolean {
  return faults.some(
    ({ trouble }) =>
      (trouble.kind === 'wheel' && trouble.mode === 'displaced') ||
      (trouble.kind === 'sensor' && trouble.mode === 'leads-swapped'),
  );
}
