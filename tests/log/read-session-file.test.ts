/** One way from a file to a session: what it gives, what it refuses, and that nothing in a file makes it throw. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import type { StoredEvent } from '../../src/log/event-line.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { judgeFile, readSessionFile, resumeSessionFile } from '../../src/log/read-session-file.ts';
import { createSession } from '../../src/log/session-writer.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { LONG } from '../campaign.ts';
import { shipped } from '../circuit/shipped.ts';
import { opened, sessionAfter, TREE, when } from '../session/sample-tree.ts';
import { CONCLUDED, LOOK } from '../session/shorthand.ts';
import { sealed } from './events.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ohmward-file-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const NAME = '20310506T070809Z-lab-00000001.jsonl';

function saved(events: readonly object[], tail = ''): string {
  const path = join(folder, NAME);
  writeFileSync(path, sealed(events).text + tail);
  return path;
}

const SESSION = sessionAfter(CONCLUDED);
/** The fifth event, a caution, of a text that nobody was shown. */
const FORGED = SESSION.events.map((event, at) => (at === 4 ? { ...event, cautions: [] } : event));

describe('what is read', () => {
  it('is events, state, head and place', () => {
    const path = saved(SESSION.events);
    const { head } = sealed(SESSION.events);
    expect(readSessionFile(nodeDisk, path)).toMatchObject({
      ok: true,
      events: SESSION.events,
      session: SESSION,
      head,
      paths: [path],
      judgedOtherwise: [],
    });
  });

  it('with a torn tail is what was acknowledged', () => {
    const read = readSessionFile(nodeDisk, saved(SESSION.events, '{"at":"20'));
    expect(read).toMatchObject({ ok: true, session: SESSION, log: { verdict: 'torn-tail' } });
  });

  it('of two parts is one session, and a flaw has the line of its own file', () => {
    const [first, ...rest] = SESSION.events;
    const begun = createSession(nodeDisk, folder, NAME, first!);
    if (!begun.ok) throw new Error(begun.problem.words);
    for (const event of rest.slice(0, 2)) begun.value.append(event);
    const next = begun.value.continueIn(join(folder, 'other'));
    if (!next.ok) throw new Error(next.problem.words);
    const { writer } = next.value;
    for (const event of rest.slice(2, 4)) writer.append(event);
    expect(readSessionFile(nodeDisk, writer.path)).toMatchObject({ ok: false, flaw: null });
    const good = readSessionFile(nodeDisk, writer.path, [folder]);
    expect(good).toMatchObject({ ok: true, paths: [join(folder, NAME), writer.path] });
    expect(good.ok && good.events).toHaveLength(6);
    const nowhere = { type: 'note-added', step: 'nowhere', text: '', ...when(9) } as const;
    writer.append(nowhere);
    writer.close();
    // part 2: the link, two events, then the bad one
    expect(readSessionFile(nodeDisk, writer.path, [folder])).toMatchObject({
      flaw: { path: writer.path, line: 4 },
    });
  });
});

describe('what is refused', () => {
  it('says where and why, and what stands before it', () => {
    const path = saved(FORGED);
    expect(readSessionFile(nodeDisk, path)).toMatchObject({
      ok: false,
      problem: { problem: expect.stringContaining(`${path}:5: event 5 `) },
      flaw: { path, line: 5 },
      isDrill: false,
      stands: { events: SESSION.events.slice(0, 4), head: { seq: 4 } },
    });
  });

  it('by its first event has nothing that stands', () => {
    const drill = opened(null, { vehicle: { kind: 'drill' } as never });
    expect(readSessionFile(nodeDisk, saved([drill]))).toMatchObject({
      ok: false,
      flaw: { line: 1 },
      isDrill: true,
      stands: null,
    });
    expect(readSessionFile(nodeDisk, saved([{ type: 'drill-opened', ...when(0) }]))).toMatchObject({
      ok: false,
      isDrill: true,
    });
  });

  it('is no drill where its first event names no vehicle, or what is none', () => {
    const { vehicle: _, ...unnamed } = opened();
    const others = [null, 'drill', 7, [], { kind: 'real' }];
    for (const first of [unnamed, ...others.map((vehicle) => ({ ...unnamed, vehicle }))]) {
      const path = saved([{ ...first, rules: 'new' }]);
      expect(readSessionFile(nodeDisk, path), JSON.stringify(first)).toMatchObject({
        ok: false,
        flaw: { line: 1 },
        isDrill: false,
      });
    }
  });

  it('is a drill still where its first line was changed', () => {
    const drill = opened(null, { vehicle: { kind: 'drill' } as never });
    const path = join(folder, NAME);
    writeFileSync(path, sealed([drill]).text.replace('"seq":1', '"seq":2'));
    expect(readSessionFile(nodeDisk, path)).toMatchObject({ flaw: { line: 1 }, isDrill: true });
  });

  it('is told in few words, however long a name in it is', () => {
    const read = readSessionFile(
      nodeDisk,
      saved([opened(), { type: 'x'.repeat(1e6), ...when(1) }]),
    );
    expect(!read.ok && read.problem.problem.length).toBeLessThan(600);
  });

  it('for a file that is none has words too', () => {
    expect(readSessionFile(nodeDisk, join(folder, 'none.jsonl'))).toMatchObject({
      ok: false,
      flaw: null,
    });
    expect(readSessionFile(nodeDisk, saved([]))).toMatchObject({
      ok: false,
      flaw: null,
      stands: null,
    });
    writeFileSync(join(folder, NAME), 'rubbish\n');
    expect(readSessionFile(nodeDisk, join(folder, NAME))).toMatchObject({ flaw: { line: 1 } });
  });

  it('for a damaged chain stands up to the damage', () => {
    const path = join(folder, NAME);
    const text = sealed(SESSION.events).text.replace('"value":5', '"value":6');
    writeFileSync(path, text);
    expect(readSessionFile(nodeDisk, path)).toMatchObject({
      ok: false,
      flaw: { path, line: 4, words: expect.stringContaining('was changed') },
      stands: { events: SESSION.events.slice(0, 3) },
    });
  });
});

describe('going on', () => {
  it('comes after the check: what is refused is left as it is, to the byte', () => {
    const path = saved(FORGED, '{"at":"20');
    const before = readFileSync(path);
    const resumed = resumeSessionFile(nodeDisk, path, when(0));
    expect(resumed).toMatchObject({
      ok: false,
      problem: { code: 'not-believed', canRetry: false },
    });
    expect(!resumed.ok && resumed.problem.fix).toMatch(/^Keep the file/);
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it('counts the note of what was cut off', () => {
    const path = saved([opened(null)], '{"at":"20');
    const resumed = resumeSessionFile(nodeDisk, path, when(9));
    if (!resumed.ok) throw new Error(resumed.problem.words);
    const { writer, session } = resumed.value;
    writer.close();
    expect(session.events).toHaveLength(2);
    expect(session.events.at(-1)).toMatchObject({ type: 'recovered', bytes: 9 });
    expect(readSessionFile(nodeDisk, path)).toMatchObject({ ok: true, session });
  });

  it('needs a circuit that can be computed', () => {
    const circuit = shipped('hall-module-fed');
    const deaf = circuit.parts.map((part) =>
      part.kind === 'module'
        ? { ...part, inside: part.inside.map((pin) => ({ ...pin, input: null })) }
        : part,
    );
    const path = saved([opened(null, { circuit: { ...circuit, parts: deaf } })]);
    expect(readSessionFile(nodeDisk, path).ok).toBe(true);
    const resumed = resumeSessionFile(nodeDisk, path, when(9));
    expect(!resumed.ok && resumed.problem.words).toMatch(
      /:1: event 1 holds a circuit that cannot be computed/,
    );
  });
});

/** What a forger may put in the place of a value. */
const OTHERS: readonly ((value: unknown) => unknown)[] = [
  () => undefined,
  () => null,
  () => true,
  () => [],
  () => ({}),
  () => 'constructor',
  (value) => (typeof value === 'string' ? '' : '0'),
  (value) => (typeof value === 'string' ? `${value}x` : -1),
  (value) => (typeof value === 'number' ? value * 1e6 : 1e9),
  (value) => (Array.isArray(value) ? [...value, ...value] : 0.5),
];
/** Of all values in all events this share is tried with each of them. */
const SHARE = LONG ? 1 : 0.02;

test.each(['session-1-own-conclusion', 'drill-1-given-up'])(
  'no value in %s, whatever is put in its place, makes reading throw',
  (name) => {
    const log = readSessionLog(readFileSync(join('tests/log/versions', `${name}.jsonl`)));
    let tried = 0;
    let state = 1;
    const isDrawn = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32 < SHARE;
    };
    for (const [at, event] of log.events.entries())
      for (const path of pathsIn(event))
        for (const [kind, change] of OTHERS.entries()) {
          if (!isDrawn()) continue;
          const events = log.events.map((one, index) =>
            index === at ? (withOther(one, path, change) as StoredEvent) : one,
          );
          tried += 1;
          expect(
            () => judgeFile({ events, log, bytes: log.goodBytes, paths: [name], starts: [1] }),
            `event ${at + 1}, ${path.join('.')}, ${kind}`,
          ).not.toThrow();
        }
    expect(tried).toBeGreaterThan(200);
  },
);

/** The way to every value inside an event, its number and link apart. */
function pathsIn(value: unknown, path: readonly string[] = []): string[][] {
  const own = path.length === 0 || path[0] === 'seq' || path[0] === 'prev' ? [] : [[...path]];
  if (typeof value !== 'object' || value === null) return own;
  return [
    ...own,
    ...Object.entries(value).flatMap(([key, inner]) => pathsIn(inner, [...path, key])),
  ];
}

function withOther(
  value: unknown,
  path: readonly string[],
  change: (value: unknown) => unknown,
): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return change(value);
  const entries = Object.entries(value as object).flatMap(([name, inner]) => {
    const other = name === key ? withOther(inner, rest, change) : inner;
    return other === undefined ? [] : [[name, other] as const];
  });
  return Array.isArray(value) ? entries.map(([, inner]) => inner) : Object.fromEntries(entries);
}

it('a session of twenty thousand notes is followed to its end', () => {
  const note = (n: number): SessionEvent => ({
    type: 'note-added',
    step: 'pattern',
    text: `${n}`,
    ...when(9),
  });
  const start = [...sessionAfter(LOOK, TREE).events];
  const events = [...start, ...Array.from({ length: 20_000 }, (_, n) => note(n))];
  expect(readSessionFile(nodeDisk, saved(events))).toMatchObject({
    ok: true,
    head: { seq: events.length },
  });
});
