/**
 * Processes that write to one session file at once, each going on with it again and again: what one of them has had
 * acknowledged stands in the file once, the chain stays whole, and the others are told.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { openSession } from '../../src/log/open-session.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { LONG } from '../campaign.ts';
import { bundleChild, scratchFolder } from '../log/built-child.ts';
import { NAME, sampleEvent } from '../log/events.ts';

const ROUNDS = LONG ? 200 : 4;
/** Events that each process must get acknowledged in a round. */
const EVENTS = LONG ? 100 : 25;
/** What a process may be told when another one writes. */
const TOLD = ['open-elsewhere', 'file-changed'];
/** Node takes so long to start; the processes wait for each other, since only at the same moment is it an attack. */
const START_MS = 250;

const scratch = scratchFolder();
let child: string;
beforeAll(async () => {
  child = await bundleChild('tests/log/sharing-child.ts', scratch.path);
});
afterAll(scratch.remove);

/** Lines that a process printed until it ended by itself. */
function writer(path: string, from: number, startAt: number): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const process = spawn(
      globalThis.process.execPath,
      [child, path, String(from), String(EVENTS), String(startAt)],
      { stdio: ['ignore', 'pipe', 'inherit'] },
    );
    let said = '';
    process.stdout.on('data', (bytes: Buffer) => {
      said += bytes.toString();
    });
    process.on('error', reject);
    process.on('close', () => resolve(said.split('\n').filter(Boolean)));
  });
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
    const startAt = Date.now() + START_MS;
    const writers = round % 3 === 2 ? 3 : 2;
    const said = await Promise.all(
      Array.from({ length: writers }, (_, w) => writer(path, (w + 1) * 1000, startAt)),
    );
    const lines = said.flat();
    for (const line of lines)
      if (line.startsWith('r ')) told[line.slice(2)] = (told[line.slice(2)] ?? 0) + 1;
    const heard = lines
      .filter((line) => line.startsWith('a '))
      .map((line) => Number(line.slice(2)));
    acknowledged += heard.length;
    const opened = openSession(nodeDisk, path);
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
