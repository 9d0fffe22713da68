import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { writeWholeFile } from '../../src/log/write-whole.ts';
import { scratchFolder } from './built-child.ts';

let scratch: ReturnType<typeof scratchFolder>;
beforeEach(() => {
  scratch = scratchFolder();
});
afterEach(() => scratch.remove());

it('writes a new file and replaces an old one, leaving nothing else', () => {
  const path = join(scratch.path, 'exports', 'report.md');
  expect(writeWholeFile(nodeDisk, path, 'one é')).toEqual({ ok: true, value: { bytes: 6 } });
  expect(writeWholeFile(nodeDisk, path, Uint8Array.of(0x32)).ok).toBe(true);
  expect(readFileSync(path, 'utf8')).toBe('2');
  expect(readdirSync(join(scratch.path, 'exports'))).toEqual(['report.md']);
  expect(statSync(path).mode & 0o777).toBe(0o600);
});

it('keeps the old file and says so when a disk takes less than it was given without a word', () => {
  const path = join(scratch.path, 'report.md');
  writeWholeFile(nodeDisk, path, 'old');
  const lying = {
    ...nodeDisk,
    write: (file: number, bytes: Uint8Array) => {
      nodeDisk.write(file, bytes.subarray(0, bytes.length >> 1));
      return bytes.length;
    },
  };
  const written = writeWholeFile(lying, path, 'a much longer new text');
  expect(!written.ok && written.problem.code).toBe('no-progress');
  expect(readFileSync(path, 'utf8')).toBe('old');
  expect(readdirSync(scratch.path)).toEqual(['report.md']);
});

it('speaks of the file when it cannot be written, and of no session', () => {
  writeFileSync(join(scratch.path, 'taken'), '');
  const written = writeWholeFile(nodeDisk, join(scratch.path, 'taken', 'report.pdf'), 'x');
  if (written.ok) throw new Error('it was written');
  expect(written.problem.words).toMatch(
    /^A file is where the folder should be \(.*report\.pdf\)\.$/,
  );
  expect(written.problem.fix).toBe(
    'Move the file away, or choose another folder, and write it again.',
  );
});

it('will not replace a folder', () => {
  mkdirSync(join(scratch.path, 'report.md'));
  const written = writeWholeFile(nodeDisk, join(scratch.path, 'report.md'), 'x');
  expect(!written.ok && written.problem.words).toContain('A folder is where the file should be');
  expect(readdirSync(scratch.path)).toEqual(['report.md']);
});
