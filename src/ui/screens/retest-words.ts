/** What the tests after the repair come to, before beside after. No React. */

import { closeCommand, LAST_WORD, type RetestLine, VERDICT_WORDS } from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { sentenceStart } from '../parts/sentence.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { answerWords, retestMark, retestWords } from './answer-words.ts';

/** The verdict, and each test with what it showed. */
export function verdictParagraphs(
  opened: OpenedSession,
  session: Session,
  lines: readonly RetestLine[],
): Paragraph[] {
  const { verdict } = closeCommand(session);
  return [
    { text: VERDICT_TITLES[verdict], bold: true },
    { text: `${sentenceStart(VERDICT_WORDS[verdict])}.` },
    ...(verdict === 'cured' || verdict === 'not-shown' ? [{ text: LAST_WORD }] : []),
    ...(NOT_THE_END.includes(verdict) ? [{ text: KEEP_OPEN }] : []),
    ...lines.flatMap(({ step, before, after }): Paragraph[] => [
      { text: '' },
      { text: `${sentenceStart(retestMark(after))}: ${opened.bind(step.title)}`, bold: true },
      {
        text: `Before: ${before ? answerWords(before, session) : 'not measured'}`,
        hang: 8,
      },
      { text: `After:  ${after ? retestWords(step, after) : 'not tested'}`, hang: 8 },
    ]),
  ];
}

const NOT_THE_END: readonly string[] = ['not-cured', 'changed', 'not-shown'];
const KEEP_OPEN =
  'Not finished? Esc keeps the record open: carry on with the repair, then test again. Once closed it stays closed; anything left to find is a new session.';

const VERDICT_TITLES = {
  cured: 'The failed tests pass now',
  'not-cured': 'Not cured',
  changed: 'Changed',
  'not-shown': 'The repair is not proven',
  'no-retest': 'Nothing was tested',
} as const;
