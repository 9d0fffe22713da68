/** What speaks for a conclusion that is not accepted yet, and what is ruled out, in a line each. No React. */
import { stepOf } from '../../procedure/procedure.ts';
import { probeWhere, setupWords, stepWhere } from '../../procedure/test-words.ts';
import { formatTyped } from '../../quantity/format-quantity.ts';
import {
  type Answer,
  type EvidenceLine,
  isAnswer,
  type RuledOutLine,
} from '../../session/events.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { answerWords, foundWords, stepTitle, testWords } from './answer-words.ts';

/** A reading in words. */
interface Read {
  readonly test: string;
  readonly where: string;
  readonly found: string;
}

/** One reading that speaks for the conclusion; only an old file says of each what it points to. */
export function evidenceWords(opened: OpenedSession, session: Session, line: EvidenceLine): string {
  const aside = line.counted ? '' : ' (not a separate piece of evidence)';
  const said = 'said' in line ? line.said : readAt(opened, session, line.reading);
  const to = 'said' in line ? ` - points to: ${unstopped(line.said.pointsTo)}` : '';
  return `${said.test} - ${said.where} - ${said.found}${to}${aside}`;
}

/** A repair that readings rule out. */
export function ruledOutWords(opened: OpenedSession, session: Session, line: RuledOutLine): string {
  if ('said' in line) return `${unstopped(line.said.words)} - by: ${line.said.by}`;
  const { faults = [] } = session.opened.circuit ?? {};
  const known = faults.find(({ repair }) => repair === line.repair)?.repairWords;
  const words = known ?? line.repair.replace(/[.-]/g, ' ');
  const by = line.by.map((reading) => {
    const { test, found } = readAt(opened, session, reading);
    return `${test}: ${found}`;
  });
  return `${unstopped(words)} - by: ${by.join('; ')}`;
}

/** The reading of an event that comes from one: what was asked, where, and what was found. */
export function readAt(opened: OpenedSession, session: Session, reading: number): Read {
  const event = session.events[reading - 1];
  const { job, circuit, procedure } = session.opened;
  if (event?.type === 'test-recorded') {
    const where = probeWhere(event.test.probe, job, circuit);
    return { test: testWords(opened, session, event.test), where, found: foundWords(event) };
  }
  if (!event || !isAnswer(event) || !procedure)
    throw new Error(`evidence: event ${reading} is no reading`);
  const step = stepOf(procedure, event.step);
  const where = stepWhere(step, job, circuit);
  // What wakes a fault that comes and goes has no leads: how the vehicle stood says where.
  const standing = 'setup' in step ? setupWords(step.setup, job, circuit) : '';
  return {
    test: stepTitle(opened, session, event.step),
    where: where === '' ? standing : where,
    found: opened.bind(shownWords(event, session)),
  };
}

/** A number stands for itself here: what its outcome says is where the tree went on from it. */
function shownWords(answer: Answer, session: Session): string {
  if (answer.type !== 'reading-recorded') return answerWords(answer, session);
  const { value, unit, typed } = answer;
  return formatTyped({ value: value ?? Number.POSITIVE_INFINITY, unit }, typed);
}

/** Words without the full stop of a sentence, for a list. */
export function unstopped(words: string): string {
  return words.replace(/\.$/, '');
}
