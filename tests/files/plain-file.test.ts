/**
 * What bears the name of a file and is a pipe or a device: the program says so and never waits. A read of a pipe without
 * a writer cannot be ended by a signal, so each try is a process of its own with a limit.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  closeSync,
  constants,
  mkdirSync,
  openSync,
  readdirSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listSessions } from '../../src/files/list-sessions.ts';
import { NOT_A_FILE, openPlainFile, readPlainFile } from '../../src/files/plain-file.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { resumeSessionFile } from '../../src/log/read-session-file.ts';
import { makePlace, type Place, PROGRAM } from '../commands/program.ts';
import { begin, fileOf } from '../records/sample-session.ts';
import { TRUE_PROCEDURE } from '../records/true-walk.ts';

/** Far longer than the program takes to start on a busy machine. */
const WAITS_MS = 30_000;
const NAME = '20310506T070809Z-hall-no-signal-0badcafe';

let place: Place;
beforeEach(() => {
  place = makePlace();
  mkdirSync(join(place.sessions, 'drills'), { recursive: true });
});
afterEach(() => place.remove());

function pipe(...names: readonly string[]): string {
  const path = join(place.home, ...names);
  execFileSync('mkfifo', [path]);
  return path;
}

const codeOf = (step: () => unknown) => {
  try {
    step();
    return null;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code;
  }
};

describe.skipIf(process.platform === 'win32')('a pipe or a device', () => {
  it('is not opened, under its own name or behind a link', () => {
    const path = pipe('x');
    const link = join(place.home, 'link');
    symlinkSync(path, link);
    for (const name of [path, link, '/dev/null', '/dev/zero'])
      expect([name, codeOf(() => readPlainFile(name)), codeOf(() => openPlainFile(name))]).toEqual([
        name,
        NOT_A_FILE,
        NOT_A_FILE,
      ]);
    expect(codeOf(() => readPlainFile(place.home))).toBe('EISDIR');
    writeFileSync(join(place.home, 'y'), 'plain');
    expect(readPlainFile(join(place.home, 'y')).toString()).toBe('plain');
    expect(readPlainFile(join(place.home, 'y'), 2).toString()).toBe('pl');
  });

  const tried = (args: readonly string[], input = '') => {
    const { status, signal, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...args], {
      ...{ cwd: place.home, env: place.env, input, encoding: 'utf8' },
      ...{ timeout: WAITS_MS, killSignal: 'SIGKILL' },
    });
    expect([args.join(' '), signal]).toEqual([args.join(' '), null]);
    return { status, told: stdout + stderr };
  };

  it('with the name of a session is told by whatever reads sessions', () => {
    const path = pipe('sessions', `${NAME}.jsonl`);
    pipe('sessions', 'drills', `${NAME}.jsonl`);
    expect(tried(['resume', '--plain']).told).toMatch(/no unfinished session/);
    expect(tried(['records', 'list']).told).not.toMatch(/fault of the program/);
    expect(tried(['drill', '--resume', path]).told).toMatch(/a pipe or a device/);
    expect(readdirSync(place.sessions).sort()).toEqual([`${NAME}.jsonl`, 'drills']);
  });

  it('that stands for a later part or a torn tail does not keep a session from going on', () => {
    const path = join(place.sessions, `${NAME}.jsonl`);
    writeFileSync(path, fileOf(begin({ procedure: TRUE_PROCEDURE })).text);
    pipe('sessions', `${NAME}.part7.jsonl`);
    pipe('sessions', `${NAME}.torn-00000000`);
    const { at, elapsed } = begin().session.opened;
    expect(resumeSessionFile(nodeDisk, path, { at, elapsed })).toMatchObject({ ok: true });
    expect(listSessions(place.sessions).sessions.map(({ read }) => read())).toMatchObject([
      { state: 'unreadable', words: 'this is not a file' },
    ]);
  });

  it('that stands for the settings or a package file is told, or passed over', () => {
    mkdirSync(join(place.home, '.config', 'ohmward'), { recursive: true });
    pipe('.config', 'ohmward', 'config.json');
    pipe('package.json');
    const { told } = tried(['settings']);
    expect(told).toContain('a pipe or a device is where the settings file should be');
  });

  it('that an address of a database names as a certificate is told, and not read', () => {
    writeFileSync(
      join(place.sessions, `${NAME}.jsonl`),
      fileOf(begin({ procedure: TRUE_PROCEDURE })).text,
    );
    const named = pipe('authority.pem');
    for (const key of ['sslrootcert', 'sslcert', 'sslkey']) {
      const url = `postgresql://cart@127.0.0.1:1/shop?sslmode=verify-full&${key}=${named}`;
      place.env['OHMWARD_DATABASE'] = url;
      const { status, told } = tried(['records', 'share']);
      expect(status).toBe(1);
      expect(told).toContain(
        `a pipe or a device is where a file of the address should be (${named})`,
      );
    }
  });

  it('that has come in the place of a folder is not waited for when the folder is synced', () => {
    const path = pipe('folder');
    // With both ends held here, an opening of it does not wait.
    const held = openSync(path, constants.O_RDWR);
    expect(codeOf(() => nodeDisk.syncFolder(path))).toBe('ENOTDIR');
    closeSync(held);
    expect(codeOf(() => nodeDisk.syncFolder(place.home))).toBeNull();
  });

  it('that is named as a procedure or a capture is told', () => {
    const path = pipe('x.yaml');
    for (const args of [
      ['check', path],
      ['wave', path],
    ])
      expect(tried(args).told).toMatch(/pipe|not a file/);
  });
});

it('what the disk is read through opens nothing by itself', () => {
  const src = resolve('src');
  const lines = execFileSync(
    'grep',
    ['-rnE', '\\b(openSync|readFileSync|createReadStream)\\(', src],
    {
      encoding: 'utf8',
    },
  );
  const files = new Set(
    lines
      .trim()
      .split('\n')
      .map((line) => line.slice(src.length + 1).split(':')[0]),
  );
  // Folders that are synced, our own migrations, and a capture that was looked at a moment before.
  expect([...files].sort()).toEqual([
    'commands/calc/read-capture.ts',
    'files/plain-file.ts',
    'log/node-disk.ts',
    'records/shared/migrations.ts',
  ]);
});
