/**
 * What the pages of a session are made of: which page lies over which, what a page wants done, and the few ways in
 * which one comes after another. No React. What is kept here may be lost without harm; all else is in the session.
 */
import type { Test } from '../../circuit/test.ts';
import type { DrillAction } from '../../drill/drill-act.ts';
import type { Step } from '../../procedure/procedure.ts';
import type { Advisor, Proposal } from '../../session/advisor.ts';
import type { CaptureAsk } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import type { StepCapture } from '../../session/events.ts';
import type { ShortStretch } from '../../session/place-short.ts';
import type { Session, Unreached } from '../../session/session.ts';
import type { TestToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import type { TestChoice, TestForm } from './any-test-form-state.ts';
import type { Proposed } from './conclusion-words.ts';
import type { HalfAnswer } from './prompt-state.ts';
import { type SessionAction, type SessionKey, withFooter } from './session-keys.ts';

/** What each page that lies over the session holds. */
export interface PageParts {
  readonly help: object;
  readonly way: object;
  readonly suspects: object;
  readonly note: object;
  readonly cannot: object;
  /** Which connector, or which vehicle state, of those that a test needs cannot be had. */
  readonly reach: { readonly of: readonly Unreached[] };
  readonly instruments: object;
  /** Setting a value of the car: the list, the value, from where it is known. */
  readonly known: object;
  readonly 'known-value': { readonly quantity: string };
  readonly 'known-from': { readonly quantity: string; readonly is: string };
  /** Location of a short along a wire: which, and its drops. */
  readonly shorts: object;
  readonly 'short-drops': { readonly stretch: ShortStretch };
  /** One's own conclusion, typed. */
  readonly 'own-words': object;
  readonly sketch: { readonly test: Test | null };
  readonly sums: { readonly step: Step | null };
  /** The best tests are computed once this is drawn. */
  readonly computing: object;
  readonly 'next-tests': { readonly title: string; readonly proposals: readonly Proposal[] };
  /** Arranging any test, and what is chosen or typed for it. */
  readonly 'any-test': { readonly form: TestForm };
  /** `alone`: the form below it was never seen. */
  readonly choice: { readonly of: TestChoice; readonly alone?: true };
  /** A test that was made already is written down. */
  readonly 'made-test': { readonly toDo: TestToDo };
  readonly clip: object;
  /** What to record on a drive, and how. */
  readonly plan: object;
  /** What was seen while something was moved or warmed. */
  readonly watched: object;
  /** What the trouble codes did once the vehicle was driven. */
  readonly drive: object;
  /** What the customer says of the work. */
  readonly work: object;
  /** A test that no step asks for. */
  readonly test: {
    readonly toDo: TestToDo;
    /** How a drill's bench makes it. */
    readonly by: 'make-test' | 'capture';
  };
  readonly capture: { readonly ask: CaptureAsk };
  /** One's own conclusion, to be accepted. */
  readonly own: { readonly proposed: Proposed };
  /** The tests after the repair; `again` is the one that is made once more. */
  readonly retest: { readonly again: string | null };
  /** On a drill: what is told at its start, a capture of its bench, and the diagnosis. */
  readonly opening: object;
  readonly picture: { readonly capture: StepCapture };
  readonly diagnosis: { readonly chosen: readonly string[] };
  readonly 'hand-in': { readonly chosen: readonly string[] };
  /** The disk refused what was wanted. */
  readonly disk: { readonly wanted: Wanted; readonly words: string; readonly fix: string };
}

/** One page over the session, with what it needs to be drawn again. */
export type Page<N extends keyof PageParts = keyof PageParts> = {
  readonly [K in N]: { readonly name: K } & PageParts[K];
}[N];

/** All that the screens of a session remember between two keys. */
export interface PagesState {
  readonly session: Session;
  /** The pages over the session, the topmost last; with none of them the session itself is shown. */
  readonly over: readonly Page[];
  /** Why the last command was refused, or what it did. */
  readonly message: string | null;
  readonly half: HalfAnswer | null;
}

/** What is asked of the session, or of a drill's bench. */
export type Wanted =
  | { readonly type: 'perform'; readonly command: Command }
  | { readonly type: 'act'; readonly action: DrillAction };

/** What is to be done outside after a key; its outcome comes back as an event. */
export type Effect =
  | Wanted
  /** The session goes on in another folder, with what the disk refused. */
  | { readonly type: 'continue-in'; readonly folder: string; readonly wanted: Wanted }
  | { readonly type: 'leave' };

/** What an event came to: the next state, and what is to be done. */
export interface Turn {
  readonly state: PagesState;
  readonly effect: Effect | null;
}

/** Where a key was pressed. */
export interface Here {
  readonly opened: OpenedSession;
  readonly state: PagesState;
}

/** The page on top; null where the session itself is shown. */
export function topOf({ over }: PagesState): Page | null {
  return over.at(-1) ?? null;
}

/** The topmost open page of a name; null where none is open. */
export function pageNamed<N extends Page['name']>(
  { over }: PagesState,
  name: N,
): Extract<Page, { name: N }> | null {
  const isIt = (page: Page): page is Extract<Page, { name: N }> => page.name === name;
  return over.findLast(isIt) ?? null;
}

/** Nothing but this state. */
export function stay(state: PagesState): Turn {
  return { state, effect: null };
}

/** A page more on top. */
export function open(state: PagesState, page: Page): Turn {
  return stay({ ...state, over: [...state.over, page], message: null });
}

/** Another page in place of the topmost. */
export function replace(state: PagesState, page: Page): Turn {
  return stay({ ...state, over: [...state.over.slice(0, -1), page], message: null });
}

/** One page less; with a list that came alone, the form below it too. */
export function closePage(state: PagesState): Turn {
  const top = topOf(state);
  const many = top?.name === 'choice' && top.alone ? 2 : 1;
  return stay({ ...state, over: state.over.slice(0, -many), message: null });
}

/** Why something is not done. */
export function refusedTurn(state: PagesState, words: string): Turn {
  return stay({ ...state, message: `! ${words}` });
}

/** A command for the session. */
export function send(state: PagesState, command: Command): Turn {
  return { state, effect: { type: 'perform', command } };
}

/** Something for the bench of a drill. */
export function actOnBench(state: PagesState, action: DrillAction): Turn {
  return { state, effect: { type: 'act', action } };
}

/** A refusal of the session or the disk in a line. */
export function refusalLine({
  words,
  fix,
}: {
  readonly words: string;
  readonly fix: string;
}): string {
  return fix === '' ? words : `${words}: ${fix}`;
}

/** The advisor, where there is one and a drill's level lets it speak. */
export function adviceOf({
  advisor,
  drill,
}: Pick<OpenedSession, 'advisor' | 'drill'>): Advisor | null {
  return drill && !drill.level.suspects ? null : advisor;
}

/** Which of these actions do something here, and what some of their keys are called: a drill may show no suspects. */
export function usefulKeys(opened: OpenedSession, actions: readonly SessionAction[]): SessionKey[] {
  const advised = adviceOf(opened) !== null;
  const isDiagnosis = opened.drill !== null && !advised;
  const useful = actions.filter(
    (action) => advised || (action !== 'next-tests' && (action !== 'suspects' || isDiagnosis)),
  );
  return withFooter(useful, isDiagnosis ? { suspects: 'diagnosis' } : {});
}

/** Why there is none, without a full stop. */
export function noAdviceWords({ advisor }: OpenedSession): string {
  return advisor
    ? 'this drill level shows no suspects and suggests no tests'
    : 'this session has no circuit model, so chances cannot be computed';
}
