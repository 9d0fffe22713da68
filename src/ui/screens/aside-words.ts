/** What was set aside, in words: single tests, and connectors that cannot be reached. */
import { type AsideCommand, connectorWords } from '../../session/out-of-reach.ts';
import { type Session, standingAnswers } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { testWords } from './step-words.ts';

/** Everything that is set aside: the tests, then each connector once. */
export function asideWords(opened: OpenedSession, session: Session): string[] {
  const { circuit } = session.opened;
  return [
    ...session.aside.map((test) => testWords(opened, session, test)),
    ...session.unreached.map(({ part }) => allAt(connectorWords(circuit, part))),
  ];
}

/** What a command of setting aside has done, in a sentence. */
export function setAsideWords(
  opened: OpenedSession,
  session: Session,
  command: AsideCommand,
): string {
  if (command.type === 'set-test-aside') {
    const words = testWords(opened, session, command.test);
    return `${command.aside ? 'Set aside' : BACK}: ${words}.`;
  }
  const words = allAt(connectorWords(session.opened.circuit, command.part));
  if (command.aside) return `Set aside: ${words}.`;
  const isRound = standingAnswers(session).some(
    (answer) => answer.type === 'step-impossible' && answer.by !== undefined,
  );
  return `${BACK}: ${words}.${isRound ? ' Steps already skipped stay skipped until you take them back.' : ''}`;
}

const BACK = 'Can be done after all';

function allAt(connector: string): string {
  return `all that needs ${connector}`;
}
