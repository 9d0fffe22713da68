/** An invented procedure, and sessions walked through it by the program's own decide and evolve. */
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import type { Meter, Test } from '../../src/circuit/test.ts';
import type { CautionRule } from '../../src/procedure/cautions.ts';
import type { Job } from '../../src/procedure/job.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command, WeighedConclusion } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { RULES, type SessionEvent, type SessionOpened } from '../../src/session/events.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { refusalWords } from '../../src/session/refusal.ts';
import type { Session } from '../../src/session/session.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { sealed } from '../log/events.ts';

const METER: Meter = {
  name: 'bench meter, 6000 counts',
  inputOhms: 10e6,
  volts: { ranges: [0.6, 6, 60, 600], counts: 6000, ofReading: 0.005, digits: 3 },
  ohms: { ranges: [600, 6e3, 60e3, 600e3, 6e6], counts: 6000, ofReading: 0.01, digits: 3 },
};

const CAUTION = {
  id: 'live',
  word: 'CAUTION',
  say: 'The circuit is live: keep the leads apart.',
  hazards: ['energised-circuit'],
} as const;

const BASE = { setup: KEY_ON, why: 'no supply, no signal', minutes: 2, cannot: null, cautions: [] };

const STEPS: readonly Step[] = [
  {
    ...BASE,
    id: 'feed',
    kind: 'measure',
    title: 'Feed at the sensor',
    family: 'reference',
    say: 'Red lead on {sensor.feed}, black lead on {battery.negative}.',
    cautions: [CAUTION],
    probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
    unit: 'V',
    expected: { low: 4.75, nominal: 5, high: 5.25, from: 'circuit' },
    outcomes: [
      { name: 'low', words: 'no or little feed', from: null, to: 4.75, go: 'feed-low' },
      { name: 'good', words: 'feed present', from: 4.75, to: 5.25, go: 'light' },
      { name: 'high', words: 'feed too high', from: 5.25, to: null, go: 'feed-low' },
    ],
  },
  {
    ...BASE,
    id: 'light',
    kind: 'look',
    title: 'Feed under load',
    family: 'reference',
    say: 'Test light from {sensor.feed} to {battery.negative}.',
    probe: { kind: 'light', plus: 'sensor.feed', minus: 'battery.negative' },
    expected: ['lit'],
    cannot: 'asked',
    outcomes: [
      { name: 'lit', words: 'the feed carries a load', looks: ['lit'], go: 'asked' },
      { name: 'weak', words: 'the feed gives way', looks: ['dim', 'dark'], go: 'feed-low' },
    ],
  },
  {
    ...BASE,
    id: 'asked',
    kind: 'ask',
    title: 'Does it fail cold?',
    family: 'interview',
    say: 'Ask when it happens.',
    usual: 'yes',
    outcomes: [
      { name: 'yes', words: 'it fails cold', go: 'prepare' },
      { name: 'no', words: 'it fails warm', go: 'prepare' },
    ],
  },
  {
    ...BASE,
    id: 'prepare',
    kind: 'act',
    title: 'Unplug the sensor',
    family: 'signal',
    say: 'Key off, unplug, key on.',
    go: 'ground',
  },
  {
    ...BASE,
    id: 'ground',
    kind: 'measure',
    title: 'Drop on the ground wire',
    family: 'ground',
    setup: { ...KEY_ON, unplugged: ['sensor'] },
    say: 'Red lead on {sensor.ground}, black lead on {battery.negative}.',
    probe: { kind: 'volts', plus: 'sensor.ground', minus: 'battery.negative' },
    unit: 'V',
    expected: { low: -0.05, nominal: 0.01, high: 0.1, from: 'author' },
    outcomes: [
      { name: 'good', words: 'ground sound', from: null, to: 0.1, go: 'speed' },
      { name: 'high', words: 'ground resistive', from: 0.1, to: null, go: 'ground-bad' },
    ],
  },
  {
    ...BASE,
    id: 'speed',
    kind: 'measure',
    title: 'Tooth frequency at idle',
    family: 'pattern',
    say: 'Count on {module.signal}.',
    probe: null,
    unit: 'Hz',
    expected: { low: 700, nominal: 800, high: null, from: 'author' },
    outcomes: [
      { name: 'none', words: 'no signal', from: null, to: 100, go: 'signal-open' },
      { name: 'some', words: 'a signal', from: 100, to: null, go: 'healthy' },
    ],
  },
  conclusion('feed-low', 'The feed {sensor.feed} is open', ['wire.feed.open'], ['feed', 'light']),
  conclusion('ground-bad', 'The ground wire is corroded', ['wire.ground.resistive'], ['ground']),
  conclusion('signal-open', 'The signal wire is open', ['wire.signal.open'], ['speed']),
  conclusion('healthy', 'Nothing found', [], []),
];

function conclusion(id: string, title: string, faults: string[], retest: string[]): Step {
  return {
    id,
    kind: 'conclude',
    title,
    faults,
    retest,
    say: 'Show it to the customer.',
    repair: 'Mend the wire at {sensor.feed} and seal the joint.',
    customer: 'A wire between the control unit and the sensor is broken.',
  };
}

export const PROCEDURE: Procedure = {
  name: 'lab-hall',
  title: 'Invented three-wire sensor, no signal',
  about: 'For tests.',
  circuit: 'lab-circuit',
  codes: ['P0335'],
  start: 'feed',
  steps: Object.fromEntries(STEPS.map((step) => [step.id, step])),
};

const CIRCUIT_TEXT = `
circuit: lab-circuit
title: Invented sensor circuit
temperature: 20 degC
supply:
  battery: 12.6 V +/- 0.3 V
  cranking: 10.5 V +/- 0.7 V
  running: 14.2 V +/- 0.3 V
  ohms: 20 mohm
parts:
  module:
    kind: module
    words: module
    pins:
      feed:
        reference: { volts: 5 V +/- 2 %, series: 0.5 ohm, limit: 80 mA +/- 20 % }
      signal:
        pull: { to: feed, ohms: 2.2 kohm +/- 5 % }
        input: { low-below: 1.5 V, high-above: 3.5 V }
      ground:
        ground: { ohms: 20 mohm }
  sensor:
    kind: hall-switch
    words: sensor
    draws: 8 mA +/- 40 %
    minimum: 3.8 V
    on: 50 ohm +/- 50 %
wires:
  feed: { from: module.feed, to: sensor.feed, size: 0.5 mm2, length: 3 m }
  signal: { from: module.signal, to: sensor.signal, size: 0.5 mm2, length: 3 m }
  ground: { from: module.ground, to: sensor.ground, size: 0.5 mm2, length: 3 m }
target: { at: crankshaft, teeth: 60, missing: 2, on: 0.5 }
`;

export const CIRCUIT: Circuit = labCircuit();

/** With terminals in two words: part and pin. */
function labCircuit(): Circuit {
  const { value, issues } = loadCircuit(CIRCUIT_TEXT, 'lab.yaml');
  if (!value) throw new Error(`lab circuit: ${JSON.stringify(issues)}`);
  const terminals = value.terminals.map((one) => ({ ...one, words: one.id.replace('.', ' ') }));
  return { ...value, terminals };
}

/** What stands before any test with the engine turning. */
export const CRANKING_CAUTION: CautionRule = {
  id: 'turning',
  word: 'WARNING',
  say: 'The engine turns: keep hands and hair away.',
  hazards: ['rotating-parts'],
  states: ['cranking'],
  drives: [],
  when: [],
};

export const JOB: Job = {
  name: 'bay 3',
  complaint: 'Starts badly when cold, dies at the lights.',
  codes: ['P0335'],
  vehicle: {
    words: 'Lindorf Kestrel 2.0, 2019',
    vin: '1ZZTESTSXAA000702',
    plate: 'QX 47 ZUM',
    odometer: '84 500 km',
    drive: 'combustion',
  },
  order: 'A-20441',
  customer: 'Odalys Brennvik',
  earlierRepairs: [{ words: 'sensor replaced a month ago', part: 'sensor' }],
  terminals: {
    'sensor.feed': { pin: '1', colour: 'RD/BU' },
    'sensor.ground': { pin: '2', colour: 'BN' },
  },
  notes: 'Key is in the box.',
};

/** A session in hand, with a clock of its own: each event comes 20 s after the one before. */
export interface Walk {
  readonly events: readonly SessionEvent[];
  readonly session: Session;
  /** Carries out commands; a refused one is a mistake of the test. */
  readonly do: (...commands: readonly Command[]) => Walk;
}

/** A session just opened. */
export function begin(change: Partial<SessionOpened> = {}, minute = 0): Walk {
  const opened: SessionOpened = {
    type: 'session-opened',
    format: 2,
    rules: RULES,
    program: '0.1.0',
    by: 'person',
    id: 'lab-0001',
    person: 'Ilvy Tarrant',
    shop: 'Workshop Quern & Daughters',
    instruments: ['meter', 'test-light'],
    meter: METER,
    job: JOB,
    procedure: PROCEDURE,
    circuit: CIRCUIT,
    cautionRules: [],
    vehicle: { kind: 'real' },
    at: time(minute * 60_000),
    elapsed: 0,
    ...change,
  };
  return walk(openSession(opened), minute * 60_000);
}

function walk(session: Session, startMs: number): Walk {
  return {
    session,
    events: session.events,
    do: (...commands) => {
      let now = session;
      for (const command of commands) {
        const elapsed = now.events.length * 20_000;
        const decision = decide(now, command, { at: time(startMs + elapsed), elapsed });
        if (!decision.ok)
          throw new Error(`${command.type}: ${refusalWords(decision.refusal).words}`);
        now = decision.events.reduce(evolve, now);
      }
      return walk(now, startMs);
    },
  };
}

function time(ms: number): string {
  return new Date(Date.UTC(2026, 2, 4, 8, 30) + ms).toISOString().replace('Z', '+00:00');
}

/** What the circuit says of a conclusion: these readings point to it, and the first of them rules out the signal wire. */
export function weighed(...readings: readonly number[]): WeighedConclusion {
  return {
    evidence: readings.map((reading) => ({ reading, counted: true })),
    ruledOut: [{ repair: 'wire.signal', by: readings.slice(0, 1) }],
    proven: readings.length >= 3,
  };
}

/** The same as early versions wrote it down. */
export const SAID: WeighedConclusion = {
  evidence: [
    {
      counted: true,
      said: {
        test: 'Feed at the sensor',
        where: 'sensor feed',
        found: '0.02 V',
        pointsTo: 'the feed wire',
      },
    },
    {
      counted: false,
      said: {
        test: 'Feed under load',
        where: 'sensor feed',
        found: 'dark',
        pointsTo: 'the feed wire',
      },
    },
  ],
  ruledOut: [{ said: { words: 'the module', by: 'Feed at the sensor: 0.02 V' } }],
  proven: true,
};

/** At the module: no step of the procedure asks for it. */
export const SIGNAL_TEST: Test = {
  setup: KEY_ON,
  probe: { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' },
};

/** A number typed for it. */
export function signalAt(value: number, typed = String(value)): Command {
  return {
    type: 'record-test',
    test: SIGNAL_TEST,
    typed,
    shown: { kind: 'number', value, unit: 'V' },
    expected: { kind: 'number', low: 4.7, high: 5.2 },
  };
}

/** A whole session: a wrong first answer taken back, a test of the technician's own, a note, a conclusion, a retest, closed. */
export const FINISHED: readonly Command[] = [
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '4.97', value: 4.97 },
  { type: 'cannot-do', reason: 'the light is on loan' },
  { type: 'choose-outcome', outcome: 'yes' },
  { type: 'mark-done' },
  { type: 'record-reading', typed: '-0.03', value: -0.03 },
  { type: 'go-back', to: 0 },
  { type: 'record-reading', typed: '0.02', value: 0.02 },
  { type: 'add-note', text: 'The plug was green inside.' },
  signalAt(5.01),
  // Event 9 is the reading that stands, event 11 the test at the module.
  { type: 'conclude', weighed: weighed(9, 11) },
  { type: 'acknowledge-cautions', step: 'feed' },
  {
    type: 'record-retest',
    step: 'feed',
    typed: '4.99',
    value: 4.99,
    look: null,
    outcome: 'good',
  },
  {
    type: 'record-retest',
    step: 'light',
    typed: 'lit',
    value: null,
    look: 'lit',
    outcome: 'lit',
  },
  { type: 'close', verdict: 'cured' },
];

/** The walk of them. What is good and what the conclusion rests on are made up: `true-walk.ts` has them from the circuit. */
export function finishedWalk(change: Partial<SessionOpened> = {}, minute = 0): Walk {
  return begin(change, minute).do(...FINISHED);
}

/** Free order: two tests, a note, and a conclusion of the person's own. */
export function freeWalk(change: Partial<SessionOpened> = {}): Walk {
  return begin({ procedure: null, ...change }).do(
    signalAt(0.02),
    { type: 'add-note', text: 'The loom is chafed.' },
    {
      type: 'record-test',
      test: { setup: KEY_ON, probe: { kind: 'inspect', of: 'connector.sensor' } },
      typed: '',
      shown: { kind: 'look', look: 'sound' },
      expected: { kind: 'look', looks: ['sound'] },
    },
    {
      type: 'conclude',
      own: { words: null, faults: ['wire.signal.open'] },
      weighed: { evidence: [{ reading: 2, counted: true }], ruledOut: [], proven: false },
    },
  );
}

/** The session file of a walk, and its head. */
export function fileOf({ events }: Pick<Walk, 'events'>): ReturnType<typeof sealed> {
  return sealed(events);
}
