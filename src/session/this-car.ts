/** What the readings of a session leave of its car: what is good here in a test, and what a test can show at all. */
import { type Model, summarised } from '../circuit/model.ts';
import { unitShownBy } from '../circuit/shown-by.ts';
import type { Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import { reachOf } from '../suspects/shown-reach.ts';
import type { Diagnosis } from './advisor.ts';
import { type Basis, disagreeing } from './basis.ts';
import { type CarView, carView } from './car-view.ts';
import type { ExpectedShown } from './events.ts';
import { expectedFrom, expectedShown } from './expected-shown.ts';
import { type GoodHere, goodHere } from './good-here.ts';
import type { PossibleValues } from './possible-values.ts';
import type { SessionReading } from './session-readings.ts';
import type { SuspectSpace } from './suspect-space.ts';
import { testsBeside } from './tests-beside.ts';

/** The car of one state. Each answer is worked out when it is first asked for, and kept. */
export class ThisCar
  implements Pick<Diagnosis, 'car' | 'carsLeft' | 'goodHere' | 'expected' | 'possible'>
{
  private readonly basis: Basis;
  private readonly model: Model;
  private readonly space: SuspectSpace;
  private readonly readings: readonly SessionReading[];
  private readonly good = new Map<string, GoodHere | null>();
  private readonly reaches = new Map<string, PossibleValues | null>();
  private known: { readonly car: CarView | null } | undefined;

  constructor(basis: Basis) {
    this.basis = basis;
    this.model = basis.model;
    this.space = basis.space;
    this.readings = basis.readings;
  }

  get car(): CarView | null {
    this.known ??= { car: this.carShown() };
    return this.known.car;
  }

  get isKnown(): boolean {
    return this.known !== undefined;
  }

  get carsLeft(): readonly Float64Array[] | null {
    return this.space.carsLeft(this.readings);
  }

  goodHere(test: Test): GoodHere | null {
    const key = testKey(test);
    const known = this.good.get(key);
    if (known !== undefined) return known;
    const made = this.goodIn(test);
    this.good.set(key, made);
    return made;
  }

  expected(test: Test): ExpectedShown {
    const place = this.space.placeOf(test);
    return place === null ? expectedShown(this.model, test) : this.expectedAt(place, test);
  }

  /** The same of a test whose place in the space is known. */
  expectedAt(place: number, test: Test): ExpectedShown {
    return this.expectedAfter(this.readings, place, test);
  }

  possible(test: Test): PossibleValues | null {
    const key = testKey(test);
    const known = this.reaches.get(key);
    if (known !== undefined) return known;
    const made = this.possibleIn(test);
    this.reaches.set(key, made);
    return made;
  }

  private carShown(): CarView | null {
    const { readings, space, basis } = this;
    const before = space.carOnTheWay(readings);
    if (!before) return null;
    const { misfit, repairs } = basis.standing.ranking;
    return carView({
      quantities: this.model.quantities,
      misfit,
      leading: repairs[0]!.chance,
      before,
      events: readings.map(({ event }) => event),
      disagrees: disagreeing(basis)?.event ?? null,
    });
  }

  private goodIn(test: Test): GoodHere | null {
    const unit = unitShownBy(test.probe);
    if (unit === null) return null;
    const { readings, space, car } = this;
    const place = space.placeOf(test);
    if (place === null || !car) return null;
    const shown = (many: number) => this.expectedAfter(readings.slice(0, many), place, test);
    const tellers = [...new Set(car.values.map(({ by }) => by))];
    return goodHere({
      expected: shown(readings.length),
      unit,
      batteryVolts: this.model.circuit.battery.rest.nominal,
      told: tellers.map((event) => {
        const at = readings.findIndex((one) => one.event === event);
        return { event, before: shown(at), after: shown(at + 1) };
      }),
    });
  }

  private possibleIn(test: Test): PossibleValues | null {
    const unit = unitShownBy(test.probe);
    if (unit === null) return null;
    const place = this.space.placeOf(test);
    const reach = place === null ? null : this.space.reach(this.readings, place);
    if (!reach || (reach.spans.length === 0 && !reach.overLimit)) return null;
    const beside = () =>
      testsBeside(test, this.model.circuit).flatMap(({ test: other, words }) => {
        const at = this.space.placeOf(other);
        const shown = at === null ? null : this.space.soundShows(this.readings, at);
        const ways = (shown ?? []).map((one) => [{ shown: one, share: 1 }]);
        return reachOf([ways]).spans.map((span) => ({ words, span }));
      });
    return { ...reach, unit, meter: this.model.meter, beside };
  }

  private expectedAfter(
    readings: readonly SessionReading[],
    place: number,
    test: Test,
  ): ExpectedShown {
    const shown = this.space.soundShows(readings, place);
    const [first] = shown ?? [];
    return shown && first
      ? expectedFrom(this.model.meter, summarised(first, shown))
      : expectedShown(this.model, test);
  }
}
