/** What a student's command does, as events, and why it is refused. Pure: time comes in as a value. */
import { keptOf } from '../circuit/shown-of.ts';
import { testRefusalWords } from '../circuit/test-refusal.ts';
import { bindText } from '../procedure/bind-text.ts';
import { cautionsFor } from '../procedure/cautions.ts';
import { emptyJob } from '../procedure/job.ts';
import { type Caution, outcomeOfValue, type Step, stepOf } from '../procedure/procedure.ts';
import type { StepCapture, When } from '../session/events.ts';
import { nameFix } from '../source/nearest-name.ts';
import { COSTS, testCost } from '../suspects/test-cost.ts';
import { type Debrief, debriefOf } from './debrief.ts';
import { type Drill, evolveDrill } from './drill.ts';
import type { DrillEvent, DrillMeasured, DrillRevealed, StepFollowed } from './drill-events.ts';
import { type DrillTest, knownTest, standardOf, testKey } from './drill-test.ts';
import type { DrillAnswer } from './drill-vehicle.ts';
import type { DrillWorld } from './drill-world.ts';
import { dangerOf } from './hazards.ts';

export type DrillCommand =
  /** The cautions of a test are read and acknowledged. */
  | { readonly type: 'acknowledge'; readonly test: DrillTest }
  | { readonly type: 'measure'; readonly test: DrillTest }
  /** The scope saves what it sees. Where the present step asks for this very picture, it answers the step. */
  | { readonly type: 'capture'; readonly test: DrillTest }
  /** Does the present step of the procedure, whatever its kind. */
  | { readonly type: 'follow' }
  | { readonly type: 'note'; readonly text: string }
  | { readonly type: 'resume'; readonly program: string; readonly fromActions?: boolean }
  /** Ends the drill; without repairs it is given up. */
  | { readonly type: 'diagnose'; readonly repairs: readonly string[] };

export interface DrillDecision {
  readonly events: readonly DrillEvent[];
  /** Why the command had no effect, or only an event that says so; each without a full stop. */
  readonly refused: { readonly words: string; readonly fix: string } | null;
}

/** Decides one command at time `now`. */
export function decideDrill(
  drill: Drill,
  command: DrillCommand,
  now: When,
  world: DrillWorld,
): DrillDecision {
  // Cut off between the diagnosis and the reveal: whatever comes next brings the reveal.
  if (drill.status === 'diagnosed')
    return { events: [revealedBy(drill, world, now).event], refused: null };
  if (drill.status === 'revealed') return refuse('this drill has ended', 'start another one');
  switch (command.type) {
    case 'acknowledge':
      return acknowledge(drill, command.test, now, world);
    case 'measure':
      return measure(drill, { test: command.test }, now, world);
    case 'capture':
      return capture(drill, command.test, now, world);
    case 'follow':
      return follow(drill, now, world);
    case 'note': {
      const text = command.text.trim();
      if (text === '') return refuse('the note is empty', 'write a few words');
      return { events: [{ type: 'drill-noted', text, ...now }], refused: null };
    }
    case 'resume': {
      const { program, fromActions = false } = command;
      return {
        events: [{ type: 'drill-resumed', program, fromActions, ...now }],
        refused: null,
      };
    }
    case 'diagnose':
      return diagnose(drill, command.repairs, now, world);
  }
}

/** Cautions to be acknowledged before a test, gravest first. */
export function pendingFor(drill: Drill, test: DrillTest, world: DrillWorld): readonly Caution[] {
  const { state, ids } = drill.acknowledged;
  const known = state === test.setup.state ? new Set(ids) : new Set<string>();
  return cautionsFor(world.cautions, 'combustion', test.setup, test.probe, []).filter(
    ({ id }) => !known.has(id),
  );
}

/** The procedure's present step, or null without a procedure. */
export function presentDrillStep({ opened, step }: Drill): Step | null {
  return opened.procedure && step !== null ? stepOf(opened.procedure, step) : null;
}

/** The test of the procedure's present step; null when it has none. */
export function stepTest(drill: Drill): DrillTest | null {
  const step = presentDrillStep(drill);
  if ((step?.kind !== 'measure' && step?.kind !== 'look') || step.probe === null) return null;
  return { setup: step.setup, probe: step.probe, wiggle: step.family === 'wiggle' };
}

/** Minutes that a test would take now. */
export function minutesFor({ opened, situation }: Drill, test: DrillTest): number {
  const known = knownTest(test, opened.meter, standardOf(opened.circuit, test));
  return tenths(testCost(known, situation, COSTS, false).minutes);
}

function refuse(words: string, fix: string): DrillDecision {
  return { events: [], refused: { words, fix } };
}

function acknowledge(drill: Drill, test: DrillTest, now: When, world: DrillWorld): DrillDecision {
  const pending = pendingFor(drill, test, world);
  if (pending.length === 0) return refuse('there is no caution to acknowledge', 'go on');
  const cautions = pending.map(({ id, word, say }) => ({ id, word, text: say }));
  return {
    events: [{ type: 'drill-cautions-read', state: test.setup.state, cautions, ...now }],
    refused: null,
  };
}

function capture(drill: Drill, test: DrillTest, now: When, world: DrillWorld): DrillDecision {
  if (test.probe.kind !== 'pattern')
    return refuse('only the scope saves a capture', 'take the scope, or measure');
  const asked = stepTest(drill);
  const isStep = asked !== null && sameTest(asked, test);
  return measure(drill, { test, isCapture: true, isStep }, now, world);
}

/** Moving the harness or not, it is the same place in the same state. */
function sameTest(one: DrillTest, other: DrillTest): boolean {
  return testKey({ ...one, wiggle: false }) === testKey({ ...other, wiggle: false });
}

interface Wanted {
  readonly test: DrillTest;
  /** It answers the present step of the procedure. */
  readonly isStep?: boolean;
  readonly isCapture?: boolean;
}

function measure(
  drill: Drill,
  { test, isStep = false, isCapture = false }: Wanted,
  now: When,
  { vehicle, ...world }: DrillWorld,
): DrillDecision {
  const danger = dangerOf(vehicle.model, test);
  if (danger)
    return {
      events: [{ type: 'drill-test-stopped', test, ...danger, ...now }],
      refused: {
        words: `The bench stops this test: ${danger.reason}`,
        fix: `${danger.would} It costs points for safety.`,
      },
    };
  const reason = vehicle.model.refusal(test);
  if (reason !== null)
    return refuse(
      testRefusalWords(reason),
      'Change the leads, the state, or what is unplugged, and measure again.',
    );
  const pending = pendingFor(drill, test, { vehicle, ...world });
  if (pending.length > 0)
    return {
      events: [
        { type: 'drill-caution-passed-over', cautions: pending.map(({ id }) => id), ...now },
      ],
      refused: {
        words: 'the cautions of this test have not been acknowledged',
        fix: 'read and acknowledge them first; passing them over costs points for safety',
      },
    };
  const number = drill.readings.length;
  const captured = isCapture ? vehicle.captures(test, number) : null;
  const answer = captured ?? vehicle.answers(test, number);
  const known = knownTest(test, drill.opened.meter, standardOf(drill.opened.circuit, test));
  const step = isStep ? presentDrillStep(drill) : null;
  const event: DrillMeasured = {
    type: 'drill-measured',
    test,
    words: step ? bindText(step.title, emptyJob(''), drill.opened.circuit) : known.words,
    found: answer.words,
    shown: keptOf(answer.shown),
    minutes: minutesFor(drill, test),
    step: step?.id ?? null,
    go: step ? goOf(step, answer) : null,
    ...(captured ? { capture: captureFor(drill, captured.capture) } : {}),
    ...now,
  };
  return { events: [event], refused: null };
}

/** What is against the signal is said against good values, which some levels do not show. */
export function captureFor({ level }: Drill, capture: StepCapture): StepCapture {
  return level.expected ? capture : { ...capture, words: [] };
}

function follow(drill: Drill, now: When, world: DrillWorld): DrillDecision {
  const step = presentDrillStep(drill);
  if (!step) return refuse('this drill follows no procedure', 'choose a test of your own');
  if (step.kind === 'conclude')
    return refuse(
      `the procedure ends here: ${bindText(step.title, emptyJob(''), drill.opened.circuit)}`,
      'give your diagnosis, or go on with tests of your own',
    );
  const test = stepTest(drill);
  if (test) return measure(drill, { test, isStep: true }, now, world);
  const followed = followedStep(drill);
  if (!followed)
    return refuse(
      'the simulated vehicle knows nothing of what this step asks',
      'go on with tests of your own',
    );
  return { events: [{ type: 'drill-step-followed', ...followed, ...now }], refused: null };
}

/**
 * What following the present step does where it tests nothing; null without such a step, and where the simulated
 * vehicle knows nothing of what it asks.
 */
export function followedStep(
  drill: Drill,
): Pick<StepFollowed, 'step' | 'words' | 'minutes' | 'go'> | null {
  const step = presentDrillStep(drill);
  if (!step || step.kind === 'conclude' || stepTest(drill)) return null;
  const usual =
    step.kind === 'ask'
      ? (step.outcomes.find(({ name }) => name === step.usual) ?? step.outcomes[0])
      : undefined;
  const go = step.kind === 'act' ? step.go : (usual?.go ?? step.cannot);
  if (go === null) return null;
  const said = usual ? `${step.title}: ${usual.words}` : step.title;
  const words = bindText(said, emptyJob(''), drill.opened.circuit);
  return { step: step.id, words, minutes: step.minutes, go };
}

function goOf(step: Step, { shown }: DrillAnswer): string | null {
  if (step.kind === 'measure' && shown.kind === 'number')
    return outcomeOfValue(step, shown.value)?.go ?? null;
  if (step.kind === 'look' && shown.kind === 'look')
    return step.outcomes.find(({ looks }) => looks.includes(shown.look))?.go ?? null;
  return null;
}

function diagnose(
  drill: Drill,
  repairs: readonly string[],
  now: When,
  world: DrillWorld,
): DrillDecision {
  const known = new Set(drill.opened.circuit.faults.map(({ repair }) => repair));
  const unknown = repairs.find((repair) => !known.has(repair));
  if (unknown !== undefined)
    return refuse(`this circuit has no repair "${unknown}"`, nameFix(unknown, [...known]));
  const named = [...new Set(repairs)].sort();
  if (named.length > drill.level.faults)
    return refuse(
      `this level hides ${drill.level.faults === 1 ? 'one fault' : `${drill.level.faults} faults`}`,
      'name no more repairs than that',
    );
  const diagnosed = { type: 'drill-diagnosed', repairs: named, ...now } as const;
  const ended = evolveDrill(drill, diagnosed);
  return { events: [diagnosed, revealedBy(ended, world, now).event], refused: null };
}

/** The last event of a diagnosed drill, and the debrief behind it. */
export function revealedBy(
  drill: Drill,
  world: DrillWorld,
  now: When,
): { readonly event: DrillRevealed; readonly debrief: Debrief } {
  const debrief = debriefOf(drill, world);
  const { answer, salt } = world.vehicle.hidden;
  const event: DrillRevealed = {
    type: 'drill-revealed',
    faults: answer.faults,
    repairs: answer.repairs,
    salt,
    right: debrief.right,
    score: debrief.score,
    points: debrief.points,
    minutes: tenths(debrief.minutes),
    yardstickMinutes: tenths(debrief.yardstick.minutes),
    late: debrief.late,
    at: now.at,
    elapsed: now.elapsed,
  };
  return { event, debrief };
}

function tenths(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
