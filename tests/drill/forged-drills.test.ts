/**
 * A whole drill with something in it changed and the chain of hashes made again, as one does who has the program's own
 * code: `records verify` finds what can be derived, the class with assignment and library at hand the rest.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { classReport } from '../../src/commands/drill/class-report.ts';
import { loadAssignment, seedFor } from '../../src/drill/assignment.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { verifySession } from '../../src/records/verify-session.ts';
import { RULES, type SessionEvent, type SessionOpened } from '../../src/session/events.ts';
import { writeDrill } from './drill-files.ts';
import { SHORT } from './short-procedure.ts';
import { hash, knowing, library, newDrill } from './students.ts';

const folder = mkdtempSync(join(tmpdir(), 'ohmward-forged-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ASSIGNMENT = loadAssignment(
  'assignment: week-3\ndrills:\n  - { procedure: hall-module-fed, level: unnamed, limit-minutes: 30 }\n',
  'week.yaml',
).value!;
const NOTE = { name: 'week-3', part: 1, limitMinutes: 30 };
const STUDENT = 'Ada Example';

function drillOf(student: string, seed: number): readonly SessionEvent[] {
  const begun = newDrill(seed, { student, assignment: NOTE });
  knowing(begun);
  return begun.driver.session().events;
}

const done = drillOf(STUDENT, seedFor(ASSIGNMENT, 1, STUDENT, hash));
const [first] = done;
const opened = first as SessionOpened;
if (opened.vehicle.kind !== 'drill') throw new Error('this is not a drill');
const vehicle = opened.vehicle;

type Change = (event: SessionEvent) => SessionEvent[];

/** The events with the opening changed. */
const begunAs = (more: object): SessionEvent[] => [{ ...opened, ...more }, ...done.slice(1)];
/** The events with each of a type put through `change`. */
const eachOf = (type: SessionEvent['type'], change: Change): SessionEvent[] =>
  done.flatMap((event) => (event.type === type ? change(event) : [event]));
/** The events with a key of every one of a type changed. */
const withKey = (type: SessionEvent['type'], more: object): SessionEvent[] =>
  eachOf(type, (event) => [{ ...event, ...more } as SessionEvent]);

let files = 0;
/** What is found in the events: whether the file alone shows it, and by what the class does. */
function found(events: readonly SessionEvent[], ...others: (readonly SessionEvent[])[]) {
  files += 1;
  const home = join(folder, String(files));
  const path = join(home, 'a.jsonl');
  writeDrill(path, events);
  for (const [at, other] of others.entries()) writeDrill(join(home, `other-${at}.jsonl`), other);
  const verified = verifySession(nodeDisk, path);
  const report = classReport(home, {
    circuits: library.circuits,
    assignment: ASSIGNMENT,
    procedureOf: () => SHORT,
    cautions: opened.cautionRules,
  });
  if ('words' in report) throw new Error(report.words);
  const kinds = report.doubtful.filter(({ file }) => file === 'a.jsonl').map(({ kind }) => kind);
  const words = verified.checks.map((check) => check.words).join('\n');
  return { genuine: verified.genuine, kinds, words };
}

describe('a drill as it was done', () => {
  it('is genuine, and the class has nothing to say', () => {
    expect(found(done)).toMatchObject({ genuine: true, kinds: [] });
  });
});

describe('what the file alone shows', () => {
  it.each<[string, SessionEvent[]]>([
    ['another level', begunAs({ vehicle: { ...vehicle, level: 'named' } })],
    ['a level with more faults', begunAs({ vehicle: { ...vehicle, level: 'double' } })],
    ['another seed', begunAs({ vehicle: { ...vehicle, seed: vehicle.seed + 1 } })],
    ['another earlier repair', begunAs({ vehicle: { ...vehicle, earlierRepair: 'sensor.new' } })],
    ['no cautions that were read', eachOf('caution-acknowledged', () => [])],
    [
      'cautions of another kind',
      withKey('caution-acknowledged', {
        cautions: [{ id: 'lax', word: 'CAUTION', text: 'Nothing to mind.' }],
      }),
    ],
    ['all points', withKey('answer-revealed', { points: 1000 })],
    ['one point more', eachOf('answer-revealed', (event) => [moreOf(event, 'points', 2)])],
    ['fewer minutes', withKey('answer-revealed', { minutes: 1 })],
    [
      'a slower best student',
      eachOf('answer-revealed', (event) => [moreOf(event, 'yardstickMinutes', 60)]),
    ],
    ['a wrong answer that is right', withKey('concluded', { faults: ['target.gap'] })],
    ['times that run backwards', timesOf((elapsed) => 1_000_000 - elapsed)],
    ['no test at all', eachOf('test-recorded', () => [])],
  ])('%s', (_name, events) => {
    expect(events).not.toEqual(done);
    const { genuine, kinds } = found(events);
    expect(genuine).toBe(false);
    expect(kinds).toContain('altered');
  });

  it('the words do not give away the score that would be believed', () => {
    const revealed = done.find(({ type }) => type === 'answer-revealed') as unknown as {
      points: number;
      minutes: number;
      score: readonly { points: number }[];
    };
    for (const forged of [
      withKey('answer-revealed', { points: 1000 }),
      withKey('answer-revealed', { minutes: 0.5 }),
      withKey('answer-revealed', { score: revealed.score.map((one) => ({ ...one, points: 1 })) }),
    ]) {
      const { words, genuine } = found(forged);
      expect(genuine).toBe(false);
      expect(words).not.toMatch(new RegExp(`\\b(${revealed.points}|${revealed.minutes})\\b`));
    }
  });
});

describe('what the class shows, with assignment and library at hand', () => {
  it.each<[string, SessionEvent[], string]>([
    ['another procedure', begunAs({ procedure: { ...SHORT, title: 'Mine' } }), 'other-procedure'],
    ['milder cautions', begunAs({ cautionRules: [] }), 'other-cautions'],
    ['no assignment', begunAs({ vehicle: { ...vehicle, assignment: null } }), 'other-drill'],
    [
      'more time',
      begunAs({ vehicle: { ...vehicle, assignment: { ...NOTE, limitMinutes: 300 } } }),
      'other-drill',
    ],
    [
      'another part',
      begunAs({ vehicle: { ...vehicle, assignment: { ...NOTE, part: 2 } } }),
      'other-drill',
    ],
    ['another name', begunAs({ person: 'Bo Example' }), 'other-drill'],
  ])('%s', (_name, events, kind) => {
    const { genuine, kinds } = found(events);
    // Either of the two; the class must name it whatever the file alone shows.
    expect(kinds).toContain(genuine ? kind : 'altered');
  });

  it.each<[string, SessionEvent[]]>([
    ['from the beginning', begunAs({ rules: RULES - 1 })],
    [
      'from a resumption before the end',
      eachOf('concluded', (event) => [
        { type: 'session-paused', at: event.at, elapsed: event.elapsed },
        {
          ...{ type: 'session-resumed', at: event.at, elapsed: event.elapsed },
          ...{ program: opened.program, format: opened.format, rules: RULES - 1, by: opened.by },
        } as SessionEvent,
        event,
      ]),
    ],
  ])('earlier rules, under which readings and points are not derived again, %s', (_, events) => {
    const points = (event: SessionEvent) => moreOf(event, 'minutes', -1);
    const forged = events.map((event) =>
      event.type === 'answer-revealed' ? points(event) : event,
    );
    const { genuine, kinds } = found(forged);
    expect([genuine, kinds]).toEqual([true, ['other-rules']]);
  });

  it('an easier level that was really driven is none that was set', () => {
    const begun = newDrill(vehicle.seed, { student: STUDENT, assignment: NOTE, level: 'named' });
    knowing(begun);
    const { genuine, kinds } = found(begun.driver.session().events);
    expect(genuine).toBe(true);
    expect(kinds).toContain('other-drill');
  });

  it('the drill of another student under one’s own name', () => {
    const bo = drillOf('Bo Example', seedFor(ASSIGNMENT, 1, 'Bo Example', hash));
    const stolen = bo.map((event) =>
      event.type === 'session-opened' ? { ...event, person: STUDENT } : event,
    );
    expect(found(stolen, bo).kinds.length).toBeGreaterThan(0);
  });
});

describe('what nothing shows, as docs/security.md says', () => {
  it('a clock that ran at another pace: it counts for nothing', () => {
    const slower = timesOf((elapsed) => 3 * elapsed);
    expect(found(slower)).toMatchObject({ genuine: true, kinds: [] });
    const pointsOf = (events: readonly SessionEvent[]) =>
      events.find(({ type }) => type === 'answer-revealed');
    expect(pointsOf(slower)).toMatchObject({
      points: (pointsOf(done) as { points?: number }).points,
    });
  });
});

function timesOf(change: (elapsed: number) => number): SessionEvent[] {
  return done.map((event) => ({ ...event, elapsed: change(event.elapsed) }));
}

function moreOf(event: SessionEvent, key: string, more: number): SessionEvent {
  const value = (event as unknown as Record<string, unknown>)[key];
  return { ...event, [key]: typeof value === 'number' ? value + more : more } as SessionEvent;
}
