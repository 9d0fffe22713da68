/** Hostile captures, session logs and files that are no files. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { MAX_TEXT_BYTES, readTextFile } from '../../src/files/read-text.ts';
import { safeText } from '../../src/source/safe-text.ts';
import { BYTES_ATTACKS } from './bytes-attacks.ts';
import { cpuMs, flawOfAnswer, prototypesNow, readAs } from './readers.ts';

/** No file may keep a person waiting longer (processor time, the same on a busy machine). */
const ANSWER_MS = 2000;

describe.each(['csv', 'wav', 'log'] as const)('a %s with', (kind) => {
  const attacks = BYTES_ATTACKS.filter((attack) => attack.kind === kind);
  it.each(attacks.map((attack) => [attack.what, attack] as const))('%s', (_, attack) => {
    const before = prototypesNow();
    const { value: answered, ms } = cpuMs(() => readAs(kind, attack.bytes));
    expect(prototypesNow()).toBe(before);
    expect(flawOfAnswer(answered, Buffer.from(attack.bytes).toString())).toBeNull();
    expect(ms).toBeLessThan(ANSWER_MS);
    const errors = answered.issues.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ code }) => code)).toEqual(attack.code === null ? [] : [attack.code]);
    expect(answered.usable).toBe(attack.code === null);
    if (attack.line !== null) expect(errors[0]!.at.line).toBe(attack.line);
  });
});

/** The offsets of what a sound file says of itself, and how many bytes each has. */
const WAV_FIELDS = [4, 16, 20, 22, 24, 28, 32, 34, 40];
const WAV_HEAD = 44;
const EXTREMES = [0, 1, 0x7f, 0x80, 0xff];

it('a sound file cut anywhere, or with any byte or field of its head at an extreme, is read or refused in words', () => {
  const good = Buffer.from(BYTES_ATTACKS.find(({ kind }) => kind === 'wav')!.bytes);
  const changed = (from: number, count: number, value: number) => {
    const bytes = Buffer.from(good);
    bytes.fill(value, from, from + count);
    return bytes;
  };
  const cases = [
    ...Array.from({ length: good.length }, (_, length) => good.subarray(0, length)),
    ...Array.from({ length: WAV_HEAD }, (_, at) => EXTREMES.map((to) => changed(at, 1, to))).flat(),
    ...WAV_FIELDS.flatMap((at) => [2, 4].flatMap((n) => EXTREMES.map((to) => changed(at, n, to)))),
  ];
  const before = prototypesNow();
  for (const [index, bytes] of cases.entries()) {
    const { value: answered, ms } = cpuMs(() => readAs('wav', bytes));
    expect(flawOfAnswer(answered, bytes.toString()), `case ${index}`).toBeNull();
    expect(ms).toBeLessThan(ANSWER_MS);
  }
  expect(prototypesNow()).toBe(before);
  console.info(`sound files: cases=${cases.length}`);
});

describe('a file that is', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-hostile-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const put = (name: string, bytes: string | Uint8Array): string => {
    const path = join(folder, name);
    writeFileSync(path, bytes);
    return path;
  };
  const cases: readonly [string, string, () => string][] = [
    ['missing', 'ENOENT', () => join(folder, 'nobody')],
    ['a folder', 'EISDIR', () => folder],
    ['below a file', 'ENOTDIR', () => join(put('plain', 'x'), 'inside')],
    ['a link to itself', 'ELOOP', () => linkTo('circle', 'circle')],
    ['a link to nothing', 'ENOENT', () => linkTo('dangling', 'nobody')],
    ['a pipe nobody writes to', 'not-a-file', () => pipe('pipe')],
    ['a device', 'not-a-file', () => '/dev/zero'],
    ['a name of 300 letters', 'ENAMETOOLONG', () => join(folder, 'x'.repeat(300))],
    ['a name with a zero in it', 'ERR_INVALID_ARG_VALUE', () => join(folder, 'a\0b')],
    ['one byte too large', 'too-large', () => put('large', 'x'.repeat(MAX_TEXT_BYTES + 1))],
    ['UTF-16, small end first', 'not-utf-8', () => put('le', Buffer.from('\ufeffa: b', 'utf16le'))],
    ['UTF-16, big end first', 'not-utf-8', () => put('be', Buffer.from([0xfe, 0xff, 0, 0x61]))],
    ['Latin-1', 'not-utf-8', () => put('latin', Buffer.from('complaint: Stößt\n', 'latin1'))],
    ['a lone surrogate in UTF-8', 'not-utf-8', () => put('cesu', Buffer.from([0xed, 0xa0, 0x80]))],
    ['an overlong slash', 'not-utf-8', () => put('over', Buffer.from([0xc0, 0xaf]))],
    [
      'beyond the last character',
      'not-utf-8',
      () => put('beyond', Buffer.from([0xf4, 0x90, 0x80, 0x80])),
    ],
    ['cut in a character', 'not-utf-8', () => put('cut', Buffer.from([0x61, 0xe2, 0x82]))],
    ['a folder with an order in its name', 'EISDIR', () => folderNamed('\u001b]0;title\u0007')],
  ];
  const linkTo = (name: string, target: string): string => {
    symlinkSync(join(folder, target), join(folder, name));
    return join(folder, name);
  };
  const pipe = (name: string): string => {
    execFileSync('mkfifo', [join(folder, name)]);
    return join(folder, name);
  };
  const folderNamed = (name: string): string => {
    mkdirSync(join(folder, name));
    return join(folder, name);
  };
  it.each(cases)('%s is refused: %s', (_, code, make) => {
    const read = readTextFile(make());
    expect(read).toMatchObject({ problem: { code } });
    if (!('problem' in read)) return;
    for (const words of [read.problem.words, read.problem.fix]) {
      expect(words).not.toBe('');
      expect(safeText(words)).toBe(words);
    }
  });

  it('named with its line where the text stops being UTF-8', () => {
    const bytes = Buffer.concat([Buffer.from('a: b\nc: d\n'), Buffer.from([0xff, 0x0a])]);
    expect(readTextFile(put('third-line', bytes))).toMatchObject({
      problem: { words: 'the file is not UTF-8 text, first at line 3' },
    });
  });
});
