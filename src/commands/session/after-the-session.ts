/** The person's own program, started once when a session is over for now; only its failure is told. */
import { runAfterSession } from '../../records/after-session.ts';
import { recordJson } from '../../records/record-json.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import type { Io } from '../command.ts';
import type { Desk } from './open-desk.ts';
import { recordNow } from './record-now.ts';

/** Runs it over a session whose file is closed; resolves when it has ended, and never rejects. */
export async function afterTheSession(
  { driver, isAsFiled }: OpenedSession,
  desk: Pick<Desk, 'settings'>,
  io: Io,
  limitMs?: number,
): Promise<void> {
  const command = desk.settings().afterSession;
  if (command.length === 0) return;
  const { done, words } = await runAfterSession({
    command,
    path: driver.path(),
    json: recordJson(recordNow(driver.session(), driver.head(), isAsFiled())),
    env: io.env,
    cwd: io.cwd,
    ...(limitMs === undefined ? {} : { limitMs }),
  });
  if (!done) io.err(`ohmward: after the session: ${words}\n`);
}
