/**
 * Runs as a process of its own: writes a session with the real writer until it is killed or the disk refuses.
 * Prints `p <path>` and, after each acknowledgement, `a <n>`; after a refusal `r <problem as JSON>` and exits with 3.
 */
import { writeSync } from 'node:fs';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { resumeSession } from '../../src/log/open-session.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { NAME, sampleEvent } from './events.ts';

const [folder, path, fill = '300'] = process.argv.slice(2) as [string, string, string?];
const say = (line: string) => writeSync(1, `${line}\n`);
const refuse = (problem: unknown): never => {
  say(`r ${JSON.stringify(problem)}`);
  process.exit(3);
};

const begun =
  path === '-'
    ? createSession(nodeDisk, folder, NAME, sampleEvent(0))
    : resumeSession(nodeDisk, path, { at: '2031-05-06T09:00:00Z', elapsed: 0 });
if (!begun.ok) refuse(begun.problem);
else {
  const writer = 'writer' in begun.value ? begun.value.writer : begun.value;
  say(`p ${writer.path}`);
  if (path === '-') say('a 0');
  for (let n = writer.last.seq; ; n += 1) {
    const saved = writer.append(sampleEvent(n, Number(fill)));
    if (!saved.ok) refuse(saved.problem);
    else say(`a ${n}`);
  }
}
