/** What the module makes of a car: all is well, or what it would store a code for. */
import type { Setup } from '../../../src/circuit/test.ts';
import { type Car, healthyTwin } from './car.ts';
import { type Ends, inputsOf, swingOf, TRACK_VOLTS, withoutSpot } from './signal-look.ts';
import type { Vehicle } from './vehicle.ts';

export type Sees = 'good' | 'no-signal' | 'low' | 'high' | 'uneven' | 'shifted' | 'weak';

/** Two tracks may disagree by so much of their way. */
const DISAGREE = 0.1;
const WEAK_SHARE = 0.55;
/** A drop-out inside the travel, as a share of the healthy swing. */
const DROP_OUT = 0.1;

/** What the module sees of this car. */
export async function moduleSees(vehicle: Vehicle): Promise<Sees> {
  const { car } = vehicle;
  const { sensor } = car.drawing;
  if (hasDeadInput(car)) return 'no-signal';
  if (sensor === 'tracks') return seesTracks(vehicle);
  const states: Setup['state'][] = sensor === 'current' ? ['key-on'] : ['cranking', 'running'];
  for (const state of states) {
    const sees = await seesWheel(vehicle, state);
    if (sees !== 'good') return sees;
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
  return 'good';
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
