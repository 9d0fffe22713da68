/** Disks that really are full: a small tmpfs when mounting is permitted, and always a file size limit on a child. */
import { spawnSync } from 'node:child_process';
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openSettings } from '../../src/files/settings.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { openSessionFile, resumeSession } from '../../src/log/open-session.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { createSession } from '../../src/log/session-writer.ts';
import type { WriteProblem } from '../../src/log/write-problem.ts';
import { writeWholeFile } from '../../src/log/write-whole.ts';
import { bundleChild, scratchFolder } from '../log/built-child.ts';
import { NAME, sampleEvent } from '../log/events.ts';

const scratch = scratchFolder();
const mounted = join(scratch.path, 'small');
mkdirSync(mounted);
const canMount =
  spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=128k', 'tmpfs', mounted]).status === 0;
afterAll(() => {
  if (canMount) spawnSync('umount', ['-l', mounted]);
  scratch.remove();
});
it('a child whose files may not grow stops at a sentence, with every acknowledged event safe', async () => {
  const child = await bundleChild('tests/log/writing-child.ts', scratch.path);
  const folder = join(scratch.path, 'limited');
  // 40 blocks: 20 kB by POSIX (512 bytes), 40 kB in bash (1024 bytes).
  const run = spawnSync(
    'sh',
    ['-c', 'ulimit -f 40; exec "$@"', 'sh', process.execPath, child, folder, '-'],
    {
      encoding: 'utf8',
    },
  );
  expect(run.status).toBe(3);
  const lines = run.stdout.trim().split('\n');
  const problem = JSON.parse(lines.at(-1)!.slice(2)) as WriteProblem;
  const acknowledged = lines.filter((line) => line.startsWith('a ')).length;
  expect(problem).toMatchObject({ code: 'EFBIG', canRetry: true, safeEvents: acknowledged });
  expect(problem.words).toMatch(
    /^The file has reached its size limit .* \d+ events are safe, up to 2031-/,
  );
  expect(problem.fix).toMatch(
    /^Raise the limit for file sizes, then try again; or go on in another folder\.$/,
  );
  const log = readSessionLog(readFileSync(join(folder, NAME)));
  expect(log).toMatchObject({
    verdict: 'whole',
    goodBytes: readFileSync(join(folder, NAME)).length,
  });
  expect(log.events).toHaveLength(acknowledged);
  expect(acknowledged).toBeGreaterThan(10);
});

describe.skipIf(!canMount)('a tmpfs that is full', () => {
  it('has words, nothing half-written, another try after making room, then another folder', () => {
    const ballast = join(mounted, 'ballast');
    writeFileSync(ballast, Buffer.alloc(64 * 1024));
    const begun = createSession(nodeDisk, mounted, NAME, sampleEvent(0));
    if (!begun.ok) throw new Error(begun.problem.words);
    const writer = begun.value;
    let n = 1;
    const fillUp = (): WriteProblem => {
      for (; ; n += 1) {
        const saved = writer.append(sampleEvent(n, 700));
        if (!saved.ok) return saved.problem;
      }
    };
    const problem = fillUp();
    expect(problem).toMatchObject({ code: 'ENOSPC', canRetry: true, safeEvents: n });
    expect(problem.words).toContain('The disk is full');
    expect(problem.words).toContain(`${n} events are safe, up to `);
    expect(readSessionLog(readFileSync(writer.path)).verdict).toBe('whole');
    const report = join(mounted, 'report.txt');

    rmSync(ballast);
    const safeBefore = n;
    expect(writer.append(sampleEvent(n, 700)).ok).toBe(true);
    n += 1;
    expect(writeWholeFile(nodeDisk, report, 'old report').ok).toBe(true);
    expect(fillUp().code).toBe('ENOSPC');
    expect(n).toBeGreaterThan(safeBefore + 10);

    const written = writeWholeFile(nodeDisk, report, 'new '.repeat(50_000));
    expect(!written.ok && written.problem.code).toBe('ENOSPC');
    expect(readFileSync(report, 'utf8')).toBe('old report');
    expect(readdirSync(mounted).sort()).toEqual([NAME, 'report.txt']);

    const elsewhere = join(scratch.path, 'elsewhere');
    const moved = writer.continueIn(elsewhere);
    if (!moved.ok) throw new Error(moved.problem.words);
    expect(moved.value.receipt?.seq).toBe(n + 2);
    expect(moved.value.writer.append(sampleEvent(n + 1)).ok).toBe(true);
    moved.value.writer.close();
    const opened = openSessionFile(nodeDisk, moved.value.writer.path, [mounted]);
    if (!opened.ok) throw new Error(opened.problem.words);
    const ids = opened.value.events.map(({ id }) => id).filter((id) => typeof id === 'number');
    expect(ids).toEqual(Array.from({ length: n + 2 }, (_, i) => i));
  });

  it('while a torn session is resumed: refused in words, file untouched, fine once there is room', () => {
    for (const name of readdirSync(mounted)) rmSync(join(mounted, name));
    const begun = createSession(nodeDisk, mounted, NAME, sampleEvent(0));
    if (!begun.ok) throw new Error(begun.problem.words);
    begun.value.close();
    const { path } = begun.value;
    writeFileSync(path, '{"at":"half a li', { flag: 'a' });
    const before = readFileSync(path);
    const ballast = join(mounted, 'ballast');
    try {
      writeFileSync(ballast, Buffer.alloc(1024 * 1024));
    } catch {
      // the disk is full, as wanted
    }
    const now = { at: '2031-05-06T09:00:00Z', elapsed: 0 };
    const refused = resumeSession(nodeDisk, path, now);
    expect(!refused.ok && refused.problem.code).toBe('ENOSPC');
    expect(readFileSync(path)).toEqual(before);
    rmSync(ballast);
    const resumed = resumeSession(nodeDisk, path, now);
    expect(resumed.ok && resumed.value.events.at(-1)).toMatchObject({
      type: 'recovered',
      bytes: 16,
    });
    if (resumed.ok) resumed.value.writer.close();
    expect(readSessionLog(readFileSync(path)).verdict).toBe('whole');
  });

  it('while a setting is changed: refused in words, the old settings as they were', async () => {
    for (const name of readdirSync(mounted)) rmSync(join(mounted, name));
    const env = { HOME: mounted, XDG_CONFIG_HOME: mounted };
    const opened = await openSettings(env);
    if ('problem' in opened) throw new Error(opened.problem.words);
    const { store } = opened;
    expect(store.set('afterSession', ['x'.repeat(6000)])).toBeNull();
    const before = readFileSync(store.path);
    let refusals = 0;
    // From no room at all to room for the copy but not for the new file.
    for (let room = 0; room <= 5; room += 1) {
      const ballast = join(mounted, 'ballast');
      try {
        writeFileSync(ballast, Buffer.alloc(1024 * 1024));
      } catch {
        // full, as wanted
      }
      truncateSync(ballast, Math.max(0, statSync(ballast).size - room * 4096));
      const refused = store.set('afterSession', ['y'.repeat(12_000)]);
      rmSync(ballast);
      if (refused === null) continue;
      refusals += 1;
      expect(refused.fix.length).toBeGreaterThan(20);
      expect(readFileSync(store.path)).toEqual(before);
      expect(store.values.afterSession).toEqual(['x'.repeat(6000)]);
      expect(readdirSync(dirname(store.path))).toEqual(['config.json']);
    }
    expect(refusals).toBeGreaterThanOrEqual(4);
  });
});
