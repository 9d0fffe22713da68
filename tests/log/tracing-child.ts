/**
 * Runs as a process of its own, watched from outside: a session begun, gone on with and resumed, and a file written
 * whole. Prints `a <n>` after each acknowledgement, `w` after the whole file; after a refusal `r <code>` and ends.
 */
import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { resumeSession } from '../../src/log/open-session.ts';
import { createSession, type SessionWriter } from '../../src/log/session-writer.ts';
import type { Tried } from '../../src/log/write-problem.ts';
import { writeWholeFile } from '../../src/log/write-whole.ts';
import { NAME, sampleEvent } from './events.ts';

const [folder = ''] = process.argv.slice(2);
const say = (line: string) => writeSync(1, `${line}\n`);

function must<T>(result: Tried<T>): T {
  if (result.ok) return result.value;
  say(`r ${result.problem.code}`);
  process.exit(3);
}

function append(writer: SessionWriter, n: number): void {
  must(writer.append(sampleEvent(n)));
  say(`a ${n}`);
}

const begun = must(createSession(nodeDisk, folder, NAME, sampleEvent(0)));
say('a 0');
append(begun, 1);
append(begun, 2);
begun.close();
const now = { at: '2031-05-06T09:00:00Z', elapsed: 0 };
const { writer } = must(resumeSession(nodeDisk, join(folder, NAME), now));
append(writer, 3);
writer.close();
must(writeWholeFile(nodeDisk, join(folder, 'page.md'), 'text'));
say('w');
