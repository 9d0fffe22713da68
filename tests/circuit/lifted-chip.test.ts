/** Some chips have a diode from ground to output: where the ground is lost or in another place, the output carries it. */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { modelOf, number, volts } from './shipped.ts';

const SAMPLES = 64;
const GROUND = volts('sensor.ground');
const shows = (circuit: string, fault: string, test: Test) =>
  Array.from({ length: SAMPLES }, (_, sample) =>
    number(modelOf(circuit, SAMPLES), fault, test, sample),
  );

describe('signal and ground swapped at a Hall sensor', () => {
  const fault = 'sensor.signal.swapped-with-ground';

  it('fed with 5 V: about every second car works on over the diode, and its ground stands at one', () => {
    const grounds = shows('hall-module-fed', fault, GROUND);
    const feeds = shows('hall-module-fed', fault, volts('sensor.feed', 'sensor.ground'));
    // by hand: silicon drops 0.6 to 0.85 V at 1 to 30 mA, and 5 V less that is left to the chip
    const carried = [...grounds.keys()].filter((at) => grounds[at]! > 0.55 && grounds[at]! < 0.9);
    expect(carried.length).toBeGreaterThan(SAMPLES / 8);
    for (const at of carried) expect(feeds[at]).toBeGreaterThan(3.7);
    const isUp = grounds.filter((ground) => ground > 3);
    expect(isUp.length).toBeGreaterThan(SAMPLES / 8);
  });
});

describe('a lost ground at a Hall sensor fed with battery voltage', () => {
  it('lifts the signal over its pull-up in about every second car', () => {
    const signals = shows('hall-relay-fed', 'wire.ground.open', volts('sensor.signal'));
    const healthy = shows('hall-relay-fed', 'target.missing', volts('sensor.signal'));
    const isLifted = [...signals.keys()].map((at) => signals[at]! > healthy[at]! + 0.5);
    expect(isLifted.filter(Boolean).length).toBeGreaterThan(SAMPLES / 8);
    expect(isLifted.filter((one) => !one).length).toBeGreaterThan(SAMPLES / 8);
  });

  it('and nothing where the ground is whole', () => {
    const plain = shows('hall-relay-fed', 'wire.signal.open', GROUND);
    for (const value of plain) expect(value).toBeLessThan(0.1);
  });
});
