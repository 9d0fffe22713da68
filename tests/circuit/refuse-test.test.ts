/** What must not be done on a vehicle is refused with the reason (common practice, no source). */
import { describe, expect, test } from 'vitest';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import type { Bridge, Probe, Setup } from '../../src/circuit/test.ts';
import { withHarness } from '../../src/circuit/with-harness.ts';
import { shipped, testOf } from './shipped.ts';

const hall = shipped('hall-module-fed');
const relay = shipped('hall-relay-fed');
const coil = shipped('reluctor-two-wire');
const ohms = (plus: string, minus: string): Probe => ({ kind: 'ohms', plus, minus });
const JOINT = {
  ...{ name: 'joint', words: 'connector at the bulkhead', splice: false },
  ...{ metres: 1, minutes: null, wires: ['signal'] },
};
const readVolts: Probe = { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' };
const bridge = (from: string, to: string, through: Bridge['through']): Partial<Setup> => ({
  bridges: [{ from, to, through }],
});
const dead = (...unplugged: string[]): Partial<Setup> => ({
  state: 'key-off',
  unplugged: unplugged.sort(),
});

describe('resistance only on a dead circuit', () => {
  test.each([
    // words, circuit, probe, setup, part of the reason (null: allowed)
    [
      'key on',
      hall,
      ohms('sensor.signal', 'module.signal'),
      { unplugged: ['module', 'sensor'] },
      { code: 'ohms-with-key', state: 'key-on' },
    ],
    [
      'all plugged',
      hall,
      ohms('sensor.signal', 'battery.negative'),
      dead(),
      { code: 'ohms-on-electronics', terminal: 'sensor.signal', part: 'module' },
    ],
    [
      'sensor off, module on',
      hall,
      ohms('sensor.signal', 'battery.negative'),
      dead('sensor'),
      { code: 'ohms-on-electronics', terminal: 'sensor.signal', part: 'module' },
    ],
    [
      'module off, Hall sensor on',
      hall,
      ohms('module.signal', 'battery.negative'),
      dead('module'),
      { code: 'ohms-on-electronics', terminal: 'module.signal', part: 'sensor' },
    ],
    ['both off', hall, ohms('module.signal', 'sensor.signal'), dead('module', 'sensor'), null],
    [
      'a Hall sensor at its own pins',
      hall,
      ohms('sensor.feed.pin', 'sensor.ground.pin'),
      dead('sensor'),
      { code: 'ohms-across-electronics', terminal: 'sensor.feed.pin', part: 'sensor' },
    ],
    [
      'a two-wire current sensor at its own pins',
      shipped('current-two-wire'),
      ohms('sensor.feed.pin', 'sensor.signal.pin'),
      dead('sensor'),
      { code: 'ohms-across-electronics', terminal: 'sensor.feed.pin', part: 'sensor' },
    ],
    [
      'a track at its own pins',
      shipped('throttle-potentiometer'),
      ohms('sensor.feed.pin', 'sensor.ground.pin'),
      dead('sensor'),
      null,
    ],
    ['a fuse at its own blades', relay, ohms('fuse.in.pin', 'fuse.out.pin'), dead('fuse'), null],
    [
      'a coil through the harness',
      coil,
      ohms('module.signal-plus', 'module.signal-minus'),
      dead('module'),
      null,
    ],
    [
      'a coil at its own pins',
      coil,
      ohms('sensor.plus.pin', 'sensor.minus.pin'),
      dead('sensor'),
      null,
    ],
    [
      'on the battery side of a relay',
      relay,
      ohms('relay.30', 'battery.negative'),
      dead('module', 'sensor'),
      { code: 'ohms-on-battery', terminal: 'relay.30' },
    ],
    [
      'behind the open relay, through a neighbour that stays plugged in',
      relay,
      ohms('sensor.feed', 'battery.negative'),
      dead('sensor'),
      { code: 'ohms-on-electronics', terminal: 'sensor.feed', part: 'speed-sensor' },
    ],
    [
      'behind the open relay, the neighbour off too',
      relay,
      ohms('sensor.feed', 'battery.negative'),
      dead('sensor', 'speed-sensor'),
      null,
    ],
    [
      'a wire to the ground point, with a neighbour on the same splice',
      relay,
      ohms('sensor.ground', 'battery.negative'),
      dead('sensor'),
      { code: 'ohms-on-electronics', terminal: 'sensor.ground', part: 'speed-sensor' },
    ],
    [
      'a ground point as a place for the black lead',
      relay,
      ohms('sensor.signal', 'ground-point.eyelet'),
      dead('module', 'sensor'),
      null,
    ],
    [
      'a neighbour at its own pins',
      relay,
      ohms('speed-sensor.feed.pin', 'speed-sensor.ground.pin'),
      dead('speed-sensor'),
      { code: 'ohms-across-electronics', terminal: 'speed-sensor.feed.pin', part: 'speed-sensor' },
    ],
    [
      'a neighbour at its own connector',
      hall,
      ohms('throttle-position.feed', 'battery.negative'),
      dead('module'),
      {
        code: 'ohms-on-electronics',
        terminal: 'throttle-position.feed',
        part: 'throttle-position',
      },
    ],
    [
      'through a track into a module that stays plugged in',
      withHarness(shipped('throttle-potentiometer'), { joints: [JOINT], wires: [] }).circuit,
      ohms('sensor.signal', 'battery.negative'),
      dead('joint'),
      { code: 'ohms-on-electronics', terminal: 'sensor.signal', part: 'module' },
    ],
    [
      'through the coil of a relay on to the battery',
      relay,
      ohms('relay.85', 'battery.negative'),
      dead('module'),
      { code: 'ohms-on-battery', terminal: 'relay.85' },
    ],
    [
      'through a resistor that is clipped in',
      relay,
      ohms('sensor.signal', 'battery.negative'),
      {
        ...dead('module', 'sensor'),
        ...bridge('sensor.signal', 'speed-sensor.feed', { ohms: 1000 }),
      },
      { code: 'ohms-on-electronics', terminal: 'sensor.signal', part: 'speed-sensor' },
    ],
  ] as const)('%s', (_words, circuit, probe, setup, reason) => {
    const answer = refuseTest(
      circuit,
      testOf(probe, { ...setup, unplugged: [...(setup.unplugged ?? [])] }),
    );
    expect(answer).toEqual(reason);
  });
});

describe('what is clipped in', () => {
  test.each([
    [
      'battery to an input',
      hall,
      bridge('battery.positive', 'sensor.signal', 'test-light'),
      { code: 'battery-on-module', terminal: 'module.signal', is: 'input' },
    ],
    [
      'battery to a reference by a wire',
      hall,
      bridge('sensor.feed', 'battery.positive', 'lead'),
      { code: 'battery-on-module', terminal: 'module.reference', is: 'reference' },
    ],
    [
      'battery to an input through 10 Mohm',
      hall,
      bridge('battery.positive', 'sensor.signal', { ohms: 10_000_000 }),
      null,
    ],
    [
      'a plain lead from an input to ground',
      hall,
      bridge('module.signal', 'battery.negative', 'lead'),
      { code: 'module-to-ground', terminal: 'module.signal' },
    ],
    [
      'a plain lead from a reference to ground',
      hall,
      bridge('sensor.feed', 'sensor.ground', 'lead'),
      { code: 'module-to-ground', terminal: 'module.reference' },
    ],
    [
      'a light from an input to ground',
      hall,
      bridge('module.signal', 'battery.negative', 'test-light'),
      null,
    ],
    [
      'a filament lamp on an input',
      hall,
      bridge('module.signal', 'battery.negative', 'lamp'),
      { code: 'lamp-on-module', terminal: 'module.signal' },
    ],
    ['a bypass of the signal wire', hall, bridge('module.signal', 'sensor.signal', 'lead'), null],
    [
      'a plain lead over the battery',
      relay,
      bridge('battery.positive', 'battery.negative', 'lead'),
      { code: 'short-circuit' },
    ],
    [
      'a filament lamp on a fused feed',
      relay,
      bridge('sensor.feed', 'battery.negative', 'lamp'),
      null,
    ],
    [
      'a filament lamp from battery to a module ground',
      hall,
      bridge('battery.positive', 'sensor.ground', 'lamp'),
      { code: 'lamp-on-module', terminal: 'module.throttle-ground' },
    ],
    [
      'a plain lead from battery to a module ground',
      hall,
      bridge('battery.positive', 'sensor.ground', 'lead'),
      { code: 'short-circuit' },
    ],
    [
      'ten ohm from an input to ground',
      hall,
      bridge('module.signal', 'battery.negative', { ohms: 10 }),
      { code: 'few-ohms-on-module', terminal: 'module.signal', ohms: 10, leastOhms: 100 },
    ],
    [
      'a plain lead from feed to signal',
      hall,
      bridge('sensor.feed', 'sensor.signal', 'lead'),
      { code: 'pins-joined', terminals: ['module.reference', 'module.signal'] },
    ],
    [
      'a plain lead between two grounds',
      hall,
      bridge('sensor.ground', 'throttle-position.ground', 'lead'),
      null,
    ],
    [
      'both ends at one place',
      hall,
      bridge('sensor.feed', 'sensor.feed', 'lead'),
      { code: 'bridge-same-terminal', terminal: 'sensor.feed' },
    ],
  ] as const)('%s', (_words, circuit, setup, reason) => {
    expect(refuseTest(circuit, testOf(readVolts, setup))).toEqual(reason);
  });

  test('a filament lamp as the instrument, and the LED light from battery positive', () => {
    expect(
      refuseTest(hall, testOf({ kind: 'lamp', plus: 'sensor.feed', minus: 'battery.negative' })),
    ).toEqual({ code: 'lamp-on-module', terminal: 'module.reference' });
    expect(
      refuseTest(hall, testOf({ kind: 'light', plus: 'battery.positive', minus: 'sensor.ground' })),
    ).toBeNull();
    expect(
      refuseTest(hall, testOf({ kind: 'light', plus: 'battery.positive', minus: 'sensor.signal' })),
    ).toEqual({ code: 'battery-on-module', terminal: 'module.signal', is: 'input' });
    expect(
      refuseTest(relay, testOf({ kind: 'lamp', plus: 'sensor.feed', minus: 'battery.negative' })),
    ).toBeNull();
  });
});

describe('what cannot be done', () => {
  test.each([
    [
      'unknown terminal',
      testOf({ kind: 'volts', plus: 'sensor.fed', minus: 'battery.negative' }),
      { code: 'no-terminal', terminal: 'sensor.fed', near: 'sensor.feed' },
    ],
    [
      'unknown connector',
      testOf(readVolts, { unplugged: ['senser'] }),
      { code: 'no-connector', name: 'senser', near: 'sensor' },
    ],
    [
      'a connector whose name is like no other',
      testOf(readVolts, { unplugged: ['xyzzy'] }),
      { code: 'no-connector', name: 'xyzzy', near: null },
    ],
    [
      'inside a plugged connector',
      testOf({ kind: 'volts', plus: 'sensor.feed.pin', minus: 'battery.negative' }),
      { code: 'inside-connector', terminal: 'sensor.feed.pin', part: 'sensor' },
    ],
    [
      'pin of an unplugged module',
      testOf(
        { kind: 'volts', plus: 'module.signal.pin', minus: 'battery.negative' },
        { unplugged: ['module'] },
      ),
      { code: 'module-pin', terminal: 'module.signal.pin' },
    ],
    [
      'pattern of a still wheel',
      testOf({ kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' }),
      { code: 'target-still' },
    ],
    [
      'live data with the key off',
      testOf({ kind: 'counts', input: 'module.signal' }, { state: 'key-off' }),
      { code: 'module-off' },
    ],
    [
      'live data of a module without its connector',
      testOf({ kind: 'counts', input: 'module.signal' }, { unplugged: ['module'] }),
      { code: 'module-unplugged' },
    ],
    [
      'live data of no input',
      testOf({ kind: 'counts', input: 'module.reference' }),
      { code: 'no-input', terminal: 'module.reference' },
    ],
    [
      'a spare that is not plugged in',
      testOf(readVolts, { sensor: 'spare', unplugged: ['sensor'] }),
      { code: 'spare-unplugged' },
    ],
    [
      'both leads at one place',
      testOf({ kind: 'volts', plus: 'sensor.feed', minus: 'sensor.feed' }),
      { code: 'same-terminal', terminal: 'sensor.feed' },
    ],
    [
      'a still wheel with the engine running',
      testOf(readVolts, { state: 'running' }),
      { code: 'wheel-turns', at: 'crankshaft', state: 'running' },
    ],
    [
      'looking at nothing',
      testOf({ kind: 'inspect', of: 'conector.sensor' }),
      { code: 'nothing-to-inspect', of: 'conector.sensor', near: 'connector.sensor' },
    ],
  ])('%s', (_words, one, reason) => {
    expect(refuseTest(hall, one)).toEqual(reason);
  });

  test('position is compared with nothing where nothing turns', () => {
    const timing = testOf(
      { kind: 'timing', plus: 'module.signal', minus: 'battery.negative' },
      { target: 'moving' },
    );
    expect(refuseTest({ ...hall, target: null }, timing)).toEqual({ code: 'nothing-turns' });
    expect(refuseTest(hall, timing)).toBeNull();
  });

  test('what turns with no wheel, or not with the crankshaft, may stand still with the engine running', () => {
    const running = testOf(readVolts, { state: 'running' });
    const wheel = { at: 'crankshaft', teeth: 60, missing: 2, turns: 0, onChance: 0.5 };
    expect(refuseTest({ ...hall, target: null }, running)).toBeNull();
    expect(refuseTest({ ...hall, target: wheel }, running)).toBeNull();
    expect(refuseTest({ ...hall, target: { ...wheel, turns: 0.5 } }, running)).not.toBeNull();
  });
});
