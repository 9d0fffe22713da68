/** What comes after a command was done or refused: where the session shows itself again, and what is said. No React. */

import { isTask } from '../../procedure/procedure.ts';
import type { Command } from '../../session/command.ts';
import type { Performed } from '../../session/driver.ts';
import { pendingTestCautions } from '../../session/pending-cautions.ts';
import { presentStep, type Session } from '../../session/session.ts';
import { lastVain } from '../../session/vain-words.ts';
import { roundsAt } from '../../session/watched-rounds.ts';
import { watchedInAll } from '../../session/watched-words.ts';
import { refusalSentences } from '../parts/sentence.ts';
import { answeredWords, foundWords, lastFound, retestMark, testWords } from './answer-words.ts';
import { setAsideWords } from './aside-words.ts';
import { setMessage } from './known-pages.ts';
import {
  actOnBench,
  type Here,
  type Page,
  type PagesState,
  pageNamed,
  refusalLine,
  refusedTurn,
  stay,
  type Turn,
  topOf,
  type Wanted,
} from './pages-state.ts';
import { shortMessage } from './short-pages.ts';

/** The state once `wanted` was done, or was not. */
export function afterPerformed({ opened, state }: Here, wanted: Wanted, done: Performed): Turn {
  // What a bench stopped is in the record too, so the session may have moved on all the same.
  const session = opened.driver.session();
  const over = state.over.filter(({ name }) => name !== 'disk');
  const next = { ...state, session, over };
  if (!done.ok) return afterRefusal(next, wanted, done);
  const here = { opened, state: next };
  return wanted.type === 'act' ? afterAct(here) : afterCommand(here, wanted.command);
}

function afterRefusal(
  state: PagesState,
  wanted: Wanted,
  { words, fix, disk }: Extract<Performed, { ok: false }>,
): Turn {
  if (!disk) {
    // A bench says at length what it stopped.
    const isAct = wanted.type === 'act';
    return refusedTurn(state, (isAct ? refusalSentences : refusalLine)({ words, fix }));
  }
  const page: Page = { name: 'disk', wanted, words, fix };
  return stay({ ...state, over: [...state.over, page], message: null });
}

function afterCommand(here: Here, command: Command): Turn {
  const { opened, state } = here;
  switch (command.type) {
    case 'acknowledge-cautions':
      return afterCautions(here);
    case 'record-retest':
    case 'cannot-retest': {
      const over = [{ name: 'retest', again: null } as const];
      const mark = retestMark(state.session.retests.at(-1) ?? null);
      return stay({ ...state, over, message: RETEST_WORDS[mark] });
    }
    case 'record-test': {
      const proposed = pageNamed(state, 'test')?.toDo.words;
      const words = proposed
        ? opened.bind(proposed)
        : testWords(opened, state.session, command.test);
      // A conclusion of one's own stands there again, to be weighed anew.
      const over = state.over.filter(({ name }) => name === 'own');
      const kept = `In the record: ${words}, ${foundWords(state.session.tests.at(-1)!)}.`;
      return stay({ ...state, over, message: joined(kept, answeredWords(opened, state.session)) });
    }
    case 'set-test-aside':
    case 'set-connector-aside':
    case 'set-state-aside': {
      const words = setAsideWords(opened, state.session, command);
      const round = answeredWords(opened, state.session);
      // The list goes on with the others; but a step that was gone round is another step, and is shown.
      const isListed = pageNamed(state, 'next-tests') !== null && round === null;
      const others = state.over.filter(({ name }) => !ASIDE_PAGES.includes(name));
      const over: Page[] = isListed ? [...others, { name: 'computing' }] : others;
      return stay({ ...state, over, message: joined(words, round) });
    }
    case 'watch-waking': {
      const step = command.step ?? presentStep(state.session)?.id ?? '';
      const inAll = watchedInAll(roundsAt(state.session, step)) ?? '';
      return stay({
        ...state,
        over: state.over.filter(({ name }) => name === 'retest'),
        message: `So far: ${inAll}. Do another round, or answer.`,
      });
    }
    case 'place-short':
      return bare(state, shortMessage(state.session));
    case 'set-value':
    case 'go-back':
      return bare(state, setMessage(state.session));
    case 'add-note':
      return bare(state, 'The note is in the record.');
    case 'report-drive':
      return bare(state, 'The drive is in the record.');
    case 'answer-work':
      return bare(state, 'What the customer said is in the record.');
    case 'change-instruments':
      return bare(state, 'The instruments at hand are in the record.');
    case 'record-reading':
    case 'choose-outcome':
    case 'mark-done':
    case 'cannot-do':
    case 'answer-by-test':
    case 'go-round':
    case 'pause':
    case 'resume':
    case 'conclude':
    case 'close':
    case 'stop-test':
    case 'pass-over':
    case 'reveal':
      return bare(state, vainAtEnd(state.session) ?? answeredWords(opened, state.session));
  }
}

/** Where something is set aside, which is done then. */
const ASIDE_PAGES: readonly Page['name'][] = ['next-tests', 'reach', 'cannot'];

/** Beside a step it stands on the page; a conclusion has none of its own for it. */
function vainAtEnd(session: Session): string | null {
  const step = presentStep(session);
  return step && isTask(step) ? null : lastVain(session);
}

function joined(one: string, more: string | null): string {
  return more === null ? one : `${one} ${more}`;
}

const RETEST_WORDS = {
  passes: 'The last test passes now.',
  FAILS: '! The last test does not pass.',
  'not done': 'The last test was not done.',
} as const;

/** The session again with no page over it. */
function bare(state: PagesState, message: string | null): Turn {
  return stay({ ...state, over: [], message });
}

/** The page that they stood before; a drill's bench makes its test at once. */
function afterCautions({ opened, state }: Here): Turn {
  const next = { ...state, message: null };
  const page = topOf(next);
  if (!opened.drill || page?.name !== 'test') return stay(next);
  const { test } = page.toDo;
  if (pendingTestCautions(next.session, test).length > 0) return stay(next);
  return actOnBench(next, { type: page.by, test });
}

/** The bench stays arranged for the next test, and says itself what was read last; a capture is shown. */
function afterAct({ opened, state }: Here): Turn {
  const { session } = state;
  const kept = state.over.filter(({ name }) => name === 'any-test');
  const last = session.events.at(-1);
  const capture = last && 'capture' in last ? last.capture : undefined;
  const over: Page[] = capture ? [...kept, { name: 'picture', capture }] : kept;
  return stay({ ...state, over, message: over.length > 0 ? null : lastFound(opened, session) });
}
