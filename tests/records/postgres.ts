/**
 * A PostgreSQL server of its own for a test: Debian's package, in a folder that is removed afterwards, on a free port of
 * this machine, as a user without rights. Works where the package is installed: `apt-get install postgresql`.
 */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chownSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Postgres {
  readonly port: number;
  /** Address of a new, empty database. */
  readonly database: (name: string) => string;
  /** Stops as a power failure would, or after the present statements, and starts again. */
  readonly restart: (how: 'immediate' | 'fast') => Promise<void>;
  readonly stop: () => Promise<void>;
  readonly start: () => Promise<void>;
  /** Stops it and removes its folder. */
  readonly remove: () => Promise<void>;
}

const SIGNALS = { immediate: 'SIGQUIT', fast: 'SIGINT' } as const;
const START_MS = 30_000;

export async function startPostgres(): Promise<Postgres> {
  const bin = binaries();
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-postgres-'));
  const user = userWithoutRights();
  if (user) chownSync(folder, user.uid, user.gid);
  const env = { PATH: process.env['PATH'], LC_ALL: 'C', HOME: folder };
  const options = { cwd: folder, env, ...user } as const;
  const data = join(folder, 'data');
  execFileSync(
    join(bin, 'initdb'),
    ['-D', data, '-U', 'ohmward', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync'],
    { ...options, stdio: 'pipe' },
  );
  const port = await freePort();
  const sockets = join(folder, 'sockets');
  mkdirSync(sockets);
  if (user) chownSync(sockets, user.uid, user.gid);
  let server: ChildProcess | null = null;
  const start = async () => {
    // Servers are ended here, never the machine: what they wrote need not reach the medium.
    const settings = [
      'listen_addresses=127.0.0.1',
      `unix_socket_directories=${sockets}`,
      'fsync=off',
    ];
    const args = ['-D', data, '-p', String(port), ...settings.flatMap((one) => ['-c', one])];
    server = spawn(join(bin, 'postgres'), args, { ...options, stdio: 'ignore' });
    const until = performance.now() + START_MS;
    while (!(await answers(join(bin, 'psql'), port))) {
      if (server.exitCode !== null || performance.now() > until)
        throw new Error(`the PostgreSQL server did not start (exit code ${server.exitCode})`);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  const stop = async (how: keyof typeof SIGNALS = 'fast') => {
    const running = server;
    server = null;
    if (!running || running.exitCode !== null || running.signalCode !== null) return;
    const ended = new Promise((resolve) => running.once('exit', resolve));
    running.kill(SIGNALS[how]);
    await ended;
  };
  await start();
  return {
    port,
    database: (name) => {
      psql(join(bin, 'psql'), port, `CREATE DATABASE "${name}"`);
      return `postgresql://ohmward@127.0.0.1:${port}/${name}`;
    },
    restart: async (how) => {
      await stop(how);
      await start();
    },
    stop: () => stop(),
    start,
    remove: async () => {
      await stop('immediate');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function binaries(): string {
  const debian = '/usr/lib/postgresql';
  const places = existsSync(debian)
    ? readdirSync(debian)
        .sort((a, b) => Number(b) - Number(a))
        .map((version) => join(debian, version, 'bin'))
    : [];
  places.push(...(process.env['PATH'] ?? '').split(':'));
  const bin = places.find((place) =>
    ['initdb', 'postgres', 'psql'].every((one) => existsSync(join(place, one))),
  );
  if (bin === undefined)
    throw new Error('these tests need a PostgreSQL server: apt-get install postgresql');
  return bin;
}

/** The server refuses to run as root. */
function userWithoutRights(): { uid: number; gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const number = (flag: string) =>
    Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }).trim());
  return { uid: number('-u'), gid: number('-g') };
}

function psql(program: string, port: number, sql: string): void {
  const args = [
    '-h',
    '127.0.0.1',
    '-p',
    String(port),
    '-U',
    'ohmward',
    '-d',
    'postgres',
    '-qc',
    sql,
  ];
  execFileSync(program, args, { stdio: 'pipe' });
}

async function answers(program: string, port: number): Promise<boolean> {
  const open = await new Promise<boolean>((resolve) => {
    const socket = connect(port, '127.0.0.1');
    socket.once('connect', () => resolve(true)).once('error', () => resolve(false));
    socket.once('connect', () => socket.destroy());
  });
  if (!open) return false;
  try {
    psql(program, port, 'SELECT 1');
    return true;
  } catch {
    return false; // it listens before it has recovered
  }
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  return typeof address === 'object' && address ? address.port : 0;
}
