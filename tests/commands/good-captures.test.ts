/** Known-good captures: kept of a cured vehicle, offered to the next one like it, and nothing kept that is not shown good. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { isAllKept, keepGood, keptFor } from '../../src/commands/session/good-captures.ts';
import { sha256 } from '../../src/log/hash.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import type { LookStep } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import type { SessionOpened } from '../../src/session/events.ts';
import type { Session } from '../../src/session/session.ts';
import { shipped } from '../circuit/shipped.ts';
import { sessionAfter, TREE } from '../session/sample-tree.ts';
import { ACK, again, CONCLUDE, LOOK, sees } from '../session/shorthand.ts';

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'ohmward-good-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const STEP = TREE.steps['pattern'] as LookStep;
const ASK = { kind: 'step', step: STEP } as const;
const places = () => ({ disk: nodeDisk, folder: join(home, 'good'), read: [home] });
const ready: Command = { type: 'acknowledge-cautions', step: 'pattern' };

function of(words: string, vehicle: SessionOpened['vehicle'] = { kind: 'real' }) {
  const none = emptyJob('stalls');
  const job = { ...none, vehicle: { ...none.vehicle, words } };
  return { job, vehicle, circuit: shipped('hall-module-fed') };
}

/** A session that ended in `verdict`, its test after the repair answered by the file `name` with these bytes. */
function after(
  text: string,
  words = 'blue van',
  verdict: 'cured' | 'not-cured' = 'cured',
): Session {
  const measures = { kind: 'switched', unit: 'V', samples: 9, seconds: 1, low: 0, high: 5 };
  const capture = {
    name: 'crank.csv',
    sha256: sha256(Buffer.from(text)),
    from: 'file',
    measures: { ...measures, hertz: null, duty: null, rpm: null },
    findings: [],
    channels: [],
  };
  const look = verdict === 'cured' ? 'full' : 'flat-high';
  const taken = again('pattern', { look, capture });
  const close: Command = { type: 'close', verdict };
  return sessionAfter([...LOOK, sees('none'), CONCLUDE, ready, taken, close], TREE, of(words));
}

const save = (text: string) => writeFileSync(join(home, 'crank.csv'), text);

test('what passed after the repair is kept once, as it was measured, and offered to a like vehicle', async () => {
  save('1\n2\n');
  const done = await keepGood(places(), after('1\n2\n'));
  expect(done).toMatchObject({ vehicle: 'blue van', left: [] });
  const [path] = 'kept' in done ? done.kept : [];
  expect(readFileSync(path!, 'utf8')).toBe('1\n2\n');
  expect(await keepGood(places(), after('1\n2\n'))).toMatchObject({ kept: [path] });
  const offered = (words: string, vehicle?: SessionOpened['vehicle']) =>
    keptFor(places(), sessionAfter([], TREE, of(words, vehicle)), ASK);
  expect(offered('Blue van')).toEqual({ path, vehicle: 'blue-van' });
  expect(offered('blue van, 2.0')).toEqual({ path, vehicle: 'blue-van' });
  expect(offered('red van')).toBeNull();
  expect(offered('van')).toBeNull();
  expect(offered('')).toBeNull();
  expect(offered('blue van', { kind: 'bench', fault: 'healthy', seed: 1 })).toBeNull();
  const elsewhere = { ...STEP, setup: { ...STEP.setup, state: 'running' as const } };
  const session = sessionAfter([], TREE, of('blue van'));
  expect(keptFor(places(), session, { kind: 'step', step: elsewhere })).toBeNull();
});

test('what is kept is not offered to be kept again, and another capture is', async () => {
  save('1\n2\n');
  expect(isAllKept(places(), after('1\n2\n'))).toBe(false);
  await keepGood(places(), after('1\n2\n'));
  expect(isAllKept(places(), after('1\n2\n'))).toBe(true);
  expect(isAllKept(places(), after('3\n4\n'))).toBe(false);
  expect(isAllKept(places(), after('1\n2\n', 'red van'))).toBe(false);
});

test('the newest of a picture is the one that is offered', async () => {
  for (const text of ['1\n', '2\n']) {
    save(text);
    await keepGood(places(), after(text));
  }
  const found = keptFor(places(), sessionAfter([], TREE, of('blue van')), ASK);
  expect(readFileSync(found!.path, 'utf8')).toBe('2\n');
});

test('a file that is gone or was changed is not kept, and that is said', async () => {
  save('other\n');
  expect(await keepGood(places(), after('1\n'))).toMatchObject({
    kept: [],
    left: [expect.stringContaining('crank.csv is no longer where it was read from')],
  });
});

test.each<[string, () => Session]>([
  ['is not proven to be fixed', () => after('1\n', 'blue van', 'not-cured')],
  ['does not say which vehicle', () => after('1\n', '')],
  [
    'is not proven to be fixed',
    () => sessionAfter([...LOOK, sees('none'), CONCLUDE, ACK].slice(0, -1), TREE, of('blue van')),
  ],
  [
    'is not a known-good one',
    () => sessionAfter([], TREE, of('x y', { kind: 'bench', fault: 'healthy', seed: 1 })),
  ],
])('nothing is kept where it %s', async (why, session) => {
  expect(await keepGood(places(), session())).toMatchObject({
    problem: expect.stringContaining(why),
  });
});
