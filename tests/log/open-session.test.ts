import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Disk } from '../../src/log/disk.ts';
import { sealEvent } from '../../src/log/event-line.ts';
import { sha256 } from '../../src/log/hash.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { openSessionFile, type ResumedSession, resumeSession } from '../../src/log/open-session.ts';
import { readSessionLog, verifySessionLog } from '../../src/log/read-session.ts';
import { createSession } from '../../src/log/session-writer.ts';
import type { WriteProblem } from '../../src/log/write-problem.ts';
import { scratchFolder } from './built-child.ts';
import { NAME, sampleEvent, sealed } from './events.ts';

const NOW = { at: '2031-05-06T09:00:00+02:00', elapsed: 12 };
let scratch: ReturnType<typeof scratchFolder>;
let path: string;
beforeEach(() => {
  scratch = scratchFolder();
  path = join(scratch.path, NAME);
  const begun = createSession(nodeDisk, scratch.path, NAME, sampleEvent(0));
  if (!begun.ok) throw new Error(begun.problem.words);
  for (let n = 1; n < 4; n += 1) begun.value.append(sampleEvent(n));
  begun.value.close();
});
afterEach(() => scratch.remove());

function resumed(at = path, lookIn: string[] = []): ResumedSession {
  const result = resumeSession(nodeDisk, at, NOW, lookIn);
  if (!result.ok) throw new Error(result.problem.words);
  return result.value;
}
function refused(at = path): WriteProblem {
  const result = resumeSession(nodeDisk, at, NOW);
  if (result.ok) throw new Error('was resumed');
  return result.problem;
}

it('a session that may not be read says that of reading, not of saving', () => {
  const closed = {
    ...nodeDisk,
    read: () => {
      throw Object.assign(new Error(), { code: 'EACCES' });
    },
  };
  const opened = openSessionFile(closed, 'sessions/a.jsonl');
  if (opened.ok) throw new Error('was opened');
  expect(opened.problem.words).toBe('Reading is not allowed there (sessions/a.jsonl).');
  expect(opened.problem.fix).toBe('Ask for the right to read it, and try again.');
});

describe('resuming', () => {
  it('a session that another window goes on with meanwhile: refused, and what was written there stays', () => {
    const { writer } = resumed();
    const result = resumeSession(nodeDisk, path, NOW, [], () => {
      writer.append(sampleEvent(4));
      return null;
    });
    expect(!result.ok && result.problem).toMatchObject({
      code: 'open-elsewhere',
      fix: 'Continue there, or close it there and resume again.',
    });
    expect(writer.append(sampleEvent(5)).ok).toBe(true);
    writer.close();
    expect(readSessionLog(readFileSync(path))).toMatchObject({ verdict: 'whole' });
    expect(resumed().events.map(({ id }) => id)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(readdirSync(scratch.path)).toEqual([NAME]);
  });

  it('a session whose last line is just being written: waits for it', () => {
    const whole = readFileSync(path);
    writeFileSync(path, whole.subarray(0, whole.length - 20));
    const disk = { ...nodeDisk, rest: () => writeFileSync(path, whole) };
    const result = resumeSession(disk, path, NOW);
    expect(result.ok && result.value.recovered).toEqual([]);
    expect(result.ok && result.value.events).toHaveLength(4);
    if (result.ok) result.value.writer.close();
  });

  it('a whole session goes on behind its last event, with no event of its own', () => {
    const { writer, events } = resumed();
    expect(events).toHaveLength(4);
    expect(writer.append(sampleEvent(4))).toMatchObject({ ok: true, value: { seq: 5 } });
    writer.close();
    expect(readSessionLog(readFileSync(path))).toMatchObject({
      verdict: 'whole',
      head: writer.last.hash,
    });
  });

  it('a torn tail is kept aside, cut off and noted', () => {
    const before = readFileSync(path);
    const fragment = '{"at":"2031-05-06T07:08:25.000Z","elap';
    writeFileSync(path, fragment, { flag: 'a' });
    const { writer, events } = resumed();
    writer.close();
    const aside = `${NAME.replace('.jsonl', '')}.torn-${sha256(fragment).slice(0, 8)}`;
    expect(readFileSync(join(scratch.path, aside), 'utf8')).toBe(fragment);
    const kept = { bytes: fragment.length, hash: sha256(fragment), file: aside };
    expect(events.at(-1)).toMatchObject({ type: 'recovered', seq: 5, ...NOW, ...kept });
    const log = readSessionLog(readFileSync(path));
    expect(log).toMatchObject({ verdict: 'whole', events });
    expect(readFileSync(path).subarray(0, before.length)).toEqual(before);
  });

  it.each([
    ['whole, is left as it is', (fragment: string) => fragment, 0],
    ['cut short, is written again', (fragment: string) => fragment.slice(0, 9), 1],
    ['with other bytes, is written again', (fragment: string) => fragment.replace('at', 'xx'), 1],
  ])('a copy of a torn tail that is there already, %s', (_, copyOf, writes) => {
    const fragment = '{"at":"2031-05-06T07:08:25.000Z","elap';
    writeFileSync(path, fragment, { flag: 'a' });
    const aside = `${path.replace('.jsonl', '')}.torn-${sha256(fragment).slice(0, 8)}`;
    writeFileSync(aside, copyOf(fragment));
    const made: string[] = [];
    const watching: Disk = {
      ...nodeDisk,
      openNew: (file) => {
        made.push(file);
        return nodeDisk.openNew(file);
      },
    };
    const result = resumeSession(watching, path, NOW);
    if (!result.ok) throw new Error(result.problem.words);
    result.value.writer.close();
    expect(readFileSync(aside, 'utf8')).toBe(fragment);
    expect(made).toHaveLength(writes);
  });

  it('a fragment whose note was not saved is told the next time, and once only', () => {
    const fragment = '{"at":"2031-05-06T07:08:25.000Z","elap';
    writeFileSync(path, fragment, { flag: 'a' });
    let session = -1;
    const full: Disk = {
      ...nodeDisk,
      openAppend: (file) => (session = nodeDisk.openAppend(file)),
      write: (file, bytes) => {
        if (file === session) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
        return nodeDisk.write(file, bytes);
      },
    };
    const result = resumeSession(full, path, NOW);
    expect(result).toMatchObject({ ok: false, problem: { code: 'ENOSPC' } });
    const told = () => {
      const { writer, events } = resumed();
      writer.close();
      return events.filter(({ type }) => type === 'recovered');
    };
    expect(told()).toHaveLength(1);
    expect(told()).toHaveLength(1);
  });

  it('a last line with a blank sector is torn too: a power cut leaves such', () => {
    const { line } = sealEvent(sampleEvent(4, 1500), 5, readSessionLog(readFileSync(path)).head);
    const size = readFileSync(path).length;
    const bytes = Buffer.concat([readFileSync(path), Buffer.from(`${line}\n`)]);
    const sector = (Math.floor(size / 512) + 1) * 512;
    bytes.fill(0, sector, sector + 512);
    writeFileSync(path, bytes);
    expect(readSessionLog(bytes)).toMatchObject({
      verdict: 'torn-tail',
      goodBytes: size,
      firstBadLine: 5,
    });
    const { writer } = resumed();
    writer.close();
    expect(writer.last.seq).toBe(5);
  });

  it('a damaged session is refused, untouched, its first bad line named', () => {
    const lines = readFileSync(path, 'utf8').split('\n');
    lines[1] = lines[1]!.replace('4.98', '4.89');
    writeFileSync(path, lines.join('\n'));
    const problem = refused();
    expect(problem).toMatchObject({ code: 'damaged', safeEvents: 1, canRetry: false });
    expect(problem.fix).toContain('line 2 was changed after it was written');
    expect(readFileSync(path, 'utf8')).toBe(lines.join('\n'));
    expect(readdirSync(scratch.path)).toEqual([NAME]);
    expect(openSessionFile(nodeDisk, path)).toMatchObject({
      ok: true,
      value: { log: { firstBadLine: 2 } },
    });
  });

  it('a file without a complete event, an empty one and a missing one each get their words', () => {
    writeFileSync(path, '{"at"');
    expect(refused()).toMatchObject({ code: 'nothing-saved', safeEvents: 0 });
    writeFileSync(path, '');
    expect(refused().code).toBe('nothing-saved');
    rmSync(path);
    expect(refused()).toMatchObject({ code: 'ENOENT', safeEvents: 0 });
  });
});

describe('a session in parts', () => {
  const usb = () => join(scratch.path, 'usb');
  const split = (folder: string): string => {
    const { writer } = resumed();
    const moved = writer.continueIn(folder);
    if (!moved.ok) throw new Error(moved.problem.words);
    moved.value.writer.append(sampleEvent(4));
    moved.value.writer.close();
    return moved.value.writer.path;
  };

  it('is resumed at its last part; an earlier one says which that is', () => {
    const part2 = split(scratch.path);
    const { writer, events } = resumed(part2);
    writer.close();
    expect(events.map(({ id }) => id)).toEqual([0, 1, 2, 3, undefined, 4]);
    const problem = refused();
    expect(problem.code).toBe('continued-elsewhere');
    expect(problem.fix).toBe(`Resume the later part: ${NAME.replace('.jsonl', '.part2.jsonl')}.`);
  });

  it('a later part without one whole event was never begun', () => {
    writeFileSync(path.replace('.jsonl', '.part2.jsonl'), '{"at":"half a li');
    const { writer, events } = resumed();
    writer.close();
    expect(events.map(({ id }) => id)).toEqual([0, 1, 2, 3]);
  });

  it('three parts in two folders make one session', () => {
    const part2 = split(usb());
    const { writer } = resumed(part2, [scratch.path]);
    const third = writer.continueIn(scratch.path);
    if (!third.ok) throw new Error(third.problem.words);
    third.value.writer.append(sampleEvent(5));
    third.value.writer.close();
    expect(third.value.writer.path).toBe(path.replace('.jsonl', '.part3.jsonl'));
    const { writer: last, events } = resumed(third.value.writer.path, [usb()]);
    last.close();
    expect(events.map(({ seq }) => seq)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(events.at(-1)?.id).toBe(5);
  });

  it('with an earlier part missing is refused, naming it', () => {
    const part2 = split(usb());
    const problem = refused(part2);
    expect(problem.code).toBe('earlier-part-missing');
    expect(problem.fix).toContain(`${NAME}, with its events up to number 4`);
  });

  it('an earlier part named by a path outside the folder is not followed', () => {
    const other = join(scratch.path, 'other');
    mkdirSync(other);
    const head = readSessionLog(readFileSync(path)).head!;
    copyFileSync(path, join(scratch.path, 'stolen.jsonl'));
    const link = { ...NOW, type: 'segment-continued', continues: head, file: `../${NAME}` };
    const part = join(other, NAME.replace('.jsonl', '.part2.jsonl'));
    writeFileSync(part, `${sealEvent(link, 5, head).line}\n`);
    expect(refused(part).code).toBe('earlier-part-missing');
  });
});

describe('verifying against a head noted earlier', () => {
  it('tells a session that went on from one that was cut or rewritten', () => {
    const bytes = readFileSync(path);
    const log = readSessionLog(bytes);
    const [first, second, third] = log.hashes as [string, string, string];
    expect(verifySessionLog(bytes, log.head!).verdict).toBe('whole');
    expect(verifySessionLog(bytes, second).verdict).toBe('grown');
    const cut = bytes.subarray(0, bytes.indexOf(0x0a) + 1);
    expect(verifySessionLog(cut, third)).toMatchObject({ verdict: 'damaged' });
    expect(verifySessionLog(cut, { hash: third, seq: 3 })).toMatchObject({
      firstBadLine: 2,
      words: 'line 2: the file ends before event 3, which was noted',
    });
    expect(verifySessionLog(cut, first).verdict).toBe('whole');
    expect(verifySessionLog(bytes).verdict).toBe('whole');
  });

  it('a chain computed anew is whole in itself and damaged against the noted head', () => {
    const head = readSessionLog(readFileSync(path)).head!;
    const forged = [0, 1, 2, 3].map((n) => ({ ...sampleEvent(n), note: 'forged' }));
    const bytes = Buffer.from(sealed(forged).text);
    expect(readSessionLog(bytes).verdict).toBe('whole');
    expect(verifySessionLog(bytes, { hash: head, seq: 4 })).toMatchObject({
      verdict: 'damaged',
      words: 'line 4: event 4 is not the one that was noted',
    });
  });
});

describe('a line is refused that', () => {
  const good = sealEvent(sampleEvent(0), 1, null).line;
  it.each<readonly [string, string | Buffer, string]>([
    ['has a blank in it', good.replace(',', ', '), 'is not in canonical form'],
    [
      'repeats a key',
      good.replace('{', '{"at":"2031-05-06T07:08:09.000Z",'),
      'is not in canonical form',
    ],
    ['begins with a byte-order mark', `\ufeff${good}`, 'is not JSON'],
    ['ends in CR LF', `${good}\r`, 'is not in canonical form'],
    [
      'is not UTF-8',
      Buffer.concat([Buffer.from(good.slice(0, -1)), Buffer.of(0xff)]),
      'is not UTF-8',
    ],
    ['is a list', '[]', 'is not a JSON object'],
    ['has no time', '{"a":1,"seq":1}', 'has no event type'],
    ['is nested without end', '['.repeat(100_000), 'is not JSON'],
    [
      'is deeper than any event',
      `{"a":${'['.repeat(200)}${']'.repeat(200)}}`,
      'is not in canonical form',
    ],
    ['has no number', good.replace('"seq":1', '"seq":0'), 'has no event number'],
    [
      'starts in the middle',
      good.replace('"seq":1', '"seq":2'),
      'is not the first event of a session',
    ],
  ])('%s', (_what, line, words) => {
    const bytes = Buffer.concat([Buffer.from(line), Buffer.from('\n')]);
    expect(readSessionLog(bytes)).toMatchObject({
      verdict: 'damaged',
      events: [],
      firstBadLine: 1,
      words: `line 1 ${words}`,
    });
  });
});
