/**
 * Whether a session could have happened: every event is decided anew from the state before it and must come out the
 * same. So the way through the tree, the outcome of each reading, the conclusion and each retest's verdict follow from
 * what was recorded, and from nothing else.
 *
 * Each event was judged by the rules whose version the opening or the last resumption names. Where they are ours,
 * another result makes the file false. Where they are others', another verdict or outcome is told and no flaw; what no
 * rules could give is a flaw always.
 */
import type { Judgement } from '../circuit/judge.ts';
import type { Step } from '../procedure/procedure.ts';
import { commandOf } from './command-of.ts';
import { decide } from './decide.ts';
import {
  type Concluded,
  type EvidenceLine,
  PIECES_NEEDED,
  piecesAmong,
  type ReadingRecorded,
  type RepairVerdict,
  type RetestRecorded,
  RULES,
  type RuledOutLine,
  type SessionClosed,
  type SessionEvent,
  type TestRecorded,
} from './events.ts';
import { evolveInPlace, openSession } from './evolve.ts';
import { isSame } from './is-same.ts';
import { type Flaw, openingFlaw, showsSuch, testFlaw, unknownFault } from './opening-flaw.ts';
import { refusalWords } from './refusal.ts';
import { retestLines } from './retest.ts';
import { presentStep, type Session } from './session.ts';
import { stepHere } from './step-here.ts';

/** What following a file's events came to. */
export interface History {
  /** The state as far as the events could be followed; null when not even the first could. */
  readonly session: Session | null;
  /** The first event that does not follow. */
  readonly flaw: HistoryFlaw | null;
  /** What other rules than ours judged otherwise: worth knowing, no damage. */
  readonly judgedOtherwise: readonly JudgedOtherwise[];
}

/** The event that could not have happened, and why. */
export interface HistoryFlaw {
  readonly seq: number;
  /** What is wrong, as the rest of a sentence that begins with the event; without a full stop. */
  readonly words: string;
  /** The way out, in one sentence without a full stop. */
  readonly fix: string;
}

/** An event that today's rules would judge otherwise. */
export interface JudgedOtherwise {
  readonly seq: number;
  /** Version of the rules that judged then. */
  readonly rules: number;
  readonly of: 'reading' | 'outcome' | 'repair';
  /** The verdict or outcome that the file says, and the one that today's rules give; `none` where they give none. */
  readonly was: string;
  readonly today: string;
}

/** Chances that differ by less are the same: the last digits of an exponential are the machine's. */
const CHANCE_SLACK = 1e-9;
const KEEP =
  'keep the file as it is: it was changed, or the program that wrote it was; look for a copy of it';

/** Follows events that have the right shape, the first of which opens the session. */
export function checkHistory(events: readonly SessionEvent[]): History {
  const [first, ...rest] = events;
  const judgedOtherwise: JudgedOtherwise[] = [];
  const stopped = (session: Session | null, seq: number, words: string): History => ({
    session,
    flaw: { seq, words, fix: KEEP },
    judgedOtherwise,
  });
  if (first?.type !== 'session-opened') return stopped(null, 1, 'does not open the session');
  const opening = openingFlaw(first);
  if (opening !== null) return stopped(null, 1, opening);
  let session = openSession(first);
  let { rules } = first;
  for (const [index, event] of rest.entries()) {
    const seq = index + 2;
    if (event.type === 'session-resumed') rules = event.rules;
    const found = nameFlaw(session, event) ?? follows(session, event, rules);
    if (typeof found === 'string') return stopped(session, seq, found);
    if (found) judgedOtherwise.push({ seq, rules, ...found });
    session = evolveInPlace(session, event);
  }
  return { session, flaw: null, judgedOtherwise };
}

/** The first name in an event that leads nowhere, so that deciding and folding meet only names that they know. */
function nameFlaw(session: Session, event: SessionEvent): Flaw {
  const { circuit, procedure } = session.opened;
  if ('step' in event && event.step !== null && !stepNamed(session, event.step))
    return procedure
      ? `names a step that the procedure does not have, "${event.step}"`
      : `names a step, "${event.step}", where there is no procedure`;
  switch (event.type) {
    case 'test-recorded':
      return testFlaw(event.test, circuit) ?? shownFlaw(event);
    case 'test-stopped':
    case 'test-set-aside':
      return testFlaw(event.test, circuit);
    case 'answer-revealed':
      return unknownFault(circuit, event.faults) ?? unknownRepair(session, event.repairs);
    case 'concluded':
      return conclusionFlaw(session, event);
    case 'session-opened':
    case 'caution-acknowledged':
    case 'reading-recorded':
    case 'look-recorded':
    case 'step-done':
    case 'step-impossible':
    case 'step-reopened':
    case 'connector-set-aside':
    case 'state-set-aside':
    case 'value-set':
    case 'value-taken-back':
    case 'short-placed':
    case 'waking-watched':
    case 'note-added':
    case 'instruments-changed':
    case 'session-paused':
    case 'session-resumed':
    case 'caution-passed-over':
    case 'retest-recorded':
    case 'retest-impossible':
    case 'session-closed':
    case 'drive-reported':
    case 'work-answered':
    case 'recovered':
    case 'segment-continued':
      return null;
  }
}

function stepNamed(session: Session, id: string): Step | undefined {
  const steps = session.opened.procedure?.steps;
  const step = steps && Object.hasOwn(steps, id) ? steps[id] : undefined;
  return step && stepHere(session, step);
}

function shownFlaw({ test, shown, expected }: TestRecorded): Flaw {
  if (!showsSuch(test.probe, shown)) return `shows what ${test.probe.kind} does not show`;
  return expected && expected.kind !== shown.kind
    ? `expects what ${test.probe.kind} does not show`
    : null;
}

function unknownRepair({ opened }: Session, repairs: readonly string[]): Flaw {
  const lost = repairs.find((id) => !opened.circuit?.faults.some(({ repair }) => repair === id));
  return lost === undefined ? null : `names a repair that the circuit does not have, "${lost}"`;
}

/** What a conclusion rests on must have been read before it, and three pieces prove it under every version of the rules. */
function conclusionFlaw(session: Session, concluded: Concluded): Flaw {
  const { evidence, ruledOut, proven, restsOn } = concluded;
  if (proven && piecesAmong(evidence) < PIECES_NEEDED)
    return `is called proven by ${piecesAmong(evidence)} pieces of evidence, where ${PIECES_NEEDED} are needed`;
  if (proven && restsOn !== undefined)
    return `is called proven, where it rests on the one reading of event ${restsOn}`;
  if (proven !== null && !session.opened.circuit) return 'was weighed where there is no circuit';
  const unread = [
    ...[...evidence, ...ruledOut].flatMap(readingsOf),
    ...(restsOn === undefined ? [] : [restsOn]),
  ].find((seq) => !isReading(session.events[seq - 1]));
  if (unread !== undefined) return `rests on event ${unread}, which is not a reading before it`;
  const repairs = ruledOut.flatMap((line) => ('repair' in line ? [line.repair] : []));
  return unknownRepair(session, repairs);
}

function readingsOf(line: EvidenceLine | RuledOutLine): readonly number[] {
  if ('reading' in line) return [line.reading];
  return 'by' in line ? line.by : [];
}

function isReading(event: SessionEvent | undefined): boolean {
  return (
    event?.type === 'reading-recorded' ||
    event?.type === 'look-recorded' ||
    event?.type === 'test-recorded'
  );
}

type Otherwise = Pick<JudgedOtherwise, 'of' | 'was' | 'today'>;

/** Why an event does not follow from the state before it, what is judged otherwise today, or null. */
function follows(session: Session, event: SessionEvent, rules: number): string | Otherwise | null {
  const command = commandOf(session, event);
  if (command === null)
    return event.type === 'caution-acknowledged' ? shownCautionsFlaw(session, event, rules) : null;
  if (command === 'impossible') return 'takes back an answer that does not stand';
  const now = { at: event.at, elapsed: event.elapsed };
  const decision = decide(stateFor(session, event, rules), command, now);
  if (!decision.ok) return `could not have happened: ${refusalWords(decision.refusal).words}`;
  const [again] = decision.events;
  if (!again || decision.events.length !== 1) return ASTRAY;
  switch (event.type) {
    case 'reading-recorded':
      return again.type === event.type ? readingFollows(session, event, again, rules) : ASTRAY;
    case 'test-recorded':
      return again.type === event.type
        ? (judgedAs(event.judgement, again.judgement, rules) ??
            sameBut(event, { ...again, judgement: event.judgement }))
        : ASTRAY;
    case 'retest-recorded':
      return again.type === event.type ? retestFollows(event, again, rules) : ASTRAY;
    case 'session-closed':
      return again.type === event.type ? closeFollows(session, event, again, rules) : ASTRAY;
    case 'session-resumed':
      return again.type === event.type ? sameBut(event, { ...again, rules: event.rules }) : ASTRAY;
    case 'concluded':
      return sameConclusion(session, event) ?? saidFlaw(event, rules) ?? sameBut(event, again);
    case 'session-opened':
    case 'caution-acknowledged':
    case 'look-recorded':
    case 'step-done':
    case 'step-impossible':
    case 'step-reopened':
    case 'test-set-aside':
    case 'connector-set-aside':
    case 'state-set-aside':
    case 'value-set':
    case 'value-taken-back':
    case 'short-placed':
    case 'waking-watched':
    case 'note-added':
    case 'instruments-changed':
    case 'session-paused':
    case 'retest-impossible':
    case 'drive-reported':
    case 'work-answered':
    case 'test-stopped':
    case 'caution-passed-over':
    case 'answer-revealed':
    case 'recovered':
    case 'segment-continued':
      return sameBut(event, again);
  }
}

const ASTRAY = 'does not follow from what was recorded';

function sameBut(event: SessionEvent, again: SessionEvent): string | null {
  return isSame(event, again) ? null : ASTRAY;
}

/**
 * The state in which an event was decided: an early drill asked for the cautions of the test alone, and not for those
 * that the step names.
 */
function stateFor(session: Session, event: SessionEvent, rules: number): Session {
  const step = presentStep(session);
  const isEarlyDrill = session.opened.vehicle.kind === 'drill' && rules < FIRST_WITH_FACTS;
  if (!isEarlyDrill || !('step' in event) || !step || step.kind === 'conclude') return session;
  const { setup, cautions } = step;
  return { ...session, acknowledged: { state: setup.state, ids: cautions.map(({ id }) => id) } };
}

/** Version of the rules since which a drill is a session, and events hold facts. */
const FIRST_WITH_FACTS = 2;

function judgedAs(
  then: Judgement | null,
  today: Judgement | null,
  rules: number,
): string | Otherwise | null {
  const verdicts = { was: then?.verdict ?? 'none', today: today?.verdict ?? 'none' };
  const isSameVerdict = verdicts.was === verdicts.today;
  if (rules !== RULES)
    return isSameVerdict || then === null ? null : { of: 'reading', ...verdicts };
  const isNear = Math.abs((then?.chance ?? 0) - (today?.chance ?? 0)) <= CHANCE_SLACK;
  if (isSameVerdict && isNear) return null;
  return isSameVerdict
    ? ASTRAY
    : `is judged "${verdicts.was}", and is "${verdicts.today}" by the same rules`;
}

function readingFollows(
  session: Session,
  event: ReadingRecorded,
  again: ReadingRecorded,
  rules: number,
): string | Otherwise | null {
  const { judgement, outcome, go } = event;
  const astray = sameBut(event, { ...again, judgement, outcome, go });
  if (astray !== null) return astray;
  const judged = judgedAs(judgement, again.judgement, rules);
  if (typeof judged === 'string') return judged;
  const step = stepNamed(session, event.step);
  const named =
    step?.kind === 'measure' ? step.outcomes.find(({ name }) => name === outcome) : undefined;
  if (!named) return `has an outcome that the step does not have, "${outcome}"`;
  if (named.go !== go) return `goes on to "${go}", where the outcome leads to "${named.go}"`;
  if (outcome === again.outcome) return judged;
  if (rules === RULES)
    return `has the outcome "${outcome}", and "${again.outcome}" by the same rules`;
  return { of: 'outcome', was: outcome, today: again.outcome };
}

/** Which number is good after the repair is a matter of the rules; what was read, and which look is sound, is not. */
function retestFollows(
  event: RetestRecorded,
  again: RetestRecorded,
  rules: number,
): string | Otherwise | null {
  const { passed } = event;
  const astray = sameBut(event, { ...again, passed });
  if (astray !== null || passed === again.passed) return astray;
  if (event.value === null && event.typed === '') return ASTRAY;
  const [was, today] = [passedWord(event), passedWord(again)];
  if (rules === RULES) return `${was} by the file, and ${today} by the same rules`;
  return { of: 'reading', was, today };
}

function passedWord({ passed }: RetestRecorded): string {
  return passed ? 'passes' : 'fails';
}

/** The verdict over the repair is what its tests say. */
function closeFollows(
  session: Session,
  event: SessionClosed,
  again: SessionClosed,
  rules: number,
): string | Otherwise | null {
  const { verdict } = event;
  const astray = sameBut(event, { ...again, verdict });
  if (astray !== null || verdict === again.verdict) return astray;
  if (rules === RULES || !couldBe(session, verdict))
    return `closes with "${verdict}", but the tests after the repair give "${again.verdict}"`;
  return { of: 'repair', was: verdict, today: again.verdict };
}

/**
 * Which tests must be made besides those that were made before the repair is a matter of the rules. That those were made
 * again, and what they showed, is not.
 */
function couldBe(session: Session, verdict: RepairVerdict): boolean {
  const { retests } = session;
  const last = new Map(retests.map((retest) => [retest.step, retest]));
  const made = [...last.values()].flatMap((retest) =>
    retest.type === 'retest-recorded' ? [retest] : [],
  );
  const isFailed = made.some(({ passed }) => !passed);
  switch (verdict) {
    case 'cured':
      return (
        made.length > 0 &&
        !isFailed &&
        retestLines(session).every(({ before, after }) => before === null || after !== null)
      );
    case 'not-cured':
    case 'changed':
      return isFailed;
    case 'not-shown':
      return made.length < last.size;
    case 'no-retest':
      return true;
  }
}

function sameConclusion(session: Session, { conclusion }: Concluded): Flaw {
  const step = presentStep(session);
  const tree = step?.kind === 'conclude' ? step.id : 'none';
  return conclusion === null || conclusion === tree
    ? null
    : `concludes "${conclusion}", but the readings lead to "${tree}"`;
}

/** Facts stand where sentences stood since the second version of the rules. */
function saidFlaw({ evidence, ruledOut }: Concluded, rules: number): Flaw {
  const isSaid = [...evidence, ...ruledOut].some((line) => 'said' in line);
  return isSaid && rules >= FIRST_WITH_FACTS
    ? 'gives words for evidence, where a reading must be named'
    : null;
}

/** Cautions of a test that no step asks for: which test that was the event does not say; the test itself asks for them. */
function shownCautionsFlaw(
  { opened }: Session,
  { cautions }: Extract<SessionEvent, { type: 'caution-acknowledged' }>,
  rules: number,
): Flaw {
  const known = opened.cautionRules;
  // Early drills kept the cautions that were read, and not which there were.
  if (known.length === 0 && rules < FIRST_WITH_FACTS) return null;
  const odd = cautions.find(
    ({ id, word, text }) =>
      !known.some((rule) => rule.id === id && rule.word === word && rule.say === text),
  );
  if (odd) return `acknowledges a caution that does not exist, "${odd.id}"`;
  return cautions.length === 0 ? 'acknowledges no caution' : null;
}
