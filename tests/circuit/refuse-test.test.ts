/** What must not be done on a vehicle is refused with the reason (common practice, no source). */
import { describe, expect, test } from 'vitest';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import type { Bridge, Probe, Setup } from '../../src/circuit/test.ts';
import { shipped, testOf } from './shipped.ts';

const hall = shipped('hall-module-fed');
const relay = shipped('hall-relay-fed');
const coil = shipped('reluctor-two-wire');
const ohms = (plus: string, minus: string): Probe => ({ kind: 'ohms', plus, minus });
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
      'key off',
    ],
    ['all plugged', hall, ohms('sensor.signal', 'battery.negative'), dead(), 'unplug "module"'],
    [
      'sensor off, module on',
      hall,
      ohms('sensor.signal', 'battery.negative'),
      dead('sensor'),
      'unplug "module"',
    ],
    [
      'module off, Hall sensor on',
      hall,
      ohms('module.signal', 'battery.negative'),
      dead('module'),
      'unplug "sensor"',
    ],
    ['both off', hall, ohms('module.signal', 'sensor.signal'), dead('module', 'sensor'), null],
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
      'battery voltage',
    ],
    ['behind the open relay', relay, ohms('sensor.feed', 'battery.negative'), dead('sensor'), null],
  ] as const)('%s', (_words, circuit, probe, setup, reason) => {
    const answer = refuseTest(
      circuit,
      testOf(probe, { ...setup, unplugged: [...(setup.unplugged ?? [])] }),
    );
    if (reason === null) expect(answer).toBeNull();
    else expect(answer).toContain(reason);
  });
});

describe('what is clipped in', () => {
  test.each([
    [
      'battery to an input',
      hall,
      bridge('battery.positive', 'sensor.signal', 'test-light'),
      'battery voltage must not reach "module.signal"',
    ],
    [
      'battery to a reference by a wire',
      hall,
      bridge('sensor.feed', 'battery.positive', 'lead'),
      'battery voltage must not reach "module.reference"',
    ],
    [
      'battery to an input through 10 kohm',
      hall,
      bridge('battery.positive', 'sensor.signal', { ohms: 10_000 }),
      null,
    ],
    [
      'a plain lead from an input to ground',
      hall,
      bridge('module.signal', 'battery.negative', 'lead'),
      'LED light or a resistor',
    ],
    [
      'a plain lead from a reference to ground',
      hall,
      bridge('sensor.feed', 'sensor.ground', 'lead'),
      'LED light or a resistor',
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
      'filament lamp',
    ],
    ['a bypass of the signal wire', hall, bridge('module.signal', 'sensor.signal', 'lead'), null],
    [
      'a plain lead over the battery',
      relay,
      bridge('battery.positive', 'battery.negative', 'lead'),
      'short circuit',
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
      'filament lamp',
    ],
    [
      'ten ohm from an input to ground',
      hall,
      bridge('module.signal', 'battery.negative', { ohms: 10 }),
      '100 ohm or more',
    ],
    [
      'a plain lead from feed to signal',
      hall,
      bridge('sensor.feed', 'sensor.signal', 'lead'),
      'must not join',
    ],
    [
      'a plain lead between two grounds',
      hall,
      bridge('sensor.ground', 'throttle-position.ground', 'lead'),
      null,
    ],
    ['both ends at one place', hall, bridge('sensor.feed', 'sensor.feed', 'lead'), 'both ends'],
  ] as const)('%s', (_words, circuit, setup, reason) => {
    const answer = refuseTest(circuit, testOf(readVolts, setup));
    if (reason === null) expect(answer).toBeNull();
    else expect(answer).toContain(reason);
  });

  test('a filament lamp as the instrument, and the LED light from battery positive', () => {
    expect(
      refuseTest(hall, testOf({ kind: 'lamp', plus: 'sensor.feed', minus: 'battery.negative' })),
    ).toContain('filament lamp');
    expect(
      refuseTest(hall, testOf({ kind: 'light', plus: 'battery.positive', minus: 'sensor.ground' })),
    ).toBeNull();
    expect(
      refuseTest(hall, testOf({ kind: 'light', plus: 'battery.positive', minus: 'sensor.signal' })),
    ).toContain('battery voltage');
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
      'did you mean "sensor.feed"?',
    ],
    ['unknown connector', testOf(readVolts, { unplugged: ['senser'] }), 'did you mean "sensor"?'],
    [
      'inside a plugged connector',
      testOf({ kind: 'volts', plus: 'sensor.feed.pin', minus: 'battery.negative' }),
      'inside the connector',
    ],
    [
      'pin of an unplugged module',
      testOf(
        { kind: 'volts', plus: 'module.signal.pin', minus: 'battery.negative' },
        { unplugged: ['module'] },
      ),
      'without supply',
    ],
    [
      'pattern of a still wheel',
      testOf({ kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' }),
      'nothing passes',
    ],
    [
      'live data with the key off',
      testOf({ kind: 'counts', input: 'module.signal' }, { state: 'key-off' }),
      'key off',
    ],
    ['live data of no input', testOf({ kind: 'counts', input: 'module.reference' }), 'no input'],
    [
      'a spare that is not plugged in',
      testOf(readVolts, { sensor: 'spare', unplugged: ['sensor'] }),
      'spare',
    ],
    [
      'both leads at one place',
      testOf({ kind: 'volts', plus: 'sensor.feed', minus: 'sensor.feed' }),
      'same terminal',
    ],
    [
      'a still wheel with the engine running',
      testOf(readVolts, { state: 'running' }),
      'cannot stand still',
    ],
    [
      'looking at nothing',
      testOf({ kind: 'inspect', of: 'conector.sensor' }),
      'did you mean "connector.sensor"?',
    ],
  ])('%s', (_words, one, reason) => {
    expect(refuseTest(hall, one)).toContain(reason);
  });

  test('what turns with no wheel, or not with the crankshaft, may stand still with the engine running', () => {
    const running = testOf(readVolts, { state: 'running' });
    const wheel = { at: 'crankshaft', teeth: 60, missing: 2, turns: 0, onChance: 0.5 };
    expect(refuseTest({ ...hall, target: null }, running)).toBeNull();
    expect(refuseTest({ ...hall, target: wheel }, running)).toBeNull();
    expect(refuseTest({ ...hall, target: { ...wheel, turns: 0.5 } }, running)).not.toBeNull();
  });
});
