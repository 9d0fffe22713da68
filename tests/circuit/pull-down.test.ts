/**
 * A light or resistor from an input to ground: it pulls the input low enough in every car, or a notice says that it does
 * not. The numbers by hand: a divider of what is clipped in below the module's own pull-up (1 to 22 kohm, to 5 V in the
 * nominal car), and a threshold at 30 % of what the pull-up is fed with.
 */
import { expect, it } from 'vitest';
import type { Bridge } from '../../src/circuit/test.ts';
import { modelOf, number, volts } from './shipped.ts';

const model = modelOf('hall-module-fed');
const AT = 'sensor.signal';
const GROUND = 'battery.negative';
const setup = (bridges: readonly Bridge[]) => ({ unplugged: ['sensor'], bridges });
const clipped = (ohms: number, from = AT, to = GROUND) =>
  model.pullsLow(volts('module.signal', GROUND, setup([{ from, to, through: { ohms } }])));

it('stands where the divider puts it, whichever end of it is named first', () => {
  const open = number(model, 'healthy', volts('module.signal', GROUND, setup([])));
  const pullOf = (ohms: number) => ohms * (open / clipped(ohms)!.nominal - 1);
  expect(pullOf(470)).toBeGreaterThan(1000);
  expect(pullOf(470)).toBeLessThan(22_000);
  // One pull-up, whatever is clipped in; the meter and the wires are within a hundredth.
  expect(Math.abs(pullOf(4700) / pullOf(470) - 1)).toBeLessThan(0.01);
  expect(clipped(470, GROUND, AT)).toEqual(clipped(470));
  expect(clipped(470)!.input).toBe('module.signal');
  expect(clipped(470)!.thresholdVolts / open).toBeCloseTo(0.3, 2);
});

it.each([
  // ohms, whether every car counts a low: 100 / 1100 and 22 / 23 of what the pull-up is fed with, and 1 / 2 at the strongest
  [100, true],
  [1000, false],
  [22_000, false],
])('%i ohms: pulled low enough in every car is %s', (ohms, pulls) => {
  const found = clipped(ohms)!;
  expect(found.pulls).toBe(pulls);
  expect(found.low).toBeLessThanOrEqual(found.nominal);
  expect(found.high).toBeGreaterThanOrEqual(found.nominal);
  // A 15 V battery above the strongest pull-up is the most there can be.
  expect(found.high).toBeLessThan((16 * ohms) / (ohms + 1000) + 0.1);
});

it('nothing is said of a plain lead, of a load that is not at ground, or of one at no input', () => {
  const lead = setup([{ from: AT, to: GROUND, through: 'lead' }]);
  expect(model.pullsLow(volts('module.signal', GROUND, lead))).toBeNull();
  expect(clipped(470, AT, 'sensor.feed')).toBeNull();
  expect(clipped(470, 'sensor.feed')).toBeNull();
});
