import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readTextFile } from '../../src/files/read-text.ts';
import { scratchFolder } from '../log/built-child.ts';
import { asNobody } from './as-nobody.ts';

let scratch: ReturnType<typeof scratchFolder>;
let path: string;
beforeEach(() => {
  scratch = scratchFolder();
  path = join(scratch.path, 'a.yaml');
});
afterEach(() => scratch.remove());

function problemOf(at: string) {
  const read = readTextFile(at);
  if ('text' in read) throw new Error('was read');
  return read.problem;
}

describe('readTextFile', () => {
  it.each([
    ['plain text', Buffer.from('a: é\r\nb\n'), 'a: é\r\nb\n'],
    ['a byte-order mark is dropped', Buffer.from('\ufeffa: 1'), 'a: 1'],
    ['an empty file', Buffer.alloc(0), ''],
    ['one of exactly 1 MB', Buffer.alloc(1_000_000, 0x61), 'a'.repeat(1_000_000)],
  ])('reads %s', (_what, bytes, text) => {
    writeFileSync(path, bytes);
    expect(readTextFile(path)).toEqual({ text });
  });

  it.each([
    ['too large', Buffer.alloc(1_000_001, 0x61), 'too-large', 'larger than 1000000 bytes'],
    ['UTF-16', Buffer.from('\ufeffa: 1', 'utf16le'), 'not-utf-8', 'UTF-16 text'],
    ['Latin-1', Buffer.from('a\nb: Gr\xfcn\n', 'latin1'), 'not-utf-8', 'first at line 2'],
    ['an overlong form', Buffer.of(0x61, 0xc0, 0xaf), 'not-utf-8', 'first at line 1'],
    ['a surrogate', Buffer.of(0xed, 0xa0, 0x80), 'not-utf-8', 'first at line 1'],
  ])('refuses %s', (_what, bytes, code, words) => {
    writeFileSync(path, bytes);
    expect(problemOf(path)).toMatchObject({ code, path, words: expect.stringContaining(words) });
    expect(problemOf(path).fix.length).toBeGreaterThan(10);
  });

  it('has words for a missing file, a folder, a file as a folder, a circle of links and a bad name', () => {
    mkdirSync(join(scratch.path, 'folder'));
    writeFileSync(path, '');
    symlinkSync('circle', join(scratch.path, 'circle'));
    const of = (name: string) => problemOf(join(scratch.path, name)).words;
    expect(of('missing')).toBe('there is no such file');
    expect(of('folder')).toBe('this is a folder, not a file');
    expect(of('a.yaml/b')).toBe('a part of this path is a file, not a folder');
    expect(of('circle')).toBe('the links of this path lead in a circle');
    expect(of('a\0b')).toBe('the name holds a character no file name can hold');
    expect(of('x'.repeat(300))).toBe('the name is too long');
  });

  it('does not wait at a pipe', () => {
    const pipe = join(scratch.path, 'pipe');
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    expect(problemOf(pipe).code).toBe('not-a-file');
  });

  it('has words for a file that may not be read', () => {
    writeFileSync(path, 'x');
    chmodSync(path, 0);
    expect(asNobody(() => problemOf(path))).toMatchObject({
      code: 'EACCES',
      words: 'you are not allowed to read this file',
    });
  });
});
