/** A procedure of three steps with one of each kind, for an invented vehicle. */
import { emptyJob, type Job } from '../../../src/procedure/job.ts';
import type { Caution, Conclusion, Procedure, Step } from '../../../src/procedure/procedure.ts';
import { KEY_ON } from '../../circuit/setup.ts';

export const LIVE: Caution = {
  id: 'live',
  word: 'CAUTION',
  say: 'The circuit is live. Take off rings and watch, and touch one terminal at a time.',
  hazards: ['energised-circuit'],
};
export const TURNS: Caution = {
  id: 'turns',
  word: 'WARNING',
  say: 'The engine turns. Keep hands, hair and leads away from belts and fans. Parking brake on, wheels chocked.',
  hazards: ['rotating-parts', 'vehicle-secured'],
};
export const GAS: Caution = {
  id: 'gas',
  word: 'WARNING',
  say: 'Exhaust gas kills in a closed room. Connect the extraction or open the doors first.',
  hazards: ['exhaust-gas'],
};

const feed: Step = {
  id: 'feed',
  kind: 'measure',
  title: 'Feed at the sensor',
  family: 'reference',
  setup: KEY_ON,
  say: 'Back-probe {sensor.feed} with the red lead, black lead on {battery.negative}.',
  why: 'No supply, no signal.',
  minutes: 2,
  cautions: [LIVE],
  cannot: 'unplug',
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
  unit: 'V',
  expected: { low: 4.75, nominal: 5, high: 5.25, from: 'circuit' },
  outcomes: [
    { name: 'low', words: 'the feed is low', go: 'feed-open', from: null, to: 4.75 },
    { name: 'good', words: 'the feed is there', go: 'light', from: 4.75, to: 5.25 },
    { name: 'high', words: 'the feed is high', go: 'feed-high', from: 5.25, to: null },
  ],
};

const light: Step = {
  id: 'light',
  kind: 'look',
  title: 'Ground under load',
  family: 'ground',
  setup: KEY_ON,
  say: 'LED test light from {battery.positive} to {sensor.ground}.',
  why: 'A meter sees full voltage through a joint that carries no current; a light does not.',
  minutes: 1,
  cautions: [LIVE],
  cannot: null,
  probe: { kind: 'light', plus: 'battery.positive', minus: 'sensor.ground' },
  expected: ['lit'],
  outcomes: [
    { name: 'lit', words: 'the ground carries current', go: 'follows', looks: ['lit'] },
    { name: 'weak', words: 'the ground is poor', go: 'ground-poor', looks: ['dim', 'dark'] },
  ],
};

const follows: Step = {
  id: 'follows',
  kind: 'ask',
  title: 'Engine speed in the live data',
  family: 'pattern',
  setup: { ...KEY_ON, state: 'running', target: 'moving' },
  say: 'Read the engine speed in the live data of the module.',
  why: '',
  minutes: 2,
  cautions: [TURNS, GAS],
  cannot: null,
  usual: 'yes',
  outcomes: [
    { name: 'yes', words: 'the speed is shown', go: 'no-fault' },
    { name: 'no', words: 'the speed stays at zero', go: 'sensor-dead' },
  ],
};

const unplug: Step = {
  id: 'unplug',
  kind: 'act',
  title: 'Take the plug off',
  family: 'inspection',
  setup: { ...KEY_ON, state: 'key-off', unplugged: ['sensor'] },
  say: 'Key off. Take the plug off the sensor and look into it.',
  why: 'Green or wet pins are seen at once.',
  minutes: 1,
  cautions: [],
  cannot: null,
  go: 'light',
};

function conclusion(id: string, title: string, faults: readonly string[]): Conclusion {
  return {
    id,
    kind: 'conclude',
    title,
    faults,
    say: 'The readings point there.',
    repair: `Put it right: ${title.toLowerCase()}.`,
    customer: 'A wire is to be mended; no part needs replacing.',
    retest: ['feed', 'light'],
  };
}

const STEPS: readonly Step[] = [
  feed,
  light,
  follows,
  unplug,
  conclusion('feed-open', 'Feed wire open', ['wire.feed.open']),
  conclusion('feed-high', 'Feed shorted to battery', ['wire.feed.battery']),
  conclusion('ground-poor', 'Poor ground', [
    'wire.ground.resistive',
    'contact.sensor.ground.resistive',
  ]),
  conclusion('sensor-dead', 'Sensor does not switch', ['sensor.stuck-high']),
  conclusion('no-fault', 'No fault found', []),
];

export const SMALL_PROCEDURE: Procedure = {
  name: 'small',
  title: 'Three-wire sensor, no signal',
  about: 'For a sensor with feed, signal and ground. Have a meter and an LED test light ready.',
  circuit: 'small-circuit',
  codes: ['P0335'],
  start: 'feed',
  steps: Object.fromEntries(STEPS.map((step) => [step.id, step])),
};

export const SMALL_JOB: Job = {
  ...emptyJob('Cranks but does not start'),
  vehicle: { ...emptyJob('').vehicle, words: 'Marrow Dray, an invented van' },
  terminals: {
    'sensor.feed': { pin: '1', colour: 'RD/BU' },
    'sensor.ground': { pin: '3', colour: 'BK' },
  },
};

/** What the small procedure's texts name, as this vehicle has it. */
export const PLACES: Readonly<Record<string, string>> = {
  'sensor.feed': 'sensor feed, pin 1 (RD/BU)',
  'sensor.ground': 'sensor ground, pin 3 (BK)',
  'battery.negative': 'battery negative',
  'battery.positive': 'battery positive',
};

const SCOPE: Step = {
  id: 'picture',
  kind: 'look',
  title: 'Scope picture',
  family: 'pattern',
  setup: { ...KEY_ON, target: 'moving' },
  say: 'Scope tip on {sensor.feed}, ground clip on {battery.negative}.',
  why: '',
  minutes: 1,
  cautions: [],
  cannot: null,
  probe: { kind: 'pattern', plus: 'sensor.signal', minus: 'battery.negative' },
  expected: ['full'],
  outcomes: [
    { name: 'full', words: 'even pulses', go: 'follows', looks: ['full'] },
    { name: 'uneven', words: 'uneven pulses', go: 'follows', looks: ['uneven'] },
  ],
};

/** The same, beginning with a scope picture and without a caution. */
export const SCOPE_PROCEDURE: Procedure = {
  ...SMALL_PROCEDURE,
  start: 'picture',
  steps: { picture: SCOPE, ...SMALL_PROCEDURE.steps },
};
