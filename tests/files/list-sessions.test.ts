import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listSessions, newestSessions, type SessionEntry } from '../../src/files/list-sessions.ts';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { scratchFolder } from '../log/built-child.ts';
import { sampleEvent } from '../log/events.ts';

let scratch: ReturnType<typeof scratchFolder>;
beforeEach(() => {
  scratch = scratchFolder();
});
afterEach(() => scratch.remove());

const entriesOf = (folder: string): SessionEntry[] =>
  listSessions(folder).sessions.map(({ read }) => read());

/** A session that began on that day of May 2031, with so many events. */
function session(day: number, events: number, fill = 0) {
  const at = `2031-05-${String(day).padStart(2, '0')}T08:00:00+02:00`;
  const name = sessionFileName(at, 'hall', day.toString(16).padStart(8, '0'));
  const begun = createSession(nodeDisk, scratch.path, name, { ...sampleEvent(0, fill), at });
  if (!begun.ok) throw new Error(begun.problem.words);
  for (let n = 1; n < events; n += 1) begun.value.append(sampleEvent(n));
  return begun.value;
}

describe('listSessions', () => {
  it('has the newest first, with the first and the last event of each', () => {
    for (const [day, events] of [
      [6, 3],
      [8, 1],
      [7, 5],
    ] as const)
      session(day, events).close();
    writeFileSync(join(scratch.path, 'notes.txt'), 'not ours');
    const sessions = entriesOf(scratch.path);
    expect(sessions.map(({ startedAt }) => startedAt?.slice(8, 10))).toEqual(['08', '07', '06']);
    expect(sessions.map(({ events }) => events)).toEqual([1, 5, 3]);
    expect(sessions[1]).toMatchObject({
      state: 'complete-lines',
      first: { seq: 1, type: 'session-begun' },
      last: { seq: 5, id: 4 },
    });
  });

  it.each([
    [300_000, 200_000],
    [3_000_000, 2_500_000],
  ])('reads first lines of %d bytes, and last ones of %d', (first, last) => {
    const writer = session(6, 1, first);
    writer.append(sampleEvent(1, last));
    writer.close();
    expect(entriesOf(scratch.path)).toMatchObject([{ events: 2, state: 'complete-lines' }]);
  });

  it('shows the parts of one session as one entry, to be resumed at the last', () => {
    const writer = session(6, 2);
    const moved = writer.continueIn(scratch.path);
    if (!moved.ok) throw new Error(moved.problem.words);
    moved.value.writer.append(sampleEvent(2));
    moved.value.writer.close();
    const sessions = entriesOf(scratch.path);
    expect(sessions).toHaveLength(1);
    expect(sessions[0]).toMatchObject({
      path: moved.value.writer.path,
      paths: [writer.path, moved.value.writer.path],
      first: { type: 'session-begun' },
      events: 4,
    });
  });

  it('tolerates torn, damaged, empty and odd files, and a missing folder', () => {
    const torn = session(9, 2);
    torn.close();
    writeFileSync(torn.path, '{"at":', { flag: 'a' });
    const file = (day: number, text: string) =>
      writeFileSync(join(scratch.path, `2031050${day}T060000Z-x-0000000${day}.jsonl`), text);
    file(1, '');
    file(2, 'no json\n');
    file(3, '{"at":"2031-05-03T06:00:00Z","seq":1}\n\0\0\0\n');
    file(4, '[1]\n[2]\n');
    mkdirSync(join(scratch.path, '20310505T060000Z-x-00000005.jsonl'));
    const sessions = entriesOf(scratch.path);
    const states = sessions.map(({ path, state }) => [
      path.slice(path.lastIndexOf('/') + 7)[1],
      state,
    ]);
    expect(states).toEqual([
      ['9', 'cut-off'],
      ['5', 'unreadable'],
      ['4', 'unreadable'],
      ['3', 'unreadable'],
      ['2', 'unreadable'],
      ['1', 'unreadable'],
    ]);
    expect(sessions.slice(1).every(({ words }) => (words?.length ?? 0) > 10)).toBe(true);
    expect(sessions[0]?.events).toBe(2);
    expect(listSessions(join(scratch.path, 'missing'))).toEqual({ sessions: [] });
    expect(listSessions(torn.path).words).toContain('ENOTDIR');
  });
});

it('reads a session when it is asked for, once', () => {
  const writer = session(6, 2);
  const { sessions } = listSessions(scratch.path);
  writer.append(sampleEvent(2));
  writer.close();
  expect(sessions[0]!.read().events).toBe(3);
  writeFileSync(writer.path, '');
  expect(sessions[0]!.read().events).toBe(3);
});

it('leaves out what is long in the first line, and nothing of the last', () => {
  const long = 'x'.repeat(20_000);
  const first = {
    at: '2031-05-06T07:08:09Z',
    job: { words: 'Q' },
    seq: 1,
    tree: { long, title: 'T' },
  };
  const last = { note: long, seq: 2, type: 'note-added' };
  const name = sessionFileName(first.at, 'hall', '00000001');
  writeFileSync(join(scratch.path, name), `${JSON.stringify(first)}\n${JSON.stringify(last)}\n`);
  expect(entriesOf(scratch.path)[0]).toMatchObject({
    first: { ...first, tree: { title: 'T' } },
    last,
  });
  expect(entriesOf(scratch.path)[0]!.first!['tree']).toEqual({ title: 'T' });
});

describe('newestSessions', () => {
  it('reads the newest hundred by their names alone, and counts all', () => {
    for (let n = 0; n < 130; n += 1) {
      const at = `2031-05-06T${String((n / 60) | 0).padStart(2, '0')}:${String(n % 60).padStart(2, '0')}:00Z`;
      const name = sessionFileName(at, 'hall', n.toString(16).padStart(8, '0'));
      writeFileSync(
        join(scratch.path, name),
        `${JSON.stringify({ seq: 1, type: 'session-opened', at })}\n`,
      );
    }
    const { sessions, count } = newestSessions(scratch.path);
    expect(count).toBe(130);
    expect(sessions).toHaveLength(100);
    expect(sessions).toEqual(entriesOf(scratch.path).slice(0, 100));
  });

  it('has none in a folder that is not there', () => {
    expect(newestSessions(join(scratch.path, 'none'))).toEqual({ sessions: [], count: 0 });
  });
});
