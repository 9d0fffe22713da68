/** A small tree of our own and a session over it, for the tests of this room. */
import { expect } from 'vitest';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { canonicalJson } from '../../src/log/canonical-json.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import {
  RULES,
  SESSION_FORMAT,
  type SessionEvent,
  type SessionOpened,
  type When,
} from '../../src/session/events.ts';
import { evolve, openSession, replay } from '../../src/session/evolve.ts';
import type { Session } from '../../src/session/session.ts';
import { KEY_ON } from '../circuit/setup.ts';

const CRANKING = { ...KEY_ON, state: 'cranking', target: 'moving' } as const;
const LIVE = {
  id: 'live',
  word: 'CAUTION',
  say: 'The circuits are live.',
  hazards: ['energised-circuit'],
} as const;
const TURNS = {
  id: 'turns',
  word: 'WARNING',
  say: 'The engine turns.',
  hazards: ['rotating-parts'],
} as const;

const base = { family: 'reference', why: 'because', minutes: 1, cannot: null } as const;

const STEPS: Step[] = [
  {
    ...base,
    kind: 'act',
    id: 'prepare',
    title: 'Prepare',
    say: 'Chock the wheels.',
    setup: { ...KEY_ON, state: 'key-off' },
    cautions: [],
    go: 'feed',
  },
  {
    ...base,
    kind: 'measure',
    id: 'feed',
    title: 'Feed',
    say: 'Red lead on {sensor.feed}.',
    setup: KEY_ON,
    cautions: [LIVE],
    cannot: 'pattern',
    probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
    unit: 'V',
    expected: { low: 4.75, nominal: 5, high: 5.25, from: 'author' },
    outcomes: [
      { name: 'low', words: 'too low', from: null, to: 4.75, go: 'pattern' },
      { name: 'good', words: 'right', from: 4.75, to: 5.25, go: 'pattern' },
      { name: 'high', words: 'too high', from: 5.25, to: null, go: 'shorted' },
    ],
  },
  {
    ...base,
    kind: 'look',
    id: 'pattern',
    title: 'Pattern',
    family: 'pattern',
    say: 'Look at the scope.',
    setup: CRANKING,
    cautions: [TURNS, LIVE],
    probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
    expected: ['full'],
    outcomes: [
      { name: 'full', words: 'toggles', looks: ['full'], go: 'fine' },
      {
        name: 'none',
        words: 'does not toggle',
        looks: ['weak', 'uneven', 'flat-high', 'flat-middle', 'flat-low'],
        go: 'broken',
      },
    ],
  },
  {
    kind: 'conclude',
    id: 'shorted',
    title: 'Shorted',
    faults: ['wire.feed.short-to-battery'],
    say: 'It touches.',
    repair: 'Part them.',
    customer: '',
    retest: ['feed'],
  },
  {
    kind: 'conclude',
    id: 'broken',
    title: 'Broken',
    faults: ['wire.signal.open'],
    say: 'It is open.',
    repair: 'Mend it.',
    customer: '',
    retest: ['pattern'],
  },
  {
    kind: 'conclude',
    id: 'fine',
    title: 'Nothing found',
    faults: [],
    say: 'All is well.',
    repair: 'Nothing.',
    customer: '',
    retest: [],
  },
];

export const TREE: Procedure = {
  name: 'sample',
  title: 'A sample tree',
  about: '',
  circuit: null,
  codes: [],
  start: 'prepare',
  steps: Object.fromEntries(STEPS.map((step) => [step.id, step])),
};

/** The same with an engine that never turns, so that a file of it lacks no caution and is gone on with. */
export const STILL_TREE: Procedure = {
  ...TREE,
  steps: Object.fromEntries(
    STEPS.map((step): [string, Step] => [
      step.id,
      step.kind === 'conclude' ? step : { ...step, setup: { ...step.setup, state: 'key-on' } },
    ]),
  ),
};

/** The n-th second of the test's day. */
export function when(second: number): When {
  return {
    at: `2031-05-06T09:00:${String(second).padStart(2, '0')}.000+02:00`,
    elapsed: second * 1000,
  };
}

export function opened(
  procedure: Procedure | null = TREE,
  more: Partial<SessionOpened> = {},
): SessionOpened {
  return {
    type: 'session-opened',
    format: SESSION_FORMAT,
    rules: RULES,
    program: 'ohmward test',
    by: 'person',
    id: 'sample',
    person: 'R. Example',
    shop: 'Sample Garage',
    instruments: ['meter', 'scope'],
    meter: STANDARD_SETTINGS.meter,
    job: emptyJob('stalls when warm'),
    procedure,
    circuit: null,
    cautionRules: [],
    vehicle: { kind: 'real' },
    ...when(0),
    ...more,
  };
}

/** The session after the commands, a second each; saved, reloaded and replayed it is the same, whatever they are. */
export function sessionAfter(
  commands: readonly Command[],
  procedure: Procedure | null = TREE,
  more: Partial<SessionOpened> = {},
): Session {
  let session = openSession(opened(procedure, more));
  for (const [index, command] of commands.entries()) {
    const decision = decide(session, command, when(index + 1));
    if (!decision.ok) throw new Error(`${command.type} was refused: ${decision.refusal.code}`);
    session = decision.events.reduce(evolve, session);
  }
  const reloaded = session.events.map((event) => JSON.parse(canonicalJson(event)) as SessionEvent);
  expect(replay(reloaded)).toEqual(session);
  return session;
}
