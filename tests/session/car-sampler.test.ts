/** The cars of a shipped circuit as the suspects ask about them, and what a car beyond its description is told to be. */
import { describe, expect, test } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { carSampler } from '../../src/session/car-sampler.ts';
import { MISFIT_TOLD } from '../../src/session/car-view.ts';
import { testTable } from '../../src/session/test-table.ts';
import { ERROR_MODEL } from '../../src/suspects/error-model.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { Posteriors } from '../../src/suspects/posterior.ts';
import { rankByClouds } from '../../src/suspects/posterior-ranking.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { priorFor, withHealthy } from '../../src/suspects/prior.ts';
import { carKnown } from '../../src/suspects/shown-values.ts';
import { atOnce } from '../../src/suspects/slices.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { modelOf } from '../circuit/shipped.ts';

const model = modelOf('hall-module-fed', 4);
const { entryOf } = testTable(model.circuit, null, model.meter);
const volts = (plus: string, minus = 'battery.negative', setup = KEY_ON): Test => ({
  setup,
  probe: { kind: 'volts', plus, minus },
});
const UNPLUGGED = setupOf({ unplugged: ['sensor'] });
const TESTS = [
  volts('battery.positive'),
  volts('sensor.feed', 'battery.negative', UNPLUGGED),
  volts('sensor.feed', 'sensor.ground', UNPLUGGED),
  volts('sensor.signal', 'battery.negative', UNPLUGGED),
  volts('sensor.signal'),
  volts('module.reference'),
].map(entryOf);
const sampler = carSampler({
  ...{ model, procedure: null, intermittent: null },
  testAt: (place) => TESTS[place]!,
});
const placeOf = (key: string) => model.quantities.findIndex((one) => one.key === key);
const middle = () => new Float64Array(model.quantities.length).fill(0.5);

describe('the cars of a fault', () => {
  const cars = sampler.cars(HEALTHY);
  test('begin with the points of the model', () => {
    const points = cars.start(3);
    const { length } = model.quantities;
    for (let car = 0; car < 3; car += 1)
      expect(points.slice(car * length, (car + 1) * length)).toEqual(model.pointOf(car));
  });
  test('show what the model shows; where the wheel stands is a matter of chance', () => {
    expect(cars.ways(1, middle())).toEqual([
      { shown: model.showsAt(HEALTHY, TESTS[1]!.test, middle()), share: 1 },
    ]);
    const ways = cars.ways(4, middle());
    const [on, off] = [0, 1].map((end) => {
      const at = middle();
      at[placeOf('target.still')] = end;
      return model.showsAt(HEALTHY, TESTS[4]!.test, at);
    });
    expect(on).not.toEqual(off);
    expect(ways.map(({ shown }) => shown)).toEqual([on, off]);
    expect(ways[0]!.share + ways[1]!.share).toBeCloseTo(1, 12);
  });
  test('stand anew too where the meter is in series at the open plug: one of two currents', () => {
    const wheel = modelOf('current-two-wire', 4);
    const table = testTable(wheel.circuit, null, wheel.meter);
    const inSeries = table.entries.find(({ id }) => id === 'sensor.feed.amps')!;
    const ask = { model: wheel, procedure: null, intermittent: null, testAt: () => inSeries };
    const ways = carSampler(ask)
      .cars(HEALTHY)
      .ways(0, new Float64Array(wheel.quantities.length).fill(0.5));
    expect(ways.map(({ shown }) => shown.kind === 'number' && shown.value.toFixed(4))).toEqual([
      '0.0140',
      '0.0070',
    ]);
  });
  test('beyond their description have one value that is, each in turn and on both sides', () => {
    const { length } = model.quantities;
    const points = cars.outside!.start(192, cars.outside!.values);
    const seen = new Set<string>();
    for (let car = 0; car < 192; car += 1) {
      const out = [...points.slice(car * length, (car + 1) * length).entries()].filter(
        ([, u]) => u < 0 || u > 1,
      );
      expect(out).toHaveLength(1);
      const [at, u] = out[0]!;
      expect(u).toBeGreaterThan(-1);
      expect(u).toBeLessThan(2);
      seen.add(`${model.quantities[at]!.key} ${u > 1 ? 'above' : 'below'}`);
    }
    for (const key of ['battery.rest', 'module.reference.volts', 'module.signal.pull'])
      for (const side of ['above', 'below']) expect(seen).toContain(`${key} ${side}`);
    for (const key of seen) expect(key).not.toMatch(/^(wire|contact|target|fault)\./);
  });
});

describe('a car whose reference lies over range', () => {
  const candidates = withHealthy(model.circuit.faults);
  const posteriors = new Posteriors({
    ...{ candidates, tests: TESTS, sampler, prior: priorFor(candidates), errorModel: ERROR_MODEL },
  });
  const REFERENCE = placeOf('module.reference.volts');
  /** A healthy car that is in the middle of everything else, read without an error. */
  const ranked = (reference: number) => {
    const point = middle();
    point[REFERENCE] = reference;
    const readings = [0, 1, 2, 3, 5].map((place): Reading => {
      const { test: asked } = TESTS[place]!;
      return { test: place, shown: model.showsAt(HEALTHY, asked, point) };
    });
    return {
      misfit: atOnce(rankByClouds(posteriors, readings)).misfit,
      car: carKnown(posteriors.after(readings), model.quantities.length),
    };
  };
  test('is not thought of while it lies within', () => {
    expect(ranked(0.9).misfit).toBeLessThan(0.05);
  });
  test('is likely where it is twice above, and that value is named', () => {
    // by hand: 5.25 V * 3^(u - 1) is 10.5 V at u = 1.6309
    const u = 1 + Math.log(2) / Math.log(3);
    const { misfit, car } = ranked(u);
    // by hand about 0.98; 1536 cars in which 26 values lie beyond on either side find it a little less likely than that
    expect(misfit).toBeGreaterThan(2 * MISFIT_TOLD);
    expect(car.outside!.at).toBe(REFERENCE);
    expect(car.outside!.middle).toBeCloseTo(u, 1);
  });
});
