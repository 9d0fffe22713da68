/** How fast the shop finds something among 10,000 sessions, and how fast a person sees the newest of them. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listSessions, newestSessions } from '../../src/files/list-sessions.ts';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { findRecords, type Query } from '../../src/records/find-records.ts';
import { listWords } from '../../src/records/list-words.ts';
import { openIndex } from '../../src/records/record-index.ts';
import { fileOf, finishedWalk, JOB } from '../records/sample-session.ts';

export interface RecordsBench {
  readonly sessions: number;
  /** Milliseconds to read every session file once and write the index. */
  readonly buildMs: number;
  /** Median milliseconds to open the index, see that it is up to date, and answer a query. */
  readonly queryMs: Readonly<Record<string, number>>;
  /** Processor time of the same, which other programs on the machine do not lengthen. */
  readonly queryCpuMs: Readonly<Record<string, number>>;
  /** The same after one more session was written. */
  readonly oneNewMs: number;
  /** Median milliseconds of the list by names with the newest read, as the screens show it, turn by turn with the list above. */
  readonly newestMs: number;
  readonly newestRatio: number;
  /** Milliseconds with every one read, as the screen's own search needs it when its first letter is typed. */
  readonly allReadMs: number;
}

const QUERIES: Readonly<Record<string, Query>> = {
  list: {},
  plate: { plate: 'qx 17' },
  order: { order: 'A-2044' },
  words: { words: 'green plug bay 4711' },
  misspelled: { words: 'grean plog 4711' },
  'field and words': { code: 'P03', since: '2026-03', words: 'cold' },
};
const ROUNDS = 5;
const NEWEST_RATIO_MAX = 1;

/** Writes `sessions` sessions into a folder of its own, measures, prints, and removes it. */
export function benchRecords(
  sessions = 10_000,
  print: (line: string) => void = console.log,
): RecordsBench {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-records-'));
  try {
    for (let i = 0; i < sessions; i += 1) write(folder, i);
    const path = join(folder, 'cache', 'records.index');
    const open = () => {
      const opened = openIndex(nodeDisk, folder, path);
      if ('words' in opened) throw new Error(opened.words);
      return opened.index;
    };
    const buildMs = timed(() => open());
    print(`${sessions} sessions read once, index written: ${buildMs} ms`);
    const queryMs: Record<string, number> = {};
    const queryCpuMs: Record<string, number> = {};
    for (const [name, query] of Object.entries(QUERIES)) {
      const rounds = Array.from({ length: ROUNDS }, () => {
        const before = process.cpuUsage();
        const ms = timed(() => {
          const { rows } = findRecords(open(), query);
          if (rows.length === 0) throw new Error(`the query "${name}" finds nothing`);
        });
        const { user, system } = process.cpuUsage(before);
        return { ms, cpuMs: (user + system) / 1000 };
      });
      queryMs[name] = median(rounds.map(({ ms }) => ms));
      queryCpuMs[name] = median(rounds.map(({ cpuMs }) => cpuMs));
      print(`${name}: ${queryMs[name]} ms, ${queryCpuMs[name].toFixed(1)} ms of the processor`);
    }
    const turns = Array.from({ length: ROUNDS }, () => ({
      newest: timed(() => newestSessions(folder)),
      index: timed(() => findRecords(open(), {})),
    }));
    const newestMs = median(turns.map(({ newest }) => newest));
    const newestRatio = newestMs / median(turns.map(({ index }) => index));
    const allReadMs = timed(() =>
      listSessions(folder).sessions.map(({ read }) => listWords(read())),
    );
    print(
      `by names, the newest read: ${newestMs} ms, over the list ${newestRatio.toFixed(2)} (limit ${NEWEST_RATIO_MAX}); ` +
        `every one read: ${allReadMs} ms`,
    );
    write(folder, sessions);
    const oneNewMs = timed(() => findRecords(open(), { words: 'green plug' }));
    print(`after one more session: ${oneNewMs} ms`);
    return { sessions, buildMs, queryMs, queryCpuMs, oneNewMs, newestMs, newestRatio, allReadMs };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function write(folder: string, i: number): void {
  const job = {
    ...JOB,
    order: `A-${20_000 + i}`,
    notes: `Stands in bay ${i}, key ${i * 7}.`,
    vehicle: { ...JOB.vehicle, plate: `QX ${i % 100} Z${String.fromCharCode(65 + (i % 26))}M` },
  };
  const walk = finishedWalk({ id: `lab-${i}`, job }, i * 10);
  const name = sessionFileName(walk.session.opened.at, 'lab', i.toString(16).padStart(8, '0'));
  writeFileSync(join(folder, name), fileOf(walk).text);
}

function timed(action: () => unknown): number {
  const start = performance.now();
  action();
  return Math.round((performance.now() - start) * 10) / 10;
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;
}
