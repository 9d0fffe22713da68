/** How well the location of a short is known: by the counts of the meter, the copper and the joints between. */
import { describe, expect, test } from 'vitest';
import { placeOnWire, type Stretch } from '../../src/quantity/place-on-wire.ts';

const R = 0.0369;
const wire = (metres: number, joint: Stretch['jointOhms'] = null, spread = 0): Stretch => ({
  metres,
  ohmsPerMetre: [R * (1 - spread), R * (1 + spread)],
  jointOhms: joint,
});
/** A 6000-count meter in its 0.6 V range: 0.5 % and 3 counts of 0.1 mV. */
const drop = (volts: number) => ({ volts, limitVolts: 0.005 * volts + 3e-4 });
/** Drops at 0.2 A of a short at `metres` of 3 m, and `more` ohms in the other piece. */
const drops = (metres: number, more = 0) => ({
  fedHere: drop(0.2 * R * metres),
  fedThere: drop(0.2 * (R * (3 - metres) + more)),
  currents: 1,
});

describe('a plain wire of 3 m', () => {
  test.each([0, 0.3, 0.9, 1.5, 2.9, 3])('a short at %d m lies within what is told', (metres) => {
    const place = placeOnWire({ ...drops(metres), stretches: [wire(3)] })!;
    expect(place.metres).toBeCloseTo(metres, 9);
    expect(place.lowMetres).toBeLessThanOrEqual(metres);
    expect(place.highMetres).toBeGreaterThanOrEqual(metres);
    expect(place.told).toBe(true);
  });

  test('0.9 m is told to less than a hand, and the counts make most of it', () => {
    const { lowMetres, highMetres } = placeOnWire({ ...drops(0.9), stretches: [wire(3)] })!;
    // By hand: 6.64 mV +/- 0.33, 15.5 mV +/- 0.38: 28.5 to 31.6 % with currents within 3 %, then 3 % of the length.
    expect(lowMetres).toBeCloseTo(0.82, 1);
    expect(highMetres).toBeCloseTo(0.98, 1);
  });

  test('the kind of wire is of no matter', () => {
    const at = (spread: number) =>
      placeOnWire({ ...drops(0.9), stretches: [wire(3, null, spread)] });
    expect(at(0.5)).toEqual(at(0));
  });

  test('drops as small as the counts tell nothing, and none at all no place', () => {
    const tiny = { volts: 1e-4, limitVolts: 3e-4 };
    const place = placeOnWire({
      fedHere: tiny,
      fedThere: tiny,
      currents: 1,
      stretches: [wire(3)],
    })!;
    expect(place.told).toBe(false);
    const none = { volts: 0, limitVolts: 3e-4 };
    expect(
      placeOnWire({ fedHere: none, fedThere: none, currents: 1, stretches: [wire(3)] }),
    ).toBeNull();
  });
});

describe('a contact on the way', () => {
  const joined = [wire(1, [0.002, 0.02], 0.15), wire(2, null, 0.15)];
  test.each([0.002, 0.02])('one of %d ohm behind the short is within what is told', (ohms) => {
    const place = placeOnWire({ ...drops(0.9, ohms), stretches: joined })!;
    expect(place.lowMetres).toBeLessThanOrEqual(0.9);
    expect(place.highMetres).toBeGreaterThanOrEqual(0.9);
  });

  test('each makes the place less certain', () => {
    const width = (stretches: readonly Stretch[]) => {
      const { lowMetres, highMetres } = placeOnWire({ ...drops(0.9), stretches })!;
      return highMetres - lowMetres;
    };
    const two = [wire(1, [0.002, 0.02], 0.15), wire(1, [0.002, 0.02], 0.15), wire(1, null, 0.15)];
    expect(width(joined)).toBeGreaterThan(width([wire(3)]));
    expect(width(two)).toBeGreaterThan(width(joined));
  });

  test('a short in the contact itself comes out at it', () => {
    const stretches = [wire(1, [0.02, 0.02]), wire(2)];
    const whole = 3 * R + 0.02;
    const here = R + 0.01;
    const exact = (volts: number) => ({ volts, limitVolts: 0 });
    const place = placeOnWire({
      fedHere: exact(here),
      fedThere: exact(whole - here),
      currents: 1,
      stretches,
    })!;
    expect(place.metres).toBe(1);
  });
});
