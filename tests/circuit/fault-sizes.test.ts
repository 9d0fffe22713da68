/** Every size of a fault that gives a complaint is among its sizes, and none that does not. */
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { complainingSizes, sizesOf } from '../../src/circuit/size-faults.ts';
import { knownCircuit, knownText } from './known-car.ts';
import { METER, NAMES, shipped } from './shipped.ts';

function sizes(circuit: Circuit, id: string) {
  const span = sizesOf(circuit.faults.find((fault) => fault.id === id)!);
  if (span === null) throw new Error(`${id} has no size`);
  return span;
}

describe('the sizes of a fault', () => {
  test('of a throttle begin where its ground lifts the closed voltage over what the module calls closed', () => {
    const circuit = knownCircuit('throttle-potentiometer');
    // by hand: (0.14 * 3200 + R) / (3200 + R) = 1.2 V / 5.1 V in the car that notices first, with R in ohm: 399
    const { low, high } = sizes(circuit, 'wire.ground.resistive');
    // as much as three times less is left for cars that were not looked at
    expect(low).toBeGreaterThan(399 / 3);
    expect(low).toBeLessThan(399);
    expect(high).toBe(100_000);
  });

  test('follow the values of the circuit: behind a track of 1 kohm a quarter of that is noticed', () => {
    const text = knownText('throttle-potentiometer').replace(
      'ohms: 4 kohm +/- 20 %, wiper',
      'ohms: 1 kohm +/- 20 %, wiper',
    );
    expect(text).not.toBe(knownText('throttle-potentiometer'));
    const { low } = sizes(loadCircuit(text, 'test.yaml').value!, 'wire.ground.resistive');
    // by hand, as above with 800 ohm: 100
    expect(low).toBeGreaterThan(100 / 3);
    expect(low).toBeLessThan(100);
  });

  test('of a Hall switch begin where the sensor is left with too little: 11.2 mA, 3.8 V of 5 V', () => {
    // by hand: at 0.92 of the least voltage the output still crosses 1.5 V; (5 V - 3.5 V) / 10.3 mA is 146 ohm
    const { low } = sizes(knownCircuit('hall-module-fed'), 'wire.feed.resistive');
    expect(low).toBeGreaterThan(146 / 3.5);
    expect(low).toBeLessThan(146);
  });

  test('of a short end where it no longer drags anything down', () => {
    // by hand: 5 V of a reference that gives up to 96 mA holds 0.96 of 5 V over 50 ohm, and what is left beyond it is all of the span
    const { low, high } = sizes(knownCircuit('throttle-potentiometer'), 'sensor.main.shorted');
    expect(low).toBe(0.1);
    expect(high).toBeGreaterThan(50);
  });

  test.each(NAMES)('of the %s are the same for far more cars than were looked at', (name) => {
    const circuit = shipped(name);
    const SIZES = { low: 0.5, high: 100_000 };
    const wide = {
      ...circuit,
      faults: circuit.faults.flatMap((fault) =>
        fault.effect.kind === 'wire-resistive'
          ? [{ ...fault, effect: { ...fault.effect, ohms: SIZES } }]
          : [],
      ),
    };
    const model = createModel(wide, { samples: 64, seed: 2, meter: METER });
    const place = model.quantities.findIndex(({ key }) => key === 'fault.size');
    for (const { id } of wide.faults) {
      const { low } = sizes(circuit, id);
      const complaints = (ohms: number) =>
        Array.from({ length: 64 }, (_, sample) => {
          const point = Float64Array.from(model.pointOf(sample));
          point[place] = Math.log(ohms / SIZES.low) / Math.log(SIZES.high / SIZES.low);
          return model.complains(id, point);
        }).filter(Boolean).length;
      // One car in 64 may stand where its two tracks are all but apart without the fault.
      expect(complaints(low / 1.5), id).toBeLessThanOrEqual(1);
      expect(complaints(6 * low), id).toBeGreaterThan(0);
    }
  });
});

describe('the search for the sizes that are noticed', () => {
  test('finds both ends to a fiftieth and leaves four of these beyond them', () => {
    const found = complainingSizes(3, (car, share) => share > 0.4 + car / 10 && share < 0.8);
    // nothing is noticed at 1, at 0, or by two of the cars half-way
    expect(found!.from).toBeGreaterThanOrEqual(0.32);
    expect(found!.from).toBeLessThan(0.345);
    expect(found!.to).toBeGreaterThan(0.855);
    expect(found!.to).toBeLessThanOrEqual(0.88);
  });

  test.each([
    ['everywhere', () => true, { from: 0, to: 1 }],
    ['nowhere', () => false, null],
  ])('what is noticed %s', (_where, complains, expected) => {
    expect(complainingSizes(4, complains)).toEqual(expected);
  });

  test('one car that notices earlier than the others is enough', () => {
    const found = complainingSizes(8, (car, share) => share >= (car === 5 ? 0.2 : 0.7));
    expect(found!.from).toBeGreaterThanOrEqual(0.1);
    expect(found!.from).toBeLessThanOrEqual(0.145);
    expect(found!.to).toBe(1);
  });
});
