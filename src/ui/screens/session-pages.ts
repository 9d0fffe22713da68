/**
 * The pages of a session, of the tests after its repair and of a drill, without React, disk or clock: what happens goes
 * in as an event, the next state comes out, and with it what is wanted of the session or its bench.
 */
import type { Test } from '../../circuit/test.ts';
import { repairChoices } from '../../drill/drill-words.ts';
import { allTests, type Proposal, type SuspectRow } from '../../session/advisor.ts';
import type { Command } from '../../session/command.ts';
import type { Performed } from '../../session/driver.ts';
import { asideBack } from '../../session/out-of-reach.ts';
import { closeCommand } from '../../session/retest.ts';
import type { OpenedSession } from '../app-services.ts';
import { actAt, carryOnIn } from '../carry-on.ts';
import type { KeyEvent } from '../term/key-decoder.ts';
import { afterPerformed } from './after-command.ts';
import type { TestForm, TestLine } from './any-test-form-state.ts';
import {
  afterChoice,
  afterLine,
  captureForm,
  madeAlready,
  measureForm,
  withForm,
} from './any-test-pages.ts';
import { fromSuspect, type Proposed } from './conclusion-words.ts';
import type { KeyTiming } from './deliberate-state.ts';
import { afterKnown, openKnown } from './known-pages.ts';
import {
  actOnBench,
  adviceOf,
  closePage,
  type Effect,
  type Here,
  open,
  type Page,
  type PagesState,
  pageNamed,
  refusedTurn,
  replace,
  send,
  stay,
  type Turn,
  topOf,
  type Wanted,
} from './pages-state.ts';
import { answerAfter } from './prompt-state.ts';
import { afterAnswer, questionPage } from './question-pages.ts';
import { afterReach, openReach } from './reach-pages.ts';
import { afterAction, captureOfTest, lastAgain, retestStep } from './session-actions.ts';
import type { SessionAction } from './session-keys.ts';
import { viewOf } from './session-view.ts';
import { afterShort, openShorts, testOfPage } from './short-pages.ts';

/** What happens on a page. */
interface EventParts {
  /** A key of the table. */
  readonly action: { readonly action: SessionAction };
  /** Any other key, for the prompt. */
  readonly key: { readonly event: KeyEvent; readonly timing: KeyTiming };
  readonly close: object;
  readonly leave: object;
  /** The cautions on top were read. */
  readonly acknowledge: object;
  /** What is to be read before it counts was taken: a conclusion, the verdict of the tests, a diagnosis. */
  readonly accept: object;
  /** A line of text was typed. */
  readonly text: { readonly text: string };
  readonly 'go-back': { readonly to: number };
  readonly instruments: { readonly instruments: readonly string[] };
  readonly proposal: { readonly proposal: Proposal };
  readonly suspect: { readonly row: SuspectRow };
  readonly 'own-words': object;
  /** A conclusion of one's own, whatever the tree says; on a drill the diagnosis. */
  readonly 'own-conclusion': object;
  readonly repair: { readonly repair: string | null };
  readonly capture: object;
  readonly take: { readonly command: Command };
  readonly retest: object;
  readonly drive: object;
  readonly work: object;
  readonly 'last-again': object;
  /** The page that says that something takes a while is drawn. */
  readonly drawn: object;
  readonly form: { readonly form: TestForm };
  readonly line: { readonly line: TestLine };
  readonly tests: object;
  readonly measure: object;
  readonly chosen: { readonly id: string };
  /** Location of a short is to be measured. */
  readonly shorts: object;
  /** A test of the list was made already. */
  readonly made: { readonly id: string };
  /** A proposed test cannot be made here; the last one that was set aside can after all. */
  readonly aside: { readonly test: Test };
  /** Nothing can be done at a connector that it needs. */
  readonly reach: { readonly test: Test };
  readonly 'aside-back': object;
  /** Values of the car are to be seen and set. */
  readonly known: object;
  readonly retry: object;
  readonly folder: { readonly folder: string };
  readonly performed: { readonly wanted: Wanted; readonly done: Performed };
}

/** What can happen to the pages of a session: a key, or the outcome of an effect. */
export type PageEvent<N extends keyof EventParts = keyof EventParts> = {
  readonly [K in N]: { readonly type: K } & EventParts[K];
}[N];

/** The first state; with `retest` the tests after the repair lie over the session, and on a drill what is told first. */
export function beginPages(opened: OpenedSession, isRetest: boolean): PagesState {
  const session = opened.driver.session();
  const begins = opened.drill !== null && session.events.length === 1;
  const over: Page[] = isRetest
    ? [{ name: 'retest', again: null }]
    : begins
      ? [{ name: 'opening' }]
      : [];
  // A drill says it with the job.
  const message = opened.drill === null && opened.notice ? `! ${opened.notice}` : null;
  return { session, over, message, half: null };
}

/** The state after an event, and what is wanted. */
export function pagesAfter<N extends keyof EventParts>(here: Here, event: PageEvent<N>): Turn {
  return EVENTS[event.type](here, event);
}

/** Does what is wanted, as often as one thing comes of another. */
export function runPages(here: Here, event: PageEvent, leave: () => void): PagesState {
  let turn = pagesAfter(here, event);
  while (turn.effect) {
    const { effect, state } = turn;
    if (effect.type === 'leave') {
      leave();
      return state;
    }
    const done = doneBy(here.opened, effect);
    const wanted = effect.type === 'continue-in' ? effect.wanted : effect;
    turn = pagesAfter({ ...here, state }, { type: 'performed', wanted, done });
  }
  return turn.state;
}

function doneBy(opened: OpenedSession, effect: Exclude<Effect, { type: 'leave' }>): Performed {
  switch (effect.type) {
    case 'perform':
      return opened.driver.perform(effect.command);
    case 'continue-in':
      return carryOnIn(opened, effect.folder);
    case 'act':
      return actAt(opened, effect.action);
  }
}

const EVENTS: {
  readonly [N in keyof EventParts]: (here: Here, event: PageEvent<N>) => Turn;
} = {
  action: (here, { action }) => afterAction(here, action),
  key: afterKey,
  close: ({ state }) => closePage(state),
  leave: ({ state }) => ({ state, effect: { type: 'leave' } }),
  acknowledge,
  accept,
  text: (here, { text }) => afterText(here, text),
  'go-back': ({ state }, { to }) => send(state, { type: 'go-back', to }),
  instruments: ({ state }, { instruments }) =>
    send(state, { type: 'change-instruments', instruments, meter: state.session.meter }),
  proposal: ({ state }, { proposal }) =>
    open(state, { name: 'test', toDo: proposal, by: 'make-test' }),
  suspect: afterSuspect,
  'own-words': ({ opened, state }) =>
    open(state, opened.drill ? { name: 'diagnosis', chosen: [] } : { name: 'own-words' }),
  'own-conclusion': ownConclusion,
  repair: afterRepair,
  capture: (here) =>
    topOf(here.state)?.name === 'any-test' ? captureForm(here) : captureOfTest(here),
  take: ({ state }, { command }) => send(state, command),
  retest: ({ state }) => open(state, { name: 'retest', again: null }),
  drive: ({ state }) => open(state, { name: 'drive' }),
  work: ({ state }) => open(state, { name: 'work' }),
  'last-again': lastAgain,
  drawn: afterDrawn,
  form: ({ state }, { form }) => withForm(state, form),
  line: ({ state }, { line }) => afterLine(state, line),
  tests: ({ state }) => open(state, { name: 'choice', of: 'tests' }),
  measure: measureForm,
  chosen: (here, { id }) => {
    const page = topOf(here.state);
    if (page?.name === 'shorts') return afterShort(here.state, id);
    if (page?.name === 'known') return afterKnown(here.state, id);
    if (page?.name === 'reach') return afterReach(here.state, page, id);
    return page?.name === 'choice' ? afterChoice(here, page.of, id) : stay(here.state);
  },
  shorts: openShorts,
  made: (here, { id }) => madeAlready(here, id),
  aside: ({ state }, { test }) => send(state, { type: 'set-test-aside', test, aside: true }),
  reach: ({ state }, { test }) => openReach(state, test),
  'aside-back': ({ state }) => {
    const command = asideBack(state.session);
    return command ? send(state, command) : refusedTurn(state, 'no test was set aside');
  },
  known: openKnown,
  retry: ({ state }) => {
    const page = topOf(state);
    return page?.name === 'disk' ? { state, effect: page.wanted } : stay(state);
  },
  folder: ({ state }, { folder }) => {
    const page = topOf(state);
    if (page?.name !== 'disk') return stay(state);
    return { state, effect: { type: 'continue-in', folder, wanted: page.wanted } };
  },
  performed: (here, { wanted, done }) => afterPerformed(here, wanted, done),
};

function afterKey(here: Here, { event, timing }: PageEvent<'key'>): Turn {
  const view = viewOf(here);
  if (view.name !== 'step' && view.name !== 'test') return stay(here.state);
  const { half, asked, taken } = view.prompt;
  const next = answerAfter(half, asked, event, timing);
  const state = { ...here.state, half: next.half, message: next.note };
  return { state, effect: next.command && taken(next.command) };
}

function acknowledge(here: Here): Turn {
  const { state } = here;
  const page = topOf(state);
  const base = { type: 'acknowledge-cautions' } as const;
  if (page?.name === 'test') return send(state, { ...base, test: page.toDo.test });
  if (page?.name === 'short-drops') return send(state, { ...base, test: testOfPage(state, page) });
  const step = page?.name === 'retest' ? retestStep(here) : null;
  return send(state, step ? { ...base, step: step.id } : base);
}

function accept(here: Here): Turn {
  const { state } = here;
  const view = viewOf(here);
  if (view.name === 'conclusion') return conclude(here, view.proposed);
  if (view.name === 'verdict') return send(state, closeCommand(state.session));
  const isHandIn = view.name === 'hand-in';
  return isHandIn ? actOnBench(state, { type: 'diagnose', repairs: view.chosen }) : stay(state);
}

function conclude({ opened, state }: Here, { faults, own }: Proposed): Turn {
  const weighed = faults === null ? undefined : opened.advisor?.weigh(state.session, faults);
  return send(state, {
    type: 'conclude',
    ...(own ? { own } : {}),
    ...(weighed ? { weighed } : {}),
  });
}

function afterText(here: Here, text: string): Turn {
  const page = questionPage(topOf(here.state));
  return page ? afterAnswer(here, page, text) : stay(here.state);
}

function afterSuspect({ opened, state }: Here, { row }: PageEvent<'suspect'>): Turn {
  if (opened.drill) return chosen({ opened, state }, [row.repair]);
  return open(state, { name: 'own', proposed: fromSuspect(row) });
}

function ownConclusion({ opened, state }: Here): Turn {
  if (opened.drill) return open(state, { name: 'diagnosis', chosen: [] });
  return open(state, { name: adviceOf(opened) ? 'suspects' : 'own-words' });
}

/** A repair more of the diagnosis; null gives the drill up. */
function afterRepair(here: Here, { repair }: PageEvent<'repair'>): Turn {
  const page = pageNamed(here.state, 'diagnosis');
  return chosen(here, repair === null ? null : [...(page?.chosen ?? []), repair]);
}

function chosen({ opened, state }: Here, repairs: readonly string[] | null): Turn {
  const { circuit } = state.session.opened;
  const all = circuit ? repairChoices(circuit).length : 0;
  const wanted = Math.min(opened.drill?.level.faults ?? 1, all);
  const isWhole = repairs === null || repairs.length >= wanted;
  return open(state, { name: isWhole ? 'hand-in' : 'diagnosis', chosen: repairs ?? [] });
}

/** What would prove the conclusion at hand; else what would tell most. */
function afterDrawn({ opened, state }: Here): Turn {
  const advisor = adviceOf(opened);
  if (topOf(state)?.name !== 'computing' || !advisor) return stay(state);
  const below = { ...state, over: state.over.slice(0, -1) };
  const view = viewOf({ opened, state: below });
  const faults = view.name === 'conclusion' ? view.proposed.faults : null;
  const weighed = faults ? advisor.weigh(state.session, faults) : null;
  const placing = weighed?.wouldPlace ?? [];
  const proving =
    weighed?.wouldProve.filter(({ id }) => placing.every((one) => one.id !== id)) ?? [];
  const page: Page =
    placing.length + proving.length > 0
      ? {
          name: 'next-tests',
          title: placing.length > 0 ? 'Where along the wire' : 'What would prove it',
          proposals: [...placing, ...proving],
        }
      : { name: 'next-tests', title: TELL_MOST, proposals: allTests(advisor, state.session) };
  return replace(state, page);
}

/** Over the tests that would tell most, and while they are computed. */
export const TELL_MOST = 'What would tell you most now';
