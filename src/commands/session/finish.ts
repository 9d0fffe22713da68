/** What is done when a session is over for now: conclusion, file and way on are printed, and the person's program runs. */
import { recordJson } from '../../records/record-json.ts';
import { recordOf } from '../../records/session-record.ts';
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import type { Arguments, Io } from '../command.ts';
import { afterTheSession } from './after-the-session.ts';
import type { Desk } from './open-desk.ts';

/** Prints it, as JSON with `--json`, then runs what the settings name. The file must be closed. */
export async function finish(
  opened: OpenedSession,
  desk: Pick<Desk, 'settings'>,
  args: Arguments,
  io: Io,
): Promise<void> {
  print(opened, args, io);
  await afterTheSession(opened, desk, io);
}

function print({ driver }: OpenedSession, args: Arguments, io: Io): void {
  const session = driver.session();
  const path = safeText(driver.path());
  if (args.values['json'] === true) {
    io.out(recordJson(recordOf(session, driver.head())));
    return;
  }
  const { concluded } = session;
  const ending = concluded
    ? [`Conclusion: ${safeText(concluded.title)}`, `Repair: ${safeText(concluded.repair)}`]
    : ['No conclusion yet.'];
  const next =
    session.status === 'paused'
      ? 'Go on with: ohmward resume'
      : 'Read it with: ohmward records show';
  io.out(`${[...ending, `Saved: ${path}`, `${next} ${path}`].join('\n')}\n`);
}
