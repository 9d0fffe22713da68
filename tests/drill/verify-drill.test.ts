import { describe, expect, test } from 'vitest';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import { levelNamed } from '../../src/drill/levels.ts';
import { verifyDrill } from '../../src/drill/verify-drill.ts';
import { RULES, type SessionEvent } from '../../src/session/events.ts';
import { hash, newDrill, perfectStudent } from './students.ts';

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
