import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { quickFrames, quickStart, withoutDevtools } from '../../scripts/bundle-plugins.mjs';
import { type Program, type ProgramOptions, startProgram } from './pty.ts';

let folder = '';
let file = '';

beforeAll(async () => {
  mkdirSync('node_modules/.cache', { recursive: true });
  folder = mkdtempSync(join('node_modules/.cache', 'terminal-fixture-'));
  file = join(folder, 'app.mjs');
  await build({
    entryPoints: ['tests/terminal/fixture/app.tsx'],
    outfile: file,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
    banner: {
      js: "import { createRequire as __cr } from 'node:module'; const require = __cr(import.meta.url);",
    },
    plugins: [quickFrames, quickStart, withoutDevtools],
    logLevel: 'error',
  });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const start = async (options: ProgramOptions = {}) => {
  const program = startProgram({ file, ...options });
  await program.waitFor('taken:');
  return program;
};

/**
 * The fixture under a shell that prints the line settings before and after and the exit code: what the next
 * prompt would meet.
 */
const startUnderShell = async (env: Record<string, string> = {}) => {
  const script =
    'b=$(stty -g); "$NODE" "$APP"; c=$?; a=$(stty -g); [ "$a" = "$b" ] && s=same || s=changed; echo "end $c $s"';
  const program = startProgram({
    command: '/bin/sh',
    args: ['-c', script],
    env: { NODE: process.execPath, APP: file, ...env },
  });
  await program.waitFor('taken:');
  return program;
};

/** What the terminal was left in, from the last of each pair of sequences. */
function leftIn(program: Program) {
  const raw = program.raw();
  const last = (mode: string) =>
    raw.lastIndexOf(`\x1b[?${mode}h`) > raw.lastIndexOf(`\x1b[?${mode}l`) ? 'on' : 'off';
  return { alternate: last('1049'), paste: last('2004'), cursor: last('25') };
}

const RESTORED = { alternate: 'off', paste: 'off', cursor: 'on' };

describe('keys in a real terminal', () => {
  it('a reading and its Enter in one piece, twice, then Ctrl+F1 and a mouse report', async () => {
    const program = await start();
    program.type('12.4\r0.31\r');
    program.press('ctrl-f1');
    program.type('\x1b[<0;10;5M7');
    await program.waitFor('taken: 12.4 | 0.31');
    await program.waitFor('│ 7 ');
    program.type('q');
    expect(await program.exit).toEqual({ code: 0, signal: 0 });
  });

  it('arrow keys written in pieces arrive whole', async () => {
    const program = await start();
    // Not behind the escape: that waits so briefly that a busy machine uses it up. keyboard.test.ts cuts there.
    program.type('48\x1b[');
    program.type('D7\x1b[');
    program.type('F');
    program.press('return');
    await program.waitFor('taken: 478');
    program.type('q');
    await program.exit;
  });

  it('under CI the screen is drawn all the same once it was decided on', async () => {
    const program = await start({ env: { CI: 'true' } });
    program.type('5\rq');
    await program.exit;
    expect(program.raw()).toContain('taken: 5');
  });

  it('NO_COLOR takes the colour and leaves the inverse cursor', async () => {
    const plain = await start({ env: { NO_COLOR: '1' } });
    const coloured = await start();
    for (const program of [plain, coloured]) {
      program.type('q');
      await program.exit;
    }
    expect(plain.raw()).not.toContain('\x1b[31m');
    expect(plain.raw()).toContain('\x1b[7m');
    expect(coloured.raw()).toContain('\x1b[31m');
  });
});

describe('ways out', () => {
  it('the program quits: everything as before, the summary on the normal screen', async () => {
    const program = await startUnderShell();
    expect(await program.onAltScreen()).toBe(true);
    program.type('q');
    await program.waitFor('end 0 same');
    expect(leftIn(program)).toEqual(RESTORED);
    expect(await program.onAltScreen()).toBe(false);
    expect((await program.screen())[0]).toBe('summary after leaving');
  });

  it('a last change while leaving draws nothing on the normal screen', async () => {
    const program = await start();
    program.type('L');
    await program.exit;
    expect(program.raw()).not.toContain('too late to show');
    expect((await program.screen())[0]).toBe('summary after leaving');
  });

  it('Ctrl+C is a key the program decides on', async () => {
    const program = await startUnderShell();
    program.press('ctrl-c');
    await program.waitFor('end 130 same');
    expect(leftIn(program)).toEqual(RESTORED);
  });

  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
    ['SIGQUIT', 131],
  ] as const)('%s: restored, exit code %d, and where the work is', async (signal, code) => {
    const program = await start();
    program.kill(signal);
    expect(await program.exit).toEqual({ code, signal: 0 });
    expect(leftIn(program)).toEqual(RESTORED);
    expect((await program.screen())[0]).toBe(
      'Saved at sessions/test.jsonl; go on with: ohmward resume test',
    );
    expect(program.raw().split('\x1b[?1049l')[1]).not.toContain('Fixture');
  });

  it.each([
    ['T', 'thrown in a key'],
    ['B', 'thrown while drawing'],
    ['R', 'rejected'],
  ])(
    'key %s, an error of ours: restored, exit code 70, the error and where the work is',
    async (key, words) => {
      const program = await startUnderShell();
      program.type(key);
      await program.waitFor('end 70 same');
      expect(leftIn(program)).toEqual(RESTORED);
      const after = (program.raw().split('\x1b[?1049l')[1] ?? '').replaceAll('\r', '');
      expect(after).toContain(`Ohmward stopped because of a bug: Error: ${words}\n`);
      expect(after).toContain('\nSaved at sessions/test.jsonl; go on with: ohmward resume test\n');
    },
  );

  it('key U, what was given cannot be worked with: restored, exit code 1, why and where the work is', async () => {
    const program = await startUnderShell();
    program.type('U');
    await program.waitFor('end 1 same');
    expect(leftIn(program)).toEqual(RESTORED);
    const after = (program.raw().split('\x1b[?1049l')[1] ?? '').replaceAll('\r', '');
    expect(after).toContain('Ohmward stopped: thrown in a key; look again.\n');
    expect(after).toContain('\nSaved at sessions/test.jsonl; go on with: ohmward resume test\n');
  });

  it('process.exit anywhere: restored', async () => {
    const program = await startUnderShell();
    program.type('X');
    await program.waitFor('end 7 same');
    expect(leftIn(program)).toEqual(RESTORED);
  });

  it('the window is closed: exit code 129', async () => {
    const told = join(folder, 'exit-code');
    // The shell outlives the hang-up to write down what became of the program.
    const program = startProgram({
      command: '/bin/sh',
      args: ['-c', 'trap : HUP; "$NODE" "$APP"; echo "end $?" > "$TOLD"'],
      env: { NODE: process.execPath, APP: file, TOLD: told },
    });
    await program.waitFor('taken:');
    program.hangUp();
    await expect
      .poll(() => existsSync(told) && readFileSync(told, 'utf8'), { timeout: 15_000 })
      .toBe('end 129\n');
  });

  it('without the alternate screen the last frame stays and the words follow below it', async () => {
    const program = await start({ args: ['--no-alt-screen'] });
    program.type('12.4\r');
    await program.waitFor('taken: 12.4');
    program.type('q');
    await program.exit;
    expect(program.raw()).not.toContain('\x1b[?1049');
    expect(leftIn(program)).toMatchObject({ paste: 'off', cursor: 'on' });
    const text = (await program.screen()).join('\n');
    expect(text).toMatch(/taken: 12\.4[\s\S]*┘\nsummary after leaving/);
  });
});

describe('suspension and size', () => {
  it.each(['ctrl-z', 'SIGTSTP'] as const)(
    '%s stops it with the terminal restored; continued, it is all there',
    async (way) => {
      const program = await start();
      program.type('12.4');
      await program.waitFor('│ 12.4');
      if (way === 'ctrl-z') program.press('ctrl-z');
      else program.kill('SIGTSTP');
      await program.waitForRaw(/\x1b\[\?1049l\x1b\[\?25h$/);
      expect(await program.onAltScreen()).toBe(false);
      // As a shell does: continue it only once it has stopped.
      await expect.poll(() => processState(program.pid), { timeout: 15_000 }).toMatch(/^T/);
      program.kill('SIGCONT');
      await program.waitFor('│ 12.4');
      expect(await program.onAltScreen()).toBe(true);
      program.type('5\r'); // raw again: otherwise the line discipline would keep and echo this
      await program.waitFor('taken: 12.45');
      program.type('q');
      expect(await program.exit).toEqual({ code: 0, signal: 0 });
      expect(leftIn(program)).toEqual(RESTORED);
    },
  );

  it('stopped from outside and its line settings changed: raw and whole again when continued', async () => {
    const program = await start();
    const line = `/dev/${execFileSync('ps', ['-o', 'tty=', '-p', String(program.pid)], { encoding: 'utf8' }).trim()}`;
    const settings = (...change: string[]) =>
      execFileSync('stty', [process.platform === 'linux' ? '-F' : '-f', line, ...change], {
        encoding: 'utf8',
      });
    expect(settings('-a')).toContain('-icanon');
    program.kill('SIGSTOP');
    await expect.poll(() => processState(program.pid), { timeout: 15_000 }).toMatch(/^T/);
    settings('sane');
    expect(settings('-a')).not.toContain('-icanon');
    program.kill('SIGCONT');
    await expect.poll(() => settings('-a'), { timeout: 15_000 }).toContain('-icanon');
    program.type('5\r');
    await program.waitFor('taken: 5');
    program.type('q');
    await program.exit;
  });

  it('a storm of resizes and keys: the last size, a clean frame, no key lost', async () => {
    const program = await start();
    for (let turn = 0; turn < 40; turn++) {
      program.resize(60 + ((turn * 37) % 90), 16 + ((turn * 11) % 40));
      program.type(String(turn % 10));
    }
    program.resize(70, 18);
    await program.waitFor('70x17');
    program.press('return');
    await program.waitFor(/taken: (0123456789){4}/);
    const lines = await program.screen();
    expect(lines.slice(0, 17).map((line) => [...line].length)).toEqual(Array(17).fill(70));
    expect(lines.filter((line) => line.includes('Fixture'))).toHaveLength(1);
    expect(lines[17]).toBe('');
    program.type('q');
    await program.exit;
  });
});

function processState(pid: number): string {
  return execFileSync('ps', ['-o', 'stat=', '-p', String(pid)], { encoding: 'utf8' });
}
