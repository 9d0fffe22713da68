/**
 * What the disk is truly asked for, seen from outside the process (strace), and what a power cut leaves on a device of
 * its own. The doubles of the other tests cannot see that a sync is missing below them. Where a machine has not what this
 * takes, the run says so: those tests are skipped under the name "untested here".
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { LONG } from '../campaign.ts';
import { bundleChild, scratchFolder } from '../log/built-child.ts';
import { NAME } from '../log/events.ts';

const scratch = scratchFolder();
afterAll(() => scratch.remove());
const runs = (program: string, ...args: readonly string[]) =>
  spawnSync(program, args, { encoding: 'utf8' }).status === 0;
const canTrace = runs('strace', '-o', '/dev/null', '-e', 'trace=openat', 'true');

let child = '';
let runsMade = 0;
beforeAll(async () => {
  child = await bundleChild('tests/log/tracing-child.ts', scratch.path);
});

/** Runs the child under strace; its calls on the session's folder and its own words, in order. */
function traced(...inject: readonly string[]) {
  runsMade += 1;
  // Two folders are to be made, each name durable in the one above.
  const above = join(scratch.path, `run${runsMade}`);
  const folder = join(above, 'shop', 'sessions');
  mkdirSync(above);
  const trace = join(scratch.path, `trace${runsMade}`);
  const calls = '-etrace=openat,write,fdatasync,fsync,rename';
  const args = ['-f', '-y', '-s', '8', calls, ...inject, '-o', trace, process.execPath, child];
  const { stdout } = spawnSync('strace', [...args, folder], { encoding: 'utf8' });
  const lines = readFileSync(trace, 'utf8')
    .split('\n')
    .map((line) =>
      line
        .replace(/^\d+ +/, '')
        .replaceAll(folder, 'FOLDER')
        .replaceAll(above, 'ABOVE'),
    )
    .filter((line) => /FOLDER|ABOVE/.test(line) || /^write\(1</.test(line));
  return { folder, told: stdout.trim().split('\n'), calls: lines.map(short).filter(Boolean) };
}

/** One call in short: `write x.jsonl`, `fdatasync x.jsonl`, `fsync FOLDER`, `told a 1`. */
function short(line: string): string {
  const said = /^write\(1<[^>]*>, "(.*?)\\n"/.exec(line);
  if (said) return `told ${said[1]}`;
  const opened = /^openat\([^,]*, "([^"]*)", ([A-Z_|]+)/.exec(line);
  if (opened) return `open ${plain(opened[1]!)} ${opened[2]}`;
  const renamed = /^rename\("([^"]*)", "([^"]*)"/.exec(line);
  if (renamed) return `rename ${plain(renamed[1]!)} ${plain(renamed[2]!)}`;
  const other = /^(\w+)\(\d+<([^>]*)>/.exec(line);
  return other ? `${other[1]} ${plain(other[2]!)}` : '';
}

const plain = (path: string) =>
  path
    .replace(/^FOLDER\//, '')
    .replace(NAME, 'SESSION')
    .replace(/\.ohmward-\w+\.tmp/, 'DRAFT');

describe.skipIf(!canTrace)(
  `the calls of a session${canTrace ? '' : ' (untested here: no strace)'}`,
  () => {
    it('each event is written and synced before it is acknowledged, and its folder once', () => {
      const { calls, told } = traced();
      expect(told).toEqual(['a 0', 'a 1', 'a 2', 'a 3', 'w']);
      const flagsOf = (name: string, at = 0) =>
        calls
          .filter((call) => call.startsWith(`open ${name} `))
          [at]?.split(' ')[2]
          ?.split('|') ?? [];
      const asked = calls.filter((call) => !call.startsWith('open ') || call.includes('O_RDWR'));
      const steps = asked.map((call) =>
        call.startsWith('open ') ? call.split(' ', 2).join(' ') : call,
      );
      const event = (n: number) => ['write SESSION', 'fdatasync SESSION', `told a ${n}`];
      expect(steps).toEqual([
        ...['fsync ABOVE/shop', 'fsync ABOVE'],
        ...['open SESSION', 'write SESSION', 'fdatasync SESSION', 'fsync FOLDER', 'told a 0'],
        ...[...event(1), ...event(2)],
        ...['open SESSION', ...event(3)],
        ...['open DRAFT', 'write DRAFT', 'fdatasync DRAFT', 'rename DRAFT page.md', 'fsync FOLDER'],
        'told w',
      ]);
      // Never through a link, never over another file, always at the end.
      for (const name of ['SESSION', 'DRAFT'])
        expect(flagsOf(name)).toEqual(
          expect.arrayContaining(['O_RDWR', 'O_CREAT', 'O_EXCL', 'O_APPEND', 'O_NOFOLLOW']),
        );
      const again = calls.filter((call) => /^open SESSION .*O_RDWR/.test(call))[1] ?? '';
      expect(again).toContain('O_APPEND');
      expect(again).toContain('O_NOFOLLOW');
      expect(again).not.toContain('O_CREAT');
    });

    // Which of the calls fails. Of fdatasync 1 begins the session, 2 and 3 are events, 4 comes after the resumption; of fsync
    // 1 is of a folder that was made, 3 of the session's.
    it.each([
      ['fdatasync', 'EDQUOT', 2, 'EDQUOT'],
      ['fdatasync', 'EIO', 3, 'EIO'],
      ['fdatasync', 'EIO', 1, 'EIO'],
      ['fsync', 'EIO', 1, 'EIO'],
      ['fsync', 'EIO', 3, 'EIO'],
    ])(
      '%s that fails with %s (call %i) is told by its name, with all that was acknowledged kept',
      (call, error, when, code) => {
        const { folder, told } = traced(`-einject=${call}:error=${error}:when=${when}`);
        expect(told.at(-1)).toBe(`r ${code}`);
        const acknowledged = told.filter((line) => line.startsWith('a ')).length;
        const path = join(folder, NAME);
        if (acknowledged === 0) return expect(existsSync(path)).toBe(false);
        const log = readSessionLog(readFileSync(path));
        expect([log.verdict, log.events.length]).toEqual(['whole', acknowledged]);
      },
    );
  },
);

it.skipIf(process.platform === 'win32')(
  'a link in the place of a session is not written through',
  () => {
    const folder = join(scratch.path, 'links');
    mkdirSync(folder);
    const target = join(folder, 'target');
    nodeDisk.close(nodeDisk.openNew(target));
    symlinkSync(target, join(folder, NAME));
    expect(() => nodeDisk.openAppend(join(folder, NAME))).toThrow(/ELOOP/);
    expect(() => nodeDisk.openNew(join(folder, NAME))).toThrow(/EEXIST/);
  },
);

const IMAGE = join(scratch.path, 'device');
const mounted = join(scratch.path, 'mounted');
const copied = join(scratch.path, 'copied');
for (const folder of [mounted, copied]) mkdirSync(folder);
const canCut =
  runs('truncate', '-s', '16M', IMAGE) &&
  runs('mkfs.ext4', '-q', '-F', IMAGE) &&
  runs('mount', '-o', 'loop', IMAGE, mounted);
afterAll(() => {
  for (const folder of [mounted, copied]) spawnSync('umount', ['-l', folder]);
});
const CUTS = LONG ? 40 : 2;

/**
 * A copy of the device while the kernel still holds what was not synced: what it has not been sent is lost, as in a power
 * cut. (A drive that lies about its own cache is beyond this.)
 */
describe.skipIf(!canCut)(`a power cut${canCut ? '' : ' (untested here: no loop device)'}`, () => {
  const acknowledgedBy = async (writing: ChildProcess): Promise<() => number> => {
    let text = '';
    await new Promise<void>((resolve) => {
      writing.stdout!.on('data', (bytes: Buffer) => {
        text += String(bytes);
        if (text.includes('a 12\n')) resolve();
      });
    });
    return () => text.split('\n').filter((line) => line.startsWith('a ')).length;
  };

  it(`${CUTS} times: every acknowledged event is on the device`, async () => {
    const writer = await bundleChild('tests/log/writing-child.ts', join(scratch.path, 'writer'));
    for (let cut = 0; cut < CUTS; cut += 1) {
      const folder = join(mounted, `cut${cut}`);
      const writing = spawn(process.execPath, [writer, folder, '-'], {
        stdio: ['ignore', 'pipe', 'ignore'],
      });
      const count = await acknowledgedBy(writing);
      writing.kill('SIGSTOP');
      const acknowledged = count();
      const image = join(scratch.path, 'after');
      copyFileSync(IMAGE, image);
      const ended = new Promise((resolve) => writing.once('exit', resolve));
      writing.kill('SIGKILL');
      await ended;
      expect(runs('mount', '-o', 'loop', image, copied)).toBe(true);
      try {
        const log = readSessionLog(readFileSync(join(copied, `cut${cut}`, NAME)));
        expect(log.events.length).toBeGreaterThanOrEqual(acknowledged);
      } finally {
        spawnSync('umount', [copied]);
        rmSync(image);
      }
    }
  });
});
