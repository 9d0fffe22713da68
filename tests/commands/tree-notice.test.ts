/** What `run` and `drill` say of a tree of one's own: what the last check of this very text found, and nothing that they do not know. */
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { main } from '../../src/commands/program.ts';
import { CIRCUIT_TEXT, TREE_TEXT } from '../proof/example.ts';

const folder = mkdtempSync(join(tmpdir(), 'ohmward-notice-'));
const tree = join(folder, 'rake-wheel-no-speed.yaml');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Two outcomes of the coil sent each other's way: the tree loses the coil's faults. */
const WRONG = TREE_TEXT.replace('go: high-wire }', 'go: swap }')
  .replace('go: coil-bad }', 'go: high-wire }')
  .replace('go: swap }', 'go: coil-bad }');

async function program(...args: string[]) {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    env: { HOME: folder, NO_COLOR: '1' },
    cwd: folder,
  };
  const code = await main(args, io);
  return { code, out, err };
}

const RUN = ['run', tree, '--bench', 'sensor.coil-open', '--unattended', '--preview'];

beforeAll(() => {
  writeFileSync(join(folder, 'rake-wheel-pickup.yaml'), CIRCUIT_TEXT);
  writeFileSync(tree, TREE_TEXT);
});

describe('a tree of one’s own', () => {
  test('that was never checked is said to be so, and run all the same', async () => {
    const { code, err } = await program(...RUN);
    expect(code).toBe(0);
    expect(err).toContain(`has not been checked as it is now`);
    expect(err).toContain(`ohmward check ${tree}`);
  });

  test('that a check found right is run without a word', async () => {
    expect((await program('check', tree)).code).toBe(0);
    expect(existsSync(join(folder, '.cache/ohmward/checks.json'))).toBe(true);
    expect((await program(...RUN)).err).toBe('');
  });

  test('that was changed since is not checked', async () => {
    writeFileSync(tree, WRONG);
    expect((await program(...RUN)).err).toContain('has not been checked as it is now');
  });

  test('that a check found wrong says when, how many errors, and how to see them', async () => {
    const checked = await program('check', tree);
    expect(checked.code).toBe(1);
    const [, count] = checked.out.match(/(\d+) errors?/)!;
    const { code, err } = await program(...RUN);
    expect(code).toBe(0);
    expect(err).toMatch(new RegExp(`UTC found ${count} errors? in this tree`));
    expect(err).toContain(`ohmward check ${tree}`);
  });

  test('that is wrong is drilled with the same words', async () => {
    const actions = join(folder, 'a.yaml');
    writeFileSync(actions, 'seed: 3\nactions:\n  - give-up: true\n');
    const { err } = await program('drill', tree, '--actions', actions);
    expect(err).toMatch(/UTC found \d+ errors? in this tree/);
  });

  test('of the library says nothing', async () => {
    const bench = ['--bench', 'sensor.coil-open', '--unattended', '--preview'];
    expect((await program('run', 'reluctor-no-signal', ...bench)).err).toBe('');
  });

  test('a damaged file of verdicts is as good as none', async () => {
    writeFileSync(join(folder, '.cache/ohmward/checks.json'), '[{"key":3},null,{');
    expect((await program(...RUN)).err).toContain('has not been checked as it is now');
  });
});
