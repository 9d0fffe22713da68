/** The pages that are answered with a line of text: what each asks, and what an answer leads to. No React. */
import { readDrive } from '../../session/read-drive.ts';
import { readWatched } from '../../session/read-watched.ts';
import { readWork } from '../../session/read-work.ts';
import { watchedAsked } from '../../session/watched-asked.ts';
import { afterClip } from './any-test-pages.ts';
import { fromOwnWords } from './conclusion-words.ts';
import {
  afterFrom,
  afterValue,
  FROM_QUESTION,
  fromCheck,
  valueCheck,
  valueQuestion,
} from './known-pages.ts';
import { type Here, type Page, pageNamed, replace, send, stay, type Turn } from './pages-state.ts';
import { cannotQuestion, outCommand, reachOfReason } from './reach-pages.ts';
import { retestStep } from './session-actions.ts';
import { afterDrops, dropsCheck, dropsQuestion } from './short-pages.ts';
import {
  CANNOT_RETEST,
  CLIP,
  DRIVE,
  NOTE,
  OWN_WORDS,
  type Question,
  watchedQuestion,
  workQuestion,
} from './text-questions.ts';

const NAMES = [
  'short-drops',
  'known-value',
  'known-from',
  'note',
  'cannot',
  'own-words',
  'watched',
  'drive',
  'work',
  'clip',
] as const;

/** Names of the pages that are answered with a line of text. */
export type QuestionName = (typeof NAMES)[number];

interface QuestionPage<N extends QuestionName> {
  readonly asks: (here: Here, page: Page<N>) => Question;
  readonly answered: (here: Here, page: Page<N>, text: string) => Turn;
}

const PAGES: { readonly [N in QuestionName]: QuestionPage<N> } = {
  'short-drops': {
    asks: (here, page) => ({
      ...dropsQuestion(here, page),
      check: (typed) => dropsCheck(here, page, typed),
    }),
    answered: ({ state }, page, text) => afterDrops(state, page, text),
  },
  'known-value': {
    asks: (here, page) => ({
      ...valueQuestion(here, page),
      check: (typed) => valueCheck(here, page, typed),
    }),
    answered: ({ state }, page, text) => afterValue(state, page, text),
  },
  'known-from': {
    asks: () => ({ ...FROM_QUESTION, check: fromCheck }),
    answered: ({ state }, page, text) => afterFrom(state, page, text),
  },
  note: {
    asks: () => NOTE,
    answered: ({ state }, _, text) => send(state, { type: 'add-note', text }),
  },
  cannot: {
    asks: ({ state }) =>
      pageNamed(state, 'retest') ? CANNOT_RETEST : cannotQuestion(state.session),
    answered: afterReason,
  },
  'own-words': {
    asks: () => OWN_WORDS,
    answered: ({ state }, _, text) => replace(state, { name: 'own', proposed: fromOwnWords(text) }),
  },
  watched: {
    asks: (here) => watchedQuestion(askedToWatch(here)),
    answered: afterWatched,
  },
  drive: {
    asks: () => DRIVE,
    answered: ({ state }, _, text) => {
      const read = readDrive(text);
      return 'type' in read ? send(state, read) : stay(state);
    },
  },
  work: {
    asks: ({ opened }) => {
      const { sentences, prices } = opened.call();
      return workQuestion([...sentences, prices.join(' ')].filter(Boolean), opened.estimate);
    },
    answered: ({ state }, _, text) => {
      const read = readWork(text);
      return 'type' in read ? send(state, read) : stay(state);
    },
  },
  clip: {
    asks: () => CLIP,
    answered: ({ state }, _, text) => afterClip(state, text),
  },
};

/** The page as a question; null for one that is answered in another way. */
export function questionPage(page: Page | null): Page<QuestionName> | null {
  return page && isQuestion(page) ? page : null;
}

/** What a page asks. */
export function questionOf<N extends QuestionName>(here: Here, page: Page<N>): Question {
  return PAGES[page.name].asks(here, page);
}

/** What an answer that has passed the page's check leads to. */
export function afterAnswer<N extends QuestionName>(here: Here, page: Page<N>, text: string): Turn {
  return PAGES[page.name].answered(here, page, text);
}

function isQuestion(page: Page): page is Page<QuestionName> {
  return NAMES.some((name) => name === page.name);
}

function afterReason(here: Here, _: Page<'cannot'>, reason: string): Turn {
  const { state } = here;
  const step = retestStep(here);
  if (step) return send(state, { type: 'cannot-retest', step: step.id, reason });
  const out = reachOfReason(state, reason);
  if (out !== null) return send(state, outCommand(state.session, out));
  return send(state, { type: 'cannot-do', reason });
}

function askedToWatch(here: Here) {
  return watchedAsked(here.opened, here.state.session, retestStep(here) ?? undefined);
}

function afterWatched(here: Here, _: Page<'watched'>, text: string): Turn {
  const { state } = here;
  const step = retestStep(here);
  const asked = askedToWatch(here);
  const read = asked && readWatched(text, asked);
  if (!read || !('type' in read)) return stay(state);
  return send(state, step ? { ...read, step: step.id } : read);
}
