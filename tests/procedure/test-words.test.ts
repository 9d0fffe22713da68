import { expect, it } from 'vitest';
import { theWords } from '../../src/circuit/part-faults.ts';
import type { Probe, Setup } from '../../src/circuit/test.ts';
import { withHarness } from '../../src/circuit/with-harness.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { readHarness } from '../../src/procedure/read-harness.ts';
import {
  arrangeWords,
  expectedRangeWords,
  fitWords,
  instrumentWords,
  leadWords,
  probeWhere,
  setupWords,
  thingOfRepair,
  thingWords,
  undoWords,
  vehicleWords,
} from '../../src/procedure/test-words.ts';
import { setupOf } from '../circuit/setup.ts';
import { shipped } from '../circuit/shipped.ts';
import { CIRCUIT, JOB } from '../records/sample-session.ts';

const circuit = {
  ...CIRCUIT,
  connectors: [{ part: 'sensor', words: 'the connector of the sensor', pins: [], unplugs: true }],
};

it.each<[Probe, string, string]>([
  [
    { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
    'sensor feed, pin 1 (RD/BU) to battery negative',
    'meter',
  ],
  [
    { kind: 'light', plus: 'sensor.feed', minus: 'sensor.ground' },
    'sensor feed, pin 1 (RD/BU) to sensor ground, pin 2 (BN)',
    'LED test light',
  ],
  [{ kind: 'counts', input: 'module.signal' }, 'live data of module signal', 'live data'],
  [{ kind: 'inspect', of: 'connector.sensor' }, 'the connector of the sensor', 'eyes and fingers'],
  [{ kind: 'inspect', of: 'wire.signal' }, 'signal wire', 'eyes and fingers'],
  [{ kind: 'inspect', of: 'target' }, 'wheel at the crankshaft', 'eyes and fingers'],
])('%j is at "%s", with %s', (probe, where, instrument) => {
  expect(probeWhere(probe, JOB, circuit)).toBe(where);
  expect(instrumentWords(probe)).toBe(instrument);
});

it('a setup says the state, what is unplugged, bridged, fitted and moving', () => {
  const setup: Setup = {
    state: 'cranking',
    unplugged: ['sensor'],
    bridges: [
      { from: 'sensor.feed', to: 'module.signal', through: 'test-light' },
      { from: 'sensor.ground', to: 'battery.negative', through: { ohms: 470 } },
    ],
    sensor: 'spare',
    target: 'moving',
  };
  expect(setupWords(setup, JOB, null)).toBe(
    'engine cranking; sensor unplugged; test light from sensor feed, pin 1 (RD/BU) to module signal; ' +
      '470 ohm resistor from sensor ground, pin 2 (BN) to battery negative; known-good sensor plugged in',
  );
});

it('a target is said to be moved only where no engine moves it, a potentiometer as itself', () => {
  const setup = setupOf({ target: 'moving' });
  expect(vehicleWords(setup, null)).toBe('key on, engine off; target moved past the sensor');
  const [part] = CIRCUIT.parts;
  const throttle = { ...CIRCUIT, parts: [{ ...part!, kind: 'potentiometer' }] } as typeof CIRCUIT;
  expect(vehicleWords(setup, throttle)).toBe('key on, engine off; sensor moved through its travel');
  expect(vehicleWords({ ...setup, state: 'running' }, null)).toBe('engine running');
  const raised = { ...CIRCUIT, target: { ...CIRCUIT.target!, at: 'left front wheel' } };
  expect(vehicleWords(setup, raised)).toBe('key on, engine off; left front wheel turned by hand');
});

it('an ohmmeter that finds nothing shows OL, and so it is said', () => {
  const above = { low: 60e6, high: null, nominal: null, from: 'circuit' } as const;
  expect(expectedRangeWords(above, 'ohm')).toBe('OL or above 60 MΩ');
  expect(expectedRangeWords({ ...above, low: -0.2, high: 0.5 }, 'ohm')).toBe('0 to 0.5 Ω');
  expect(expectedRangeWords({ ...above, low: -0.2, high: 0.5 }, 'V')).toBe('-0.2 to 0.5 V');
  expect(expectedRangeWords({ ...above, low: 10 }, 'V')).toBe('above 10 V');
  expect(expectedRangeWords({ ...above, low: 1, high: 5 }, 'ohm')).toBe('1 to 5 Ω');
});

it('says what the last test left behind and this one cannot have', () => {
  const bridge = {
    from: 'sensor.signal',
    to: 'battery.negative',
    through: { ohms: 4700 },
  } as const;
  const pulled = setupOf({ unplugged: ['sensor'], bridges: [bridge] });
  const words = (before: Setup | null, setup: Setup, probe: Probe | null = null) =>
    undoWords(before, { setup, probe }, JOB, circuit);
  const resistor = '4.7 kohm resistor from sensor signal to battery negative';
  expect(words(pulled, setupOf())).toBe(
    `First: key off, remove the ${resistor}, plug the sensor back in.`,
  );
  // The good sensor goes where the old one was: nobody plugs that in again in between.
  expect(words(pulled, setupOf({ sensor: 'spare' }))).toBe(
    `First: key off, remove the ${resistor}.`,
  );
  expect(words(pulled, setupOf({ unplugged: ['sensor'] }))).toBe(`First: remove the ${resistor}.`);
  // What is looked into stays open.
  const look = { kind: 'inspect', of: 'connector.sensor' } as const;
  expect(words(pulled, setupOf({ state: 'key-off' }), look)).toBe(
    `First: key off, remove the ${resistor}.`,
  );
  expect(words(setupOf({ sensor: 'spare' }), setupOf())).toBe(
    'First: key off, plug the original sensor back in instead of the known-good one.',
  );
  expect(words(pulled, pulled)).toBe('');
  expect(words(setupOf(), pulled)).toBe('');
  expect(words(null, setupOf())).toBe('');
});

it('a test without a text of its own says what is unplugged, plugged in and clipped on for it', () => {
  const bridge = { from: 'sensor.signal', to: 'battery.negative', through: { ohms: 330 } } as const;
  const off = setupOf({ unplugged: ['sensor'] });
  const pulled = setupOf({ unplugged: ['sensor'], bridges: [bridge] });
  const words = (before: Setup | null, setup: Setup, on: Setup | null = before) =>
    arrangeWords({ before, on }, { setup, probe: null }, JOB, circuit);
  const clip = 'clip a 330 ohm one-watt resistor from sensor signal to battery negative';
  expect(words(null, pulled)).toBe(`First: key off, unplug the sensor, ${clip}.`);
  expect(words(setupOf(), pulled)).toBe(`First: key off, unplug the sensor, ${clip}.`);
  // The connector is off already, and the resistor was taken away.
  expect(words(off, pulled)).toBe(`First: ${clip}.`);
  expect(words(pulled, pulled)).toBe('');
  // Somebody worked on the vehicle since: nothing is sure to stand.
  expect(words(pulled, pulled, null)).toBe(`First: key off, unplug the sensor, ${clip}.`);
  expect(words(off, setupOf({ sensor: 'spare' }))).toBe(
    'First: key off, plug in a known-good sensor in place of the one in the vehicle.',
  );
  expect(words(null, setupOf({ state: 'key-off', unplugged: ['module'] }))).toBe(
    'First: key off, wait until the module sleeps, unplug the module.',
  );
});

// Ohm's law at 14.6 V: 0.213, 0.454, 0.646, 2.13, 21.3 and 107 W.
it.each([
  [1000, '1 kohm'],
  [470, '470 ohm half-watt'],
  [330, '330 ohm one-watt'],
  [100, '100 ohm five-watt'],
  [10, '10 ohm 25-watt'],
  [2, '2 ohm 107-watt'],
])('a resistor of %d ohm stands the battery across it: %s', (ohms, words) => {
  expect(fitWords(ohms)).toBe(words);
});

it.each([
  ['target.seat', 'seat of the sensor at the left front wheel'],
  ['target.ring', 'ring at the left front wheel'],
  ['target.turning', 'left front wheel as it turns'],
])('%s is called the %s', (of, words) => {
  expect(thingWords(of, shipped('current-two-wire'))).toBe(words);
});

it('a section of a wire is called by what it lies between', () => {
  const hall = shipped('hall-module-fed');
  const said = [{ connector: 'at the bulkhead', wires: ['signal'], at: '1.2 m' }];
  const { circuit: car } = withHarness(hall, readHarness(hall, said).harness);
  expect(thingOfRepair('wire.signal.2', car)).toBe(
    'signal wire between the connector at the bulkhead and the engine control module',
  );
  expect(thingOfRepair('wire.signal-2', shipped('pedal-dual'))).toBe('signal 2 wire');
});

it('a look into a connector says what is looked for, and at a module what comes first', () => {
  const hall = shipped('hall-module-fed');
  const look = (of: string) => leadWords({ kind: 'inspect', of }, emptyJob(''), hall);
  const FOR = /both halves: bent or pushed-back pins, green corrosion, water, oil, a torn seal\./;
  expect(look('connector.sensor')).toMatch(FOR);
  expect(look('connector.sensor')).not.toMatch(/maker/);
  expect(look('connector.module')).toMatch(FOR);
  expect(look('connector.module')).toMatch(
    /^The maker says whether to disconnect the battery first\. /,
  );
  expect(look('harness')).toBe('');
});

it('the wheel itself is called by its name', () => {
  expect(thingWords('target', shipped('reluctor-two-wire'))).toBe('wheel at the crankshaft');
  expect(thingWords('target', shipped('current-two-wire'))).toBe('ring at the left front wheel');
});

it("the maker's marks are those of the shaft", () => {
  expect(thingWords('target.marks', shipped('hall-module-fed'))).toBe(
    "maker's marks of the timing at the crankshaft",
  );
});

it.each([
  ['wire.signal', 'signal wire'],
  ['target', 'ring at the left front wheel'],
  ['leads', null],
])('a repair of %s is of: %s', (repair, words) => {
  expect(thingOfRepair(repair, shipped('current-two-wire'))).toBe(words);
});

it.each([
  ['hall-module-fed', "Second channel: the camshaft sensor's signal, both in the same crank."],
  ['hall-relay-fed', "Second channel: the crankshaft sensor's signal, both in the same crank."],
])('a position of %s asks for the second channel of the scope', (name, asked) => {
  const probe = { kind: 'timing', plus: 'module.signal', minus: 'battery.negative' } as const;
  const said = leadWords(probe, emptyJob(''), shipped(name));
  expect(said).toContain('Scope tip: signal at the engine control module.');
  expect(said).toContain(asked);
  expect(leadWords({ ...probe, kind: 'pattern' }, emptyJob(''), shipped(name))).not.toContain(
    'Second channel',
  );
});

it.each([
  ['fuse of the engine sensors', 'the fuse of the engine sensors'],
  ['fuse F12', 'fuse F12'],
  ['relay of the pump', 'the relay of the pump'],
  ['the main relay', 'the main relay'],
  ['camshaft position sensor', 'the camshaft position sensor'],
])('"%s" is spoken of as "%s"', (words, said) => {
  const [part] = shipped('hall-relay-fed').parts;
  expect(theWords({ ...part!, words })).toBe(said);
});
