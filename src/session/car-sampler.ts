/** The cars of a circuit as the suspects ask about them: faults that stay, faults that come and go, places that wake one. */

import type { CarQuantity } from '../circuit/car-quantities.ts';
import { type Fault, sensorOf } from '../circuit/circuit.ts';
import { instrumentOf } from '../circuit/instruments.ts';
import { type Model, PAIR_MARK, pairId } from '../circuit/model.ts';
import { leads } from '../circuit/refuse-test.ts';
import { UnsolvedCircuit } from '../circuit/sample-solver.ts';
import { sensorKindOf } from '../circuit/sensors.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { MARKS } from '../circuit/timing-marks.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { valueAt } from '../quantity/value-at.ts';
import type { Way } from '../suspects/fact.ts';
import { KeptWays } from '../suspects/kept-ways.ts';
import { mixedWays } from '../suspects/mixed-ways.ts';
import { redrawFew } from '../suspects/move-car.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { CarSampler, CarsOf } from '../suspects/suspect-cars.ts';
import type { TestEntry } from '../suspects/test-entries.ts';
import {
  drops,
  faultIdOf,
  type IntermittentSuspects,
  isWilling,
  presentAt,
  type WakingTest,
  wakingFaults,
  wokenChance,
} from './intermittent.ts';

/** Whose cars are asked about, and how faults behave on them. */
export interface SamplerAsk {
  readonly model: Model;
  readonly procedure: Procedure | null;
  readonly testAt: (place: number) => TestEntry | WakingTest;
  /** How faults come and go; null where none is thought of. */
  readonly intermittent: IntermittentSuspects | null;
}

/** The cars of the model's circuit. */
export function carSampler(ask: SamplerAsk): CarSampler {
  const { model, intermittent } = ask;
  const cars = (candidate: string) => carsOf(ask, candidate);
  return {
    dims: dimsOf(ask),
    cars,
    pair: intermittent
      ? null
      : (first, second) => {
          const [one, two] = [first, second].map((id) => faultOf(model, id));
          const both = one && two ? pairId(one, two) : null;
          return both === null ? null : cars(both);
        },
  };
}

/** Length of a point: the values of the car, and behind them how often a fault is there that comes and goes by itself. */
function dimsOf({ model, intermittent }: SamplerAsk): number {
  return model.quantities.length + (intermittent?.present === null ? 1 : 0);
}

function faultOf(model: Model, id: string): Fault | undefined {
  return model.circuit.faults.find((fault) => fault.id === id);
}

function carsOf(ask: SamplerAsk, candidate: string): CarsOf {
  const { model, procedure, testAt, intermittent } = ask;
  const dims = dimsOf(ask);
  const fault = faultIdOf(candidate);
  const isFleeting = fault !== candidate;
  const showsOn = shower(model);
  const presentPlace = model.quantities.length;
  const valuesOf = (point: Float64Array) =>
    dims > presentPlace ? point.subarray(0, presentPlace) : point;
  const show = (id: string, test: Test, point: Float64Array) => showsOn(id, test, valuesOf(point));
  // Two faults at once need not both be noticed.
  const isSingle = fault !== HEALTHY && !fault.includes(PAIR_MARK);
  const isRight = (point: Float64Array) => {
    const values = valuesOf(point);
    return model.works(values) && (!isSingle || model.complains(fault, values));
  };
  let isSure: boolean | undefined;
  const woken = new Map<string, readonly string[]>();
  const wakes = (id: string): boolean => {
    const faults = woken.get(id) ?? wakingFaults(procedure, id);
    woken.set(id, faults);
    return faults.includes(fault);
  };
  const sizeAt = model.quantities.findIndex(({ key }) => key === 'fault.size');
  /** How often a fault that comes and goes is there as a test is made; one that stays always is. */
  const chance = (place: number, point: Float64Array): number => {
    const { id, test } = testAt(place);
    if (test === null) return wokenChance(candidate, wakes(id));
    if (!isFleeting || !intermittent || test.probe.kind === 'inspect') return 1;
    const byItself = intermittent.present ?? presentAt(point[presentPlace]!);
    return test.wiggle && isWilling(candidate) ? Math.max(intermittent.moved, byItself) : byItself;
  };
  const showAt = (id: string, place: number, point: Float64Array): readonly Way[] => {
    const { test } = testAt(place);
    if (!test) return [{ shown: drops(id !== HEALTHY), share: 1 }];
    const seen = isFleeting && id === fault ? seenShare(model, fault, test) : null;
    if (seen === null) return show(id, test, point);
    return [
      { shown: { kind: 'look', look: 'faulty' }, share: seen },
      { shown: { kind: 'look', look: 'sound' }, share: 1 - seen },
    ];
  };
  const there = (place: number, point: Float64Array) => showAt(fault, place, point);
  // Meters read a wheel that is not right as they read the sound circuit.
  const isAsSound = isFleeting || (intermittent !== null && isOfWheel(model, fault));
  const own = dims > presentPlace ? [sizeAt, presentPlace] : [sizeAt];
  return {
    ...(isAsSound ? { borrows: { own, name: fault, there, chance } } : {}),
    isPossible: (point) => {
      isSure ??= isSingle && model.everyCar(fault, SURE_CARS);
      return (isSure && isWithin(point)) || isRight(point);
    },
    start: (count) => startingPoints(ask, fault, count),
    outside: isAsSound ? null : outsideCars(ask, fault),
    ways: (place, point) =>
      mixedWays({
        chance: chance(place, point),
        there: () => there(place, point),
        sound: () => showAt(HEALTHY, place, point),
      }),
    ...(isFleeting ? {} : { keptFor: (place: number) => keptWays(model, fault, testAt(place)) }),
  };
}

/**
 * How often a fault that may be seen or not is seen where `test` looks, so that it is no matter of the car; null for what
 * is certain, and for other tests.
 */
function seenShare(model: Model, id: string, { probe }: Test): number | null {
  const found = faultOf(model, id);
  if (probe.kind !== 'inspect' || probe.of === MARKS || !found?.subject.includes(probe.of))
    return null;
  return found.visibleChance;
}

function isOfWheel({ circuit }: Model, id: string): boolean {
  return circuit.faults.some((fault) => fault.id === id && fault.class === 'target');
}

/** Where the first so many cars that are drawn all come to the shop with a fault, others do as well. Our choice. */
const SURE_CARS = 128;

function isWithin(point: Float64Array): boolean {
  for (let at = 0; at < point.length; at += 1) if (point[at]! < 0 || point[at]! > 1) return false;
  return true;
}

/** By fault and test, of the first cars of a model: whatever a session has been told, they show the same. */
const kept = new WeakMap<Model, Map<string, KeptWays>>();

/** Null for a step that wakes faults: which ones hangs on its tree. */
function keptWays(model: Model, fault: string, entry: TestEntry | WakingTest): KeptWays | null {
  if (entry.test === null) return null;
  const ofModel = kept.get(model) ?? new Map<string, KeptWays>();
  kept.set(model, ofModel);
  const key = `${fault}|${entry.key}`;
  const known = ofModel.get(key) ?? new KeptWays();
  ofModel.set(key, known);
  return known;
}

/**
 * What the car shows, whether or not the harness is moved. The wheel of a switched sensor stands anew after each turn: on
 * for its part of a turn, else off.
 */
function shower(model: Model): (fault: string, test: Test, point: Float64Array) => Way[] {
  const { quantities, circuit } = model;
  const still = quantities.findIndex(({ key }) => key === 'target.still');
  const duty = quantities.findIndex(({ key }) => key === 'target.duty');
  const sensor = sensorOf(circuit);
  const { name } = sensor;
  const { isSwitched } = sensorKindOf(sensor);
  const at = new Float64Array(quantities.length);
  const feels = ({ setup, probe }: Test) =>
    isSwitched &&
    setup.target === 'still' &&
    setup.state !== 'key-off' &&
    instrumentOf(probe).isReadStill &&
    (setup.sensor === 'spare' ||
      !setup.unplugged.includes(name) ||
      leads(probe).some((lead) => lead.startsWith(`${name}.`) && lead.endsWith('.pin')));
  return (fault, test, point) => {
    if (!feels(test)) return [{ shown: shown(fault, test, point), share: 1 }];
    const part =
      duty < 0
        ? (circuit.target?.onChance ?? 0.5)
        : valueAt(quantities[duty]!.value!, point[duty]!);
    return [0, 1].map((end) => {
      at.set(point);
      at[still] = end;
      return { shown: shown(fault, test, at), share: end === 0 ? part : 1 - part };
    });
  };

  /** Two faults at once may have no rest that the solver finds: then the first is shown alone, which explains no more. */
  function shown(fault: string, test: Test, point: Float64Array): Shown {
    try {
      return model.showsAt(fault, test, point);
    } catch (error) {
      const first = fault.split(PAIR_MARK)[0]!;
      if (!(error instanceof UnsolvedCircuit) || first === fault) throw error;
      return model.showsAt(first, test, point);
    }
  }
}

/** Cars of which one value lies outside its range: each value in turn, on each side. */
function outsideCars(ask: SamplerAsk, fault: string): CarsOf['outside'] {
  const { model } = ask;
  const can = model.quantities.flatMap((quantity, at) => (canBeOutside(quantity) ? [at] : []));
  const length = dimsOf(ask);
  if (can.length === 0) return null;
  return {
    values: can,
    start: (count, values) => {
      const points = startingPoints(ask, fault, count);
      for (let car = 0; car < count; car += 1) {
        const at = car * length + values[car % values.length]!;
        const isAbove = Math.floor(car / values.length) % 2 === 0;
        points[at] = isAbove ? 1 + points[at]! : -points[at]!;
      }
      return points;
    },
    redraw: (point, felt, random) => {
      if (random.unit() < RELOCATE_CHANCE) {
        const out = point.findIndex((value) => value < 0 || value > 1);
        point[out] = random.unit();
        const at = can[random.below(can.length)]!;
        point[at] = random.unit() < 0.5 ? 1 + random.unit() : -random.unit();
      } else redrawFew(point, felt, random);
    },
  };
}
/** Chance that a redrawn car is not as described in another value. Our choice. */
const RELOCATE_CHANCE = 0.5;

/** Values that a circuit file can be wrong about: not copper and contacts, nor what is one of a few ways or a matter of chance. */
function canBeOutside({ key, value, ways }: CarQuantity): boolean {
  if (value === null || ways !== undefined || value.low === value.high) return false;
  return !NEVER_OUTSIDE.some((start) => key.startsWith(start)) && !/\.(shorted|twin)$/.test(key);
}
const NEVER_OUTSIDE = ['wire.', 'contact.', 'target.', 'fault.', 'bridge.', 'temperature'];

/** The first cars of the family's sequence that are the complaint with this fault. */
function startingPoints(ask: SamplerAsk, fault: string, count: number): Float64Array {
  const { model } = ask;
  const dims = dimsOf(ask);
  const { length } = model.quantities;
  const points = new Float64Array(count * dims);
  for (let car = 0; car < count; car += 1) {
    points.set(model.pointOf(car, fault), car * dims);
    if (dims > length) points[car * dims + length] = shuffled(car);
  }
  return points;
}

/** Evenly over 0 to 1 however many cars there are, and apart from their other values (Weyl, with the golden ratio). */
function shuffled(car: number): number {
  return ((car + 0.5) * GOLDEN) % 1;
}
const GOLDEN = (Math.sqrt(5) - 1) / 2;
