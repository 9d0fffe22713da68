/** Files that earlier versions wrote, read by this one: the very files in `versions/`, which those programs made. */
import {
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionFile, resumeSessionFile } from '../../src/log/read-session-file.ts';
import { driveSession } from '../../src/log/session-driver.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { transcriptOf } from '../../src/records/transcript.ts';
import { verifySession } from '../../src/records/verify-session.ts';
import { RULES, type SessionEvent } from '../../src/session/events.ts';
import { when } from '../session/sample-tree.ts';
import { sealed } from './events.ts';

const FOLDER = 'tests/log/versions';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ohmward-versions-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function read(path: string) {
  const file = readSessionFile(nodeDisk, path);
  if (!file.ok) throw new Error(`${file.problem.problem}; ${file.problem.fix}`);
  return file;
}

function version(name: string) {
  return read(join(FOLDER, `${name}.jsonl`));
}

function all<T extends SessionEvent['type']>(events: readonly SessionEvent[], type: T) {
  return events.filter((event): event is Extract<SessionEvent, { type: T }> => event.type === type);
}

describe.each(readdirSync(FOLDER))('%s', (name) => {
  const path = join(FOLDER, name);

  it('is read, judged by the first rules, and makes a record', () => {
    const { session, events, head, log, judgedOtherwise } = read(path);
    expect(session.opened).toMatchObject({ format: 2, rules: 1 });
    expect(events).toHaveLength(log.events.length);
    expect(head).toEqual({ seq: events.length, hash: log.head });
    expect(judgedOtherwise).toEqual([]);
    expect(transcriptOf(recordOf(session, head))).toContain(
      session.opened.job.complaint.split(' ')[0],
    );
  });

  it('is genuine, and false with one word changed', () => {
    const { checks } = verifySession(nodeDisk, path);
    expect(checks.filter(({ passed }) => !passed)).toEqual([]);
    // Nothing is said to be compared that was not: what its vehicle showed was drawn by other rules.
    const drill = checks.find((check) => check.name === 'drill');
    if (drill && name.includes('followed'))
      expect(drill.words).toContain('what the vehicle showed under rules 1 is not compared');
    const events = readFileSync(path, 'utf8')
      .trim()
      .split('\n')
      .map((line) => {
        const { seq: _seq, prev: _prev, ...event } = JSON.parse(line);
        return event;
      });
    const at = events.findIndex(({ go }) => typeof go === 'string');
    if (at < 0) return;
    const other = events.map((event, index) =>
      index === at ? { ...event, go: 'nowhere' } : event,
    );
    const copy = join(folder, name);
    writeFileSync(copy, sealed(other).text);
    expect(readSessionFile(nodeDisk, copy)).toMatchObject({ ok: false, flaw: { path: copy } });
  });
});

describe('a session of format 1', () => {
  it('says that who answered is not stated, and what everybody had at hand', () => {
    const { session } = version('session-1-tree');
    expect(session.opened).toMatchObject({
      by: 'not-stated',
      cautionRules: [],
      vehicle: { kind: 'bench' },
    });
    expect(session.opened.instruments).toEqual([
      'meter',
      'test-light',
      'scope',
      'helper',
      'live-data',
      'lead',
    ]);
  });

  it('a test outside the tree is a test, with what was expected and how it was judged', () => {
    const { events } = version('session-1-tree');
    expect(all(events, 'test-recorded')).toMatchObject([
      { typed: '0.8 mV', expected: { kind: 'number' }, judgement: { verdict: 'low', chance: 0 } },
      { typed: '4.914 V', judgement: { verdict: 'good' } },
    ]);
    const [look] = all(version('session-1-own-conclusion').events, 'test-recorded');
    expect(look).toMatchObject({
      typed: '',
      shown: { kind: 'look', look: 'sound' },
      judgement: null,
    });
    // The first version kept neither.
    expect(JSON.stringify(events)).not.toContain('below the expected range');
  });

  it("a conclusion of the tree is its name; one of the person's own keeps its faults", () => {
    const [tree] = all(version('session-1-tree').events, 'concluded');
    expect(tree).toMatchObject({ conclusion: 'signal-wire', ownWords: null, proven: false });
    expect(tree?.evidence[0]).toMatchObject({ counted: true, said: { found: '4.921 V' } });
    const [own] = all(version('session-1-own-conclusion').events, 'concluded');
    expect(own).toMatchObject({ conclusion: null, ownWords: null });
    expect(own?.faults.length).toBeGreaterThan(0);
  });

  it.each<[string, string | undefined, string | null]>([
    [' A mouse in the harness ', undefined, 'A mouse in the harness'],
    ['A mouse in the harness', '', 'A mouse in the harness'],
    ['A mouse in the harness', '  ', 'A mouse in the harness'],
    ['A mouse in the harness', ' A mouse in the harness', 'A mouse in the harness'],
    [
      'A mouse in the harness',
      ' wind tape round it ',
      'A mouse in the harness: wind tape round it',
    ],
  ])("the person's own words %j and %j for the repair are %j", (title, repair, words) => {
    const lines = readFileSync(join(FOLDER, 'session-1-own-conclusion.jsonl'), 'utf8').trim();
    const events = lines.split('\n').map((line) => {
      const { seq: _seq, prev: _prev, ...event } = JSON.parse(line);
      if (event.type !== 'concluded') return event;
      const { repair: _repair, ...rest } = event;
      return { ...rest, faults: [], title, ...(repair === undefined ? {} : { repair }) };
    });
    const path = join(folder, 'own-words.jsonl');
    writeFileSync(path, sealed(events).text);
    expect(all(read(path).events, 'concluded')).toMatchObject([{ ownWords: words }]);
  });

  it('what an early version said of a capture is kept as it said it', () => {
    const { events } = version('session-1-captures');
    const captures = events.flatMap((event) =>
      'capture' in event && event.capture ? [event.capture] : [],
    );
    expect(captures).toHaveLength(2);
    for (const { findings } of captures)
      for (const finding of findings) expect(finding).toEqual({ said: expect.any(String) });
    expect(captures.flatMap(({ findings }) => findings).length).toBeGreaterThan(0);
  });

  it('a fault that came and went is intermittent', () => {
    expect(version('session-1-comes-and-goes').session.opened.vehicle).toEqual({
      kind: 'bench',
      fault: 'contact.sensor.signal.open',
      seed: 1,
      intermittent: true,
    });
  });
});

describe('a drill of the time when drills had events of their own', () => {
  it('is a session on a vehicle whose fault is hidden', () => {
    const { session } = version('drill-1-followed');
    expect(session.opened).toMatchObject({
      by: 'answers-file',
      person: 'Fenn Abelard',
      shop: '',
      job: { earlierRepairs: [] },
      vehicle: { kind: 'drill', level: 'named', seed: 7, earlierRepair: null, assignment: null },
    });
    expect(session.opened.job.complaint).toContain('The warning lamp is on');
    expect(session).toMatchObject({ status: 'closed', revealed: { right: true } });
    expect(version('drill-1-given-up').session.opened.job.earlierRepairs).toEqual([
      { words: 'Replace the crankshaft position sensor.', part: null },
    ]);
  });

  it("steps that were followed are answers, and readings of the student's own are tests", () => {
    const { events } = version('drill-1-followed');
    expect(events.map(({ type }) => type)).toEqual([
      'session-opened',
      'caution-passed-over',
      'caution-acknowledged',
      'test-recorded',
      'caution-acknowledged',
      'test-stopped',
      'step-done',
      'note-added',
      'look-recorded',
      'look-recorded',
      'reading-recorded',
      'caution-acknowledged',
      'reading-recorded',
      'caution-acknowledged',
      'look-recorded',
      'caution-acknowledged',
      'test-recorded',
      'session-resumed',
      'caution-acknowledged',
      'test-recorded',
      'concluded',
      'answer-revealed',
    ]);
    expect(events[7]).toMatchObject({ step: 'code', text: 'odd' });
    expect(events[8]).toMatchObject({
      step: 'code',
      look: null,
      outcome: 'circuit',
      go: 'plug/look',
    });
    expect(events[10]).toMatchObject({
      typed: '4.930 V',
      value: 4.93,
      outcome: 'good',
      judgement: null,
    });
    expect(events[17]).toMatchObject({ format: 2, rules: 1, by: 'answers-file' });
  });

  it('a diagnosis names all faults that the repair puts right, and none when it was given up', () => {
    const { events, session } = version('drill-1-followed');
    const [concluded] = all(events, 'concluded');
    const repairs = concluded?.faults.map(
      (id) => session.opened.circuit?.faults.find((fault) => fault.id === id)?.repair,
    );
    expect(new Set(repairs)).toEqual(new Set(['sensor.replace']));
    expect(all(version('drill-1-given-up').events, 'concluded')[0]).toMatchObject({
      faults: [],
      ownWords: null,
    });
  });

  it('a harness that was moved is kept only where it was', () => {
    const [moved, still] = all(version('drill-1-given-up').events, 'test-recorded');
    expect(moved?.test.wiggle).toBe(true);
    expect('wiggle' in still!.test).toBe(false);
  });
});

describe('a file that another version went on with', () => {
  it("today's program goes on with a session of format 1, and reads the whole again", () => {
    const path = join(folder, '20310506T070809Z-lab-00000001.jsonl');
    copyFileSync(join(FOLDER, 'session-1-tree.jsonl'), path);
    const resumed = resumeSessionFile(nodeDisk, path, when(0));
    if (!resumed.ok) throw new Error(resumed.problem.words);
    const driver = driveSession({ ...resumed.value, now: () => when(1), vehicle: null });
    driver.perform({ type: 'resume', program: 'ohmward test', by: 'program' });
    driver.perform({ type: 'add-note', text: 'Years later.' });
    driver.close();
    const { session, events } = read(path);
    expect(session).toEqual(driver.session());
    expect(events.at(-2)).toMatchObject({
      type: 'session-resumed',
      format: 2,
      rules: RULES,
      by: 'program',
    });
  });

  test.each(['extra-reading', 'drill-noted', 'session-closed-twice'])(
    'an event "%s" of another form is unknown',
    (type) => {
      const path = join(folder, '20310506T070809Z-lab-00000001.jsonl');
      const lines = readFileSync(join(FOLDER, 'session-1-tree.jsonl'), 'utf8').trim().split('\n');
      const events = lines.map((line) => {
        const { seq: _seq, prev: _prev, ...event } = JSON.parse(line);
        return event;
      });
      const resumed = {
        type: 'session-resumed',
        program: 'x',
        format: 2,
        rules: 2,
        by: 'person',
        ...when(1),
      };
      writeFileSync(path, sealed([...events, resumed, { type, ...when(2) }]).text);
      expect(readSessionFile(nodeDisk, path)).toMatchObject({
        ok: false,
        flaw: {
          line: events.length + 2,
          words: `event ${events.length + 2} is of the unknown type "${type}"`,
        },
      });
    },
  );

  it('an event of today has no place in a stretch of format 1', () => {
    const path = join(folder, '20310506T070809Z-lab-00000001.jsonl');
    const [first] = readFileSync(join(FOLDER, 'session-1-tree.jsonl'), 'utf8').split('\n');
    const { seq: _seq, prev: _prev, ...opened } = JSON.parse(first!);
    writeFileSync(path, sealed([opened, { type: 'test-recorded', ...when(2) }]).text);
    expect(readSessionFile(nodeDisk, path)).toMatchObject({
      ok: false,
      flaw: {
        line: 2,
        words: 'event 2 is of the type "test-recorded", which format 1 does not have',
      },
    });
  });

  it('an early program that went on with a file of today is understood', () => {
    const path = join(folder, '20310506T070809Z-lab-00000001.jsonl');
    const { events } = version('session-1-own-conclusion');
    const early = { type: 'session-resumed', program: 'ohmward 0.1.0', ...when(1) };
    const note = { type: 'note-added', step: 'guided', text: 'By the old program.', ...when(2) };
    writeFileSync(path, sealed([...events.slice(0, 9), early, note]).text);
    const { session } = read(path);
    expect(session.notes.at(-1)?.text).toBe('By the old program.');
    expect(session.events.at(-2)).toMatchObject({ type: 'session-resumed', format: 2, rules: 1 });
  });
});
