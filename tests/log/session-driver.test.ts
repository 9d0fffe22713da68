/** The session in hand counts its events as the file does: evidence names readings by those numbers. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Disk } from '../../src/log/disk.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionFile } from '../../src/log/read-session-file.ts';
import { driveSession } from '../../src/log/session-driver.ts';
import { createSession } from '../../src/log/session-writer.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { openSession } from '../../src/session/evolve.ts';
import { presentStep } from '../../src/session/session.ts';
import { shipped } from '../circuit/shipped.ts';
import { opened, TREE, when } from '../session/sample-tree.ts';
import { ACK, CONCLUDED, DONE, volts } from '../session/shorthand.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ohmward-driver-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

it('a session that went on in another folder counts the link between its parts', () => {
  let isFull = false;
  const disk: Disk = {
    ...nodeDisk,
    write: (file, bytes) => {
      if (isFull) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      return nodeDisk.write(file, bytes);
    },
  };
  const first = opened();
  const made = createSession(disk, folder, '20310506T070809Z-lab-00000001.jsonl', first);
  if (!made.ok) throw new Error(made.problem.words);
  const parts = { writer: made.value, session: openSession(first), now: () => when(1) };
  const driver = driveSession({ ...parts, vehicle: null });
  driver.perform(DONE);
  isFull = true;
  expect(driver.perform(ACK)).toMatchObject({ ok: false, disk: true });
  isFull = false;
  expect(driver.continueIn(join(folder, 'other')).ok).toBe(true);
  driver.perform(volts(5));
  expect(driver.session().events.map(({ type }) => type)).toEqual([
    'session-opened',
    'step-done',
    'segment-continued',
    'caution-acknowledged',
    'reading-recorded',
  ]);
  expect(driver.session().events).toHaveLength(driver.head().seq);
  driver.close();
  const read = readSessionFile(nodeDisk, driver.path(), [folder]);
  expect(read).toMatchObject({ ok: true, session: driver.session() });
});

it('a session that comes to rest is told once, and what came after it at the close', () => {
  const first = opened();
  const made = createSession(nodeDisk, folder, '20310506T070809Z-lab-00000002.jsonl', first);
  if (!made.ok) throw new Error(made.problem.words);
  const rested: [string, number][] = [];
  const driver = driveSession({
    writer: made.value,
    session: openSession(first),
    now: () => when(1),
    vehicle: null,
    onRest: ({ status, events }) => rested.push([status, events.length]),
  });
  for (const command of CONCLUDED) expect(driver.perform(command)).toMatchObject({ ok: true });
  const ended = driver.session().events.length;
  expect(rested).toEqual([['concluded', ended]]);
  for (const text of ['one', 'two', 'three']) driver.perform({ type: 'add-note', text });
  expect(rested).toHaveLength(1);
  driver.close();
  expect(rested).toEqual([
    ['concluded', ended],
    ['concluded', ended + 3],
  ]);
});

it('a step that a test of the session answers is passed over as soon as it is asked, and saved so', () => {
  const ready = { ...TREE.steps['prepare'], family: 'interview' } as Step;
  const procedure: Procedure = { ...TREE, steps: { ...TREE.steps, prepare: ready } };
  const first = opened(procedure, { circuit: shipped('hall-module-fed') });
  const made = createSession(nodeDisk, folder, '20310506T070809Z-lab-00000003.jsonl', first);
  if (!made.ok) throw new Error(made.problem.words);
  const parts = { writer: made.value, session: openSession(first), now: () => when(1) };
  const driver = driveSession({ ...parts, vehicle: null });
  driver.perform({
    type: 'record-test',
    test: testOf(procedure.steps['feed']!)!,
    ...{ typed: '4.5', shown: { kind: 'number', value: 4.5, unit: 'V' }, expected: null },
    made: 'before the job',
  });
  driver.perform(DONE);
  expect(presentStep(driver.session())?.id).toBe('pattern');
  driver.perform({ type: 'go-back' });
  expect(presentStep(driver.session())?.id).toBe('feed');
  driver.close();
  const read = readSessionFile(nodeDisk, driver.path(), [folder]);
  expect(read).toMatchObject({ ok: true, session: driver.session() });
});
