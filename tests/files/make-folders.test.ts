import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { makeFolders } from '../../src/files/make-folders.ts';

let top: string;
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'ohmward-folders-'));
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

it('makes a folder with those above it, and tells which', () => {
  const deep = join(top, 'a', 'b');
  expect(makeFolders(deep, 0o700)).toEqual([join(top, 'a'), deep]);
  expect(statSync(deep).mode & 0o777).toBe(0o700);
  expect(makeFolders(deep, 0o700)).toEqual([]);
});

it('refuses below a file and at a link that leads nowhere', () => {
  const file = join(top, 'file');
  writeFileSync(file, '');
  symlinkSync(join(top, 'nowhere'), join(top, 'link'));
  expect(() => makeFolders(file)).toThrow(expect.objectContaining({ code: 'ENOTDIR' }));
  expect(() => makeFolders(join(file, 'b'))).toThrow(expect.objectContaining({ code: 'ENOTDIR' }));
  expect(() => makeFolders(join(top, 'link'))).toThrow(expect.objectContaining({ code: 'EEXIST' }));
});

it.skipIf(!existsSync('/proc/self'))(
  'comes to an end in /proc, where no folder can be made',
  () => {
    const module = resolve('dist/ohmward.mjs');
    const run = () =>
      execFileSync(
        process.execPath,
        [
          module,
          'run',
          'reluctor-no-signal',
          '--bench',
          'healthy',
          '--plain',
          '--sessions',
          '/proc/x/y',
        ],
        { input: '', encoding: 'utf8', stdio: 'pipe', timeout: 20_000, killSignal: 'SIGKILL' },
      );
    expect(run).toThrow(expect.objectContaining({ status: 1, signal: null }));
  },
);
