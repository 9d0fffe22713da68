/**
 * Whether a drill's file is what the program wrote: the commitment is the seed's, every answer of the vehicle is the one
 * the seed gives, every stopped test was dangerous, every step that was followed is the procedure's, minutes and score
 * are what the readings earn, and the reveal matches.
 */

import type { StepCapture } from '../session/events.ts';
import { captureFor, followedStep, minutesFor, revealedBy } from './decide-drill.ts';
import { type Drill, evolveDrill, openDrill, replayDrill } from './drill.ts';
import type { DrillEvent, DrillMeasured, DrillRevealed, StepFollowed } from './drill-events.ts';
import { createWorld, type DrillWorld, type MindStore } from './drill-world.ts';
import { dangerOf } from './hazards.ts';
import { commitmentOf, type Hash } from './hidden-fault.ts';

export interface DrillVerdict {
  /** `open` when all is well so far and the drill has not ended. */
  readonly verdict: 'true' | 'open' | 'false';
  /** What does not match, each in one sentence without a full stop; nothing of it names the answer before the reveal. */
  readonly problems: readonly string[];
}

/** Points that two machines may differ by, as the last digit of a logarithm may. */
const POINTS_SLACK = 1;
const MINUTES_SLACK = 0.11;

/** Checks a drill from its events alone. `store` is shared among the drills of a class. */
export function verifyDrill(
  events: readonly DrillEvent[],
  hash: Hash,
  store: MindStore = new Map(),
): DrillVerdict {
  const [first] = events;
  if (first?.type !== 'drill-opened' || !replayDrill(events))
    return { verdict: 'false', problems: ['the file does not begin with the opening of a drill'] };
  const world = createWorld(first, hash, [], store);
  if (!world)
    return { verdict: 'false', problems: ['this circuit has no fault for the level of the drill'] };
  const { hidden } = world.vehicle;
  const problems: string[] = [];
  if (first.commitment !== hidden.commitment)
    problems.push('event 1: the commitment is not that of the seed');
  if (first.earlierRepair !== hidden.earlierRepair)
    problems.push('event 1: the earlier repair is not that of the seed');
  let drill = openDrill(first);
  let ended = false;
  for (const [index, event] of events.slice(1).entries()) {
    const place = `event ${index + 2}`;
    if (ended) problems.push(`${place}: it stands after the reveal`);
    problems.push(...problemsOf(drill, event, world, hash).map((words) => `${place}: ${words}`));
    ended ||= event.type === 'drill-revealed';
    drill = evolveDrill(drill, event);
  }
  if (problems.length > 0) return { verdict: 'false', problems };
  return { verdict: ended ? 'true' : 'open', problems };
}

function problemsOf(drill: Drill, event: DrillEvent, world: DrillWorld, hash: Hash): string[] {
  switch (event.type) {
    case 'drill-measured':
      return readingProblems(drill, event, world);
    case 'drill-test-stopped':
      return dangerOf(world.vehicle.model, event.test)?.hazard === event.hazard
        ? []
        : ['the bench would not have stopped this test'];
    case 'drill-revealed':
      return revealProblems(drill, event, world, hash);
    case 'drill-opened':
      return ['a drill is opened twice'];
    case 'drill-diagnosed':
      return drill.status === 'open' ? [] : ['a second diagnosis'];
    case 'drill-step-followed':
      return isDue(event, followedStep(drill)) ? [] : ['the procedure does not go on like this'];
    case 'drill-cautions-read':
    case 'drill-caution-passed-over':
    case 'drill-noted':
    case 'drill-resumed':
    case 'recovered':
    case 'segment-continued':
      return [];
  }
}

function isDue({ step, minutes, go }: StepFollowed, due: ReturnType<typeof followedStep>): boolean {
  return due !== null && due.step === step && due.minutes === minutes && due.go === go;
}

function readingProblems(drill: Drill, event: DrillMeasured, { vehicle }: DrillWorld): string[] {
  if (vehicle.model.refusal(event.test) !== null) return ['this test is refused by the bench'];
  const number = drill.readings.length;
  const captured = event.capture ? vehicle.captures(event.test, number) : null;
  const answer = captured ?? vehicle.answers(event.test, number);
  const value = answer.shown.kind === 'number' ? answer.shown.value : null;
  const kept =
    event.shown.kind === 'number' ? (event.shown.value ?? Number.POSITIVE_INFINITY) : null;
  const look = answer.shown.kind === 'look' ? answer.shown.look : null;
  const keptLook = event.shown.kind === 'look' ? event.shown.look : null;
  const problems: string[] = [];
  if (answer.words !== event.found || value !== kept || look !== keptLook)
    problems.push('the vehicle of this seed shows something else in this test');
  if (captured && event.capture && !alike(event.capture, captureFor(drill, captured.capture)))
    problems.push('the scope on the vehicle of this seed saves another capture');
  if (Math.abs(minutesFor(drill, event.test) - event.minutes) > MINUTES_SLACK)
    problems.push('this test takes other minutes');
  return problems;
}

/** Points of a picture that two machines may differ by, as a share of its swing; the digest of the samples may differ then. */
const POINT_SLACK = 0.01;

function alike(one: StepCapture, other: StepCapture): boolean {
  const slack = POINT_SLACK * Math.max(other.measures.high - other.measures.low, 1e-3);
  const near = (points: readonly number[], others: readonly number[]) =>
    points.length === others.length &&
    points.every((point, at) => Math.abs(point - others[at]!) <= slack);
  return (
    one.from === other.from &&
    one.name === other.name &&
    one.words.join() === other.words.join() &&
    one.measures.kind === other.measures.kind &&
    near([one.measures.low, one.measures.high], [other.measures.low, other.measures.high]) &&
    one.channels.length === other.channels.length &&
    one.channels.every(({ points }, at) => near(points, other.channels[at]!.points))
  );
}

function revealProblems(
  drill: Drill,
  event: DrillRevealed,
  world: DrillWorld,
  hash: Hash,
): string[] {
  const problems: string[] = [];
  const { commitment } = drill.opened;
  if (commitmentOf(event, event.salt, hash) !== commitment)
    problems.push('the revealed answer does not match the commitment');
  if (drill.status !== 'diagnosed') return [...problems, 'revealed before the diagnosis'];
  const { event: due } = revealedBy(drill, world, event);
  if (due.right !== event.right || Math.abs(due.points - event.points) > POINTS_SLACK)
    problems.push(`the score is not what the readings earn (${due.points} points)`);
  if (
    Math.abs(due.minutes - event.minutes) > MINUTES_SLACK ||
    Math.abs(due.yardstickMinutes - event.yardstickMinutes) > 10 * MINUTES_SLACK
  )
    problems.push('the minutes are not those of the readings');
  const sum = event.score.reduce((total, { points }) => total + points, 0);
  if (sum !== event.points) problems.push('the parts of the score do not sum to it');
  return problems;
}
