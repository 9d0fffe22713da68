/** What the screen shows: the topmost page, or what the session itself asks for. No React. */
import type { Debrief } from '../../drill/debrief.ts';
import { type Caution, isTask, type Step } from '../../procedure/procedure.ts';
import { pendingCautions, pendingTestCautions } from '../../session/pending-cautions.ts';
import { readBefore } from '../../session/read-cautions.ts';
import { type RetestLine, retestLines } from '../../session/retest.ts';
import { presentStep } from '../../session/session.ts';
import type { TestToDo } from '../../session/session-tests.ts';
import { answerWords } from './answer-words.ts';
import { fromTree, type Proposed } from './conclusion-words.ts';
import { type Here, type PageParts, type PagesState, topOf } from './pages-state.ts';
import type { SessionAction } from './session-keys.ts';
import {
  type Prompt,
  retestPlace,
  retestPrompt,
  stepPrompt,
  testPrompt,
} from './session-prompt.ts';
import { testOfPage } from './short-pages.ts';
import { nextLine } from './step-words.ts';

/** What each view holds: the pages as they are, and in place of some what they come to. */
export interface ViewParts extends Omit<PageParts, 'own' | 'test' | 'retest'> {
  /** Paused, concluded or closed. */
  readonly rest: object;
  readonly debrief: { readonly debrief: Debrief };
  readonly readings: object;
  /** Free order: what was read, and what would tell most. */
  readonly free: object;
  readonly conclusion: { readonly proposed: Proposed };
  readonly caution: CautionView;
  readonly step: {
    /** Names one asking: with another one the screen begins anew. */
    readonly asking: string;
    readonly step: Exclude<Step, { kind: 'conclude' }>;
    readonly prompt: Prompt;
    /** Set after a repair: how far the tests are, and what this one showed before. */
    readonly again: { readonly progress: string; readonly before: string } | null;
  };
  readonly test: { readonly toDo: TestToDo; readonly prompt: Prompt };
  readonly verdict: { readonly lines: readonly RetestLine[] };
}

/** Cautions that stand before what comes next. */
export interface CautionView {
  readonly asking: string;
  readonly cautions: readonly Caution[];
  /** Ids of those that were read in full before. */
  readonly read: ReadonlySet<string>;
  readonly aside: string;
  /** What comes after it, in words. */
  readonly before: string;
  /** Actions in the footer; null where only Esc leads away. */
  readonly actions: readonly SessionAction[] | null;
}

/** What is drawn, by its name. */
export type View<N extends keyof ViewParts = keyof ViewParts> = {
  readonly [K in N]: { readonly name: K } & ViewParts[K];
}[N];

/** What is to be drawn: the topmost page, or what the session itself asks for. */
export function viewOf(here: Here): View {
  const page = topOf(here.state);
  if (page === null) return sessionView(here);
  switch (page.name) {
    case 'own':
      return { name: 'conclusion', proposed: page.proposed };
    case 'test':
      return testView(here, page);
    case 'short-drops':
      return shortView(here, page);
    case 'retest':
      return retestView(here, page.again);
    case 'way':
      // Free order goes no way; what was read stands there all the same.
      return here.state.session.trail.length > 0 ? page : { name: 'readings' };
    default:
      return page;
  }
}

function sessionView(here: Here): View {
  const { opened, state } = here;
  const { session } = state;
  const debrief = opened.drill?.debrief();
  if (debrief) return { name: 'debrief', debrief };
  if (session.status !== 'open') return { name: 'rest' };
  const step = presentStep(session);
  if (step === null) return { name: 'free' };
  if (!isTask(step)) return { name: 'conclusion', proposed: fromTree(session, step) };
  const cautions = pendingCautions(session);
  const prompt = stepPrompt(here, step);
  const { asking } = prompt.half;
  if (cautions.length === 0) return { name: 'step', asking, step, prompt, again: null };
  return {
    name: 'caution',
    asking,
    cautions,
    read: readBefore(session),
    aside: `step ${session.trail.length}`,
    before: nextLine(opened.bind(step.title), step.setup),
    // Who cannot make sure of it must not have to say that it is so to get on.
    actions: ['back', step.cannot === null ? 'pause' : 'cannot', 'help'],
  };
}

function testView(here: Here, { toDo, by }: PageParts['test']): View {
  const { opened, state } = here;
  const cautions = pendingTestCautions(state.session, toDo.test);
  const prompt = testPrompt(here, toDo, by);
  if (cautions.length === 0) return { name: 'test', toDo, prompt };
  return {
    name: 'caution',
    asking: prompt.half.asking,
    cautions,
    read: readBefore(state.session),
    aside: outside(state),
    before: nextLine(opened.bind(toDo.words), toDo.test.setup),
    actions: null,
  };
}

/** The cautions of a wire that is fed, then its drops. */
function shortView(here: Here, page: PageParts['short-drops'] & { name: 'short-drops' }): View {
  const { state } = here;
  const test = testOfPage(state, page);
  const cautions = pendingTestCautions(state.session, test);
  if (cautions.length === 0) return page;
  return {
    name: 'caution',
    asking: `short ${page.stretch.wire} ${page.stretch.touches}`,
    cautions,
    read: readBefore(state.session),
    aside: outside(state),
    before: nextLine('the location of a short', test.setup),
    actions: null,
  };
}

/** What a test is that no step asks for. */
export function outside({ session }: Pick<PagesState, 'session'>): string {
  return session.opened.procedure ? 'a test outside the procedure' : 'a test of your own';
}

function retestView(here: Here, again: string | null): View {
  const { opened, state } = here;
  const { session } = state;
  const place = retestPlace(session, again);
  if (!place) return { name: 'verdict', lines: retestLines(session) };
  const { step, before, number, count } = place;
  const progress = `test ${number} of ${count}`;
  const cautions = pendingCautions(session, step);
  const prompt = retestPrompt(here, place);
  const { asking } = prompt.half;
  if (cautions.length > 0)
    return {
      name: 'caution',
      asking,
      cautions,
      read: readBefore(session),
      aside: `after the repair, ${progress}`,
      before: nextLine(opened.bind(step.title), step.setup),
      actions: ['cannot', 'pause', 'help'],
    };
  const was = before ? answerWords(before, session) : 'not measured';
  return { name: 'step', asking, step, prompt, again: { progress, before: was } };
}
