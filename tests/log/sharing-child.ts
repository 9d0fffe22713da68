/**
 * Runs as a process of its own beside others like it: goes on with one session file until it has had so many events
 * acknowledged, opening it anew after each refusal. Prints `a <n>` for each of them and `r <code>` for each refusal.
 */
import { readSync, writeSync } from 'node:fs';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { resumeSession } from '../../src/log/open-session.ts';
import { sampleEvent } from './events.ts';

const [path, from, count] = process.argv.slice(2) as [string, string, string];
const say = (line: string) => writeSync(1, `${line}\n`);
/** More refusals in a row than this, and nothing will come of it. */
const PATIENCE = 2_000;

let done = 0;
let refusals = 0;
say('ready');
readSync(0, Buffer.alloc(1)); // until all of them are
while (done < Number(count) && refusals < PATIENCE) {
  const resumed = resumeSession(nodeDisk, path, { at: '2031-05-06T09:00:00Z', elapsed: 0 });
  if (!resumed.ok) {
    say(`r ${resumed.problem.code}`);
    refusals += 1;
    if (resumed.problem.code === 'damaged') break;
    continue;
  }
  const { writer } = resumed.value;
  for (let isRefused = false; !isRefused && done < Number(count); ) {
    const saved = writer.append(sampleEvent(Number(from) + done, 60));
    isRefused = !saved.ok;
    if (saved.ok) {
      say(`a ${Number(from) + done}`);
      done += 1;
      refusals = 0;
    } else {
      say(`r ${saved.problem.code}`);
      refusals += 1;
    }
  }
  writer.close();
}
