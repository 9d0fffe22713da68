/**
 * Whether a drill's file is what its vehicle would have said: the commitment is the seed's, every answer is the one
 * that the seed gives, every stopped test was dangerous, and the reveal is what the readings earn. That the events
 * follow from one another is the history's affair, as in any session.
 */
import { isMeterUnit } from '../circuit/meter-units.ts';
import { type KeptShown, keptOf } from '../circuit/shown-of.ts';
import type { Test } from '../circuit/test.ts';
import { testOf } from '../procedure/test-of.ts';
import {
  type AnswerRevealed,
  type DrillVehicle,
  RULES,
  type SessionEvent,
  type SessionOpened,
  type StepCapture,
  type TestRecorded,
} from '../session/events.ts';
import { evolve, openSession } from '../session/evolve.ts';
import type { Session } from '../session/session.ts';
import { debriefOf } from './debrief.ts';
import {
  captureFor,
  isToReveal,
  levelOfSession,
  readingsGiven,
  revealCommand,
} from './drill-act.ts';
import { createWorld, type DrillWorld } from './drill-world.ts';
import { dangerOf } from './hazards.ts';
import { commitmentOf, type Hash } from './hidden-fault.ts';

/** What the check of a drill's file came to. */
export interface DrillVerdict {
  /** `open` when all is well so far and the drill has not ended. */
  readonly verdict: 'true' | 'open' | 'false';
  readonly problems: readonly DrillProblem[];
  /** Where other rules than ours gave the score, and ours give another. */
  readonly scoredOtherwise?: ScoredOtherwise;
  /** Version of other rules by which a vehicle answered: what it showed is then not compared with what ours shows. */
  readonly notCompared?: number;
}

/** A score that today's rules would not give. */
export interface ScoredOtherwise {
  readonly seq: number;
  /** Version of the rules that gave it. */
  readonly rules: number;
  /** Points in the file, and those of today. */
  readonly was: number;
  readonly today: number;
}

/** What does not match at event `seq`, without a full stop; nothing of it names the answer before the reveal. */
export interface DrillProblem {
  readonly seq: number;
  readonly words: string;
}

/** Points that two machines may differ by, as the last digit of a logarithm may. */
const POINTS_SLACK = 1;
const MINUTES_SLACK = 0.11;
/** The best plan is a sum of many such minutes. */
const YARDSTICK_SLACK = 10 * MINUTES_SLACK;

/** Checks a drill from its events, which follow from one another. */
export function verifyDrill(events: readonly SessionEvent[], hash: Hash): DrillVerdict {
  const [first, ...rest] = events;
  if (first?.type !== 'session-opened' || first.vehicle.kind !== 'drill')
    return falseAt(1, 'the file does not begin with the opening of a drill');
  const world = createWorld(first, hash);
  if (!world) return falseAt(1, 'this circuit has no fault for the level of the drill');
  const problems: DrillProblem[] = beginningProblems(first.vehicle, world).map((words) => ({
    seq: 1,
    words,
  }));
  let session = openSession(first);
  let other: Pick<DrillVerdict, 'scoredOtherwise' | 'notCompared'> = {};
  for (const [index, event] of rest.entries()) {
    const seq = index + 2;
    const isTrue = problems.length === 0;
    const found = problemsOf(session, event, world, { hash, isTrue });
    problems.push(...found.problems.map((words) => ({ seq, words })));
    if (found.score) other = { ...other, scoredOtherwise: { seq, ...found.score } };
    if (found.notCompared !== undefined) other = { ...other, notCompared: found.notCompared };
    session = evolve(session, event);
  }
  if (problems.length > 0) return { verdict: 'false', problems, ...other };
  return { verdict: session.revealed ? 'true' : 'open', problems, ...other };
}

/** What is wrong with an event, and the score that our rules give instead of others'. */
interface DrillFlaws {
  readonly problems: readonly string[];
  readonly score?: Omit<ScoredOtherwise, 'seq'>;
  readonly notCompared?: number;
}

function falseAt(seq: number, words: string): DrillVerdict {
  return { verdict: 'false', problems: [{ seq, words }] };
}

function beginningProblems(
  { commitment, earlierRepair }: DrillVehicle,
  { vehicle: { hidden } }: DrillWorld,
): string[] {
  return [
    ...(commitment === hidden.commitment ? [] : ['the commitment is not that of the seed']),
    ...(earlierRepair === hidden.earlierRepair
      ? []
      : ['the earlier repair is not that of the seed']),
  ];
}

function problemsOf(
  session: Session,
  event: SessionEvent,
  world: DrillWorld,
  /** Whether all events before it are true. */
  { hash, isTrue }: { readonly hash: Hash; readonly isTrue: boolean },
): DrillFlaws {
  switch (event.type) {
    case 'test-recorded': {
      const found = readingFound(session, event.test, event.shown, event.capture, world);
      return { ...found, problems: [...found.problems, ...levelProblems(session, event)] };
    }
    case 'reading-recorded': {
      const test = stepTest(session.opened, event.step);
      if (!test || !isMeterUnit(event.unit)) return FINE;
      const shown = { kind: 'number', value: event.value, unit: event.unit } as const;
      return readingFound(session, test, shown, event.capture, world);
    }
    case 'look-recorded': {
      const test = stepTest(session.opened, event.step);
      if (!test || event.look === null) return FINE;
      const shown = { kind: 'look', look: event.look } as const;
      return readingFound(session, test, shown, event.capture, world);
    }
    case 'test-stopped':
      return rulesOf(session) !== RULES ||
        dangerOf(world.vehicle.model, event.test)?.hazard === event.hazard
        ? FINE
        : only(['the bench would not have stopped this test']);
    case 'answer-revealed':
      return revealProblems(session, event, world, { hash, isTrue });
    case 'session-opened':
    case 'caution-acknowledged':
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
    case 'session-resumed':
    case 'concluded':
    case 'caution-passed-over':
    case 'retest-recorded':
    case 'retest-impossible':
    case 'session-closed':
    case 'drive-reported':
    case 'work-answered':
    case 'recovered':
    case 'segment-continued':
      return FINE;
  }
}

const FINE: DrillFlaws = { problems: [] };

function only(problems: readonly string[]): DrillFlaws {
  return { problems };
}

function stepTest({ procedure }: SessionOpened, step: string): Test | null {
  const found = procedure?.steps[step];
  return found ? testOf(found) : null;
}

function readingFound(
  session: Session,
  test: Test,
  kept: KeptShown,
  capture: StepCapture | undefined,
  { vehicle }: DrillWorld,
): DrillFlaws {
  // What the vehicle of a seed shows, and what its bench stops, is a matter of the rules: other ones drew its values otherwise.
  const rules = rulesOf(session);
  if (rules !== RULES) return { problems: [], notCompared: rules };
  if (vehicle.model.refusal(test) !== null) return only(['this test is refused by the bench']);
  const number = readingsGiven(session);
  const captured = capture ? vehicle.captures(test, number) : null;
  const { shown } = captured ?? vehicle.answers(test, number);
  const level = levelOfSession(session);
  const isSame = sameShown(keptOf(shown), kept);
  const isCaptureSame =
    !captured || !capture || !level || alike(capture, captureFor(level, captured.capture));
  return only([
    ...(isSame ? [] : ["this seed's vehicle shows something else in this test"]),
    ...(isCaptureSame ? [] : ["the scope on this seed's vehicle saves a different capture"]),
  ]);
}

/** What a student was shown is the level's affair: good values beside a reading give a milder level away. */
function levelProblems(session: Session, { expected }: TestRecorded): string[] {
  const level = levelOfSession(session);
  const isTooMuch = level?.expected === false && expected !== null;
  return isTooMuch ? ['what is good was shown, which this level hides'] : [];
}

function sameShown(one: KeptShown, other: KeptShown): boolean {
  if (one.kind === 'look' || other.kind === 'look')
    return one.kind === 'look' && other.kind === 'look' && one.look === other.look;
  return one.value === other.value && one.unit === other.unit;
}

/** What a picture's levels and points may differ by between two machines, as a share of its swing, ... */
const POINT_SLACK = 0.01;
/** ... and every other number, as a share of itself; the digest of the samples may differ then. Our choice. */
const NUMBER_SLACK = 1e-3;
const LEVELS: ReadonlySet<string> = new Set(['points', 'low', 'high', 'mean', 'ac']);

/** Whether two captures tell the same, whichever machine made them. */
function alike(one: StepCapture, other: StepCapture): boolean {
  const slack = POINT_SLACK * Math.max(other.measures.high - other.measures.low, 1e-3);
  return tellsSame({ ...one, sha256: '' }, { ...other, sha256: '' }, 0, slack);
}

/** Numbers within `slack`, or their own; levels and what is in them within `levelSlack`; all else to the letter. */
function tellsSame(one: unknown, other: unknown, slack: number, levelSlack: number): boolean {
  if (typeof one === 'number' && typeof other === 'number')
    return Math.abs(one - other) <= Math.max(slack, NUMBER_SLACK * Math.abs(other));
  if (typeof one !== 'object' || typeof other !== 'object' || !one || !other) return one === other;
  const keys = Object.keys(one);
  return (
    Array.isArray(one) === Array.isArray(other) &&
    keys.length === Object.keys(other).length &&
    keys.every(
      (key) =>
        Object.hasOwn(other, key) &&
        tellsSame(
          Reflect.get(one, key),
          Reflect.get(other, key),
          LEVELS.has(key) ? levelSlack : slack,
          levelSlack,
        ),
    )
  );
}

function revealProblems(
  session: Session,
  event: AnswerRevealed,
  world: DrillWorld,
  { hash, isTrue }: { readonly hash: Hash; readonly isTrue: boolean },
): DrillFlaws {
  const { vehicle } = session.opened;
  const problems: string[] = [];
  if (vehicle.kind === 'drill' && commitmentOf(event, event.salt, hash) !== vehicle.commitment)
    problems.push('the revealed answer does not match the commitment');
  if (!isToReveal(session)) return { problems: [...problems, 'revealed before the diagnosis'] };
  // What readings earn that nobody read is no question.
  if (!isTrue) return only(problems);
  const due = revealCommand(world, debriefOf(session, world));
  const sum = event.score.reduce((total, { points }) => total + points, 0);
  if (sum !== event.points) problems.push('the parts of the score do not sum to it');
  const { answer } = due;
  if (answer.right !== event.right) problems.push('the diagnosis is judged wrongly');
  const rules = rulesOf(session);
  let score: DrillFlaws['score'];
  // What readings and minutes earn is a matter of the rules.
  if (rules !== RULES) {
    const score = { rules, was: event.points, today: answer.points };
    return score.was === score.today ? { problems } : { problems, score };
  }
  if (Math.abs(answer.points - event.points) > POINTS_SLACK) {
    // Before a dangerous test capped the score its other parts were all there was.
    const before =
      answer.points - (answer.score.find(({ name }) => name === 'danger')?.points ?? 0);
    const isBefore = event.score.every(({ name }) => name !== 'danger') && event.points === before;
    if (isBefore && before !== answer.points)
      score = { rules, was: event.points, today: answer.points };
    else problems.push('the score does not match the readings');
  }
  if (
    Math.abs(answer.minutes - event.minutes) > MINUTES_SLACK ||
    Math.abs(answer.yardstickMinutes - event.yardstickMinutes) > YARDSTICK_SLACK
  )
    problems.push('the minutes are not those of the readings');
  return { problems, ...(score ? { score } : {}) };
}

/** Version of the rules that judged last: the opening names it, and each resumption. */
function rulesOf({ events, opened }: Session): number {
  const resumed = events.findLast(({ type }) => type === 'session-resumed');
  return resumed?.type === 'session-resumed' ? resumed.rules : opened.rules;
}
