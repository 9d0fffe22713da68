/** The program without a terminal: lines in, text out, everything in a folder of its own; in this process, or as built. */
import { type ChildProcessWithoutNullStreams, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { main } from '../../src/commands/program.ts';
import type { StoredEvent } from '../../src/log/event-line.ts';
import { QUICK } from '../quick-node.ts';

export const PROGRAM = resolve('dist/ohmward.mjs');

/** A folder for one test's home, settings and sessions. */
export interface Place {
  readonly home: string;
  readonly sessions: string;
  readonly env: NodeJS.ProcessEnv;
  readonly remove: () => void;
}

export function makePlace(): Place {
  if (!existsSync(PROGRAM)) throw new Error('build the program first: npm run build');
  const home = realpathSync(mkdtempSync(join(tmpdir(), 'ohmward-test-')));
  const { PATH } = process.env;
  const env = { PATH, HOME: home, LANG: 'C.UTF-8', OHMWARD_SESSIONS: join(home, 'sessions') };
  return {
    home,
    sessions: join(home, 'sessions'),
    env,
    remove: () => rmSync(home, { recursive: true, force: true }),
  };
}

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/**
 * Runs to its end in this process, from the same entry as the built program: a process of its own takes a second each
 * time to load what is loaded here already. What depends on the process (signals, kills, what is bundled) needs
 * `runBuilt` or `startProgram`.
 */
export function runProgram(place: Place, args: readonly string[], input = ''): Promise<Ran> {
  return runOver(place, args, Readable.from(input === '' ? [] : [Buffer.from(input)]), () => {});
}

/**
 * The same as a talk: each turn is what is sent once the program waits, the first of a program at once; a function does
 * something first, such as taking the disk away. After the last turn the input ends.
 */
export function converse(
  place: Place,
  args: readonly string[],
  turns: readonly (string | (() => string))[],
): Promise<Ran> {
  const lines = new PassThrough();
  const left = [...turns];
  const next = () =>
    setImmediate(() => {
      const turn = left.shift();
      if (turn === undefined) lines.end();
      else lines.write(`${typeof turn === 'string' ? turn : turn()}\n`);
    });
  const isForProgram = args.includes('--rpc');
  if (isForProgram) next();
  return runOver(place, args, lines, (text) => {
    if (isForProgram || !text.endsWith('\n')) next();
  });
}

async function runOver(
  place: Place,
  args: readonly string[],
  lines: Readable,
  onOut: (text: string) => void,
): Promise<Ran> {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => {
      out += text;
      onOut(text);
    },
    err: (text: string) => {
      err += text;
    },
    env: place.env,
    cwd: place.home,
  };
  const stood = process.cwd();
  const own = Object.getOwnPropertyDescriptor(process, 'stdin')!;
  Object.defineProperty(process, 'stdin', { configurable: true, value: lines });
  process.chdir(place.home);
  try {
    const code = await main(args, io);
    return { code, out, err };
  } finally {
    process.chdir(stood);
    Object.defineProperty(process, 'stdin', own);
  }
}

/** Runs the built program to its end, as a process of its own. */
export function runBuilt(place: Place, args: readonly string[], input = ''): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...QUICK, PROGRAM, ...args], {
    cwd: place.home,
    env: place.env,
    input,
    encoding: 'utf8',
  });
  return { code: status ?? -1, out: stdout, err: stderr };
}

export function startProgram(
  place: Place,
  args: readonly string[],
): ChildProcessWithoutNullStreams {
  const command = [...QUICK, PROGRAM, ...args];
  return spawn(process.execPath, command, { cwd: place.home, env: place.env });
}

/** The session files of the place by the second they began in; of those of one second either may stand first. */
export function sessionFiles(place: Place): string[] {
  if (!existsSync(place.sessions)) return [];
  return readdirSync(place.sessions)
    .filter((name) => name.endsWith('.jsonl'))
    .sort()
    .map((name) => join(place.sessions, name));
}

/** The whole lines of a session file as events. */
export function eventsOf(path: string): StoredEvent[] {
  const lines = readFileSync(path, 'utf8').split('\n').slice(0, -1);
  return lines.map((line) => JSON.parse(line) as StoredEvent);
}

/** The session of the place that has captures in it, else its first. */
export function sessionWithCaptures(place: Place): string {
  const files = sessionFiles(place);
  const hasCapture = (path: string) =>
    eventsOf(path).some((event) => event['capture'] !== undefined);
  const path = files.find(hasCapture) ?? files[0];
  if (path === undefined) throw new Error('there is no session');
  return path;
}

/** Events without when, who and which file: what two ways of answering have in common. */
export function timeless(events: readonly StoredEvent[]): unknown[] {
  return events.map(({ at: _at, elapsed: _elapsed, prev: _prev, seq: _seq, ...rest }) =>
    rest.type === 'session-opened' ? { ...rest, id: '', program: '', by: '' } : rest,
  );
}
