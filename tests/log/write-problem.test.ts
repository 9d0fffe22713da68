/** What a real disk refuses is told with its cause and what to do about it. */
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { NAME, sampleEvent } from './events.ts';

describe('a session cannot begin', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ohmward-problem-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const at = (...parts: string[]) => join(folder, ...parts);
  writeFileSync(at('a-file'), '');
  symlinkSync('round', at('round'));

  it.each<[string, string, string, RegExp, RegExp]>([
    // where, the folder asked for, code of the system, what happened, what to do
    [
      'where its name is too long for the disk',
      'x'.repeat(300),
      'ENAMETOOLONG',
      /^The name is too long for this disk/,
      /Choose a folder with a shorter path/,
    ],
    [
      'in a folder that is a file',
      'a-file',
      'ENOTDIR',
      /^A file is where the folder should be/,
      /Move the file away/,
    ],
    [
      'behind a link that leads to itself',
      'round',
      'ELOOP',
      /^A link is where the file should be/,
      /Remove the link/,
    ],
  ])('%s', (_, name, code, words, fix) => {
    const begun = createSession(nodeDisk, at(name), NAME, sampleEvent(0));
    if (begun.ok) throw new Error('it began');
    expect(begun.problem.code).toBe(code);
    expect(begun.problem.words).toMatch(words);
    expect(begun.problem.fix).toMatch(fix);
  });
});
