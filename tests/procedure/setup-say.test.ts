/** Leads, bridges, resistors and plugs are said from the setup; a text that says otherwise is refused. */
import { describe, expect, test } from 'vitest';
import type { Probe, Setup } from '../../src/circuit/test.ts';
import { againstLimits, againstSetup } from '../../src/procedure/against-setup.ts';
import { setupSay, watchSay } from '../../src/procedure/setup-say.ts';
import { CIRCUIT } from '../proof/example.ts';
import { LIBRARY, link, TREES } from '../proof/library.ts';

const PLAIN: Setup = {
  state: 'key-on',
  unplugged: [],
  bridges: [],
  sensor: 'fitted',
  target: 'still',
};
const VOLTS: Probe = { kind: 'volts', plus: 'module.pickup-high', minus: 'battery.negative' };
const SENSOR_OFF: Setup = { ...PLAIN, unplugged: ['sensor'] };
const KILOHM: Setup['bridges'] = [
  { from: 'sensor.plus', to: 'battery.negative', through: { ohms: 1000 } },
];

describe('what is made of a setup', () => {
  test.each<[string, Setup, Probe | null, string]>([
    [
      'leads alone',
      PLAIN,
      VOLTS,
      'All plugged in, key on. Meter on volts. Red lead: {module.pickup-high}. Black lead: {battery.negative}.',
    ],
    [
      'a module off',
      { ...PLAIN, state: 'key-off', unplugged: ['module', 'sensor'] },
      { kind: 'ohms', plus: 'module.pickup-high', minus: 'sensor.plus' },
      'Key off, wait until the module sleeps, unplug the rake controller and the rake wheel pickup. Test at the open harness connector. Meter on ohms. Red lead: {module.pickup-high}. Black lead: {sensor.plus}.',
    ],
    [
      'a resistor, and the key again after it',
      { ...PLAIN, unplugged: ['sensor'], bridges: KILOHM },
      { kind: 'volts', plus: 'sensor.plus', minus: 'battery.negative' },
      'Key off, unplug the rake wheel pickup. Test at the open harness connector. Clip a 1 kohm resistor from {sensor.plus} to {battery.negative}. Key on. Meter on volts. Red lead: {sensor.plus}. Black lead: {battery.negative}.',
    ],
    [
      "the part's own pins",
      { ...PLAIN, state: 'key-off', unplugged: ['sensor'] },
      { kind: 'ohms', plus: 'sensor.plus.pin', minus: 'sensor.minus.pin' },
      "Key off, unplug the rake wheel pickup. Test at the component's own pins. Meter on ohms. Red lead: {sensor.plus.pin}. Black lead: {sensor.minus.pin}.",
    ],
    [
      'a scope while the engine turns',
      { ...PLAIN, state: 'cranking' },
      { kind: 'pattern', plus: 'module.pickup-high', minus: 'battery.negative' },
      'All plugged in. Scope tip: {module.pickup-high}. Scope ground: {battery.negative}.',
    ],
    ['a look with the eyes', PLAIN, { kind: 'inspect', of: 'target' }, ''],
    ['a question', PLAIN, null, ''],
  ])('%s', (_, setup, probe, said) => {
    expect(setupSay(setup, probe, CIRCUIT)).toBe(said);
  });
});

describe('what stands of the test before is not said again', () => {
  const pulled: Setup = { ...SENSOR_OFF, bridges: KILOHM };
  const leads = 'Meter on volts. Red lead: {sensor.plus}. Black lead: {battery.negative}.';
  const probe: Probe = { kind: 'volts', plus: 'sensor.plus', minus: 'battery.negative' };
  const clip = 'Clip a 1 kohm resistor from {sensor.plus} to {battery.negative}.';
  test.each<[string, Setup | null, string]>([
    ['all of it', pulled, `Test at the open harness connector. ${leads}`],
    ['the connector', SENSOR_OFF, `Test at the open harness connector. ${clip} ${leads}`],
    [
      'the connector, with the key off',
      { ...SENSOR_OFF, state: 'key-off' },
      `Test at the open harness connector. ${clip} Key on. ${leads}`,
    ],
    [
      'nothing',
      PLAIN,
      `Key off, unplug the rake wheel pickup. Test at the open harness connector. ${clip} Key on. ${leads}`,
    ],
  ])('%s', (_, stands, said) => {
    expect(setupSay(pulled, probe, CIRCUIT, stands)).toBe(said);
  });
});

describe('a text that says otherwise', () => {
  const told = (text: string, setup: Setup = PLAIN) =>
    againstSetup(text, setup, [VOLTS], CIRCUIT).map(({ words }) => words);

  test.each([
    ['a lead elsewhere', 'Red lead on {module.pickup-low}.', PLAIN, 2],
    ['leads the wrong way round', 'Red lead: {battery.negative}.', PLAIN, 1],
    [
      'a bridge to the other post',
      'From signal to {battery.positive}.',
      { ...PLAIN, bridges: KILOHM },
      1,
    ],
    ['another resistor', 'Clip a 10 ohm one-watt resistor in.', { ...PLAIN, bridges: KILOHM }, 1],
    [
      'another one as the shop writes it',
      'Use the 3.3k resistor.',
      { ...PLAIN, bridges: KILOHM },
      1,
    ],
    ['another one in Ω', 'Clip a 330 Ω resistor in.', { ...PLAIN, bridges: KILOHM }, 1],
    ['a resistor where there is none', 'Clip a 1 kohm resistor in.', PLAIN, 1],
    ['a plug that stays in', 'Unplug the sensor first.', PLAIN, 1],
    ['another plug than the step opens', 'Unplug the module.', SENSOR_OFF, 1],
    ['another one by its plain name', 'Then unplug the rake controller.', SENSOR_OFF, 1],
    ['a plug in other words', 'Take the plug off the rake wheel pickup first.', PLAIN, 1],
    ['a connector pulled off', 'Pull the connector of the sensor off.', PLAIN, 1],
    ['a part to disconnect', 'Disconnect the module.', SENSOR_OFF, 1],
    ['leads behind another part', 'Back-probe the sensor.', PLAIN, 1],
  ] as const)('%s is told', (_, text, setup, count) => {
    expect(told(text, setup)).toHaveLength(count);
  });

  test.each([
    ['the same leads', 'Red lead: {module.pickup-high}. Black lead: {battery.negative}.', PLAIN],
    ['the same resistor', 'The 1 kohm resistor stays in.', { ...PLAIN, bridges: KILOHM }],
    [
      'the same resistor as the shop writes it',
      'The 1k resistor stays in.',
      { ...PLAIN, bridges: KILOHM },
    ],
    ['what only a person knows', 'Back-probe. Crank for three seconds.', PLAIN],
    ['an unplugged part in passing', 'With it unplugged nothing moves.', PLAIN],
    ['the plug that the step opens', 'Unplug the sensor, rust and all.', SENSOR_OFF],
    ['a plug that must stay', 'Do not unplug the module.', SENSOR_OFF],
    ['a part of which the circuit knows nothing', 'Unplug the lamp beside it.', SENSOR_OFF],
    ['leads where they are', 'Back-probe the controller.', PLAIN],
    ['leads at a part in passing', 'Back-probe the module, near the sensor.', PLAIN],
  ])('%s is not', (_, text, setup) => {
    expect(told(text, setup)).toEqual([]);
  });
});

describe('a place in plain words', () => {
  const HALL = LIBRARY.circuits.get('hall-module-fed')!;
  const RELAY = LIBRARY.circuits.get('hall-relay-fed')!;
  const PEDAL = LIBRARY.circuits.get('pedal-dual')!;
  const GROUND: Probe = { kind: 'volts', plus: 'sensor.ground', minus: 'battery.negative' };
  const TRACK: Probe = { kind: 'volts', plus: 'sensor.signal-1', minus: 'sensor.ground-1' };
  const FUSE: Probe = { kind: 'volts', plus: 'battery.positive', minus: 'fuse.out' };
  const PULLED = { ...SENSOR_OFF, bridges: [{ ...KILOHM[0]!, from: 'sensor.ground' }] };

  test.each<[string, Probe, typeof HALL, Setup]>([
    ['Red lead on the signal pin at the sensor plug.', GROUND, HALL, PLAIN],
    ['Put the red lead on the sensor signal.', GROUND, HALL, PLAIN],
    ["Touch the sensor's feed terminal.", GROUND, HALL, PLAIN],
    ['Back-probe the signal wire.', GROUND, HALL, PLAIN],
    ['The red lead goes to the ground at the engine control module.', GROUND, HALL, PLAIN],
    ['Black lead on the engine control module.', GROUND, HALL, PLAIN],
    ['Red lead: battery positive.', GROUND, HALL, PLAIN],
    ['Black lead on the positive post of the battery.', GROUND, HALL, PLAIN],
    ['Black lead on the ground pin.', GROUND, HALL, PLAIN],
    ['Measure at the throttle ground of the module.', GROUND, HALL, PLAIN],
    ['Red lead on signal 2.', TRACK, PEDAL, PLAIN],
    ['Red lead on the pin of signal 2.', TRACK, PEDAL, PLAIN],
    ['Leads on feed 1 and ground 1.', TRACK, PEDAL, PLAIN],
    ['Probe terminal 87 of the relay.', FUSE, RELAY, PLAIN],
    ['Touch pin 30.', FUSE, RELAY, PLAIN],
    ['Clip it from the signal pin to the battery.', GROUND, HALL, PULLED],
    ['Clip ten ohm in.', GROUND, HALL, PULLED],
    ['Use the ten-ohm resistor.', GROUND, HALL, PULLED],
    ['A resistor of 10 ohm needs ten watts.', GROUND, HALL, PULLED],
    ['The two kilohm resistor stays in.', GROUND, HALL, PULLED],
    ['A one-hundred-ohm resistor stays in.', GROUND, HALL, PULLED],
    ['Open the connector of the sensor.', GROUND, HALL, PLAIN],
    ['Pull the sensor plug.', GROUND, HALL, PLAIN],
    ['Separate the sensor connector.', GROUND, HALL, PLAIN],
    ['With the sensor unplugged, wait a second.', GROUND, HALL, PLAIN],
    ['The sensor is disconnected.', GROUND, HALL, PLAIN],
    ['Plug the sensor in again.', GROUND, HALL, PULLED],
    ['Sensor plugged in, engine off.', GROUND, HALL, PULLED],
    ['Key on for a second. Then key off, and wait.', GROUND, HALL, PLAIN],
    ['Key off, look, key on.', GROUND, HALL, { ...PLAIN, state: 'key-off' }],
  ])('%s', (text, probe, circuit, setup) => {
    expect(againstSetup(text, setup, [probe], circuit)).toHaveLength(1);
  });

  test.each<[string, Probe, typeof HALL, Setup]>([
    ['Red lead on the ground pin at the sensor plug.', GROUND, HALL, PLAIN],
    ['The black lead stays on battery negative.', GROUND, HALL, PLAIN],
    ['A break in the signal wire reads 0 V.', GROUND, HALL, PLAIN],
    ['The two are side by side in the same connector.', GROUND, HALL, PLAIN],
    ['Red lead on the ground pin, not on the signal pin.', GROUND, HALL, PLAIN],
    ['The red lead never goes to the signal pin.', GROUND, HALL, PLAIN],
    ['Red lead on signal 1.', TRACK, PEDAL, PLAIN],
    ['Red lead on the signal pin, black lead on the ground pin.', TRACK, PEDAL, PLAIN],
    ['Use the test point on the back of the fuse.', FUSE, RELAY, PLAIN],
    ['Use the one kilohm resistor.', GROUND, HALL, PULLED],
    ['The 1 kilohm resistor stays in.', GROUND, HALL, PULLED],
    ['Unplug the sensor, key on.', GROUND, HALL, PULLED],
    ['Key off, plug the throttle position sensor in, key on.', GROUND, HALL, PULLED],
    ['Sensor plugged in, engine off.', GROUND, HALL, PLAIN],
    ['Do not open the connector of the sensor.', GROUND, HALL, PLAIN],
    ['The sensor must not be unplugged.', GROUND, HALL, PLAIN],
    ['Key off. Fit it. Crank for three seconds.', GROUND, HALL, { ...PLAIN, state: 'cranking' }],
  ])('not: %s', (text, probe, circuit, setup) => {
    expect(againstSetup(text, setup, [probe], circuit)).toEqual([]);
  });

  test('of what is watched while something is moved, any of its places is one', () => {
    const told = (text: string) => againstSetup(text, PLAIN, [GROUND, FUSE], RELAY);
    expect(told('Black lead on fuse out, then on the ground pin.')).toEqual([]);
    expect(told('Black lead on the signal pin.')).toHaveLength(1);
  });
});

describe('a text that says another value than is good', () => {
  const good = { low: 7.6, nominal: 8, high: 8.4, from: 'circuit' as const };
  const told = (text: string) => againstLimits(text, good, 'V').map(({ words }) => words);

  test.each([
    'There must be 5 V.',
    'The feed should be 12 V here.',
    'Normally 4.9 V.',
    'Good is 5 V.',
    'It has to read 800 mV',
  ])('%s', (text) => {
    expect(told(text)).toHaveLength(1);
  });

  test.each([
    'There must be 8 V.',
    'A break has 0 V.',
    'It should be 470 ohm.',
    'It must be seated. 5 V is what a short to the reference gives.',
  ])('not: %s', (text) => {
    expect(told(text)).toEqual([]);
  });
});

test.each(TREES)('%s says no lead of its own where the step has leads', (_, parsed) => {
  const { linked } = link(parsed, 8);
  const twice = Object.values(linked!.procedure.steps).filter(
    (step) =>
      (step.kind === 'measure' || step.kind === 'look') &&
      step.probe !== null &&
      (step.say.match(/\b(?:red lead|scope tip)\b[^.]*\{/gi)?.length ?? 0) > 1,
  );
  expect(twice.map(({ id }) => id)).toEqual([]);
});

test('no shipped text names a resistor, a plug or a lead place beside a measurement', () => {
  for (const { path, value } of LIBRARY.procedures.files())
    for (const [id, { say = '', measure }] of Object.entries(value?.draft.steps ?? {}))
      if (measure && !('reading' in measure))
        expect(say, `${path} ${id}`).not.toMatch(
          /red lead:|black lead:|\bohm resistor|\bunplug\b/i,
        );
});

describe('what is watched', () => {
  const live: Probe = { kind: 'counts', input: 'module.pickup-high' };
  const ground: Probe = { kind: 'volts', plus: 'sensor.minus', minus: 'battery.negative' };
  test.each<[string, Probe[], string]>([
    ['nothing', [], ''],
    [
      'one thing',
      [VOLTS],
      'All plugged in, key on. Meter on volts. Red lead: {module.pickup-high}. Black lead: {battery.negative}.',
    ],
    [
      'two places in two rounds, and live data beside them',
      [VOLTS, live, ground],
      'All plugged in, key on. Meter on volts. Red lead: {module.pickup-high}. Black lead: {battery.negative}. Round 2: red {sensor.minus}, black {battery.negative}. Also watch the live data of {module.pickup-high}.',
    ],
    [
      'live data alone',
      [live],
      'All plugged in, key on. Watch the live data of {module.pickup-high}.',
    ],
  ])('%s', (_, watched, said) => {
    expect(watchSay(PLAIN, watched, CIRCUIT)).toBe(said);
  });
});
