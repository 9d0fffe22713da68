/**
 * What a student does at the simulated vehicle, as commands of the session: the vehicle answers by itself, its bench
 * stops what does damage, and the diagnosis is followed by the answer.
 */
import type { Model } from '../circuit/model.ts';
import { keptOf } from '../circuit/shown-of.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import { testRefusalWords } from '../circuit/test-refusal.ts';
import {
  type AskOutcome,
  type Caution,
  outcomeOfValue,
  type Step,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { Command } from '../session/command.ts';
import type { StepCapture } from '../session/events.ts';
import { expectedShown } from '../session/expected-shown.ts';
import { pendingCautions, pendingTestCautions } from '../session/pending-cautions.ts';
import { type Refusal, refusalWords } from '../session/refusal.ts';
import { presentStep, type Session } from '../session/session.ts';
import { nameFix } from '../source/nearest-name.ts';
import type { Debrief } from './debrief.ts';
import type { DrillAnswer } from './drill-vehicle.ts';
import type { DrillWorld } from './drill-world.ts';
import { dangerOf } from './hazards.ts';
import { type Level, levelNamed } from './levels.ts';

/** One thing that a student can do. */
export type DrillAction =
  /**
   * Any test at the vehicle. Where the present step asks for this very test and its cautions are read, it answers the
   * step.
   */
  | { readonly type: 'make-test'; readonly test: Test }
  /** The scope saves what it sees. */
  | { readonly type: 'capture'; readonly test: Test }
  /** Does the present step of the procedure, whatever its kind. */
  | { readonly type: 'do-step' }
  /** Ends the drill; without repairs it is given up. */
  | { readonly type: 'diagnose'; readonly repairs: readonly string[] };

/** The commands that an action comes to, and why it had no effect, or only one that says so. */
export interface DrillOutcome {
  readonly commands: readonly Command[];
  readonly refused: DrillRefusal | null;
}

/** Why the bench or the session did not let it happen. */
export interface DrillRefusal {
  readonly code:
    | Refusal['code']
    | 'test-refused'
    | 'test-stopped'
    | 'caution-passed-over'
    | 'no-capture'
    | 'nothing-to-follow'
    | 'procedure-ended'
    | 'vehicle-silent'
    | 'no-such-repair'
    | 'too-many-repairs';
  /** Each without a full stop. */
  readonly words: string;
  readonly fix: string;
}

/** The level of a session's drill; null for a session that is none. */
export function levelOfSession({ opened }: Session): Level | null {
  return opened.vehicle.kind === 'drill' ? levelNamed(opened.vehicle.level) : null;
}

/** Decides one action. `model` is the circuit's as everybody knows it, for what is good. */
export function drillCommands(
  session: Session,
  action: DrillAction,
  world: DrillWorld,
  model: Model,
): DrillOutcome {
  if (session.revealed) return refuse(ofRefusal({ code: 'not-open', status: 'revealed' }));
  switch (action.type) {
    case 'make-test':
      return makeTest(session, { test: action.test }, world, model);
    case 'capture':
      return action.test.probe.kind === 'pattern'
        ? makeTest(session, { test: action.test, isCapture: true }, world, model)
        : refuse({
            code: 'no-capture',
            words: 'only the scope saves a capture',
            fix: 'use the scope, or measure',
          });
    case 'do-step':
      return doStep(session, world, model);
    case 'diagnose':
      return diagnose(session, action.repairs);
  }
}

/** Whether the diagnosis of a drill was given and the answer is still to come. */
export function isToReveal({ concluded, revealed }: Session): boolean {
  return concluded !== null && revealed === null;
}

/** What brings the answer of a drill whose diagnosis was given; `debrief` is what it came to. */
export function revealCommand(
  { vehicle }: DrillWorld,
  debrief: Debrief,
): Extract<Command, { type: 'reveal' }> {
  const { answer, salt } = vehicle.hidden;
  return {
    type: 'reveal',
    answer: {
      faults: answer.faults,
      repairs: answer.repairs,
      salt,
      right: debrief.right,
      score: debrief.score,
      points: debrief.points,
      minutes: tenths(debrief.minutes),
      yardstickMinutes: tenths(debrief.yardstick.minutes),
      late: debrief.late,
    },
  };
}

/** How many readings the vehicle has given, those taken back too: its answers are numbered. */
export function readingsGiven({ events, opened }: Session): number {
  return events.filter((event) => {
    if (event.type === 'test-recorded') return true;
    if (event.type !== 'reading-recorded' && event.type !== 'look-recorded') return false;
    const step = opened.procedure?.steps[event.step];
    return step !== undefined && testOf(step) !== null;
  }).length;
}

/** What is against the signal is said against good values, which some levels do not show. */
export function captureFor({ expected }: Level, capture: StepCapture): StepCapture {
  return expected ? capture : { ...capture, findings: [] };
}

function refuse(refused: DrillRefusal, ...commands: readonly Command[]): DrillOutcome {
  return { commands, refused };
}

function ofRefusal(refusal: Refusal): DrillRefusal {
  return { code: refusal.code, ...refusalWords(refusal) };
}

interface TestAsked {
  readonly test: Test;
  readonly isCapture?: boolean;
  /** The step itself is being done, so its cautions must be read. */
  readonly isFollowed?: boolean;
}

function makeTest(
  session: Session,
  { test, isCapture = false, isFollowed = false }: TestAsked,
  world: DrillWorld,
  model: Model,
): DrillOutcome {
  const step = presentStep(session);
  const asked = step && testOf(step);
  const isAsked = asked !== null && testKey(asked) === testKey(test);
  const isStep = isFollowed || (isAsked && pendingCautions(session, step).length === 0);
  const stopped = barred(session, test, isStep ? step : null, world);
  if (stopped) return stopped;
  const { vehicle } = world;
  const number = readingsGiven(session);
  const captured = isCapture ? vehicle.captures(test, number) : null;
  const answer = captured ?? vehicle.answers(test, number);
  const level = levelOf(session);
  const capture = captured && captureFor(level, captured.capture);
  if (isStep && step) return stepAnswer(step, answer, capture);
  const shown = keptOf(answer.shown);
  const expected = level.expected ? expectedShown(model, test) : null;
  const typed = shown.kind === 'number' ? answer.words : '';
  const taken = capture ? { capture } : {};
  return done({ type: 'record-test', test, typed, shown, expected, ...taken });
}

function levelOf(session: Session): Level {
  const level = levelOfSession(session);
  if (!level) throw new Error('drill: this session is none');
  return level;
}

function done(...commands: readonly Command[]): DrillOutcome {
  return { commands, refused: null };
}

/** Why the bench does not let the test be made; what it stops and what was passed over stands in the record. */
function barred(
  session: Session,
  test: Test,
  step: Step | null,
  { vehicle }: DrillWorld,
): DrillOutcome | null {
  const danger = dangerOf(vehicle.model, test);
  if (danger)
    return refuse(
      {
        code: 'test-stopped',
        words: `the bench stops this test: ${danger.reason}`,
        fix: `${danger.would} It costs safety points.`,
      },
      { type: 'stop-test', test, hazard: danger.hazard },
    );
  const refusal = vehicle.model.refusal(test);
  if (refusal !== null)
    return refuse({
      code: 'test-refused',
      words: testRefusalWords(refusal),
      fix: 'change the leads, the state, or what is unplugged, and measure again',
    });
  const pending = step ? pendingCautions(session, step) : pendingTestCautions(session, test);
  return pending.length === 0 ? null : passedOver(pending);
}

function passedOver(pending: readonly Caution[]): DrillOutcome {
  return refuse(
    {
      code: 'caution-passed-over',
      words: 'the cautions of this test have not been acknowledged',
      fix: 'read and acknowledge them first; skipping them costs safety points',
    },
    { type: 'pass-over', cautions: pending.map(({ id }) => id) },
  );
}

function stepAnswer(
  step: Step,
  { shown, words }: DrillAnswer,
  capture: StepCapture | null,
): DrillOutcome {
  const taken = capture ? { capture } : {};
  if (step.kind === 'measure' && shown.kind === 'number' && outcomeOfValue(step, shown.value))
    return done({ type: 'record-reading', typed: words, value: shown.value, ...taken });
  const outcome = step.kind === 'look' ? outcomeOfLook(step.outcomes, shown) : undefined;
  if (outcome && shown.kind === 'look')
    return done({ type: 'choose-outcome', outcome, look: shown.look, ...taken });
  return refuse(SILENT);
}

function outcomeOfLook(
  outcomes: Extract<Step, { kind: 'look' }>['outcomes'],
  shown: Shown,
): string | undefined {
  return shown.kind === 'look'
    ? outcomes.find(({ looks }) => looks.includes(shown.look))?.name
    : undefined;
}

const SILENT: DrillRefusal = {
  code: 'vehicle-silent',
  words: 'the simulated vehicle has no answer to this step',
  fix: 'carry on with tests of your own',
};

function doStep(session: Session, world: DrillWorld, model: Model): DrillOutcome {
  const step = presentStep(session);
  if (!step)
    return refuse({
      code: 'nothing-to-follow',
      words: 'this drill follows no procedure',
      fix: 'choose a test of your own',
    });
  if (step.kind === 'conclude')
    return refuse({
      code: 'procedure-ended',
      words: 'the procedure ends here',
      fix: 'give your diagnosis, or carry on with tests of your own',
    });
  const test = testOf(step);
  if (test) return makeTest(session, { test, isFollowed: true }, world, model);
  const pending = pendingCautions(session, step);
  if (pending.length > 0) return passedOver(pending);
  if (step.kind === 'act') return done({ type: 'mark-done' });
  const usual = step.kind === 'ask' ? usualOutcome(step) : undefined;
  if (usual) return done({ type: 'choose-outcome', outcome: usual.name });
  return step.cannot === null
    ? refuse(SILENT)
    : done({ type: 'cannot-do', reason: 'the simulated vehicle has no answer' });
}

function usualOutcome({ outcomes, usual }: Extract<Step, { kind: 'ask' }>): AskOutcome | undefined {
  return outcomes.find(({ name }) => name === usual) ?? outcomes[0];
}

function diagnose(session: Session, repairs: readonly string[]): DrillOutcome {
  const faults = session.opened.circuit?.faults ?? [];
  const known = new Set(faults.map(({ repair }) => repair));
  const unknown = repairs.find((repair) => !known.has(repair));
  if (unknown !== undefined)
    return refuse({
      code: 'no-such-repair',
      words: `this circuit has no repair "${unknown}"`,
      fix: nameFix(unknown, [...known]),
    });
  const named = new Set(repairs);
  const most = levelOf(session).faults;
  if (named.size > most)
    return refuse({
      code: 'too-many-repairs',
      words: `this level hides ${most === 1 ? 'one fault' : `${most} faults`}`,
      fix: 'name no more repairs than that',
    });
  const ids = faults.filter(({ repair }) => named.has(repair)).map(({ id }) => id);
  return done({ type: 'conclude', own: { words: null, faults: ids } });
}

function tenths(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
