/**
 * Copies the sessions of the shared database into a folder of this user's cache, so that they can be searched, shown
 * and verified like any others, also when the network is gone. Only what is new is fetched.
 */
import { basename, join } from 'node:path';
import type { Client } from 'pg';
import { type LooseEvent, listSessions } from '../../files/list-sessions.ts';
import { sessionFileName, sessionPart } from '../../files/safe-name.ts';
import { canonicalJson } from '../../log/canonical-json.ts';
import type { Disk } from '../../log/disk.ts';
import { sha256 } from '../../log/hash.ts';
import { readSessionLog } from '../../log/read-session.ts';
import { writeWholeFile } from '../../log/write-whole.ts';
import { type Patience, withDatabase } from './connect.ts';
import { SharedProblem } from './shared-problem.ts';

/** No session of a working life is so long, and a cart that means harm takes no other's memory. Our choice. */
const SESSION_BYTES_MOST = 50e6;

/** How many sessions came, and which did not. */
export interface Fetched {
  readonly fetched: number;
  /** Sessions whose chain in the database is not whole, and what is too large for one; they are not copied. */
  readonly doubtful: readonly { readonly session: string; readonly words: string }[];
}

/** Brings `folder` in step with the database. Throws `Unreachable` or `SharedProblem`. */
export async function fetchShared(
  disk: Disk,
  url: string,
  folder: string,
  patience: Patience,
): Promise<Fetched> {
  disk.makeFolder(folder);
  return withDatabase(url, patience, (client) => fetchNew(client, disk, folder));
}

async function fetchNew(client: Client, disk: Disk, folder: string): Promise<Fetched> {
  const here = new Map(
    listSessions(folder).sessions.map(({ path, read }) => [basename(path), headOf(read().last)]),
  );
  // Sums come as texts, since they may be more than a number holds.
  const { rows } = await client.query<{ id: string; started: string; head: string; bytes: string }>(
    `SELECT sessions.id, sessions.started, (array_agg(events.hash ORDER BY events.seq DESC))[1] AS head, sum(octet_length(events.body)) AS bytes
     FROM sessions JOIN events ON events.session = sessions.id
     GROUP BY sessions.id ORDER BY sessions.id`,
  );
  const doubtful: { session: string; words: string }[] = [];
  let fetched = 0;
  for (const { id, started, head, bytes } of rows) {
    const name = fileNameOf(id, started);
    // Not by its length: the owner may have set a forged end aside, and the true one is as long.
    if (here.get(name) === head) continue;
    const words =
      Number(bytes) > SESSION_BYTES_MOST
        ? `it has ${Math.round(Number(bytes) / 1e6)} MB, more than a session can have`
        : await fetchSession(client, disk, id, join(folder, name));
    if (words === null) fetched += 1;
    else doubtful.push({ session: id, words });
  }
  return { fetched, doubtful };
}

async function fetchSession(
  client: Client,
  disk: Disk,
  id: string,
  path: string,
): Promise<string | null> {
  const { rows } = await client.query<{ body: string }>(
    'SELECT body FROM events WHERE session = $1 ORDER BY seq',
    [id],
  );
  const text = rows.map(({ body }) => `${body}\n`).join('');
  const log = readSessionLog(Buffer.from(text));
  if (log.verdict !== 'whole') return log.words ?? 'its hash chain is broken';
  const written = writeWholeFile(disk, path, text);
  if (!written.ok) throw new SharedProblem(written.problem.words, written.problem.fix);
  return null;
}

/** The hash of a session's last line, which binds all before it; null where there is none. */
function headOf(last: LooseEvent | null): string | null {
  try {
    return last && sha256(canonicalJson(last));
  } catch {
    return null; // no line of ours
  }
}

/** Never a path: an id that is no file name of ours gets one. */
function fileNameOf(id: string, started: string): string {
  const name = `${id}.jsonl`;
  if (sessionPart(name)?.part === 1) return name;
  const at = Number.isNaN(Date.parse(started)) ? '1970-01-01T00:00:00Z' : started;
  return sessionFileName(at, id, sha256(id).slice(0, 8));
}
