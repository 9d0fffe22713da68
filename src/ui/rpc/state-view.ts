/**
 * How a session stands, for a program: the present step with its test in the form that the session file has, the
 * cautions before it, what the diagnosis is worth, minutes, the way here. A drill shows no more than its level does.
 */
import type { Setup, Test } from '../../circuit/test.ts';
import { firstSentence } from '../../procedure/in-short.ts';
import type { Caution, Conclusion, Step } from '../../procedure/procedure.ts';
import { isTask } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { goodWords } from '../../procedure/test-words.ts';
import { type Proposal, readingItRestsOn, type Weighed } from '../../session/advisor.ts';
import { takesCapture } from '../../session/capture-step.ts';
import { sheetAnswer } from '../../session/code-answer.ts';
import { conclusionWords } from '../../session/conclusion-words.ts';
import type { ExpectedShown } from '../../session/events.ts';
import { customerWords } from '../../session/gaps.ts';
import { pendingCautions, stepCautionsInShort } from '../../session/pending-cautions.ts';
import { placeWords } from '../../session/place-words.ts';
import type { CautionInShort } from '../../session/read-cautions.ts';
import { presentStep, type Session } from '../../session/session.ts';
import { sheetReading } from '../../session/sheet-reading.ts';
import { spentMinutes } from '../../session/spent-minutes.ts';
import { HEALTHY } from '../../suspects/prediction-table.ts';
import type { OpenedSession } from '../app-services.ts';
import { adviceOf } from '../screens/pages-state.ts';
import { reasonsOf, scopeLines, undoLine, vehicleLine } from '../screens/step-words.ts';
import type { Result } from './json-rpc.ts';

/** Suspects in the state; all of them come with `suspects`. */
const LEADING = 5;

/** All that another program is told of a session, after every call. */
export function stateOf(opened: OpenedSession): Result {
  const { driver, drill } = opened;
  const session = driver.session();
  const { vehicle, procedure } = session.opened;
  const step = session.status === 'open' ? presentStep(session) : null;
  return {
    status: session.status,
    procedure: procedure?.name ?? null,
    vehicle: vehicle.kind,
    drill: drill && drillView(opened),
    step: step && stepView(opened, step),
    cautions: step ? cautionViews(opened, pendingCautions(session, step)) : [],
    readEarlier: step ? readViews(opened, stepCautionsInShort(session, step)) : [],
    diagnosis: diagnosisOf(opened),
    minutes: rounded(spentMinutes(session)),
    path: session.trail.map(({ step: id, answer }) => ({
      step: id,
      event: answer === null ? null : eventNumber(session, answer),
    })),
    concluded: concludedView(opened, session),
    closed: session.closed?.verdict ?? null,
    head: driver.head(),
    file: opened.preview ? null : driver.path(),
  };
}

/** Cautions as they must be read, in the words of this vehicle. */
export function cautionViews({ bind }: OpenedSession, cautions: readonly Caution[]): Result[] {
  return cautions.map(({ id, word, say }) => ({ id, word, text: bind(say) }));
}

/** Those that were read before and are not asked for again: in short, and the number of the event that read them. */
export function readViews(
  { bind, driver }: OpenedSession,
  short: readonly CautionInShort[],
): Result[] {
  const { events } = driver.session();
  return short.map(({ caution, read }) => ({
    id: caution.id,
    word: caution.word,
    text: bind(firstSentence(caution)),
    event: events.lastIndexOf(read) + 1,
  }));
}

/** A step that a person works on, or the conclusion that the tree has come to. */
export function stepView(opened: OpenedSession, step: Step): Result {
  return isTask(step) ? taskView(opened, step) : conclusionView(opened, step);
}

/** The test of a step as the session file has it, with what is good in the form that a recorded test keeps. */
export function stepTestView({ drill }: OpenedSession, step: Step): Result | null {
  if (!isTask(step)) return null;
  const { setup, minutes } = step;
  const shows = drill?.level.expected ?? true;
  const test = testOf(step);
  return {
    setup,
    probe: step.kind === 'measure' || step.kind === 'look' ? step.probe : null,
    ...(test?.wiggle ? { wiggle: true } : {}),
    unit: step.kind === 'measure' ? step.unit : null,
    ...(step.kind === 'measure' && step.level ? { level: step.level } : {}),
    expected: shows ? expectedAt(step) : null,
    minutes,
  };
}

/** What could be wrong, the likeliest first, with the faults behind each; null where nothing is weighed or told. */
export function suspectsView(opened: OpenedSession): Result | null {
  const { driver, bind } = opened;
  const diagnosis = adviceOf(opened)?.diagnosis(driver.session());
  if (!diagnosis) return null;
  const { rows, changed, intermittent, unexplained, unexplainedBy, group, groupRepairs } =
    diagnosis.suspects;
  const told = (words: string | null) => (words === null ? null : bind(words));
  return {
    suspects: rows.map(({ repair, words, chance, faults }) => ({
      repair,
      words: bind(words),
      chance,
      faults: faults.map((one) => ({ id: one.id, words: bind(one.words), chance: one.chance })),
    })),
    changed: told(changed),
    intermittent,
    unexplained: told(unexplained),
    unexplainedBy,
    alike: { words: told(group), repairs: groupRepairs },
    car: diagnosis.car,
  };
}

/** The same in short: the leading ones, and what is settled. */
function diagnosisOf(opened: OpenedSession): Result | null {
  const { driver, bind } = opened;
  const diagnosis = adviceOf(opened)?.diagnosis(driver.session());
  if (!diagnosis) return null;
  const { rows, changed, unexplained, groupRepairs } = diagnosis.suspects;
  const leading = rows.slice(0, LEADING);
  return {
    leading: leading.map(({ repair, words, chance }) => ({ repair, words: bind(words), chance })),
    others: rows.length - leading.length,
    changed: changed === null ? null : bind(changed),
    explained: unexplained === null,
    misfit: diagnosis.car?.misfit.chance ?? null,
    alike: groupRepairs,
    asleep: diagnosis.asleep && {
      first: testView(opened, diagnosis.asleep.first),
      end: diagnosis.asleep.end && bind(diagnosis.asleep.end.words),
    },
  };
}

function testView({ bind }: OpenedSession, proposal: Proposal | null): Result | null {
  return (
    proposal && { words: bind(proposal.words), test: proposal.test, minutes: proposal.minutes }
  );
}

/** The events from number `from` on, each with its number as in the file. */
export function eventsFrom({ driver }: OpenedSession, from: number): Result[] {
  const { events } = driver.session();
  return events.slice(from - 1).map((event, index) => ({ seq: from + index, ...event }));
}

/** How the vehicle must stand for a test, and what the last one left that has to be undone first. */
export function standingView(session: Session, setup: Setup, test: Test | null): Result {
  return {
    vehicle: vehicleLine(setup, session),
    undo: test === null ? '' : undoLine(test, session),
  };
}

/** Minutes and the like, without the noise of sums. */
export function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}

function drillView({ driver, drill }: OpenedSession): Result | null {
  const { vehicle } = driver.session().opened;
  if (vehicle.kind !== 'drill' || !drill) return null;
  const { name, suspects, expected, faults } = drill.level;
  return {
    level: name,
    seed: vehicle.seed,
    shows: { suspects, expected },
    faults,
    limitMinutes: vehicle.assignment?.limitMinutes ?? null,
  };
}

function taskView(opened: OpenedSession, step: Exclude<Step, Conclusion>): Result {
  const { driver, bind, drill } = opened;
  const session = driver.session();
  const { id, kind, title, family, say } = step;
  const said = sheetAnswer(step, session.opened.job);
  const reading = sheetReading(step, session);
  const good = drill && !drill.level.expected ? null : goodWords(step);
  const shows = driver.vehicleShows();
  return {
    id,
    kind,
    title: bind(title),
    family,
    say: bind(say),
    why: reasonsOf(opened, session, step),
    ...standingView(session, step.setup, testOf(step)),
    test: stepTestView(opened, step),
    good,
    here: good === null ? null : hereView(opened, testOf(step)),
    outcomes: 'outcomes' in step ? outcomeViews(opened, step) : [],
    scope: scopeLines(opened, testOf(step))[0] ?? null,
    capture:
      takesCapture(step) && !(drill && (kind === 'ask' || testOf(step)?.probe.kind === 'timing')),
    knownGood:
      drill || !takesCapture(step)
        ? null
        : (opened.goodCaptures.offered({ kind: 'step', step })?.vehicle ?? null),
    cannot: step.cannot !== null,
    said: said
      ? { code: said.code, outcome: said.outcome.name }
      : reading && { reading: reading.typed },
    shows: shows && kind !== 'act' ? shows.words : null,
  };
}

/** What is good for this car in a test; null where nothing is known of it or told. */
export function hereView(opened: OpenedSession, test: Test | null): Result | null {
  const session = opened.driver.session();
  const here = test && adviceOf(opened)?.diagnosis(session).goodHere(test);
  if (!here) return null;
  const { low, high } = here.expected;
  return { low, high, from: here.from, wide: here.isWide };
}

/** Limits are those of the tree; in a drill that hides what is good they would tell it. */
function outcomeViews(
  { bind, drill }: OpenedSession,
  step: Extract<Step, { outcomes: unknown }>,
): Result[] {
  const hides = drill ? !drill.level.expected : false;
  return step.outcomes.map((outcome) => {
    const { name, words } = outcome;
    const told = { name, words: bind(words) };
    if ('from' in outcome) return hides ? told : { ...told, from: outcome.from, to: outcome.to };
    return 'looks' in outcome ? { ...told, looks: outcome.looks } : told;
  });
}

function conclusionView(opened: OpenedSession, step: Conclusion): Result {
  const { driver, bind, advisor, drill } = opened;
  const { id, kind, title, say, repair, faults } = step;
  const weighed = drill ? null : (advisor?.weigh(driver.session(), faults) ?? null);
  return {
    id,
    kind,
    title: bind(title),
    say: bind(say),
    repair: bind(repair),
    customer: bind(customerWords(driver.session(), step)),
    faults,
    ...firstView(opened, weighed),
  };
}

/**
 * What holds a conclusion up, in the form that programs know: three keys, of which at most one is no null. A test
 * that may leave fewer repairs of one that stands is its first as well; what would only prove it is asked for with "weigh".
 */
export function firstView(
  opened: OpenedSession,
  weighed: Pick<Weighed, 'hangsOn' | 'better'> | null,
): Result {
  const better = weighed?.better ?? { kind: 'accept' };
  const restsOn = weighed && readingItRestsOn(weighed);
  const held = { restsOn, overturned: null, first: null, instead: null };
  switch (better.kind) {
    case 'take-back':
      return { ...held, overturned: { ...better.overturned } };
    case 'repeat':
    case 'first':
    case 'narrow':
      return { ...held, first: testView(opened, better.proposal) };
    case 'instead': {
      const { repair, words, chance, faults } = better.row;
      const named = faults.map(({ id }) => id).filter((id) => id !== HEALTHY);
      return { ...held, instead: { repair, words: opened.bind(words), chance, faults: named } };
    }
    case 'prove':
    case 'accept':
      return held;
  }
}

function expectedAt(step: Step): ExpectedShown | null {
  if (step.kind === 'look') return { kind: 'look', looks: step.expected };
  if (step.kind !== 'measure' || !step.expected) return null;
  const { low, high } = step.expected;
  return { kind: 'number', low, high };
}

function concludedView({ isAsFiled }: OpenedSession, session: Session): Result | null {
  const { concluded } = session;
  if (!concluded) return null;
  const { faults, proven, restsOn = null } = concluded;
  const words = conclusionWords(session);
  const place = placeWords(session, faults);
  return {
    title: words?.title ?? '',
    repair: words?.repair ?? '',
    place,
    faults,
    proven,
    recomputed: !isAsFiled(),
    restsOn,
  };
}

function eventNumber(session: Session, answer: number): number | null {
  const event = session.answers[answer]?.event;
  return event ? session.events.indexOf(event) + 1 : null;
}
