/** A connection to the shared database, used for one piece of work and closed. */
import { closeSync } from 'node:fs';
import type { Client } from 'pg';
import { errorCodeOf } from '../../files/error-code.ts';
import { NOT_A_FILE, openPlainFile } from '../../files/plain-file.ts';
import { migrate } from './migrations.ts';
import { expectAddress, problemOf, SharedProblem, Unreachable } from './shared-problem.ts';

const CONNECT_MS = 5_000;
const QUERY_MS = 60_000;
/** Pauses between tries; a server that starts anew takes a second or two. */
const PAUSES_MS = [100, 300, 1_000, 2_000] as const;

/** How long an unreachable database is waited for, and how often it is tried. */
export interface Patience {
  /** Milliseconds after which an unreachable database is given up for now. */
  readonly patienceMs: number;
  /** Milliseconds of each pause between tries; the last one repeats. */
  readonly pausesMs?: readonly number[];
}

/**
 * Does `work` on a connection, again on a new one when the connection breaks: work must therefore be such that doing
 * it twice is doing it once. Throws `Unreachable` when patience ends, `SharedProblem` for what must be mended.
 */
export async function withDatabase<T>(
  url: string,
  { patienceMs, pausesMs = PAUSES_MS }: Patience,
  work: (client: Client) => Promise<T>,
): Promise<T> {
  const until = performance.now() + patienceMs;
  for (let tries = 0; ; tries += 1) {
    try {
      return await once(url, work);
    } catch (error) {
      const problem = problemOf(error);
      if (!(problem instanceof Unreachable) || performance.now() >= until) throw problem;
      const pause = pausesMs[Math.min(tries, pausesMs.length - 1)] ?? 0;
      await new Promise((resolve) => setTimeout(resolve, pause));
    }
  }
}

async function once<T>(url: string, work: (client: Client) => Promise<T>): Promise<T> {
  expectAddress(url);
  expectPlainFiles(url);
  const { default: pg } = await import('pg');
  const client = new pg.Client({
    connectionString: withFullCheck(url),
    application_name: 'ohmward',
    connectionTimeoutMillis: CONNECT_MS,
    query_timeout: QUERY_MS,
    keepAlive: true,
  });
  // A connection that breaks between two queries says so here; the next query fails too, and that one is handled.
  client.on('error', () => undefined);
  const end = () => client.end().catch(() => undefined);
  try {
    await client.connect();
  } catch (error) {
    // Of what was never opened, as with a port that is none, the driver waits for the end for ever.
    void end();
    throw error;
  }
  try {
    await migrate(client);
    return await work(client);
  } finally {
    await end();
  }
}

/** The driver takes these modes for `verify-full` too, and says so on standard error in words of its own. */
function withFullCheck(url: string): string {
  if (/[?&]uselibpqcompat=/.test(url)) return url;
  return url.replace(/([?&]sslmode=)(prefer|require|verify-ca)(?=&|$)/g, '$1verify-full');
}

/** The files that an address can name; the driver opens them itself, and would wait for a pipe without a writer. */
const FILES = ['sslrootcert', 'sslcert', 'sslkey'];

function expectPlainFiles(url: string): void {
  const named = new URLSearchParams(url.slice(url.indexOf('?') + 1));
  for (const path of FILES.map((name) => named.get(name)).filter((one) => one !== null)) {
    try {
      closeSync(openPlainFile(path));
    } catch (error) {
      // What else is wrong with it the driver says.
      if (errorCodeOf(error) !== NOT_A_FILE) continue;
      throw new SharedProblem(
        `a pipe or a device is where a file of the address should be (${path})`,
        'check sslrootcert, sslcert and sslkey in the address',
      );
    }
  }
}
