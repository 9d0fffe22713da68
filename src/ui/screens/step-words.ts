/** A step in words, from what the session and the procedure say. No React. */
import type { Setup, Test } from '../../circuit/test.ts';
import { showsGood } from '../../drill/levels.ts';
import { andWords } from '../../procedure/draw-graph.ts';
import { freeOrderTitle } from '../../procedure/free-order.ts';
import { firstSentence, inShort } from '../../procedure/in-short.ts';
import type { Caution, Conclusion, Step } from '../../procedure/procedure.ts';
import { isTask, SIGNAL_WORDS } from '../../procedure/procedure.ts';
import { setupSay } from '../../procedure/setup-say.ts';
import { testOf } from '../../procedure/test-of.ts';
import {
  arrangeWords,
  goodWords,
  stateWords,
  undoWords,
  vehicleWords,
} from '../../procedure/test-words.ts';
import { takesCapture } from '../../session/capture-step.ts';
import type { CautionAcknowledged, WakingWatched } from '../../session/events.ts';
import { stepCautions, stepCautionsInShort } from '../../session/pending-cautions.ts';
import type { CautionInShort } from '../../session/read-cautions.ts';
import type { Session } from '../../session/session.ts';
import { spentMinutes } from '../../session/spent-minutes.ts';
import {
  isStillSetUp,
  leftSetup,
  standingSetup,
  untouchedSetup,
} from '../../session/standing-setup.ts';
import { lastVain } from '../../session/vain-words.ts';
import { roundsAt } from '../../session/watched-rounds.ts';
import { watchedInAll } from '../../session/watched-words.ts';
import { clockMinutes } from '../../session/worked-time.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { expectedAgain, expectedPlain, stepTitle } from './answer-words.ts';
import { asleepWords } from './asleep-words.ts';
import { notTickedWords } from './not-ticked-words.ts';

/**
 * ` (12 min by the clock, about 20 left)`, and where no clock has measured the work ` (about 12 min so far, 20 left)`;
 * before the first test only what is left.
 */
export function soFarWords(session: Session, left: number | null): string {
  const estimated = Math.round(spentMinutes(session));
  if (estimated === 0) return left === null ? '' : ` (about ${Math.round(left)} min left)`;
  const clock = clockMinutes(session);
  if (clock === null)
    return ` (about ${estimated} min so far${left === null ? '' : `, ${Math.round(left)} left`})`;
  const more = left === null ? '' : `, about ${Math.round(left)} left`;
  return ` (${clock < 1 ? '<1' : Math.round(clock)} min by the clock${more})`;
}

/** What comes once the cautions are read; a title may be a question. */
export function nextLine(title: string, { state }: Pick<Setup, 'state'>): string {
  return `Next: ${title}${/[.?!]$/.test(title) ? '' : '.'} Vehicle: ${loud(stateWords(state))}.`;
}

/** How the vehicle must stand before the leads go on, as a sentence. */
export function vehicleLine(setup: Setup, session: Session): string {
  return `Vehicle: ${loud(vehicleWords(setup, session.opened.circuit))}.`;
}

function loud(words: string): string {
  return words.replace('engine running', 'ENGINE RUNNING');
}

/** What the last test left behind and this one cannot have, as a sentence; empty when there is nothing to undo. */
export function undoLine(test: Test, session: Session): string {
  const { job, circuit } = session.opened;
  return undoWords(standingSetup(session), test, job, circuit);
}

/** The same, and what this test needs unplugged, plugged in and clipped on: for one that no text of a step tells. */
export function arrangeLine(test: Test, session: Session): string {
  const { job, circuit } = session.opened;
  const stands = { before: standingSetup(session), on: untouchedSetup(session) };
  return arrangeWords(stands, test, job, circuit);
}

/** That nothing of the setup has to be done again, as a sentence; empty where something has, or nothing is set up. */
export function stillLine(setup: Setup, session: Session): string {
  return isStillSetUp(setup, session)
    ? 'Still set up from the last test: move only the leads.'
    : '';
}

/** How the harness is moved for a test, as a line; none where it is left alone. No hand is in it while the engine is cranked. */
export function wiggleLines({ setup, wiggle }: Test): string[] {
  if (!wiggle) return [];
  return setup.state === 'cranking'
    ? [
        'Crank. If all is good, wait until the engine stands, move harness and connectors, and crank again.',
      ]
    : ['Wiggle the harness and connectors while you watch the instrument.'];
}

/** What the last test left on the vehicle that has to come off or go back on, as sentences; empty for nothing. */
export function leftLine(session: Session): string {
  const { job, circuit, vehicle } = session.opened;
  const left = vehicle.kind === 'drill' ? null : leftSetup(session);
  const bare = left && { ...left, unplugged: [], bridges: [], sensor: 'fitted' as const };
  const undo = bare === null ? '' : undoWords(left, { setup: bare, probe: null }, job, circuit);
  return undo === '' ? '' : `The last test is still set up. ${undo}`;
}

/**
 * The cautions of a test that was allowed to begin, each with its first sentence: they hold while it is done. A NOTICE is
 * among them only where it was not asked for again; where that was read is said behind. Empty where nothing holds.
 */
export function cautionLine(
  opened: Pick<OpenedSession, 'bind'>,
  session: Session,
  cautions: readonly Caution[],
  short: readonly CautionInShort[],
): string {
  const again = new Set(short.map(({ caution }) => caution.id));
  const told = cautions.filter(({ id, word }) => word !== 'NOTICE' || again.has(id));
  return opened.bind([...told.map(inShort), readWords(opened, session, short)].join(' ')).trim();
}

/** Where cautions that stand in short were read whole, as a sentence; empty for none. */
export function readWords(
  opened: Pick<OpenedSession, 'bind'>,
  session: Session,
  short: readonly CautionInShort[],
): string {
  if (short.length === 0) return '';
  const places = [...new Set(short.map(({ read }) => whereRead(opened, session, read)))];
  return `(Read ${andWords(places)}.)`;
}

function whereRead(
  opened: Pick<OpenedSession, 'bind'>,
  session: Session,
  { step }: CautionAcknowledged,
): string {
  if (step === null) return 'at a test of your own';
  const at = session.trail.findIndex((visit) => visit.step === step);
  if (at < 0) return `at "${stepTitle(opened, session, step)}"`;
  return at === session.trail.length - 1 ? 'at this step' : `at step ${at + 1}`;
}

/** What stands over a session: the title of its procedure, or that it has none. */
export function sessionTitle({ bind }: Pick<OpenedSession, 'bind'>, { opened }: Session): string {
  if (opened.procedure) return bind(opened.procedure.title);
  return opened.circuit ? freeOrderTitle(opened.circuit) : 'Free order of tests';
}

/**
 * How much room the text of a step has. `whole`: all of it stands on the screen. `tight`: it does not, so there is no empty
 * line, and nothing but the cautions stands before scope and leads. `scarce`: leads and limit would lie below the fold,
 * so all that is no danger to anybody and no lead comes after them, and the limit of a number
 * stands at its prompt.
 */
export const STEP_ROOMS = ['whole', 'tight', 'scarce'] as const;
export type StepRoom = (typeof STEP_ROOMS)[number];

/** How the paragraphs of a step stand. */
export interface StepShown {
  /** Said of what is good for this car. */
  readonly here?: string;
  readonly room?: StepRoom;
  /** Minutes spent and to expect, as they follow the title. */
  readonly minutes?: string;
  /** The readings are still being weighed: what hangs on the suspects is said when that is done. */
  readonly isThinking?: boolean;
}

/** The text of a step: as far as the leads and the limit, which should be seen without a key; and the rest. */
export interface StepText {
  readonly head: readonly Paragraph[];
  readonly rest: readonly Paragraph[];
  /** The limit, where it stands at the prompt and not in the head; else empty. */
  readonly atPrompt: string;
}

const ASLEEP_KEYS = { tests: 'F6', suspects: 'F5' };

/** Title, state, what to do, what to expect; and why, and all else. Nothing of a conclusion. */
export function stepText(
  opened: OpenedSession,
  session: Session,
  step: Step,
  again: { readonly before: string } | null,
  { here = '', room = 'whole', minutes = '', isThinking = false }: StepShown = {},
): StepText {
  if (!isTask(step)) return { head: [], rest: [], atPrompt: '' };
  const why = reasonsOf(opened, session, step);
  const before = beforeLines(opened, session, step, { isAgain: again !== null, isThinking });
  const isScarce = room === 'scarce';
  const { near, later } = isScarce
    ? scarceLines(opened, session, step)
    : { near: nearLines(opened, session, step, room === 'whole' ? before : null), later: [] };
  const title = `${again ? 'Again' : `Step ${session.trail.length}`}: ${opened.bind(step.title)}`;
  const good = goodLines(opened, session, step, { isAgain: again !== null, here });
  const atPrompt = isScarce ? limitWords(opened, step) : '';
  return {
    head: [{ text: `${title}${minutes}`, bold: true }, ...near, ...(atPrompt === '' ? good : [])],
    rest: [
      ...(atPrompt === '' ? [] : good),
      ...later,
      ...(room === 'whole' ? [] : before),
      ...(again ? [{ text: `Before the repair: ${again.before}`, hang: 2 }] : []),
      ...keptGoodLines(opened, step, again !== null).map((text) => ({ text, hang: 2 })),
      ...(why === '' ? [] : [{ text: `Why: ${why}`, hang: 5 }]),
    ],
    atPrompt,
  };
}

type Task = Exclude<Step, Conclusion>;

/** Where the session stands with the search, before the step is told. */
function beforeLines(
  opened: OpenedSession,
  session: Session,
  step: Task,
  { isAgain, isThinking }: { readonly isAgain: boolean; readonly isThinking: boolean },
): Paragraph[] {
  const isMiddle = session.opened.from !== undefined && session.trail.length === 1;
  return [
    ...(isMiddle ? [{ text: 'The session starts here, in the middle of the procedure.' }] : []),
    ...[
      ...(isAgain ? [] : [lastVain(session)]),
      ...(isAgain || isThinking ? [] : [asleepWords(opened, session, step, ASLEEP_KEYS)]),
      ...watchedLines(session, step),
    ].flatMap((text) => (text === null ? [] : [{ text, hang: 2 }])),
  ];
}

/** State and cautions, what comes off first, how the scope is set, what to do. */
function nearLines(
  opened: OpenedSession,
  session: Session,
  step: Task,
  before: readonly Paragraph[] | null,
): Paragraph[] {
  const all = stepCautions(session, step);
  const cautions = cautionLine(opened, session, all, stepCautionsInShort(session, step));
  const { leads, own } = leadsOf(session, step);
  return [
    { text: `${vehicleLine(step.setup, session)} ${cautions}`.trim() },
    ...undoLines(session, step),
    ...stillLines(session, step),
    ...(before === null ? [] : [...before, { text: '' }]),
    ...setScope(opened, step),
    ...notTicked(session, step),
    { text: opened.bind(`${leads} ${own ?? ''}`).trim() },
  ];
}

/** Why a step is made; empty in a drill that hides what is good, which the reasons tell. */
export function reasonsOf(
  { bind }: Pick<OpenedSession, 'bind'>,
  session: Session,
  step: Step,
): string {
  return isTask(step) && showsGood(session) ? bind(step.why).trim() : '';
}

/**
 * The same where there is hardly any room. Each DANGER, WARNING and CAUTION stands above the leads, under one signal word
 * each; a NOTICE, which is about no person, and where all were read whole comes behind, and so does what the author says
 * besides the leads.
 */
function scarceLines(opened: OpenedSession, session: Session, step: Task) {
  const { leads, own } = leadsOf(session, step);
  const short = stepCautionsInShort(session, step);
  const again = new Set(short.map(({ caution }) => caution.id));
  const all = stepCautions(session, step);
  const notices = all.filter(({ id, word }) => word === 'NOTICE' && again.has(id));
  const noticed = [...notices.map(inShort), readWords(opened, session, short)].join(' ').trim();
  // Where the leads are said in the words of the setup, those say what is unplugged.
  const vehicle =
    own === null
      ? vehicleLine(step.setup, session)
      : `Vehicle: ${loud(stateWords(step.setup.state))}.`;
  return {
    near: [
      { text: `${vehicle} ${opened.bind(byWord(all))}`.trim() },
      ...undoLines(session, step),
      ...setScope(opened, step),
      { text: opened.bind(leads).trim() },
    ],
    later: [
      ...stillLines(session, step),
      ...(own === null || own === '' ? [] : [{ text: opened.bind(own) }]),
      ...notTicked(session, step),
      ...(noticed === '' ? [] : [{ text: opened.bind(noticed) }]),
    ],
  };
}

/** `WARNING: The engine will turn. The engine may start. CAUTION: The circuits are live.` */
function byWord(cautions: readonly Caution[]): string {
  return SIGNAL_WORDS.filter((word) => word !== 'NOTICE')
    .flatMap((word) => {
      const said = cautions.filter((caution) => caution.word === word).map(firstSentence);
      return said.length === 0 ? [] : [`${word}: ${said.join(' ')}`];
    })
    .join(' ');
}

/**
 * What the step says of its setup, as far as it does not stand already, and of its leads, and what its author adds; null
 * where that is all one text.
 */
function leadsOf(session: Session, step: Task) {
  const { circuit } = session.opened;
  const isRead = step.kind === 'measure' || step.kind === 'look';
  const made = isRead ? setupSay(step.setup, step.probe, circuit) : '';
  if (!isRead || made === '' || !step.say.startsWith(made)) return { leads: step.say, own: null };
  return {
    leads: setupSay(step.setup, step.probe, circuit, untouchedSetup(session)),
    own: step.say.slice(made.length).trim(),
  };
}

function undoLines(session: Session, step: Task): Paragraph[] {
  const test = testOf(step);
  const undo = test === null ? '' : undoLine(test, session);
  return undo === '' ? [] : [{ text: undo, bold: true, hang: 7 }];
}

function stillLines(session: Session, step: Task): Paragraph[] {
  const still = testOf(step) === null ? '' : stillLine(step.setup, session);
  return still === '' ? [] : [{ text: still, hang: 2 }];
}

function setScope(opened: OpenedSession, step: Task): Paragraph[] {
  return scopeLines(opened, testOf(step)).map((text) => ({ text, bold: true, hang: 7 }));
}

function notTicked(session: Session, step: Task): Paragraph[] {
  const text = notTickedWords(session, step, { instruments: 'F9', cannot: 'F3' });
  return text === null ? [] : [{ text, bold: true, hang: 2 }];
}

function goodLines(
  opened: OpenedSession,
  session: Session,
  step: Task,
  { isAgain, here }: { readonly isAgain: boolean; readonly here: string },
): Paragraph[] {
  const expected = expectedShown(opened, session, step, isAgain);
  return expected === null ? [] : [{ text: `Good is: ${expected}${here}`, bold: true, hang: 9 }];
}

/** The limit of a number in a few words, for its prompt; empty where nothing is expected or a drill does not tell. */
function limitWords({ drill }: OpenedSession, step: Task): string {
  if (step.kind !== 'measure' || (drill && !drill.level.expected)) return '';
  const range = expectedPlain(step);
  return range === null ? '' : `Good is: ${range}`;
}

/** All rounds of moving or warming made at this step, in a line, those before a repair and those after it apart. */
export function watchedLines(session: Session, { id }: Step): string[] {
  const now = roundsAt(session, id);
  const before = session.watched.filter((round) => round.step === id && !now.includes(round));
  return [
    ...(session.concluded ? inALine('before the repair, ', before) : []),
    ...inALine(session.concluded ? 'after it, ' : '', now),
  ];
}

function inALine(when: string, rounds: readonly WakingWatched[]): string[] {
  const inAll = watchedInAll(rounds);
  if (inAll === null) return [];
  const count = rounds.length === 1 ? 'one round' : `${rounds.length} rounds`;
  const said = `${when}${count}`;
  return [`${said.charAt(0).toUpperCase()}${said.slice(1)}: ${inAll}`];
}

/** How the scope is set; no line where none is looked at. A drill that hides what is good hides the levels too. */
export function scopeLines(
  { scopeLine, drill }: Pick<OpenedSession, 'scopeLine' | 'drill'>,
  test: Test | null,
): string[] {
  const line = test && (drill?.level.expected ?? true) ? scopeLine(test) : null;
  return line === null ? [] : [line];
}

/** That a known-good capture of what is asked is kept; no line where none is. */
export function keptGoodLines(
  { goodCaptures, drill }: Pick<OpenedSession, 'goodCaptures' | 'drill'>,
  step: Step,
  isAgain = false,
): string[] {
  if (drill || !takesCapture(step)) return [];
  const isLook = step.kind === 'measure' || step.kind === 'look';
  const kept = goodCaptures.offered(
    isAgain && isLook ? { kind: 'retest', step } : { kind: 'step', step },
  );
  return kept
    ? [
        `A known-good capture of "${kept.vehicle}" is on file: a capture measured here is compared with it.`,
      ]
    : [];
}

function expectedShown(
  { drill }: OpenedSession,
  session: Session,
  step: Exclude<Step, Conclusion>,
  isAgain: boolean,
): string | null {
  if (drill && !drill.level.expected) return null;
  return isAgain && step.kind === 'ask' ? expectedAgain(step, session) : goodWords(step);
}
