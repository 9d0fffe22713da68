/** SQLite's way of testing a disk: let the n-th operation fail, for n = 1, 2, 3 ... until a run passes unharmed. */
import { describe, expect, it, vi } from 'vitest';
import type { Disk } from '../../src/log/disk.ts';
import { LONG, SEED } from '../campaign.ts';
import { faultRun, type RunPlan, type RunReport, resumeRun, wholeRun } from './fault-run.ts';
import { FAULTS, type FaultyDisk } from './faulty-disk.ts';

/** A session of nine events uses about 45 operations, with retries and a second part about 60. */
const MAX_OPERATION = 80;
vi.setConfig({ testTimeout: LONG ? 600_000 : 60_000 });

interface Totals {
  runs: number;
  struck: number;
  acknowledged: number;
  lost: number;
  runsWithLoss: number;
  broken: Map<string, number>;
  problems: Map<string, number>;
}

type Run = (plan: RunPlan) => RunReport;

function campaign(run: Run, repeats: number, untilLoss = false): Totals {
  const totals: Totals = {
    runs: 0,
    struck: 0,
    acknowledged: 0,
    lost: 0,
    runsWithLoss: 0,
    broken: new Map(),
    problems: new Map(),
  };
  const count = (map: Map<string, number>, key: string) => map.set(key, (map.get(key) ?? 0) + 1);
  let seed = SEED;
  for (const kind of FAULTS)
    for (const persistent of [false, true])
      for (const partial of [false, true])
        for (let at = 1; at <= MAX_OPERATION; at += 1) {
          let struck = false;
          for (let repeat = 0; repeat < repeats; repeat += 1) {
            seed += 1;
            const fault = { kind, at, persistent, partial, below: '/first' };
            const report = run({ fault, power: repeat % 2 === 0, seed });
            totals.runs += 1;
            totals.acknowledged += report.acknowledged;
            totals.lost += report.lost;
            if (report.lost > 0) totals.runsWithLoss += 1;
            if (report.struck) totals.struck += 1;
            struck ||= report.struck;
            if (report.broken)
              count(totals.broken, `${report.broken} (${kind} at ${at}, seed ${seed})`);
            for (const code of report.problems) count(totals.problems, code);
          }
          if (untilLoss && totals.runsWithLoss >= 10) return totals;
          if (!struck) break; // the fault came too late: every point has been reached
        }
  return totals;
}

function line(what: string, t: Totals): string {
  const problems = [...t.problems].map(([code, n]) => `${code}:${n}`).join(' ');
  return `${what}: runs=${t.runs} struck=${t.struck} acknowledged=${t.acknowledged} lost=${t.lost} runsWithLoss=${t.runsWithLoss} broken=${t.broken.size} seed=${SEED} ${problems}`;
}

describe('faults of the disk', () => {
  it('lose no acknowledged event, and each comes with words and a way out', () => {
    const totals = campaign(faultRun, LONG ? 80 : 4);
    console.info(line('fault campaign', totals));
    expect([...totals.broken.keys()].slice(0, 5)).toEqual([]);
    expect(totals.lost).toBe(0);
    expect(totals.runs).toBeGreaterThanOrEqual(LONG ? 60_000 : 3200);
    expect([...totals.problems.keys()]).toEqual(
      expect.arrayContaining(['ENOSPC', 'EIO', 'EROFS', 'no-progress']),
    );
  });

  it('while a torn session is resumed lose nothing, and the next try works', () => {
    const totals = campaign(resumeRun, LONG ? 60 : 5);
    console.info(line('faults on resuming', totals));
    expect([...totals.broken.keys()].slice(0, 5)).toEqual([]);
    expect(totals.lost).toBe(0);
    expect(totals.struck).toBeGreaterThan(600);
  });

  it('while a whole file is replaced leave the old one or the new one', () => {
    const totals = campaign(wholeRun, LONG ? 60 : 8);
    console.info(line('faults on replacing', totals));
    expect([...totals.broken.keys()].slice(0, 5)).toEqual([]);
    expect(totals.lost).toBe(0);
    expect(totals.struck).toBeGreaterThan(800);
  });
});

/** Each passes on to the good disk all but one operation, which it does as a careless writer would. */
const BAD_WRITERS: Readonly<Record<string, (disk: FaultyDisk) => Disk>> = {
  'acknowledges before the sync': (disk) => ({ ...operationsOf(disk), syncData: () => {} }),
  'leaves half a line where a write failed': (disk) => {
    // Half a line is hidden from the check of the file's size too, as in a writer that has none.
    const hidden = new Map<number, number>();
    return {
      ...operationsOf(disk),
      truncate: (file, bytes) => {
        hidden.set(file, disk.factsOpen(file).bytes - bytes);
      },
      factsOpen: (file) => {
        const facts = disk.factsOpen(file);
        return { ...facts, bytes: facts.bytes - (hidden.get(file) ?? 0) };
      },
    };
  },
  'takes a short write for a whole one': (disk) => ({
    ...operationsOf(disk),
    write: (file, bytes) => {
      disk.write(file, bytes);
      return bytes.length;
    },
  }),
  'syncs once more after a failed sync and believes it': (disk) => ({
    ...operationsOf(disk),
    syncData: (file) => {
      try {
        disk.syncData(file);
      } catch {
        disk.syncData(file);
      }
    },
  }),
};

function operationsOf(disk: FaultyDisk): Disk {
  const { openNew, openAppend, write, syncData, syncFolder, truncate, factsOpen } = disk;
  const { facts, rename, remove, read, readOpen, list, close, rest, makeFolder } = disk;
  const files = { openNew, openAppend, write, syncData, syncFolder, truncate, factsOpen };
  return { ...files, facts, rename, remove, read, readOpen, list, close, rest, makeFolder };
}

describe('the campaign itself catches a writer that', () => {
  for (const [what, flaw] of Object.entries(BAD_WRITERS))
    it(what, () => {
      const totals = campaign((plan) => faultRun({ ...plan, flaw }), 2, !LONG);
      console.info(line(`bad writer, ${what}`, totals));
      expect(totals.lost).toBeGreaterThan(0);
    });
});
