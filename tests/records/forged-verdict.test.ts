/** One line more, with a right chain, and a vehicle that nobody repaired is called cured: no file of ours takes it. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { memoryDisk } from '../../src/log/memory-disk.ts';
import { readRecord } from '../../src/records/read-record.ts';
import { verifySession } from '../../src/records/verify-session.ts';
import { RULES, type SessionEvent } from '../../src/session/events.ts';
import { sealed } from '../log/events.ts';
import { finishedWalk } from './sample-session.ts';

const SAMPLES = readdirSync('sessions').filter((name) => name.endsWith('.jsonl'));

/** The file with events appended as its program would have. */
function grown(text: string, events: readonly object[]): string {
  const lines = text.split('\n').slice(0, -1);
  for (const event of events) {
    const { seq, elapsed, at } = JSON.parse(lines.at(-1)!);
    const prev = createHash('sha256').update(lines.at(-1)!).digest('hex');
    const line: Record<string, unknown> = { ...event, seq: seq + 1, prev, at, elapsed };
    // The canonical form sorts the keys.
    lines.push(JSON.stringify(Object.fromEntries(Object.entries(line).sort())));
  }
  return `${lines.join('\n')}\n`;
}

function judged(text: string) {
  const disk = memoryDisk();
  const file = disk.openNew('/forged.jsonl');
  disk.write(file, Buffer.from(text));
  disk.close(file);
  return {
    verified: verifySession(disk, '/forged.jsonl'),
    read: readRecord(disk, '/forged.jsonl'),
  };
}

const CURED = { type: 'session-closed', verdict: 'cured' };
const RESUMED = { type: 'session-resumed', program: '0.1.0', by: 'person', format: 2 };

describe.each(SAMPLES)('%s', (name) => {
  const text = readFileSync(`sessions/${name}`, 'utf8');

  it.each([
    ['by our rules', [CURED]],
    ['by other rules', [{ ...RESUMED, rules: RULES - 1 }, CURED]],
    ['by rules to come', [{ ...RESUMED, rules: RULES + 1 }, CURED]],
  ])('is not called cured %s', (_, events) => {
    const { verified, read } = judged(grown(text, events));
    expect(verified.genuine).toBe(false);
    expect(verified.firstBad?.words).toMatch(
      /closes with "cured", but the tests after the repair give "no-retest"/,
    );
    // Papers are not made of it.
    expect(read.ok && read.state).toBe('damaged');
  });
});

it('nor does one test of two that passes make it so, whatever rules are named', () => {
  const events = finishedWalk().events.filter(
    (event) => event.type !== 'retest-recorded' || event.step !== 'feed',
  );
  const early = events.map(
    (event): SessionEvent => (event.type === 'session-opened' ? { ...event, rules: 1 } : event),
  );
  const { verified } = judged(sealed(early).text);
  expect(verified.firstBad?.words).toMatch(/closes with "cured"/);
});
