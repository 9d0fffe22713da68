/** What was set aside, in words: single tests, and connectors and vehicle states that cannot be had. */
import { type AsideCommand, connectorWords, stateNeedWords } from '../../session/out-of-reach.ts';
import { type Session, standingAnswers, type Unreached } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { testWords } from './answer-words.ts';

/** Everything that is set aside: the tests, then each connector and state once. */
export function asideWords(opened: OpenedSession, session: Session): string[] {
  return [
    ...session.aside.map((test) => testWords(opened, session, test)),
    ...session.unreached.map((one) => allThatNeeds(session, one)),
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
  const words = allThatNeeds(session, command);
  if (command.aside) return `Set aside: ${words}.`;
  const isRound = standingAnswers(session).some(
    (answer) => answer.type === 'step-impossible' && answer.by !== undefined,
  );
  return `${BACK}: ${words}.${isRound ? ' Steps already skipped stay skipped until you take them back.' : ''}`;
}

const BACK = 'Can be done after all';

function allThatNeeds({ opened }: Session, what: Unreached): string {
  const words =
    'part' in what ? connectorWords(opened.circuit, what.part) : stateNeedWords(what.state);
  return `all that needs ${words}`;
}
