/**
 * Low-discrepancy samples of all toleranced values: sample i of quantity d is the fractional part of
 * offset(d) + (i + 1) * sqrt(prime(d)) (Richtmyer, 1951; the offset, from the seed, after Cranley and Patterson, 1976).
 * All faults and tests share them, so that differences come from the fault and not from luck.
 */
import type { Toleranced } from '../quantity/quantity.ts';
import { valueAt } from '../quantity/value-at.ts';
import { quantitiesOf, quantityPlaces } from './car-quantities.ts';
import type { Circuit } from './circuit.ts';
import type { PlanValue } from './plan.ts';

/** The sample in which every value is its nominal one. */
export const NOMINAL = -1;
/** Points of the sequence that are kept once they are made. */
const POINTS_KEPT = 2048;

/** The sample that is no member of the sequence but the point that was taken last. Nothing of it may be kept. */
export const FREE_POINT = -2;

/** One car: where it stands in the unit cube, and what its values are there; both in the order of `quantitiesOf`. */
export interface DrawnCar {
  readonly point: Float64Array;
  /** 0 where a quantity is no value but a matter of chance. */
  readonly values: Float64Array;
}

/** The cars over which a circuit is looked at, by number, and one more that can be put anywhere. */
export interface Samples {
  /** Even value in 0..1 of quantity `key` in sample `index`; 0.5 for the nominal sample. */
  readonly unit: (key: string, index: number) => number;
  /** Where quantity `key` stands in a point. */
  readonly placeOf: (key: string) => number;
  /** The car of sample `index`, null for the nominal one. For looking at, until the next call. */
  readonly carOf: (index: number) => DrawnCar | null;
  /** Takes a point of the unit cube, one number in 0..1 for each of `quantitiesOf`, as sample `FREE_POINT`. */
  readonly take: (point: Float64Array) => void;
  /** How often the point that was taken has been another one: what is worked out of it holds while this stays. */
  readonly taken: () => number;
}

/** Samples for a circuit; the same circuit and seed give the same values to the bit. */
export function createSamples(circuit: Circuit, seed: number): Samples {
  const quantities = quantitiesOf(circuit);
  const placeByKey = new Map(quantities.map(({ key }, place) => [key, place]));
  const { steps, offsets } = sequenceOf(circuit, seed, quantities.length);
  const toleranced = quantities.map(({ value }) => value);
  const newCar = (): { readonly point: Float64Array; readonly values: Float64Array } => ({
    point: new Float64Array(steps.length).fill(Number.NaN),
    values: new Float64Array(steps.length),
  });
  const free = newCar();
  let taken = 0;
  const kept: (DrawnCar | undefined)[] = [];
  const placeOf = (key: string): number => {
    const place = placeByKey.get(key);
    if (place === undefined) throw new Error(`samples: no quantity "${key}"`);
    return place;
  };
  const drawn = toleranced.map(drawOf);
  const put = ({ point, values }: DrawnCar, place: number, unit: number): void => {
    const { of, kind, low, by } = drawn[place]!;
    point[place] = unit;
    if (kind === 'chance') return;
    if (kind === 'fixed') values[place] = low;
    else if (kind === 'steps' || unit > 1 || unit < 0) values[place] = valueAt(of, unit);
    else values[place] = kind === 'log' ? low * Math.exp(unit * by) : low + by * unit;
  };
  const sequenceCar = (index: number): DrawnCar => {
    const known = kept[index];
    if (known) return known;
    const car = newCar();
    for (let place = 0; place < steps.length; place += 1) {
      const along = offsets[place]! + (index + 1) * steps[place]!;
      put(car, place, along - Math.floor(along));
    }
    if (index < POINTS_KEPT) kept[index] = car;
    return car;
  };
  const carOf = (index: number): DrawnCar | null => {
    if (index === NOMINAL) return null;
    if (index !== FREE_POINT) return sequenceCar(index);
    if (taken === 0) throw new Error('samples: no point was taken');
    return free;
  };
  return {
    placeOf,
    carOf,
    unit: (key, index) => carOf(index)?.point[placeOf(key)] ?? 0.5,
    take: (point) => {
      if (point.length !== quantities.length)
        throw new Error(`samples: a point has ${quantities.length} numbers, not ${point.length}`);
      let isOther = false;
      // Cars that are asked about one after another mostly differ in a few values.
      for (let place = 0; place < point.length; place += 1)
        if (point[place] !== free.point[place]) {
          put(free, place, point[place]!);
          isOther = true;
        }
      if (isOther) taken += 1;
    },
    taken: () => taken,
  };
}

/** How far each quantity goes from sample to sample, and where it begins. */
function sequenceOf(
  circuit: Circuit,
  seed: number,
  count: number,
): { readonly steps: Float64Array; readonly offsets: Float64Array } {
  const places = quantityPlaces(circuit);
  const primes = firstPrimes(places.length);
  const steps = new Float64Array(count);
  const offsets = new Float64Array(count);
  let state = (seed >>> 0) ^ 0x9e3779b9;
  let at = 0;
  places.forEach((quantity, place) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    if (quantity === null) return;
    steps[at] = Math.sqrt(primes[place]!) % 1;
    offsets[at] = scramble(state) / 2 ** 32;
    at += 1;
  });
  return { steps, offsets };
}

/** What a value is in a car, null for the nominal one. */
export function valueIn(car: DrawnCar | null, { of, place, isOwn }: PlanValue): number {
  if (isOwn && car !== null) return car.values[place]!;
  if (of.low === of.high) return of.low;
  return car === null ? of.nominal : valueAt(of, car.point[place]!);
}

/** `valueAt` of one value, as far as it can be worked out once; `by` is its span, or the logarithm of its ends' ratio. */
interface Draws {
  readonly of: Toleranced;
  readonly kind: 'chance' | 'fixed' | 'steps' | 'log' | 'even';
  readonly low: number;
  readonly by: number;
}

function drawOf(of: Toleranced | null): Draws {
  if (of === null) return { of: NO_VALUE, kind: 'chance', low: 0, by: 0 };
  const { low, high, spread, oneOf } = of;
  if (oneOf) return { of, kind: 'steps', low, by: 0 };
  if (low === high) return { of, kind: 'fixed', low, by: 0 };
  return spread === 'log'
    ? { of, kind: 'log', low, by: Math.log(high / low) }
    : { of, kind: 'even', low, by: high - low };
}
const NO_VALUE: Toleranced = { nominal: 0, low: 0, high: 0, unit: '1' };

/** A well mixed 32-bit number (the finaliser of MurmurHash3, Appleby, public domain). */
function scramble(value: number): number {
  let h = value >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n += 1) {
    let at = 0;
    while (at < primes.length && primes[at]! ** 2 <= n && n % primes[at]! !== 0) at += 1;
    if (at === primes.length || primes[at]! ** 2 > n) primes.push(n);
  }
  return primes;
}
