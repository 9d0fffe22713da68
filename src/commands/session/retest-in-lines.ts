/** The tests after the repair as a dialogue of lines, from the first question to what is printed at the end. */
import type { SessionDriver } from '../../session/driver.ts';
import { retestLines } from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { type Arguments, EXIT, type Io } from '../command.ts';
import { finish } from './finish.ts';
import type { Desk } from './open-desk.ts';

/** Asks for the tests that are still to be made, and closes the record or leaves it paused; the exit code. */
export async function retestInLines(
  opened: OpenedSession,
  desk: Desk,
  args: Arguments,
  io: Io,
): Promise<number> {
  const { driver } = opened;
  const { lineDialogue } = await import('./line-dialogue.ts');
  const { plainRetest } = await import('../../ui/plain/plain-retest.ts');
  const dialogue = lineDialogue(io);
  const closed = await plainRetest(opened, dialogue);
  dialogue.close();
  if (!closed) driver.perform({ type: 'pause' });
  driver.close();
  return finish(opened, desk, args, io, codeOfRetest(driver));
}

/** Whether the complaint is proven gone; a record that was left open is unfinished work. */
export function codeOfRetest(driver: SessionDriver): number {
  const { closed } = driver.session();
  if (!closed) return EXIT.interrupted;
  return closed.verdict === 'cured' ? EXIT.done : EXIT.wrongInput;
}

/** Whether a session that was just resumed had been left among the tests after its repair. */
export function isLeftInRetest(session: Session): boolean {
  if (session.status !== 'concluded' || session.events.at(-2)?.type !== 'session-paused')
    return false;
  return retestLines(session).some(({ after }) => after === null);
}
