/** How each view of a session is drawn: a table without rules. What a key does there is said in one word and decided by the reducer. */
import type { ReactNode } from 'react';
import { ASKING_VIEWS } from './asking-views.tsx';
import { CLOSE, type Drawing, type ViewTable } from './drawing.tsx';
import { DRILL_VIEWS } from './drill-views.tsx';
import { OVER_VIEWS } from './over-views.tsx';
import type { Page } from './pages-state.ts';
import { type QuestionName, questionOf } from './question-pages.ts';
import type { View, ViewParts } from './session-view.ts';
import { TEST_VIEWS } from './test-views.tsx';
import { TextQuestion } from './text-question.tsx';

const QUESTION_VIEWS: ViewTable<QuestionName> = {
  'short-drops': drawQuestion,
  'known-value': drawQuestion,
  'known-from': drawQuestion,
  note: drawQuestion,
  cannot: drawQuestion,
  'own-words': drawQuestion,
  watched: drawQuestion,
  drive: drawQuestion,
  work: drawQuestion,
  clip: drawQuestion,
};

const VIEWS: ViewTable<keyof ViewParts> = {
  ...ASKING_VIEWS,
  ...OVER_VIEWS,
  ...QUESTION_VIEWS,
  ...TEST_VIEWS,
  ...DRILL_VIEWS,
};

/** One view, drawn by the table of its kind. */
export function drawView<N extends keyof ViewParts>(view: View<N>, at: Drawing): ReactNode {
  return VIEWS[view.name](view, at);
}

function drawQuestion<N extends QuestionName>(page: Page<N>, { here, send }: Drawing): ReactNode {
  const question = questionOf(here, page);
  return (
    <TextQuestion
      key={question.question}
      {...question}
      message={here.state.message}
      onAnswer={(text) => send({ type: 'text', text })}
      onClose={() => send(CLOSE)}
    />
  );
}
