/** Services in memory: a driver over the real `decide` and `evolve`, a vehicle and a model that answer by table. */
import { basename } from 'node:path';
import type { Circuit } from '../../../src/circuit/circuit.ts';
import { createModel, type Model } from '../../../src/circuit/model.ts';
import type { Test } from '../../../src/circuit/test.ts';
import type { CaptureEntry, CaptureFolder } from '../../../src/files/list-captures.ts';
import { type Settings, STANDARD_SETTINGS } from '../../../src/files/settings.ts';
import type { CautionRule } from '../../../src/procedure/cautions.ts';
import type { Job } from '../../../src/procedure/job.ts';
import type { Procedure } from '../../../src/procedure/procedure.ts';
import type {
  Advisor,
  Better,
  Proposal,
  SuspectView,
  Weighed,
} from '../../../src/session/advisor.ts';
import type { CaptureAnswer } from '../../../src/session/capture-step.ts';
import { capturedFindingWords } from '../../../src/session/capture-words.ts';
import type { Command } from '../../../src/session/command.ts';
import { decide } from '../../../src/session/decide.ts';
import type { Performed, SessionDriver, VehicleAnswer } from '../../../src/session/driver.ts';
import {
  isAnswer,
  RULES,
  SESSION_FORMAT,
  type SessionEvent,
  type SessionOpened,
  type StepCapture,
} from '../../../src/session/events.ts';
import { evolve, openSession } from '../../../src/session/evolve.ts';
import { refusalWords } from '../../../src/session/refusal.ts';
import { presentStep, type Session, standingAnswers } from '../../../src/session/session.ts';
import type { Problem } from '../../../src/source/problem.ts';
import type {
  AppServices,
  CaptureFiles,
  OpenedSession,
  SavedSession,
  SessionChoice,
} from '../../../src/ui/app-services.ts';
import { KEY_ON } from '../../circuit/setup.ts';
import { shipped } from '../../circuit/shipped.ts';
import {
  GAS,
  PLACES,
  SCOPE_PROCEDURE,
  SMALL_JOB,
  SMALL_PROCEDURE,
  TURNS,
} from './small-procedure.ts';

/** A clock that moves only when told. */
interface FakeClock {
  readonly now: () => number;
  readonly pass: (ms: number) => void;
}

export function fakeClock(): FakeClock {
  let now = 0;
  return {
    now: () => now,
    pass: (ms) => {
      now += ms;
    },
  };
}

export interface FakeDriver extends SessionDriver {
  /** The next commands find the disk full, this many of them. */
  readonly fillDisk: (commands: number) => void;
  readonly events: () => readonly SessionEvent[];
  readonly closed: () => boolean;
}

/** What stands before a test that no step asks for. */
const CAUTION_RULES: readonly CautionRule[] = [TURNS, GAS].map((caution) => ({
  ...caution,
  states: ['running'],
  drives: [],
  when: [],
}));

/** A session in memory. */
export function fakeDriver(
  job: Job,
  bench: boolean,
  procedure: Procedure | null = SMALL_PROCEDURE,
  circuit: Circuit | null = null,
  cautionRules = CAUTION_RULES,
): FakeDriver {
  const opened: SessionOpened = {
    type: 'session-opened',
    format: SESSION_FORMAT,
    rules: RULES,
    program: '0.1.0',
    by: 'person',
    id: 'test',
    person: 'Ida Kern',
    shop: 'Yard Three',
    instruments: ['meter', 'test-light'],
    meter: STANDARD_SETTINGS.meter,
    job,
    procedure,
    circuit,
    cautionRules,
    vehicle: bench ? { kind: 'bench', fault: 'wire.feed.open', seed: 1 } : { kind: 'real' },
    at: '2030-01-02T10:00:00Z',
    elapsed: 0,
  };
  let session = openSession(opened);
  let full = 0;
  let refused: Command | null = null;
  let path = 'sessions/dray-no-start.jsonl';
  let isClosed = false;

  function perform(command: Command): Performed {
    const when = { at: '2030-01-02T10:00:00Z', elapsed: session.events.length * 1000 };
    const decision = decide(session, command, when);
    if (!decision.ok) {
      const { refusal } = decision;
      return { ok: false, ...refusalWords(refusal), refusal, disk: false };
    }
    if (full > 0) {
      full -= 1;
      refused = command;
      const safe = `${session.events.length} events are safe.`;
      return {
        ok: false,
        words: `The disk is full. ${safe}`,
        fix: 'Free some space, then try again.',
        refusal: null,
        disk: true,
      };
    }
    session = decision.events.reduce(evolve, session);
    return { ok: true, session };
  }

  return {
    session: () => session,
    perform,
    path: () => path,
    head: () => ({ seq: session.events.length, hash: '' }),
    isElsewhere: () => false,
    continueIn: (folder) => {
      if (folder === '/nowhere')
        return {
          ok: false,
          words: 'That folder cannot be written.',
          fix: 'Choose another.',
          refusal: null,
          disk: true,
        };
      path = `${folder}/dray-no-start.part2.jsonl`;
      full = 0;
      return refused ? perform(refused) : { ok: true, session };
    },
    unsaved: () => null,
    vehicleShows: () => (bench ? vehicleAnswer(session) : null),
    close: () => {
      isClosed = true;
    },
    fillDisk: (commands) => {
      full = commands;
    },
    events: () => session.events,
    closed: () => isClosed,
  };
}

function vehicleAnswer(session: Session): VehicleAnswer | null {
  switch (presentStep(session)?.kind) {
    case undefined:
      return null;
    case 'measure':
      return {
        words: 'the meter shows 0.02 V',
        answer: { kind: 'reading', typed: '0.02 V', value: 0.02 },
      };
    case 'look':
      return {
        words: 'the light is dim',
        answer: { kind: 'outcome', outcome: 'weak', look: 'dim' },
      };
    case 'ask':
      return {
        words: 'the speed stays at zero',
        answer: { kind: 'outcome', outcome: 'no', look: null },
      };
    case 'act':
    case 'conclude':
      return { words: 'nothing to read', answer: { kind: 'done' } };
  }
}

const GROUND_TEST: Test = {
  setup: KEY_ON,
  probe: { kind: 'volts', plus: 'sensor.ground', minus: 'battery.negative' },
};

const proposal = (id: string, words: string, rest: Partial<Proposal>): Proposal => ({
  id,
  words,
  test: GROUND_TEST,
  step: null,
  minutes: 2,
  needs: ['meter'],
  shows: [
    { suspect: 'mend the feed wire', faults: ['wire.feed.open'], shown: '12 to 15 mV' },
    {
      suspect: 'clean the ground joint',
      faults: ['contact.sensor.ground.resistive'],
      shown: '0.8 to 3 V',
    },
  ],
  why: 'It parts feed and ground, which stand level now.',
  bits: 0.8,
  healthy: 'below 0.1 V',
  kind: 'number',
  unit: 'V',
  looks: [],
  expected: { kind: 'number', low: -0.1, high: 0.1 },
  likely: null,
  ...rest,
});

const PROPOSALS: readonly Proposal[] = [
  proposal('ground-volts', 'Voltage from {sensor.ground} to {battery.negative}', {}),
  proposal('feed-light', 'Test light from {sensor.feed} to {battery.negative}', {
    kind: 'look',
    unit: null,
    looks: ['lit', 'dim', 'dark'],
    minutes: 0.5,
    healthy: 'the light is dim',
    expected: { kind: 'look', looks: ['dim'] },
    test: {
      setup: KEY_ON,
      probe: { kind: 'light', plus: 'sensor.feed', minus: 'battery.negative' },
    },
  }),
  proposal('running-volts', 'The same voltage with the engine running', {
    test: { ...GROUND_TEST, setup: { ...KEY_ON, state: 'running', target: 'moving' } },
    minutes: 4,
  }),
];

/** A model that answers by table: enough to see that the screens show what they are given. */
export const FAKE_ADVISOR: Advisor = {
  diagnosis: (session) => ({
    suspects: suspectsOf(session),
    nextTests: PROPOSALS,
    furtherTests: [],
    asleep: null,
    car: null,
    carsLeft: null,
    goodHere: () => null,
    expected: () => ({ kind: 'look', looks: [] }),
    possible: () => null,
    weigh: (faults) => weighed(session, faults),
  }),
  isReady: () => true,
  *prepare() {},
  *prepareWeigh() {},
  suspects: suspectsOf,
  nextTests: () => PROPOSALS,
  weigh: weighed,
};

function weighed(session: Session, faults: readonly string[]): Weighed {
  const proven = standingAnswers(session).length + session.tests.length >= 3;
  const first = session.events.findIndex(
    (event) => isAnswer(event) || event.type === 'test-recorded',
  );
  const reading = first + 1;
  return {
    evidence: first > 0 && faults.length > 0 ? [{ reading, counted: true }] : [],
    ruledOut: first > 0 ? [{ repair: 'module.reference.dead', by: [reading] }] : [],
    proven,
    unexplained: null,
    missing: proven ? 0 : 2,
    left: faults,
    hangsOn: null,
    better: proven ? { kind: 'accept' } : { kind: 'prove', proposal: PROPOSALS[0]! },
    support: 'borne-out',
    chance: 0.5,
    wouldProve: proven ? [] : PROPOSALS.slice(0, 2),
    wouldPlace: [],
  };
}

/** A repeat tells nothing apart. */
const AGAIN: Proposal = { ...PROPOSALS[0]!, bits: null };

/** The same, where a conclusion hangs on the first reading until a second one was made. */
export const HANGING_ADVISOR: Advisor = {
  ...FAKE_ADVISOR,
  weigh: (session, faults) => {
    const found = weighed(session, faults);
    const [first] = found.evidence;
    const isOnce = standingAnswers(session).length + session.tests.length === 1;
    if (!isOnce || !first || !('reading' in first)) return found;
    return {
      ...found,
      hangsOn: first.reading,
      better: { kind: 'repeat', proposal: AGAIN, reading: first.reading, isOdd: false },
    };
  },
};

/** The same, where no conclusion is borne out until a second reading was made. */
export const DOUBTING_ADVISOR: Advisor = {
  ...FAKE_ADVISOR,
  weigh: (session, faults) => {
    const isOnce = standingAnswers(session).length + session.tests.length === 1;
    const found: Weighed = { ...weighed(session, faults), chance: 0.2, support: 'unlikely' };
    return isOnce ? { ...found, better: { kind: 'first', proposal: PROPOSALS[0]! } } : found;
  },
};

/** The same, where the readings speak for the second suspect and for nothing else, and no test is left. */
export const OTHERWISE_ADVISOR: Advisor = {
  ...FAKE_ADVISOR,
  weigh: (session, faults) => {
    const other = { ...suspectsOf(session).rows[1]!, chance: 0.9 };
    const found = weighed(session, faults);
    if (other.faults.some(({ id }) => faults.includes(id))) return { ...found, chance: 0.9 };
    const better: Better = { kind: 'instead', row: other };
    return { ...found, chance: 0.1, support: 'unlikely', better };
  },
};

/** The same, where the last reading of the tree is contradicted by its repeats until it is taken back. */
export const OVERTURNING_ADVISOR: Advisor = {
  ...FAKE_ADVISOR,
  weigh: (session, faults) => {
    const place = session.trail.findLastIndex(({ answer }) => answer !== null);
    const kept = session.answers[session.trail[place]?.answer ?? 0]!;
    const answer = session.events.indexOf(kept.event) + 1;
    const better: Better = { kind: 'take-back', overturned: { place, answer, by: answer } };
    return { ...weighed(session, faults), chance: 0.1, support: 'unlikely', better };
  },
};

/** The same, where a conclusion leaves more repairs than anyone would try, and a test would tell more. */
export const WIDE_ADVISOR: Advisor = {
  ...FAKE_ADVISOR,
  weigh: (session, faults) => ({
    ...{ ...weighed(session, faults), chance: 0.99, proven: false },
    ...{ support: 'too-many', better: { kind: 'first', proposal: PROPOSALS[0]! } },
  }),
};

function suspectsOf(session: Session): SuspectView {
  const isRead = session.answers.length + session.tests.length > 0;
  const row = (words: string, chance: number, id: string) => ({
    repair: id,
    words,
    chance,
    faults: [{ id, words: `${words}: the usual way`, chance }],
  });
  return {
    rows: [
      row('mend the feed wire', isRead ? 0.86 : 0.4, 'wire.feed.open'),
      row('clean the ground joint', isRead ? 0.135 : 0.35, 'contact.sensor.ground.resistive'),
      row('replace the module', isRead ? 0.005 : 0.25, 'module.reference.dead'),
    ],
    changed: isRead ? '"mend the feed wire" rose from 40 to 86 %.' : null,
    intermittent: false,
    unexplained: null,
    unexplainedBy: null,
    group: null,
    groupRepairs: [],
  };
}

const SKETCH: readonly string[] = [
  '┌─ module ───┐                          ┌─ sensor ─┐',
  '│  reference ├───── RD/BU ──────────[R]─┤ 1 feed   │',
  '│     signal ├───── GN ─────────────────┤ 2 signal │',
  '│     ground ├───── BK ─────────────────┤ 3 ground │',
  '└────────────┘                          └──────────┘',
];

export const SMALL_CAPTURE: StepCapture = {
  name: 'crank.csv',
  sha256: '5'.repeat(64),
  from: 'file',
  measures: {
    kind: 'switched',
    unit: 'V',
    samples: 8000,
    seconds: 0.04,
    low: 0.1,
    high: 4.9,
    hertz: 200,
    duty: 50,
    rpm: 200,
  },
  findings: [{ kind: 'missing-teeth', teeth: [17], seen: 57, of: 58 }],
  channels: [
    {
      name: 'sensor.signal',
      unit: 'V',
      from: 0,
      seconds: 0.04,
      points: Array.from({ length: 80 }, (_, at) => (at % 10 < 5 ? 4.9 : 0.1)),
    },
  ],
};

const file = (name: string, bytes: number, ageMs: number): CaptureEntry => ({
  kind: 'file',
  name,
  bytes,
  ageMs,
});
const folder = (name: string): CaptureEntry => ({ kind: 'folder', name, bytes: 0, ageMs: 0 });

/** A long name, one that would turn the rest of its line around, and one that would colour the screen. */
const HOSTILE_NAMES = [
  `${'a-name-without-end-'.repeat(12)}7.csv`,
  '\u202egpj.csv',
  '\x1b[31mred\x1b[2J.csv',
];

const FOLDERS: Readonly<Record<string, CaptureFolder>> = {
  '/data': {
    path: '/data',
    entries: [
      file('crank.csv', 812_345, 90_000),
      file('old-crank.csv', 4_200, 3 * 86_400_000),
      ...HOSTILE_NAMES.map((name) => file(name, 100, 9 * 86_400_000)),
      folder('archive'),
      folder('locked'),
      folder('..'),
    ],
    leftOut: 0,
    problem: null,
  },
  '/data/archive': { path: '/data/archive', entries: [folder('..')], leftOut: 0, problem: null },
  '/data/locked': {
    path: '/data/locked',
    entries: [folder('..')],
    leftOut: 0,
    problem: {
      problem: 'you are not allowed to read this folder',
      fix: 'ask its owner for the right to read it',
    },
  },
};

/** The first of two channels is none that the step asks for. */
function twoChannels(judged: number): CaptureAnswer {
  const channels = { names: ['cam', 'crank'], judged, judge: twoChannels };
  const command: Command = {
    type: 'choose-outcome',
    outcome: 'uneven',
    look: 'uneven',
    capture: SMALL_CAPTURE,
  };
  return judged === 0
    ? { ok: false, words: 'this is none of the outcomes', fix: 'choose by eye', channels }
    : { ok: true, command, capture: SMALL_CAPTURE, lines: ['Looks like: uneven'], channels };
}

/** A small disk. */
const FAKE_FILES: CaptureFiles = {
  begin: () => FOLDERS['/data']!,
  follow: (from, typed) => {
    const path = typed === '..' ? '/data' : typed.startsWith('/') ? typed : `${from}/${typed}`;
    return FOLDERS[path] ?? { file: path };
  },
};

export interface FakeOptions {
  readonly bench?: boolean;
  readonly advisor?: boolean;
  /** Another advisor than the usual one. */
  readonly advice?: Advisor;
  readonly job?: Job;
  /** Begins with a scope picture. */
  readonly scope?: boolean;
  readonly procedure?: Procedure;
  /** No procedure: any test, and a conclusion of one's own. */
  readonly free?: boolean;
  /** What stands before tests that no step asks for. */
  readonly cautionRules?: readonly CautionRule[];
}

const CIRCUIT = shipped('hall-module-fed');
let known: Model | null = null;
/** Few samples, since only words and refusals of it are looked at. */
function smallModel(): Model {
  known ??= createModel(CIRCUIT, { samples: 4, seed: 1, meter: STANDARD_SETTINGS.meter });
  return known;
}

export function fakeSession(options: FakeOptions = {}): {
  opened: OpenedSession;
  driver: FakeDriver;
} {
  const driver = fakeDriver(
    options.job ?? SMALL_JOB,
    options.bench ?? false,
    options.free
      ? null
      : (options.procedure ?? (options.scope ? SCOPE_PROCEDURE : SMALL_PROCEDURE)),
    options.advisor === false ? null : CIRCUIT,
    options.cautionRules,
  );
  const bind = (text: string) =>
    text.replace(/\{([a-z.]+)\}/g, (_, id: string) => PLACES[id] ?? id);
  return {
    driver,
    opened: {
      driver,
      isAsFiled: () => false,
      name: () => basename(driver.path(), '.jsonl'),
      advisor: options.advisor === false ? null : (options.advice ?? FAKE_ADVISOR),
      model: options.advisor === false ? null : smallModel(),
      drill: null,
      sketch: () => (options.advisor === false ? [] : SKETCH),
      bind,
      terminalWords: (id) => PLACES[id] ?? id,
      limits: (step) =>
        step.unit === 'V'
          ? { low: -30, high: 30, because: 'this vehicle has a 12 V system' }
          : null,
      estimate: (said) => (said.includes('2 h') ? 'Estimate: 192.00 EUR.' : null),
      call: () => ({ sentences: ['We found this.'], prices: ['Work: 96.00 EUR an hour.'] }),
      benchShows: ({ probe }) =>
        !options.bench
          ? null
          : probe.kind === 'light'
            ? {
                words: 'the light is dim',
                answer: { kind: 'outcome', outcome: 'dim', look: 'dim' },
              }
            : {
                words: 'the meter shows 13.1 mV',
                answer: { kind: 'reading', typed: '13.1 mV', value: 0.0131 },
              },
      repaired: options.bench
        ? {
            fault: 'healthy',
            answers: (step) =>
              step.kind === 'measure'
                ? { words: '5 V', answer: { kind: 'reading', typed: '5 V', value: 5 } }
                : null,
          }
        : null,
      scopeLine: () => null,
      captures: FAKE_FILES,
      goodCaptures: {
        offered: () => null,
        canKeep: () => false,
        keep: async () => ({ vehicle: '', kept: [], left: [] }),
      },
      measureCapture: async (ask, path): Promise<CaptureAnswer> =>
        path === '/data/two.csv'
          ? twoChannels(0)
          : path === '/data/nowhere.csv'
            ? { ok: false, words: 'there is no such file', fix: 'check the name and the rights' }
            : {
                ok: true,
                capture: SMALL_CAPTURE,
                command:
                  ask.kind === 'test'
                    ? {
                        type: 'record-test',
                        test: ask.test,
                        expected: ask.expected,
                        typed: '2.5 V',
                        shown: { kind: 'number', value: 2.5, unit: 'V' },
                        capture: {
                          ...SMALL_CAPTURE,
                          measures: { ...SMALL_CAPTURE.measures, mean: 2.5 },
                        },
                      }
                    : {
                        type: 'choose-outcome',
                        outcome: 'uneven',
                        look: 'uneven',
                        capture: SMALL_CAPTURE,
                      },
                lines: [
                  `${path?.split('/').at(-1) ?? 'bench.csv'}: switched, 0.1 V and 4.9 V, 200 Hz`,
                  ...capturedFindingWords(SMALL_CAPTURE),
                  'Looks like: uneven',
                ],
              },
      sums: () => [
        {
          name: 'wire',
          title: 'The feed wire',
          lines: [
            ['resistance', '0.1 ohm'],
            ['drop at 8 mA', '0.8 mV'],
          ],
          typed: 'wire --size "0.5 mm2" --length "3 m"',
        },
      ],
      calculate: async (line) => [`done: ${line}`],
    },
  };
}

const SAVED: readonly SavedSession[] = [
  {
    path: 'sessions/b.jsonl',
    words: 'Marrow Dray, no start',
    when: '2030-01-01 16:20',
    status: 'paused',
    simulated: false,
    begun: true,
  },
  {
    path: 'sessions/a.jsonl',
    words: 'Tern 2, stalls hot',
    when: '2029-12-30 09:02',
    status: 'closed',
    simulated: true,
    begun: true,
  },
];

export interface FakeServices extends AppServices {
  readonly opens: SessionChoice[];
  readonly resumed: string[];
  readonly sessions: FakeDriver[];
}

/** The program's surroundings, with what was asked of them. */
export function fakeServices(clock: FakeClock, options: { problem?: Problem } = {}): FakeServices {
  let settings: Settings = STANDARD_SETTINGS;
  const opens: SessionChoice[] = [];
  const resumed: string[] = [];
  const sessions: FakeDriver[] = [];
  const opened = async (bench: boolean, job: Job) => {
    if (options.problem) return options.problem;
    const fake = fakeSession({ bench, job });
    sessions.push(fake.driver);
    return fake.opened;
  };
  return {
    opens,
    resumed,
    sessions,
    clock: clock.now,
    more: [],
    listProcedures: () => [
      {
        file: 'procedures/small.yaml',
        title: SMALL_PROCEDURE.title,
        about: SMALL_PROCEDURE.about,
        codes: ['P0335'],
        circuit: 'small-circuit',
      },
      {
        file: 'procedures/pedal.yaml',
        title: 'Pedal sensor, limp home',
        about: 'For a pedal with two tracks.',
        codes: ['P2122', 'P2123', 'P2124', 'P2127'],
        circuit: null,
      },
    ],
    listDemoJobs: () => [
      {
        file: 'jobs/dray.yaml',
        words: 'Marrow Dray, an invented van',
        complaint: SMALL_JOB.complaint,
        sensor: 'crankshaft sensor',
        procedure: 'procedures/small.yaml',
        job: SMALL_JOB,
        fault: null,
        intermittent: false,
      },
    ],
    listSessions: () => SAVED.map((saved) => () => saved),
    newestSessions: () => ({ sessions: SAVED, count: SAVED.length }),
    terminalsOf: () => [
      { id: 'sensor.feed', words: 'sensor feed' },
      { id: 'sensor.ground', words: 'sensor ground' },
    ],
    circuitOf: () => null,
    replaceablesOf: () => [{ id: 'sensor', words: 'crankshaft sensor' }],
    benchFaults: () => [
      { id: 'healthy', words: 'nothing, it is healthy' },
      { id: 'wire.feed.open', words: 'feed wire open' },
    ],
    open: (choice) => {
      opens.push(choice);
      return opened(choice.vehicle.kind === 'bench', choice.job);
    },
    resume: (path) => {
      resumed.push(path);
      return opened(false, SMALL_JOB);
    },
    settings: {
      path: '~/.config/ohmward/config.json',
      values: () => settings,
      set: (key, value) => {
        if (key === 'sessions' && value === '/nowhere') return 'that folder is not there';
        settings = { ...settings, [key]: value };
        return null;
      },
    },
  };
}
