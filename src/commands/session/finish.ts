/** What is done when a session is over for now: conclusion, file and way on are printed, and the person's program runs. */
import { recordJson } from '../../records/record-json.ts';
import { provenWords } from '../../records/report-words.ts';
import { conclusionWords } from '../../session/conclusion-words.ts';
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { type Arguments, EXIT, type Io } from '../command.ts';
import { afterTheSession } from './after-the-session.ts';
import type { Desk } from './open-desk.ts';
import { recordNow } from './record-now.ts';

/**
 * Prints it, as JSON with `--json`, then runs what the settings name. The file must be closed. The exit code: `code`, or
 * that of something wrong where not everything is on the disk.
 */
export async function finish(
  opened: OpenedSession,
  desk: Pick<Desk, 'settings'>,
  args: Arguments,
  io: Io,
  code: number,
): Promise<number> {
  print(opened, args, io);
  if (!opened.preview) await afterTheSession(opened, desk, io);
  return tellUnsaved(opened, io) ? EXIT.wrongInput : code;
}

/** Says what of a session is not on the disk and why; false when all is. */
export function tellUnsaved(
  { driver }: Pick<OpenedSession, 'driver'>,
  io: Pick<Io, 'err'>,
): boolean {
  const problem = driver.unsaved();
  if (problem) io.err(`ohmward: ${unsavedWords(problem)}\n`);
  return problem !== null;
}

/** The last that is said of it; several lines. */
export function unsavedWords({ words, fix }: { readonly words: string; readonly fix: string }) {
  return safeText(`not everything is saved. ${words}\n  ${fix}`, { lines: true });
}

function print(opened: OpenedSession, args: Arguments, io: Io): void {
  const { driver } = opened;
  const session = driver.session();
  const path = safeText(driver.path());
  const name = safeText(opened.name());
  const { from } = session.opened;
  if (args.values['json'] === true) {
    io.out(recordJson(recordNow(session, driver.head(), opened.isAsFiled())));
    return;
  }
  const concluded = conclusionWords(session);
  const ending = concluded
    ? [
        `Conclusion: ${safeText(concluded.title)}`,
        ...(concluded.repair === '' ? [] : [`Repair: ${safeText(concluded.repair)}`]),
        certaintyOf(opened),
      ]
    : ['No conclusion yet.'];
  if (from !== undefined)
    ending.unshift(`Started in the middle of the procedure, at the step "${safeText(from)}".`);
  if (opened.preview) {
    io.out(`${[...ending, 'Preview: nothing was saved.'].join('\n')}\n`);
    return;
  }
  if (driver.isElsewhere()) {
    io.out(`${elsewhereWords(name)}\n`);
    return;
  }
  const next =
    session.status === 'paused'
      ? 'Continue with: ohmward resume'
      : 'Read it with: ohmward records show';
  const { sentences, prices } = opened.call();
  const told = [...sentences, ...prices].map((one) => `  ${safeText(one)}`);
  const call =
    told.length > 0 && session.work.length === 0 && session.opened.vehicle.kind === 'real'
      ? [
          'What to say on the phone:',
          ...told,
          `Then: ohmward retest ${name} --customer "authorised by R. Example, by telephone"`,
        ]
      : [];
  const handOver = concluded
    ? [
        ...call,
        `For the customer: ohmward records export ${name} --as pdf --for customer -o report.pdf`,
      ]
    : [];
  const lastWord =
    session.closed && session.drives.length === 0
      ? [`After the test drive: ohmward retest ${name} --drive "away, 80 km"`]
      : [];
  const where = driver.unsaved()
    ? []
    : [`Saved: ${path}`, `${next} ${name}`, ...lastWord, ...handOver];
  io.out(`${[...ending, ...where].join('\n')}\n`);
}

/** Whether it is proven, in the words of the record. */
function certaintyOf({ driver, isAsFiled }: OpenedSession): string {
  const words = provenWords(recordNow(driver.session(), driver.head(), isAsFiled()));
  return `Certainty: ${words.replace(/^not proven/, 'NOT PROVEN')}`;
}

/** Last words for a session that another window went on with. */
export function elsewhereWords(name: string): string {
  return `This session went on in another window. Go on there;\nonce that is closed, with: ohmward resume ${name}`;
}
