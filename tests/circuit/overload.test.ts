/** What a bridge or a light would do to the vehicle, held against what each place is made for (numbers by hand). */
import { describe, expect, test } from 'vitest';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Bridge, Probe, Setup } from '../../src/circuit/test.ts';
import { testRefusalWords } from '../../src/circuit/test-refusal.ts';
import { shipped, testOf } from './shipped.ts';

const READ: Probe = { kind: 'volts', plus: 'battery.positive', minus: 'battery.negative' };
const bridge = (from: string, to: string, through: Bridge['through']): Bridge => ({
  from,
  to,
  through,
});
const ohm = (ohms: number) => ({ ohms });
const PLUS = 'battery.positive';
const MINUS = 'battery.negative';
const OFF = ['sensor'];
const words = (name: string, setup: Partial<Setup>, probe: Probe = READ) => {
  const refusal = refuseTest(shipped(name), testOf(probe, setup));
  return refusal && testRefusalWords(refusal);
};

describe('what is lifted above its own supply', () => {
  test.each<[string, string, Partial<Setup>, RegExp]>([
    // 14.6 V over 1 kohm, an 8 kohm neighbour to ground: 14.6 * 8000 / 9000 = 12.9 V
    [
      'a 5 V reference, through 1 kohm',
      'hall-module-fed',
      { unplugged: OFF, bridges: [bridge('sensor.feed', PLUS, ohm(1000))] },
      /"module.reference" to 12.9 V, a supply that gives 5 V/,
    ],
    // at most 22 kohm to 4.75 V: (4.75 * 10 + 14.6 * 22) / 32 = 11.5 V
    [
      'an input, through 10 kohm',
      'hall-module-fed',
      { unplugged: OFF, bridges: [bridge('sensor.signal', PLUS, ohm(10_000))] },
      /"module.signal" to 11.\d V, an input that sees at most (4.75|5) V/,
    ],
    [
      'a 5 V input from the 12 V feed beside it',
      'hall-relay-fed',
      { unplugged: OFF, bridges: [bridge('sensor.signal', 'sensor.feed', ohm(4700))] },
      /"module.signal"/,
    ],
    [
      'the bias of a coil',
      'reluctor-two-wire',
      { unplugged: OFF, bridges: [bridge('sensor.plus', PLUS, ohm(10_000))] },
      /"module.signal-plus"/,
    ],
    // A pull-up to the battery feeds a reference that takes nothing back: the 8 kohm neighbour bears 14.6 * 8 / (1 + 1 + 8) = 11.7 V
    [
      'a 5 V reference by the pull-up beside it, through 1 kohm',
      'hall-module-fed',
      { unplugged: OFF, bridges: [bridge('sensor.feed', 'sensor.signal', ohm(1000))] },
      /"module.reference" to 11.[567] V, a supply that gives 5 V/,
    ],
    // With a sensor that draws 3 mA: (14.6 V - V) / 2 kohm = 3 mA + V / 8 kohm, so V = 6.88 V, less what the output itself lets through
    [
      'the same with the sensor in',
      'hall-module-fed',
      { bridges: [bridge('module.reference', 'module.signal', ohm(1000))] },
      /"module.reference" to 6.[78]\d* V, a supply that gives 5 V/,
    ],
    [
      'a module without power, fed backwards',
      'hall-module-fed',
      { state: 'key-off', bridges: [bridge('sensor.signal', PLUS, ohm(1000))] },
      /the module behind it has no power/,
    ],
    [
      'a 5 V sensor on the battery, module off',
      'hall-module-fed',
      { unplugged: ['module'], bridges: [bridge('sensor.feed', PLUS, 'lead')] },
      /"sensor.feed" to 14.6 V, the feed of a part made for 5 V/,
    ],
  ])('%s', (_, circuit, setup, wanted) => expect(words(circuit, setup)).toMatch(wanted));
});

/**
 * A sense input of up to 300 ohm bears what its sensor's feed can put on it, 8 V in the modules that regulate it, and 0.3 V
 * more: 300 ohm * (14.6 - 8.3) V / 8.3 V = 228 ohm from the battery is the least. With the sensor in it is the same, since a
 * sensor that needs 3 V stops at 8.4 - 3 = 5.4 V. Without power the input bears 0.5 V: 300 ohm * 14.1 V / 0.5 V = 8.5 kohm.
 */
describe('the battery on the sense input of a wheel sensor', () => {
  test.each<[number, Setup['state'], readonly string[], RegExp | null]>([
    // ohm, state, unplugged; by hand: 14.6 * 300 / 520 = 8.42 V
    [220, 'key-on', OFF, /"module.signal" to 8.42 V, an input that sees at most 8 V/],
    [220, 'key-on', [], /"module.signal" to 8.42 V, an input that sees at most 8 V/],
    [240, 'key-on', OFF, null],
    [240, 'key-on', [], null],
    // 14.6 * 300 / 770 = 5.69 V at most where the feed is 8 V
    [470, 'key-on', OFF, null],
    [470, 'key-on', [], null],
    // a battery at rest has no more than 14.6 V here either: 14.6 * 300 / 770
    [470, 'key-off', OFF, /the module behind it has no power/],
    [10_000, 'key-off', OFF, null],
  ])('through %i ohm, %s, unplugged: %j', (ohms, state, unplugged, wanted) => {
    const said = words('current-two-wire', {
      ...{ state, unplugged },
      bridges: [bridge('sensor.signal', PLUS, ohm(ohms))],
    });
    if (wanted === null) expect(said).toBeNull();
    else expect(said).toMatch(wanted);
  });
});

describe('what has to carry too much', () => {
  // With its plug off the module does not hold the main relay.
  const RELAY = bridge('relay.30', 'relay.87', 'lead');
  test.each<[string, string, Partial<Setup>, RegExp, Probe?]>([
    // 14.6 V over 1 ohm and some 0.16 ohm of wires and contacts
    [
      'a fuse of 5 A, through 1 ohm',
      'hall-relay-fed',
      { bridges: [bridge('sensor.feed', MINUS, ohm(1))] },
      /1\d(\.\d)? A through the fuse of the engine sensors, which is rated 5 A/,
    ],
    // 14.6 V over 330 ohm are 44 mA; the weakest output bears 25
    [
      'a Hall output, module off and its relay bridged',
      'hall-relay-fed',
      { unplugged: ['module'], bridges: [RELAY, bridge('sensor.signal', PLUS, ohm(330))] },
      /more than 25 mA into the sensor's output "sensor.signal"/,
    ],
    [
      'a Hall output by an LED light, module off and its relay bridged',
      'hall-relay-fed',
      { unplugged: ['module'], bridges: [RELAY] },
      /more than 25 mA/,
      { kind: 'light', plus: PLUS, minus: 'sensor.signal' },
    ],
    // 14.6 V over 100 + 300 ohm and a tenth of 1 kohm: 29 mA
    [
      'a wiper at the foot of its track',
      'throttle-potentiometer',
      {
        unplugged: ['module'],
        bridges: [bridge('sensor.signal', PLUS, ohm(100)), bridge('sensor.ground', MINUS, 'lead')],
      },
      /more than 10 mA into the sensor's output "sensor.signal"/,
    ],
  ])('%s', (_, circuit, setup, wanted, probe) =>
    expect(words(circuit, setup, probe)).toMatch(wanted),
  );
});

describe('what hurts nothing', () => {
  test.each<[string, string, Partial<Setup>, Probe?]>([
    [
      'an input lifted to its own feed',
      'throttle-potentiometer',
      { unplugged: OFF, bridges: [bridge('sensor.signal', 'sensor.feed', ohm(1000))] },
    ],
    // 330 ohm take 15 mA; the pull-up can give 14.6 V / 2 kohm = 7.3 mA at most
    [
      'an input lifted to a 5 V feed that a resistor loads',
      'hall-module-fed',
      {
        unplugged: OFF,
        bridges: [
          bridge('sensor.feed', 'sensor.signal', ohm(1000)),
          bridge('sensor.feed', MINUS, ohm(330)),
        ],
      },
    ],
    [
      'an input by next to nothing',
      'hall-module-fed',
      { unplugged: OFF, bridges: [bridge('sensor.signal', PLUS, ohm(10_000_000))] },
    ],
    [
      'a ground under a light from the battery',
      'hall-module-fed',
      { unplugged: OFF },
      { kind: 'light', plus: PLUS, minus: 'sensor.ground' },
    ],
    [
      'a sense resistor at the battery feed beside it',
      'current-two-wire',
      { unplugged: OFF, bridges: [bridge('sensor.signal', 'sensor.feed', ohm(1000))] },
    ],
    [
      'a 12 V sensor on a bench supply of its own',
      'hall-relay-fed',
      {
        unplugged: ['module', 'fuse'],
        bridges: [bridge('fuse.out', PLUS, ohm(100)), bridge('sensor.signal', PLUS, ohm(1000))],
      },
    ],
    [
      'a resistor in the place of a fuse',
      'hall-relay-fed',
      { unplugged: ['fuse'], bridges: [bridge('fuse.in', 'fuse.out', ohm(330))] },
    ],
  ])('%s', (_, circuit, setup, probe) => expect(words(circuit, setup, probe)).toBeNull());

  test.each([
    [
      'hall-module-fed',
      'sensor.feed.light sensor.ground.light sensor.ground.loaded-drop module.signal.injection-at-sensor wire.signal.bypass',
    ],
    ['hall-relay-fed', 'sensor.feed.lamp sensor.ground.light module.signal.injection-at-module'],
    ['throttle-potentiometer', 'sensor.feed.light module.signal.injection-at-sensor'],
    ['pedal-dual', 'sensor.ground-2.light module.signal-1.injection-at-module'],
    ['reluctor-two-wire', 'module.signal-plus.loaded-at-sensor wire.plus.bypass'],
    ['current-two-wire', 'sensor.feed.light wire.signal.bypass'],
  ])('the standard tests of %s with something clipped in', (name, ids) => {
    const offered = standardTests(shipped(name)).map(({ id }) => id);
    expect(ids.split(' ').filter((id) => !offered.includes(id))).toEqual([]);
  });
});
