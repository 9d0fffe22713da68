import {
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Disk, errorCode, writeAll } from '../../src/log/disk.ts';
import { sealEvent } from '../../src/log/event-line.ts';
import { sha256 } from '../../src/log/hash.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { openSessionFile, resumeSession } from '../../src/log/open-session.ts';
import { createSession, type SessionWriter } from '../../src/log/session-writer.ts';
import { scratchFolder } from './built-child.ts';
import { NAME, sampleEvent } from './events.ts';

let scratch: ReturnType<typeof scratchFolder>;
let folder: string;
const writers: SessionWriter[] = [];
beforeEach(() => {
  scratch = scratchFolder();
  folder = join(scratch.path, 'shop', 'sessions');
});
afterEach(() => {
  for (const writer of writers.splice(0)) writer.close();
  scratch.remove();
});

function begin(disk: Disk = nodeDisk, where = folder): SessionWriter {
  const begun = createSession(disk, where, NAME, sampleEvent(0));
  if (!begun.ok) throw new Error(begun.problem.words);
  writers.push(begun.value);
  return begun.value;
}

describe('the file', () => {
  it('holds one canonical line an event, each with the SHA-256 of the line before', () => {
    const writer = begin();
    const saved = writer.append(sampleEvent(1));
    const lines = readFileSync(writer.path, 'utf8').split('\n');
    expect(lines).toHaveLength(3);
    expect(lines[2]).toBe('');
    expect(JSON.parse(lines[0]!)).toEqual({ ...sampleEvent(0), seq: 1, prev: null });
    expect(JSON.parse(lines[1]!)).toEqual({ ...sampleEvent(1), seq: 2, prev: sha256(lines[0]!) });
    expect(saved).toEqual({ ok: true, value: { seq: 2, hash: sha256(lines[1]!) } });
  });

  it('is for its owner only, in a folder for its owner only', () => {
    const writer = begin();
    expect(statSync(writer.path).mode & 0o777).toBe(0o600);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
  });

  it('never takes the place of another file or of a link', () => {
    begin();
    const again = createSession(nodeDisk, folder, NAME, sampleEvent(0));
    expect(!again.ok && again.problem.code).toBe('EEXIST');
    const linked = NAME.replace('0badcafe', '00000000');
    symlinkSync(join(scratch.path, 'elsewhere'), join(folder, linked));
    const through = createSession(nodeDisk, folder, linked, sampleEvent(0));
    expect(!through.ok && through.problem.words).toContain('A file of that name already exists');
  });
});

it('closed before anything was added, it blames no other window', () => {
  const writer = begin();
  writer.close();
  const saved = writer.append(sampleEvent(1));
  expect(!saved.ok && saved.problem.code).toBe('segment-closed');
});

describe('an event is acknowledged', () => {
  it('only after write and sync, and a new file only after its folder too', () => {
    const order: string[] = [];
    const spying = Object.fromEntries(
      Object.entries(nodeDisk).map(([name, operation]) => [
        name,
        (...args: never[]) => {
          order.push(name);
          return (operation as (...a: never[]) => unknown)(...args);
        },
      ]),
    ) as unknown as Disk;
    const writer = begin(spying);
    expect(order).toEqual([
      'makeFolder',
      'openNew',
      'write',
      'syncData',
      'syncFolder',
      'factsOpen',
    ]);
    order.length = 0;
    writer.append(sampleEvent(1));
    expect(order).toEqual(['factsOpen', 'facts', 'write', 'factsOpen', 'syncData']);
  });

  it('never when it is not fit for a log: that is a mistake of ours and throws', () => {
    const writer = begin();
    const bad = [
      { ...sampleEvent(1), at: '2031-05-06' },
      { ...sampleEvent(1), elapsed: -1 },
      { ...sampleEvent(1), elapsed: NaN },
      { ...sampleEvent(1), type: '' },
      { ...sampleEvent(1), seq: 9 },
      { ...sampleEvent(1), note: undefined },
    ];
    for (const event of bad) expect(() => writer.append(event)).toThrow();
    expect(writer.append(sampleEvent(1))).toMatchObject({ ok: true, value: { seq: 2 } });
  });
});

describe('a file changed behind our back', () => {
  const refusal = (writer: SessionWriter, n = 1) => {
    const saved = writer.append(sampleEvent(n));
    if (saved.ok) throw new Error('was acknowledged');
    return saved.problem;
  };

  it('its folder gone and a file in the place of that: nothing is called safe', () => {
    const gone = join(folder, 'gone');
    const writer = begin(nodeDisk, gone);
    rmSync(gone, { recursive: true });
    writeFileSync(gone, '');
    expect(refusal(writer)).toMatchObject({ code: 'file-gone', canRetry: false, safeEvents: 0 });
  });

  it.each(['deleted', 'replaced'] as const)('%s: every event is written out again', (how) => {
    const writer = begin();
    writer.append(sampleEvent(1));
    const before = readFileSync(writer.path);
    if (how === 'deleted') rmSync(writer.path);
    else {
      renameSync(writer.path, join(folder, 'moved'));
      rmSync(join(folder, 'moved'));
      writeFileSync(writer.path, 'not ours');
    }
    const problem = refusal(writer, 2);
    const code = how === 'deleted' ? 'file-gone' : 'file-replaced';
    expect(problem).toMatchObject({ code, canRetry: false, safeEvents: 0 });
    expect(problem.words).toContain('still held by this program');
    expect(refusal(writer, 2).code).toBe(code);
    writeFileSync(join(scratch.path, 'no-folder'), '');
    expect(writer.continueIn(join(scratch.path, 'no-folder')).ok).toBe(false);
    const moved = writer.continueIn(folder);
    if (!moved.ok) throw new Error(moved.problem.words);
    writers.push(moved.value.writer);
    expect(moved.value.receipt?.seq).toBe(4);
    expect(readFileSync(writer.path.replace('.jsonl', '.part2.jsonl'))).toEqual(before);
    const opened = openSessionFile(nodeDisk, moved.value.writer.path);
    if (!opened.ok) throw new Error(opened.problem.words);
    expect(opened.value.events.map(({ id }) => id)).toEqual([0, 1, undefined, 2]);
    if (how === 'replaced') expect(readFileSync(writer.path, 'utf8')).toBe('not ours');
  });

  it.each(['EACCES', 'EPERM'])(
    'that may not be read any more (%s): said so, and all of it is written again elsewhere',
    (code) => {
      let barred = true;
      const refused = (path: string) => {
        if (barred) throw Object.assign(new Error(path), { code });
        return nodeDisk.read(path);
      };
      const writer = begin({ ...nodeDisk, read: refused });
      writer.append(sampleEvent(1));
      expect(writer.look()?.atTheEnd.words).toMatch(
        /^The rights to the session file were taken away while in use .* 2 events are safe, up to /,
      );
      barred = false;
      expect(writer.look()).toBeNull();
      barred = true;
      expect(writer.look()).not.toBeNull();
      const moved = writer.continueIn(join(scratch.path, 'elsewhere'));
      if (!moved.ok) throw new Error(moved.problem.words);
      writers.push(moved.value.writer);
      barred = false;
      expect(moved.value.writer.look()).toBeNull();
      const opened = openSessionFile(nodeDisk, moved.value.writer.path);
      if (!opened.ok) throw new Error(opened.problem.words);
      expect(opened.value.events.map(({ id }) => id)).toEqual([0, 1, undefined]);
    },
  );

  it('appended to by a second writer: noticed before anything is glued to it', () => {
    const writer = begin();
    writeFileSync(writer.path, 'x', { flag: 'a' });
    // What was acknowledged before stands there still.
    expect(refusal(writer)).toMatchObject({ code: 'file-changed', canRetry: false, safeEvents: 1 });
    expect(writer.isOpen).toBe(false);
    expect(refusal(writer).code).toBe('segment-closed');
  });

  it('gone on with by another window whose line is only half there: waited for, then said so', () => {
    let rest = () => {};
    const writer = begin({ ...nodeDisk, rest: () => rest() });
    const { line } = sealEvent(sampleEvent(7), 2, writer.last.hash);
    writeFileSync(writer.path, line.slice(0, 9), { flag: 'a' });
    rest = () => {
      writeFileSync(writer.path, `${line.slice(9)}\n`, { flag: 'a' });
      rest = () => {};
    };
    expect(refusal(writer).code).toBe('open-elsewhere');
  });

  it('gone on with by another window: said so, and no second branch of the session is offered', () => {
    const writer = begin();
    const other = resumeSession(nodeDisk, writer.path, { at: sampleEvent(1).at, elapsed: 1 });
    if (!other.ok) throw new Error(other.problem.words);
    writers.push(other.value.writer);
    other.value.writer.append(sampleEvent(1));
    const problem = refusal(writer, 2);
    expect(problem).toMatchObject({ code: 'open-elsewhere', canRetry: false });
    expect(problem.words).toContain(
      'The session is also open in another window, and was continued there',
    );
    expect(problem.fix).toBe(
      'Continue there, or leave here and resume it once the other window is closed.',
    );
    expect(refusal(writer, 2).code).toBe('open-elsewhere');
  });

  /** Another window that adds an event after this one has looked at the file and before it writes. */
  function atTheSameMoment() {
    let meanwhile = () => {};
    const disk: Disk = {
      ...nodeDisk,
      write: (file, bytes) => {
        meanwhile();
        return nodeDisk.write(file, bytes);
      },
    };
    const writer = begin(disk);
    const other = resumeSession(nodeDisk, writer.path, { at: sampleEvent(1).at, elapsed: 1 });
    if (!other.ok) throw new Error(other.problem.words);
    writers.push(other.value.writer);
    const write = (act: () => void) => {
      meanwhile = () => {
        meanwhile = () => {};
        act();
      };
    };
    return { writer, other: other.value.writer, write };
  }

  it('by another window in the same moment: the later of the two is refused and leaves nothing', () => {
    const { writer, other, write } = atTheSameMoment();
    write(() => expect(other.append(sampleEvent(1)).ok).toBe(true));
    expect(refusal(writer, 2).code).toBe('open-elsewhere');
    const opened = openSessionFile(nodeDisk, writer.path);
    expect(opened.ok && opened.value.log.verdict).toBe('whole');
    expect(opened.ok && opened.value.events.map(({ id }) => id)).toEqual([0, 1]);
    expect(other.append(sampleEvent(3)).ok).toBe(true);
  });

  it('by another window that takes its late line out again: this one goes on', () => {
    let turns = 0;
    const disk: Disk = {
      ...nodeDisk,
      rest: () => {
        turns += 1;
        if (turns === 2) writeFileSync(writer.path, before);
      },
    };
    const writer = begin(disk);
    const before = readFileSync(writer.path);
    writeFileSync(writer.path, '{"seq":2,"prev":"late"}\n', { flag: 'a' });
    expect(writer.append(sampleEvent(1)).ok).toBe(true);
    expect(turns).toBe(2);
  });
});

describe('going on in a new part', () => {
  it('links to the head, carries the refused event, and reads as one session', () => {
    const writer = begin();
    writer.append(sampleEvent(1));
    const head = writer.last.hash;
    const failing = { ...nodeDisk, syncData: () => fail('EIO') };
    const broken = createSession(
      failing,
      folder,
      NAME.replace('0badcafe', '11111111'),
      sampleEvent(0),
    );
    expect(!broken.ok && broken.problem.safeEvents).toBe(0);
    writeFileSync(writer.path, 'x', { flag: 'a' });
    writer.append(sampleEvent(2));
    const usb = join(scratch.path, 'usb');
    const moved = writer.continueIn(usb);
    if (!moved.ok) throw new Error(moved.problem.words);
    const next = moved.value.writer;
    writers.push(next);
    expect(next.path).toBe(join(usb, NAME.replace('.jsonl', '.part2.jsonl')));
    const [link] = readFileSync(next.path, 'utf8').split('\n');
    expect(JSON.parse(link!)).toMatchObject({
      type: 'segment-continued',
      seq: 3,
      prev: head,
      continues: head,
      file: NAME,
    });
    next.append(sampleEvent(3));
    const opened = openSessionFile(nodeDisk, next.path, [folder]);
    if (!opened.ok) throw new Error(opened.problem.words);
    expect(opened.value.events.map(({ id }) => id)).toEqual([0, 1, undefined, 2, 3]);
    expect(opened.value.events.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5]);
  });

  it('leaves nothing behind when the new folder refuses as well', () => {
    const writer = begin();
    mkdirSync(join(scratch.path, 'file'));
    writeFileSync(join(scratch.path, 'file', 'x'), '');
    const moved = writer.continueIn(join(scratch.path, 'file', 'x'));
    expect(!moved.ok && moved.problem.code).toMatch(/^(ENOTDIR|EEXIST)$/);
    expect(writer.append(sampleEvent(1)).ok).toBe(true);
  });
});

describe('writeAll', () => {
  it('goes on after short writes and interruptions, byte by byte', () => {
    const taken: number[] = [];
    let calls = 0;
    const disk: Disk = {
      ...nodeDisk,
      write: (_file, bytes) => {
        calls += 1;
        if (calls % 2 === 0) fail('EINTR');
        taken.push(bytes[0]!);
        return 1;
      },
    };
    writeAll(disk, 0, Uint8Array.of(1, 2, 3, 4));
    expect(taken).toEqual([1, 2, 3, 4]);
  });
  it('gives up when the disk takes nothing, or is interrupted for ever', () => {
    const stuck = (write: Disk['write']) => () =>
      writeAll({ ...nodeDisk, write }, 0, Uint8Array.of(1));
    expect(stuck(() => 0)).toThrow('took nothing');
    expect(stuck(() => fail('EINTR'))).toThrow('EINTR');
  });
  it('an error without a system code is a bug and passes through', () => {
    const bug = new TypeError('ours');
    expect(() => errorCode(bug)).toThrow(bug);
  });
});

function fail(code: string): never {
  throw Object.assign(new Error(code), { code });
}
