import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { afterTheSession } from '../../src/commands/session/after-the-session.ts';
import { openDesk } from '../../src/commands/session/open-desk.ts';
import { beginSession } from '../../src/commands/session/open-session.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { notJudgedAgain } from '../../src/records/judged-by.ts';
import { readRecord } from '../../src/records/read-record.ts';
import { isProblem } from '../../src/source/problem.ts';
import { eventsOf, makePlace, type Place, runBuilt, runProgram, sessionFiles } from './program.ts';

/** Keeps one line a call: the arguments and what came on the standard input. */
const KEEP = `
import { appendFileSync } from 'node:fs';
let input = '';
for await (const chunk of process.stdin) input += chunk;
appendFileSync('calls.txt', JSON.stringify({ args: process.argv.slice(2), input }) + '\\n');
`;
// The circuit on which a session takes least.
const BENCH = ['run', 'reluctor-no-signal', '--bench', 'wire.plus.open', '--vehicle', '7'];

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

/** Names a small program in the settings. */
function after(source: string): string[] {
  const script = join(place.home, 'after.mjs');
  writeFileSync(script, source);
  const command = [process.execPath, script, '--to', 'the books'];
  const settings = join(place.home, '.config', 'ohmward');
  mkdirSync(settings, { recursive: true });
  writeFileSync(join(settings, 'config.json'), JSON.stringify({ afterSession: command }));
  return command;
}

function calls(): { args: string[]; input: string }[] {
  const path = join(place.home, 'calls.txt');
  if (!existsSync(path)) return [];
  const lines = readFileSync(path, 'utf8').split('\n').slice(0, -1);
  return lines.map((line) => JSON.parse(line));
}

it('runs once a time: concluded, closed by the retest, with the record that is in the file', async () => {
  after(KEEP);
  expect(runBuilt(place, [...BENCH, '--unattended'])).toMatchObject({ code: 0, err: '' });
  const [path] = sessionFiles(place);
  const recordNow = () => {
    const read = readRecord(nodeDisk, path!);
    return read.ok ? read.record : null;
  };
  expect(calls().map(({ args }) => args)).toEqual([['--to', 'the books', path]]);
  const [first] = calls().map(({ input }) => JSON.parse(input));
  expect(first).toEqual(recordNow());
  expect(first.status).toBe('concluded');
  expect(await runProgram(place, ['retest', path!], 'yes\ntake\n'.repeat(8))).toMatchObject({
    code: 0,
    err: '',
  });
  expect(calls()).toHaveLength(2);
  const second = JSON.parse(calls()[1]!.input);
  // The second time its conclusion came out of the file.
  expect(second).toEqual(notJudgedAgain(recordNow()!));
  expect(second.status).toBe('closed');
});

it('runs when a dialogue is paused, and again when it is gone on with and left', async () => {
  after(KEEP);
  expect(await runProgram(place, [...BENCH, '--plain'], 'yes\npause\n')).toMatchObject({
    code: 0,
    err: '',
  });
  expect(calls()).toHaveLength(1);
  expect(await runProgram(place, ['resume'], '')).toMatchObject({ code: 130, err: '' });
  expect(calls().map(({ input }) => JSON.parse(input).status)).toEqual(['paused', 'paused']);
});

it('that fails is told on standard error, and neither session, output nor exit code changes', async () => {
  const without = await runProgram(place, [...BENCH, '--unattended', '--json']);
  after('process.stdin.resume(); console.error("no paper"); process.exitCode = 3;');
  const failed = await runProgram(place, [...BENCH, '--unattended', '--json']);
  expect(failed.code).toBe(0);
  expect(failed.err).toMatch(/^ohmward: after the session: .* ended with exit code 3\n/);
  expect(failed.err).toContain('The session is saved anyway.\nno paper\n');
  const { id: _, ...record } = JSON.parse(failed.out);
  expect(Object.keys(record)).toEqual(
    Object.keys(JSON.parse(without.out)).filter((key) => key !== 'id'),
  );
  const [first, second] = sessionFiles(place);
  for (const path of [first!, second!])
    expect(readSessionLog(readFileSync(path)).verdict).toBe('whole');
  expect(eventsOf(second!).map(({ type }) => type)).toEqual(
    eventsOf(first!).map(({ type }) => type),
  );
});

it('that hangs is stopped by the clock', async () => {
  const command = after('setInterval(() => {}, 1000);');
  let err = '';
  const io = {
    out: () => {},
    err: (text: string) => {
      err += text;
    },
    env: place.env,
    cwd: process.cwd(),
  };
  const desk = await openDesk(io, 'ohmward test', { sessions: place.sessions });
  if (isProblem(desk)) throw new Error(desk.problem);
  const procedure = desk.library.procedures.get('hall-no-signal')!;
  const opened = beginSession(desk, {
    subject: { kind: 'procedure', procedure },
    job: emptyJob('none'),
    bench: null,
  });
  if (isProblem(opened)) throw new Error(opened.problem);
  opened.driver.close();
  const settings = () => ({ ...STANDARD_SETTINGS, afterSession: command });
  await afterTheSession(opened, { settings }, io, 500);
  expect(err).toContain('was stopped after 0.5 s\nThe session is saved anyway.');
  expect(readSessionLog(readFileSync(opened.driver.path())).verdict).toBe('whole');
});
