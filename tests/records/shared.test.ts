import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { main } from '../../src/commands/program.ts';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { canonicalJson } from '../../src/log/canonical-json.ts';
import { type LogEvent, sealEvent } from '../../src/log/event-line.ts';
import { sha256 } from '../../src/log/hash.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { sessionPaths, shareSessions } from '../../src/records/shared/share-folder.ts';
import { problemOf, SharedProblem, Unreachable } from '../../src/records/shared/shared-problem.ts';
import { LONG } from '../campaign.ts';
import { makePlace, PROGRAM, runBuilt, runProgram, sessionFiles } from '../commands/program.ts';
import { type Postgres, startPostgres } from './postgres.ts';
import { begin, fileOf, finishedWalk } from './sample-session.ts';

let server: Postgres;
beforeAll(async () => {
  server = await startPostgres();
}, 60_000);
afterAll(() => server?.remove(), 60_000);

let home = '';
let url = '';
let databases = 0;
beforeEach(async () => {
  home = mkdtempSync(join(tmpdir(), 'ohmward-shared-'));
  databases += 1;
  url = await server.database(`shop${databases}`);
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

async function ask<T extends pg.QueryResultRow>(sql: string, values: unknown[] = []) {
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query<T>(sql, values)).rows;
  } finally {
    await client.end();
  }
}

async function records(folder: string, args: readonly string[], database = url) {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    env: {
      HOME: home,
      XDG_CONFIG_HOME: home,
      OHMWARD_SESSIONS: folder,
      OHMWARD_DATABASE: database,
    },
    cwd: home,
  };
  const code = await main(['records', ...args], io);
  return { code, out, err };
}

function cart(name: string, walk = finishedWalk(), n = 1): { folder: string; path: string } {
  const folder = join(home, name);
  mkdirSync(folder, { recursive: true });
  const file = sessionFileName(walk.session.opened.at, 'lab', n.toString(16).padStart(8, '0'));
  writeFileSync(join(folder, file), fileOf(walk).text);
  return { folder, path: join(folder, file) };
}

describe('records share', () => {
  it('puts every line of a session into the database as it stands in the file, once', async () => {
    const { folder, path } = cart('a');
    const lines = readFileSync(path, 'utf8').split('\n').slice(0, -1);
    expect(await records(folder, ['share'])).toEqual({
      code: 0,
      out: `1 sessions in step, ${lines.length} events sent\n`,
      err: '',
    });
    const rows = await ask('SELECT seq, hash, body FROM events ORDER BY seq');
    expect(rows).toEqual(
      lines.map((body, index) => ({ seq: index + 1, hash: sha256(body), body })),
    );
    expect((await records(folder, ['share'])).out).toBe('1 sessions in step, 0 events sent\n');
  });

  it('an event that is another one there is an alarm with both hashes, and nothing is replaced', async () => {
    const first = cart('a');
    await records(first.folder, ['share']);
    const before = await ask('SELECT * FROM events ORDER BY seq');
    const other = cart('b', begin({ id: 'lab-0001', person: 'Somebody Else' }));
    const { code, out, err } = await records(other.folder, ['share']);
    expect([code, out]).toEqual([1, '0 sessions in step, 0 events sent\n']);
    const here = sha256(readFileSync(other.path, 'utf8').split('\n')[0]!);
    expect(err).toContain('ALARM: event 1 of session lab-0001');
    expect(err).toContain(`here:  ${here}`);
    expect(err).toContain(`there: ${before[0]!['hash']}`);
    expect(await ask('SELECT * FROM events ORDER BY seq')).toEqual(before);
  });

  it('a chain that forks after a common beginning is an alarm at the fork', async () => {
    const { folder, path } = cart('a');
    await records(folder, ['share']);
    const lines = readFileSync(path, 'utf8').split('\n').slice(0, -1);
    // The same beginning, then two events of its own: the first at a number that is taken.
    let prev = sha256(lines[2]!);
    const own = ['one', 'two'].map((text, index) => {
      const at = JSON.parse(lines[2]!) as { at: string; elapsed: number };
      const event = { type: 'note-added', step: 'feed', text, at: at.at, elapsed: at.elapsed };
      const sealed = sealEvent(event, 4 + index, prev);
      prev = sealed.hash;
      return sealed;
    });
    const fork = cart('b');
    writeFileSync(
      fork.path,
      `${[...lines.slice(0, 3), ...own.map(({ line }) => line)].join('\n')}\n`,
    );
    const { code, err } = await records(fork.folder, ['share']);
    expect(code).toBe(1);
    expect(err).toContain('ALARM: event 4 of');
    expect(err).toContain(`here:  ${own[0]!.hash}`);
    expect(err).toContain(`there: ${sha256(lines[3]!)}`);
  });

  it('a session that grows while two runs share it is no alarm: the later run looks at the file again', async () => {
    const { path } = cart('a');
    const whole = readFileSync(path);
    let asked = 0;
    // What the file was when this run read it first; another run sent the rest before it got to the database.
    const before = whole.subarray(0, whole.lastIndexOf('\n', -2) + 1);
    const disk = { ...nodeDisk, read: () => (asked++ === 0 ? before : whole) };
    const from = { url, paths: [path], cart: 'a', patience: { patienceMs: 3_000 } };
    await shareSessions({ ...from, disk: nodeDisk });
    const later = await shareSessions({ ...from, disk });
    expect(later).toMatchObject({ inStep: 1, sent: 0, ahead: [], alarms: [] });
    const cut = await shareSessions({ ...from, disk: { ...nodeDisk, read: () => before } });
    expect(cut.ahead).toHaveLength(1);
  });

  it('a damaged file is left out and named; the others are shared', async () => {
    const good = cart('a');
    const bad = cart('a', finishedWalk({ id: 'bad' }), 2);
    writeFileSync(bad.path, readFileSync(bad.path, 'utf8').replace('"person"', '"parson"'));
    const { code, out, err } = await records(good.folder, ['share']);
    expect([code, out.slice(0, 18)]).toEqual([1, '1 sessions in step']);
    expect(err).toContain(`not shared: ${bad.path}`);
  });

  it('without a network nothing is lost: it says what waits, and the next time sends it', async () => {
    const { folder } = cart('a');
    const away = 'postgresql://ohmward@127.0.0.1:1/none';
    const { code, out, err } = await records(folder, ['share'], away);
    expect([code, out]).toEqual([1, '0 sessions in step, 0 events sent\n']);
    expect(err).toContain('1 sessions wait; run it again when the network is back');
    expect((await records(folder, ['share'])).code).toBe(0);
  }, 30_000);

  it('a database that is not there, and none named, are told with the way out', async () => {
    const { folder } = cart('a');
    const missing = await records(folder, ['share'], url.replace(/\w+$/, 'nowhere'));
    expect(missing).toMatchObject({ code: 1, err: expect.stringContaining('createdb') });
    const none = await records(folder, ['share'], '');
    expect(none).toMatchObject({ code: 2, err: expect.stringContaining('settings database') });
  });
});

it('the built program shares each session as it ends, when the settings say so', async () => {
  const place = makePlace();
  try {
    const settings = join(place.home, '.config', 'ohmward');
    mkdirSync(settings, { recursive: true });
    const afterSession = [process.execPath, PROGRAM, 'records', 'share'];
    writeFileSync(join(settings, 'config.json'), JSON.stringify({ database: url, afterSession }));
    const bench = ['run', 'hall-no-signal', '--bench', 'wire.signal.open', '--unattended'];
    expect(runBuilt(place, bench).code).toBe(0);
    const [path] = sessionFiles(place);
    const rows = await ask<{ body: string }>('SELECT body FROM events ORDER BY seq');
    expect(rows.map(({ body }) => `${body}\n`).join('')).toBe(readFileSync(path!, 'utf8'));
    expect((await runProgram(place, ['records', 'list', '--shared'])).out).toContain(
      'hall-no-signal',
    );
    expect((await runProgram(place, ['settings'])).out).toContain(url);
    const secret = url.replace('ohmward@', 'ohmward:wrench:@9@');
    for (const [address, shown] of [
      [
        'postgresql://h/db?user=cart&password=S3cr:t@pw',
        'postgresql://h/db?user=cart&password=***',
      ],
      ['postgresql://h/db?password=S3cr&t@pw&sslmode=require', 'password=***&***&sslmode=require'],
      ['postgresql://cart:S3cr/t@pw@h/db', '(an address that cannot be read'],
      ['postgresql://cart:33/t@pw@h/db', '(an address that cannot be read'],
      ['postgresql://cart:S3cr%40t@h/db', 'postgresql://cart:***@h/db'],
    ] as const) {
      await runProgram(place, ['settings', 'database', address]);
      const { out } = await runProgram(place, ['settings', 'database']);
      expect(out).toContain(shown);
      expect(out).not.toMatch(/S3cr|t@pw|33|pw/);
    }
    await runProgram(place, ['settings', 'database', secret]);
    for (const args of [['settings'], ['settings', '--json'], ['settings', 'database']])
      expect((await runProgram(place, args)).out).toMatch(
        /^(?![\s\S]*wrench)[\s\S]*ohmward:\*\*\*@127/,
      );
  } finally {
    place.remove();
  }
}, 60_000);

describe('--shared', () => {
  it('finds and shows what other carts shared, also when the network is gone', async () => {
    await records(cart('a').folder, ['share']);
    const empty = join(home, 'b');
    mkdirSync(empty);
    expect((await records(empty, ['find', 'green'])).code).toBe(1);
    const found = await records(empty, ['find', 'green', '--shared', '--plate', 'qx47', '--json']);
    expect(JSON.parse(found.out).sessions).toMatchObject([{ id: 'lab-0001', verdict: 'cured' }]);
    const shown = await records(empty, ['show', 'last', '--shared']);
    expect(shown.out).toMatch(/^# Diagnosis record/);
    await server.stop();
    try {
      const offline = await records(empty, ['show', 'last', '--shared']);
      expect(offline.out).toBe(shown.out);
      expect(offline.err).toContain('the database cannot be reached, this is what was there');
    } finally {
      await server.start();
    }
  }, 60_000);

  it('fetches what a session gained since', async () => {
    const { folder, path } = cart('a');
    const lines = readFileSync(path, 'utf8').split('\n').slice(0, -1);
    writeFileSync(path, `${lines.slice(0, 5).join('\n')}\n`);
    await records(folder, ['share']);
    const events = async () =>
      JSON.parse((await records(folder, ['verify', 'last', '--shared', '--json'])).out).sessions[0]
        .events;
    expect(await events()).toBe(5);
    appendFileSync(path, `${lines.slice(5).join('\n')}\n`);
    await records(folder, ['share']);
    expect(await events()).toBe(lines.length);
  });

  it('an id that is a path stays in the folder', async () => {
    await records(cart('a', begin({ id: '../../escape' })).folder, ['share']);
    const { code, out } = await records(home, ['list', '--shared', '--json']);
    expect(code).toBe(0);
    expect(JSON.parse(out).sessions[0]).toMatchObject({
      id: '../../escape',
      file: expect.stringMatching(/^\d{8}T\d{6}Z-escape-[0-9a-f]{8}\.jsonl$/),
    });
  });
});

describe('the tables', () => {
  beforeEach(async () => {
    await records(cart('a').folder, ['share']);
  });

  it.each([
    ['another event under a taken number', 2, 1],
    ['an event that follows none', 900, 1],
    ['an event whose hash is not its own', 'last', 'wrong'],
  ])('refuse %s', async (_, seq, how) => {
    const [last] = await ask<{ seq: number; hash: string; session: string }>(
      'SELECT session, seq, hash FROM events ORDER BY seq DESC LIMIT 1',
    );
    const body = canonicalJson({ any: 'event' });
    const values = [
      last!.session,
      seq === 'last' ? last!.seq + 1 : seq,
      how === 'wrong' ? sha256('other') : sha256(body),
      last!.hash,
      body,
    ];
    const insert =
      'INSERT INTO events (session, seq, hash, prev, body) VALUES ($1, $2, $3, $4, $5)';
    await expect(ask(insert, values)).rejects.toMatchObject({ code: expect.stringMatching(/^23/) });
    const right = [last!.session, last!.seq + 1, sha256(body), last!.hash, body];
    await expect(ask(insert, right)).resolves.toEqual([]);
  });

  it('let no event be changed or removed', async () => {
    for (const sql of ["UPDATE events SET body = 'x'", 'DELETE FROM events', 'TRUNCATE events'])
      await expect(ask(sql)).rejects.toThrow('events are only ever added');
  });

  it('of a newer program are left alone', async () => {
    await ask("INSERT INTO ohmward_migrations (name, hash) VALUES ('999-later.sql', 'x')");
    const { code, err } = await records(join(home, 'a'), ['share']);
    expect([code, err]).toEqual([1, expect.stringContaining('newer than this program')]);
  });
});

/** The lines of a page for the owner of the tables, for one cart. */
function grantsOf(name: string): string {
  const page = readFileSync('docs/security.md', 'utf8');
  const [, sql = ''] = /```sql\n(CREATE ROLE[\s\S]*?)```/.exec(page) ?? [];
  return sql.replaceAll('cart_one', name);
}

describe('carts with the rights that the documentation gives them', () => {
  let carts: readonly [string, string];
  beforeEach(async () => {
    carts = [`one${databases}`, `two${databases}`];
    await records(cart('a', finishedWalk({ id: 'first' })).folder, ['share']);
    for (const name of carts) await ask(grantsOf(name));
  });
  const as = (name: string) => url.replace('ohmward@', `${name}:secret@`);
  const asked = async (name: string, sql: string, values: unknown[] = []) => {
    const client = new pg.Client({ connectionString: as(name) });
    await client.connect();
    try {
      return (await client.query(sql, values)).rowCount;
    } finally {
      await client.end();
    }
  };
  const events = () =>
    ask<{ seq: number; hash: string }>(
      "SELECT seq, hash FROM events WHERE session = 'job' ORDER BY seq",
    );
  /** An event that nobody's file has, behind the last one there. */
  const forge = async (name: string) => {
    const last = (await events()).at(-1)!;
    const body = canonicalJson({
      type: 'note-added',
      text: 'customer agreed to 5000 EUR',
      seq: last.seq + 1,
    });
    return asked(
      name,
      "INSERT INTO events (session, seq, hash, prev, body) VALUES ('job', $1, $2, $3, $4)",
      [...[last.seq + 1, sha256(body), last.hash, body]],
    );
  };

  it('share their own sessions and read all', async () => {
    const own = cart('b', finishedWalk({ id: 'job' }));
    expect(await records(own.folder, ['share'], as(carts[0]))).toMatchObject({ code: 0, err: '' });
    const list = await records(own.folder, ['list', '--shared', '--json'], as(carts[1]));
    expect(JSON.parse(list.out).sessions).toHaveLength(2);
  });

  it('add nothing to the session of another, change nothing and take nothing away', async () => {
    const own = cart('b', finishedWalk({ id: 'job' }));
    const lines = readFileSync(own.path, 'utf8').split('\n').slice(0, -1);
    writeFileSync(own.path, `${lines.slice(0, 4).join('\n')}\n`);
    await records(own.folder, ['share'], as(carts[0]));
    const before = await events();
    await expect(forge(carts[1])).rejects.toThrow('row-level security');
    for (const sql of [
      "UPDATE sessions SET owner = current_user WHERE id = 'job'",
      "SELECT set_events_aside('job', 1)",
      'ALTER TABLE events DISABLE ROW LEVEL SECURITY',
      "INSERT INTO sessions (id, cart, started, owner) VALUES ('x', 'x', 'x', 'ohmward')",
    ])
      await expect(asked(carts[1], sql)).rejects.toThrow(/permission|owner|row-level/);
    writeFileSync(own.path, `${lines.join('\n')}\n`);
    const { code, err } = await records(own.folder, ['share'], as(carts[1]));
    expect([code, err]).toEqual([1, expect.stringContaining('only that cart may add to it')]);
    expect(await events()).toEqual(before);
    expect((await records(own.folder, ['share'], as(carts[0]))).code).toBe(0);
  });

  it('more there than in the file is an alarm, and the owner sets it aside so that the true one goes on', async () => {
    const own = cart('b', finishedWalk({ id: 'job' }));
    const lines = readFileSync(own.path, 'utf8').split('\n').slice(0, -1);
    writeFileSync(own.path, `${lines.slice(0, 4).join('\n')}\n`);
    await records(own.folder, ['share'], as(carts[0]));
    await forge(carts[0]);
    const { code, out, err } = await records(own.folder, ['share'], as(carts[0]));
    expect([code, out]).toEqual([1, '0 sessions in step, 0 events sent\n']);
    expect(err).toContain('ALARM: the database has 5 events of session job, the file has 4');
    expect(err).toContain('set_events_aside (docs/security.md)');
    writeFileSync(own.path, `${lines.join('\n')}\n`);
    expect((await records(own.folder, ['share'], as(carts[0]))).err).toContain(
      'event 5 of session job',
    );
    await ask("SELECT set_events_aside('job', 5)");
    expect(await records(own.folder, ['share'], as(carts[0]))).toMatchObject({ code: 0, err: '' });
    expect(await events()).toHaveLength(lines.length);
    expect(await ask('SELECT seq, body FROM events_set_aside')).toMatchObject([
      { seq: 5, body: expect.stringContaining('5000 EUR') },
    ]);
    await expect(ask('DELETE FROM events')).rejects.toThrow('events are only ever added');
  });

  it('a session that another cart has taken is set aside whole, and belongs to whom it is', async () => {
    const own = cart('b', finishedWalk({ id: 'job' }));
    const other = cart('c', begin({ id: 'job', person: 'Somebody Else' }));
    await records(other.folder, ['share'], as(carts[1]));
    expect((await records(own.folder, ['share'], as(carts[0]))).code).toBe(1);
    await ask("SELECT set_events_aside('job', 1)");
    expect(await records(own.folder, ['share'], as(carts[0]))).toMatchObject({ code: 0, err: '' });
  });
});

describe('a mistake in the address is told as one, and not as a network that is away', () => {
  it.each([
    ['no address', () => 'shop server', /this is not a database address/],
    ['a port that is none', () => 'postgresql://a@h:x/db', /this is not a database address/],
    ['TLS that the server has not', () => `${url}?sslmode=verify-full`, /no encrypted connection/],
    [
      'a certificate that is not there',
      () => `${url}?sslmode=verify-full&sslrootcert=/nowhere/ca.pem`,
      /a file that the address names cannot be read/,
    ],
  ])('%s', async (_, address, words) => {
    const { code, err } = await records(cart('a').folder, ['share'], address());
    expect(code).toBe(1);
    expect(err).toMatch(words);
    expect(err).not.toContain('network is back');
  });

  it.each([
    ['DEPTH_ZERO_SELF_SIGNED_CERT', /not trusted/],
    ['UNABLE_TO_VERIFY_LEAF_SIGNATURE', /not trusted/],
    ['CERT_HAS_EXPIRED', /not trusted/],
    ['ERR_TLS_CERT_ALTNAME_INVALID', /another host name/],
    ['ECONNREFUSED', null],
    ['ENOTFOUND', null],
    ['ECONNRESET', null],
  ])('%s', (code, words) => {
    const problem = problemOf(Object.assign(new Error('told by TLS or the system'), { code }));
    expect(problem).toBeInstanceOf(words ? SharedProblem : Unreachable);
    if (words) expect(problem.message).toMatch(words);
  });
});

describe('four carts and one database', () => {
  const [EVENTS, KILLS, RESTARTS] = LONG ? [10_000, 100, 20] : [1_600, 16, 4];
  const CARTS = 4;
  const PER_SESSION = 50;
  const ROUND = 5;

  it(`${EVENTS} events, ${KILLS} connections killed, ${RESTARTS} restarts: none lost, doubled or crossed`, async () => {
    const truth = new Map<string, string[]>();
    let written = 0;
    let working = CARTS;
    const work = async (number: number) => {
      const folder = join(home, `cart-${number}`);
      mkdirSync(folder);
      let prev: string | null = null;
      for (let n = 0; n < EVENTS / CARTS; n += 1) {
        const session = Math.floor(n / PER_SESSION);
        const seq = (n % PER_SESSION) + 1;
        const id = `cart-${number}-session-${session}`;
        if (seq === 1) prev = null;
        const time = { at: '2031-05-06T09:00:00Z', elapsed: n };
        const event: LogEvent & Readonly<Record<string, unknown>> =
          seq === 1
            ? { type: 'session-opened', id, ...time }
            : { type: 'note-added', step: 's', text: `Ω ${number} ${n} '"\\ \u0000`, ...time };
        const sealed: { line: string; hash: string } = sealEvent(event, seq, prev);
        prev = sealed.hash;
        const file = sessionFileName(time.at, 'x', (session + 1).toString(16).padStart(8, '0'));
        appendFileSync(join(folder, file), `${sealed.line}\n`);
        truth.set(id, [...(truth.get(id) ?? []), sealed.line]);
        written += 1;
        // Every few events the cart shares the session it works at; a database that is away never stops it.
        if (n % ROUND === 0) await share(number, [join(folder, file)], 0);
      }
      working -= 1;
    };
    const share = (number: number, paths: readonly string[], patienceMs: number) =>
      shareSessions({
        disk: nodeDisk,
        url,
        paths,
        cart: `cart-${number}`,
        patience: { patienceMs, pausesMs: [20, 100] },
      });
    let killed = 0;
    let restarted = 0;
    const disturb = async () => {
      while (killed < KILLS || restarted < RESTARTS) {
        // Spread over the work, and to its end should it be done first: then carts share on until all is done.
        const wanted = Math.ceil((RESTARTS * Math.min(written + 1, EVENTS)) / EVENTS);
        if (restarted < Math.min(wanted, RESTARTS)) {
          await server.restart(restarted % 2 === 0 ? 'immediate' : 'fast');
          restarted += 1;
        }
        const due = Math.ceil((KILLS * Math.min(written + 1, EVENTS)) / EVENTS);
        if (killed < Math.min(due, KILLS))
          killed += (
            await ask<{ done: boolean }>(
              "SELECT pg_terminate_backend(pid) AS done FROM (SELECT pid FROM pg_stat_activity WHERE application_name = 'ohmward' LIMIT 1) AS one",
            )
          ).filter(({ done }) => done).length;
        else await new Promise((resolve) => setTimeout(resolve, 5));
      }
    };
    const disturbing = disturb();
    await Promise.all([0, 1, 2, 3].map(work));
    const all = (number: number) => {
      const listed = sessionPaths(join(home, `cart-${number}`));
      return 'paths' in listed ? listed.paths : [];
    };
    let over = false;
    void disturbing.then(() => {
      over = true;
    });
    do {
      await Promise.all([0, 1, 2, 3].map((number) => share(number, all(number), 500)));
    } while (!over);
    await disturbing;
    const last = await Promise.all(
      [0, 1, 2, 3].map((number) => share(number, all(number), 20_000)),
    );
    for (const { alarms, ahead, left, waiting, inStep } of last)
      expect({ alarms, ahead, left, waiting, inStep }).toEqual({
        alarms: [],
        ahead: [],
        left: [],
        waiting: null,
        inStep: truth.size / CARTS,
      });
    const rows = await ask<{ session: string; cart: string; body: string }>(
      'SELECT events.session, sessions.cart, events.body FROM events JOIN sessions ON sessions.id = events.session ORDER BY events.session, events.seq',
    );
    expect([written, killed, restarted, working]).toEqual([EVENTS, KILLS, RESTARTS, 0]);
    expect(rows).toHaveLength(EVENTS);
    const there = new Map<string, string[]>();
    for (const { session, cart: name, body } of rows) {
      expect(session.startsWith(`${name}-`)).toBe(true);
      there.set(session, [...(there.get(session) ?? []), body]);
    }
    expect(there).toEqual(truth);
  }, 300_000);
});
