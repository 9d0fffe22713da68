/** After the repair: the tests that must pass, before beside after, and the end of the record. */
import { pendingCautions, stepCautionsInShort } from '../../session/pending-cautions.ts';
import {
  againCommand,
  closeCommand,
  isRepeatable,
  LAST_WORD,
  type RetestLine,
  retestLines,
  retestVerdict,
  VERDICT_WORDS,
} from '../../session/retest.ts';
import { isProblem } from '../../source/problem.ts';
import type { OpenedSession } from '../app-services.ts';
import { answerWords, expectedAgain, retestWords } from '../screens/answer-words.ts';
import type { Outcome, Result } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { performCall, refusedCall } from './refused.ts';
import { ANSWER_KEYS, answerCommand, countSent, sendOneOf } from './sent-answer.ts';
import { cautionViews, readViews, stepView } from './state-view.ts';

export const RETEST_METHODS: Methods<
  'retests' | 'retest' | 'drive' | 'call' | 'work' | 'close' | 'keep-good'
> = {
  retests: { where: 'session', run: retests },
  retest: { where: 'session', run: retest },
  drive: { where: 'session', run: drive },
  call: { where: 'session', run: (opened) => ({ ...opened.call() }) },
  work: { where: 'session', run: work },
  close: { where: 'session', run: close },
  'keep-good': { where: 'session', run: keepGood },
};

async function keepGood({ goodCaptures }: OpenedSession): Promise<Outcome> {
  const done = await goodCaptures.keep();
  if (isProblem(done)) return refusedCall('nothing-to-keep', done.problem, done.fix);
  return { ...done };
}

function retests(opened: OpenedSession): Outcome {
  const session = opened.driver.session();
  if (!session.concluded)
    return refusedCall('not-concluded', 'there is no conclusion to test yet', 'conclude first');
  const verdict = retestVerdict(session);
  return {
    retests: retestLines(session).map((line) => lineView(opened, line)),
    verdict,
    words: verdict === null ? '' : VERDICT_WORDS[verdict],
    lastWord: verdict === 'cured' || verdict === 'not-shown' ? LAST_WORD : '',
  };
}

function lineView(opened: OpenedSession, { step, before, after }: RetestLine): Result {
  const { driver, repaired, bind } = opened;
  const session = driver.session();
  return {
    step: { ...stepView(opened, step), shows: repaired?.answers(step)?.words ?? null },
    good: expectedAgain(step, session),
    before: before && bind(answerWords(before, session)),
    after: after && bind(retestWords(step, after)),
    passed: after?.type === 'retest-recorded' ? after.passed : null,
    cautions: cautionViews(opened, pendingCautions(session, step)),
    readEarlier: readViews(opened, stepCautionsInShort(session, step)),
  };
}

function retest(opened: OpenedSession, sent: Params<'retest'>): Outcome {
  const { driver, repaired } = opened;
  const session = driver.session();
  const { step: named, cannot } = sent;
  const { procedure } = session.opened;
  const keys = [...ANSWER_KEYS, 'cannot'] as const;
  if (countSent(sent, keys) !== 1) return sendOneOf(keys);
  const step = procedure && Object.hasOwn(procedure.steps, named) ? procedure.steps[named] : null;
  if (cannot !== undefined)
    return performCall(opened, { type: 'cannot-retest', step: named, reason: cannot });
  if (!procedure || !step)
    return refusedCall('no-such-step', `the procedure has no step "${named}"`, 'see "retests"');
  if (!isRepeatable(procedure, step))
    return refusedCall(
      'wrong-kind',
      `step "${named}" is not a test that can be repeated`,
      'see "retests"',
    );
  const answer = answerCommand(opened, step, sent, repaired?.answers(step) ?? null);
  if ('fault' in answer) return answer;
  const command = againCommand(step, answer);
  if (!command)
    return refusedCall(
      'no-such-outcome',
      'no outcome of this test covers this reading',
      'read again',
    );
  return performCall(opened, command, pendingCautions(session, step));
}

function drive(opened: OpenedSession, { code, words = '' }: Params<'drive'>): Outcome {
  return performCall(opened, { type: 'report-drive', code, words });
}

function work(opened: OpenedSession, { answer, by, words = '' }: Params<'work'>): Outcome {
  return performCall(opened, { type: 'answer-work', answer, by, words });
}

function close(opened: OpenedSession): Outcome {
  return performCall(opened, closeCommand(opened.driver.session()));
}
