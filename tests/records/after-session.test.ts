import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { runAfterSession } from '../../src/records/after-session.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ohmward-after-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** A program that does what `source` says, under Node. */
function program(source: string): string[] {
  const path = join(folder, 'program.mjs');
  writeFileSync(path, source);
  return [process.execPath, path];
}

function run(
  command: readonly string[],
  more: { path?: string; limitMs?: number; env?: Record<string, string> } = {},
) {
  const { path = join(folder, 'session.jsonl'), limitMs = 20_000, env = {} } = more;
  return runAfterSession({ command, path, json: '{"id":"lab"}', env, cwd: folder, limitMs });
}

const ECHO = `
import { writeFileSync } from 'node:fs';
let input = '';
for await (const chunk of process.stdin) input += chunk;
writeFileSync('seen.json', JSON.stringify({ args: process.argv.slice(2), input, env: process.env }));
console.log('kept');
`;

function seen(): { args: string[]; input: string; env: Record<string, string> } {
  return JSON.parse(readFileSync(join(folder, 'seen.json'), 'utf8'));
}

it('gets its own arguments, the session file as the last, and the record on its standard input', async () => {
  const result = await run([...program(ECHO), '--to', 'a b']);
  expect(result).toEqual({ done: true, words: 'kept' });
  expect(seen().args).toEqual(['--to', 'a b', join(folder, 'session.jsonl')]);
  expect(seen().input).toBe('{"id":"lab"}');
});

it.each([
  '-rf',
  '$(touch owned)',
  ';touch owned',
  'a b',
  'new\nline',
  '`touch owned`',
  '*',
  "'",
  '"',
  '%PATH%',
])('a path named %j arrives as it is and starts nothing', async (path) => {
  expect((await run([...program(ECHO), path], { path })).done).toBe(true);
  expect(seen().args).toEqual([path, path]);
  expect(readdirSync(folder).sort()).toEqual(['program.mjs', 'seen.json']);
});

it('gets no environment but what programs need', async () => {
  const env = {
    PATH: '/bin',
    LANG: 'C',
    LC_ALL: 'C',
    NODE_OPTIONS: '--bad',
    API_TOKEN: 'x',
    LD_PRELOAD: '/x',
    HOME: folder,
    // What `ohmward records share` is pointed with.
    OHMWARD_DATABASE: 'postgresql://h/db',
    PGPASSWORD: 'secret',
  };
  await run(program(ECHO), { env });
  const names = Object.keys(seen().env).filter((name) => !name.startsWith('__CF'));
  expect(names.sort()).toEqual([
    'HOME',
    'LANG',
    'LC_ALL',
    'OHMWARD_DATABASE',
    'PATH',
    'PGPASSWORD',
  ]);
});

it('that fails, is missing or is a folder gives words, and the session stays', async () => {
  const failed = await run(program('console.error("no paper\\u001b[2J"); process.exit(3)'));
  expect(failed.done).toBe(false);
  expect(failed.words).toContain('ended with exit code 3\nThe session is saved anyway.');
  expect(failed.words).toContain('no paper␛[2J');
  expect(await run([join(folder, 'nothing')])).toMatchObject({
    done: false,
    words: expect.stringContaining('could not be started (ENOENT)'),
  });
  expect(await run([folder])).toMatchObject({
    done: false,
    words: expect.stringContaining('could not be started (EACCES)'),
  });
  expect((await run(['nul\0byte'])).done).toBe(false);
});

it('that hangs is stopped', async () => {
  const result = await run(program('setInterval(() => {}, 1000)'), { limitMs: 700 });
  expect(result).toMatchObject({
    done: false,
    words: expect.stringContaining('was stopped after 0.7 s'),
  });
});

it('that prints without end is stopped', async () => {
  const result = await run(
    program('const more = () => process.stdout.write("x".repeat(65536), more); more();'),
  );
  expect(result.done).toBe(false);
  expect(result.words).toContain('printed more than 1 MB');
  expect(result.words.length).toBeLessThan(3000);
});

it('that does not read its input is done all the same', async () => {
  expect(await run(program('process.stdin.destroy(); console.log("short")'))).toEqual({
    done: true,
    words: 'short',
  });
});

it('none is wanted: nothing is started', async () => {
  expect(await run([])).toEqual({ done: true, words: '' });
  expect(existsSync(join(folder, 'seen.json'))).toBe(false);
});
