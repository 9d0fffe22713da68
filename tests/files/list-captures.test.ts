/** Captures to choose from: what is listed, in which order, and what a closed or crowded folder gives. */
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  realpathSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { followName, listCaptures } from '../../src/files/list-captures.ts';
import { asNobody } from './as-nobody.ts';

const NOW_SECONDS = 2_000_000_000;
let home: string;
beforeEach(() => {
  home = realpathSync(mkdtempSync(join(tmpdir(), 'ohmward-captures-')));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

function put(name: string, agoSeconds = 0, text = '1\n'): void {
  writeFileSync(join(home, name), text);
  utimesSync(join(home, name), NOW_SECONDS - agoSeconds, NOW_SECONDS - agoSeconds);
}
const list = (folder = home) => listCaptures(folder, NOW_SECONDS * 1000);
const names = (folder = home) => list(folder).entries.map(({ name }) => name);

describe('a folder of captures', () => {
  it('is listed newest first, then folders by name, then the way up', () => {
    put('old.csv', 500);
    put('new.WAV', 5);
    put('middle.tsv', 50);
    mkdirSync(join(home, 'b'));
    mkdirSync(join(home, 'a'));
    expect(names()).toEqual(['new.WAV', 'middle.tsv', 'old.csv', 'a', 'b', '..']);
    expect(list().entries[1]).toMatchObject({ kind: 'file', bytes: 2, ageMs: 50_000 });
  });

  it('leaves out what is no capture: other endings, hidden names, broken links', () => {
    put('picture.png');
    put('.hidden.csv');
    mkdirSync(join(home, '.cache'));
    symlinkSync(join(home, 'gone.csv'), join(home, 'link.csv'));
    symlinkSync(join(home, 'circle.csv'), join(home, 'circle.csv'));
    expect(names()).toEqual(['..']);
    put('real.csv');
    symlinkSync(join(home, 'real.csv'), join(home, 'also.txt'));
    expect(names()).toEqual(['also.txt', 'real.csv', '..']);
  });

  it('gives names as they are, whatever signs they hold, and ages that are never negative', () => {
    put('\u202egpj.csv', -3600);
    put('\x1b[2J.csv', 3);
    expect(names()).toEqual(['\u202egpj.csv', '\x1b[2J.csv', '..']);
    expect(list().entries[0]!.ageMs).toBe(0);
  });

  it('that is very full says how much is left out', () => {
    for (let at = 0; at < 5003; at += 1) writeFileSync(join(home, `${at}.csv`), '');
    const { entries, leftOut } = list();
    expect(entries.filter(({ kind }) => kind === 'file')).toHaveLength(5000);
    expect(leftOut).toBe(3);
  });

  it('that is missing, or is a file, says so and leads up again', () => {
    expect(list(join(home, 'gone'))).toMatchObject({
      problem: { problem: 'there is no such folder' },
      entries: [{ name: '..' }],
    });
    put('file.csv');
    expect(list(join(home, 'file.csv')).problem?.problem).toBe('this is a file, not a folder');
  });

  it('that is closed to us says so', () => {
    mkdirSync(join(home, 'locked'));
    chmodSync(join(home, 'locked'), 0);
    const { problem } = asNobody(() => list(join(home, 'locked')));
    chmodSync(join(home, 'locked'), 0o700);
    expect(problem?.problem).toContain('not allowed');
  });
});

describe('a name', () => {
  it('leads into a folder or to a file, which need not exist', () => {
    mkdirSync(join(home, 'in'));
    expect(followName(home, 'in', undefined)).toEqual({ folder: join(home, 'in') });
    expect(followName(join(home, 'in'), '..', undefined)).toEqual({ folder: home });
    expect(followName(home, 'in/x.csv', undefined)).toEqual({ file: join(home, 'in/x.csv') });
    expect(followName('/', '~/in', home)).toEqual({ folder: join(home, 'in') });
    expect(followName(home, 'a\0b', undefined)).toEqual({ file: join(home, 'a\0b') });
  });
});
