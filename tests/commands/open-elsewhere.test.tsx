/** Two windows on one session: the second answer is refused, and the way on does not split the job. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { finish } from '../../src/commands/session/finish.ts';
import { openDesk, startable } from '../../src/commands/session/open-desk.ts';
import { beginSession, continueSession } from '../../src/commands/session/open-session.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { isProblem } from '../../src/source/problem.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { SessionScreen } from '../../src/ui/screens/session-screen.tsx';
import { openTestScreen } from '../ui/in-process.ts';
import { ENTER } from '../ui/screens/keys.ts';

const folder = mkdtempSync(join(tmpdir(), 'ohmward-elsewhere-'));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The session in the first window, after the second has gone on with it. */
async function secondWindowWentOn() {
  const io = { out: () => {}, err: () => {}, env: { HOME: folder }, cwd: process.cwd() };
  const desk = await openDesk(io, 'ohmward test', { sessions: join(folder, 'sessions') });
  if (isProblem(desk)) throw new Error(desk.problem);
  const procedure = startable(desk).find(({ draft }) => draft.procedure === 'hall-no-signal')!;
  const opened = beginSession(desk, {
    subject: { kind: 'procedure', procedure },
    job: emptyJob('no start'),
    bench: null,
  });
  if (isProblem(opened)) throw new Error(opened.problem);
  const other = continueSession(desk, opened.driver.path());
  if (isProblem(other)) throw new Error(other.problem);
  other.driver.perform({ type: 'mark-done' });
  other.driver.close();
  return { opened: { ...opened, advisor: null }, desk, io };
}

it('says so on the screen and in lines, and offers to leave', async () => {
  const { opened, desk, io } = await secondWindowWentOn();
  let now = 0;
  let home = 0;
  const onHome = () => {
    home += 1;
  };
  const screen = await openTestScreen(
    <SessionScreen opened={opened} clock={() => now} onHome={onHome} />,
  );
  const press = async (key: string) => {
    now += 1000;
    await screen.send(key);
  };
  await press('y');
  const frame = await screen.text();
  expect(frame).toContain('Open in another window');
  expect(frame).toContain('was continued there');
  expect(frame).not.toContain('Go on in another folder');
  expect(frame).not.toContain('Try again');
  await press(ENTER);
  expect(home).toBe(1);
  await screen.unmount();

  const said: string[] = [];
  const lines = ['yes', 'done'];
  const ask = async () => lines.shift() ?? null;
  await plainSession(opened, { say: (line) => void said.push(line), ask });
  expect(lines).toEqual(['done']);
  expect(said.join('\n')).toContain('also open in another window');
  const out: string[] = [];
  const toPerson = { ...io, out: (text: string) => void out.push(text) };
  await finish(opened, desk, { positionals: [], values: {} }, toPerson, 0);
  expect(out.join('')).toContain('This session went on in another window');
  expect(out.join('')).not.toContain('Saved:');
});
