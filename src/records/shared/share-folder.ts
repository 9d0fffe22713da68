/**
 * Sends what a folder of sessions has and the shared database has not. The files are the truth and the database is a
 * copy: every batch may be sent twice, a cart without a network goes on working and catches up later. An event that
 * stands there with another hash is an alarm and is never replaced, in either place.
 */
import type { Client } from 'pg';
import { listSessions } from '../../files/list-sessions.ts';
import { canonicalJson } from '../../log/canonical-json.ts';
import type { Disk } from '../../log/disk.ts';
import { sha256 } from '../../log/hash.ts';
import { openSessionFile } from '../../log/open-session.ts';
import { type Patience, withDatabase } from './connect.ts';
import { isInRows, problemOf, Unreachable } from './shared-problem.ts';

/** A session of which the database has more than the file: written on from elsewhere, or the file lost its end. */
export interface Ahead {
  readonly session: string;
  readonly path: string;
  /** Events in the file, and there. */
  readonly here: number;
  readonly there: number;
}

/** Two different events under one number. */
export interface Alarm {
  readonly session: string;
  readonly seq: number;
  readonly here: string;
  readonly there: string;
  readonly path: string;
}

/** What was sent, what waits, and what does not agree with the database. */
export interface ShareOutcome {
  /** Sessions that are in step now. */
  readonly inStep: number;
  /** Events that were not there before. */
  readonly sent: number;
  readonly alarms: readonly Alarm[];
  readonly ahead: readonly Ahead[];
  /** Files that were not sent, with the reason. */
  readonly left: readonly { readonly path: string; readonly words: string }[];
  /** Sessions that wait because the database went away, and why; null when none does. */
  readonly waiting: { readonly sessions: number; readonly words: string } | null;
}

/** The sessions of one cart, and the database that they go to. */
export interface ShareFrom {
  readonly disk: Disk;
  readonly url: string;
  /** Last part of each session to share. */
  readonly paths: readonly string[];
  /** Name of this cart, as the database shows it. */
  readonly cart: string;
  readonly patience: Patience;
}

/** Events in one transaction: what is lost when a connection breaks is sent again. */
const BATCH = 200;

/** The last parts of all sessions of a folder; words when it cannot be read. */
export function sessionPaths(folder: string): { paths: string[] } | { words: string } {
  const { sessions, words } = listSessions(folder);
  return words === undefined ? { paths: sessions.map(({ path }) => path) } : { words };
}

/** Brings the database in step with the files. Throws `SharedProblem` for what a person must mend. */
export async function shareSessions(from: ShareFrom): Promise<ShareOutcome> {
  const { disk, url, paths, cart, patience } = from;
  const alarms: Alarm[] = [];
  const ahead: Ahead[] = [];
  const left: { path: string; words: string }[] = [];
  let inStep = 0;
  let sent = 0;
  let next = 0;
  const count = (events: number) => {
    sent += events;
  };
  const work = async (client: Client) => {
    for (; next < paths.length; next += 1) {
      const path = paths[next]!;
      let local = readLocal(disk, path);
      if ('words' in local) {
        left.push({ path, words: local.words });
        continue;
      }
      const { id: session } = local;
      let found = await sendSession(client, local, cart, count);
      // Of a session that is just being worked on another run may have sent what was not in the file a moment ago.
      for (let here = 0; found && 'there' in found && here < local.lines.length; ) {
        here = local.lines.length;
        const again = readLocal(disk, path);
        if ('words' in again || again.lines.length <= here) break;
        local = again;
        found = await sendSession(client, local, cart, count);
      }
      if (found === null) inStep += 1;
      else if ('seq' in found) alarms.push({ ...found, session, path });
      else if ('there' in found)
        ahead.push({ session, path, here: local.lines.length, there: found.there });
      else left.push({ path, words: found.words });
    }
  };
  // Once also for no session: the owner's first run makes the tables, and a wrong address is told.
  do {
    const before = next + sent;
    try {
      await withDatabase(url, patience, work);
    } catch (error) {
      if (!(error instanceof Unreachable)) throw error;
      // Whoever comes forward between two breaks goes on; patience is for a database that stays away.
      if (next + sent > before) continue;
      // What could not be sent with the network back does not wait for it.
      const rest = paths.slice(next).map((path) => ({ path, local: readLocal(disk, path) }));
      const lost = rest.flatMap(({ path, local }) =>
        'words' in local ? [{ path, words: local.words }] : [],
      );
      left.push(...lost);
      const sessions = rest.length - lost.length;
      const waiting = sessions === 0 && lost.length > 0 ? null : { sessions, words: error.message };
      return { inStep, sent, alarms, ahead, left, waiting };
    }
  } while (next < paths.length);
  return { inStep, sent, alarms, ahead, left, waiting: null };
}

interface LocalSession {
  readonly id: string;
  readonly started: string;
  readonly lines: readonly SharedLine[];
}

interface SharedLine {
  readonly seq: number;
  readonly hash: string;
  readonly prev: string | null;
  readonly body: string;
}

function readLocal(disk: Disk, path: string): LocalSession | { words: string } {
  const opened = openSessionFile(disk, path);
  if (!opened.ok) return { words: opened.problem.words };
  const { events, log } = opened.value;
  // What stands before a damage may itself be what was changed; a torn tail was never acknowledged.
  if (log.verdict === 'damaged') return { words: log.words ?? 'it is damaged' };
  const [first] = events;
  const id = first?.['id'];
  if (first?.type !== 'session-opened' || typeof id !== 'string' || id === '')
    return { words: 'it is not a session' };
  const lines = events.map((event): SharedLine => {
    const body = canonicalJson(event);
    return { seq: event.seq, hash: sha256(body), prev: event.prev, body };
  });
  return { id, started: first.at, lines };
}

type LineDifference = Pick<Alarm, 'seq' | 'here' | 'there'>;

/** More events there than here; or why nothing may be sent. */
type Unlike = LineDifference | { readonly there: number } | { readonly words: string };

/** Sends what is missing; what stands in the way, or null when both are the same now. */
async function sendSession(
  client: Client,
  local: LocalSession,
  cart: string,
  count: (events: number) => void,
): Promise<Unlike | null> {
  const { id, lines, started } = local;
  const head = await client.query<{ seq: number; hash: string }>(
    'SELECT seq, hash FROM events WHERE session = $1 ORDER BY seq DESC LIMIT 1',
    [id],
  );
  const there = head.rows[0] ?? { seq: 0, hash: null };
  // Chains with the same hash at one place are the same up to it: only the rest has to be sent.
  if (there.seq > 0 && lines[there.seq - 1]?.hash !== there.hash) {
    const alarm = await firstDifference(client, local);
    if (alarm !== null) return alarm;
    if (there.seq > lines.length) return { there: there.seq };
  }
  if (there.seq === lines.length) return null;
  const owner = await otherOwner(client, id);
  if (owner !== null)
    return {
      words: `the computer "${owner}" has shared this session, and only that computer may add to it; whose it is the owner of the tables decides (docs/security.md)`,
    };
  for (let from = there.seq; from < lines.length; from += BATCH) {
    const batch = lines.slice(from, from + BATCH);
    try {
      await client.query('BEGIN');
      await client.query(
        'INSERT INTO sessions (id, cart, started) VALUES ($1, $2, $3) ON CONFLICT (id) DO NOTHING',
        [id, cart, started],
      );
      const inserted = await client.query(
        `INSERT INTO events (session, seq, hash, prev, body)
         SELECT $1, line.seq, line.hash, line.prev, line.body
         FROM unnest($2::integer[], $3::text[], $4::text[], $5::text[]) AS line (seq, hash, prev, body)
         ORDER BY line.seq
         ON CONFLICT (session, seq) DO NOTHING`,
        [
          id,
          batch.map(({ seq }) => seq),
          batch.map(({ hash }) => hash),
          batch.map(({ prev }) => prev),
          batch.map(({ body }) => body),
        ],
      );
      const alarm =
        inserted.rowCount === batch.length ? null : await firstDifference(client, local);
      await client.query(alarm === null ? 'COMMIT' : 'ROLLBACK');
      if (alarm !== null) return alarm;
      count(inserted.rowCount ?? 0);
    } catch (error) {
      if (!isInRows(error)) throw error;
      await client.query('ROLLBACK');
      const alarm = await firstDifference(client, local);
      // One session that the tables do not take must not keep the others from being shared.
      return alarm ?? { words: problemOf(error).message };
    }
  }
  return null;
}

/** The cart whose session it is there, where that is another one and the tables let only that one add to it; else null. */
async function otherOwner(client: Client, id: string): Promise<string | null> {
  const { rows } = await client.query<{ cart: string }>(
    `SELECT cart FROM sessions
     WHERE id = $1 AND owner IS DISTINCT FROM current_user AND row_security_active('sessions')`,
    [id],
  );
  return rows[0]?.cart ?? null;
}

/** The first event that stands in both places with different hashes. */
async function firstDifference(
  client: Client,
  { id, lines }: LocalSession,
): Promise<LineDifference | null> {
  const { rows } = await client.query<{ seq: number; hash: string }>(
    'SELECT seq, hash FROM events WHERE session = $1 ORDER BY seq',
    [id],
  );
  for (const { seq, hash } of rows) {
    const here = lines[seq - 1]?.hash;
    if (here !== undefined && here !== hash) return { seq, here, there: hash };
  }
  return null;
}
