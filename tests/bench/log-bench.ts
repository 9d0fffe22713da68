/** What it costs to save an answer, to go on with a long session, and to list a folder full of them. */
import {
  closeSync,
  fdatasyncSync,
  mkdtempSync,
  openSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listSessions, newestSessions } from '../../src/files/list-sessions.ts';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { type LogEvent, sealEvent } from '../../src/log/event-line.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { resumeSession } from '../../src/log/open-session.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { listWords } from '../../src/records/list-words.ts';
import { decide } from '../../src/session/decide.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { evolve, openSession, replay } from '../../src/session/evolve.ts';
import type { Session } from '../../src/session/session.ts';
import { NAME, sampleEvent } from '../log/events.ts';
import { opened } from '../session/sample-tree.ts';

/** Times in milliseconds; a ratio stands beside its limit. */
export interface LogBench {
  readonly saveP99Ms: number;
  readonly bareP99Ms: number;
  readonly saveRatio: number;
  readonly resumeMs: number;
  readonly startMs: number;
  readonly replayMs: number;
  /** By their names, the newest read, as the screens need it; and with every one read, as a search needs it. */
  readonly listMs: number;
  readonly readMs: number;
}

const SAVES = 4000;
/** Saves before the measured ones, so that both ways are compiled. Their worst is printed too. */
const WARM_UP = 500;
const SAVE_RATIO_MAX = 1.3;
const LONG_EVENTS = 10_000;
const RESUME_MS_MAX = 200;
const SESSIONS = 10_000;
const ROUNDS = 5;

/** Measures in a folder of its own, prints, and returns the figures. */
export function benchLog(print: (line: string) => void = console.log): LogBench {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-log-'));
  try {
    const saving = benchSave(folder);
    print(
      `save an event: p50 ${saving.saveP50.toFixed(2)} ms, p99 ${saving.saveP99.toFixed(2)} ms; ` +
        `bare write + fdatasync: p50 ${saving.bareP50.toFixed(2)} ms, p99 ${saving.bareP99.toFixed(2)} ms; ` +
        `p99 ratio ${saving.ratio.toFixed(2)} (limit ${SAVE_RATIO_MAX}); ` +
        `slowest of the first ${WARM_UP}: ${saving.coldMs.toFixed(2)} ms`,
    );
    const long = benchResume(folder);
    print(
      `go on with ${LONG_EVENTS} events: ${long.resumeMs.toFixed(0)} ms, a new session ${long.startMs.toFixed(1)} ms, ` +
        `difference ${(long.resumeMs - long.startMs).toFixed(0)} ms (limit ${RESUME_MS_MAX}); ` +
        `of it the replay of the events ${long.replayMs.toFixed(1)} ms`,
    );
    const { listMs, readMs } = benchList(folder);
    print(
      `list ${SESSIONS} sessions, the newest read: ${listMs.toFixed(0)} ms; all of them read, as for a search: ${readMs.toFixed(0)} ms`,
    );
    const { saveP99: saveP99Ms, bareP99: bareP99Ms, ratio: saveRatio } = saving;
    return { saveP99Ms, bareP99Ms, saveRatio, ...long, listMs, readMs };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Turn by turn on the same disk, so that whatever else the machine does strikes both. */
function benchSave(folder: string) {
  const made = createSession(nodeDisk, folder, NAME, sampleEvent(0));
  if (!made.ok) throw new Error(made.problem.words);
  const bare = openSync(join(folder, 'bare'), 'a');
  const saves: number[] = [];
  const bares: number[] = [];
  for (let n = 1; n <= WARM_UP + SAVES; n += 1) {
    const event = sampleEvent(n, 300);
    const line = `${sealEvent(event, n + 1, made.value.last.hash).line}\n`;
    const save = () =>
      saves.push(
        timed(() => {
          if (!made.value.append(event).ok) throw new Error('not saved');
        }),
      );
    const plain = () =>
      bares.push(
        timed(() => {
          writeSync(bare, line);
          fdatasyncSync(bare);
        }),
      );
    for (const turn of n % 2 === 0 ? [save, plain] : [plain, save]) turn();
  }
  closeSync(bare);
  made.value.close();
  const coldMs = Math.max(...saves.splice(0, WARM_UP));
  bares.splice(0, WARM_UP);
  const [saveP99, bareP99] = [quantile(saves, 0.99), quantile(bares, 0.99)];
  const [saveP50, bareP50] = [quantile(saves, 0.5), quantile(bares, 0.5)];
  return { saveP50, bareP50, saveP99, bareP99, coldMs, ratio: saveP99 / bareP99 };
}

function benchResume(folder: string) {
  const events = longSession();
  const name = NAME.replace('0badcafe', '0badcaff');
  let text = '';
  let prev: string | null = null;
  for (const [index, event] of events.entries()) {
    const sealed: { line: string; hash: string } = sealEvent(
      event as unknown as LogEvent,
      index + 1,
      prev,
    );
    text += `${sealed.line}\n`;
    prev = sealed.hash;
  }
  writeFileSync(join(folder, name), text);
  const resumes: number[] = [];
  const replays: number[] = [];
  const starts: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    resumes.push(
      timed(() => {
        const now = { at: '2031-05-07T09:00:00Z', elapsed: 0 };
        const resumed = resumeSession(nodeDisk, join(folder, name), now);
        if (!resumed.ok) throw new Error(resumed.problem.words);
        const stored = resumed.value.events as unknown as SessionEvent[];
        replays.push(
          timed(() => {
            if (replay(stored).events.length !== LONG_EVENTS) throw new Error('events are missing');
          }),
        );
        resumed.value.writer.close();
      }),
    );
    starts.push(
      timed(() => {
        const own = NAME.replace('0badcafe', `0000000${round}`);
        const made = createSession(nodeDisk, folder, own, opened() as unknown as LogEvent);
        if (!made.ok) throw new Error(made.problem.words);
        openSession(opened());
        made.value.close();
      }),
    );
  }
  const [resumeMs, startMs, replayMs] = [resumes, starts, replays].map((all) =>
    quantile(all, 0.5),
  ) as [number, number, number];
  return { resumeMs, startMs, replayMs };
}

/** Someone who answers, takes back and notes all day. */
function longSession(): readonly SessionEvent[] {
  let session: Session = openSession(opened());
  const take = (command: Parameters<typeof decide>[1]) => {
    const at = new Date(Date.UTC(2031, 4, 6, 9) + session.events.length * 1000).toISOString();
    const decision = decide(session, command, { at, elapsed: session.events.length * 1000 });
    if (!decision.ok) throw new Error(decision.refusal.code);
    session = decision.events.reduce(evolve, session);
  };
  take({ type: 'mark-done' });
  take({ type: 'acknowledge-cautions' });
  while (session.events.length + 3 <= LONG_EVENTS) {
    take({ type: 'record-reading', typed: '5.02 V', value: 5.02 });
    take({ type: 'go-back' });
    // Back in the step's state only once its caution has been read again.
    if (session.acknowledged.state === 'key-on') take({ type: 'add-note', text: 'Wiggled.' });
    else take({ type: 'acknowledge-cautions' });
  }
  while (session.events.length < LONG_EVENTS) take({ type: 'add-note', text: 'Wiggled.' });
  return session.events;
}

function benchList(folder: string): { readonly listMs: number; readonly readMs: number } {
  const many = join(folder, 'many');
  nodeDisk.makeFolder(many);
  const first = sealEvent(opened() as unknown as LogEvent, 1, null);
  for (let n = 0; n < SESSIONS; n += 1) {
    const name = sessionFileName(opened().at, `bay-${n}`, n.toString(16).padStart(8, '0'));
    const second = sealEvent(
      { type: 'session-paused', at: opened().at, elapsed: n },
      2,
      first.hash,
    );
    writeFileSync(join(many, name), `${first.line}\n${second.line}\n`);
  }
  const medianOf = (list: () => number) =>
    quantile(
      Array.from({ length: ROUNDS }, () =>
        timed(() => {
          const found = list();
          if (found !== SESSIONS) throw new Error(`lists ${found} of ${SESSIONS}`);
        }),
      ),
      0.5,
    );
  return {
    listMs: medianOf(() => newestSessions(many).count),
    readMs: medianOf(() => listSessions(many).sessions.map(({ read }) => listWords(read())).length),
  };
}

function timed(action: () => unknown): number {
  const start = performance.now();
  action();
  return performance.now() - start;
}

function quantile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
