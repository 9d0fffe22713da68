import { describe, expect, test } from 'vitest';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { levelNamed } from '../../src/drill/levels.ts';
import { verifyDrill } from '../../src/drill/verify-drill.ts';
import { RULES, type SessionEvent } from '../../src/session/events.ts';
import { hash, newDrill, perfectStudent, when } from './students.ts';

const done = (() => {
  const begun = newDrill(36, { circuit: 'reluctor-two-wire' });
  perfectStudent(begun);
  return begun.driver.session().events;
})();

type Loose = Record<string, unknown>;

/** The events with the first of that type changed; of tests the first that showed a number. */
function edited(type: SessionEvent['type'], change: (event: Loose) => void): SessionEvent[] {
  const at = done.findIndex(
    (event) =>
      event.type === type && (event.type !== 'test-recorded' || event.shown.kind === 'number'),
  );
  return done.map((event, index) => {
    if (index !== at) return event;
    const copy: SessionEvent & Loose = structuredClone(event) as SessionEvent & Loose;
    change(copy);
    return copy;
  });
}

describe('a drill as it was written', () => {
  test('is true', () => {
    expect(verifyDrill(done, hash)).toEqual({ verdict: 'true', problems: [] });
  });
  test('is open while it goes on', () => {
    const events = done.slice(0, -2);
    expect(verifyDrill(events, hash)).toEqual({ verdict: 'open', problems: [] });
  });
});

// The chain of hashes would name the changed line too; these are edits by someone who computed it anew.
test.each<[string, SessionEvent[], string]>([
  [
    'another seed',
    edited('session-opened', (event) => {
      event['vehicle'] = { ...(event['vehicle'] as object), seed: 22 };
    }),
    'commitment is not that of the seed',
  ],
  [
    'another commitment',
    edited('session-opened', (event) => {
      event['vehicle'] = { ...(event['vehicle'] as object), commitment: '0'.repeat(64) };
    }),
    'commitment',
  ],
  [
    'a nicer reading',
    edited('test-recorded', (event) => {
      event['shown'] = { kind: 'number', value: 5.125, unit: 'V' };
    }),
    'shows something else',
  ],
  [
    'another answer',
    edited('answer-revealed', (event) => {
      event['faults'] = ['wire.nothing'];
    }),
    'does not match the commitment',
  ],
  [
    'another salt',
    edited('answer-revealed', (event) => {
      event['salt'] = '00';
    }),
    'does not match the commitment',
  ],
  [
    'more points',
    edited('answer-revealed', (event) => {
      event['points'] = 1000;
    }),
    'score does not match the readings',
  ],
  [
    'fewer minutes',
    edited('answer-revealed', (event) => {
      event['minutes'] = 0.5;
    }),
    'the minutes are not those of the readings',
  ],
  [
    'another diagnosis',
    edited('concluded', (event) => {
      event['faults'] = ['target.gap'];
    }),
    'score does not match the readings',
  ],
  [
    'no diagnosis',
    done.filter(({ type }) => type !== 'concluded'),
    'revealed before the diagnosis',
  ],
  [
    'a reading left out',
    done.filter((event) => event !== done.find(({ type }) => type === 'test-recorded')),
    'the minutes are not those of the readings',
  ],
  [
    'a test stopped that was fine',
    done.flatMap((event): SessionEvent[] => {
      if (event.type !== 'test-recorded') return [event];
      const { test: made, at, elapsed } = event;
      return [{ type: 'test-stopped', test: made, hazard: 'clipped-in', at, elapsed }, event];
    }),
    'would not have stopped',
  ],
])('%s is found out', (_name, events, words) => {
  const { verdict, problems } = verifyDrill(events, hash);
  expect(verdict).toBe('false');
  expect(problems.map((problem) => problem.words).join('\n')).toContain(words);
});

test('good values that the level hides give a milder one away', () => {
  const shown = done.map((event) =>
    event.type === 'test-recorded'
      ? { ...event, expected: { kind: 'number', low: 1, high: 2 } as const }
      : event,
  );
  const [first] = done;
  const hides =
    first?.type === 'session-opened' &&
    first.vehicle.kind === 'drill' &&
    !levelNamed(first.vehicle.level).expected;
  const asBlind = shown.map((event) =>
    event.type === 'session-opened' && event.vehicle.kind === 'drill' && !hides
      ? { ...event, vehicle: { ...event.vehicle, level: 'blind' as const } }
      : event,
  );
  expect(verifyDrill(asBlind, hash).problems.map(({ words }) => words)).toContain(
    'what is good was shown, which this level hides',
  );
});

describe('a drill with a dangerous test', () => {
  const events = (() => {
    const begun = newDrill(36, { circuit: 'reluctor-two-wire' });
    const { circuit } = begun.driver.session().opened;
    const made = standardTests(circuit!).find(({ test: one }) => one.probe.kind === 'ohms')!.test;
    const live = { ...made, setup: { ...made.setup, state: 'key-on' as const } };
    begun.drill!.act({ type: 'make-test', test: live });
    perfectStudent(begun);
    return begun.driver.session().events;
  })();

  test('is capped, and is true', () => {
    expect(events.some(({ type }) => type === 'test-stopped')).toBe(true);
    expect(pointsOf(events)).toBe(50);
    expect(verifyDrill(events, hash)).toEqual({ verdict: 'true', problems: [] });
  });

  test('from before there was a cap is told with the score of today', () => {
    const before = events.map((event) => {
      if (event.type !== 'answer-revealed') return event;
      const score = event.score.filter(({ name }) => name !== 'danger');
      return { ...event, score, points: score.reduce((sum, { points }) => sum + points, 0) };
    });
    expect(verifyDrill(before, hash)).toMatchObject({
      verdict: 'true',
      scoredOtherwise: { was: pointsOf(before), today: 50, rules: RULES },
    });
    const more = before.map((event) =>
      event.type === 'answer-revealed' ? { ...event, points: 100 } : event,
    );
    expect(verifyDrill(more, hash).verdict).toBe('false');
  });
});

/** Of each type, all that stands beside the vehicle: it is asked about tests, steps, stops and the reveal alone. */
type Beside = Exclude<
  SessionEvent['type'],
  | 'session-opened'
  | 'test-recorded'
  | 'reading-recorded'
  | 'look-recorded'
  | 'test-stopped'
  | 'answer-revealed'
>;
const noted = when(500);
const anyTest = done.find(({ type }) => type === 'test-recorded') as Extract<
  SessionEvent,
  { type: 'test-recorded' }
>;
const [opening] = done as readonly [Extract<SessionEvent, { type: 'session-opened' }>];
// A table by type, so that the compiler asks for the line of a type that is new.
const beside: { readonly [Type in Beside]: Omit<Extract<SessionEvent, { type: Type }>, 'type'> } = {
  'caution-acknowledged': { step: null, state: 'key-on', cautions: [], ...noted },
  'step-done': { step: 'look', go: 'end', ...noted },
  'step-impossible': { step: 'look', reason: 'rusted', go: 'end', ...noted },
  'step-reopened': { step: 'look', answer: 0, ...noted },
  'test-set-aside': { test: anyTest.test, aside: true, ...noted },
  'connector-set-aside': { part: 'sensor', aside: true, reason: 'behind the engine', ...noted },
  'state-set-aside': { state: 'running', aside: true, reason: 'does not start', ...noted },
  'value-set': {
    quantity: 'battery.volts',
    is: null,
    typed: '',
    from: { kind: 'measured', words: '' },
    ...noted,
  },
  'value-taken-back': { set: 3, ...noted },
  'short-placed': {
    stretch: {
      wire: 'high',
      touches: 'battery.negative',
      from: 'sensor.high.pin',
      to: 'module.high.pin',
    },
    unplugged: ['sensor', 'module'],
    typed: '1 V, 1 V',
    drops: {
      fedFromVolts: 1,
      fedToVolts: 1,
      fedFromAmps: null,
      fedToAmps: null,
      lengthMetres: null,
    },
    place: {
      share: 0.5,
      metres: 1,
      lowMetres: 0.9,
      highMetres: 1.1,
      lengthMetres: 2,
      told: true,
    },
    ...noted,
  },
  'waking-watched': {
    ...{ step: 'wake', place: null, typed: '3', unit: null, least: null, most: null },
    ...{ drops: 3, minutes: 2 },
    ...noted,
  },
  'note-added': { step: null, text: 'green at the pins', ...noted },
  'instruments-changed': {
    instruments: opening.instruments,
    meter: opening.meter,
    ...noted,
  },
  'session-paused': noted,
  'session-resumed': { program: 'test', format: 2, rules: RULES, by: 'person', ...noted },
  concluded: {
    ...{ conclusion: null, ownWords: 'no fault found', faults: [], evidence: [], ruledOut: [] },
    ...{ proven: null },
    ...noted,
  },
  'caution-passed-over': { cautions: ['moving-parts'], ...noted },
  'retest-recorded': {
    ...{ step: 'again', typed: '', value: null, look: null, outcome: 'fine', passed: true },
    ...noted,
  },
  'retest-impossible': { step: 'again', reason: 'no time', ...noted },
  'session-closed': { verdict: 'cured', ...noted },
  'drive-reported': { code: 'stayed-away', words: '', ...noted },
  'work-answered': { answer: 'authorised', by: 'the customer', words: '', ...noted },
  recovered: { bytes: 12, hash: '0'.repeat(64), file: 'torn', ...noted },
  'segment-continued': { continues: '0'.repeat(64), file: 'before', ...noted },
};

test.each(Object.entries(beside))('%s is no affair of the vehicle', (type, rest) => {
  const at = done.findIndex((event) => event.type === 'concluded');
  const event = { type, ...rest } as SessionEvent;
  const events = [...done.slice(0, at), event];
  expect(verifyDrill(events, hash)).toEqual({ verdict: 'open', problems: [] });
});

test('what is no drill is called so', () => {
  expect(verifyDrill([], hash).verdict).toBe('false');
  expect(verifyDrill(done.slice(1), hash).verdict).toBe('false');
});

describe('a score that other rules gave', () => {
  const part = (event: Loose) => {
    const score = event['score'] as { points: number }[];
    event['score'] = score.map((one, at) => (at === 0 ? { ...one, points: one.points - 3 } : one));
    event['points'] = (event['points'] as number) - 3;
  };
  const scored = edited('answer-revealed', part);
  const today = pointsOf(done);
  const by = (rules: number) =>
    scored.map((event) => (event.type === 'session-opened' ? { ...event, rules } : event));

  test('is told and no damage', () => {
    expect(verifyDrill(by(1), hash)).toEqual({
      verdict: 'true',
      problems: [],
      scoredOtherwise: { seq: done.length, rules: 1, was: today - 3, today },
      notCompared: 1,
    });
    expect(verifyDrill(by(RULES), hash).verdict).toBe('false');
  });

  test('is not told where it is the same as today', () => {
    const same = done.map((event) =>
      event.type === 'session-opened' ? { ...event, rules: 1 } : event,
    );
    expect(verifyDrill(same, hash)).not.toHaveProperty('scoredOtherwise');
    expect(verifyDrill(same, hash).notCompared).toBe(1);
  });

  test('still names the answer that the seed gives, and sums', () => {
    const lied = by(1).map((event) =>
      event.type === 'answer-revealed' ? { ...event, right: !event.right, points: 1000 } : event,
    );
    expect(verifyDrill(lied, hash).problems.map(({ words }) => words)).toEqual([
      'the parts of the score do not sum to it',
      'the diagnosis is judged wrongly',
    ]);
  });
});

function pointsOf(events: readonly SessionEvent[]): number {
  const last = events.at(-1);
  return last?.type === 'answer-revealed' ? last.points : 0;
}
