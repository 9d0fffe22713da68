/**
 * Processes that write to one session file at once, each going on with it again and again: what one of them has had
 * acknowledged stands in the file once, the chain stays whole, and the others are told.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { openSessionFile } from '../../src/log/open-session.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { LONG } from '../campaign.ts';
import { bundleChild, scratchFolder } from '../log/built-child.ts';
import { NAME, sampleEvent } from '../log/events.ts';

const ROUNDS = LONG ? 200 : 4;
/** Events that each process must get acknowledged in a round. */
const EVENTS = LONG ? 100 : 25;
/** What a process may be told when another one writes. */
const TOLD = ['open-elsewhere', 'file-changed'];

const scratch = scratchFolder();
let child: string;
beforeAll(async () => {
  child = await bundleChild('tests/log/sharing-child.ts', scratch.path);
});
afterAll(scratch.remove);

/** Processes that begin at the same moment, since only then it is an attack; what all of them printed. */
async function writeAtOnce(path: string, writers: number): Promise<string[]> {
  const started = Array.from({ length: writers }, (_, w) =>
    spawn(process.execPath, [child, path, String((w + 1) * 1000), String(EVENTS)], {
      stdio: ['pipe', 'pipe', 'inherit'],
    }),
  );
  const said = started.map(async ({ stdout }) => {
    let text = '';
    for await (const bytes of stdout) text += String(bytes);
    return text;
  });
  await Promise.all(started.map(({ stdout }) => once(stdout, 'readable')));
  for (const { stdin } of started) stdin.end('!');
  return (await Promise.all(said)).join('').split('\n');
}

it('loses nothing, doubles nothing and tells each of them', { timeout: 600_000 }, async () => {
  const told: Record<string, number> = {};
  let acknowledged = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const folder = join(scratch.path, `round-${round}`);
    mkdirSync(folder);
    const path = join(folder, NAME);
    const begun = createSession(nodeDisk, folder, NAME, sampleEvent(0));
    if (!begun.ok) throw new Error(begun.problem.words);
    begun.value.close();
    const writers = round % 3 === 2 ? 3 : 2;
    const lines = await writeAtOnce(path, writers);
    for (const line of lines)
      if (line.startsWith('r ')) told[line.slice(2)] = (told[line.slice(2)] ?? 0) + 1;
    const heard = lines
      .filter((line) => line.startsWith('a '))
      .map((line) => Number(line.slice(2)));
    acknowledged += heard.length;
    const opened = openSessionFile(nodeDisk, path);
    if (!opened.ok) throw new Error(opened.problem.words);
    expect(opened.value.log.verdict, opened.value.log.words).toBe('whole');
    const stored = opened.value.events.map(({ id }) => Number(id)).filter((id) => id > 0);
    expect(stored.toSorted((a, b) => a - b)).toEqual(heard.toSorted((a, b) => a - b));
    expect(heard).toHaveLength(writers * EVENTS);
    expect(readdirSync(folder)).toEqual([NAME]);
  }
  console.info(
    `two writers: rounds=${ROUNDS} acknowledged=${acknowledged} told=${JSON.stringify(told)}`,
  );
  expect(Object.keys(told).filter((code) => !TOLD.includes(code))).toEqual([]);
});
