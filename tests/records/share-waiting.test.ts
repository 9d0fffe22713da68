/** What `records share` says of the sessions of a folder while the database is away. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sealEvent } from '../../src/log/event-line.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { sessionPaths, shareSessions } from '../../src/records/shared/share-folder.ts';
import { scratchFolder } from '../log/built-child.ts';
import { opened } from '../session/sample-tree.ts';

/** Port 1 is nobody's: a connection is refused at once. From memory. */
const URL = 'postgresql://cart@127.0.0.1:1/shop?connect_timeout=1';
const scratch = scratchFolder();
let folder = '';
beforeAll(() => {
  folder = join(scratch.path, 'sessions');
  mkdirSync(folder);
});
afterAll(scratch.remove);

const named = (digits: string) => join(folder, `20310506T070809Z-hall-no-signal-${digits}.jsonl`);
const share = () => {
  const found = sessionPaths(folder);
  if ('words' in found) throw new Error(found.words);
  const patience = { patienceMs: 0, pausesMs: [1, 2] as [number, number] };
  return shareSessions({ disk: nodeDisk, url: URL, paths: found.paths, cart: 'one', patience });
};

it.skipIf(process.platform === 'win32')('a pipe and a damaged file do not wait', async () => {
  execFileSync('mkfifo', [named('0badcafe')]);
  const alone = await share();
  expect(alone.waiting).toBeNull();
  expect(alone.left.map(({ path }) => path)).toEqual([named('0badcafe')]);

  const { line } = sealEvent(opened() as never, 1, null);
  writeFileSync(named('00000001'), `${line}\n`);
  writeFileSync(named('00000002'), `${line}\n${line}\n`);
  const { inStep, sent, left, waiting } = await share();
  expect({ inStep, sent }).toEqual({ inStep: 0, sent: 0 });
  expect(waiting?.sessions).toBe(1);
  expect(left.map(({ path }) => path).sort()).toEqual([named('00000002'), named('0badcafe')]);
});
