/** Which cars come to the shop, and that they are the ones a model speaks of. */
import { describe, expect, test } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { CarPicker } from '../../src/circuit/pick-cars.ts';
import { knownCircuit } from './known-car.ts';
import { look, METER, modelOf, NAMES, number, testOf, volts } from './shipped.ts';

/** A model of a circuit in which the sizes of one fault are these. */
function withSize(name: string, id: string, low: number, high = low): Model {
  const circuit = knownCircuit(name);
  const faults = circuit.faults.map((fault): Circuit['faults'][number] => {
    const { effect } = fault;
    if (fault.id !== id) return fault;
    if ('ohms' in effect) return { ...fault, effect: { ...effect, ohms: { low, high } } };
    return 'size' in effect ? { ...fault, effect: { ...effect, size: { low, high } } } : fault;
  });
  return createModel({ ...circuit, faults }, { samples: 32, seed: 1, meter: METER });
}

/** Whether the nominal car complains of a fault of this size. */
function complains(name: string, id: string, size: number): boolean {
  const model = withSize(name, id, size);
  return model.complains(id, model.pointOf(-1));
}

describe('the nominal car', () => {
  test.each(NAMES)('%s works, and complains of no fault that is none', (name) => {
    const model = modelOf(name);
    const nominal = model.pointOf(-1);
    expect(model.works(nominal)).toBe(true);
    expect(model.complains('healthy', nominal)).toBe(false);
  });

  test.each([
    // by hand: (0.12 * 4000 + R) / (4000 + R) = 1.2 V / 5 V gives R = 632 ohm
    ['throttle-potentiometer', 'wire.ground.resistive', 580, 690],
    // by hand: 0.07 of the track's 4 kohm over 0.93 is what the full end may lose of 0.9 to stay over 4 V: 500 ohm
    ['throttle-potentiometer', 'wire.feed.resistive', 460, 540],
    // by hand: 2 V behind 900 ohm and 20 kohm is 1.91 V between the pins; under 0.55 of that it is weak: 17.1 kohm
    ['reluctor-two-wire', 'wire.plus.resistive', 16_500, 17_700],
  ])('of the %s complains of %s from a size on', (name, id, below, above) => {
    expect(complains(name, id, below)).toBe(false);
    expect(complains(name, id, above)).toBe(true);
  });

  test('of a pedal complains when one track tells a position that the other does not', () => {
    // by hand: ground-1 of R lifts a track of 2 kohm at rest by (1 - 0.15) R / (2000 + R), a tenth of its span of 0.71 from 182 ohm on
    expect(complains('pedal-dual', 'wire.ground-1.resistive', 165)).toBe(false);
    expect(complains('pedal-dual', 'wire.ground-1.resistive', 200)).toBe(true);
  });

  test('does not complain of a voltage that is only unusual', () => {
    // 200 ohm in the throttle's ground: 0.81 V instead of 0.6 V when closed, and the module calls 1.2 V closed
    const model = withSize('throttle-potentiometer', 'wire.ground.resistive', 200);
    const at = volts('module.signal', 'module.ground');
    expect(number(model, 'wire.ground.resistive', at)).toBeCloseTo(0.81, 1);
    expect(complains('throttle-potentiometer', 'wire.ground.resistive', 200)).toBe(false);
  });
});

describe('the cars of a model', () => {
  test.each(NAMES)('of the %s work without their fault and are noticed with it', (name) => {
    const model = modelOf(name);
    for (let sample = 0; sample < 32; sample += 1)
      expect(model.works(model.pointOf(sample))).toBe(true);
    for (const { id } of model.circuit.faults)
      for (let sample = 0; sample < 32; sample += 1) {
        const point = model.pointOf(sample, id);
        expect(model.works(point), id).toBe(true);
        expect(model.complains(id, point), `${id} ${sample}`).toBe(true);
      }
  });

  test('are shown at their points, and one car with its fault and without', () => {
    const id = 'wire.feed.resistive';
    const model = withSize('hall-module-fed', id, 1, 10_000);
    const at = volts('sensor.signal');
    const sample = 20;
    expect(model.shows(id, at, sample)).toEqual(model.showsAt(id, at, model.pointOf(sample, id)));
    expect(model.shows('healthy', at, sample, id)).toEqual(
      model.showsAt('healthy', at, model.pointOf(sample, id)),
    );
    // A third of these sizes goes unnoticed, so the cars are others than those of the healthy circuit.
    expect(model.pointOf(sample, id)).not.toEqual(model.pointOf(sample));
    expect(model.pointOf(sample, id)).toHaveLength(model.quantities.length);
  });
});

describe('cars are picked', () => {
  const picker = (works: (index: number) => boolean, notices: (index: number) => boolean) =>
    new CarPicker(works, (_id, index) => notices(index));
  const even = (index: number) => index % 2 === 0;
  const third = (index: number) => index % 3 === 0;

  test('in the order of the sequence, those that work and are noticed', () => {
    const cars = picker(even, third);
    expect([0, 1, 2, 3].map((sample) => cars.indexOf('fault', sample))).toEqual([0, 6, 12, 18]);
    expect([0, 1, 2].map((sample) => cars.indexOf('healthy', sample))).toEqual([0, 2, 4]);
    expect(cars.indexOf('fault', -1)).toBe(-1);
  });

  test('the same whatever was asked before', () => {
    const first = picker(even, (index) => index === 4 || index > 300);
    const later = picker(even, (index) => index === 4 || index > 300);
    const asked = [0, 1, 2, 40].map((sample) => first.indexOf('fault', sample));
    expect([40, 2, 1, 0].map((sample) => later.indexOf('fault', sample)).reverse()).toEqual(asked);
  });

  test('again where there are too few, healthy ones where there is none, any where none works', () => {
    const few = picker(even, (index) => index === 4 || index === 8);
    expect([0, 1, 2, 3].map((sample) => few.indexOf('fault', sample))).toEqual([4, 8, 4, 8]);
    const none = picker(even, () => false);
    expect([0, 1].map((sample) => none.indexOf('fault', sample))).toEqual([0, 2]);
    const broken = picker(() => false, third);
    expect([0, 1].map((sample) => broken.indexOf('fault', sample))).toEqual([0, 1]);
  });
});

describe('the value in the live data', () => {
  test('of a throttle is a substitute one while its voltage is none that a track gives', () => {
    const model = modelOf('throttle-potentiometer');
    const counts = testOf({ kind: 'counts', input: 'module.signal' }, { target: 'moving' });
    // by hand: a feed at the battery's 13.2 V takes the wiper at 0.9 of the track to 11.9 V; 4.8 V of 5 V is the most
    expect(look(model, 'wire.feed.short-to-battery', counts)).toBe('still');
    // above a break the wiper has all of the reference, below it none
    expect(look(model, 'sensor.main.track-open', counts)).toBe('still');
    // by hand: feed and ground exchanged give 4.5 V at rest and 0.5 V fully moved: backwards, but it moves
    expect(look(model, 'sensor.feed.swapped-with-ground', counts)).toBe('follows');
    expect(look(model, 'healthy', counts)).toBe('follows');
  });
});
