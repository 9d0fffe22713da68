/** What stands on the normal screen when a session is over: the conclusion, the file, the way on. */
import { recordOf } from '../../records/session-record.ts';
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import type { Arguments, Io } from '../command.ts';

/** Prints it, as JSON with `--json`. */
export function finish(opened: OpenedSession, args: Arguments, io: Io): void {
  const session = opened.driver.session();
  const path = opened.driver.path();
  const { from } = session.opened;
  if (args.values['json'] === true) {
    io.out(`${JSON.stringify(recordOf(session, opened.driver.head()), null, 2)}\n`);
    return;
  }
  const { concluded } = session;
  const ending = concluded
    ? [
        `Conclusion: ${safeText(opened.bind(concluded.title))}`,
        `Repair: ${safeText(opened.bind(concluded.repair))}`,
      ]
    : ['No conclusion yet.'];
  if (from !== undefined)
    ending.unshift(`Began in the middle of the procedure, at the step "${safeText(from)}".`);
  if (opened.preview) {
    io.out(`${[...ending, 'A preview: nothing was saved.'].join('\n')}\n`);
    return;
  }
  const next =
    session.status === 'paused'
      ? 'Go on with: ohmward resume'
      : 'Read it with: ohmward records show';
  io.out(`${[...ending, `Saved: ${path}`, `${next} ${path}`].join('\n')}\n`);
}
