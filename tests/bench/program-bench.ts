/**
 * The program in a real terminal beside the least that Ink can do: start, keys, memory. Needs the built program.
 */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { build } from 'esbuild';

/** Times in milliseconds, memory in megabytes of resident set. */
export interface ProgramBench {
  readonly startMs: number;
  readonly bareStartMs: number;
  readonly readyMs: number;
  readonly keyP50Ms: number;
  readonly keyP99Ms: number;
  readonly bareKeyP99Ms: number;
  readonly memoryMb: number;
  readonly bareMemoryMb: number;
}

const STARTS = 15;
const START_RATIO_MAX = 1.15;
const KEYS = 200;
const KEY_EVERY_MS = 60;
const KEY_P99_MAX_MS = 16;
const KEYS_FOR_MEMORY = 3000;
const MEMORY_RATIO_MAX = 1.2;
/** A frame that has not come by then never will. */
const WAIT_MS = 20_000;
const SIZE = { cols: 80, rows: 24 };

const BARE = `
import { Box, Text, render, useInput } from 'ink';
import { createElement as e, useState } from 'react';
function Hello() {
  const [typed, setTyped] = useState('');
  useInput((key) => setTyped((before) => (before + key).slice(-3)));
  const lines = Array.from({ length: 20 }, (_, n) => e(Text, { key: n }, 'A line of some words, number ' + n));
  return e(Box, { flexDirection: 'column' }, ...lines, e(Text, null, 'Hello: ' + typed));
}
render(e(Hello), { maxFps: 60, incrementalRendering: true });
`;

/** Measures turn by turn, prints each figure beside its limit, and returns them. */
export async function benchProgram(
  print: (line: string) => void = console.log,
): Promise<ProgramBench> {
  const program = resolve('dist/ohmward.mjs');
  if (!existsSync(program)) throw new Error('build the program first: npm run build');
  const bare = await bundleBare();
  const home = mkdtempSync(join(tmpdir(), 'ohmward-bench-'));
  try {
    const hello: Started = { args: [bare], ready: 'Hello:' };
    const real: Started = { args: [program], ready: 'simulated vehicle' };
    const inStep: Started = {
      args: [program, 'run', 'hall-no-signal', '--bench', 'wire.signal.open', '--vehicle', '7'],
      ready: '[y]',
    };
    const bareStarts: number[] = [];
    const starts: number[] = [];
    for (let round = 0; round < STARTS; round += 1) {
      bareStarts.push(await startTime(hello, home));
      starts.push(await startTime(real, home));
    }
    const [bareStartMs, startMs] = [quantile(bareStarts, 0.5), quantile(starts, 0.5)];
    print(
      `start to first frame: ${startMs.toFixed(0)} ms, bare Ink ${bareStartMs.toFixed(0)} ms, ` +
        `ratio ${(startMs / bareStartMs).toFixed(2)} (limit ${START_RATIO_MAX})`,
    );
    const readyMs = quantile(await timesToList(real, home), 0.5);
    print(
      `start to the list of procedures, with Enter pressed at the first frame: ${readyMs.toFixed(0)} ms`,
    );
    const bareKeys = await keyTimes(hello, home, false);
    const keys = await keyTimes(inStep, home, true);
    const [keyP50Ms, keyP99Ms] = [quantile(keys.times, 0.5), quantile(keys.times, 0.99)];
    const bareKeyP99Ms = quantile(bareKeys.times, 0.99);
    print(
      `key to frame in a step, a key each ${KEY_EVERY_MS} ms: p50 ${keyP50Ms.toFixed(1)} ms, ` +
        `p99 ${keyP99Ms.toFixed(1)} ms (limit ${KEY_P99_MAX_MS}); bare Ink p99 ${bareKeyP99Ms.toFixed(1)} ms`,
    );
    print(
      `memory after ${KEYS_FOR_MEMORY} keys: ${keys.memoryMb.toFixed(0)} MB, bare Ink ${bareKeys.memoryMb.toFixed(0)} MB, ` +
        `ratio ${(keys.memoryMb / bareKeys.memoryMb).toFixed(2)} (limit ${MEMORY_RATIO_MAX})`,
    );
    const [memoryMb, bareMemoryMb] = [keys.memoryMb, bareKeys.memoryMb];
    return {
      startMs,
      bareStartMs,
      readyMs,
      keyP50Ms,
      keyP99Ms,
      bareKeyP99Ms,
      memoryMb,
      bareMemoryMb,
    };
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

/** The bare program, bundled as ours is. */
async function bundleBare(): Promise<string> {
  const folder = resolve('node_modules/.cache/bench');
  mkdirSync(folder, { recursive: true });
  const entry = join(folder, 'bare-entry.mjs');
  const outfile = join(folder, 'bare-ink.mjs');
  writeFileSync(entry, BARE);
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    minifySyntax: true,
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    banner: {
      js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
    },
    plugins: [
      {
        name: 'without-devtools',
        setup(b) {
          b.onResolve({ filter: /^react-devtools-core$/ }, () => ({
            path: 'none',
            namespace: 'none',
          }));
          b.onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'export default {}' }));
        },
      },
    ],
    logLevel: 'warning',
  });
  return outfile;
}

interface Started {
  readonly args: readonly string[];
  /** Text that stands on the screen when it is ready. */
  readonly ready: string;
}

function start(what: Started, home: string) {
  const { PATH } = process.env;
  const env = { PATH: PATH ?? '', HOME: home, LANG: 'C.UTF-8', TERM: 'xterm-256color' };
  const child = spawn(process.execPath, [...what.args], {
    ...SIZE,
    cwd: process.cwd(),
    env: { ...env, OHMWARD_SESSIONS: join(home, 'sessions') },
  });
  let written = '';
  let heard = (): void => {};
  child.onData((text) => {
    written += text;
    heard();
  });
  /** Resolves when what was written since `from` satisfies. */
  const until = (from: number, satisfied: (text: string) => boolean) =>
    new Promise<void>((done, failed) => {
      const timer = setTimeout(
        () => failed(new Error(`nothing came: ${JSON.stringify(written.slice(-400))}`)),
        WAIT_MS,
      );
      heard = () => {
        if (!satisfied(written.slice(from))) return;
        clearTimeout(timer);
        heard = () => {};
        done();
      };
      heard();
    });
  return { child, until, length: () => written.length, written: () => written };
}

async function startTime(what: Started, home: string): Promise<number> {
  const began = performance.now();
  const { child, until } = start(what, home);
  await until(0, (text) => text.includes(what.ready));
  const ms = performance.now() - began;
  await end(child);
  return ms;
}

/** The menu is there before the program behind it: how long until the first thing that needs it stands there. */
async function timesToList(what: Started, home: string): Promise<number[]> {
  const times: number[] = [];
  for (let round = 0; round < STARTS; round += 1) {
    const began = performance.now();
    const { child, until, length } = start(what, home);
    await until(0, (text) => text.includes(what.ready));
    const from = length();
    child.write('\r');
    await until(from, (text) => text.includes('Which procedure'));
    times.push(performance.now() - began);
    await end(child);
  }
  return times;
}

function end(child: ReturnType<typeof spawn>): Promise<void> {
  return new Promise((done) => {
    child.onExit(() => done());
    child.kill('SIGKILL');
  });
}

/** Each key's time to the frame it brings; then many keys without waiting for each, and the memory. */
async function keyTimes(what: Started, home: string, toPrompt: boolean) {
  const started = start(what, home);
  const { child, until, length } = started;
  try {
    await until(0, (text) => text.includes(what.ready));
    if (toPrompt) await goToReading(started);
    const times: number[] = [];
    for (let n = 0; n < KEYS; n += 1) {
      await pause(KEY_EVERY_MS);
      times.push(await oneKey(n));
    }
    for (let n = 0; n < KEYS_FOR_MEMORY - KEYS; n += 1) await oneKey(n);
    await pause(200);
    return { times, memoryMb: residentMb(child.pid) };
  } finally {
    await end(child);
  }

  /** In a step a digit and then the key that takes it back, so that each key changes the screen. */
  async function oneKey(n: number): Promise<number> {
    const key = toPrompt && n % 2 === 1 ? '\u007f' : String(1 + (n % 9));
    const from = length();
    const began = performance.now();
    child.write(key);
    await until(from, (text) => (toPrompt ? text.includes('\u001b[?2026l') : text.length > 0));
    return performance.now() - began;
  }
}

/** Through cautions, tasks and looks to a step that asks for a reading. */
async function goToReading({
  child,
  until,
  length,
  written,
}: ReturnType<typeof start>): Promise<void> {
  let screen = written();
  child.onData((text) => {
    screen += text;
  });
  for (let turn = 0; turn < 60; turn += 1) {
    await pause(500);
    if (/Reading in/.test(screen)) return;
    const from = length();
    const seen = screen;
    screen = '';
    if (seen.includes('[y]')) child.write('y');
    else if (/simulated vehicle/i.test(seen)) {
      child.write('\t');
      await pause(200);
      child.write('\r');
    } else child.write('\r');
    await until(from, (text) => text.length > 0);
  }
  throw new Error('no step asks for a reading');
}

/** Resident memory of a process, from the system's own table (Linux). */
function residentMb(pid: number): number {
  const line = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
  return Number(line?.[1] ?? Number.NaN) / 1024;
}

function pause(ms: number): Promise<void> {
  return new Promise((done) => {
    setTimeout(done, ms);
  });
}

function quantile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
