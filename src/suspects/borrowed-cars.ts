/**
 * Cars of the sound circuit for the suspects that borrow them. Many do, and there are few such cars: what shows on one of
 * them is worked out once, of the sound circuit for all suspects, and of a suspect for all of its name.
 */
import { borrowed, type Cloud, type CloudModel } from './cloud.ts';
import type { Way } from './fact.ts';
import { KeptWays } from './kept-ways.ts';
import { type Mixed, mixedWays } from './mixed-ways.ts';
import type { Borrowing, SuspectCars } from './suspect-cars.ts';

type WaysByCar = (test: number, car: number) => readonly Way[];

/** Cars of the sound circuit with a suspect's own values. */
interface OwnCars {
  readonly points: Float64Array;
  readonly lent: Cloud;
  /** What shows on them while the suspect is there. */
  readonly there: WaysByCar;
}

/** Cars of the healthy circuit, lent to its intermittent faults with a size and a share of their own. */
export class BorrowedCars {
  private readonly lender: SuspectCars | null;
  private readonly dims: number;
  private readonly byName = new WeakMap<Cloud, Map<string, OwnCars>>();
  private readonly byPoints = new WeakMap<Float64Array, OwnCars>();
  private readonly sound = new WeakMap<Cloud, WaysByCar>();

  constructor(lender: SuspectCars | null, dims: number) {
    this.lender = lender;
    this.dims = dims;
  }

  /** The lent cars with the suspect's own values, weighed for it; `cars` are its cars before any reading. */
  cloud(cars: SuspectCars, lent: Cloud, borrows: Borrowing): Cloud {
    const own = this.ownCars(cars, lent, borrows);
    return borrowed(lent, own.points, cars.model, ({ test }, car) =>
      mixedWays(this.mix(borrows, own, test, car)),
    );
  }

  /** What a cloud of such cars is asked; the suspect's own model where the points are none that were lent. */
  model({ model }: SuspectCars, borrows: Borrowing, { points }: Cloud): CloudModel {
    const own = this.byPoints.get(points);
    if (!own) return model;
    const waysOf = (test: number, car: number) => mixedWays(this.mix(borrows, own, test, car));
    return {
      ...model,
      predictAll: (fact, asked, count) =>
        asked === points
          ? Array.from({ length: count }, (_, car) => waysOf(fact.test, car))
          : model.predictAll(fact, asked, count),
    };
  }

  /** What a test shows on a car of a suspect that borrows, lent or its own. */
  mixed(borrows: Borrowing, points: Float64Array, test: number, car: number): Mixed {
    const lent = this.byPoints.get(points);
    if (lent) return this.mix(borrows, lent, test, car);
    const point = pointAt(points, this.dims, car);
    return {
      chance: borrows.chance(test, point),
      there: () => borrows.there(test, point),
      sound: () => this.lender!.ways(test, point),
    };
  }

  private mix({ chance }: Borrowing, own: OwnCars, test: number, car: number): Mixed {
    const point = pointAt(own.points, this.dims, car);
    return {
      chance: chance(test, point),
      there: () => own.there(test, car),
      sound: () => this.soundOn(own.lent)(test, car),
    };
  }

  private ownCars(cars: SuspectCars, lent: Cloud, { name, own, there }: Borrowing): OwnCars {
    const byName = this.byName.get(lent) ?? new Map<string, OwnCars>();
    this.byName.set(lent, byName);
    const known = byName.get(name);
    if (known) return known;
    const { dims } = this;
    const first = cars.start(lent.count).points;
    const points = lent.points.slice();
    for (let car = 0; car < lent.count; car += 1)
      for (const place of own) points[car * dims + place] = first[car * dims + place]!;
    const shown = keptByCar((test, car) => there(test, pointAt(points, dims, car)));
    const made: OwnCars = { points, lent, there: shown };
    byName.set(name, made);
    this.byPoints.set(points, made);
    return made;
  }

  private soundOn(lent: Cloud): WaysByCar {
    const known = this.sound.get(lent);
    if (known) return known;
    const { lender, dims } = this;
    const made = keptByCar((test, car) => lender!.ways(test, pointAt(lent.points, dims, car)));
    this.sound.set(lent, made);
    return made;
  }
}

/** The values of one car in a list of points. */
export function pointAt(points: Float64Array, dims: number, car: number): Float64Array {
  return points.subarray(car * dims, (car + 1) * dims);
}

function keptByCar(waysOf: WaysByCar): WaysByCar {
  const byTest = new Map<number, KeptWays>();
  return (test, car) => {
    const kept = byTest.get(test) ?? new KeptWays();
    byTest.set(test, kept);
    return kept.at(car, (at) => waysOf(test, at));
  };
}
