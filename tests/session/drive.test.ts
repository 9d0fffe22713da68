/** The last word: what the trouble codes did once the vehicle was driven, days after the record was closed. */
import { describe, expect, it } from 'vitest';
import { memoryDisk } from '../../src/log/memory-disk.ts';
import { exportRecord } from '../../src/records/export-record.ts';
import { readRecord } from '../../src/records/read-record.ts';
import { recordOf } from '../../src/records/session-record.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { readDrive } from '../../src/session/read-drive.ts';
import { drillWalk } from '../records/sample-drill.ts';
import { begin, fileOf, finishedWalk, type Walk } from '../records/sample-session.ts';
import { when } from './sample-tree.ts';

const RESUME: Command = { type: 'resume', program: '0.1.0', by: 'person' };
const AWAY: Command = { type: 'report-drive', code: 'stayed-away', words: ' 80 km ' };
const BACK: Command = { type: 'report-drive', code: 'came-back', words: '' };

function paper(walk: Walk, audience: 'customer' | 'shop'): string {
  return exportRecord(recordOf(walk.session, fileOf(walk).head), 'markdown', audience);
}

describe('a record that was closed', () => {
  const closed = finishedWalk();
  const driven = closed.do(RESUME, AWAY);

  it('takes the drive as an event of its own, and stays closed with the verdict it has', () => {
    expect(driven.events.at(-1)).toMatchObject({
      type: 'drive-reported',
      code: 'stayed-away',
      words: '80 km',
    });
    expect(driven.session).toMatchObject({ status: 'closed', closed: { verdict: 'cured' } });
    expect(driven.session.drives).toHaveLength(1);
  });

  it('is read back from its file as it was', () => {
    const disk = memoryDisk();
    const file = disk.openNew('/driven.jsonl');
    disk.write(file, Buffer.from(fileOf(driven.do(BACK)).text));
    disk.close(file);
    const read = readRecord(disk, '/driven.jsonl');
    expect(read).toMatchObject({ ok: true, state: 'whole' });
    const codes = read.ok && read.record.retest.drives.map(({ code }) => code);
    expect(codes).toEqual(['stayed-away', 'came-back']);
  });

  it('tells it in the papers, in place of what was still to be done', () => {
    for (const audience of ['customer', 'shop'] as const) {
      expect(paper(closed, audience)).toContain('The last word is that the code stays away');
      const told = paper(driven, audience);
      expect(told).toMatch(/Test drive.*the trouble codes stayed away; 80 km/);
      expect(told).not.toContain('The last word is that the code stays away');
    }
  });

  it('says that the fault is not gone where the codes came back, whatever the tests showed', () => {
    const told = paper(driven.do(BACK), 'customer');
    expect(told).toContain('The tests were repeated after the repair and passed.');
    expect(told).toContain('So the fault is not gone');
  });
});

it('before a conclusion and on a drill nothing is driven', () => {
  const refusal = (walk: Pick<Walk, 'session'>) => {
    const decision = decide(walk.session, AWAY, when(1));
    return decision.ok ? null : decision.refusal.code;
  };
  expect(refusal(begin())).toBe('not-concluded');
  expect(refusal(drillWalk())).toBe('no-drive');
});

it.each<[string, unknown]>([
  ['away, 80 km and three cold starts', ['stayed-away', '80 km and three cold starts']],
  ['Away', ['stayed-away', '']],
  ['stayed away: no light', ['stayed-away', 'no light']],
  ['came-back after 12 km', ['came-back', 'after 12 km']],
  ['back', ['came-back', '']],
  ['backfires', 'away'],
  ['it is gone', 'away'],
  ['', 'away'],
])('"%s"', (text, expected) => {
  const read = readDrive(text);
  if ('type' in read) expect([read.code, read.words]).toEqual(expected);
  else expect(read.words).toContain(expected);
});
