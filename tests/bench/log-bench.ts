/** What it costs to save an answer and to go on with a long session. */
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
import { type LogEvent, sealEvent } from '../../src/log/event-line.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { resumeSession } from '../../src/log/open-session.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { decide } from '../../src/session/decide.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { evolve, openSession, replay } from '../../src/session/evolve.ts';
import type { Session } from '../../src/session/session.ts';
import { NAME, sampleEvent } from '../log/events.ts';
import { opened } from '../session/sample-tree.ts';

/** Times in milliseconds, those to go on and to begin of the processor; a ratio stands beside its limit. */
export interface LogBench {
  readonly saveP99Ms: number;
  readonly bareP99Ms: number;
  readonly saveRatio: number;
  readonly resumeMs: number;
  readonly startMs: number;
  readonly replayMs: number;
}

/** Saves of a round, and rounds. */
const SAVES = 2500;
const SAVE_ROUNDS = 11;
const SAVE_RATIO_MAX = 1.3;
const LONG_EVENTS = 10_000;
const RESUME_MS_MAX = 200;
const ROUNDS = 5;

/** Measures in a folder of its own, prints, and returns the figures. */
export function benchLog(print: (line: string) => void = console.log): LogBench {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-log-'));
  try {
    const saving = benchSave(folder);
    print(
      `save an event: p50 ${saving.saveP50.toFixed(2)} ms, p99 ${saving.saveP99.toFixed(2)} ms; ` +
        `bare write + fdatasync: p50 ${saving.bareP50.toFixed(2)} ms, p99 ${saving.bareP99.toFixed(2)} ms; ` +
        `p99 ratio, median of ${SAVE_ROUNDS} rounds, ${saving.ratio.toFixed(2)} (limit ${SAVE_RATIO_MAX}); ` +
        `slowest of the first ${SAVES}: ${saving.coldMs.toFixed(2)} ms`,
    );
    const long = benchResume(folder);
    print(
      `go on with ${LONG_EVENTS} events: ${long.resumeMs.toFixed(0)} ms of the processor, a new session ${long.startMs.toFixed(1)} ms, ` +
        `difference ${(long.resumeMs - long.startMs).toFixed(0)} ms (limit ${RESUME_MS_MAX}); ` +
        `of it the replay of the events ${long.replayMs.toFixed(1)} ms`,
    );
    const { saveP99: saveP99Ms, bareP99: bareP99Ms, ratio: saveRatio } = saving;
    return { saveP99Ms, bareP99Ms, saveRatio, ...long };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Turn by turn on the same disk, so that whatever else the machine does strikes both. Events and lines are made before,
 * else the bench's own garbage is collected within a save. The ratio is the median of the rounds, since a round's 99th
 * percentile hangs on a few strokes of the disk.
 */
function benchSave(folder: string) {
  const all = { saves: [] as number[], bares: [] as number[] };
  const events = Array.from({ length: SAVES }, (_, n) => sampleEvent(n + 1, 300));
  const ratios: number[] = [];
  let coldMs = 0;
  // The first round compiles both ways and is not counted.
  for (let round = 0; round <= SAVE_ROUNDS; round += 1) {
    const made = createSession(nodeDisk, join(folder, `save-${round}`), NAME, sampleEvent(0));
    if (!made.ok) throw new Error(made.problem.words);
    const { hash } = made.value.last;
    const lines = events.map((event, n) => `${sealEvent(event, n + 2, hash).line}\n`);
    const bare = openSync(join(folder, `bare-${round}`), 'a');
    const saves: number[] = [];
    const bares: number[] = [];
    for (const [n, event] of events.entries()) {
      const save = () => {
        const ms = timed(() => {
          if (!made.value.append(event).ok) throw new Error('not saved');
        });
        saves.push(ms);
      };
      const plain = () => {
        const ms = timed(() => {
          writeSync(bare, lines[n]!);
          fdatasyncSync(bare);
        });
        bares.push(ms);
      };
      for (const turn of n % 2 === 0 ? [save, plain] : [plain, save]) turn();
    }
    closeSync(bare);
    made.value.close();
    if (round === 0) {
      coldMs = Math.max(...saves);
      continue;
    }
    ratios.push(quantile(saves, 0.99) / quantile(bares, 0.99));
    all.saves.push(...saves);
    all.bares.push(...bares);
  }
  const [saveP99, bareP99] = [quantile(all.saves, 0.99), quantile(all.bares, 0.99)];
  const [saveP50, bareP50] = [quantile(all.saves, 0.5), quantile(all.bares, 0.5)];
  return { saveP50, bareP50, saveP99, bareP99, coldMs, ratio: quantile(ratios, 0.5) };
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
      processorMs(() => {
        const now = { at: '2031-05-07T09:00:00Z', elapsed: 0 };
        const resumed = resumeSession(nodeDisk, join(folder, name), now);
        if (!resumed.ok) throw new Error(resumed.problem.words);
        const stored = resumed.value.events as unknown as SessionEvent[];
        replays.push(
          processorMs(() => {
            if (replay(stored).events.length !== LONG_EVENTS) throw new Error('events are missing');
          }),
        );
        resumed.value.writer.close();
      }),
    );
    starts.push(
      processorMs(() => {
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

/** What other programs on the machine do not lengthen. */
function processorMs(action: () => unknown): number {
  const before = process.cpuUsage();
  action();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
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
